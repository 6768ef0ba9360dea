"""Stops, hanging rails, shelf pins and screw slots, worked out by hand. Millimetres.

The carcase of Hollin Shed is 900 × 800 × 450 of 20, back 6: inside 860 × 760, and 444 deep. Its rails are 18 thick and
60 wide; its drawers are 18 thick in front and 12 at the sides, with 1.5 of air at each side.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from planner.domain.carcase import Carcase
from planner.domain.drawer import Drawer
from planner.domain.plan import BoardSize, Feature
from planner.domain.project import Project
from planner.domain.solid import Solid, solid
from planner.domain.space import Doors, LooseShelves, Space
from planner.domain.words import DividerKind, FeatureKind, Role, Side, Surface
from planner.errors import PlanError
from planner.lengths import Nm
from tests.oracle import assembly_pieces as hollin
from tests.oracle.assembly_pieces import carcase, columns, drawers, holding, mm, project, tiers
from tests.oracle.assembly_plan import derived

RAIL, SHELF = DividerKind.RAIL, DividerKind.SHELF


def of(piece: Carcase) -> Project:
    return project(carcases=(piece,))


def boards_of(piece: Carcase, role: Role) -> dict[str, BoardSize]:
    return {board.mark: board for board in derived(of(piece)).boards if board.role is role}


def refused(piece: Carcase) -> str:
    with pytest.raises(PlanError) as caught:
        derived(of(piece))
    return "\n".join(f"{each.where}: {each.what} {each.remedy}" for each in caught.value.problems)


def block(right: tuple[float, float], back: tuple[float, float], up: tuple[float, float]) -> Solid:
    return solid(span(right), span(back), span(up))


def span(places: tuple[float, float]) -> tuple[Nm, Nm]:
    return mm(places[0]), mm(places[1])


# --- drawer stops ------------------------------------------------------------------------------------------


def three(pattern: Drawer) -> Carcase:
    return carcase(holding(tiers(RAIL, *drawers(pattern, 3))))


def test_two_stops_stand_behind_the_front_a_quarter_way_in() -> None:
    """Inside the drawer 860 - 3 - 24 = 833, from 33.5: middles at 241.75, 658.25. The lowest is on the bottom."""
    found = boards_of(three(hollin.STOPPED_DRAWER), Role.DRAWER_STOP)
    assert len(found) == 2 * 3
    assert found["D103-stop1"].place == block((221.75, 261.75), (18, 38), (20, 26))
    assert found["D103-stop2"].place == block((638.25, 678.25), (18, 38), (20, 26))
    lowest = found["D103-stop1"]
    assert (lowest.length_nm, lowest.width_nm, lowest.thickness_nm) == (mm(40), mm(20), mm(6))


def test_a_narrow_drawer_has_one_in_the_middle() -> None:
    """A column of 180: inside the drawer 180 - 3 - 24 = 153, less than 4 × 40. Middle at 20 + 90."""
    narrow = holding(tiers(SHELF, *drawers(hollin.STOPPED_DRAWER, 2)), size=180)
    found = boards_of(carcase(holding(columns(narrow, holding()))), Role.DRAWER_STOP)
    assert sorted(found) == ["D101-stop1", "D102-stop1"]
    assert found["D102-stop1"].place == block((90, 130), (18, 38), (20, 26))


def test_slips_leave_less_room_between_them() -> None:
    """Inside 833 - 16 = 817, from 41.5: middles at 245.75 and 654.25."""
    found = boards_of(three(hollin.STOPPED_ON_SLIPS), Role.DRAWER_STOP)
    assert found["D103-stop1"].place.right == span((225.75, 265.75))
    assert found["D103-stop2"].place.right == span((634.25, 674.25))


def test_an_inset_front_pushes_them_back() -> None:
    """Behind the applied front of 20 and the drawer's own of 18."""
    found = boards_of(three(hollin.STOPPED_BEHIND_FRONT), Role.DRAWER_STOP)
    assert {board.place.back for board in found.values()} == {span((38, 53))}


@pytest.mark.parametrize(
    "piece",
    [
        replace(three(hollin.STOPPED_DRAWER), runners=hollin.HUNG),
        three(replace(hollin.OVERLAY_FRONT, stops=hollin.STOPS)),
        three(hollin.SLID_IN),
    ],
    ids=["hung", "overlay", "not asked for"],
)
def test_no_stops_where_nothing_can_shut_against_them(piece: Carcase) -> None:
    assert boards_of(piece, Role.DRAWER_STOP) == {}


