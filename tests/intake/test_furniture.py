"""Usual values of all that a carcase, a drawer or a box can have besides its ring; worked out by hand."""

from __future__ import annotations

from dataclasses import astuple
from typing import Any

import pytest

from planner.domain.bottom import Slips
from planner.domain.box import HingedLid, SawnLid, Till
from planner.domain.carcase import (
    BackPanel,
    BoardedBack,
    Carcase,
    Dividers,
    Frames,
    PanelledBack,
    Plinth,
    Runners,
    SeparateTop,
    Stand,
)
from planner.domain.drawer import AppliedFront, Handles
from planner.domain.panelled import Panelled, Slab
from planner.domain.project import Project
from planner.domain.ring import Stuff
from planner.domain.words import (
    BottomGoes,
    Carries,
    DividerJoint,
    JointKind,
    PinPair,
    Role,
    RunnerKind,
    SizesOver,
    Stands,
)
from planner.errors import InputError
from planner.intake.project_file import read_project
from planner.intake.write_file import write_project
from planner.lengths import Nm
from tests.intake.files import CHEST, chest, drawers, refusals
from tests.intake.furniture import FURNITURE
from tests.intake.test_project_file import least

IN, MM = 25_400_000, 1_000_000
UNITS = pytest.mark.parametrize("units", ["in", "mm"])


def nm(units: str, inches: float, mm: float) -> Nm:
    """Of two lengths, the one in the file's unit."""
    return Nm(round(inches * IN) if units == "in" else round(mm * MM))


def cabinet(*lines: str, units: str = "in") -> Carcase:
    """The small chest: 20 x 30 x 15 in, of oak 7/8 in thick, with rails 3/4 in thick."""
    (made,) = chest(*lines, units=units).carcases
    return made


def oak(thickness: float) -> Stuff:
    """In inches."""
    return Stuff(material="oak", thickness_nm=Nm(round(thickness * IN)))


# --- corners and sizes ------------------------------------------------------------------------------------------


def test_a_carcase_may_be_measured_inside() -> None:
    assert cabinet().sizes_over is SizesOver.OUTSIDE
    assert cabinet('sizes = "inside"').sizes_over is SizesOver.INSIDE


