"""The sled sheet followed to the letter, and its counts counted another way."""

from __future__ import annotations

from collections import defaultdict
from itertools import pairwise

import pytest

from planner.domain.plan import EndCut, Plan
from planner.domain.words import End, Side
from planner.pipeline import plan
from planner.plan.sled_order import FIRST_FENCE
from tests.lopsided import planned_lopsided_drawer
from tests.oracle.sheet import cut_by_the_sheet
from tests.oracle.sled_polygons import EndGrain, what_stays
from tests.pieces import inches, six_drawers, small_box

CHEST = plan(six_drawers())


@pytest.mark.parametrize("piece", [CHEST, plan(small_box())], ids=["chest", "box"])
def test_boards_cut_by_the_sheet_have_whole_pins_and_only_the_residue_reported(piece: Plan) -> None:
    cut_by_the_sheet(piece)


def test_the_chest_has_a_mate_for_every_end() -> None:
    # Carcase 4 corners and six drawers of 4: 28 corners, 56 board ends, each in one joint.
    ends = [
        end for joint in CHEST.joints for end in ((joint.pin_board, joint.pin_end), (joint.tail_board, joint.tail_end))
    ]
    assert len(CHEST.joints) == 28
    assert len(set(ends)) == len(ends) == 56


def test_every_pin_end_is_cut_once_at_each_fence_at_one_height() -> None:
    visits: dict[tuple[str, End], list[tuple[Side, int]]] = defaultdict(list)
    for setting in CHEST.sled.settings:
        for cut in setting.cuts:
            visits[cut.board, cut.end].append((setting.fence, setting.bit_height_nm))
    assert len(visits) == 28
    for seen in visits.values():
        assert {fence for fence, _ in seen} == {Side.LEFT, Side.RIGHT}
        assert len(seen) == 2
        assert seen[0][1] == seen[1][1]


def test_changes_counted_by_walking_through_the_settings() -> None:
    steps = list(pairwise(CHEST.sled.settings))
    assert CHEST.sled.height_changes == sum(a.bit_height_nm != b.bit_height_nm for a, b in steps) == 1
    assert CHEST.sled.fence_swaps == sum(a.fence is not b.fence for a, b in steps) == 2
    # One at a time, each begun at the fence in use: 28 walks round, and one height change, from carcase to drawers.
    assert CHEST.sled.joint_by_joint_changes == 29


def test_the_bit_stands_at_the_mates_thickness_and_what_is_proud() -> None:
    # Drawer sides 1/2 in, carcase sides 7/8 in, proud 1/64.
    assert {s.bit_height_nm for s in CHEST.sled.settings} == {inches("33/64"), inches("57/64")}


def test_one_end_as_the_operator_sees_it() -> None:
    """The box's left board, end A down: outside face to the operator, reference edge at the right.

    W 5 1/2, T 1/2, h 1/4, p 1/4. Tails by count: 3 → 1.5 in, 3 passes each, 9; 4 → 1.0625, 3 each, 12; 5 → 0.8, 2 each,
    10; so three. From the reference edge the sockets lie at 1/4–1 3/4, 2–3 1/2, 3 3/4–5 1/4; the same from the far
    edge, which is at the operator's left. Three passes: one at the right fence, two at the left.
    """
    box = plan(small_box())
    right_fence, left_fence = box.sled.settings
    by_end = {(cut.board, cut.end): cut for cut in right_fence.cuts}
    cut = by_end["K-left", End.A]
    assert cut.reference_edge is Side.RIGHT
    assert [(p.socket, p.mark_nm) for p in cut.passes] == [
        (1, inches("1 3/4")),
        (2, inches("3 1/2")),
        (3, inches("5 1/4")),
    ]
    first = next(c for c in left_fence.cuts if (c.board, c.end) == ("K-left", End.A)).passes[:2]
    assert [p.socket for p in first] == [1, 1]
    assert first[0].mark_nm == inches("1/4")
    # Slack 3·0.50389 − 1.5 = 0.01167 in is shared by two overlaps: the second pass shifts 0.50389 − 0.00584 in.
    assert (first[1].mark_nm - inches("1/4")) / inches("1") == pytest.approx(0.49805, abs=2e-5)


# --- an asymmetric drawer front, walked through ------------------------------------------------------------


def cut_of(end: End, fence: Side) -> EndCut:
    """What the front's end gets at a fence."""
    settings = planned_lopsided_drawer().sled.settings
    return next(c for s in settings if s.fence is fence for c in s.cuts if (c.board, c.end) == ("D-front", end))


def marks(cut: EndCut) -> list[tuple[int, float]]:
    """Sockets and marks in inches."""
    return [(one.socket, one.mark_nm / inches("1")) for one in cut.passes]


def near(*wanted: tuple[int, float]) -> list[tuple[int, object]]:
    return [(socket, pytest.approx(mark, abs=1e-6)) for socket, mark in wanted]


