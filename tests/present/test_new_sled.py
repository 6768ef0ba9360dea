"""The sheet of a sled to be built: every figure of it, with its unit; and the same as plain data."""

from __future__ import annotations

import json
import re
from dataclasses import fields, replace

import pytest

from planner.derive.sled_to_build import sled_to_build
from planner.domain.plan import Finding
from planner.domain.sled_to_build import SledToBuild, SledWish, UprightBoard
from planner.domain.words import Level
from planner.lengths import mm
from planner.present import layout
from planner.present.new_sled_json import new_sled_json
from planner.present.table import Table
from planner.present.text import render
from planner.present.views.new_sled import new_sled
from tests.derive.sled_wishes import INCHES, METRIC, TOP, millimetres
from tests.pieces import inches

BUILT = sled_to_build(METRIC, [TOP])
SHORT_TOP = replace(TOP, mark="K-back", width_nm=inches("6"), thickness_nm=inches("3/4"), length_nm=inches("20"))
WISHES: list[tuple[SledWish, list[UprightBoard]]] = [(METRIC, [TOP]), (INCHES, [SHORT_TOP, replace(TOP, mark="K2")])]


def parts(wish: SledWish = METRIC, *boards: UprightBoard) -> dict[tuple[str, str], str]:
    """What stands on the first list, by group and row."""
    upright = boards or (TOP,)
    table = new_sled(sled_to_build(wish, upright), wish, upright)[0]
    return {
        (group.heading, str(what)): table.shown(table.columns[1], figures)
        for group in table.groups
        for what, figures in group.rows
    }


def titles(tables: tuple[Table, ...]) -> list[str]:
    return [table.title for table in tables]


# --- by hand ------------------------------------------------------------------------------------------------


def test_every_part_and_place_of_the_sled_worked_out_on_paper() -> None:
    """Arithmetic: the docstring of ``derive.sled_to_build``. The slot: twice 108.2, and half a bit at each end."""
    said = parts()
    assert said["Floor", "Size"] == "372.2 mm long, 575.4 mm wide, 12.0 mm thick, long is along the slot"
    assert said["Floor", "From the slot's centre"] == "287.8 mm to the left edge, 287.6 mm to the right edge"
    assert said["Floor", "Middle line"] == "186.1 mm from each end"
    assert said["Slot", "Width"] == "12.0 mm, as the bit cuts it"
    assert said["Slot", "Length"] == "228.4 mm, half to each side of the middle line, closed at both ends"
    assert said["Slot", "Stops, at both ends"] == "108.2 mm from the middle line, to the bit's centre"
    assert said["Fences, two", "Size of each"] == "560.0 mm long, 200.0 mm high, 18.0 mm thick"
    assert "73.9 mm from it at the slot's centre, 280.0 mm along it to each end" in said["Fences, two", "Face of each"]
    assert said["Angle of the fences", "Off square"] == "7.13°, slope 1:8"
    assert said["Angle of the fences", "Rise over run"] == "37.5 mm over 300.0 mm"
    assert said["Angle of the fences", "A test slot leans"] == "2.5 mm sideways, through a board 20.0 mm thick"
    assert said["Runner, under the floor", "Size"] == "372.2 mm long, ~19.0 (19.05) mm wide, 9.0 mm high"
    assert said["Runner, under the floor", "Centre line"] == "140.0 mm LEFT of the slot's centre"
    assert said["Guards, two", "Size of each"] == "42.2 mm long, 52.0 mm wide, 40.4 mm high, long is along the slot"
    assert said["What it needs", "Bit"] == "12.0 mm across"
    assert said["What it needs", "The bit's cutting edges"] == "32.4 mm long, or more"
    assert said["What it needs", "The bit's reach"] == "32.4 mm out of the table, or more"
    assert said["What it needs", "Table"] == "158.2 mm each way, or more, from the bit's centre"
    assert said["What it needs", "Hands"] == "150.0 mm from the slot, or more"
    assert said["What it takes once built", "Greatest bit height"] == "20.4 mm above the floor"
    assert said["What it takes once built", "Greatest width"] == "230.0 mm"
    assert said["What it takes once built", "Greatest upright"] == "600.0 mm"
    assert said["What it takes once built", "Made for boards"] == "up to 20.0 mm thick"


def test_each_fence_says_where_it_stands_and_which_end_comes_to_whom() -> None:
    said = parts()
    assert said["Fences, two", "Right fence"] == (
        "by the far end, you stand at the near end, its RIGHT end comes towards you"
    )
    assert said["Fences, two", "Left fence"] == (
        "by the near end, you stand at the far end, its LEFT end comes towards you"
    )


