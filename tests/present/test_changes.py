"""What changed, to be read and as JSON."""

from __future__ import annotations

import json
from dataclasses import replace
from functools import cache
from itertools import permutations
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.domain.changes import Changes
from planner.domain.plan import Plan
from planner.domain.said import SaidOtherwise, SaidPlace
from planner.intake.project_file import read_project
from planner.lengths import Grid, Nm, Unit, read_length
from planner.pipeline import plan
from planner.plan.changes import what_changed
from planner.present.changes_json import changes_json, places_json, said_json
from planner.present.table import Table
from planner.present.text import render
from planner.present.views.changes import changes, places, said_otherwise, told_apart

SAMPLES = sorted((Path(__file__).parents[2] / "sample_projects").glob("*.toml"))
NAMES = [path.stem for path in SAMPLES]


def planned(name: str, *swaps: tuple[str, str]) -> Plan:
    text = next(path for path in SAMPLES if path.stem == name).read_text(encoding="utf-8")
    for old, new in swaps:
        assert old in text
        text = text.replace(old, new)
    return plan(read_project(text, name))


@cache
def higher_boxes() -> Changes:
    """The twelve boxes 80 instead of 75 mm high."""
    return what_changed(planned("twelve_boxes"), planned("twelve_boxes", ("height = 75", "height = 80")))


@cache
def fewer_drawers() -> Changes:
    """The chest with five drawers instead of six."""
    return what_changed(planned("six_drawer_chest"), planned("six_drawer_chest", ("drawers = 6", "drawers = 5")))


def table(found: Changes, title: str) -> Table:
    return next(each for each in changes(found) if each.title == title)


def rows(found: Changes, title: str, heading: str) -> list[tuple[object, ...]]:
    """Rows of the groups whose heading starts so."""
    return [row for group in table(found, title).groups if group.heading.startswith(heading) for row in group.rows]


def text(found: Changes, *, width: int = 100) -> str:
    return render(changes(found), width=width, colour=False)


# --- to be read ---------------------------------------------------------------------------------------------


def test_boards_that_change_alike_stand_in_one_row() -> None:
    marks = [f"K{number}-{role}" for number in range(1, 13) for role in ("front", "right", "back", "left")]
    assert rows(higher_boxes(), "Boards", "Changed: 48") == [(tuple(marks), "width", "75.0 mm", "80.0 mm")]


def test_new_and_gone_boards_are_told_with_their_sizes() -> None:
    """D6 goes: 20 13/32 × 6 1/4 × 3/4 was its front; and the rail above it and its runners, named after D5, go too."""
    gone = rows(fewer_drawers(), "Boards", "Gone: 8")
    assert (("D5-runner1", "D5-runner2"), "runner", "13 1/4 × 1 1/4 × 3/4 in, poplar", "") in gone
    assert (("D6-front",), "front", "20 13/32 × 6 1/4 × 3/4 in, ash", "") in gone
    assert (("D5-rail",), "rail", "21 × 2 1/2 × 3/4 in, ash", "") in gone
    back = what_changed(*(fewer_drawers_plans()[::-1]))
    assert (("D5-rail",), "rail", "", "21 × 2 1/2 × 3/4 in, ash") in rows(back, "Boards", "New: 8")


def fewer_drawers_plans() -> tuple[Plan, Plan]:
    return planned("six_drawer_chest"), planned("six_drawer_chest", ("drawers = 6", "drawers = 5"))


def test_joints_of_a_ring_that_are_all_laid_out_anew_are_named_at_once() -> None:
    ((marks, what, *_), *_) = rows(higher_boxes(), "Boards", "Joints and cuts")
    assert marks == tuple(f"K{number}-J1 to K{number}-J4" for number in range(1, 13))
    assert what == "joint: lay out anew"
    one = replace(higher_boxes(), joints_anew=("K1-J2", "K2-J1", "K2-J2", "K2-J3", "K2-J4"))
    ((marks, *_), *_) = rows(one, "Boards", "Joints and cuts")
    assert marks == ("K1-J2", "K2-J1 to K2-J4")


def test_stock_is_told_in_the_measures_it_is_bought_in() -> None:
    """Walnut: 10 348.8 mm in all, so 0.776 m² at 75 mm and 0.828 at 80; a centimetre of that in m³."""
    assert rows(higher_boxes(), "Stock", "walnut, 10.0 mm thick, solid timber") == [
        ("Square metres", "0.776", "0.828", "+0.052"),
        ("Cubic metres", "0.0078", "0.0083", "+0.0005"),
    ]


