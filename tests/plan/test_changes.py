"""What changed from one plan to another: by hand, and by arithmetic over sets that shares nothing with the program."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from functools import cache
from itertools import permutations
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from planner.domain.changes import Changes, Wood
from planner.domain.plan import BoardSize, Feature, Finding, Plan
from planner.domain.project import Project
from planner.domain.words import Level, MaterialKind, Side
from planner.intake.project_file import read_project
from planner.lengths import Nm, Unit, read_length
from planner.pipeline import plan
from planner.plan.changes import what_changed
from tests.buildable import buildable_projects

SAMPLES = Path(__file__).parents[2] / "sample_projects"


def planned(file: str, **swaps: str) -> Plan:
    """Plan of a sample in which lines are replaced; each must be there."""
    text = (SAMPLES / f"{file}.toml").read_text(encoding="utf-8")
    for old, new in swaps.items():
        line = LINES[old]
        assert line in text
        text = text.replace(line, new)
    return plan(read_project(text, file))


LINES = {
    "carcase": 'material = "ash"\nthickness = "3/4 in"',
    "rails": 'thickness = "3/4 in"\nwidth = "2 1/2 in"',
    "front": 'front_thickness = "3/4 in"',
    "height": "height = 75",
    "half_pin": "half_pin = 5",
    "pins": "[pins]",
    "title": 'title = "Keepsake box"',
}


def inch(text: str) -> int:
    return read_length(text, Unit.INCH)


def mm(number: float) -> int:
    return round(number * 1_000_000)


# --- by hand ------------------------------------------------------------------------------------------------


@cache
def of_seven_eighths() -> Changes:
    """The six-drawer chest, and the same with all its ash of 7/8 in instead of 3/4."""
    thick = '"7/8 in"'
    after = planned(
        "six_drawer_chest",
        carcase=f'material = "ash"\nthickness = {thick}',
        rails=f'thickness = {thick}\nwidth = "2 1/2 in"',
        front=f"front_thickness = {thick}",
    )
    return what_changed(planned("six_drawer_chest"), after)


def sizes(board: BoardSize) -> tuple[int, int, int]:
    return board.length_nm, board.width_nm, board.thickness_nm


def test_ash_of_seven_eighths_changes_the_boards_worked_out_on_paper() -> None:
    """Inside, the carcase loses 1/4 each way: 20 1/2 × 34 1/2 becomes 20 1/4 × 34 1/4. Outside sizes stay.

    - Rails: a third of 7/8 is 18 2/3 sixty-fourths, rounded down 9/32: 20 1/4 + 2·9/32 = 20 13/16, from 20 1/2 + 2·1/4.
    - Back: rabbets of 7/16, play 1/32: 20 1/4 + 7/8 − 1/32 = 21 3/32, and 34 1/4 + 7/8 − 1/32 = 35 3/32.
    - Openings share 34 1/4 − 5·7/8 = 29 7/8 in steps of 1/2: the first is (29 7/8 − 7 1/2)/6 = 3.729 in, to 1/32 in
      3 23/32; so 4 7/32, 4 23/32, 5 7/32, 5 23/32; the last takes what is left, 6 9/32. A drawer is 1/8 lower.
    - Drawer fronts and backs: 20 1/4 − 1/8 + 1/32 = 20 5/32, from 20 13/32. Sides are as long as before: only the
      back and the space behind it count.
    - Bottoms: 20 1/8 − 1 + 1/2 − 1/32 = 19 19/32 by 15 1/4 − 7/8 − 1/2 + 1/2 − 1/32 = 14 11/32.
    - Runners, two behind each rail: as long as before, 16 − 2 1/2 − 1/4 = 13 1/4, but as thick as the rails, and as
      much wider than 1 in as the rails' housings are deep.
    """
    boards = of_seven_eighths().boards
    assert (boards.new, boards.gone, len(boards.changed)) == ((), (), 4 + 1 + 5 * 3 + 6 * 5)
    before = {shift.before.mark: sizes(shift.before) for shift in boards.changed}
    after = {shift.after.mark: sizes(shift.after) for shift in boards.changed}
    for mark, length in (("C-top", "22 1/32"), ("C-right", "36 1/32"), ("C-bottom", "22 1/32"), ("C-left", "36 1/32")):
        assert before[mark] == (inch(length), inch("16"), inch("3/4"))
        assert after[mark] == (inch(length), inch("16"), inch("7/8"))
    assert before["C-back"] == (inch("21 7/32"), inch("35 7/32"), inch("1/4"))
    assert after["C-back"] == (inch("21 3/32"), inch("35 3/32"), inch("1/4"))
    for tier in range(1, 6):
        assert before[f"D{tier}-rail"] == (inch("21"), inch("2 1/2"), inch("3/4"))
        assert after[f"D{tier}-rail"] == (inch("20 13/16"), inch("2 1/2"), inch("7/8"))
        for number in (1, 2):
            assert before[f"D{tier}-runner{number}"] == (inch("13 1/4"), inch("1 1/4"), inch("3/4"))
            assert after[f"D{tier}-runner{number}"] == (inch("13 1/4"), inch("1 9/32"), inch("7/8"))
    were = ("3 3/4", "4 1/4", "4 3/4", "5 1/4", "5 3/4", "6 1/4")
    are = ("3 19/32", "4 3/32", "4 19/32", "5 3/32", "5 19/32", "6 5/32")
    for tier, (was, now) in enumerate(zip(were, are, strict=True), start=1):
        for role, thick_before, thick_after in (("front", "3/4", "7/8"), ("back", "1/2", "1/2")):
            assert before[f"D{tier}-{role}"] == (inch("20 13/32"), inch(was), inch(thick_before))
            assert after[f"D{tier}-{role}"] == (inch("20 5/32"), inch(now), inch(thick_after))
        for role in ("right", "left"):
            assert before[f"D{tier}-{role}"] == (inch("15 9/32"), inch(was), inch("1/2"))
            assert after[f"D{tier}-{role}"] == (inch("15 9/32"), inch(now), inch("1/2"))
        assert before[f"D{tier}-bottom"] == (inch("19 27/32"), inch("14 15/32"), inch("1/4"))
        assert after[f"D{tier}-bottom"] == (inch("19 19/32"), inch("14 11/32"), inch("1/4"))


def test_ash_of_seven_eighths_changes_the_stock() -> None:
    """Lengths in 1/32 in.

    Ash before: 2·705 + 2·1153 for the carcase, 5·672 rails, 6·653 fronts; after: the same carcase, 5·666, 6·645.
    Poplar: backs 6·653 and sides 12·489; after 6·645 and the same sides. Plywood: the back 679 and bottoms 6·635;
    after 675 (by 1123) and 6·627 (by 459). Poplar as thick as the rails: ten runners of 424.
    """
    changes = {(each.material, int(each.thickness_nm)): (each.before, each.after) for each in of_seven_eighths().stock}
    step = inch("1/32")
    carcase = 2 * 705 + 2 * 1153
    ash = changes["ash", inch("3/4")]
    assert (ash[0].boards, ash[0].length_nm, ash[1]) == (15, (carcase + 5 * 672 + 6 * 653) * step, Wood())
    ash = changes["ash", inch("7/8")]
    assert (ash[0], ash[1].boards, ash[1].length_nm) == (Wood(), 15, (carcase + 5 * 666 + 6 * 645) * step)
    poplar = changes["poplar", inch("1/2")]
    assert [wood.length_nm for wood in poplar] == [(6 * 653 + 12 * 489) * step, (6 * 645 + 12 * 489) * step]
    assert [wood.length_nm for wood in changes["poplar", inch("3/4")]] == [10 * 424 * step, 0]
    assert [wood.length_nm for wood in changes["poplar", inch("7/8")]] == [0, 10 * 424 * step]
    plywood = changes["birch plywood", inch("1/4")]
    assert [wood.length_nm for wood in plywood] == [(679 + 6 * 635) * step, (675 + 6 * 627) * step]
    assert plywood[1].area_nm2 == (675 * 1123 + 6 * 627 * 459) * step**2
    assert plywood[1].volume_nm3 == plywood[1].area_nm2 * inch("1/4")
    assert len(changes) == 6


def test_ash_of_seven_eighths_changes_two_of_four_settings() -> None:
    """Pins are as high as the tail board is thick, and 1/64 proud: in the carcase 57/64 instead of 49/64.

    Drawer sides stay 1/2 in, so their setting stays: but boards are narrower, so the marks are others.
    """
    settings_changed = {
        (each.fence, each.bit_height_nm): (each.before, each.after) for each in of_seven_eighths().settings
    }
    assert settings_changed == {
        (fence, inch(height)): ends
        for fence in Side
        for height, ends in (("49/64", (4, 0)), ("57/64", (0, 4)), ("33/64", (24, 24)))
    }
    tally = of_seven_eighths().tally
    assert tally.before.settings == tally.after.settings == 4
    assert len(of_seven_eighths().joints_anew) == 28
    assert {f"C-{role}" for role in ("top", "right", "bottom", "left")} <= set(of_seven_eighths().cuts_anew)


def test_the_checks_say_the_same_of_other_figures() -> None:
    """Grooves stop inside the front's thickness: in both chests at the same ends, 1/8 further in."""
    findings = of_seven_eighths().findings
    assert (findings.new, findings.gone) == ((), ())
    assert all(shift.before.marks == shift.after.marks for shift in findings.changed)
    (first, *_) = (shift for shift in findings.changed if "D1-right-A" in shift.after.marks)
    assert "33/64 in from end A" in first.before.text
    assert "41/64 in from end A" in first.after.text