def test_blocks_as_high_as_the_bottom_are_refused() -> None:
    """The half-pin of 6 gains 18 / 7 = 2.57 to the inside: the groove begins at 8.6, on the grid of 0.1."""
    stops = replace(hollin.STOPS, stuff=hollin.beech(8.6))
    said = refused(three(replace(hollin.SLID_IN, stops=stops)))
    assert "stops of D101: blocks 8.6 mm high are in the way of the bottom, which lies 8.6 mm up." in said
    lower = replace(hollin.STOPS, stuff=hollin.beech(8.5))
    assert len(boards_of(three(replace(hollin.SLID_IN, stops=lower)), Role.DRAWER_STOP)) == 2 * 3


def test_a_back_down_to_the_runners_is_refused() -> None:
    said = refused(three(replace(hollin.drawer("X"), stops=hollin.STOPS)))
    assert said.count("the drawer's back reaches down to what it runs on") == 3
    assert 'goes = "slid in"' in said


def test_a_rail_too_narrow_for_the_blocks_is_refused() -> None:
    """18 of front and 42 of block come to the rail's 60; the lowest drawer stands on the bottom, which is deep."""
    fits = replace(hollin.STOPS, width_nm=mm(42))
    assert len(boards_of(three(replace(hollin.SLID_IN, stops=fits)), Role.DRAWER_STOP)) == 2 * 3
    wide = replace(hollin.STOPS, width_nm=mm(42.1))
    said = refused(three(replace(hollin.SLID_IN, stops=wide)))
    assert "blocks 42.1 mm wide lie past D101-rail: only 42.0 mm of it is behind the front." in said
    assert "stops of D103" not in said


def test_blocks_longer_than_the_drawer_is_wide_are_refused() -> None:
    long = replace(hollin.STOPS, length_nm=mm(834))
    assert "don't fit between the drawer's sides" in refused(three(replace(hollin.SLID_IN, stops=long)))


# --- door stops --------------------------------------------------------------------------------------------


def behind(doors: Doors, held: LooseShelves | None = None) -> Carcase:
    return carcase(holding(held, doors=replace(doors, stops=hollin.DOOR_STOPS)))


@pytest.mark.parametrize(("side", "right"), [(Side.LEFT, (860, 880)), (Side.RIGHT, (20, 40))])
def test_a_door_shuts_against_a_strip_at_its_closing_edge(side: Side, right: tuple[float, float]) -> None:
    """Behind a door of 20; from the bottom to the top, its grain upright."""
    found = boards_of(behind(replace(hollin.DOOR, hinged=side)), Role.DOOR_STOP)
    assert sorted(found) == ["C-doorstop"]
    strip = found["C-doorstop"]
    assert strip.place == block(right, (20, 32), (20, 780))
    assert (strip.length_nm, strip.width_nm, strip.thickness_nm) == (mm(760), mm(20), mm(12))


def test_a_pair_shuts_against_strips_above_and_below() -> None:
    found = boards_of(behind(hollin.PAIR), Role.DOOR_STOP)
    assert found["C-doorstop1"].place == block((20, 880), (20, 32), (760, 780))
    assert found["C-doorstop2"].place == block((20, 880), (20, 32), (20, 40))
    assert found["C-doorstop1"].length_nm == mm(860)


def test_a_strip_in_the_way_of_a_shelf_is_refused_with_how_much() -> None:
    """Behind the door of 20 and its gap of 2 the fixed shelf begins, and the strip ends at 32."""
    tier = tiers(SHELF, holding(), holding())
    said = refused(carcase(Space(holds=tier, doors=replace(hollin.DOOR, stops=hollin.DOOR_STOPS))))
    assert "C-doorstop: C-1-shelf is in its way by 10.0 mm." in said
    assert "leave out the stops" in said


def test_a_drawer_must_come_out_past_a_strip() -> None:
    tier = tiers(SHELF, *drawers(hollin.drawer("X"), 2))
    said = refused(carcase(Space(holds=tier, doors=replace(hollin.DOOR, stops=hollin.DOOR_STOPS))))
    assert "C-doorstop: the drawer D101 could not come out past it." in said
    assert said.count("could not come out") == 2


