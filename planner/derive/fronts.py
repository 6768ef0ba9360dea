"""Fronts that stand before a carcase must pass each other: applied drawer fronts among themselves, and beside doors."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import combinations

from planner.derive.doors import leaves_of
from planner.derive.parts import Maker
from planner.derive.spaces import DoorPlace
from planner.domain.plan import BoardSize
from planner.domain.solid import DOWN, LEFT, RIGHT, UP
from planner.domain.words import Role
from planner.errors import PlanError, Problem
from planner.lengths import Grid, Nm, show_length

LEAST_NM = Nm(2 * Grid.IN_64.step_nm)
"""1/32 in between two fronts, or they rub. Common practice, no source."""


def must_pass(maker: Maker, doors: Sequence[DoorPlace], boards: Iterable[BoardSize], grid: Grid) -> None:
    """Refuse drawer fronts that leave no gap to the front or door beside them.

    Raises:
        PlanError: naming each such pair, and how much less they may cover.
    """
    fronts = [board for board in boards if board.role is Role.APPLIED_FRONT]
    leaves = [leaf for place in doors for leaf in leaves_of(maker, place)]
    pairs = [*combinations(fronts, 2), *((leaf, front) for leaf in leaves for front in fronts)]
    wrong = [problem for one, other in pairs for problem in _rubs(one, other, grid)]
    if wrong:
        raise PlanError(wrong)


def _rubs(one: BoardSize, other: BoardSize, grid: Grid) -> Iterable[Problem]:
    both = one.place.shrunk(-LEAST_NM, LEFT, RIGHT, UP, DOWN).meeting(other.place)
    if both:
        too_much, step = min(both.size(RIGHT), both.size(UP)), grid.fine.step_nm
        less = -(-too_much // (2 * step)) * step
        yield Problem(
            where=other.mark,
            what=f"leaves no gap of {show_length(LEAST_NM, grid.fine, with_unit=True)} to {one.mark}.",
            remedy=f"Let each cover {show_length(less, grid.fine, with_unit=True)} less of the edge "
            "between them (overlay), or take a thicker divider.",
        )
