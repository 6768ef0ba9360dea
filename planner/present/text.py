"""Tables as text for a terminal: aligned columns where there is room, one block for each row where there isn't.

Nothing is cut off: what doesn't fit its column is wrapped, and a table whose columns can't be as wide as their longest
word is written row by row. Texts are only shown: no markup, no escape codes, no control characters of theirs get out.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from io import StringIO
from itertools import zip_longest
from typing import TYPE_CHECKING

from planner.present import layout
from planner.present.plain import visible, words
from planner.present.table import LENGTHS, Cell, Column, Group, Kind, Table

if TYPE_CHECKING:
    from rich.console import Console

GAP = 2
"""Blanks between columns."""

NARROW = 60
"""Terminals narrower than this get one block for each row."""

LEAST_WIDTH = 20
"""A terminal can't be narrower than this."""

_RIGHT = (*LENGTHS, Kind.COUNT, Kind.AMOUNT)


def render(tables: Iterable[Table], *, width: int, colour: bool) -> str:
    """Tables one below the other.

    Args:
        tables: what to show.
        width: columns of the terminal; fewer than 20 count as 20.
        colour: whether to use colours and bold; without, the text holds no escape codes at all.
    """
    from rich.console import Console

    console = Console(
        file=StringIO(),
        width=max(width, LEAST_WIDTH),
        force_terminal=colour,
        no_color=not colour,
        color_system="standard" if colour else None,
        height=LEAST_WIDTH,
        legacy_windows=False,
    )
    with console.capture() as captured:
        for number, table in enumerate(tables):
            if number:
                console.print()
            _print_table(console, table)
    return captured.get()


def _print_table(console: Console, table: Table) -> None:
    _print_line(console, table.title, "bold")
    _print_remarks(console, table)
    shown = _for_a_screen(table)
    if not any(shown.rows):
        _print_line(console, "Nothing.")
    widths = _widths(shown, console.width)
    said: tuple[str, ...] = ()
    for group in shown.groups:
        _print_group(console, shown, replace(group, cautions=() if group.cautions == said else group.cautions), widths)
        said = group.cautions
    if shown.has_sums:
        console.print()
        _print_line(console, _sums_line(shown, "Total", shown.sums()), "bold")


def _print_remarks(console: Console, of: Table | Group) -> None:
    for note in of.notes:
        _print_line(console, note)
    for caution in of.cautions:
        _print_line(console, f"! {caution}", "yellow")


def _print_group(console: Console, table: Table, group: Group, widths: Sequence[int]) -> None:
    console.print()
    if group.heading:
        _print_line(console, group.heading, "bold cyan")
    _print_remarks(console, group)
    if widths and not (table.steps and group is not table.groups[0]):
        for line in _row_lines(table.columns, (heading.split(" ") for heading in table.headings()), widths):
            _print_line(console, line, "bold")
        _print_line(console, (" " * GAP).join("-" * width for width in widths))
    for row in group.rows:
        cells = [layout.pieces(table, *each) for each in zip(table.columns, row, strict=True)]
        lines = _row_lines(table.columns, cells, widths) if widths else _block(table.headings(), cells, console.width)
        for line in lines:
            _print_line(console, line)
    if table.has_sums and len(table.groups) > 1:
        _print_line(console, _sums_line(table, "Subtotal", table.sums(group.rows)), "bold")


def _sums_line(table: Table, word: str, sums: Sequence[Cell]) -> str:
    parts = (
        f"{column.heading.lower()} {table.shown(column, cell)}"
        for column, cell in zip(table.columns, sums, strict=True)
        if cell
    )
    return f"{word}: {', '.join(parts)}"


def _print_line(console: Console, line: str, style: str = "") -> None:
    """One line of any length, folded to the console's width; what it says is never taken for markup."""
    from rich.cells import cell_len
    from rich.text import Text

    for part in layout.packed(words(visible(line)), console.width, cell_len):
        console.print(Text(part, style=style, overflow="fold"))


def _for_a_screen(table: Table) -> Table:
    """The table without its boxes, since nobody ticks on a screen, and without what the headings of groups say."""
    kept = [index for index, column in enumerate(table.columns) if not (column.kind is Kind.TICK or column.repeats)]
    return replace(
        table,
        columns=tuple(table.columns[index] for index in kept),
        groups=tuple(
            replace(group, rows=tuple(tuple(row[index] for index in kept) for row in group.rows))
            for group in table.groups
        ),
    )


# --- columns -----------------------------------------------------------------------------------------------


def _widths(table: Table, width: int) -> list[int]:
    """Width of each column, or none at all when the columns don't fit side by side."""
    from rich.cells import cell_len

    room = width - GAP * (len(table.columns) - 1)
    wanted = layout.wants(table, cell_len, cell_len)
    return [] if width < NARROW or sum(wanted.least) > room else layout.fitted(wanted, room)


def _row_lines(columns: Sequence[Column], cells: Iterable[list[str]], widths: Sequence[int]) -> Iterator[str]:
    """A row in columns, as many lines high as its highest cell."""
    from rich.cells import cell_len

    packed = [layout.packed(pieces, width, cell_len) for pieces, width in zip(cells, widths, strict=True)]
    for parts in zip_longest(*packed, fillvalue=""):
        aligned = (_aligned(*part) for part in zip(parts, widths, columns, strict=True))
        yield (" " * GAP).join(aligned).rstrip()


def _aligned(text: str, width: int, column: Column) -> str:
    from rich.cells import cell_len

    blanks = " " * (width - cell_len(text))
    return f"{blanks}{text}" if column.kind in _RIGHT else f"{text}{blanks}"


# --- blocks ------------------------------------------------------------------------------------------------


def _block(headings: Sequence[str], cells: Sequence[list[str]], width: int) -> Iterator[str]:
    """A row as one line, or more, for each cell that holds something, then a blank line."""
    from rich.cells import cell_len

    for heading, pieces in zip(headings, cells, strict=True):
        if any(pieces):
            yield from layout.packed((f"{heading}:", *pieces), width, cell_len)
    yield ""