def test_what_rounding_the_rise_does_is_told_only_where_it_does_something() -> None:
    """1:7 over 12 in: 1 23/32, 0.0209° too steep; over 3/4 in 0.000558 in on a pin, rounded up (test_sled_to_build).

    1:6.5 over 12 in is 1.84615, so 1 27/32 = 1.84375: atan 8.7350° against 8.7462°, 0.011° too flat.
    """
    assert ("Angle of the fences", "By rounding the rise") not in parts()
    steep = parts(INCHES, SHORT_TOP)["Angle of the fences", "By rounding the rise"]
    assert steep == "0.021° too steep, pins up to 0.0006 in too wide inside"
    flat = parts(replace(INCHES, run_micro=6_500_000), SHORT_TOP)["Angle of the fences", "By rounding the rise"]
    assert flat.startswith("0.011° too flat, ")
    assert flat.endswith("too narrow inside")


def test_it_says_which_boards_it_was_made_for() -> None:
    wide = replace(TOP, mark="K10-front", width_nm=millimetres("300"), narrowest_socket_nm=millimetres("40"))
    alike = replace(wide, mark="K2-front", narrowest_socket_nm=millimetres("31"))
    said = parts(METRIC, wide, alike, replace(TOP, length_nm=millimetres("700")), TOP)
    assert said["Made for", "Boards"] == "3"
    assert said["Made for", "Widest"] == "300.0 mm, K2-front"  # as a person counts, K2 comes before K10
    assert said["Made for", "Longest"] == "700.0 mm, K-front"
    assert said["Made for", "Narrowest socket"] == "31.0 mm, laid out for this slope and bit"
    assert "not checked" in parts()["Made for", "Narrowest socket"]


def test_lists_come_in_the_order_of_the_work_and_are_whole() -> None:
    tables = new_sled(BUILT, METRIC, [TOP])
    assert titles(tables) == ["New sled: bench", "Building and setting it", "Using it: keep clear"]
    assert list(tables[1].rows) == list(enumerate(BUILT.how_to_set, 1))
    assert list(tables[2].rows) == list(enumerate(BUILT.keep_clear, 1))
    assert tables[0].cautions == ()


def test_findings_stand_by_level_the_gravest_first_and_are_announced() -> None:
    found = [
        Finding(code=level.value, level=level, marks=("bench",), text=f"{level}.", remedy="Look.")
        for level in (Level.NOTE, Level.CAUTION, Level.STOP, Level.CAUTION)
    ]
    tables = new_sled(replace(BUILT, findings=tuple(found)), METRIC, [TOP])
    assert titles(tables)[-1] == "To think over first"
    assert [len(group.rows) for group in tables[-1].groups] == [1, 2, 1]
    assert [row[1] for row in tables[-1].rows] == ["stop.", "caution.", "caution.", "note."]
    assert "4" in tables[0].cautions[0]


# --- any of them --------------------------------------------------------------------------------------------

LENGTH = re.compile(r"~?\d+(\.\d| \d+/\d+)?(/\d+)?( \(\d+\.\d+\))? (mm|in)\b|\d+\.\d+ (mm|in)\b")
OTHER_FIGURES = re.compile(r"\d+\.\d+°|1:\d+(\.\d+)?|K[-0-9a-z]*")


@pytest.mark.parametrize(("wish", "boards"), WISHES, ids=["mm", "in"])
def test_no_length_stands_without_its_unit(wish: SledWish, boards: list[UprightBoard]) -> None:
    tables = new_sled(sled_to_build(wish, boards), wish, boards)
    texts = [tables[0].shown(tables[0].columns[1], figures) for what, figures in tables[0].rows if what != "Boards"]
    texts += [str(text) for table in tables[1:3] for _, text in table.rows]
    assert sum(len(LENGTH.findall(text)) for text in texts) > 50
    for text in texts:
        assert not re.search(r"\d", OTHER_FIGURES.sub("", LENGTH.sub("", text))), text


@pytest.mark.parametrize(("wish", "boards"), WISHES, ids=["mm", "in"])
@pytest.mark.parametrize("width", [20, 40, 60, 80, 200])
def test_it_fits_any_terminal_and_loses_no_word(wish: SledWish, boards: list[UprightBoard], width: int) -> None:
    tables = new_sled(sled_to_build(wish, boards), wish, boards)
    text = render(tables, width=width, colour=False)
    assert max(map(len, text.splitlines())) <= width
    have = "".join(text.split())
    for table in tables:
        for row in table.rows:
            for column, cell in zip(table.columns, row, strict=True):
                assert all("".join(piece.split()) in have for piece in layout.pieces(table, column, cell))


