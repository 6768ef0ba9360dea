"""Texts in cells: how much room they take, and how a text too long for one cell goes on in the next.

A printed cell can't be scrolled. So the height of every row is worked out here, from a rough measure of letters that
holds for the usual proportional fonts, and is given to the row: left to themselves, not all programs find it.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from math import ceil
from unicodedata import east_asian_width

from planner.present import layout
from planner.present.layout import BOX, Wants
from planner.present.plain import held_together, visible
from planner.present.table import Cell, Column, Kind, Table

TICKED = "☑"
NO_BREAK = "\N{NO-BREAK SPACE}"
BETWEEN_ITEMS = f"{NO_BREAK}{NO_BREAK}"

DIGIT = 10
"""Widths are counted in tenths of the width of a digit."""

PAGE = 132 * DIGIT
"""Width of a landscape page, Letter or A4, at full size."""

WIDEST = 80 * DIGIT
"""No column is made wider than this for the sake of one long word."""

MARGIN = 2 * DIGIT
"""What a column is wider than its text."""

TALLEST_LINES = 22
"""A row can be 409 points high; a text that needs more lines goes on in the next row."""

BOLD = 0.9
"""Share of the width of bold letters that the same letters take when they are plain, or a little less."""

_COUNTED_ON = 0.97
"""Share of a column's width that its letters may fill."""

_WIDTHS = {
    char: width
    for width, chars in {
        5: f" ',.Iijl{NO_BREAK}",
        6: "()-:;[]f|",
        7: "!Jrt²",
        8: '"/\\`s',
        9: "?FLckz",
        10: "$*0123456789EPSTY_aegvxy{}–",
        11: "BCKRVXZbdhnopqu",
        12: "AD",
        13: "#+<=>GHNOU^~×",
        14: f"&Qw{BOX}{TICKED}",
        15: "%",
        16: "m…",
        17: "M",
        18: "@W",
    }.items()
    for char in chars
}
"""Widths of letters, each that of the wider of two common sans-serif fonts (Carlito and DejaVu Sans, as measured)."""

_OTHER, _WIDE = 13, 22
"""Widths of all other letters, and of those that East Asian typography calls wide."""


@lru_cache(maxsize=4096)
def measure(text: str) -> int:
    """Width of a text."""
    return sum(_WIDTHS.get(char) or (_WIDE if east_asian_width(char) in "WF" else _OTHER) for char in text)


def measure_bold(text: str) -> int:
    """Width of a text in bold letters."""
    return ceil(measure(text) / BOLD)


def column_widths(table: Table) -> list[int]:
    """Width of each column, together no wider than a page if that can be."""
    wanted = layout.wants(table, measure, measure_bold)
    least = tuple(min(width, WIDEST) for width in wanted.least)
    room = PAGE - MARGIN * len(least)
    widths = layout.fitted(Wants(least, wanted.enough, wanted.most), int(room * _COUNTED_ON))
    return [ceil(width / _COUNTED_ON) for width in widths]


def lines(text: str, width: float) -> int:
    """How many lines a text takes in a column of this width."""
    room = int(width * _COUNTED_ON)
    return sum(
        max(1, ceil(measure(line) / room))
        for paragraph in text.split("\n")
        for line in layout.packed(paragraph.split(" "), room, measure)
    )


def texts(table: Table, column: Column, cell: Cell, width: int) -> list[str]:
    """A text, in as many cells as it needs; nothing for a number or an empty cell.

    Lists are broken into lines here, so that no program breaks a mark at its hyphen or a length at its fraction.
    """
    if column.kind is Kind.TICK:
        return [BOX]
    if isinstance(cell, str):
        return paragraphs(visible(cell), width)
    if not isinstance(cell, tuple):
        return []
    items = layout.pieces(table, column, cell)
    if column.kind is Kind.TICKS:
        items = [f"{BOX} {visible(item)}" for item in cell]
    return _in_cells([item.replace(" ", NO_BREAK) for item in items], BETWEEN_ITEMS, width, joined_by="\n")


def paragraphs(text: str, width: int) -> list[str]:
    """A text in as many cells as it needs; no line breaks inside a length."""
    return _in_cells(held_together(text).split(" "), " ", width, joined_by=" ")


def _in_cells(pieces: Iterable[str], between: str, width: int, *, joined_by: str) -> list[str]:
    """Pieces put together to texts that each fit into the tallest row; only a piece that fits into none is cut."""
    room = int(width * _COUNTED_ON)
    longest = room * TALLEST_LINES // _WIDE
    cells: list[str] = []
    height = 0
    for line in layout.packed(pieces, room, measure, between):
        for start in range(0, max(len(line), 1), longest):
            part = line[start : start + longest]
            high = max(1, ceil(measure(part) / room))
            if start == 0 and cells and height + high <= TALLEST_LINES:
                cells[-1] += f"{joined_by}{part}"
                height += high
            else:
                cells.append(part)
                height = high
    return cells