def test_the_front_is_cut_at_the_right_fence_first_and_then_at_the_left_from_the_end_that_is_down() -> None:
    """Sides 1/2 and 1/64 proud: the bit stands at 33/64 for all four ends. The front goes A, B, then B, A."""
    right, left = planned_lopsided_drawer().sled.settings
    assert (right.fence, left.fence) == (FIRST_FENCE, FIRST_FENCE.other) == (Side.RIGHT, Side.LEFT)
    assert right.bit_height_nm == left.bit_height_nm == inches("33/64")
    ends = [[(cut.board, cut.end.value) for cut in at.cuts if cut.board == "D-front"] for at in (right, left)]
    assert ends == [[("D-front", "A"), ("D-front", "B")], [("D-front", "B"), ("D-front", "A")]]


def test_end_a_of_the_front_as_the_operator_sees_it() -> None:
    """Front 5 1/2 wide, 3/4 thick, slope 1:8, bit 1/2: slot k = 0.5·√(65/64) = 0.503891.

    From the bottom (reference) edge: half-pin 0 – 1/4, socket 1/4 – 1 1/2, pin, socket 1 3/4 – 3, pin, socket 3 1/2 –
    5 1/4, half-pin 5 1/4 – 5 1/2. Inside, a socket is 2·(3/4)/8 = 0.1875 narrower.

    *End A down, outside face to me.* I turned the left end down, so the bottom edge has come to my RIGHT, and a place
    is 5 1/2 − u from my left. The sockets, from my left: (1) 1/4 – 2, (2) 2 1/2 – 3 3/4, (3) 4 – 5 1/4.

    *Right fence*, where the slot leans left going away: one pass in each socket, its right wall to the right edge of
    the slot: marks 2, 3 3/4, 5 1/4.

    *Left fence*: I have walked round and still see the outside face, and the bottom edge at my right. Socket (1) is
    1 3/4 wide, 1.75/0.503891 = 3.47, so four passes in all, three of them here: 4k − 1.75 = 0.265564 to spare, 0.088521
    at each of three overlaps, so steps of k − 0.088521 = 0.415370 from its left wall: 1/4, 0.665370, 1.080739. The last
    reaches to 1.080739 − 0.25 + k = 1.334630, less than the 1.5625 that the socket is wide inside. Sockets (2) and (3)
    are 1 1/4 wide, 2.48 slots, so three passes, two of them here: 3k − 1.25 = 0.261673 to spare, 0.130837 at each of
    two overlaps, a step of 0.373054: 2 1/2 and 2.873054, 4 and 4.373054.
    """
    right, left = cut_of(End.A, Side.RIGHT), cut_of(End.A, Side.LEFT)
    assert right.reference_edge is left.reference_edge is Side.RIGHT
    assert marks(right) == near((1, 2), (2, 3.75), (3, 5.25))
    assert marks(left) == near(
        (1, 0.25), (1, 0.665370), (1, 1.080739), (2, 2.5), (2, 2.873054), (3, 4), (3, 4.373054)
    )  # fmt: skip


def test_end_b_of_the_front_as_the_operator_sees_it() -> None:
    """*End B down, outside face to me.* The right end went down, so the bottom edge is at my LEFT and a place is u.

    The sockets, from my left: (1) 1/4 – 1 1/2, (2) 1 3/4 – 3, (3) 3 1/2 – 5 1/4: the wide one is the last now.

    *Right fence*: the right walls: 1 1/2, 3, 5 1/4.

    *Left fence*, with the steps worked out for end A: (1) 1/4 and 0.623054, (2) 1 3/4 and 2.123054, (3) 3 1/2, 3.915370
    and 4.330739.
    """
    right, left = cut_of(End.B, Side.RIGHT), cut_of(End.B, Side.LEFT)
    assert right.reference_edge is left.reference_edge is Side.LEFT
    assert marks(right) == near((1, 1.5), (2, 3), (3, 5.25))
    assert marks(left) == near(
        (1, 0.25), (1, 0.623054), (2, 1.75), (2, 2.123054), (3, 3.5), (3, 3.915370), (3, 4.330739)
    )  # fmt: skip


def test_the_front_cut_so_keeps_its_pins_and_turned_the_wrong_way_it_would_not() -> None:
    """With the reference edge at the wrong side, end A's sockets at 1/4 – 2 and 2 1/2 – 3 3/4 take both whole pins.

    The pins are 1/4 and 1/2 wide outside, 3/16 more inside: (0.25 + 0.4375 + 0.5 + 0.6875)/2 · 0.75 = 0.703125 in².
    """
    assert cut_by_the_sheet(planned_lopsided_drawer()) == 4
    joint = next(j for j in planned_lopsided_drawer().joints if (j.pin_board, j.pin_end) == ("D-front", End.A))
    front = EndGrain(139.7, 19.05, 8, 12.7, [(a / 1e6, b / 1e6) for a, b in joint.pins])
    passes = [(side.value, one.mark_nm / 1e6) for side in Side for one in cut_of(End.A, side).passes]
    assert what_stays(front, "A", passes) == pytest.approx((0, 0), abs=1e-6)
    spoilt, _ = what_stays(front, "B", passes)
    assert spoilt == pytest.approx(0.703125 * 25.4**2, abs=1e-3)
