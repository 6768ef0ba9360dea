"""The sled sheet followed to the letter, and its counts counted another way."""

from __future__ import annotations

from collections import defaultdict
from itertools import pairwise

import pytest

from planner.domain.plan import Plan
from planner.domain.words import End, Side
from planner.pipeline import plan
from planner.plan.sled import joint_by_joint_changes
from tests.oracle.sheet import cut_by_the_sheet
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


def test_a_joint_by_joint_count_by_hand() -> None:
    low, high = ("main", inches("1/2")), ("main", inches("3/4"))
    # low, high, high, low: four walks round, changes of height at 1→2 and 3→4.
    assert joint_by_joint_changes([low, high, high, low]) == 6


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
