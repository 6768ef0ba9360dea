"""Drawer fronts as a file says them: through, half-blind, or behind an applied front."""

from __future__ import annotations

import pytest

from planner.domain.drawer import AppliedFront
from planner.domain.ring import Stuff
from planner.domain.words import JointKind, PinPair
from planner.errors import InputError
from planner.intake.project_file import read_project
from planner.lengths import Nm
from tests.intake.files import CHEST, drawers, refusals

IN, MM = 25_400_000, 1_000_000
HALF_BLIND = 'drawer.front_joint = "half-blind"'
APPLIED = 'applied_front = { material = "oak", thickness = "5/8 in" }'


def test_drawers_are_through_dovetailed_unless_it_is_said_otherwise() -> None:
    for drawer in drawers().values():
        assert {corner.kind for corner in drawer.ring.corners} == {JointKind.THROUGH_DOVETAIL}
        assert drawer.applied_front is None


@pytest.mark.parametrize(("units", "lap"), [("in", IN // 4), ("mm", 6 * MM)])
def test_a_half_blind_front_has_the_usual_lap(units: str, lap: int) -> None:
    """A lap of 1/4 in: Fairham, Woodwork Joints, p. 134."""
    drawer = drawers(HALF_BLIND, units=units)["D1"]
    assert [corner.lap_nm for corner in drawer.ring.corners] == [lap, None, None, lap]
    assert [corner.pin_board for corner in drawer.ring.corners][::3] == ["D1-front", "D1-front"]


def test_one_drawer_may_be_joined_otherwise_than_its_fellows() -> None:
    made = drawers(HALF_BLIND, 'drawer.lap = "3/8 in"', 'except.D2.front_joint = "through"', 'except.D3.lap = "1/8 in"')
    assert [drawer.ring.corners[3].lap_nm for drawer in made.values()] == [IN * 3 // 8, None, IN // 8]


def test_a_half_blind_front_keeps_the_spacing_of_its_joints() -> None:
    first, *_ = drawers(HALF_BLIND, "drawer.joint.J1.tails = 3")["D1"].ring.corners
    assert first.kind is JointKind.HALF_BLIND
    assert first.spacing is not None
    assert first.spacing.tails == 3


@pytest.mark.parametrize(("units", "gap"), [("in", IN // 16), ("mm", 1_500_000)])
def test_an_applied_front_stands_clear_of_its_opening_as_is_usual(units: str, gap: int) -> None:
    front = drawers(f"drawer.{APPLIED}", units=units)["D1"].applied_front
    assert front == AppliedFront(stuff=Stuff(material="oak", thickness_nm=Nm(IN * 5 // 8)), gap_nm=Nm(gap))


def test_what_is_said_of_one_applied_front_lies_over_that_of_all() -> None:
    made = drawers(f"drawer.{APPLIED}", 'except.D2.applied_front = { thickness = "1/2 in", gap = 0 }')
    fronts = [drawer.applied_front for drawer in made.values()]
    assert fronts[0] == fronts[2]
    assert fronts[1] == AppliedFront(stuff=Stuff(material="oak", thickness_nm=Nm(IN // 2)), gap_nm=Nm(0))


def test_an_applied_front_may_have_its_pins_on_either_pair() -> None:
    drawer = drawers(f"drawer.{APPLIED}", 'drawer.pins_on = "sides"')["D1"]
    assert drawer.ring.pin_pair is PinPair.SECOND_AND_FOURTH


# --- across tables -----------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("lines", "place", "what"),
    [
        ([HALF_BLIND, "except.D2.front_thickness = 0.25"], "except.D2.front_thickness", "a lap of '1/4 in' leaves no"),
        ([HALF_BLIND, 'except.D2.lap = "3/4 in"'], "except.D2.lap", "in a front of '3/4 in'"),
        (["drawer.lap = 2", HALF_BLIND, "except.D2.sled = 'bench'"], "drawer.lap", "a lap of 2 leaves"),
        ([HALF_BLIND, 'except.D2.pins_on = "sides"'], "except.D2.pins_on", "doesn't go with pins_on = 'sides'"),
        (['drawer.pins_on = "sides"', HALF_BLIND], "drawer.pins_on", "doesn't go with pins_on = 'sides'"),
        ([HALF_BLIND, f"except.D2.{APPLIED}"], "except.D2.applied_front", "are both asked for"),
        ([f"drawer.{APPLIED}", HALF_BLIND], "drawer.applied_front", "are both asked for"),
        ([f"drawer.{APPLIED}", 'except.D2.front_joint = "half-blind"'], "except.D2.front_joint", "are both asked for"),
        ([HALF_BLIND, 'except.D2 = { front_joint = "through", lap = 0.25 }'], "except.D2.lap", "front_joint ="),
    ],
)  # fmt: skip
def test_what_does_not_go_together_is_told_where_it_comes_together(lines: list[str], place: str, what: str) -> None:
    (message,) = refusals(*lines)
    assert message.startswith(f"carcase[1].{place}: ")
    assert what in message


def test_a_front_is_not_judged_by_a_length_that_can_not_be_read() -> None:
    (message,) = refusals(HALF_BLIND, 'drawer.lap = "thin"')
    assert message.startswith("carcase[1].drawer.lap: 'thin' is not a length.")


def test_drawers_that_can_not_be_counted_are_not_told_again_as_unknown() -> None:
    text = CHEST.replace("drawers = 3", 'drawers = "three"') + "except.D2.side_clearance = 0.125\n"
    with pytest.raises(InputError) as refused:
        read_project(text, "chest.toml")
    (problem,) = refused.value.problems
    assert problem.where.endswith("carcase[1].column[1].drawers")
