"""The workbook as bytes: what its cells hold, how its pages are set up, what can't happen in it."""

from __future__ import annotations

import hashlib
import os
import string
import subprocess
import sys
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING
from zipfile import ZipFile

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from planner.domain.operation import Machine
from planner.domain.plan import Plan
from planner.lengths import Grid, in_unit, read_length
from planner.pipeline import plan
from planner.plan import tasks
from planner.present import tables
from planner.present.cell_styles import length_format
from planner.present.cell_texts import NO_BREAK
from planner.present.plain import no_formula, visible
from planner.present.table import Column, Group, Kind, Table
from planner.present.workbook import workbook
from tests.present.books import (
    OURS,
    book_of,
    formulas,
    loaded,
    members,
    rows_by_heading,
    sheets_xml,
    texts,
)
from tests.present.pieces import chest, drawer, planned_chest, planned_drawer, planned_thick_box

if TYPE_CHECKING:
    from openpyxl.worksheet.worksheet import Worksheet

ROOT = Path(__file__).parents[2]
HOSTILE = ["=1+1", "+1", "-1", "@x", "\ttab", "\rreturn", "\x1b[31mred", "[red]x[/red]", "#N/A", "=" * 5, "&P&D", "'"]


@pytest.fixture(scope="module")
def book() -> bytes:
    return workbook(planned_chest())


def footer(sheet: Worksheet) -> tuple[str | None, str | None, str | None]:
    item = sheet.HeaderFooter.oddFooter
    assert item is not None
    return item.left.text, item.center.text, item.right.text


# --- sheets and pages -------------------------------------------------------------------------------------------


def test_sheets_come_in_the_order_of_the_shop(book: bytes) -> None:
    assert loaded(book).sheetnames == [
        "Piece", "Cut list", "Hardware", "Boards", "Openings", "Labels", "Joints", "Practice joints", "Sled settings",
        "Tails", "Grooves and housings", "Order of operations", "Notes",
    ]  # fmt: skip


def test_sheets_without_rows_are_left_out() -> None:
    assert "Openings" not in loaded(workbook(planned_drawer())).sheetnames
    assert not {"Openings", "Grooves and housings"} & set(loaded(workbook(planned_thick_box())).sheetnames)


@pytest.mark.parametrize(("made", "paper"), [(planned_chest, 1), (planned_thick_box, 9)])
def test_every_sheet_is_set_up_for_paper_and_screen(made: Callable[[], Plan], paper: int) -> None:
    """Paper sizes by ECMA-376 part 1, 18.3.1.63: 1 is Letter, 9 is A4."""
    for sheet in loaded(workbook(made())).worksheets:
        assert sheet.freeze_panes == "A3"
        assert sheet.print_title_rows == "$1:$2"
        assert sheet.page_setup.orientation == "landscape"
        assert sheet.page_setup.paperSize == paper
        assert (sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight) == (1, 0)
        assert sheet.sheet_properties.pageSetUpPr is not None
        assert sheet.sheet_properties.pageSetUpPr.fitToPage
        assert footer(sheet) == (made().project.name, sheet.title, "Page &P of &N")
        assert all(dimension.width > 2 for dimension in sheet.column_dimensions.values())
        assert all((row.height or 0) <= 409 for row in sheet.row_dimensions.values())


def test_each_sled_setting_begins_a_page(book: bytes) -> None:
    sheet = loaded(book)["Sled settings"]
    headings = [
        number
        for number, (first,) in enumerate(sheet.iter_rows(max_col=1, values_only=True), 1)
        if str(first).startswith("Setting ")
    ]
    assert [each.id + 1 for each in sheet.row_breaks.brk] == headings[1:]
    assert len(headings) == len(planned_chest().sled.settings)


def test_headings_are_wide_enough_for_their_longest_word(book: bytes) -> None:
    for sheet in loaded(book).worksheets:
        (headings,) = sheet.iter_rows(min_row=2, max_row=2, values_only=True)
        for heading, letter in zip(headings, string.ascii_uppercase, strict=False):
            assert sheet.column_dimensions[letter].width >= max(map(len, str(heading).split()))


# --- what the cells hold ----------------------------------------------------------------------------------------


def test_the_cut_list_holds_sizes_as_numbers_in_the_projects_unit(book: bytes) -> None:
    made = planned_chest()
    wanted = sorted((float(in_unit(board.length_nm, made.project.unit)), board.mark) for board in made.boards)
    found = sorted(
        (row["Length, in"], mark)
        for row in rows_by_heading(book, "Cut list")
        if isinstance(row["Length, in"], float | int)
        for mark in row["Boards"].replace("\n", ",").replace("\N{NO-BREAK SPACE}", "").split(",")
        if mark
    )
    assert found == wanted


