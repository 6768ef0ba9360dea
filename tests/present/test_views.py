"""What stands on each sheet, read as the maker reads it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

import pytest

from planner.domain.plan import Finding, Plan, SledBatch
from planner.domain.words import Hardness, Level
from planner.lengths import Grid, Nm, Unit, read_length
from planner.pipeline import plan as plan_of
from planner.plan.sled import sled_plan
from planner.present import tables
from planner.present.table import Column, Kind, Table, setting
from planner.present.views.order import runs_of
from planner.present.views.sled import sled_together
from planner.present.views.sled_savings import hours
from tests.golden.hand import sample
from tests.lopsided import planned_lopsided_drawer
from tests.pieces import inches
from tests.present.pieces import drawer, planned_chest, planned_drawer, planned_thick_box

AT_THE_SLED = "Outside face to you, reference edge at your"


def shown(table: Table) -> list[dict[str, str]]:
    """Rows as texts, by their headings."""
    return [
        {
            heading: table.shown(column, cell)
            for heading, column, cell in zip(table.headings(), table.columns, row, strict=True)
        }
        for row in table.rows
    ]


@pytest.fixture(scope="module", params=[planned_chest, planned_drawer, planned_thick_box])
def plan(request: pytest.FixtureRequest) -> Plan:
    made: Plan = request.param()
    return made


@pytest.mark.parametrize("view", [*tables.SHEETS, tables.checks])
def test_rows_match_their_columns_and_headings_differ(plan: Plan, view: tables.View) -> None:
    table = view(plan)
    assert all(len(row) == len(table.columns) for row in table.rows)
    assert len(set(table.headings())) == len(table.columns)
    assert len(table.title) <= 31  # a sheet's title can't be longer
    assert not set(table.title) & set("/:?*[]\\'")


def test_the_cut_list_names_every_board_once(plan: Plan) -> None:
    table = tables.cut_list(plan)
    marks = [mark for row in table.rows for cell in row if isinstance(cell, tuple) for mark in cell]
    assert sorted(marks) == sorted(board.mark for board in plan.boards)
    assert table.sums()[1] == len(plan.boards)


def test_a_cut_list_group_is_one_material_in_one_thickness() -> None:
    headings = [group.heading for group in tables.cut_list(planned_drawer()).groups]
    assert headings == [
        "cherry, 3/4 in thick, solid timber",
        "cherry, 1/2 in thick, solid timber",
        "cherry plywood, 1/4 in thick, sheet goods",
    ]


def test_cut_list_sums_are_the_amounts_worked_out_on_paper() -> None:
    """2 × 12 × 5 1/2 and 2 × 10 × 5 1/2 by 144; the bottom 11 1/2 × 9 by 144."""
    table = tables.cut_list(planned_drawer())
    board_feet, square_feet = table.sums()[-2:]
    assert board_feet == Fraction(2 * 12 * 11 + 2 * 10 * 11, 2 * 144)
    assert square_feet == Fraction(207, 2 * 144)


def test_the_sled_sheet_says_beyond_doubt_how_each_board_stands() -> None:
    """The design, section 6: outside face to the operator; end A down, reference edge right; end B down, left."""
    table = tables.sled(planned_drawer())
    assert [group.heading.split(":")[0] for group in table.groups] == [
        "Setting 1 (put on sled bench, fit its bit, set the bit height)",
        "Setting 2 (walk round to the left fence)",
    ]
    first, second = table.groups
    assert "RIGHT FENCE, outside face to you, mark to the RIGHT edge of the slot" in first.heading
    assert "LEFT FENCE, outside face to you, mark to the LEFT edge of the slot" in second.heading
    for row in shown(table):
        assert row[AT_THE_SLED] == {"A": "RIGHT", "B": "LEFT"}[row["End down"]]
        assert row["Setting, fence"] in {"1 RIGHT", "2 LEFT"}
    d1_front_a = next(row for row in shown(table) if (row["Board"], row["End down"]) == ("D1-front", "A"))
    assert d1_front_a["(Socket) and mark, from your left, in"] == (
        "(1) ~1 5/32, (2) ~2 11/64, (3) ~3 13/64, (4) ~4 7/32, (5) 5 1/4"
    )  # 1.15, 2.175, 3.2, 4.225, 5.25 to the nearest 1/64: 73.6, 139.2, 204.8, 270.4, 336 of them
    assert (d1_front_a["Bit height and baseline, in"], d1_front_a["Joint"]) == ("1/2", "D1-J4")


def test_several_passes_in_a_socket_are_told_together_and_a_wedge_is_told() -> None:
    """Right wall at 30, second pass 1.5243 beside it; 80 mm² stay: see ``test_json_out``."""
    table = tables.sled(planned_thick_box())
    right = [row for row in shown(table) if row["Setting, fence"].endswith("RIGHT")]
    assert {row["(Socket) and mark, from your left, mm"] for row in right} == {"(1) ~28.5, (1) again 30.0"}
    assert {row["Wedge left, mm²"] for row in shown(table)} == {"80.0"}


def test_a_socket_of_many_passes_is_not_one_long_word() -> None:
    """Else a page is shrunk, and a screen shows blocks, until all its passes stand on one line."""
    rows = tables.sled(planned_lopsided_drawer()).rows
    items = [item for row in rows for cell in row if isinstance(cell, tuple) for item in cell]
    assert max(map(len, items)) <= len("(10) again ~10 63/64")
    assert any("again" in note and "pass" in note for note in tables.sled(planned_drawer()).notes)


def test_the_heading_of_a_setting_tells_the_baseline_of_its_ends() -> None:
    """Sides of 1/2 in, nothing proud: pins 1/2 in long, so their baseline is gauged to the bit height."""
    groups = tables.sled(planned_drawer()).groups
    assert [group.heading.endswith(", bit height and baseline 1/2 in.") for group in groups] == [True, True]


def test_no_column_for_wedges_where_none_stays() -> None:
    assert not any("Wedge" in heading for heading in tables.sled(planned_drawer()).headings())


def test_the_sled_sheet_has_a_row_for_each_cut_with_the_cautions_above(plan: Plan) -> None:
    table = tables.sled(plan)
    assert len(list(table.rows)) == sum(len(at.cuts) for at in plan.sled.settings)
    assert all(any("Clamp the board" in caution for caution in group.cautions) for group in table.groups)
    assert all(any("trap" in caution for caution in group.cautions) for group in table.groups)


def test_cautions_of_a_setting_name_none_but_its_own_boards() -> None:
    """What is tall at one setting of the sled is not named at another, nor at the bandsaw."""
    chest = planned_chest()
    tall = {board.mark for board in chest.boards if board.length_nm > read_length("24 in", Unit.INCH)}
    for group, at in zip(tables.sled(chest).groups, chest.sled.settings, strict=True):
        own = {cut.board for cut in at.cuts}
        (heavy,) = [caution for caution in group.cautions if "Top-heavy" in caution] if own & tall else [""]
        assert {mark for mark in tall if mark in heavy} <= own
        assert bool(heavy) == bool(own & tall)
    for group, end in zip(tables.tails(chest).groups, chest.tails, strict=True):
        named = {board.mark for board in chest.boards if any(board.mark in caution for caution in group.cautions)}
        assert named <= {each.board for each in end.ends}


def test_the_first_sheet_sets_the_planned_order_beside_joint_by_joint() -> None:
    """The drawer: J1 front-B, J2 back-A, J3 back-B, J4 front-A, five sockets of two passes each: 40 passes.

    Planned: one swap; two boards at two fences, four handlings; each cut A, B and B, A: four turnings. 1·20 + 4·15 +
    4·10 + 40·10 = 520 s, 8 min 40.

    Joint by joint four swaps; seven handlings, since the back stays at the fence where J2 ends and J3 begins; two
    turnings: 4·20 + 7·15 + 2·10 + 400 = 605 s, 10 min 5.
    """
    rows = {row["What"]: row["Figures"] for row in shown(tables.piece(planned_drawer()))}
    assert rows["Bit heights"] == "1, each set once and cut at both fences"
    assert rows["Cuts"] == "8 (a board end at a fence), 40 passes"
    assert rows["Settings"] == "2; joint by joint 5"
    assert rows["Changes"] == (
        "1 (sled 0×, bit height 0×, fence 1×); joint by joint 4 (sled 0×, bit height 0×, fence 4×)"
    )
    assert rows["Handlings"] == "4; joint by joint 7"
    assert rows["Turnings end for end"] == "4; joint by joint 2"
    assert rows["Time, about"] == "0:09 h; joint by joint 0:10 h"
    assert "change of sled 300, of bit height 120, of fence 20; handling 15; turning" in rows["Rates"]
    assert rows["Corner joints"] == "4, so 8 board ends, half of them with pins"


def test_the_sled_sheet_compares_both_ways_and_says_what_times_are_made_of() -> None:
    notes = tables.sled(planned_drawer()).notes
    assert "As planned: 2 settings, 1 change, 4 handlings, 4 turnings, 0:09 h." in notes
    assert "Joint by joint: 5 settings, 4 changes, 7 handlings, 2 turnings, 0:10 h." in notes
    assert any("The first setting-up is not in them" in note for note in notes)


@pytest.mark.parametrize(
    ("seconds", "said"),
    [(0, "0:00 h"), (29, "0:00 h"), (30, "0:01 h"), (3_569, "0:59 h"), (3_570, "1:00 h"), (90_000, "25:00 h")],
)
def test_times_are_told_to_the_nearest_minute(seconds: int, said: str) -> None:
    assert hours(seconds) == said


def test_the_lopsided_front_reads_as_it_was_walked_through() -> None:
    """Places of ``tests.plan.test_sled`` to the nearest 1/64: 0.665370 is 42.58 of them, 1.080739 69.17 and so on."""
    rows = {
        (row["Board"], row["End down"], row["Setting, fence"].split()[1]): row
        for row in shown(tables.sled(planned_lopsided_drawer()))
        if row["Board"] == "D-front"
    }
    marks = "(Socket) and mark, from your left, in"
    assert {key[1:]: row[marks] for key, row in rows.items()} == {
        ("A", "RIGHT"): "(1) 2, (2) 3 3/4, (3) 5 1/4",
        ("A", "LEFT"): (
            "(1) 1/4, (1) again ~43/64, (1) again ~1 5/64, (2) 2 1/2, (2) again ~2 7/8, (3) 4, (3) again ~4 3/8"
        ),
        ("B", "RIGHT"): "(1) 1 1/2, (2) 3, (3) 5 1/4",
        ("B", "LEFT"): (
            "(1) 1/4, (1) again ~5/8, (2) 1 3/4, (2) again ~2 1/8, (3) 3 1/2, (3) again ~3 59/64, (3) again ~4 21/64"
        ),
    }
    assert [(row["End down"], row[AT_THE_SLED]) for row in rows.values()] == [
        ("A", "RIGHT"), ("B", "LEFT"), ("B", "LEFT"), ("A", "RIGHT"),
    ]  # fmt: skip


def test_a_change_of_sled_is_told_on_the_sheet() -> None:
    one, other = drawer(), drawer(mark="D2", sled="other")
    both = plan_of(replace(one, boxes=(*one.boxes, *other.boxes), sleds=(*one.sleds, *other.sleds)))
    assert [group.heading.split(":")[0] for group in tables.sled(both).groups] == [
        "Setting 1 (put on sled bench, fit its bit, set the bit height)",
        "Setting 2 (walk round to the left fence)",
        "Setting 3 (put on sled other, fit its bit, set the bit height)",
        "Setting 4 (walk round to the right fence)",
    ]
    rows = {row["What"]: row["Figures"] for row in shown(tables.piece(both))}
    assert rows["Changes"].startswith("3 (sled 1×, bit height 0×, fence 2×); joint by joint 9 (")


# --- several projects at the sled ------------------------------------------------------------------------------------


def together(*plans: Plan) -> SledBatch:
    return SledBatch(plans=plans, sled=sled_plan([(each.project, each.joints) for each in plans]))


def test_boards_of_several_projects_are_told_apart() -> None:
    """Both drawers are marked D1 and have a sled called bench, one with a worn bit."""
    first, second = planned_drawer(), plan_of(replace(drawer(), name="Other"))
    worn = replace(second.project, sleds=(replace(second.project.sleds[0], bit_nm=Nm(12_620_000)),))
    table = sled_together(together(first, plan_of(worn)))
    rows = shown(table)
    assert {(row["Project"], row["Board"]) for row in rows} == {
        (name, board) for name in (first.project.name, "Other") for board in ("D1-front", "D1-back")
    }
    assert [next(column.strong for column in table.columns if column.heading == "Project")] == [True]
    assert [f"Sled bench of {name}," in group.heading for name, group in zip(
        (first.project.name,) * 2 + ("Other",) * 2, table.groups, strict=True
    )] == [True] * 4  # fmt: skip
    assert table.groups[2].heading.startswith("Setting 3 (put on sled bench of Other, fit its bit, ")
    assert table.notes[0] == f"Cut together: {first.project.name}, Other."
    assert table.cautions == (
        "In more than one of these projects: D1. Write the project beside the mark on each of their boards.",
    )


def test_one_project_has_no_column_of_projects_and_nothing_to_tell_apart() -> None:
    alone = sled_together(together(planned_drawer()))
    assert alone == tables.sled(planned_drawer())
    assert "Project" not in alone.headings()
    assert alone.cautions == ()
    assert not any("Cut together" in note for note in alone.notes)


def test_a_bit_height_that_differs_from_a_projects_own_is_cautioned() -> None:
    """Proud 0 and 0.002 in on sides of 1/2: within the tolerance of 0.004, so both are cut at 0.502."""
    low = planned_drawer()
    high = plan_of(replace(drawer(mark="E1"), name="Other", proud_nm=inches("0.002")))
    table = sled_together(together(high, low))
    assert {at.bit_height_nm for at in together(high, low).sled.settings} == {inches("0.502")}
    (caution,) = table.cautions
    assert caution.startswith(f"Bit heights here differ a little from those planned for {low.project.name} alone:")


def test_several_projects_are_shown_in_the_unit_of_the_first() -> None:
    inch_first = sled_together(together(planned_drawer(), planned_thick_box()))
    metric_first = sled_together(together(planned_thick_box(), planned_drawer()))
    assert "Width × thickness, in" in inch_first.headings()
    assert "Width × thickness, mm" in metric_first.headings()
    assert any(f"in the unit of {planned_thick_box().project.name}" in note for note in metric_first.notes)
    assert not inch_first.cautions


def test_a_new_bit_height_is_told_on_the_sheet() -> None:
    """The chest: drawers have 1/2 in sides, the carcase is 7/8 thick; 1/64 in stands proud."""
    headings = [group.heading.split(":")[0] for group in tables.sled(planned_chest()).groups]
    assert headings[2] == "Setting 3 (set the bit height to 57/64 in)"


def test_the_first_sheet_warns_of_what_the_checks_found() -> None:
    stop = Finding(code="x", level=Level.STOP, marks=("D1",), text="Won't hold.", remedy="Make it thicker.")
    assert not tables.piece(planned_drawer()).cautions
    (warning,) = tables.piece(replace(planned_drawer(), findings=(stop,))).cautions
    assert "must not be cut yet" in warning
    assert any("Cautions from the checks" in caution for caution in tables.piece(planned_chest()).cautions)


def test_the_first_sheet_lists_just_the_sheets_that_follow(plan: Plan) -> None:
    group = next(group for group in tables.piece(plan).groups if group.heading == "Sheets")
    following = [table.title for table in (view(plan) for view in tables.SHEETS[1:]) if any(table.rows)]
    assert [row[0] for row in group.rows] == following


def test_both_ends_of_each_joint_are_listed_with_the_place_of_every_pin(plan: Plan) -> None:
    table = tables.joints(plan)
    rows = shown(table)
    assert Counter(row["Carries"] for row in rows) == {"pins": len(plan.joints), "tails": len(plan.joints)}
    by_end = {row["Board end"]: row for row in rows}
    assert len(by_end) == 2 * len(plan.joints)
    for row in rows:
        mate = by_end[row["Mate"]]
        assert (mate["Mate"], mate["Joint"]) == (row["Board end"], row["Joint"])


def test_pin_places_are_those_worked_out_on_paper() -> None:
    """0.25, 1.15, 1.275 … of ``test_json_out`` to 1/64; the front is 3/4 thick, so the lean is 3/32."""
    rows = {row["Board end"]: row for row in shown(tables.joints(planned_drawer()))}
    places = "From – to, from the reference edge, in"
    assert rows["D1-front-A"][places] == (
        "0 – 1/4, ~1 5/32 – ~1 9/32, ~2 11/64 – ~2 19/64, ~3 13/64 – ~3 21/64, ~4 7/32 – ~4 11/32, 5 1/4 – 5 1/2"
    )
    assert rows["D1-left-B"][places].startswith("1/4 – ~1 5/32, ~1 9/32 – ~2 11/64, ")
    assert (rows["D1-front-A"]["Gauge, in"], rows["D1-left-B"]["Gauge, in"]) == ("1/2", "3/4")
    assert rows["D1-front-A"]["Lean, in"] == rows["D1-left-B"]["Lean, in"] == "3/32"


@pytest.mark.parametrize(
    ("numbers", "said"),
    [([], []), ([4], ["4"]), ([4, 5], ["4", "5"]), ([1, 4, 5, 6, 9], ["1", "4 to 6", "9"])],
)
def test_many_numbers_in_a_row_are_said_as_one(numbers: list[int], said: list[str]) -> None:
    assert list(runs_of(numbers)) == said


def test_labels_list_six_surfaces_of_every_board(plan: Plan) -> None:
    table = tables.labels(plan)
    surfaces = Counter(str(row[0]) for row in table.rows)
    assert surfaces == {board.mark: 6 for board in plan.boards}
    assert len({row[2] for row in table.rows}) == 6 * len(plan.boards)


def test_a_cut_that_stops_says_before_which_end() -> None:
    rows = {row["Board"]: row for row in shown(tables.cuts(planned_drawer()))}
    assert (rows["D1-front"]["Stops before"], rows["D1-left"]["Stops before"]) == ("", "end A, end B")
    assert (rows["D1-left"]["End A to start, in"], rows["D1-left"]["End B to finish, in"]) == ("1/2", "1/2")


def test_a_rail_housing_stops_before_the_far_edge() -> None:
    housings = [row for row in shown(tables.cuts(planned_chest())) if row["Cut"] == "housing"]
    assert {row["Stops before"] for row in housings} == {"far edge"}  # rails 3 in wide in sides 20 in deep
    assert len(housings) == 10  # five rails, two sides


def test_a_mortise_in_an_edge_is_placed_across_the_thickness() -> None:
    """A door 18 thick, its tenons a third of that: the mortises lie 6 to 12 mm from the outside face."""
    rows = [row for row in shown(tables.cuts(sample("wall_cabinet.toml"))) if row["Cut"] == "mortise"]
    assert {row["Surface"] for row in rows} == {"reference edge", "far edge"}
    assert {row["Depth, mm"] for row in rows} == {"30.0"}
    assert {row["Reference edge to near side, mm"] for row in rows} == {""}
    across = {(row["Outside face to near side, mm"], row["Outside face to far side, mm"]) for row in rows}
    assert across == {("6.0", "12.0")}


def test_openings_and_drawers_differ_by_the_clearances() -> None:
    """1/16 in at each side, 1/8 above, 1/2 behind."""
    for row in tables.openings(planned_chest()).rows:
        lengths = [cell for cell in row[3:] if isinstance(cell, int)]
        less = [a - b for a, b in zip(lengths[:3], lengths[3:], strict=True)]
        assert less == [inches("1/8"), inches("1/8"), inches("1/2")]


def test_notes_hold_every_finding_and_every_caution_of_every_machine(plan: Plan) -> None:
    notes = tables.notes(plan)
    said = {str(row[1]) for row in notes.rows} | {note for group in notes.groups for note in group.notes}
    assert {finding.text for finding in plan.findings} <= said
    assert {caution for work in plan.order for caution in work.cautions} <= said
    assert [row[1] for row in tables.checks(plan).rows] == [finding.text for finding in plan.findings]


def test_sizes_are_shown_on_the_projects_grid_and_places_on_the_finest() -> None:
    size, place = Column(heading="size", kind=Kind.LENGTH), Column(heading="place", kind=Kind.PLACE)
    table = Table(title="x", grid=Grid.IN_16, columns=(size, place), groups=())
    assert [table.shown(column, inches("49/64")) for column in (size, place)] == ["~3/4", "49/64"]
    assert table.headings() == ("size, in", "place, in")


@pytest.mark.parametrize(
    ("said", "grid", "wanted"),
    [
        ("49/64", Grid.IN_16, "49/64"),
        ("0.75", Grid.IN_32, "3/4"),
        ("0.758", Grid.IN_32, "~49/64 (0.758)"),
        ("19.4 mm", Grid.MM_TENTH, "19.4"),
        ("19.45 mm", Grid.MM_TENTH, "~19.4 (19.45)"),
    ],
)
def test_a_setting_that_had_to_be_rounded_is_told_in_decimals_too(said: str, grid: Grid, wanted: str) -> None:
    assert setting(inches(said), grid) == wanted


# --- tails and practice joints ---------------------------------------------------------------------------------------


def test_a_page_of_tails_tells_its_set_up_without_the_heading() -> None:
    """A set-up may go on over the page; sawn at the wrong lean, a tail is lost."""
    table = tables.tails(planned_drawer())
    assert table.page_per_group
    assert {row["Set-up, lean and waste"] for row in shown(table)} == {"1 RIGHT", "2 LEFT"}
    for group, side in zip(table.groups, ("RIGHT", "LEFT"), strict=True):
        assert "INSIDE FACE UP, end away from you" in group.heading
        assert f"lean {side} going away, waste at the {side} of each" in group.heading
    assert [column.heading for column in table.columns if column.repeats] == ["Set-up, lean and waste"]


@pytest.mark.parametrize("made", [planned_chest, planned_drawer, planned_thick_box, planned_lopsided_drawer])
def test_the_waste_lies_on_the_side_to_which_a_cut_leans(made: Callable[[], Plan]) -> None:
    """A tail is widest at its end. So the cut at its right leans right going away, and the socket is right of it."""
    for at in made().tails:
        for end in at.ends:
            for cut in at.cuts(end):
                leans_right = cut.at_end_nm > cut.at_baseline_nm
                assert cut.waste == at.leans == ("right" if leans_right else "left")


def test_straight_cuts_are_counted_for_each_tail_end() -> None:
    """Five tails: five walls lean each way, and each edge has a shoulder for its half-pin: 5 + 5 + 2 cuts."""
    rows = shown(tables.tails(planned_drawer()))
    assert len(rows) == 8  # four ends at two leans
    assert {row["Straight cuts"] for row in rows} == {"5 of 12"}
    marks = "(Cut) place at the end, from your left, in"
    assert {row[marks].count("(") for row in rows} == {5}


def test_the_fit_is_told_for_the_wood_at_hand() -> None:
    """Hard is what the file doesn't call soft."""
    made = planned_drawer()
    softened = tuple(replace(each, hardness=Hardness.SOFT) for each in made.project.materials)
    soft = replace(made.project, materials=softened)
    assert any(note.startswith("Fit in cherry, a hard wood: ") for note in tables.tails(made).notes)
    softly = [note for note in tables.tails(plan_of(soft)).notes if note.startswith("Fit in ")]
    assert [note.split(":")[0] for note in softly] == ["Fit in cherry, a soft wood"]


