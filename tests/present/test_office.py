"""The workbook opened in LibreOffice: recalculated, shown and printed there, it says what the program says."""

from __future__ import annotations

import csv
import shutil
import subprocess
from collections.abc import Callable, Sequence
from fractions import Fraction
from pathlib import Path

import pytest

from planner.domain.plan import Plan
from planner.lengths import Grid, Nm, Unit, read_length, show_length
from planner.pipeline import plan
from planner.present import tables
from planner.present.plain import no_formula, visible
from planner.present.table import Column, Group, Kind, Table
from planner.present.workbook import workbook
from tests.present.books import OURS, book_of, formulas, loaded, rows_by_heading
from tests.present.pieces import drawer, planned_chest, planned_drawer, planned_thick_box

pytestmark = [
    pytest.mark.office,
    pytest.mark.slow,
    pytest.mark.skipif(shutil.which("soffice") is None, reason="LibreOffice is not on this machine"),
]

AS_SHOWN = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,true,false,false,-1"
"""All sheets as comma-separated text, each cell as it is shown."""

HOSTILE = ["=1+1", "+1", "-1", "@x", "\ttab", "\x1b[31mred", "#N/A", '=HYPERLINK("http://x";"y")', "=cmd|' /C calc'!A0"]
PIECES: dict[str, Callable[[], Plan]] = {
    "chest": planned_chest,
    "drawer": planned_drawer,
    "thick": planned_thick_box,
}


def hostile_table() -> Table:
    """Each text in a cell, in a list and in the heading of a group."""
    return Table(
        title="Hostile",
        grid=Grid.IN_32,
        columns=(Column(heading="Text"), Column(heading="List", kind=Kind.MARKS)),
        groups=tuple(Group(heading=said, rows=((said, (said, said)),)) for said in HOSTILE),
    )


def hostile_plan() -> Plan:
    return plan(drawer(name="=1+1", title="+2", timber='=HYPERLINK("http://x";"y")', sled="@x"))


GRIDS = {grid.name: grid for grid in Grid}


def lengths_on(grid: Grid) -> list[Nm]:
    """Lengths on the grid and off it; no tenths half-way between two steps, which are rounded up there, even here."""
    told = ["1/64 in", "1/2 in", "63/64 in", "1 in", "5 11/32 in", "23 1/2 in", "96 in", "0.7 in", "0.1 mm", "19.4 mm"]
    told += ["1.03 mm", "299.96 mm", "1219.2 mm", "0.999 in", "7.003 in", "5 11/64 in", "5 1/32 in"]
    found = [read_length(each, grid.unit) for each in told]
    return [length for length in found if grid.unit is Unit.INCH or 2 * (length % grid.step_nm) != grid.step_nm]


def table_of(grid: Grid) -> Table:
    return Table(
        title=grid.name,
        grid=grid,
        columns=(Column(heading="Length", kind=Kind.LENGTH), Column(heading="As told")),
        groups=(Group(rows=tuple((length, f"is {show_length(length, grid)}") for length in lengths_on(grid))),),
    )


def converted(folder: Path, profile: Path, to: str, books: Sequence[Path]) -> None:
    command = ["soffice", f"-env:UserInstallation={profile.as_uri()}", "--headless", "--convert-to", to]
    subprocess.run([*command, "--outdir", folder, *books], check=True, capture_output=True, timeout=300)