def test_higher_boxes_need_more_walnut_and_nothing_else() -> None:
    """Twelve boxes 80 instead of 75 mm high: 12·2·(250.6 + 180.6) mm of walnut, 5 mm wider."""
    changes = what_changed(planned("twelve_boxes"), planned("twelve_boxes", height="height = 80"))
    assert {(sizes(s.before)[1], sizes(s.after)[1]) for s in changes.boards.changed} == {(mm(75), mm(80))}
    assert len(changes.boards.changed) == 48
    (walnut,) = changes.stock
    assert (walnut.material, walnut.kind, walnut.thickness_nm) == ("walnut", MaterialKind.SOLID, mm(10))
    assert walnut.before.length_nm == walnut.after.length_nm == 12 * 2 * (mm(250.6) + mm(180.6))
    assert walnut.after.area_nm2 - walnut.before.area_nm2 == walnut.after.length_nm * mm(5)
    assert changes.cuts_anew == ()


def test_boxes_without_bottoms_lose_twelve_boards_and_their_grooves() -> None:
    text = (SAMPLES / "twelve_boxes.toml").read_text(encoding="utf-8").partition("[box.bottom]")[0]
    before = planned("twelve_boxes")
    changes = what_changed(before, plan(read_project(text, "boxes")))
    assert [board.mark for board in changes.boards.gone] == [f"K{number}-bottom" for number in range(1, 13)]
    assert len(changes.cuts_anew) == 48
    assert [(each.material, each.after) for each in changes.stock] == [("lime plywood", Wood())]
    assert changes.operations.before > changes.operations.after
    back = what_changed(plan(read_project(text, "boxes")), before)
    assert [board.mark for board in back.boards.new] == [f"K{number}-bottom" for number in range(1, 13)]
    assert len(back.cuts_anew) == 48