def test_gaps_and_tightness_are_told_by_measure_without_a_hole_between() -> None:
    said = " ".join(tables.tails(planned_drawer()).notes)
    for words in ("up to 0.1 mm", "0.1 to 0.4 mm", "over 0.4 mm", "Too tight", "Too loose"):
        assert words in said


def test_the_practice_joint_tells_both_baselines_and_what_should_stand_proud() -> None:
    """Sides of 1/2 in and fronts of 3/4: pins as long as sides are thick, tails as fronts; here nothing is proud."""
    table = tables.practice(planned_drawer())
    (row,) = shown(table)
    assert (row["Bit height and pin baseline, in"], row["Tail baseline, in"]) == ("1/2", "3/4")
    assert any("proud as planned, 0 in" in note for note in table.notes)
    assert any("proud as planned, 1/64 in" in note for note in tables.practice(planned_chest()).notes)


@pytest.mark.parametrize(
    ("seen", "adjust"),
    [
        ("Pins stand more proud than planned", "Bit height: lower"),
        ("Pins stand less proud than planned", "Bit height: raise"),
        ("Tails stand more proud than planned", "Tail gauge: set it less"),
        ("Tails stand less proud than planned", "Tail gauge: set it more"),
        ("Right-hand walls all off their lines by the same amount", "Line-up, RIGHT fence"),
        ("Left-hand walls all off their lines by the same amount", "Line-up, LEFT fence"),
        ("Gap at one tail only", "Sawing"),
    ],
)
def test_each_error_of_a_practice_joint_names_one_adjustment(seen: str, adjust: str) -> None:
    """A wall is cut at one fence only, so walls that lean one way are off by that fence's line-up alone.

    Whatever is planned to stand proud is no error; only the difference is.
    """
    found = [note for note in tables.practice(planned_chest()).notes if note.startswith(seen)]
    assert len(found) == 1
    assert adjust in found[0]