def test_cut_list_formulas_multiply_and_sum_what_stands_beside_them() -> None:
    """The drawer of ``test_json_out``: fronts 2 × 12 × 5.5 × max(0.75, 1) / 144 and so on, evaluated here by hand."""
    rows = [row for row in rows_by_heading(workbook(planned_drawer()), "Cut list") if row["Quantity"] is not None]
    feet = [row["Board feet"] for row in rows]
    square = [row["Square feet"] for row in rows]
    assert feet == [
        "=B6*C6*D6*MAX(E6,1)/144", "=SUBTOTAL(9,H6:H6)",
        "=B9*C9*D9*MAX(E9,1)/144", "=SUBTOTAL(9,H9:H9)",
        None, None, "=SUBTOTAL(9,H5:H13)",
    ]  # fmt: skip
    assert square == [None, None, None, None, "=B12*C12*D12/144", "=SUBTOTAL(9,I12:I12)", "=SUBTOTAL(9,I5:I13)"]
    assert [row["Quantity"] for row in rows] == [
        2, "=SUBTOTAL(9,B6:B6)", 2, "=SUBTOTAL(9,B9:B9)", 1, "=SUBTOTAL(9,B12:B12)", "=SUBTOTAL(9,B5:B13)",
    ]  # fmt: skip
    assert [row["Length, in"] for row in rows] == [12, None, 10, None, 11.5, None, None]


def test_every_cut_has_a_box_that_can_be_ticked(book: bytes) -> None:
    sheet = loaded(book)["Sled settings"]
    boxes = {cell.coordinate for cell in sheet["A"] if cell.value == "☐"}
    assert len(boxes) == sum(len(at.cuts) for at in planned_chest().sled.settings)
    offered = {
        f"A{row}"
        for offer in sheet.data_validations.dataValidation
        for span in offer.sqref.ranges
        for row in range(span.min_row, span.max_row + 1)
    }
    assert offered == boxes
    assert {offer.formula1 for offer in sheet.data_validations.dataValidation} == {'"☐,☑"'}


@pytest.mark.parametrize(
    ("title", "machines"),
    [
        ("Practice joints", {"router table, sled"}),
        ("Sled settings", {"router table, sled"}),
        ("Tails", {"bandsaw"}),
        ("Grooves and housings", {"router table, fence", "router, straight guide"}),
        ("Order of operations", set(Machine)),
        ("Notes", set(Machine)),
    ],
)
def test_cautions_stand_on_the_sheets_where_the_cuts_are_listed(book: bytes, title: str, machines: set[str]) -> None:
    cells = (cell.value for row in loaded(book)[title].iter_rows() for cell in row)
    said = {str(value).replace(NO_BREAK, " ") for value in cells if value}
    only = {"Practice joints": tasks.PRACTICE, "Tails": tasks.SAW}.get(title)
    heeded = [
        work.cautions
        for work in planned_chest().order
        if work.machine in machines and (only is None or work.task == only.does)
    ]
    assert heeded
    assert all(set(cautions) <= said for cautions in heeded)


@pytest.mark.parametrize(
    ("said", "grid", "wanted"),
    [
        ("5 11/32 in", Grid.IN_32, "# ??/??"),
        ("5 1/2 in", Grid.IN_16, "# ??/??"),
        ("7 in", Grid.IN_64, "# ??/??"),
        ("5 11/64 in", Grid.IN_32, '"~"# ??/16'),
        ("5.043 in", Grid.IN_32, '"~"# ??/32'),
        ("5 1/32 in", Grid.IN_16, '"~"0'),
        ("5 3/32 in", Grid.IN_16, '"~"# ?/8'),
        ("1.7523 in", Grid.IN_64, '"~"# ?/4'),
        ("0.7 in", Grid.IN_64, '"~"??/64'),
        ("0.0001 in", Grid.IN_64, '"~"0'),
        ("2.999 in", Grid.IN_64, '"~"0'),
        ("19.4 mm", Grid.MM_TENTH, "0.0"),
        ("19.45 mm", Grid.MM_TENTH, '"~"0.0'),
    ],
)
def test_a_length_on_the_grid_is_a_fraction_and_one_that_is_not_is_marked(said: str, grid: Grid, wanted: str) -> None:
    """The nearest step in lowest terms.

    5 11/64 is half-way, and 5 6/32 the even step; 5.043 is 161.4 / 32, 1.7523 is 112.1 / 64.
    """
    assert length_format(read_length(said, grid.unit), grid) == wanted


