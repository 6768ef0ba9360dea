"""The dynamic programmes: best value of a strip of every length, of strips on every board, of sections on every board.

Values are whole numbers kept in floats, so sums are exact. A table frames one way of making strips; the other way is
the same with length and width exchanged.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from planner.stock.solver.places import Places, doublings
from planner.stock.solver.task import Floats, Ints, Lying

Strip = tuple[tuple[int, int], ...]
"""What lies in a strip: indexes into ``Frame.lying`` and how often."""


@dataclass(frozen=True, slots=True)
class Chunk:
    """So many equal parts that are taken together or not at all."""

    lying: int
    times: int
    back: Ints


class Frame:
    """Strips of one way, for given sizes and rectangles."""

    def __init__(self, lying: Sequence[Lying], demand: Ints, rects: Sequence[tuple[int, int]]) -> None:
        self.rects = rects
        longest = max(along for along, _ in rects)
        widest = max(across for _, across in rects)
        self.lying = tuple(each for each in lying if any(each.along <= a and each.across <= b for a, b in rects))
        self.along = Places(((each.along, int(demand[each.row])) for each in self.lying), longest)
        self.widths: Ints = np.array(sorted({each.across for each in self.lying}), dtype=np.int64)
        most: dict[int, int] = dict.fromkeys(map(int, self.widths), 0)
        for each in self.lying:
            most[each.across] += int(demand[each.row])
        self.across = Places(most.items(), widest)
        self.reach: Ints = np.array([self.along.index(a) for a, _ in rects], dtype=np.int64)
        self.room: Ints = np.array([self.across.index(b) for _, b in rects], dtype=np.int64)
        self._all: dict[tuple[int, int], Chunk] = {}

    @cached_property
    def back_across(self) -> Ints:
        """For every place across and every strip width, the index of the place before the strip."""
        backs = [self.across.back(int(width)) for width in self.widths]
        return np.stack(backs, axis=1) if backs else np.zeros((len(self.across), 0), dtype=np.int64)

    def strips(self, values: Floats, limits: Ints, barred: frozenset[int] = frozenset()) -> Strips:
        """Best strips of every width and length, with at most so many of each row in a strip.

        Args:
            values: by row.
            limits: by row; a size that may lie both ways counts each way by itself.
            barred: indexes of ``lying`` that are not to be used.
        """
        return Strips(self, self.chunks(values, limits, barred), values)

    def chunks(self, values: Floats, limits: Ints, barred: frozenset[int]) -> list[list[Chunk]]:
        """For each strip width, what it may hold that narrower ones may not."""
        found: list[list[Chunk]] = [[] for _ in self.widths]
        wide = {int(width): index for index, width in enumerate(self.widths)}
        longest = int(self.along.at[-1])
        most = np.where(values > 0, limits, 0).tolist()
        for index, each in enumerate(self.lying):
            if most[each.row] and index not in barred:
                for times in doublings(min(most[each.row], longest // each.along)):
                    found[wide[each.across]].append(self._chunk(index, times))
        return found

    def _chunk(self, index: int, times: int) -> Chunk:
        key = (index, times)
        if key not in self._all:
            self._all[key] = Chunk(index, times, self.along.back(self.lying[index].along * times))
        return self._all[key]


class Strips:
    """Best value of a strip for every width and length, and what lies in it."""

    def __init__(self, frame: Frame, groups: Sequence[Sequence[Chunk]], values: Floats) -> None:
        self.frame = frame
        self.chunks = [chunk for group in groups for chunk in group]
        self.upto: Ints = np.cumsum([len(group) for group in groups], dtype=np.int64)
        table = np.empty((len(self.chunks) + 1, len(frame.along)))
        table[0] = 0.0
        table[0, 0] = -np.inf
        taken = np.empty(len(frame.along))
        for number, chunk in enumerate(self.chunks):
            table[number].take(chunk.back, out=taken, mode="clip")
            taken += values[frame.lying[chunk.lying].row] * chunk.times
            np.maximum(table[number], taken, out=table[number + 1])
        self.table = table

    def best(self, reach: int | Ints) -> Floats:
        """Values by strip width (and by place along, if several are asked for)."""
        chosen: Floats = (
            self.table[self.upto[:, None], reach[None, :]]
            if isinstance(reach, np.ndarray)
            else self.table[self.upto, reach]
        )
        return chosen

    def strip(self, width: int, reach: int) -> Strip:
        """What lies in the best strip of this width (its index) that ends at this place (its index)."""
        times: dict[int, int] = {}
        for number in range(int(self.upto[width]), 0, -1):
            if self.table[number, reach] > self.table[number - 1, reach]:
                chunk = self.chunks[number - 1]
                times[chunk.lying] = times.get(chunk.lying, 0) + chunk.times
                reach = int(chunk.back[reach])
        return tuple(sorted(times.items()))


class Stack:
    """Best value of strips side by side, for several lengths of board at once: ``table[place across, length]``."""

    def __init__(self, strips: Strips, reaches: Ints) -> None:
        self.strips = strips
        self.frame = strips.frame
        self.reaches = reaches
        self.single = strips.best(reaches)
        table = np.zeros((len(self.frame.across), len(reaches)))
        table[0] = -np.inf
        narrower = np.concatenate((np.zeros((1, len(reaches))), self.single[:-1]))
        useful = np.flatnonzero((self.single > narrower).any(axis=1))
        self.effort = table.size * len(useful)
        back = self.frame.back_across[:, useful]
        for start, end in self.frame.across.runs(int(self.frame.widths[0])) if len(useful) else ():
            run = table[start:end]
            for column, width in enumerate(useful):
                np.maximum(run, table.take(back[start:end, column], axis=0) + self.single[width], out=run)
            np.maximum(run, table[start - 1], out=run)
            np.maximum.accumulate(run, axis=0, out=run)
        self.table = table

    def pattern(self, place: int, column: int) -> tuple[Strip, ...]:
        """The strips of the best stack up to a place across, of one of the lengths."""
        found: list[Strip] = []
        reach = int(self.reaches[column])
        while place > 1 and self.table[place, column] > 0:
            while self.table[place - 1, column] == self.table[place, column]:
                place -= 1
            options = self.table[self.frame.back_across[place], column] + self.single[:, column]
            width = int(options.argmax())
            found.append(self.strips.strip(width, reach))
            place = int(self.frame.back_across[place, width])
        return tuple(strip for strip in found if strip)


class Sections:
    """Best value of sections side by side along the board, each a stack of strips of its own."""

    def __init__(self, stack: Stack) -> None:
        """Take a stack for every place along the board."""
        self.stack = stack
        self.frame = stack.frame
        self.rooms = np.unique(self.frame.room)
        single = stack.table[self.rooms]
        table = np.zeros_like(single)
        table[:, 0] = -np.inf
        along = self.frame.along.at
        better = np.flatnonzero((single[:, 1:] > single[:, :-1]).any(axis=0)) + 1
        self.ends: Ints = better[better > 1]
        lengths = along[self.ends]
        self.effort = table.size * len(lengths)
        for start, end in self.frame.along.runs(int(lengths[0])) if len(lengths) else ():
            run = table[:, start:end]
            for length, section in zip(lengths, self.ends, strict=True):
                if length > along[end - 1]:
                    break
                back = self.frame.along.back(int(length))[start:end]
                np.maximum(run, table.take(back, axis=1) + single[:, section, None], out=run)
            np.maximum(run, table[:, start - 1, None], out=run)
            np.maximum.accumulate(run, axis=1, out=run)
        self.table = table

    def value(self, room: int, reach: int) -> float:
        """Best value on a rectangle."""
        return float(self.table[np.searchsorted(self.rooms, room), reach])

    def pattern(self, room: int, reach: int) -> tuple[tuple[Strip, ...], ...]:
        """The sections of the best pattern on a rectangle."""
        return tuple(self.stack.pattern(room, end) for end in self.ends_of(room, reach))

    def ends_of(self, room: int, reach: int) -> list[int]:
        """Lengths of the sections of the best pattern on a rectangle, as indexes of places along it."""
        row = int(np.searchsorted(self.rooms, room))
        found = []
        while reach > 1 and self.table[row, reach] > 0:
            while self.table[row, reach - 1] == self.table[row, reach]:
                reach -= 1
            along = self.frame.along.at
            back = np.maximum(np.searchsorted(along, along[reach] - along[self.ends], side="right") - 1, 0)
            options = self.table[row, back] + self.stack.table[room, self.ends]
            chosen = len(options) - 1 - int(options[::-1].argmax())  # of equals the longest: fewer cuts
            found.append(int(self.ends[chosen]))
            reach = int(back[chosen])
        return found
