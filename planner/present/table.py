"""The neutral table: what screen, workbook and paper have in common.

A view turns a plan into a table of typed cells; a writer turns any table into bytes or text. So a view knows nothing of
spreadsheets, and a writer nothing of boards.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from planner.lengths import Grid, in_unit, show_length

Cell = str | int | Fraction | tuple[str, ...] | None
"""None is an empty cell."""


class Kind(StrEnum):
    """What the cells of a column hold."""

    TEXT = "text"
    LENGTH = "length"
    """Whole nanometres: a size, shown on the project's grid."""
    PLACE = "place"
    """Whole nanometres: where a cut begins or a machine is set, shown on the finest grid of the unit."""
    COUNT = "count"
    AMOUNT = "amount"
    """An area or a volume, exact."""
    MARKS = "marks"
    """A tuple of short texts, none of which is broken across lines."""
    TICKS = "ticks"
    """The same, each with a box to tick on paper."""
    TICK = "tick"
    """A box to tick."""


LENGTHS = (Kind.LENGTH, Kind.PLACE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """One column.

    Attributes:
        heading: short, and unlike that of any other column of the table.
        decimals: places shown of an amount.
        formula: how an amount follows from other cells of its row, named by their headings in braces, in the
            project's unit; empty when it doesn't.
        summed: whether groups and table end with its sum.
        strong: whether it must catch the eye first.
        repeats: whether it says what the heading of the group says; on paper a page may begin without that heading, on
            a screen the column is left out.
    """

    heading: str
    kind: Kind = Kind.TEXT
    decimals: int = 2
    formula: str = ""
    summed: bool = False
    strong: bool = False
    repeats: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """Rows that belong together, under a heading of their own (none when it is empty)."""

    heading: str = ""
    notes: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    rows: tuple[tuple[Cell, ...], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """A titled table.

    Attributes:
        grid: how its lengths are shown.
        page_per_group: whether each group begins a new page on paper.
        notes: what to know before reading it.
        cautions: what to heed before acting on it.
        steps: whether its groups are steps to be taken one after the other, so that headings above the first will do.
    """

    title: str
    grid: Grid
    columns: tuple[Column, ...]
    groups: tuple[Group, ...]
    notes: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    page_per_group: bool = False
    steps: bool = False

    @property
    def rows(self) -> Iterator[tuple[Cell, ...]]:
        """The rows of all groups."""
        for group in self.groups:
            yield from group.rows

    @property
    def has_sums(self) -> bool:
        """Whether groups and table end with sums."""
        return any(column.summed for column in self.columns)

    def headings(self) -> tuple[str, ...]:
        """Headings as they are shown: a length says its unit."""
        return tuple(
            f"{column.heading}, {self.grid.unit}" if column.kind in LENGTHS else column.heading
            for column in self.columns
        )

    def grid_of(self, column: Column) -> Grid:
        """The grid on which the lengths of a column are shown."""
        return self.grid.fine if column.kind is Kind.PLACE else self.grid

    def sums(self, rows: tuple[tuple[Cell, ...], ...] | None = None) -> tuple[Cell, ...]:
        """Sums over some rows, or all; None in columns that are not summed."""
        over = tuple(self.rows) if rows is None else rows
        return tuple(
            _sum(row[index] for row in over) if column.summed else None for index, column in enumerate(self.columns)
        )

    def shown(self, column: Column, cell: Cell) -> str:
        """A cell as text; empty when there is nothing to show."""
        match column.kind, cell:
            case _, None:
                return ""
            case Kind.LENGTH | Kind.PLACE, int():
                return show_length(cell, self.grid_of(column))
            case Kind.AMOUNT, int() | Fraction():
                return f"{float(cell):.{column.decimals}f}"
            case _, tuple():
                return ", ".join(cell)
            case _:
                return str(cell)


def _sum(cells: Iterator[Cell]) -> Cell:
    numbers = [Fraction(cell) for cell in cells if isinstance(cell, int | Fraction)]
    whole = sum(numbers, start=Fraction(0))
    return whole.numerator if whole.denominator == 1 else whole


def setting(length: int, grid: Grid) -> str:
    """A length to set a machine or a gauge to: on the finest grid, and in decimals where that had to be rounded.

    >>> setting(19_446_875, Grid.IN_16), setting(19_500_000, Grid.IN_16)
    ('49/64', '~49/64 (0.768)')
    """
    shown = show_length(length, grid.fine)
    if length % grid.fine.step_nm == 0:
        return shown
    places = 2 if grid is Grid.MM_TENTH else 3
    return f"{shown} ({float(in_unit(length, grid.unit)):.{places}f})"
