"""Grooves, rabbets and housings set up in space, and the corners where they would show."""

from __future__ import annotations

from dataclasses import replace

import pytest

from planner.derive.fits import must_fit
from planner.domain.operation import Machine
from planner.domain.plan import Feature
from planner.domain.words import FeatureKind, Surface
from planner.errors import PlanError
from planner.lengths import Nm
from planner.pipeline import plan
from tests.pieces import inches, six_drawers

CHEST = plan(six_drawers())
BOARDS = {board.mark: board for board in CHEST.boards}
CUTS = {(cut.board, cut.takes): cut for cut in CHEST.features}


def test_a_bottom_groove_leaves_the_front_unseen_and_stops_in_the_sides() -> None:
    """The half-pin of 1/4 gains 3/4 ÷ 8 = 3/32 on the inside face, so the groove starts 11/32 up.

    It ends at 19/32, inside the lowest socket: through on the front. On a side it would run out through the lowest
    tail, so it stops where the bottom stops in the front's groove: 3/4 + 1/64 − 1/4 = 33/64 from the front end, and at
    the back end 1/2 + 1/64 − 1/4 = 17/64.
    """
    front, side = CUTS["D1-front", "D1-bottom"], CUTS["D1-right", "D1-bottom"]
    assert front.u == side.u == (inches("11/32"), inches("19/32"))
    assert front.x == (0, BOARDS["D1-front"].length_nm)
    assert side.x == (inches("33/64"), BOARDS["D1-right"].length_nm - inches("17/64"))


def test_the_back_rabbet_stops_in_the_pin_boards_and_runs_out_in_the_half_pin_of_the_tail_boards() -> None:
    # Rabbet 1/4 wide at the back edge, half-pin 1/4: on the sides it is inside the space for the half-pin, unseen. On
    # top and bottom it would notch the half-pin itself: stop 7/8 + 1/64 − 3/8 = 33/64 from each end.
    side, top = CUTS["C-right", "C-back"], CUTS["C-top", "C-back"]
    assert side.kind is top.kind is FeatureKind.RABBET
    assert side.x == (0, BOARDS["C-right"].length_nm)
    assert top.x == (inches("33/64"), BOARDS["C-top"].length_nm - inches("33/64"))
    assert top.u == (inches("19 3/4"), inches("20"))


def test_the_housings_of_a_rail_lie_at_one_height_in_both_sides() -> None:
    """The right side is measured from its top end, the left side from its bottom end (their ends A).

    The rail below drawer 2 has its upper face 5 1/2 + 3/4 + 6 = 12 1/4 under the carcase's top board of 7/8, so
    1/64 + 7/8 + 12 1/4 = 13 9/64 from the right side's end A; the left side's end A is 46 + 1/32 − 13 9/64 − 3/4 away.
    """
    right, left = CUTS["C-right", "D2-rail"], CUTS["C-left", "D2-rail"]
    length = BOARDS["C-left"].length_nm
    assert right.x == (inches("13 9/64"), inches("13 57/64"))
    assert (length - left.x[1], length - left.x[0]) == right.x
    assert right.face is left.face is Surface.INSIDE


def test_both_sides_are_housed_at_one_setting() -> None:
    housings = [work for work in CHEST.order if work.machine is Machine.ROUTER_GUIDE]
    assert [len(work.operations) for work in housings] == [2] * 5


def fits(**changes: object) -> None:
    good = CUTS["D1-right", "D1-bottom"]
    must_fit(six_drawers(), BOARDS, [replace(good, **changes)])  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"y": (Nm(0), inches("1/2"))}, "right through"),
        ({"u": (inches("5"), inches("6"))}, "past its edge"),
        ({"u": (Nm(-1), inches("1"))}, "past its edge"),
        ({"x": (inches("1"), inches("30"))}, "longer than the board"),
    ],
)
def test_a_cut_that_the_board_cannot_take_is_refused(changes: dict[str, object], said: str) -> None:
    fits()
    with pytest.raises(PlanError, match=said):
        fits(**changes)


def test_cuts_that_meet_from_both_faces_are_refused() -> None:
    good = CUTS["C-right", "D2-rail"]
    facing = Feature(
        kind=good.kind,
        board=good.board,
        face=Surface.OUTSIDE,
        x=good.x,
        u=good.u,
        y=(Nm(0), inches("5/8")),
        takes="other rail",
    )
    with pytest.raises(PlanError, match="meet inside the board"):
        must_fit(six_drawers(), BOARDS, [good, facing])