@pytest.mark.parametrize(("units", "lap"), [("in", IN * 18 // 64), ("mm", 74 * MM // 10)])
def test_a_rabbeted_corner_usually_keeps_a_third_of_the_sides(units: str, lap: int) -> None:
    """A third of 7/8 in (22.225 mm): 18 of 56/64 in, or 7.4 mm."""
    ring = cabinet('corners = "rabbet"', units=units).ring
    assert {corner.kind for corner in ring.corners} == {JointKind.RABBET}
    assert {corner.lap_nm for corner in ring.corners} == {lap}
    sides = {ring.board(role).mark for role in (Role.LEFT, Role.RIGHT)}
    assert {corner.tail_board for corner in ring.corners} == sides
    assert all(corner.carries(corner.tail_board) is Carries.END_RABBET for corner in ring.corners)


def test_top_and_bottom_may_be_the_rabbeted_boards() -> None:
    ring = cabinet('corners = "rabbet"', 'rabbets_on = "top and bottom"', "lap = 0.25").ring
    assert ring.pin_pair is PinPair.SECOND_AND_FOURTH
    assert {corner.tail_board for corner in ring.corners} == {"C-top", "C-bottom"}
    assert {corner.lap_nm for corner in ring.corners} == {IN // 4}


def test_pins_said_for_all_leave_a_rabbeted_ring_alone() -> None:
    made = chest('corners = "rabbet"', "[pins]", "tails = 9")
    assert made.carcases[0].ring.spacing.tails is None
    assert next(made.drawers()).ring.spacing.tails == 9
    assert "tails = 9" in write_project(made)


# --- what divides -----------------------------------------------------------------------------------------------


def test_partitions_and_shelves_are_usually_like_the_carcase_in_housings_of_a_third() -> None:
    made = cabinet("partitions = {}", "shelves = {}")
    as_usual = Dividers(stuff=oak(7 / 8), housing_depth_nm=Nm(IN * 18 // 64))
    assert made.partitions == made.shelves == as_usual


@UNITS
def test_a_stopped_housing_usually_stops_half_an_inch_short(units: str) -> None:
    shelves = cabinet('shelves = { joint = "stopped housing" }', units=units).shelves
    assert shelves is not None
    assert (shelves.joint, shelves.stop_nm) == (DividerJoint.STOPPED_HOUSING, nm(units, 0.5, 12))


def test_through_tenons_have_no_housing() -> None:
    shelves = cabinet('shelves = { joint = "through tenons" }').shelves
    assert shelves is not None
    assert (shelves.housing_depth_nm, shelves.stop_nm, shelves.tenons) == (0, 0, 3)


@UNITS
def test_web_frames_as_is_usual(units: str) -> None:
    third = Nm(IN * 18 // 64) if units == "in" else Nm(74 * MM // 10)
    assert cabinet("frames = {}", units=units).frames == Frames(
        stuff=oak(7 / 8),
        rail_nm=nm(units, 2, 50),
        runner_nm=nm(units, 2, 50),
        housing_depth_nm=third,
        groove_nm=nm(units, 3 / 8, 10),
        tenon_nm=nm(units, 1 / 4, 6),
        dust_panel=None,
        play_nm=nm(units, 1 / 32, 1),
    )


@UNITS
def test_runners_as_is_usual(units: str) -> None:
    """Wood on wood as thick as the rails; strips in the drawers' sides thinner and lower; of slides nothing."""
    wood = Runners(kind=RunnerKind.WOOD, stuff=oak(3 / 4), width_nm=nm(units, 1, 25), kickers=True)
    assert cabinet("runners = {}", units=units).runners == wood
    hung = cabinet('runners = { kind = "side-hung" }', units=units).runners
    strip = Stuff(material="oak", thickness_nm=nm(units, 3 / 8, 10))
    assert hung == Runners(kind=RunnerKind.SIDE_HUNG, stuff=strip, width_nm=nm(units, 3 / 4, 20), kickers=False)
    slides = cabinet('runners = { kind = "slides" }', units=units).runners
    assert slides == Runners(kind=RunnerKind.SLIDES, stuff=None, width_nm=Nm(0), kickers=False)


def test_runners_of_a_carcase_without_rails_are_as_thick_as_the_carcase() -> None:
    text = CHEST.replace('rails = { thickness = "3/4 in", width = "2 in" }', "runners = {}\nframes = {}")
    runners = read_project(text, "x").carcases[0].runners
    assert runners is not None
    assert runners.stuff == oak(7 / 8)


# --- what closes ------------------------------------------------------------------------------------------------

BACK = 'material = "oak", thickness = "1/4 in"'


@UNITS
def test_backs_as_is_usual(units: str) -> None:
    half = Nm(IN * 28 // 64) if units == "in" else Nm(111 * MM // 10)  # of 22.225 mm
    play = nm(units, 1 / 32, 1)
    panel = cabinet(f"back = {{ {BACK} }}", units=units).back
    assert panel == BackPanel(stuff=oak(1 / 4), rabbet_depth_nm=half, play_nm=play)
    boards = cabinet(f'back = {{ made = "boards", {BACK} }}', units=units).back
    assert boards == BoardedBack(
        stuff=oak(1 / 4),
        rabbet_depth_nm=half,
        play_nm=play,
        board_nm=nm(units, 4, 100),
        lap_nm=nm(units, 3 / 8, 10),
        gap_nm=nm(units, 1 / 16, 1.5),
    )
    framed = cabinet(f'back = {{ made = "frame and panel", {BACK} }}', units=units).back
    assert isinstance(framed, PanelledBack)
    assert framed.made == usual_frame(units, oak(1 / 4))
    assert (framed.rabbet_depth_nm, framed.play_nm) == (half, play)


def usual_frame(units: str, stuff: Stuff) -> Panelled:
    return Panelled(
        stuff=stuff,
        stile_nm=nm(units, 2, 50),
        rail_nm=nm(units, 2, 50),
        groove_nm=nm(units, 3 / 8, 10),
        tenon_nm=nm(units, 1, 25),
        panel=Stuff(material="oak", thickness_nm=nm(units, 1 / 4, 6)),
        play_nm=nm(units, 1 / 32, 1),
    )


@UNITS
def test_doors_as_is_usual(units: str) -> None:
    doors = cabinet("doors = {}", units=units).inside.doors
    assert doors is not None
    assert (doors.leaves, doors.stands, doors.gap_nm) == (1, Stands.INSET, nm(units, 1 / 16, 1.5))
    assert doors.made == usual_frame(units, oak(7 / 8))
    over = cabinet('doors = { stands = "overlay", made = "slab" }', units=units).inside.doors
    assert over is not None
    assert over.overlay_nm == nm(units, 3 / 8, 10)
    assert over.made == Slab(stuff=oak(7 / 8))


def test_the_tenons_of_narrow_stiles_fill_the_groove_at_least() -> None:
    """Half of 11/16 in is 22/64 in, less than the usual groove of 3/8 in."""
    doors = cabinet('doors = { stile = "11/16 in" }').inside.doors
    assert doors is not None
    assert isinstance(doors.made, Panelled)
    assert doors.made.tenon_nm == doors.made.groove_nm == IN * 3 // 8


@UNITS
def test_a_separate_top_as_is_usual(units: str) -> None:
    over = nm(units, 3 / 4, 20)
    assert cabinet("top = {}", units=units).top == SeparateTop(
        stuff=oak(7 / 8), front_nm=over, sides_nm=over, back_nm=Nm(0)
    )


# --- bases ------------------------------------------------------------------------------------------------------


def test_a_plinth_is_a_ring_marked_after_its_carcase() -> None:
    plinth = cabinet('base = { kind = "plinth", height = 4 }').base
    assert isinstance(plinth, Plinth)
    assert (plinth.ring.mark, plinth.height_nm, plinth.foot_nm, plinth.rise_nm) == ("CP", 4 * IN, None, 0)
    assert [board.stuff for board in plinth.ring.boards] == [oak(7 / 8)] * 4
    assert (plinth.front_nm, plinth.sides_nm, plinth.back_nm) == (0, 0, 0)


@pytest.mark.parametrize(
    ("lines", "pins"),
    [
        ([], PinPair.SECOND_AND_FOURTH),  # 20 x 15
        (["sides = 3"], PinPair.FIRST_AND_THIRD),  # 14 x 15
        (["sides = 3", "front = 2"], PinPair.SECOND_AND_FOURTH),  # 14 x 13
        (["sides = -1", "front = -8"], PinPair.FIRST_AND_THIRD),  # 22 x 23
    ],
)
def test_the_pins_of_a_plinth_are_usually_on_its_shorter_boards(lines: list[str], pins: PinPair) -> None:
    said = ", ".join(['kind = "plinth"', "height = 4", *lines])
    plinth = cabinet(f"base = {{ {said} }}").base
    assert isinstance(plinth, Plinth)
    assert plinth.ring.pin_pair is pins


def test_the_plinth_of_a_carcase_measured_inside_goes_by_its_outside() -> None:
    """13 1/2 inside is 15 1/4 outside, more than the depth of 15; with a back of 1/2 in the depth is 15 1/2."""
    lines = ['sizes = "inside"', 'base = { kind = "plinth", height = 4 }']
    text = "\n".join([CHEST.replace("20 in", "13 1/2 in"), *lines])
    backed = f'{text}\nback = {{ material = "oak", thickness = "1/2 in" }}'
    pairs = []
    for each in (text, backed):
        plinth = read_project(each, "x").carcases[0].base
        assert isinstance(plinth, Plinth)
        pairs.append(plinth.ring.pin_pair)
    assert pairs == [PinPair.SECOND_AND_FOURTH, PinPair.FIRST_AND_THIRD]


@UNITS
def test_bracket_feet_as_is_usual(units: str) -> None:
    """They rise to half the height, rounded down: of 5 1/4 in to 2 5/8 in, which is 66.6 mm and a little."""
    feet = cabinet('base = { kind = "bracket feet", height = "5 1/4 in" }', units=units).base
    assert isinstance(feet, Plinth)
    assert feet.foot_nm == nm(units, 6, 150)
    assert feet.rise_nm == (IN * 21 // 8 if units == "in" else 666 * MM // 10)


@UNITS
def test_a_stand_as_is_usual(units: str) -> None:
    """The tenons go half way into the legs: of 1 3/4 in 7/8 in, of 45 mm 22.5 mm."""
    assert cabinet('base = { kind = "stand", height = "10 in" }', units=units).base == Stand(
        leg=Stuff(material="oak", thickness_nm=nm(units, 1.75, 45)),
        apron=oak(7 / 8),
        height_nm=Nm(10 * IN),
        apron_nm=nm(units, 4, 100),
        tenon_nm=nm(units, 7 / 8, 22.5),
        front_nm=Nm(0),
        sides_nm=Nm(0),
        back_nm=Nm(0),
        setback_nm=nm(units, 1 / 8, 3),
    )


@pytest.mark.parametrize(
    ("said", "nanometres"),
    [
        ('"-1/2 in"', -IN // 2),
        ("-0.5", -IN // 2),
        ('"- 12 mm"', -12 * MM),
        ('"\u22123/4"', -IN * 3 // 4),
        ("0", 0),
        ("1", IN),
    ],
)
def test_a_base_may_stand_out_or_back(said: str, nanometres: int) -> None:
    base = cabinet(f'base = {{ kind = "plinth", height = 4, front = {said} }}').base
    assert base is not None
    assert base.front_nm == nanometres


@pytest.mark.parametrize("said", ['"--1"', '"-"', "-0.5e-9", "nan", "true"])
def test_what_is_no_length_either_way_is_refused(said: str) -> None:
    (message,) = refusals(f'base = {{ kind = "plinth", height = 4, front = {said} }}')
    assert message.startswith("carcase[1].base.front: ")


def test_a_mark_that_has_no_room_for_the_p_of_a_plinth_is_refused() -> None:
    text = CHEST.replace('mark = "C"', 'mark = "CABINET1"') + 'base = { kind = "plinth", height = 4 }\n'
    with pytest.raises(InputError, match="'CABINET1' is too long to have a P added") as error:
        read_project(text, "x")
    assert "carcase[1].base.mark: is missing" in str(error.value)
    named = read_project(text.replace("height = 4", 'height = 4, mark = "X"'), "x").carcases[0].base
    assert isinstance(named, Plinth)
    assert named.ring.mark == "X"


def test_the_usual_mark_of_a_plinth_may_be_taken() -> None:
    (message,) = refusals(
        'base = { kind = "plinth", height = 4 }', "[[box]]", 'mark = "CP"', "length = 9", "width = 9", "height = 9",
        'material = "oak"', "thickness = 0.5",
    )  # fmt: skip
    assert message.startswith("carcase[1].base: the mark 'CP' is already taken, by box[1].mark.")


def test_with_several_sleds_a_plinth_must_name_one_and_a_rabbeted_carcase_need_not() -> None:
    sled = CHEST.partition("[sled.bench]\n")[2].partition("[[carcase]]")[0]
    text = CHEST.replace("[[carcase]]", f"[sled.other]\n{sled}[[carcase]]")
    text += 'corners = "rabbet"\nbase = { kind = "plinth", height = 4 }\n'
    with pytest.raises(InputError) as error:
        read_project(text, "x")
    places = {str(problem).split(": ")[1] for problem in error.value.problems}
    assert places == {"carcase[1].drawer.sled", "carcase[1].base.sled"}


# --- drawers ----------------------------------------------------------------------------------------------------


@UNITS
def test_drawers_on_slides_have_the_space_that_slides_need(units: str) -> None:
    """Common practice, no source: the maker's sheet has the last word."""
    made = drawers('runners = { kind = "slides" }', "except.D2.side_clearance = '13 mm'", units=units)
    assert [made[mark].side_clearance_nm for mark in ("D1", "D2")] == [nm(units, 0.5, 12.7), 13 * MM]


def test_a_groove_is_half_the_thinnest_board_that_has_it() -> None:
    """Front 3/4, sides 1/2, back 1/2 in; slips are 3/8 in thick."""
    shut_in = drawers('drawer.bottom = { material = "oak", thickness = "1/4 in" }', "except.D2.back_thickness = 0.25")
    assert [drawer.bottom.groove_depth_nm for drawer in shut_in.values() if drawer.bottom] == [
        IN // 4,
        IN // 8,
        IN // 4,
    ]
    thin_back = drawers(
        'drawer.bottom = { material = "oak", thickness = "1/4 in", goes = "slid in" }',
        "except.D2.back_thickness = 0.25",
    )
    assert {drawer.bottom.groove_depth_nm for drawer in thin_back.values() if drawer.bottom} == {IN // 4}
    slips = drawers('drawer.bottom = { material = "oak", thickness = "1/4 in", slips = {} }')["D1"].bottom
    assert slips is not None
    assert slips.groove_depth_nm == IN * 3 // 16
    thin_sides = drawers(
        'drawer.bottom = { material = "oak", thickness = "1/4 in", slips = { thickness = 0.5 } }',
        "except.D1.side_thickness = 0.25",
    )["D1"].bottom
    assert thin_sides is not None
    assert thin_sides.groove_depth_nm == IN // 4


@UNITS
def test_slips_and_handles_as_is_usual(units: str) -> None:
    lines = ['drawer.bottom = { material = "oak", thickness = "1/4 in", slips = {} }', "drawer.handles = {}"]
    made = drawers(*lines, "except.D2.handles = { holes = 2, count = 2 }", units=units)
    bottom = made["D1"].bottom
    assert bottom is not None
    slip = Stuff(material="oak", thickness_nm=nm(units, 3 / 8, 10))
    assert bottom.slips == Slips(stuff=slip, height_nm=nm(units, 3 / 4, 20))
    hole = nm(units, 3 / 16, 5)
    assert made["D1"].handles == Handles(count=1, holes=1, apart_nm=Nm(0), hole_nm=hole)
    assert made["D2"].handles == Handles(count=2, holes=2, apart_nm=nm(units, 3, 96), hole_nm=hole)


@UNITS
def test_an_overlay_front_covers_as_is_usual_and_has_no_gap(units: str) -> None:
    made = drawers('drawer.applied_front = { material = "oak", thickness = "3/4 in", stands = "overlay" }', units=units)
    assert made["D1"].applied_front == AppliedFront(
        stuff=oak(3 / 4), gap_nm=Nm(0), stands=Stands.OVERLAY, overlay_nm=nm(units, 3 / 8, 10)
    )


def test_one_drawer_may_differ_in_everything_new() -> None:
    made = drawers(
        'drawer.bottom = { material = "oak", thickness = "1/4 in", goes = "slid in" }',
        "drawer.back_lower = 0.25",
        'drawer.applied_front = { material = "oak", thickness = "3/4 in", stands = "overlay", overlay = 0.5 }',
        'except.D2 = { back_lower = 0, bottom = { goes = "all round" }, applied_front = { stands = "inset" } }',
    )
    one, two = made["D1"], made["D2"]
    assert one.bottom is not None
    assert two.bottom is not None
    assert (one.bottom.goes, two.bottom.goes) == (BottomGoes.SLID_IN, BottomGoes.ALL_ROUND)
    assert (one.back_lower_nm, two.back_lower_nm) == (IN // 4, 0)
    assert one.applied_front is not None
    assert two.applied_front is not None
    assert (one.applied_front.overlay_nm, two.applied_front.overlay_nm) == (IN // 2, 0)
    assert two.applied_front.gap_nm == IN // 16


# --- boxes ------------------------------------------------------------------------------------------------------


def box_with(*lines: str, units: str = "in") -> Any:
    (made,) = from_least(*lines, units=units).boxes
    return made


def from_least(*lines: str, units: str = "in") -> Project:
    from planner.lengths import Unit

    return least(Unit(units), more="".join(f"{line}\n" for line in lines))


@UNITS
def test_lids_and_tills_as_is_usual(units: str) -> None:
    """The box is 1/2 in thick; a third of that is 10/64 in, or 4.2 mm."""
    over = nm(units, 0.5, 12)
    flat = box_with('lid = { kind = "hinged" }', units=units).lid
    assert flat == HingedLid(made=Slab(stuff=oak(1 / 2)), front_nm=over, sides_nm=over, back_nm=Nm(0))
    top = '{ material = "oak", thickness = "1/4 in" }'
    sawn = box_with(f'lid = {{ kind = "sawn", height = "1 in", top = {top} }}', units=units).lid
    assert isinstance(sawn, SawnLid)
    assert (sawn.height_nm, sawn.kerf_nm) == (IN, nm(units, 1 / 8, 3))
    depth = IN // 4 if units == "in" else 63 * MM // 10
    assert astuple(sawn.top)[1:4] == (depth, None, nm(units, 1 / 32, 1))
    till = box_with('till = { width = "3 in", depth = "2 in", lid = {} }', units=units).till
    stuff = Stuff(material="oak", thickness_nm=nm(units, 3 / 8, 10))
    assert till == Till(
        stuff=stuff,
        width_nm=Nm(3 * IN),
        depth_nm=Nm(2 * IN),
        housing_depth_nm=Nm(IN * 10 // 64) if units == "in" else Nm(42 * MM // 10),
        lid=stuff,
    )


def test_boxes_of_a_nest_go_into_each_other_with_the_gap_all_round() -> None:
    """The nest of the sound file: 300 x 220 x 180, of 10 mm, gaps of 2.

    Each is 2 (10 + 2) smaller both ways; it stands on a bottom that ends 12 above the edge of the box before, below a
    top whose under face is 10 below its other edge, and leaves 2: 24 lower.
    """
    boxes = read_project(FURNITURE, "x").boxes[1:]
    sizes = [(box.length_nm // MM, box.width_nm // MM, box.height_nm // MM) for box in boxes]
    assert sizes == [(300, 220, 180), (276, 196, 156), (252, 172, 132), (228, 148, 108)]
    assert [box.batch for box in boxes] == [box.ring.mark for box in boxes] == ["N1", "N2", "N3", "N4"]
    assert len({(box.bottom, box.lid) for box in boxes}) == 1


def test_the_lids_of_a_nest_go_in_with_their_overhangs() -> None:
    """1/2 in boards, gaps of 1/8; lids 1/4 thick stand 1/8 over front and sides: 1 1/2 shorter, 1 3/8 narrower."""
    lid = 'lid = { kind = "hinged", thickness = 0.25, front = 0.125, sides = 0.125, back = 0 }'
    for sizes in ("outside", "inside"):
        made = from_least(f'sizes = "{sizes}"', lid, "nest = { count = 2, gap = 0.125 }").boxes
        found = [(box.length_nm, box.width_nm, box.height_nm) for box in made]
        assert found == [(12 * IN, 8 * IN, 4 * IN), (IN * 21 // 2, IN * 53 // 8, IN * 29 // 8)]


def test_a_nest_is_written_as_the_boxes_it_is_made_of() -> None:
    project = read_project(FURNITURE, "x")
    text = write_project(project)
    assert "nest" not in text
    assert read_project(text, "again") == project


def test_a_nest_whose_smallest_box_would_be_all_lid_is_refused() -> None:
    """That box is 108 high, as worked out above, and the kerf 3: a lid of 105 leaves nothing of it."""
    low = FURNITURE.replace("height = 40\nkerf = 3", "height = 104\nkerf = 3")
    project = read_project(low, "x")
    assert read_project(write_project(project), "again") == project
    with pytest.raises(InputError, match="box 4 of the nest would have no room inside"):
        read_project(low.replace("height = 104", "height = 105"), "x")