def test_stock_of_a_chest_in_board_feet() -> None:
    """Ash of 3/4 counts as 1 in, so a board foot is 144 square inches of it. Changed are fronts and rails alone.

    Before, six openings share 34 1/2 − 5·3/4 = 30 3/4, and each front is 1/8 lower than its opening; after, five share
    34 1/2 − 4·3/4 = 31 1/2. Fronts are 20 13/32 long, rails 21 × 2 1/2.
    """
    before = 20 + 13 / 32, 30.75 - 0.75, 5 * 21 * 2.5
    after = 20 + 13 / 32, 31.5 - 0.625, 4 * 21 * 2.5
    change = (after[0] * after[1] + after[2] - before[0] * before[1] - before[2]) / 144
    found = {row[0]: row[1:] for row in rows(fewer_drawers(), "Stock", "ash, 3/4 in thick")}
    assert found["Boards"] == ("15", "13", "-2")
    assert found["Board feet"][2] == f"{change:+.2f}"
    assert found["Length of all"][2] == "-41 13/32 in"  # 20 13/32 + 21


def test_sled_work_is_told_by_what_differs() -> None:
    """Of 14 pin boards (6 fronts, 6 backs, top and bottom) 12 stay, each taken up at either fence; heights stay."""
    counts = {row[0]: row[1:] for row in rows(fewer_drawers(), "Sled and operations", "Counts")}
    assert counts["Handlings"] == ("28", "24")
    assert "Changes of bit height" not in counts
    assert "Passes" in counts
    (first, *_) = rows(fewer_drawers(), "Sled and operations", "Settings")
    assert first[0] == "RIGHT FENCE, bit height 33/64 in: sled bench, slope 1:8, bit 1/2 in"
    assert first[1:] == ("24 ends", "20 ends, boards or marks differ")


def test_checks_that_say_the_same_of_other_figures_are_told_once() -> None:
    thicker = planned("six_drawer_chest", ('front_thickness = "3/4 in"', 'front_thickness = "7/8 in"'))
    found = what_changed(planned("six_drawer_chest"), thicker)
    told = rows(found, "Checks", "Same as before")
    assert len(told) < len(found.findings.changed)
    assert "more of this kind: see planner checks." in str(told[0][1])
    assert {mark for row in told for mark in row[0]} == {m for s in found.findings.changed for m in s.after.marks}  # type: ignore[attr-defined]


def test_new_and_settled_checks_are_told_apart() -> None:
    there = what_changed(*fewer_drawers_plans())
    assert {mark for row in rows(there, "Checks", "No more") for mark in row[0]} >= {"D6-right-A"}  # type: ignore[attr-defined]
    back = what_changed(*(fewer_drawers_plans()[::-1]))
    assert {mark for row in rows(back, "Checks", "New") for mark in row[0]} >= {"D6-right-A"}  # type: ignore[attr-defined]
    assert all(row[2] for row in rows(back, "Checks", "New"))


def test_nothing_changed_makes_no_table() -> None:
    assert changes(what_changed(planned("twelve_boxes"), planned("twelve_boxes"))) == ()


@cache
def between(one: str, other: str) -> Changes:
    return what_changed(as_it_is(one), as_it_is(other))


@cache
def as_it_is(name: str) -> Plan:
    return planned(name)


@pytest.mark.parametrize(("one", "other"), [*permutations(NAMES, 2)])
@pytest.mark.parametrize("width", [40, 80, 200])
def test_any_changes_fit_the_terminal(one: str, other: str, width: int) -> None:
    shown = text(between(one, other), width=width)
    assert max(map(len, shown.splitlines())) <= width


