"""Checks of movement, with figures worked out by hand on a timber with round figures.

*Even* changes by 0.003 of its width for each percent when flat-sawn, by 0.001 when quarter-sawn; *still* always by
0.001. The wood is at 8 % today and goes from 6 to 12 %: even then swells by 4 x 0.003 = 0.012 and shrinks by
2 x 0.003 = 0.006 of its width. Lengths are shown in 1/64 in; remedies are rounded up to these.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.checks.drawers_run import drawers_run
from planner.domain.box import Box
from planner.domain.carcase import BoardedBack, Carcase, Dividers, SeparateTop, Stand
from planner.domain.climate import Climate, Room
from planner.domain.drawer import AppliedFront
from planner.domain.panelled import Made, Panelled, Slab
from planner.domain.plan import Finding
from planner.domain.project import Project
from planner.domain.ring import Stuff
from planner.domain.space import Doors, Space
from planner.domain.timber import Timber
from planner.domain.words import DividerKind, Hardness, Level, MaterialKind, Sawn, Side, SizesOver, Stands
from planner.pipeline import plan
from planner.wood.panel import Fitted, deeper, narrower
from planner.wood.timbers import timbers_of
from tests.pieces import ash, columns, drawer, inches, ply, six_drawers, small_box, tiers
from tests.timbers import facts_with

EVEN = Timber(
    name="even",
    kind=MaterialKind.SOLID,
    tangential=0.003,
    radial=0.001,
    specific_gravity=0.5,
    stiffness_gpa=10.0,
    strength_mpa=80.0,
    hardness=Hardness.HARD,
    source="made up for a test",
)
STILL = replace(EVEN, name="still", tangential=0.001)

CODES = {
    "drawer-binds", "drawer-tight", "drawer-room", "door-binds", "door-tight", "panel-binds", "panel-comes-out",
    "panel-may-slide", "back-boards-bind", "back-boards-part", "unlike-timber", "slots-for-movement", "unnamed-timber",
}  # fmt: skip


def percent(moisture: int) -> Climate:
    return Climate(moisture_hundredths=moisture * 100)


def known(made: Project, *, sawn: Sawn | None = None, dry: int = 6, damp: int = 12) -> Project:
    """The same project with its solid wood of even, and the usual seasons of these tests."""
    solid, sheet, *more = made.materials
    return replace(
        made,
        materials=(replace(solid, species="even", sawn=sawn), sheet, *more),
        timbers=(EVEN, STILL),
        room=Room(dry=percent(dry), damp=percent(damp)),
        shop=percent(8),
    )


def found(made: Project, *codes: str) -> list[Finding]:
    """What the checks of movement find, but for the sheets that nobody named; only these codes, if any are told."""
    wanted = set(codes) or CODES - {"unnamed-timber"}
    return [finding for finding in plan(made).findings if finding.code in wanted]


def cabinet(inside: Space, **more: object) -> Project:
    """A carcase 20 wide, 10 high and 20 deep inside."""
    chest = six_drawers()
    (carcase,) = chest.carcases
    sizes = {name: inches(size) for name, size in {"width_nm": "20", "height_nm": "10", "depth_nm": "20"}.items()}
    changed: Carcase = replace(carcase, sizes_over=SizesOver.INSIDE, inside=inside, rails=None, **sizes, **more)  # type: ignore[arg-type]
    return replace(chest, carcases=(changed,))


# --- drawers ---------------------------------------------------------------------------------------------------


def one_drawer(top_clearance: str) -> Project:
    """An opening 10 in high with one drawer in it."""
    return cabinet(Space(holds=replace(drawer("D1"), top_clearance_nm=inches(top_clearance))))


def test_a_drawer_that_swells_over_its_opening_is_planed_by_the_least_that_lets_it_run() -> None:
    """10 - 1/16 = 9.9375 high, swells by 0.012 x 9.9375 = 0.11925: 0.05675 too high, 3.6/64.

    Planed by c it has 0.0625 + c - 0.012 (9.9375 - c) left; 1/64 = 0.015625 takes c = 0.0715, so 5/64; and
    1/16 + 5/64 = 9/64.
    """
    (finding,) = found(known(one_drawer("1/16")))
    assert (finding.code, finding.level, finding.marks) == ("drawer-binds", Level.STOP, ("D1",))
    assert "1/16 in above today" in finding.text
    assert "1/16 in too high" in finding.text
    assert "Plane 5/64 in off" in finding.remedy
    assert 'top_clearance = "9/64 in"' in finding.remedy
    assert found(known(one_drawer("9/64")))[0].level is Level.NOTE


def test_a_drawer_that_barely_runs_is_a_caution() -> None:
    """9.875 high, swells by 0.1185 of its 0.125: 0.0065 left; 1.012 c must make up 0.0091, so 1/64."""
    (finding,) = found(known(one_drawer("1/8")))
    assert (finding.code, finding.level) == ("drawer-tight", Level.CAUTION)
    assert "Plane 1/64 in off" in finding.remedy


def test_a_drawer_that_runs_is_told_what_to_leave_today() -> None:
    """9.75 high, swells by 0.117, shrinks by 0.0585: 0.133 to 0.3085 in; 0.117 + 1/64 = 0.1326 is needed, 9/64."""
    (finding,) = found(known(one_drawer("1/4")))
    assert (finding.code, finding.level, finding.marks) == ("drawer-room", Level.NOTE, ("C",))
    assert "Drawer D1: 1/4 in above today, where 9/64 in would do; 9/64 in at the tightest, 5/16 in at the widest." in (
        finding.text
    )
    assert "Wood at 8 % today; 6 % to 12 % over the year." in finding.text
    assert "Eq. 13-2" in finding.source
    assert "even: made up for a test" in finding.source


def test_quarter_sawn_sides_swell_a_third() -> None:
    """0.004 x 9.9375 = 0.03975 of 0.0625: 0.02275 is left, over 1/64."""
    assert [each.code for each in found(known(one_drawer("1/16"), sawn=Sawn.QUARTER))] == ["drawer-room"]


def test_an_inset_front_has_its_gap_on_both_sides() -> None:
    """10 - 2/16 = 9.875 high, as the drawer of 1/8: 0.0065 left of both gaps, 1/64 to plane: (8/64 + 1/64)/2, 5/64."""
    front = AppliedFront(stuff=ash("5/8"), gap_nm=inches("1/16"), stands=Stands.INSET)
    made = cabinet(Space(holds=replace(drawer("D1"), top_clearance_nm=inches("1/4"), applied_front=front)))
    (finding,) = found(known(made), "drawer-tight")
    assert finding.marks == ("D1-face",)
    assert "1/8 in above and below today" in finding.text
    assert 'gap = "5/64 in"' in finding.remedy


def test_an_overlay_front_can_not_bind_in_its_opening() -> None:
    front = AppliedFront(stuff=ash("5/8"), gap_nm=inches("0"), stands=Stands.OVERLAY, overlay_nm=inches("1/4"))
    made = cabinet(Space(holds=replace(drawer("D1"), top_clearance_nm=inches("1/4"), applied_front=front)))
    assert [each.code for each in found(known(made))] == ["drawer-room"]


def test_drawers_that_are_alike_are_told_of_together() -> None:
    made = cabinet(columns(Space(holds=drawer("D1")), Space(holds=drawer("D2"))))
    made = replace(
        made,
        carcases=(replace(made.carcases[0], partitions=Dividers(stuff=ash("3/4"), housing_depth_nm=inches("1/4"))),),
    )
    (finding,) = found(known(made), "drawer-tight")
    assert finding.marks == ("D1", "D2")
    assert finding.text.startswith("Drawers D1, D2: 1/8 in")


@given(st.integers(8, 30), st.integers(8, 30))
def test_damper_seasons_never_leave_more_room(one: int, other: int) -> None:
    made = known(one_drawer("1/8"))
    grave = []
    for damp in sorted((one, other)):
        project = replace(made, room=Room(dry=percent(6), damp=percent(damp)))
        (finding,) = drawers_run(replace(FACTS, project=project))
        grave.append(list(Level).index(finding.level))
    assert grave[1] <= grave[0]  # the gravest comes first


_MADE = known(one_drawer("1/8"))
FACTS = facts_with(_MADE, timbers_of(_MADE))


# --- bottoms and panels ----------------------------------------------------------------------------------------


def with_bottom(groove: str, play: str) -> Project:
    """A box 12 by 8 in inside with a bottom of solid wood, its grain along the 12 in."""
    made = small_box()
    (box,) = made.boxes
    assert box.bottom
    bottom = replace(box.bottom, stuff=ash("1/4"), groove_depth_nm=inches(groove), play_nm=inches(play))
    return replace(made, boxes=(replace(box, bottom=bottom),))


def test_a_bottom_without_room_to_swell_is_a_stop() -> None:
    """8 + 2/4 - 1/32 = 8.46875 wide, swells by 0.1016, has 0.03125: n 1.012 > 0.0704 takes 5/64; play 2/64 + 5/64."""
    (finding,) = found(known(with_bottom("1/4", "1/32")))
    assert (finding.code, finding.level) == ("panel-binds", Level.STOP)
    assert finding.marks == ("K-bottom", "K-front", "K-back")
    assert "has 1/32 in of play between K-front and K-back" in finding.text
    assert finding.remedy == "Make it 5/64 in narrower, so that it has 7/64 in of play today."
    assert found(known(with_bottom("1/4", "7/64"))) == []


def test_a_bottom_that_leaves_its_grooves_is_a_stop() -> None:
    """8.0625 wide, shrinks by 0.0484 to 8.0141: 0.007 in each groove, less than 1/64.

    Deeper by m, it must lie 1/64 in the one that it has left when it lies all in the other:
    8.0141 + 1.988 m - 8.0625 - m >= 0.0156, m = 0.0648, so 5/64; 8 4/64 + 10/64 = 8 14/64.
    """
    (finding,) = found(known(with_bottom("1/16", "1/16"), damp=8))
    assert (finding.code, finding.level) == ("panel-comes-out", Level.STOP)
    assert finding.remedy == "Cut each groove 5/64 in deeper and make the board 8 7/32 in wide."


def test_a_bottom_that_could_slide_out_of_one_groove_is_a_caution() -> None:
    """8.1875 wide, shrinks to 8.1384; lying 1/8 in the one groove it lies 0.0134 in the other, less than 1/64.

    Deeper by m: 8.1384 + 0.988 m - 8.125 >= 0.0156, m = 0.0023, so 1/64.
    """
    (finding,) = found(known(with_bottom("1/8", "1/16"), damp=8))
    assert (finding.code, finding.level) == ("panel-may-slide", Level.CAUTION)
    assert "1/64 in deeper" in finding.remedy
    assert found(known(with_bottom("9/64", "1/16"), damp=8)) == []


FRAME = Panelled(
    stuff=ash("3/4"),
    stile_nm=inches("2"),
    rail_nm=inches("2"),
    groove_nm=inches("3/8"),
    tenon_nm=inches("3/8"),
    panel=ash("1/4"),
    play_nm=inches("1/16"),
    wide=2,
)


def doors(made: Made, gap: str, leaves: int = 1, stands: Stands = Stands.INSET) -> Project:
    over = inches("1/4") if stands is Stands.OVERLAY else inches("0")
    door = Doors(
        leaves=leaves, hinged=Side.LEFT, stands=stands, gap_nm=inches(gap), overlay_nm=over, made=made
    )  # fmt: skip
    return cabinet(Space(doors=door))


def test_every_panel_of_a_frame_is_looked_at_though_they_share_grooves() -> None:
    """20 - 2/8 - 2 - 2 - 2 = 13.75 for two panels: 6.875 + 2 x 0.375 - 1/16 = 7.5625; swells by 0.0908, has 0.0625."""
    panels = found(known(doors(FRAME, "1/8")), "panel-binds")
    assert [finding.marks[0] for finding in panels] == ["C-door-panel1", "C-door-panel2"]
    assert all("has 1/16 in of play" in finding.text for finding in panels)
    assert found(known(doors(replace(FRAME, play_nm=inches("1/8")), "1/8")), "panel-binds") == []


def test_a_plywood_panel_of_unknown_kind_is_not_looked_at() -> None:
    assert found(known(doors(replace(FRAME, panel=ply("1/4")), "1/8")), "panel-binds") == []


def test_a_back_of_plywood_hardly_moves() -> None:
    """Plywood by 0.0002: 4 points on 20 3/4 in make 0.017, of 1/32 = 0.031 of play; without play it would bind."""
    made = known(cabinet(Space()))
    solid, sheet = made.materials
    made = replace(made, materials=(solid, replace(sheet, species="Plywood, birch")))
    assert found(made) == []
    (carcase,) = made.carcases
    assert carcase.back
    tight = replace(made, carcases=(replace(carcase, back=replace(carcase.back, play_nm=inches("0"))),))
    assert {finding.level for finding in found(tight, "panel-binds")} == {Level.CAUTION}


FITTED = st.builds(
    lambda clear, low, high, play, swells, shrinks, slides: Fitted(
        size=clear + low + high - play,
        clear=clear,
        low=low,
        high=high,
        swells=swells,
        shrinks=shrinks,
        slides=slides,
    ),
    clear=st.integers(200, 900),
    low=st.integers(2, 12),
    high=st.integers(2, 12),
    play=st.integers(0, 14),
    swells=st.floats(0, 0.03),
    shrinks=st.floats(0, 0.03),
    slides=st.booleans(),
)


@given(FITTED, st.integers(0, 2))
def test_the_least_change_of_a_panel_is_that_of_trying_all(fitted: Fitted, covered: int) -> None:
    """Brute force over every whole step; and what comes out really fits."""
    tried = [by for by in range(fitted.size // 2 + 1) if fitted.deeper(by, 1).fits(covered)]
    assert deeper(fitted, covered, 1) == (tried[0] if tried else None)
    free = next(by for by in range(fitted.size // 2 + 1) if fitted.narrower(by).left_when_damp > 0)
    assert narrower(fitted, covered, 1) == (free if fitted.narrower(free).fits(covered) else None)


# --- doors -----------------------------------------------------------------------------------------------------


def test_an_inset_slab_grows_away_from_its_hinges() -> None:
    """20 - 2/16 = 19.875 wide, swells by 0.2385, 15.3/64; 0.2385 + 1/64 = 0.254, 17/64; less 4/64 is 13/64."""
    (finding,) = found(known(doors(Slab(stuff=ash("3/4")), "1/16")), "door-binds")
    assert (finding.level, finding.marks) == (Level.STOP, ("C-door",))
    assert "swells by 15/64 in in width, into a gap of 1/16 in today" in finding.text
    assert "Plane 13/64 in off the edge where it shuts, for a gap of 17/64 in today." in finding.remedy


def test_of_a_frame_only_the_stiles_grow() -> None:
    """0.012 x (2 + 2) = 0.048 of 0.0625: 0.0145 is left, less than 1/64; 0.0636 takes 5/64."""
    (finding,) = found(known(doors(replace(FRAME, play_nm=inches("1/8")), "1/16")), "door-tight")
    assert finding.level is Level.CAUTION
    assert "Plane 1/64 in off" in finding.remedy
    assert found(known(doors(replace(FRAME, play_nm=inches("1/8")), "5/64"))) == []


def test_leaves_of_a_pair_grow_towards_each_other_even_if_they_stand_over_the_edges() -> None:
    """20 + 2/4 - 1/8 = 20.375 of both leaves, swell by 0.2445; a single one over the edges has all room."""
    (finding,) = found(known(doors(Slab(stuff=ash("3/4")), "1/8", 2, Stands.OVERLAY)), "door-binds")
    assert finding.marks == ("C-door1", "C-door2")
    assert "swell by 1/4 in" in finding.text
    assert found(known(doors(Slab(stuff=ash("3/4")), "1/8", 1, Stands.OVERLAY))) == []


# --- backs of boards -------------------------------------------------------------------------------------------


def boarded(gap: str, lap: str) -> Project:
    back = BoardedBack(
        stuff=ash("1/2"),
        rabbet_depth_nm=inches("3/8"),
        play_nm=inches("0"),
        board_nm=inches("4"),
        lap_nm=inches(lap),
        gap_nm=inches(gap),
    )
    return cabinet(Space(), back=back)


def test_boards_of_a_back_need_gaps_to_swell_into() -> None:
    """20 3/4 with laps of 1/4: 20.5/3.75 makes 6 boards of 20.5/6 + 0.25 = 3.667; they swell by 0.044, 2.8/64."""
    (finding,) = found(known(boarded("1/32", "1/4")))
    assert (finding.code, finding.level, len(finding.marks)) == ("back-boards-bind", Level.STOP, 6)
    assert 'gap = "3/64 in"' in finding.remedy
    assert found(known(boarded("3/64", "1/4"))) == []


def test_boards_of_a_back_must_overlap_when_dry() -> None:
    """Laps of 1/64 make boards of 20.734/6 + 0.016 = 3.47; they shrink by 0.0208, 1.3/64."""
    (finding,) = found(known(boarded("1/16", "1/64")))
    assert (finding.code, finding.level) == ("back-boards-part", Level.CAUTION)
    assert 'lap = "1/32 in"' in finding.remedy


# --- unlike boards ---------------------------------------------------------------------------------------------


def of_two_timbers() -> Project:
    """A box 5 1/2 high with sides of still."""
    made = known(small_box())
    (box,) = made.boxes
    front, right, back, left = box.ring.boards
    other = Stuff(material="other", thickness_nm=right.stuff.thickness_nm)
    ring = replace(box.ring, boards=(front, replace(right, stuff=other), back, replace(left, stuff=other)))
    changed: Box = replace(box, ring=ring)
    other_material = replace(made.materials[0], name="other", species="still")
    return replace(made, boxes=(changed,), materials=(*made.materials, other_material))


def test_corners_of_unlike_timbers_strain_the_glue() -> None:
    """0.003 - 0.001 over 4 points and 5 1/2 in: 0.044, more than 1/32; up to 10 % it is 0.022."""
    made = of_two_timbers()
    (finding,) = found(made, "unlike-timber")
    assert (finding.level, finding.marks) == (Level.CAUTION, ("K-J1", "K-J2", "K-J3", "K-J4"))
    assert "3/64 in" in finding.text
    assert found(replace(made, room=Room(dry=percent(6), damp=percent(10))), "unlike-timber") == []
    assert found(known(small_box()), "unlike-timber") == []


def test_a_top_of_another_timber_is_screwed_in_slots() -> None:
    """0.002 over 6 points and the carcase's 20 in: 0.24, 15.4/64; the next 64th is 16/64."""
    over = dict.fromkeys(("front_nm", "sides_nm", "back_nm"), inches("1"))
    top = SeparateTop(stuff=ash("3/4"), **over)
    made = known(cabinet(Space(), top=top, back=None))
    assert found(made, "slots-for-movement") == []
    (carcase,) = made.carcases
    other = replace(top, stuff=Stuff(material="other", thickness_nm=inches("3/4")))
    made = replace(
        made,
        carcases=(replace(carcase, top=other),),
        materials=(*made.materials, replace(made.materials[0], name="other", species="still")),
    )
    (finding,) = found(made, "slots-for-movement")
    assert finding.level is Level.NOTE
    assert "moves 15/64 in over the year" in finding.text
    assert "by 1/4 in." in finding.remedy


