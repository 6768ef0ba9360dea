"""Lids that lie on a box, worked out by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from planner.derive.lids import lid
from planner.derive.parts import Item, Maker
from planner.domain.box import Box, HingedLid
from planner.domain.panelled import Panelled, Slab
from planner.domain.ring import make_ring
from planner.domain.solid import BACK, RIGHT, solid
from planner.domain.words import PinPair, RingKind, Role, SizesOver
from planner.errors import PlanError
from planner.lengths import Nm
from tests.oracle.wood import all_of, block_of, boards_of, overlaps, volume, wood
from tests.pieces import SPACING, ash, inches, project

SLAB = HingedLid(made=Slab(stuff=ash("3/4")), front_nm=inches("1/2"), sides_nm=inches("5/8"), back_nm=inches("0"))
FRAME = Panelled(
    stuff=ash("7/8"),
    stile_nm=inches("3"),
    rail_nm=inches("2 1/2"),
    groove_nm=inches("3/8"),
    tenon_nm=inches("1 1/2"),
    panel=ash("3/8"),
    play_nm=inches("1/8"),
    wide=3,
    high=1,
)


def closed(said: HingedLid | None) -> list[Item]:
    """The lid of a chest 40 × 18 × 16 over all, of 3/4 in boards."""
    box = Box(
        title="blanket chest",
        batch="K",
        ring=make_ring("K", RingKind.UPRIGHT, (ash("3/4"),) * 4, PinPair.SECOND_AND_FOURTH, SPACING, "main"),
        length_nm=inches("40"),
        width_nm=inches("18"),
        height_nm=inches("16"),
        sizes_over=SizesOver.OUTSIDE,
        bottom=None,
        lid=said,
    )
    block = solid((0, box.length_nm), (0, box.width_nm), (0, box.height_nm))
    return list(lid(project(boxes=(box,)), Maker("K", "K"), box, block))


def span(low: str, high: str) -> tuple[Nm, Nm]:
    return inches(low), inches(high)


def test_a_box_without_a_lid_has_none() -> None:
    assert closed(None) == []


def test_a_slab_lies_on_the_box_and_stands_over_it() -> None:
    """40 + 2 · 5/8 = 41 1/4 along the front and 18 + 1/2 = 18 1/2 deep, on boards 16 high; grain from side to side."""
    (board,) = boards_of(closed(SLAB)).values()
    assert (board.mark, board.role, board.lie.along) == ("K-lid", Role.LID, RIGHT)
    assert (board.length_nm, board.width_nm, board.thickness_nm) == tuple(map(inches, ("41 1/4", "18 1/2", "3/4")))
    assert board.place.right == (-inches("5/8"), inches("40 5/8"))
    assert board.place.back == (-inches("1/2"), inches("18"))
    assert board.place.up == span("16", "16 3/4")


def test_a_lid_may_stand_back_as_far_as_it_lies_on_all_four_boards() -> None:
    """1/2 back from every side of 40 × 18 it is 39 × 17; 3/4 back it would lie on nothing."""
    back = Nm(-inches("1/2"))
    (board,) = boards_of(closed(replace(SLAB, front_nm=back, sides_nm=back, back_nm=back))).values()
    assert (board.place.right, board.place.back) == (span("1/2", "39 1/2"), span("1/2", "17 1/2"))
    with pytest.raises(PlanError) as refused:
        closed(replace(SLAB, sides_nm=Nm(-inches("3/4"))))
    assert [(problem.where, problem.what) for problem in refused.value.problems] == [
        ("K-lid", f"stands back 3/4 in from the {side} of the box, K-{side}, which is only 3/4 in thick.")
        for side in ("right", "left")
    ]


def test_a_frame_has_its_stiles_in_front_and_behind_and_its_panels_side_by_side() -> None:
    """A lid 41 1/4 × 18 1/2: three panels beside each other between four rails of 2 1/2 that run from front to back.

    Along the front: 41 1/4 − 4 · 2 1/2 = 31 1/4, a third of which is 10 5/12; panels 10 5/12 + 3/4 − 1/8 = 11 1/24.
    From front to back: 18 1/2 − 2 · 3 = 12 1/2; rails 12 1/2 + 2 · 1 1/2 = 15 1/2 long, panels 12 1/2 + 3/4 − 1/8 =
    13 1/8 wide, their grain from side to side like that of the stiles.
    """
    boards = boards_of(closed(replace(SLAB, made=FRAME)))
    assert sorted(boards) == sorted(
        f"K-lid-{part}"
        for part in ("stile1", "stile2", *(f"crossrail{n}" for n in (1, 2, 3, 4)), *(f"panel{n}" for n in (1, 2, 3)))
    )
    stile, rail, panel = (boards[f"K-lid-{part}"] for part in ("stile1", "crossrail1", "panel1"))
    assert (stile.length_nm, stile.width_nm, stile.lie.along) == (inches("41 1/4"), inches("3"), RIGHT)
    assert stile.place.back == (-inches("1/2"), inches("2 1/2"))
    assert (rail.length_nm, rail.width_nm) == (inches("15 1/2"), inches("2 1/2"))
    assert rail.lie.along in {BACK, (0, -1, 0)}
    assert rail.place.right[0] == -inches("5/8")
    assert (panel.width_nm, panel.lie.along) == (inches("13 1/8"), RIGHT)
    assert abs(24 * panel.length_nm - inches("265")) <= 24
    assert panel.place.right[0] < boards["K-lid-panel2"].place.right[0] < boards["K-lid-panel3"].place.right[0]


def test_a_frame_fills_the_lid_but_for_recesses_and_play() -> None:
    """41 1/4 · 18 1/2 · 7/8 = 667.734375 cubic inches.

    Of 31 1/4 · 12 1/2 square inches of openings 7/8 − 3/8 = 1/2 in is open: 195.3125. The rooms of the panels are
    (31 1/4 + 3 · 3/4) · 13 1/4 · 3/8 = 166.453125, the panels (31 1/4 + 3 · 5/8) · 13 1/8 · 3/8 = 163.037109375.
    So 667.734375 − 195.3125 − 3.416015625 = 469.005859375 are filled, to what a nanometre makes in a third of 31 1/4.
    """
    items = closed(replace(SLAB, made=FRAME))
    solids = wood(items)
    assert overlaps(solids) == []
    filled = volume(all_of(solids))
    by_hand = 469_005859375 * inches("1") ** 3 // 10**9
    assert abs(filled - by_hand) <= 3 * inches("13 1/8") * inches("7/8")
    assert {block_of(board.place)[2] for board in boards_of(items).values() if board.role is not Role.PANEL} == {
        (inches("16"), inches("16 7/8"))
    }


def test_panels_behind_each_other_are_parted_by_a_muntin() -> None:
    boards = boards_of(closed(replace(SLAB, made=replace(FRAME, wide=1, high=2))))
    muntin = boards["K-lid-muntin1"]
    assert muntin.lie.along == RIGHT
    front, behind = boards["K-lid-panel1"].place, boards["K-lid-panel2"].place
    assert front.right == behind.right
    assert front.back[1] < muntin.place.back[1]
    assert behind.back[0] > muntin.place.back[0]