def test_a_pair_with_nothing_above_it_has_nothing_to_shut_against() -> None:
    pair = replace(hollin.PAIR, stops=hollin.DOOR_STOPS)
    tier = tiers(DividerKind.NOTHING, holding(), holding(doors=pair))
    said = refused(carcase(holding(tier)))
    assert "C-2-doorstop1: nothing is above the doors to fix it to." in said


# --- hanging rails -----------------------------------------------------------------------------------------


def hung(inside: Space) -> Carcase:
    return replace(carcase(inside), hanging_rail=hollin.HANGING)


def test_a_hanging_rail_lies_below_the_top_against_the_back() -> None:
    """From 780 down 75; from the back at 444 forward 18."""
    found = boards_of(hung(holding(tiers(SHELF, holding(hollin.LOOSE), holding()))), Role.HANGING_RAIL)
    assert sorted(found) == ["C-1-hangingrail"]
    rail = found["C-1-hangingrail"]
    assert rail.place == block((20, 880), (426, 444), (705, 780))
    assert (rail.length_nm, rail.width_nm, rail.thickness_nm) == (mm(860), mm(75), mm(18))


def test_each_of_the_uppermost_spaces_has_a_piece() -> None:
    """A column of 300, a partition of 18, the rest: 860 - 318 = 542."""
    found = boards_of(hung(holding(columns(holding(size=300), holding()))), Role.HANGING_RAIL)
    assert {mark: board.place.right for mark, board in found.items()} == {
        "C-1-hangingrail": span((20, 320)),
        "C-2-hangingrail": span((338, 880)),
    }


def test_a_drawer_must_leave_room_and_a_little_more() -> None:
    """18 of rail and 1/16 in (1.5875): with 19.6 behind it there is room, with 19.5 there isn't."""
    roomy = replace(hollin.drawer("D101"), back_clearance_nm=mm(19.6))
    assert len(boards_of(hung(holding(roomy)), Role.HANGING_RAIL)) == 1
    said = refused(hung(holding(replace(roomy, back_clearance_nm=mm(19.5)))))
    assert "D101-hangingrail: D101 stands where it should be." in said
    assert "a back_clearance of at least ~19.6 mm" in said


def test_a_loose_shelf_that_high_up_is_refused() -> None:
    """Eight shelves of 18: (760 - 144) / 9 = 68.4 above the first, which the rail comes down to."""
    said = refused(hung(holding(replace(hollin.LOOSE, count=8))))
    assert "C-hangingrail: C-loose1 stands where it should be." in said


def test_a_rail_that_fills_its_space_is_refused() -> None:
    said = refused(hung(holding(tiers(SHELF, holding(size=75), holding()))))
    assert "C-1-hangingrail: a rail 75.0 mm wide and 18.0 mm thick fills C-1." in said


# --- shelf pins --------------------------------------------------------------------------------------------


def holes_of(piece: Carcase, board: str) -> list[Feature]:
    features = derived(of(piece)).features
    return sorted(
        (each for each in features if each.kind is FeatureKind.HOLE and each.board == board),
        key=lambda each: (each.u, each.x),
    )


def test_each_shelf_lies_on_pins_as_thick_as_their_holes() -> None:
    """(760 - 54) / 4 = 176.5, so the first shelf lies at 585.5: its hole is from 580.5 to 585.5.

    The right side's end A is its top, 0.4 proud: 214.9 from there. From the front edge: setback 15, then 37 to the
    middle; at the back 444 - 50. Holes 25 apart, five to a row; 8 deep from the inside face of 20.
    """
    found = holes_of(carcase(holding(hollin.ON_PINS)), "C-right")
    assert len(found) == 3 * 5 * 2
    assert {each.u for each in found} == {span((49.5, 54.5)), span((391.5, 396.5))}
    assert {each.y for each in found} == {span((12, 20))}
    assert {each.face for each in found} == {Surface.INSIDE}
    first = [each.x for each in found[:5]]
    assert first == [span((214.9 + 25 * step, 219.9 + 25 * step)) for step in (-2, -1, 0, 1, 2)]