def test_a_carcase_moves_on_the_aprons_of_its_stand() -> None:
    """Its bottom, 20 in from front to back, moves by 0.018 x 20 = 0.36, 23/64, and aprons don't."""
    stand = Stand(
        leg=ash("1 1/2"),
        apron=ash("3/4"),
        height_nm=inches("10"),
        apron_nm=inches("3"),
        tenon_nm=inches("1"),
        front_nm=inches("0"),
        sides_nm=inches("0"),
        back_nm=inches("0"),
        setback_nm=inches("0"),
    )
    (finding,) = found(known(cabinet(Space(), base=stand, back=None)), "slots-for-movement")
    assert finding.marks == ("C-bottom", "C-apron-right")
    assert "moves 23/64 in" in finding.text


def test_wood_glued_across_the_grain_is_told_with_its_movement() -> None:
    """The side moves by 0.018 x 19 3/4 = 0.3555, 22.75/64, over a housing for plywood."""
    shelf = Dividers(stuff=ply("3/4"), housing_depth_nm=inches("1/4"))
    made = cabinet(tiers(Space(), Space(), by=DividerKind.SHELF), shelves=shelf)
    for finding in found(known(made), "cross-grain"):
        assert "Over the year it moves by 23/64 in." in finding.text
    assert found(known(made), "cross-grain")
    assert all("Over the year" not in finding.text for finding in found(made, "cross-grain"))


# --- what is not said ------------------------------------------------------------------------------------------


def test_old_projects_that_name_no_timber_hear_nothing_of_movement() -> None:
    assert found(six_drawers(), *CODES) == []


def test_a_project_that_names_some_wood_is_told_what_it_leaves_unnamed() -> None:
    (finding,) = found(known(six_drawers()), "unnamed-timber")
    assert (finding.level, finding.marks) == (Level.NOTE, ("ply",))
    assert 'species = "black cherry"' in finding.remedy


@pytest.mark.parametrize(
    ("room", "shop", "said"),
    [
        (None, None, "Wood at 8 % today, assumed; 6 % to 10 % over the year, assumed."),
        (None, percent(9), "Wood at 9 % today; 6 % to 10 % over the year, assumed."),
        (Room(dry=percent(5), damp=percent(11)), None, "Wood at 8 % today, assumed; 5 % to 11 % over the year."),
    ],
)
def test_what_nobody_said_is_told_as_assumed(room: Room | None, shop: Climate | None, said: str) -> None:
    """Wood Handbook Table 13-2 (from memory): 8 % on average, 6 to 10 % of single pieces."""
    (finding,) = found(replace(known(one_drawer("1/4")), room=room, shop=shop))
    assert said in finding.text