def test_a_new_title_or_name_of_a_sled_is_no_change_for_somebody_at_the_bench() -> None:
    before = planned("twelve_boxes")
    assert not what_changed(before, planned("twelve_boxes", title='title = "Song box"')).any


def test_a_sled_called_otherwise_changes_its_settings_but_no_joint() -> None:
    project = planned("twelve_boxes").project
    text = (SAMPLES / "twelve_boxes.toml").read_text(encoding="utf-8").replace("[sled.small]", "[sled.little]")
    changes = what_changed(plan(project), plan(read_project(text, "boxes")))
    assert changes.joints_anew == ()
    assert {(each.sled, each.before, each.after) for each in changes.settings} == {("little", 0, 48), ("small", 48, 0)}


def test_a_timber_that_becomes_a_sheet_is_other_stock() -> None:
    before = planned("twelve_boxes")
    materials = tuple(
        replace(material, kind=MaterialKind.SHEET) if material.name == "walnut" else material
        for material in before.project.materials
    )
    changes = what_changed(before, plan(replace(before.project, materials=materials)))
    assert [(each.kind, each.before.boards, each.after.boards) for each in changes.stock] == [
        (MaterialKind.SOLID, 48, 0),
        (MaterialKind.SHEET, 0, 48),
    ]


def test_findings_are_matched_by_rule_and_marks_one_by_one() -> None:
    made = planned("twelve_boxes")

    def finding(code: str, text: str, *marks: str) -> Finding:
        return Finding(code=code, level=Level.NOTE, marks=marks, text=text, remedy="")

    before = replace(made, findings=(finding("a", "1", "K1"), finding("a", "2", "K1"), finding("b", "3", "K2")))
    now = finding("a", "5", "K1"), finding("a", "2", "K1"), finding("a", "7", "K1"), finding("b", "3", "K3")
    changes = what_changed(before, replace(made, findings=now))
    assert [(shift.before.text, shift.after.text) for shift in changes.findings.changed] == [("1", "5")]
    assert changes.findings.new == now[2:]
    assert [each.marks for each in changes.findings.gone] == [("K2",)]
    assert changes.any