@pytest.fixture(scope="module")
def office(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with every workbook as it was written, recalculated (``again``), as shown (``shown``) and printed."""
    folder = tmp_path_factory.mktemp("office")
    for name, made in {**PIECES, "hostile": hostile_plan}.items():
        (folder / f"{name}.xlsx").write_bytes(workbook(made()))
    (folder / "texts.xlsx").write_bytes(book_of(hostile_table()))
    (folder / "grids.xlsx").write_bytes(book_of(*(table_of(grid) for grid in Grid)))
    books = sorted(folder.glob("*.xlsx"))
    profile = folder / "profile"
    converted(folder / "again", profile, "xlsx", books)
    converted(folder / "shown", profile, AS_SHOWN, books)
    converted(folder / "printed", profile, "pdf", [folder / "chest.xlsx"])
    return folder


def as_shown(office: Path, book: str, sheet: str) -> list[list[str]]:
    with (office / "shown" / f"{book}-{sheet}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.reader(file))


def recalculated(office: Path, book: str) -> bytes:
    return (office / "again" / f"{book}.xlsx").read_bytes()


def values(office: Path, book: str, heading: str) -> list[float]:
    """What LibreOffice worked out for one column of the cut list."""
    from io import BytesIO

    from openpyxl import load_workbook

    sheet = load_workbook(BytesIO(recalculated(office, book)), data_only=True)["Cut list"]
    headings, *rows = sheet.iter_rows(min_row=2, values_only=True)
    at = headings.index(heading)
    return [float(cell) for row in rows for cell in row[at : at + 1] if isinstance(cell, int | float)]


@pytest.mark.parametrize(
    ("book", "headings"),
    [
        ("chest", ("Quantity", "Board feet", "Square feet")),
        ("drawer", ("Quantity", "Board feet", "Square feet")),
        ("thick", ("Quantity", "Cubic metres")),
    ],
)
def test_recalculated_totals_are_the_programs(office: Path, book: str, headings: tuple[str, ...]) -> None:
    table = tables.cut_list(PIECES[book]())
    names = [column.heading for column in table.columns]
    for heading in headings:
        at = names.index(heading)
        cells = [value for group in table.groups for value in _cells_and_sum(table, group, at)]
        wanted = [
            float(Fraction(cell)) for cell in (*cells, table.sums()[at]) if isinstance(cell, int | Fraction) and cell
        ]
        assert values(office, book, heading) == pytest.approx(wanted, rel=1e-12)


def _cells_and_sum(table: Table, group: Group, at: int) -> list[object]:
    return [*(row[at] for row in group.rows), table.sums(group.rows)[at]]


def test_the_drawers_totals_are_those_worked_out_on_paper(office: Path) -> None:
    """From ``test_json_out``: 2 × 12 × 5.5 / 144 + 2 × 10 × 5.5 / 144 board feet, 11.5 × 9 / 144 square feet."""
    assert values(office, "drawer", "Board feet")[-1] == pytest.approx(242 / 144)
    assert values(office, "drawer", "Square feet")[-1] == pytest.approx(103.5 / 144)
    assert values(office, "drawer", "Quantity")[-1] == 5


@pytest.mark.parametrize("name", GRIDS)
def test_lengths_are_shown_as_the_program_shows_them(office: Path, name: str) -> None:
    grid = GRIDS[name]
    rows = as_shown(office, "grids", name)[2:]
    assert len(rows) == len(lengths_on(grid))
    for (shown, told), length in zip(rows, lengths_on(grid), strict=True):
        wanted = told.replace("\N{NO-BREAK SPACE}", " ").removeprefix("is ")
        found = " ".join(shown.replace("~ ", "~").split())
        assert wanted.startswith("~") == (length % grid.step_nm != 0)
        assert found == wanted


def test_hostile_texts_are_still_texts_once_saved_there(office: Path) -> None:
    rows = [row for row in rows_by_heading(recalculated(office, "texts"), "Hostile") if row["List"] is not None]
    safe = [no_formula(visible(said)) for said in HOSTILE]
    assert [row["Text"] for row in rows] == safe
    assert all(
        str(row["List"]).startswith(each.replace(" ", "\N{NO-BREAK SPACE}"))
        for row, each in zip(rows, safe, strict=True)
    )
    assert not formulas(recalculated(office, "texts"))


def test_a_hostile_project_has_no_formulas_but_ours_once_saved_there(office: Path) -> None:
    found = formulas(recalculated(office, "hostile"))
    assert found
    assert all(OURS.fullmatch(formula) for formula in found)
    assert "'=1+1" in {row["What"] for row in rows_by_heading(recalculated(office, "hostile"), "Piece")}


def test_no_cell_shows_an_error_or_too_narrow_a_column(office: Path) -> None:
    for sheet in loaded((office / "chest.xlsx").read_bytes()).sheetnames:
        cells = [cell for row in as_shown(office, "chest", sheet) for cell in row]
        assert cells
        assert not [cell for cell in cells if cell.startswith(("#", "Err:"))]


@pytest.mark.skipif(shutil.which("pdftotext") is None, reason="pdftotext is not on this machine")
def test_every_printed_page_has_its_title_its_headings_and_its_number(office: Path) -> None:
    printed = office / "printed" / "chest.pdf"
    text = subprocess.run(["pdftotext", "-layout", printed, "-"], check=True, capture_output=True, text=True).stdout
    pages = text.split("\f")[:-1]
    titles = [view(planned_chest()).title for view in tables.SHEETS]
    for number, page in enumerate(pages, 1):
        assert f"Page {number} of {len(pages)}" in page
        assert any(page.lstrip().startswith(f"{title}: ") for title in titles)
    for page in (page for page in pages if page.lstrip().startswith("Sled settings")):
        assert "reference" in page
        assert "fence" in page
    assert len([page for page in pages if page.lstrip().startswith("Sled settings")]) >= 4  # two heights, two fences
