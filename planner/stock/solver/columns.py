"""Columns: one board of a sort, cleared one way and cut by a pattern, with what it gives and costs."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field

import numpy as np

from planner.domain.stock import SawWay
from planner.stock.solver.task import Floats, Ints

Strip = tuple[tuple[int, bool, int], ...]
"""What lies in a strip: row of the demand, whether turned, how many."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """How a clear rectangle is cut.

    Attributes:
        strips: the way of the cuts that make the strips.
        sectioned: whether cuts of the other way come first.
        sections: side by side, each a stack of strips; just one if there are no cuts before the strips.
    """

    strips: SawWay
    sectioned: bool
    sections: tuple[tuple[Strip, ...], ...]

    def lying(self) -> Iterator[tuple[int, bool, int]]:
        """All that lies in it."""
        return (each for section in self.sections for strip in section for each in strip)


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A board and its pattern.

    Attributes:
        sort: number of the sort of boards.
        way: number of the way to clear it.
        cuts: for each clear rectangle.
        counts: what it gives, by row of the demand.
        cost: of the board, less the credit for offcuts.
    """

    sort: int
    way: int
    cuts: tuple[Cut, ...]
    counts: Ints = field(compare=False)
    cost: float = 0.0


def counts_of(cuts: Iterable[Cut], rows: int) -> Ints:
    """What cuts give, by row of the demand."""
    counts = np.zeros(rows, dtype=np.int64)
    for cut in cuts:
        for row, _, times in cut.lying():
            counts[row] += times
    return counts


class Pool:
    """All columns found so far; of those that give the same from the same sort, the cheapest."""

    def __init__(self, rows: int) -> None:
        self.columns: list[Column] = []
        self._counts: Ints = np.zeros((64, rows), dtype=np.int64)
        self._cost: Floats = np.zeros(64)
        self._sort: Ints = np.zeros(64, dtype=np.int64)
        self._known: dict[tuple[int, bytes], int] = {}

    def __len__(self) -> int:
        return len(self.columns)

    @property
    def counts(self) -> Ints:
        """What each column gives: columns by rows of the demand."""
        return self._counts[: len(self)]

    @property
    def cost(self) -> Floats:
        """Cost of each column."""
        return self._cost[: len(self)]

    @property
    def sort(self) -> Ints:
        """Sort of each column."""
        return self._sort[: len(self)]

    def add(self, column: Column) -> int:
        """Take a column in; its number."""
        key = (column.sort, column.counts.tobytes())
        known = self._known.get(key)
        if known is not None and self._cost[known] <= column.cost:
            return known
        if len(self) == len(self._cost):
            self._counts = np.concatenate((self._counts, np.zeros_like(self._counts)))
            self._cost = np.concatenate((self._cost, np.zeros_like(self._cost)))
            self._sort = np.concatenate((self._sort, np.zeros_like(self._sort)))
        number = len(self)
        self.columns.append(column)
        self._counts[number] = column.counts
        self._cost[number] = column.cost
        self._sort[number] = column.sort
        self._known[key] = number
        return number

    def add_all(self, columns: Sequence[Column]) -> list[int]:
        """Take columns in; the numbers of those that are new."""
        before = len(self)
        return [number for number in dict.fromkeys(map(self.add, columns)) if number >= before]