@pytest.mark.parametrize(
    ("before", "after", "grid", "told"),
    [
        ("3/4 in", "7/8 in", Grid.IN_32, ("3/4 in", "7/8 in")),
        ("3/4 in", "49/64 in", Grid.IN_16, ("3/4 in", "49/64 in")),
        ("3/4 in", "19.051 mm", Grid.IN_32, ("19.05 mm", "19.051 mm")),
        ("20 mm", "20.05 mm", Grid.MM_TENTH, ("20 mm", "20.05 mm")),
        ("20.04 mm", "20.06 mm", Grid.MM_TENTH, ("~20.0 mm", "~20.1 mm")),
        ("20 mm", "20.000001 mm", Grid.MM_TENTH, ("20 mm", "20.000001 mm")),
    ],
)
def test_two_lengths_are_shown_so_that_they_differ(before: str, after: str, grid: Grid, told: tuple[str, str]) -> None:
    assert told_apart(read_length(before, Unit.MM), read_length(after, Unit.MM), grid) == told


@given(st.integers(1, 10**9), st.integers(1, 10**9), st.sampled_from(Grid))
def test_any_two_lengths_are_told_apart(one: int, other: int, grid: Grid) -> None:
    if one != other:
        shown = [text.removeprefix("~") for text in told_apart(Nm(one), Nm(other), grid)]
        assert shown[0] != shown[1]


def test_what_is_said_is_shown_with_what_is_not() -> None:
    said = [
        SaidOtherwise(place="carcase.C.pins", before=None, after="{}"),
        SaidOtherwise(place="carcase.C.title", before="x", after=""),
    ]
    assert list(said_otherwise(said, Grid.IN_32).rows) == [
        ("carcase.C.pins", "not said", "as usual"),
        ("carcase.C.title", "x", "nothing"),
    ]
    listed = [SaidPlace(place="project.show", said=None, meaning="Step.")]
    assert list(places("Chest", listed).rows) == [("project.show", "not said", "Step.")]


def test_what_was_typed_cannot_steer_the_terminal() -> None:
    said = [SaidOtherwise(place="a\x1b[2J", before="b\n", after="[bold]c")]
    shown = render([said_otherwise(said, Grid.IN_32)], width=80, colour=False)
    assert "\x1b" not in shown
    assert "[bold]c" in shown


# --- as JSON ------------------------------------------------------------------------------------------------


def test_json_tells_lengths_in_millimetres_and_only_what_differs() -> None:
    told = json.loads(json.dumps(changes_json(higher_boxes()), allow_nan=False))
    assert told["project"] == "Choir boxes"
    assert told["anything"] is True
    assert told["boards"]["changed"][0] == {"mark": "K1-front", "width_mm": {"before": 75.0, "after": 80.0}}
    assert (told["boards"]["new"], told["boards"]["gone"], told["cuts_anew"]) == ([], [], [])
    (walnut,) = told["stock"]
    assert (walnut["material"], walnut["kind"], walnut["thickness_mm"]) == ("walnut", "solid", 10.0)
    assert walnut["before"] == {
        "boards": 48,
        "length_mm": pytest.approx(10348.8),
        "area_m2": pytest.approx(0.77616),
        "volume_m3": pytest.approx(0.0077616),
    }
    assert told["sled"]["before"].keys() == told["sled"]["after"].keys() >= {"height_changes", "fence_swaps", "passes"}
    assert told["settings"][0]["bit_height_mm"] == 10.3
    assert told["settings"][0]["ends"] == {"before": 48, "after": 48}
    assert told["operations"]["before"] == told["operations"]["after"]


def test_json_of_checks_and_boards_that_come_and_go() -> None:
    told = changes_json(fewer_drawers())
    assert {board["mark"] for board in told["boards"]["gone"]} == {
        "D6-front", "D6-right", "D6-back", "D6-left", "D6-bottom", "D5-rail", "D5-runner1", "D5-runner2"
    }  # fmt: skip
    assert told["boards"]["gone"][0].keys() == {
        "mark", "box", "role", "length_mm", "width_mm", "thickness_mm", "material"
    }  # fmt: skip
    assert told["checks"].keys() == {"new", "gone", "changed"}
    keys = {"code", "level", "marks", "text", "remedy", "source", "acknowledged"}
    assert all(check.keys() == keys for check in told["checks"]["gone"])


def test_json_of_what_is_said() -> None:
    said = SaidOtherwise(place="carcase.C.back", before="{ a = 1 }", after=None)
    assert said_json([said]) == [{"place": "carcase.C.back", "before": "{ a = 1 }", "after": None}]
    assert str(said) == "carcase.C.back: { a = 1 } → not said"
    place = SaidPlace(place="project.show", said=None, meaning="Step.")
    assert places_json([place]) == [{"place": "project.show", "said": None, "meaning": "Step."}]