def test_an_exact_length_goes_into_its_cell_however_it_is_shown() -> None:
    """0.7 in is shown as ~45/64, but the cell holds 0.7."""
    length = read_length("0.7", Grid.IN_64.unit)
    table = Table(
        title="x",
        grid=Grid.IN_64,
        columns=(Column(heading="y", kind=Kind.LENGTH),),
        groups=(Group(rows=((length,),)),),
    )
    cell = loaded(book_of(table)).worksheets[0]["A3"]
    assert Fraction(cell.value).limit_denominator(1000) == Fraction(7, 10)
    assert cell.number_format == '"~"??/64'


# --- hostile texts ----------------------------------------------------------------------------------------------


@pytest.mark.parametrize("said", HOSTILE)
def test_texts_of_the_maker_never_become_formulas(said: str) -> None:
    made = plan(drawer(name=said, title=said, timber=said, sled=said))
    book = workbook(made)
    assert formulas(book)
    assert all(OURS.fullmatch(formula) for formula in formulas(book))
    assert no_formula(visible(said)) in texts(book)
    assert not any(text.startswith(tuple("=+-@\t\r")) for text in texts(book))


def test_a_very_long_name_is_neither_cut_nor_refused() -> None:
    timber = "x" * 40_000
    found = [text for text in texts(workbook(plan(drawer(timber=timber)))) if set(text) == {"x"}]
    assert all(len(text) < 32_767 for text in found)
    assert sum(map(len, found)) >= len(timber)


def test_a_name_cannot_steer_the_footer() -> None:
    """In a footer & begins a code and && is the sign itself: ECMA-376 part 1, 18.3.1.46."""
    for sheet in loaded(workbook(plan(drawer(name="&P&&B 12")))).worksheets:
        assert footer(sheet)[0] == "&&P&&&&B 12"


@given(st.lists(st.text(min_size=1, max_size=40), min_size=1, max_size=5))
@settings(max_examples=30, suppress_health_check=[HealthCheck.too_slow])
def test_any_text_is_stored_as_text_and_comes_back(said: list[str]) -> None:
    table = Table(
        title="x",
        grid=Grid.IN_32,
        columns=(Column(heading="y"), Column(heading="z", kind=Kind.MARKS)),
        groups=(Group(heading="g", rows=tuple((each, (each,)) for each in said)),),
    )
    book = book_of(table)
    assert not formulas(book)
    for sheet in sheets_xml(book).values():
        assert sheet.tag
    rows = list(loaded(book).worksheets[0].iter_rows(min_row=4))
    assert len(rows) == len(said)
    for row, each in zip(rows, said, strict=True):
        kept_whole = str(row[0].value).replace("\N{NO-BREAK SPACE}", " ")  # a number keeps its unit beside it
        assert kept_whole == no_formula(visible(each)).replace("\N{NO-BREAK SPACE}", " ")
        assert row[0].data_type == row[1].data_type == "s"


# --- the same bytes ---------------------------------------------------------------------------------------------


def test_the_same_plan_gives_the_same_bytes(book: bytes) -> None:
    assert workbook(planned_chest()) == book


def test_no_clock_is_in_the_file(tmp_path: Path, book: bytes) -> None:
    path = tmp_path / "book.xlsx"
    path.write_bytes(book)
    with ZipFile(path) as archive:
        assert {info.date_time for info in archive.infolist()} == {(1980, 1, 1, 0, 0, 0)}
    core = members(book)["docProps/core.xml"].decode()
    assert core.count("2000-01-01T00:00:00Z") == core.count("<dcterms:") == 2


@pytest.mark.parametrize("seed", ["0", "1", "4711"])
def test_the_order_of_hashes_does_not_matter(seed: str, book: bytes) -> None:
    code = (
        "import hashlib; from tests.present.pieces import planned_chest; from planner.present.workbook import workbook;"
        "print(hashlib.sha256(workbook(planned_chest())).hexdigest())"
    )
    said = subprocess.run(
        [sys.executable, "-c", code],
        cwd=ROOT,
        env={**os.environ, "PYTHONHASHSEED": seed},
        capture_output=True,
        text=True,
        check=True,
    )
    assert said.stdout.strip() == hashlib.sha256(book).hexdigest()


# --- large pieces -----------------------------------------------------------------------------------------------


@pytest.mark.slow
def test_a_cabinet_of_24_drawers_has_all_its_boards_on_the_sheets() -> None:
    made: Plan = plan(chest(24))
    book = workbook(made)
    boards = {row["Board"] for row in rows_by_heading(book, "Boards") if row["Material"] is not None}
    assert boards == {board.mark for board in made.boards}
    may_be_empty = {tables.sawn, tables.weights}  # no lid is sawn off, and no species is named
    assert all(any(table.rows) for table in (view(made) for view in tables.SHEETS if view not in may_be_empty))
