"""Half-blind and applied drawer fronts, every figure worked out by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from planner.derive.tails import tail_end
from planner.domain.drawer import AppliedFront, Drawer
from planner.domain.plan import Plan
from planner.domain.project import Project, problems
from planner.domain.ring import make_ring, with_half_blind_front
from planner.domain.words import JointKind, PinPair, RingKind
from planner.pipeline import plan
from planner.present.views.joints import joints as joints_view
from tests.pieces import SPACING, ash, inches, six_drawers, with_drawer


def with_first_drawer(drawer: Drawer) -> Project:
    return with_drawer(six_drawers(), drawer)


def first_drawer() -> Drawer:
    return next(six_drawers().drawers())


def half_blind() -> Project:
    drawer = first_drawer()
    return with_first_drawer(replace(drawer, ring=with_half_blind_front(drawer.ring, inches("1/4"))))


def applied() -> Project:
    front = AppliedFront(stuff=ash("3/4"), gap_nm=inches("1/16"))
    return with_first_drawer(replace(first_drawer(), applied_front=front))


def sizes(made: Plan) -> dict[str, tuple[int, int, int]]:
    return {b.mark: (b.length_nm, b.width_nm, b.thickness_nm) for b in made.boards}


def test_a_half_blind_front_shortens_the_sides_by_its_lap() -> None:
    """Drawer 1 is 34 1/8 × 19 1/4 outside. The sides end at the lap of 1/4 in front and stand out 1/64 behind.

    19 1/4 − 1/4 + 1/64 = 19 1/64. The front's pins show at the sides, so it keeps 1/64 at both ends: 34 5/32.
    """
    found = sizes(plan(half_blind()))
    assert found["D1-right"] == found["D1-left"] == (inches("19 1/64"), inches("5 3/8"), inches("1/2"))
    assert found["D1-front"] == (inches("34 5/32"), inches("5 3/8"), inches("3/4"))
    assert found["D2-right"][0] == inches("19 9/32")


def test_half_blind_corners_are_hand_work_with_tails_as_long_as_the_sockets_are_deep() -> None:
    # Sockets 3/4 − 1/4 = 1/2 deep; the sides' thickness and what is proud, 33/64, is gauged on the front.
    made = plan(half_blind())
    blind = {joint.mark: joint for joint in made.joints if joint.kind is JointKind.HALF_BLIND}
    assert blind.keys() == {"D1-J1", "D1-J4"}
    joint = blind["D1-J1"]
    assert (joint.tail_baseline_nm, joint.bit_height_nm) == (inches("1/2"), inches("33/64"))
    tails = tail_end(joint)
    assert tails.baseline_nm == inches("1/2")
    assert not {cut.joint for setting in made.sled.settings for cut in setting.cuts} & blind.keys()
    marks = {operation.mark for operation in made.operations}
    assert {"chop D1-front-B", "lap D1-front-B", "trace D1-J1", "tails D1-right-A left lean"} <= marks
    assert "pins D1-front-B right fence" not in marks


def test_blind_pins_are_never_laid_out_on_the_face_that_shows() -> None:
    tasks = {operation.mark: operation.task for operation in plan(half_blind()).operations}
    assert tasks["layout D1-front-B"] == "Lay out the pins on the end, narrow at the lap"
    assert tasks["layout D2-front-B"] == "Lay out the pins on the outside face"
    assert any("on the END" in note for note in joints_view(plan(half_blind())).notes)
    assert not any("on the END" in note for note in joints_view(plan(six_drawers())).notes)


def test_the_tails_of_a_half_blind_joint_come_nearest_to_the_wish() -> None:
    """W 5 3/8, half-pins and pins 1/4: N tails of (5.375 − 0.5 − 0.25·(N − 1))/N; for 4, (4.875 − 0.75)/4 = 1.03125.

    By hand there are no passes to save, so four, the nearest to 1 in (three would be 1.4583, five 0.775).
    """
    joint = next(j for j in plan(half_blind()).joints if j.mark == "D1-J4")
    assert [b - a for a, b in joint.tails] == [inches("1 1/32")] * 4


def test_the_bottom_groove_runs_out_unseen_behind_the_lap() -> None:
    """Griffith (1908) sec. 104, Noyes (1910) p. 166: the groove lies wholly inside the lowest tail's socket.

    Half-pin 1/4; through corners at the back gain 1/16 (1/2 ÷ 8), so do the half-blind ones, 1/2 deep: 5/16 up.
    The side's groove runs out at the front, under the lap, and stops 17/64 from the back end.
    """
    made = plan(half_blind())
    cuts = {(cut.board, cut.takes): cut for cut in made.features}
    length = sizes(made)["D1-right"][0]
    assert cuts["D1-right", "D1-bottom"].u[0] == inches("5/16")
    assert cuts["D1-right", "D1-bottom"].x == (0, length - inches("17/64"))
    assert cuts["D1-front", "D1-bottom"].x == (0, inches("34 5/32"))


def test_an_applied_front_takes_its_thickness_from_the_drawers_depth_and_gaps_from_the_opening() -> None:
    """Opening 34 1/4 × 5 1/2: front 34 1/8 × 5 3/8. Drawer 19 1/4 − 3/4 = 18 1/2 deep: sides 18 1/2 + 1/32."""
    made = plan(applied())
    found = sizes(made)
    assert found["D1-face"] == (inches("34 1/8"), inches("5 3/8"), inches("3/4"))
    assert found["D1-right"][0] == inches("18 17/32")
    assert made.labels["D1-face"].outside.startswith("D1-face OUTSIDE; looks front, far edge up")


def test_a_groove_behind_an_applied_front_need_not_stop_there() -> None:
    cuts = {(cut.board, cut.takes): cut for cut in plan(applied()).features}
    assert cuts["D1-right", "D1-bottom"].x[0] == 0
    assert cuts["D2-right", "D2-bottom"].x[0] == inches("33/64")


def test_an_applied_front_hides_the_ends_of_the_sides_but_not_its_own_boards_ends() -> None:
    """With pins on the sides the front carries tails, and its ends show on the drawer's sides, which nothing covers.

    Its groove at 5/16 would run out there through the lowest tail, so it stops: side 1/2 + 1/64 − 1/4 = 17/64. A side's
    ends show on the front, behind the applied front, so its groove may run out there wherever it lies.
    """
    front = AppliedFront(stuff=ash("3/4"), gap_nm=inches("1/16"))
    drawer = first_drawer()
    stuff = (ash("3/4"), ash("1/2"), ash("1/2"), ash("1/2"))
    ring = make_ring("D1", RingKind.UPRIGHT, stuff, PinPair.SECOND_AND_FOURTH, SPACING, "main")
    assert drawer.bottom is not None
    through_a_pin = replace(drawer.bottom, up_nm=inches("1/8"))
    turned = with_first_drawer(replace(drawer, ring=ring, applied_front=front, bottom=through_a_pin))
    made = plan(turned)
    cuts = {(cut.board, cut.takes): cut for cut in made.features}
    length = sizes(made)["D1-front"][0]
    assert cuts["D1-front", "D1-bottom"].x == (inches("17/64"), length - inches("17/64"))
    assert cuts["D1-right", "D1-bottom"].x[0] == 0
    assert cuts["D1-right", "D1-bottom"].x[1] < sizes(made)["D1-right"][0]


def test_the_applied_front_is_fixed_once_the_drawer_runs() -> None:
    made = plan(applied())
    place = {mark: n for n, mark in enumerate(mark for work in made.order for mark in work.operations)}
    assert place["drawer D1"] < place["face D1-face"] < place["back C-back"]


@pytest.mark.parametrize("lap", ["3/4", "1"])
def test_a_lap_as_thick_as_the_front_is_a_problem(lap: str) -> None:
    drawer = first_drawer()
    project = with_first_drawer(replace(drawer, ring=with_half_blind_front(drawer.ring, inches(lap))))
    assert [p.where for p in problems(project)] == ["D1-J1", "D1-J4"]


def test_a_lap_without_a_half_blind_joint_is_a_problem() -> None:
    drawer = first_drawer()
    first, second, third, fourth = drawer.ring.corners
    odd = replace(drawer.ring, corners=(replace(first, lap_nm=inches("1/4")), second, third, fourth))
    assert [p.where for p in problems(with_first_drawer(replace(drawer, ring=odd)))] == ["D1-J1"]
