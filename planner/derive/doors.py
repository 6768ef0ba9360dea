"""Doors before a space: one leaf, or a pair, within the space or over the edges around it.

An inset door stands in the space, flush with its front, with a gap all round. An overlay door stands before the
carcase and covers the edges around the space. A door's grain runs up and down. A single door hangs on the side that the
maker says, the leaves of a pair on the outer sides: leaf 1 on the left, leaf 2 on the right.

Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations

from planner.derive.frame import STANDING
from planner.derive.panelled import made_of
from planner.derive.parts import Item, Maker
from planner.derive.spaces import DoorPlace
from planner.domain.carcase import Carcase
from planner.domain.marks import board_mark, space_mark
from planner.domain.panelled import thickness
from planner.domain.plan import BoardSize
from planner.domain.solid import DOWN, FRONT, LEFT, RIGHT, UP, Solid
from planner.domain.space import Doors
from planner.domain.words import Role, Stands
from planner.errors import PlanError, Problem
from planner.lengths import Grid, show_length


def doors(maker: Maker, places: Sequence[DoorPlace], grid: Grid) -> Iterator[Item]:
    """All doors of a carcase.

    Args:
        maker: of the carcase's boards.
        places: the spaces before which they stand.
        grid: step to which lengths are shown.

    Raises:
        PlanError: a door without size, a frame that can't be made, doors that run into each other; all are named.
    """
    leaves = [(place.doors, leaf) for place in places for leaf in leaves_of(maker, place)]
    wrong = [problem for place in places for problem in _without_room(maker, place, grid)]
    wrong += _too_near(leaves, grid)
    marks = {problem.where for problem in wrong}
    items: list[Item] = []
    for said, leaf in leaves:
        try:
            items += made_of(maker, said.made, leaf, grid) if leaf.mark not in marks else ()
        except PlanError as error:
            wrong += error.problems
    if wrong:
        raise PlanError(wrong)
    yield from items


def leaf_marks(space: str, doors: Doors) -> tuple[str, ...]:
    """Marks of the leaves before a space, from the left."""
    numbers = (None,) if doors.leaves == 1 else (1, 2)
    return tuple(board_mark(space, Role.DOOR, number) for number in numbers)


def doors_of(carcase: Carcase) -> Iterator[tuple[Doors, tuple[str, ...]]]:
    """All doors of a carcase, outer before inner, each with the marks of its leaves."""
    for path, space in carcase.inside.by_path():
        if space.doors:
            yield space.doors, leaf_marks(space_mark(carcase.ring.mark, path), space.doors)


def leaves_of(maker: Maker, place: DoorPlace) -> Iterator[BoardSize]:
    """Each leaf as one board, from the left."""
    said = place.doors
    whole = _all_leaves(place)
    (low, high), each = whole.right, (whole.size(RIGHT) - said.gap_nm) // 2
    spans = [(low, high)] if said.leaves == 1 else [(low, low + each), (low + each + said.gap_nm, high)]
    for mark, span in zip(leaf_marks(place.mark, said), spans, strict=True):
        yield maker.board(mark, Role.DOOR, said.made.stuff, STANDING, whole.with_span(RIGHT, span))


def _all_leaves(place: DoorPlace) -> Solid:
    """What the leaves fill together, with the gap between them."""
    said, thick = place.doors, thickness(place.doors.made)
    if said.stands is Stands.INSET:
        return place.place.shrunk(said.gap_nm, LEFT, RIGHT, UP, DOWN).beside(FRONT, -thick, thick)
    return place.place.shrunk(-said.overlay_nm, LEFT, RIGHT, UP, DOWN).beside(FRONT, 0, thick)


def _without_room(maker: Maker, place: DoorPlace, grid: Grid) -> Iterator[Problem]:
    leaves = tuple(leaves_of(maker, place))
    if place.doors.stands is Stands.OVERLAY and place.place.back[0] > 0:
        yield Problem(
            where=leaves[0].mark,
            what="stands over the edges around a space that is itself behind an inset door.",
            remedy="Let it stand inset, or leave out one of the doors.",
        )
    width, height = (show_length(place.place.size(way), grid) for way in (RIGHT, UP))
    for leaf in leaves:
        if min(leaf.width_nm, leaf.length_nm) <= 0:
            yield Problem(
                where=leaf.mark,
                what=f"the gaps leave nothing of the door in a space {width} × {height} {grid.unit}.",
                remedy="Take smaller gaps, one leaf, or a larger space.",
            )


def _too_near(leaves: Sequence[tuple[Doors, BoardSize]], grid: Grid) -> Iterator[Problem]:
    """Doors of which one keeps the other from opening; the greater of two gaps counts."""
    for (one, near), (other, leaf) in combinations(leaves, 2):
        gap = max(one.gap_nm, other.gap_nm)
        if near.place.shrunk(-gap, LEFT, RIGHT, UP, DOWN).meeting(leaf.place):
            yield Problem(
                where=leaf.mark,
                what=f"leaves less than a gap of {show_length(gap, grid, with_unit=True)} to {near.mark}.",
                remedy="Let doors cover less of the edge between them, or leave out one that is behind another.",
            )
