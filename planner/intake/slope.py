"""Slope of a sled: read ``1:8`` or ``7 deg``, keep the run in millionths, write it back exactly."""

from __future__ import annotations

import math
import re
from decimal import Decimal

from planner.domain.sled import MICRO
from planner.intake.refusal import RefusalError, quote

PATTERN = r"^1 ?: ?[0-9]{1,3}(\.[0-9]{1,6})?$|^[0-9]{1,2}(\.[0-9]{1,6})? ?(deg|°)$"
"""The two forms: rise over run, and degrees off square."""

_REMEDY = "Write 1:8, or degrees off square such as 7 deg; between 1:1 and 1:20 (1:6 in softwood, 1:8 in hardwood)."
_STEEPEST, _FLATTEST = 1 * MICRO, 20 * MICRO


def read_slope(said: object) -> int:
    """Run of the slope in millionths: 8 000 000 for ``1:8``.

    Degrees are rounded to the nearest millionth: ``7 deg`` is 1:8.144346.

    Raises:
        RefusalError: neither form, or outside 1:1 to 1:20.
    """
    if not isinstance(said, str) or not re.fullmatch(PATTERN, said):
        raise RefusalError(f"{quote(said)} is not a slope.", _REMEDY)
    rise, colon, run = said.partition(":")
    micro = int(Decimal(run.strip()) * MICRO) if colon else _run_of_degrees(float(rise.rstrip("deg° ")))
    if not _STEEPEST <= micro <= _FLATTEST:
        raise RefusalError(f"{quote(said)} is too {'steep' if micro < _STEEPEST else 'flat'} for a dovetail.", _REMEDY)
    return micro


def _run_of_degrees(degrees: float) -> int:
    """Run for a rise of 1: the tangent of what is left to a right angle."""
    return round(MICRO * math.tan(math.radians(90 - degrees)))


def write_slope(run_micro: int) -> str:
    """The slope as it stands in a project file: ``1:8``."""
    return f"1:{(Decimal(run_micro) / MICRO).normalize():f}"
