"""Holes for the handles of a drawer: half way up its front, a single one in the middle, a pair a quarter way in.

Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from planner.derive.parts import Shape
from planner.domain.drawer import Drawer, Handles
from planner.domain.solid import LEFT, RIGHT, UP, Solid
from planner.domain.words import FeatureKind, Role
from planner.errors import PlanError, Problem


def handle_holes(
    drawer: Drawer, handles: Handles, fronts: Sequence[str], shows: Solid, block: Solid
) -> Iterator[Shape]:
    """The holes through every board of a drawer's front.

    Args:
        drawer: whose front it is.
        handles: what is to be fixed.
        fronts: marks of its boards: the front, and what is applied to it.
        shows: what is seen of the front, as deep as the holes go.
        block: what the ring of the drawer fills.

    Raises:
        PlanError: a hole would come into a side of the drawer, where nobody could put in a screw.
    """
    sides = (drawer.ring.board(Role.LEFT), drawer.ring.board(Role.RIGHT))
    clear = block.shrunk(sides[0].stuff.thickness_nm, LEFT).shrunk(sides[1].stuff.thickness_nm, RIGHT)
    for hole in _places(handles, shows):
        if hole.right[0] < clear.right[0] or hole.right[1] > clear.right[1]:
            raise PlanError([_in_a_side(drawer.ring.mark)])
        yield from (Shape(board=front, block=hole, kind=FeatureKind.HOLE) for front in fronts)


def _places(handles: Handles, shows: Solid) -> Iterator[Solid]:
    (left, right), (low, high) = shows.right, shows.up
    wide, bore = right - left, handles.hole_nm
    middles = [left + wide * part // (2 * handles.count) for part in range(1, 2 * handles.count, 2)]
    bottom = (low + high) // 2 - bore // 2
    for middle in middles:
        spread = handles.apart_nm if handles.holes > 1 else 0
        for place in dict.fromkeys((middle - spread // 2, middle - spread // 2 + spread)):
            start = place - bore // 2
            yield shows.with_span(RIGHT, (start, start + bore)).with_span(UP, (bottom, bottom + bore))


def _in_a_side(mark: str) -> Problem:
    return Problem(
        where=f"handles of {mark}",
        what="a hole would come into a side of the drawer, where no screw can be put in from behind.",
        remedy="Take one handle instead of two, one with its holes nearer together, or make the drawer wider.",
    )