def test_pins_or_rates_alone_are_changes_without_a_board() -> None:
    """Narrower half-pins move marks; a slower pass changes the estimate: 12 boxes, but not a board is other."""
    half_pins = what_changed(planned("twelve_boxes"), planned("twelve_boxes", half_pin="half_pin = 6"))
    assert not half_pins.boards.any
    assert (len(half_pins.joints_anew), half_pins.stock, half_pins.any) == (48, (), True)
    rates = what_changed(planned("twelve_boxes"), planned("twelve_boxes", pins="[rates]\npass = 20\n\n[pins]"))
    assert rates.tally.after.estimate_s - rates.tally.before.estimate_s == 10 * rates.tally.after.passes
    assert (rates.joints_anew, rates.settings, rates.any) == ((), (), True)


# --- for any two plans --------------------------------------------------------------------------------------


def check(before: Plan, after: Plan) -> None:
    """Everything that must hold between any two plans."""
    changes = what_changed(before, after)
    the_old_boards_with_the_changes_made_are_the_new_boards(changes, before, after)
    stock_is_the_sum_over_the_boards(changes, before, after)
    settings_that_are_not_told_are_used_as_before(changes, before, after)
    joints_and_cuts_to_be_made_anew_are_those_that_differ(changes, before, after)
    the_way_back_undoes_the_way_there(changes, what_changed(after, before))
    for made in (before, after):
        assert not what_changed(made, made).any


def the_old_boards_with_the_changes_made_are_the_new_boards(changes: Changes, before: Plan, after: Plan) -> None:
    """Where a board stands in the piece is not told: it is cut the same."""

    def as_cut(board: BoardSize) -> tuple[object, ...]:
        return board.mark, board.box, board.role, board.material, sizes(board)

    boards = changes.boards
    was, now = ({as_cut(board) for board in made.boards} for made in (before, after))
    assert {as_cut(each) for each in (*boards.gone, *(shift.before for shift in boards.changed))} == was - now
    assert {as_cut(each) for each in (*boards.new, *(shift.after for shift in boards.changed))} == now - was
    assert {board.mark for board in boards.gone} == {mark for mark, *_ in was} - {mark for mark, *_ in now}
    assert all(shift.before.mark == shift.after.mark for shift in boards.changed)
    assert len(boards.new) + len(boards.changed) == len(now - was)


Stuff = tuple[MaterialKind, str, int]


