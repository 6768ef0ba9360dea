"""Drawer fronts that stand over the edges leave a gap between each other, and to doors.

By hand: over a rail of 18 mm two fronts that cover o each leave 18 - 2 o; 1/32 in is 0.79375 mm. So 8.6 (0.8 left) goes
and 8.61 (0.78 left) is 0.01375 mm too near, half of it each.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from planner.domain.drawer import Drawer
from planner.domain.project import Project
from planner.domain.words import DividerKind, Stands
from planner.errors import PlanError
from planner.pipeline import plan
from tests.oracle import assembly_pieces as hollin
from tests.oracle.assembly_pieces import carcase, columns, drawers, holding, mm, project, tiers


def covering(overlay: float) -> Drawer:
    """A drawer whose front covers this much of the edges around it."""
    front = hollin.OVERLAY_FRONT.applied_front
    assert front is not None
    return replace(hollin.OVERLAY_FRONT, applied_front=replace(front, overlay_nm=mm(overlay)))


def chest(overlay: float) -> Project:
    inside = holding(columns(holding(tiers(DividerKind.RAIL, *drawers(covering(overlay), 2)))))
    return project(carcases=(carcase(inside),))


def test_fronts_that_leave_a_gap_go() -> None:
    plan(chest(8.6))


def test_fronts_that_rub_are_refused_with_what_to_take_off() -> None:
    with pytest.raises(PlanError) as refused:
        plan(chest(8.61))
    (problem,) = refused.value.problems
    assert problem.where == "D102-face"
    assert "no gap of ~0.8 mm to D101-face" in problem.what
    assert "cover 0.1 mm less" in problem.remedy


def test_a_front_and_a_door_beside_it_are_refused() -> None:
    """A partition of 18: front and door cover 7 and 10.5 of it, which leaves 0.5."""
    door = replace(hollin.DOOR, stands=Stands.OVERLAY, overlay_nm=mm(10.5))
    left, right = holding(tiers(DividerKind.RAIL, *drawers(covering(7), 1))), holding(doors=door)
    with pytest.raises(PlanError) as refused:
        plan(project(carcases=(carcase(holding(columns(left, right))),)))
    assert [problem.where for problem in refused.value.problems] == ["D101-face"]