@pytest.mark.parametrize("width", [40, 60, 80, 100, 200])
def test_no_length_of_the_parts_is_broken_across_lines(width: int) -> None:
    """Half of 3 27/32 at the end of a line would be read as 27/32."""
    upright = WISHES[1][1]
    parts_list = new_sled(sled_to_build(INCHES, upright), INCHES, upright)[0]
    lines = render([parts_list], width=width, colour=False).splitlines()
    for _, figures in parts_list.rows:
        assert isinstance(figures, tuple)
        lengths = [found[0] for figure in figures for found in LENGTH.finditer(figure)]
        assert all(any(length in line for line in lines) for length in lengths)


@pytest.mark.parametrize(("wish", "boards"), WISHES, ids=["mm", "in"])
def test_rows_match_their_columns_and_headings_differ(wish: SledWish, boards: list[UprightBoard]) -> None:
    for table in new_sled(sled_to_build(wish, boards), wish, boards):
        assert all(len(row) == len(table.columns) for row in table.rows)
        assert len(set(table.headings())) == len(table.columns)


# --- as plain data ------------------------------------------------------------------------------------------


def test_the_sled_as_json_in_millimetres() -> None:
    data = json.loads(json.dumps(new_sled_json(BUILT, [TOP], "[sled.bench]\n")))
    assert data["sled"] == {
        "name": "bench", "slope": 8, "bit_mm": 12, "greatest_bit_height_mm": 20.4, "greatest_width_mm": 230,
        "greatest_upright_mm": 600,
    }  # fmt: skip
    assert data["floor"] == {
        "length_mm": 372.2, "width_mm": 575.4, "thickness_mm": 12, "middle_to_end_mm": 186.1, "left_mm": 287.8,
        "right_mm": 287.6, "middle_to_stop_mm": 108.2,
    }  # fmt: skip
    right, left = data["fences"]
    assert right == {
        "side": "right", "stands_at": "far", "operator_at": "near", "end_towards": "right", "face_from_middle_mm": 73.9,
        "reach_mm": 280, "length_mm": 560, "height_mm": 200, "thickness_mm": 18,
    }  # fmt: skip
    assert left == right | {"side": "left", "stands_at": "near", "operator_at": "far", "end_towards": "left"}
    assert data["angle"]["degrees"] == pytest.approx(7.1250, abs=1e-4)
    assert (data["angle"]["rise_mm"], data["angle"]["run_mm"], data["angle"]["lean_mm"]) == (37.5, 300, 2.5)
    assert data["guard"] == {"length_mm": 42.2, "width_mm": 52, "height_mm": 40.4}
    assert data["runner"] == {
        "width_mm": 19.05, "height_mm": 9, "length_mm": 372.2, "centre_from_slot_mm": 140, "side": "left",
    }  # fmt: skip
    assert data["boards"] == [
        {
            "mark": "K-front", "width_mm": 230, "thickness_mm": 20, "length_mm": 600, "bit_height_mm": 20.4,
            "narrowest_socket_mm": None,
        }
    ]  # fmt: skip
    assert data["project_file"] == "[sled.bench]\n"
    assert data["findings"] == []


def test_inches_are_millimetres_in_json() -> None:
    board = replace(SHORT_TOP, narrowest_socket_nm=inches("1"))
    data = new_sled_json(sled_to_build(INCHES, [board]), [board], "")
    assert data["boards"][0]["narrowest_socket_mm"] == 25.4
    assert data["angle"]["run_mm"] == 304.8


def test_json_holds_everything_that_is_known_of_the_sled() -> None:
    data = new_sled_json(BUILT, [TOP], "")
    held = {field.name for field in fields(SledToBuild)} - {"right_fence", "left_fence"}
    assert {key.removesuffix("_mm") for key in data} == {name.removesuffix("_nm") for name in held} | {
        "boards", "fences", "project_file",
    }  # fmt: skip
    assert data["how_to_set"] == list(BUILT.how_to_set)
    assert data["keep_clear"] == list(BUILT.keep_clear)
    assert data["hands_clear_mm"] == mm(BUILT.hands_clear_nm)


def test_findings_have_the_keys_of_the_checks() -> None:
    doubtful = sled_to_build(replace(METRIC, floor_thickness_nm=millimetres("9")), [TOP])
    (finding,) = new_sled_json(doubtful, [TOP], "")["findings"]
    assert finding.keys() == {"code", "level", "marks", "text", "remedy", "source", "acknowledged"}
    assert (finding["code"], finding["level"], finding["marks"]) == ("thin-floor", "caution", ["bench"])
