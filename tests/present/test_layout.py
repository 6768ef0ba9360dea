"""Widths and lines: whatever is laid out, nothing is lost and nothing is wider than it may be."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.lengths import Grid
from planner.present import cell_texts, layout
from planner.present.table import Column, Group, Kind, Table

WIDTHS = st.lists(st.tuples(st.integers(1, 50), st.integers(0, 200)), min_size=1, max_size=8)
TEXTS = st.text(max_size=200)


@given(WIDTHS, st.integers(0, 400))
def test_shared_widths_stay_between_least_and_best_and_fill_the_room(columns: list[tuple[int, int]], room: int) -> None:
    least = [low for low, _ in columns]
    best = [low + more for low, more in columns]
    widths = layout.share(least, best, room)
    assert all(low <= width <= high for low, width, high in zip(least, widths, best, strict=True))
    assert sum(widths) == max(sum(least), min(sum(best), room)) or room - sum(widths) < len(widths)


def test_lists_get_half_of_what_they_want_before_others_go_short() -> None:
    """40 characters in all: the text gets its 20, the list of 30 gets 15 and then the 5 that are left."""
    columns = (Column(heading="a"), Column(heading="b", kind=Kind.MARKS))
    row = ("four more words here", ("one", "two", "three", "four", "five", "six"))
    table = Table(title="x", grid=Grid.IN_32, columns=columns, groups=(Group(rows=(row,)),))
    wanted = layout.wants(table, len, len)
    assert (wanted.least, wanted.enough, wanted.most) == ((5, 6), (20, 16), (20, 32))
    assert layout.fitted(wanted, 40) == [20, 20]


def test_a_small_want_is_met_before_large_ones_are_shared() -> None:
    assert layout.share([5, 5], [8, 100], 30) == [8, 22]


@given(st.lists(st.text(st.characters(categories=("L", "N")), min_size=1, max_size=12)), st.integers(1, 40))
def test_packed_lines_hold_all_parts_in_order_and_are_no_wider_than_one_part_must_be(
    parts: list[str], room: int
) -> None:
    lines = list(layout.packed(parts, room, len))
    assert " ".join(lines).split() == parts
    assert all(len(line) <= room or " " not in line for line in lines)


def one_cell(kind: Kind, cell: str | tuple[str, ...]) -> tuple[Table, Column]:
    column = Column(heading="x", kind=kind)
    return Table(title="x", grid=Grid.IN_32, columns=(column,), groups=(Group(rows=((cell,),)),)), column


@given(TEXTS, st.integers(50, 800))
def test_a_text_of_any_length_is_put_into_cells_that_a_spreadsheet_can_hold(text: str, width: int) -> None:
    table, column = one_cell(Kind.TEXT, text * 40)
    cells = cell_texts.texts(table, column, text * 40, width)
    assert all(len(cell) < 32_767 for cell in cells)  # more than that is cut in silence: standards/facts, spreadsheets
    assert all(cell_texts.lines(cell, width) * 16 < 409 for cell in cells)  # a row is at most 409 points high
    assert "".join("".join(cells).split()) == "".join("".join(layout.pieces(table, column, text * 40)).split())


@given(st.lists(st.from_regex(r"[A-Z][0-9]{1,3}-(front|left) [0-9]/[0-9]", fullmatch=True), max_size=300))
def test_no_item_of_a_list_is_broken_across_lines(items: list[str]) -> None:
    table, column = one_cell(Kind.MARKS, tuple(items))
    cells = cell_texts.texts(table, column, tuple(items), 400)
    lines = [line for cell in cells for line in cell.split("\n")]
    found = [item.strip().strip(",") for line in lines for item in line.split(f",{cell_texts.BETWEEN_ITEMS}")]
    assert found == [item.replace(" ", cell_texts.NO_BREAK) for item in items] or not items
    assert all(cell_texts.measure(line) <= 400 for line in lines)


def test_every_item_to_tick_has_its_own_box() -> None:
    table, column = one_cell(Kind.TICKS, ("D1-front", "D1-back"))
    (cell,) = cell_texts.texts(table, column, ("D1-front", "D1-back"), 1000)
    assert cell.count(layout.BOX) == 2


@pytest.mark.parametrize(("text", "digits"), [("0123456789", 10), ("", 0), ("☐", 1.4), ("漢", 2.2)])
def test_widths_are_counted_in_tenths_of_a_digit(text: str, digits: float) -> None:
    assert cell_texts.measure(text) == digits * cell_texts.DIGIT


BOLD_WIDTHS = {"D": 1700, "-": 850, "f": 891, "r": 1010, "o": 1407, "n": 1458, "t": 979} | dict.fromkeys(
    "0123456789", 1425
)
"""Advance widths in DejaVu Sans Bold, by that font's own table (hmtx)."""
PLAIN_DIGIT = 1303
"""The same of a digit in DejaVu Sans, the unit of column widths where a spreadsheet falls back on it."""


@pytest.mark.parametrize("mark", ["D102-front", "D104-front", "D1-front"])
def test_a_bold_mark_fits_its_column_on_one_line(mark: str) -> None:
    """Or the row is one line high and half the mark can't be read: a board cut for another."""
    rows = tuple((mark, "x " * 400) for _ in range(3))
    columns = (Column(heading="b", strong=True), Column(heading="c"))
    table = Table(title="x", grid=Grid.IN_32, columns=columns, groups=(Group(rows=rows),))
    needed = sum(BOLD_WIDTHS[letter] for letter in mark) / PLAIN_DIGIT
    assert cell_texts.column_widths(table)[0] / cell_texts.DIGIT >= needed


def test_on_a_screen_bold_takes_no_more_room() -> None:
    strong = Table(
        title="x",
        grid=Grid.IN_32,
        columns=(Column(heading="b", strong=True),),
        groups=(Group(rows=(("D102-front",),)),),
    )
    assert layout.wants(strong, len, len).most == (10,)