def amounts(made: Plan) -> dict[Stuff, list[Fraction]]:
    """Boards, length, area and volume of each material and thickness."""
    sums: dict[Stuff, list[Fraction]] = {}
    for board in made.boards:
        stuff = made.project.material(board.material).kind, board.material, board.thickness_nm
        length, width, thickness = map(Fraction, sizes(board))
        parts = Fraction(1), length, length * width, length * width * thickness
        sums[stuff] = [one + other for one, other in zip(sums.get(stuff, [Fraction(0)] * 4), parts, strict=True)]
    return sums


def stock_is_the_sum_over_the_boards(changes: Changes, before: Plan, after: Plan) -> None:
    def figures(wood: Wood) -> list[Fraction]:
        return [Fraction(n) for n in (wood.boards, wood.length_nm, wood.area_nm2, wood.volume_nm3)]

    was, now = amounts(before), amounts(after)
    none = [Fraction(0)] * 4
    told = {(c.kind, c.material, c.thickness_nm): (figures(c.before), figures(c.after)) for c in changes.stock}
    assert told == {
        stuff: (was.get(stuff, none), now.get(stuff, none))
        for stuff in was.keys() | now.keys()
        if was.get(stuff) != now.get(stuff)
    }


def settings_that_are_not_told_are_used_as_before(changes: Changes, before: Plan, after: Plan) -> None:
    def cuts(made: Plan) -> set[tuple[object, ...]]:
        return {
            (at.sled, at.slope, at.bit_nm, at.bit_height_nm, at.fence, cut.board, cut.end, cut.passes)
            for at in made.sled.settings
            for cut in at.cuts
        }

    was, now = cuts(before), cuts(after)
    told = {
        (each.sled, each.slope, each.bit_nm, each.bit_height_nm, each.fence): (each.before, each.after)
        for each in changes.settings
    }
    assert told.keys() == {cut[:5] for cut in was ^ now}
    for figures, ends in told.items():
        assert ends == tuple(sum(cut[:5] == figures for cut in made) for made in (was, now))


def joints_and_cuts_to_be_made_anew_are_those_that_differ(changes: Changes, before: Plan, after: Plan) -> None:
    was, now = ({joint.mark: replace(joint, sled="any") for joint in made.joints} for made in (before, after))
    assert set(changes.joints_anew) == {mark for mark in was.keys() & now.keys() if was[mark] != now[mark]}

    def cuts(made: Plan, board: str) -> set[Feature]:
        return {feature for feature in made.features if feature.board == board}

    both = {board.mark for board in before.boards} & {board.mark for board in after.boards}
    assert set(changes.cuts_anew) == {mark for mark in both if cuts(before, mark) != cuts(after, mark)}


def the_way_back_undoes_the_way_there(there: Changes, back: Changes) -> None:
    assert set(there.boards.new) == set(back.boards.gone)
    assert {(s.before, s.after) for s in there.boards.changed} == {(s.after, s.before) for s in back.boards.changed}
    assert set(there.findings.gone) == set(back.findings.new)
    assert {(s.before, s.after) for s in there.findings.changed} == {(s.after, s.before) for s in back.findings.changed}
    assert set(there.joints_anew) == set(back.joints_anew)
    assert (there.tally.before, there.operations.after) == (back.tally.after, back.operations.before)
    assert there.any == back.any


@cache
def as_it_is(file: str) -> Plan:
    return planned(file)


@pytest.mark.parametrize(("one", "other"), [*permutations(sorted(path.stem for path in SAMPLES.glob("*.toml")), 2)])
def test_any_two_samples_can_be_compared(one: str, other: str) -> None:
    check(as_it_is(one), as_it_is(other))


@given(buildable_projects(), st.data())
@settings(max_examples=10, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@pytest.mark.slow
def test_any_two_plans_can_be_compared(project: Project, data: st.DataObject) -> None:
    """Often two states of one project; marks of two strangers overlap, too."""
    states = [
        replace(project, proud_nm=Nm(project.proud_nm + 100_000)),
        replace(project, boxes=project.boxes[:1], carcases=() if project.boxes else project.carcases),
        replace(project, materials=tuple(replace(each, kind=MaterialKind.SHEET) for each in project.materials)),
    ]
    other = data.draw(st.sampled_from(states) | buildable_projects())
    check(plan(project), plan(other))
