"""Doors before a space: where their leaves stand, worked out by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from planner.derive.doors import doors
from planner.derive.parts import Item, Maker
from planner.derive.spaces import Around, DoorPlace, spaces
from planner.domain.carcase import Carcase, Dividers
from planner.domain.panelled import Panelled, Slab
from planner.domain.ring import make_ring
from planner.domain.solid import BACK, DOWN, RIGHT, Solid, solid
from planner.domain.space import Division, Doors, Space
from planner.domain.words import (
    DividerKind,
    HeightRule,
    PinPair,
    RingKind,
    Role,
    Side,
    SizesOver,
    Stands,
    Way,
)
from planner.errors import PlanError
from planner.lengths import Grid, Nm
from tests.oracle.wood import boards_of, overlaps, wood
from tests.pieces import SPACING, ash, inches

INSET = Doors(
    leaves=1,
    hinged=Side.LEFT,
    stands=Stands.INSET,
    gap_nm=inches("1/16"),
    overlay_nm=inches("3/8"),
    made=Slab(stuff=ash("3/4")),
)
OVERLAY = replace(INSET, stands=Stands.OVERLAY)
FRAME = Panelled(
    stuff=ash("3/4"),
    stile_nm=inches("2"),
    rail_nm=inches("2"),
    groove_nm=inches("3/8"),
    tenon_nm=inches("1"),
    panel=ash("1/4"),
    play_nm=inches("1/32"),
)


def space(right: str = "18", up: str = "30") -> Solid:
    """Clear space one inch from the left and two from below."""
    low, under = inches("1"), inches("2")
    return solid((low, low + inches(right)), (0, inches("12")), (under, under + inches(up)))


AROUND = Around(left="C-left", right="C-right", below="C-bottom", above="C-top")


def hung(*said: Doors, place: Solid | None = None) -> list[Item]:
    """Doors before spaces that are five feet from each other."""
    places = []
    for number, each in enumerate(said):
        at = place or space()
        low, high = at.right
        moved = at.with_span(RIGHT, (low + number * inches("60"), high + number * inches("60")))
        places.append(DoorPlace(mark=f"C-{number + 1}", doors=each, place=moved, around=AROUND))
    return list(doors(Maker("C", "C"), places, Grid.IN_32))


def span(low: str, high: str) -> tuple[Nm, Nm]:
    return inches(low), inches(high)


def test_an_inset_door_is_smaller_than_its_space_by_a_gap_all_round() -> None:
    """In a space 18 × 30: 18 − 2/16 = 17 7/8 wide and 29 7/8 high, flush with the front, its grain up and down."""
    (door,) = boards_of(hung(INSET)).values()
    assert (door.mark, door.role, door.lie.along) == ("C-1-door", Role.DOOR, DOWN)
    assert (door.width_nm, door.length_nm, door.thickness_nm) == tuple(map(inches, ("17 7/8", "29 7/8", "3/4")))
    assert door.place.right == span("1 1/16", "18 15/16")
    assert door.place.up == span("2 1/16", "31 15/16")
    assert door.place.back == span("0", "3/4")


def test_the_leaves_of_an_inset_pair_have_a_gap_between_them_too() -> None:
    """18 − 3/16 = 17 13/16, so each leaf is 8 29/32 wide: from 1 1/16 to 9 31/32, and from 10 1/32 to 18 15/16."""
    one, two = boards_of(hung(replace(INSET, leaves=2))).values()
    assert (one.mark, two.mark) == ("C-1-door1", "C-1-door2")
    assert one.place.right == span("1 1/16", "9 31/32")
    assert two.place.right == span("10 1/32", "18 15/16")
    assert one.place.up == two.place.up == span("2 1/16", "31 15/16")


def test_an_overlay_door_stands_before_the_carcase_and_covers_the_edges() -> None:
    """18 + 2 · 3/8 = 18 3/4 wide and 30 3/4 high."""
    (door,) = boards_of(hung(OVERLAY)).values()
    assert door.place.right == span("5/8", "19 3/8")
    assert door.place.up == span("1 5/8", "32 3/8")
    assert (door.place.back[0], door.place.back[1]) == (-inches("3/4"), 0)


def test_an_overlay_pair_shares_what_it_covers_but_for_one_gap() -> None:
    """18 3/4 − 1/16 = 18 11/16, so each leaf is 9 11/32 wide."""
    one, two = boards_of(hung(replace(OVERLAY, leaves=2))).values()
    assert one.place.right == span("5/8", "9 31/32")
    assert two.place.right == span("10 1/32", "19 3/8")


def test_each_panelled_leaf_has_parts_named_after_it() -> None:
    items = hung(replace(INSET, leaves=2, made=FRAME))
    parts = ("stile1", "stile2", "crossrail1", "crossrail2", "panel1")
    assert list(boards_of(items)) == [f"C-1-door{leaf}-{part}" for leaf in (1, 2) for part in parts]
    assert overlaps(wood(items)) == []


def test_a_door_fills_its_leaf_whatever_way_it_is_made() -> None:
    """The frame of a door reaches as far on all sides as a slab would."""
    (slab,) = boards_of(hung(INSET)).values()
    parts = boards_of(hung(replace(INSET, made=FRAME))).values()
    for side in ("right", "back", "up"):
        spans = [getattr(part.place, side) for part in parts]
        assert (min(low for low, _ in spans), max(high for _, high in spans)) == getattr(slab.place, side)


# --- in a carcase -------------------------------------------------------------------------------------------


def carcase(*, said: Doors, partition: str = "3/4") -> Carcase:
    """A cabinet 37 1/2 × 20 inside, of two columns, the second of two tiers; ``said`` before the lower one."""
    tiers = Division(
        way=Way.TIERS,
        divider=DividerKind.SHELF,
        rule=HeightRule.EQUAL,
        step_nm=None,
        ratio=None,
        spaces=(Space(), Space(doors=said)),
    )
    inside = Division(
        way=Way.COLUMNS,
        divider=DividerKind.PARTITION,
        rule=HeightRule.EQUAL,
        step_nm=None,
        ratio=None,
        spaces=(Space(doors=said), Space(holds=tiers)),
    )
    dividers = Dividers(stuff=ash(partition), housing_depth_nm=inches("1/4"))
    return Carcase(
        title="wall cabinet",
        ring=make_ring("C", RingKind.CARCASE, (ash("3/4"),) * 4, PinPair.FIRST_AND_THIRD, SPACING, "main"),
        width_nm=inches("37 1/2"),
        height_nm=inches("20 3/4"),
        depth_nm=inches("10"),
        sizes_over=SizesOver.INSIDE,
        inside=Space(holds=inside),
        partitions=dividers,
        shelves=replace(dividers, stuff=ash("3/4")),
    )


def test_doors_are_named_after_their_spaces_and_stand_before_them() -> None:
    """Inside 37 1/2 less the partition of 3/4 is 36 3/4, so columns of 18 3/8; tiers of (20 3/4 − 3/4)/2 = 10.

    The lower tier of the second column begins 3/4 + 18 3/8 + 3/4 = 19 7/8 from the left and 3/4 from below.
    """
    found = spaces(carcase(said=INSET), Grid.IN_32).doors
    boards = boards_of(doors(Maker("C", "C"), found, Grid.IN_32))
    assert list(boards) == ["C-1-door", "C-2.2-door"]
    lower = boards["C-2.2-door"].place
    assert (lower.right, lower.up) == (span("19 15/16", "38 3/16"), span("13/16", "10 11/16"))


@pytest.mark.parametrize("overlay", ["1/2", "3/8", "23/64"])
def test_doors_that_leave_no_gap_on_the_partition_between_them_are_refused(overlay: str) -> None:
    """Two that each cover 3/8 of a partition of 3/4 touch; 11/32 leave 3/4 − 2 · 11/32 = 1/16, which is their gap."""
    made = carcase(said=replace(OVERLAY, overlay_nm=inches(overlay)))
    with pytest.raises(PlanError) as refused:
        list(doors(Maker("C", "C"), spaces(made, Grid.IN_32).doors, Grid.IN_32))
    (problem,) = refused.value.problems
    assert (problem.where, problem.what) == ("C-2.2-door", "leaves less than a gap of 1/16 in to C-1-door.")


def test_doors_that_leave_their_gap_on_the_partition_between_them_go() -> None:
    made = carcase(said=replace(OVERLAY, overlay_nm=inches("11/32")))
    one, two = boards_of(doors(Maker("C", "C"), spaces(made, Grid.IN_32).doors, Grid.IN_32)).values()
    assert two.place.right[0] - one.place.right[1] == inches("1/16")


def test_a_door_over_the_edges_behind_an_inset_door_is_refused() -> None:
    behind = space().with_span(BACK, (inches("13/16"), inches("12")))
    with pytest.raises(PlanError, match=r"C-1-door: stands over the edges .* behind an inset door"):
        hung(OVERLAY, place=behind)
    assert len(hung(INSET, place=behind)) == 1


def test_all_doors_that_cannot_be_made_are_named() -> None:
    """Gaps of 9 leave nothing of 18 for a single door; leaves of 8 29/32 are narrower than two stiles of 5."""
    no_room = replace(INSET, gap_nm=inches("9"), made=FRAME)
    narrow = replace(INSET, leaves=2, made=replace(FRAME, stile_nm=inches("5")))
    with pytest.raises(PlanError) as refused:
        hung(no_room, narrow)
    problems = refused.value.problems
    assert [problem.where for problem in problems] == ["C-1-door", "C-2-door1", "C-2-door2"]
    assert problems[0].what == "the gaps leave nothing of the door in a space 18 × 30 in."
    assert problems[1].what == "is 8 29/32 in across its stiles, stiles and muntins take 10 in: no panel is left."
