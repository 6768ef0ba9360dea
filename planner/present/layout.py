"""Laying out a table's texts, on paper or on a screen: what stays on one line, how wide each column must be."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass

from planner.present.plain import visible, words
from planner.present.table import Cell, Column, Kind, Table

_LISTS = (Kind.MARKS, Kind.TICKS)
"""Lists read as well on two lines as on one."""

BOX = "☐"
"""Stands before each item of a list to tick, on paper."""

Measure = Callable[[str], int]
"""How wide a text is, in whole units of the medium."""


def pieces(table: Table, column: Column, cell: Cell) -> list[str]:
    """What is kept on one line: the words of a text, a number, or the items of a list with the comma after them."""
    if isinstance(cell, str):
        return words(visible(cell))
    if isinstance(cell, tuple):
        return [f"{visible(item)}," for item in cell[:-1]] + [visible(item) for item in cell[-1:]]
    return [table.shown(column, cell)]


@dataclass(frozen=True, slots=True)
class Wants:
    """Width of each column: the least, that of its longest piece; enough to read well; the most it can use."""

    least: tuple[int, ...]
    enough: tuple[int, ...]
    most: tuple[int, ...]


def wants(table: Table, plain: Measure, bold: Measure) -> Wants:
    """How wide the columns want to be, all in what the measures count; headings and strong cells are bold."""
    least, enough, most = [], [], []
    for index, (column, heading) in enumerate(zip(table.columns, table.headings(), strict=True)):
        measure = bold if column.strong else plain
        before = f"{BOX} " if column.kind is Kind.TICKS else ""
        cells = [[before + piece for piece in pieces(table, column, row[index])] for row in table.rows]
        words_of_heading = max(map(bold, heading.split(" ")))
        least.append(max((words_of_heading, *(measure(piece) for cell in cells for piece in cell))))
        longest = max((measure(" ".join(cell)) for cell in cells), default=0)
        most.append(max(least[-1], longest))
        enough.append(max(least[-1], longest // 2 if column.kind in _LISTS else longest))
    return Wants(tuple(least), tuple(enough), tuple(most))


def fitted(wanted: Wants, room: int) -> list[int]:
    """Widths that fit into ``room`` if the least does: first all columns get enough, then what is left to use."""
    return share(share(wanted.least, wanted.enough, room), wanted.most, room)


def share(least: Sequence[int], best: Sequence[int], room: int) -> list[int]:
    """Widths that fit into ``room``: beyond the least, small wants are met first, large ones in equal parts.

    >>> share([4, 4, 4], [6, 40, 60], 44)
    [6, 19, 19]
    """
    widths = list(least)
    spare = max(0, room - sum(least))
    wants = sorted((high - low, index) for index, (low, high) in enumerate(zip(least, best, strict=True)))
    for place, (want, index) in enumerate(wants):
        given = min(want, spare // (len(wants) - place))
        widths[index] += given
        spare -= given
    return widths


def packed(parts: Iterable[str], room: int, measure: Measure, between: str = " ") -> Iterator[str]:
    """Parts joined into lines no wider than ``room``, unless one of them is wider by itself."""
    gap, line, width = measure(between), [""], 0
    first = True
    for part in parts:
        wide = measure(part)
        if first or width + gap + wide > room:
            if not first:
                yield between.join(line)
            line, width, first = [part], wide, False
        else:
            line.append(part)
            width += gap + wide
    yield between.join(line)