def test_rows_of_shelves_close_together_share_the_room() -> None:
    """Seven shelves: (760 - 126) / 8 = 79.25, so they lie 97.25 apart.

    The hole 50 above a shelf would be 2.75 from the one 50 below the shelf over it, so only the first shelf has it:
    5 levels and six times 4.
    """
    many = carcase(holding(replace(hollin.ON_PINS, count=7)))
    assert len(holes_of(many, "C-left")) == len(holes_of(many, "C-right")) == 2 * (5 + 6 * 4)


def test_holes_below_the_bottom_or_with_no_room_for_the_shelf_are_left_out() -> None:
    """One shelf in a space of 100: 41 above it and below. 25 up it still fits, 50 up or down it doesn't."""
    low = holding(tiers(SHELF, holding(), holding(replace(hollin.ON_PINS, count=1), size=100)))
    assert len(holes_of(carcase(low), "C-left")) == 2 * 3


def test_holes_from_both_sides_of_a_partition_keep_wood_between_them() -> None:
    """Two of 8 in a partition of 18 leave 2, which is over 1/16 in; two of 8.3 leave 1.4."""
    both = holding(columns(holding(hollin.ON_PINS), holding(hollin.ON_PINS)))
    assert len(holes_of(carcase(both), "C-partition1")) == 2 * 3 * 5 * 2
    deep = replace(hollin.ON_PINS, pins=replace(hollin.PINS, depth_nm=mm(8.3)))
    said = refused(carcase(holding(columns(holding(deep), holding(deep)))))
    assert "pins of C-2-loose1: a hole for its pins would run into another hole in C-partition1." in said


def test_a_hole_in_line_with_a_housing_is_refused() -> None:
    """A shelf in a housing 7 deep from the other side, at the height of the loose shelf's underside.

    The partition is 18: holes of 10 would leave 1 before the housing. The loose shelf lies at (760 + 18) / 2 - 18 = 371
    over the inside's bottom, where the fixed shelf lies too, in the middle.
    """
    one = replace(hollin.LOOSE, count=1, pins=replace(hollin.PINS, depth_nm=mm(10)))
    beside = holding(tiers(SHELF, holding(), holding(size=355)))
    said = refused(carcase(holding(columns(holding(one), beside))))
    assert "would run into the housing for C-2.1-shelf in C-partition1" in said


def test_holes_nearly_through_a_side_and_rows_that_meet_are_refused() -> None:
    deep = replace(hollin.ON_PINS, pins=replace(hollin.PINS, depth_nm=mm(18.5)))
    assert "holes 18.5 mm deep leave too little wood in C-left" in refused(carcase(holding(deep)))
    far = replace(hollin.ON_PINS, pins=replace(hollin.PINS, front_nm=mm(375)))
    assert "run into each other" in refused(carcase(holding(far)))


# --- slots of bottoms --------------------------------------------------------------------------------------


def test_a_slot_lies_below_the_back_in_the_middle_of_each_foot() -> None:
    """Bottom: 857 - 24 + 10 - 1 = 842 wide, two whole feet (609.6): middles at 210.5 and 631.5; the back is 10 thick.

    It slides in to 444 - 12 = 432, where the back ends; from the front's groove at 18 - 5 = 13 that is 419.
    """
    features = derived(of(three(hollin.SLOTTED))).features
    slots = [each for each in features if each.board == "D101-bottom" and each.kind is FeatureKind.NOTCH]
    assert sorted(each.x for each in slots) == [span((208, 213)), span((629, 634))]
    assert {each.u for each in slots} == {span((409, 419))}
    assert {each.y for each in slots} == {span((0, 6))}
    assert {each.takes for each in slots} == {""}


def test_a_bottom_without_slots_said_has_none() -> None:
    features = derived(of(three(hollin.SLID_IN))).features
    assert not [each for each in features if each.board.endswith("-bottom") and each.kind is FeatureKind.NOTCH]


def test_pins_and_rails_change_nothing_else() -> None:
    plain = carcase(holding(hollin.LOOSE))
    full = replace(carcase(holding(hollin.ON_PINS)), hanging_rail=hollin.HANGING)
    before, after = derived(of(plain)), derived(of(full))
    assert [each for each in after.boards if each.role is not Role.HANGING_RAIL] == list(before.boards)
    assert [each for each in after.features if each.kind is not FeatureKind.HOLE] == list(before.features)
