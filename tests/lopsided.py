"""A drawer whose front is not the same from both edges, so that a mirror error shows."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from planner.domain.box import Box
from planner.domain.plan import Plan
from planner.domain.project import Project
from planner.domain.ring import make_ring
from planner.domain.words import PinPair, RingKind, SizesOver, Spread
from planner.pipeline import plan
from tests.pieces import SPACING, ash, inches, project


def lopsided_drawer() -> Project:
    """A drawer 12 × 10 × 5 1/2 with a front of 3/4 in, pins listed at 1 1/2 – 1 3/4 and 3 – 3 1/2 from the bottom."""
    spacing = replace(
        SPACING,
        spread=Spread.LISTED,
        places=((inches("1 1/2"), inches("1 3/4")), (inches("3"), inches("3 1/2"))),
    )
    thicknesses = (ash("3/4"), ash("1/2"), ash("1/2"), ash("1/2"))
    box = Box(
        title="lopsided drawer",
        batch="D",
        ring=make_ring("D", RingKind.UPRIGHT, thicknesses, PinPair.FIRST_AND_THIRD, spacing, "main"),
        length_nm=inches("12"),
        width_nm=inches("10"),
        height_nm=inches("5 1/2"),
        sizes_over=SizesOver.OUTSIDE,
        bottom=None,
    )
    return replace(project(boxes=(box,)), name="Lopsided")


@cache
def planned_lopsided_drawer() -> Plan:
    return plan(lopsided_drawer())
