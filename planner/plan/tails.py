"""Tails at the bandsaw, grouped so that the saw is set up as seldom as can be.

The blade guide stands just above the wood, so thickness is one setting; the wedge or mitre gauge that gives the slope
is another, and half the cuts lean each way. All cuts of one slope, thickness and lean are made together; the next
begins at the lean already in use. The shoulders at the half-pins are square cuts and come last.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from planner.domain.marks import reading_order
from planner.domain.tail import TailEnd, TailSetting
from planner.domain.words import Side
from planner.lengths import Nm

FIRST_LEAN = Side.RIGHT


def tail_settings(ends: Sequence[TailEnd]) -> tuple[TailSetting, ...]:
    """Set-ups in the order that changes least: slope by slope and thickness by thickness, the lean in use first."""
    alike: dict[tuple[Fraction, Nm], list[TailEnd]] = {}
    for end in sorted(ends, key=lambda e: (reading_order(e.board), e.end)):
        alike.setdefault((end.slope, end.thickness_nm), []).append(end)
    found: list[TailSetting] = []
    lean = FIRST_LEAN
    for slope, thickness in sorted(alike):
        there = alike[slope, thickness]
        for way in (lean, lean.other):
            found.append(
                TailSetting(
                    number=len(found) + 1,
                    slope=slope,
                    thickness_nm=thickness,
                    leans=way,
                    throat_nm=max(end.throat_nm for end in there),
                    ends=tuple(there),
                )
            )
        lean = lean.other
    return tuple(found)
