"""How long noise may be borne: 29 CFR 1910.95, table G-16 and appendix A. Levels in dB(A), times in hours.

The rule binds employers; it is a poor day's measure for anyone. Stricter advice (NIOSH): 85 dB(A) for 8 h, halved with
each 3 dB (read: tutorsglobe.com; danburzo.ro).
"""

from __future__ import annotations

from collections.abc import Sequence
from math import log10

ALLOWED_DBA, ALLOWED_H, HALVES_DB = 90.0, 8.0, 5.0

TABLE_G16 = ((8.0, 90), (6.0, 92), (4.0, 95), (3.0, 97), (2.0, 100), (1.5, 102), (1.0, 105), (0.5, 110), (0.25, 115))
"""Hours a day and the level allowed for them (read: cejn.com, OSHA 1910.95(b)(1); the last level from memory)."""


def hours_allowed(level: float) -> float:
    """``T = 8 / 2^((L − 90)/5)`` hours (read: danburzo.ro; oshanoise.com)."""
    return ALLOWED_H / 2 ** ((level - ALLOWED_DBA) / HALVES_DB)


def dose_pct(spells: Sequence[tuple[float, float]]) -> float:
    """Dose of a day in percent, from pairs of hours and level: ``100·Σ C/T`` (read: 1910.95 App A)."""
    return 100 * sum(hours / hours_allowed(level) for hours, level in spells)


def average_dba(dose: float) -> float:
    """The steady level over 8 hours that gives this dose: ``16.61·log10(D/100) + 90`` (from memory)."""
    return 16.61 * log10(dose / 100) + 90
