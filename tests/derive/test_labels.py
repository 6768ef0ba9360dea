"""Labels read as a person would read them, and the way boards lie checked by building the ring in space."""

from __future__ import annotations

import pytest

from planner.derive.frame import LIES, from_left, reference_edge_side, seen_at
from planner.derive.labels import labels
from planner.domain.solid import opposite
from planner.domain.words import End, RingKind, Role, Side, Surface
from planner.pipeline import plan
from tests.pieces import six_drawers, small_box

CHEST = plan(six_drawers())


@pytest.mark.parametrize("kind", list(RingKind))
def test_end_a_is_at_the_left_with_the_reference_edge_at_the_bottom(kind: RingKind) -> None:
    # Turn every board so that you look at its outside face with the reference edge at the bottom: right = up × normal.
    for lie in LIES[kind].values():
        up, normal = lie.across, lie.out
        right = (
            up[1] * normal[2] - up[2] * normal[1],
            up[2] * normal[0] - up[0] * normal[2],
            up[0] * normal[1] - up[1] * normal[0],
        )
        assert right == lie.along


@pytest.mark.parametrize("kind", list(RingKind))
def test_walking_round_a_ring_each_end_b_meets_the_next_end_a(kind: RingKind) -> None:
    # In a unit cube with every board in the middle of the side it looks out of, two boards share an edge of the cube.
    lies = [LIES[kind][role] for role in kind.roles]
    for this, following in zip(lies, lies[1:] + lies[:1], strict=True):
        end_b = tuple(a + o for a, o in zip(this.along, this.out, strict=True))
        end_a = tuple(o - a for a, o in zip(following.along, following.out, strict=True))
        assert end_b == end_a
    assert len({lie.across for lie in lies}) == 1


def test_the_sides_of_a_carcase_have_the_ends_that_the_rule_names() -> None:
    # The right side's end A is its top end; the left side's end A is its bottom end.
    assert seen_at(LIES[RingKind.CARCASE][Role.RIGHT], Surface.OUTSIDE, (0, 0, 1)) == "up"
    assert opposite(LIES[RingKind.CARCASE][Role.RIGHT].along) == (0, 0, 1)
    assert opposite(LIES[RingKind.CARCASE][Role.LEFT].along) == (0, 0, -1)


def test_what_stands_on_a_drawer_front() -> None:
    on = CHEST.labels["D3-front"]
    assert on.outside == (
        "D3-front OUTSIDE; looks front, far edge up; "
        "end A left: D3-J4 pins, meets D3-left-B; end B right: D3-J1 pins, meets D3-right-A"
    )
    assert on.inside.endswith("end A right: D3-J4 pins, meets D3-left-B; end B left: D3-J1 pins, meets D3-right-A")
    assert on.end_b == (
        "D3-front END B; looks right, far edge up; D3-J1 pins, meets D3-right-A; reference edge is the bottom edge"
    )


def test_no_two_surfaces_bear_the_same_label() -> None:
    for project in (six_drawers(), small_box()):
        texts = [on.on(surface) for on in plan(project).labels.values() for surface in Surface]
        assert len(set(texts)) == len(texts)


def test_the_same_joint_mark_stands_on_both_mating_ends_and_each_names_the_other() -> None:
    for joint in CHEST.joints:
        for board, end, mate, mate_end in (
            (joint.pin_board, joint.pin_end, joint.tail_board, joint.tail_end),
            (joint.tail_board, joint.tail_end, joint.pin_board, joint.pin_end),
        ):
            text = CHEST.labels[board].on(Surface.END_A if end is End.A else Surface.END_B)
            assert f"{joint.mark} " in text
            assert f"meets {mate}-{mate_end};" in text


def test_every_board_has_labels() -> None:
    boards = {board.mark: board for board in CHEST.boards}
    assert labels(six_drawers(), boards, CHEST.features).keys() == boards.keys()


@pytest.mark.parametrize(("end", "side", "place"), [(End.A, Side.RIGHT, 108), (End.B, Side.LEFT, 32)])
def test_the_operator_sees_end_a_mirrored(end: End, side: Side, place: int) -> None:
    # A board 140 wide, a mark 32 from the reference edge: end A down, the reference edge is at the right, 140 − 32.
    assert reference_edge_side(end) is side
    assert from_left(32, 140, end) == place
    assert from_left(from_left(32, 140, end), 140, end) == 32
