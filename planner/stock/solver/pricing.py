"""What boards are worth at given values of the parts, and the patterns that make the most of them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from planner.domain.stock import SawWay
from planner.stock.solver.columns import Column, Cut, counts_of
from planner.stock.solver.columns import Strip as RowStrip
from planner.stock.solver.tables import Frame, Sections, Stack, Strip
from planner.stock.solver.task import Floats, Ints, Task


@dataclass(frozen=True, slots=True)
class Mode:
    """A way of cutting rectangles: the way that makes the strips, and whether sections are cut off first."""

    strips: SawWay
    sectioned: bool


_EFFORT_OF_A_PASS = 2_000_000
"""What everything around a pass takes, in entries of tables looked at."""


class Pricer:
    """Frames for a task, made once, and the modes that the maker allows.

    Attributes:
        plain: ways of cutting in two stages.
        deep: ways of cutting in three.
        quick: the one of two stages that is worked out soonest.
        effort: spent so far, in entries of tables looked at: a clock that runs the same on every machine.
    """

    def __init__(self, task: Task, *, hopeful: bool = False) -> None:
        self.task = task
        self.frames = {
            way: Frame(task.lying(way, hopeful=hopeful), task.demand, task.rectangles(way, hopeful=hopeful))
            for way in SawWay
        }
        wish = task.job.wish
        plain = [Mode(way, sectioned=False) for way in SawWay if wish.first in (None, way)]
        deep = [Mode(way, sectioned=True) for way in SawWay if wish.first in (None, way.other)]
        if wish.first is not SawWay.CROSSCUT and self._one_strip_only():
            plain, deep = [Mode(SawWay.RIP, sectioned=False)], []
        self.plain = tuple(plain)
        self.deep = tuple(deep) if wish.stages > 2 else ()  # noqa: PLR2004 - sections make the third
        self.effort = 0
        self.quick = (min(self.plain, key=self._effort),)

    def _one_strip_only(self) -> bool:
        """Whether no board is wide enough for two strips: then all cutting is along one line."""
        frame = self.frames[SawWay.RIP]
        return not len(frame.widths) or int(frame.widths[0]) * 2 > int(frame.across.at[-1])

    def _effort(self, mode: Mode) -> int:
        frame = self.frames[mode.strips]
        return len(frame.across) * len(frame.widths) * len(set(frame.reach))

    def price(self, values: Floats, limits: Ints, modes: Sequence[Mode]) -> Prices:
        """Worth of every board when a part of each row has this value; at most so many of a row in one strip.

        Args:
            values: whole numbers, 0 or more.
            limits: by row.
            modes: the ways of cutting to look at.
        """
        prices = Prices(self, values, limits, modes)
        stacked = sum(table.effort for table in prices.stacks.values())
        self.effort += _EFFORT_OF_A_PASS + stacked + sum(table.effort for table in prices.sections.values())
        return prices


class Prices:
    """Best values of all boards at once, with demand limits kept within a strip but not between strips."""

    def __init__(self, pricer: Pricer, values: Floats, limits: Ints, modes: Sequence[Mode]) -> None:
        self.pricer = pricer
        self.values = values
        self.limits = limits
        self.modes = sorted(modes, key=lambda mode: not mode.sectioned)
        self.stacks: dict[SawWay, Stack] = {}
        self.sections: dict[SawWay, Sections] = {}
        for mode in self.modes:
            self._tabulate(mode)
        task = pricer.task
        by_mode = [self._worth(mode) for mode in self.modes]
        self.mode_worth: Floats = np.array(by_mode)
        self.rect_worth: Floats = self.mode_worth.max(axis=0)
        self.worth: Floats = np.array(
            [self.rect_worth[list(s.rects[self.way(k)])].sum() for k, s in enumerate(task.sorts)]
        )

    def _tabulate(self, mode: Mode) -> None:
        frame = self.pricer.frames[mode.strips]
        if mode.sectioned:
            whole = Stack(frame.strips(self.values, self.limits), np.arange(len(frame.along)))
            self.stacks[mode.strips] = whole
            self.sections[mode.strips] = Sections(whole)
        elif mode.strips not in self.stacks:
            self.stacks[mode.strips] = Stack(frame.strips(self.values, self.limits), np.unique(frame.reach))

    def _worth(self, mode: Mode) -> Floats:
        frame, stack = self.pricer.frames[mode.strips], self.stacks[mode.strips]
        if mode.sectioned:
            sections = self.sections[mode.strips]
            return np.array([sections.value(int(a), int(b)) for a, b in zip(frame.room, frame.reach, strict=True)])
        found: Floats = stack.table[frame.room, np.searchsorted(stack.reaches, frame.reach)]
        return found

    def way(self, sort: int) -> int:
        """The best way to clear a board of a sort."""
        rects = self.pricer.task.sorts[sort].rects
        if len(rects) == 1:
            return 0
        return int(np.argmax([self.rect_worth[list(each)].sum() for each in rects]))

    def loose(self, sort: int) -> Column:
        """The pattern behind the worth of a board; it may give more of a row than is wanted."""
        rects = self.pricer.task.sorts[sort].rects[self.way(sort)]
        return self._column(sort, [self._loose_cut(rect) for rect in rects])

    def _loose_cut(self, rect: int) -> Cut:
        mode = self.modes[int(self.mode_worth[:, rect].argmax())]
        frame = self.pricer.frames[mode.strips]
        room, reach = int(frame.room[rect]), int(frame.reach[rect])
        if mode.sectioned:
            found = self.sections[mode.strips].pattern(room, reach)
        else:
            stack = self.stacks[mode.strips]
            found = (stack.pattern(room, int(np.searchsorted(stack.reaches, reach))),)
        return Cut(strips=mode.strips, sectioned=mode.sectioned, sections=_by_row(frame, found))

    def strict(self, sort: int, limits: Ints, *, ahead: bool) -> Column:
        """A good pattern that gives no more of a row than its limit.

        Args:
            sort: of the board.
            limits: by row, for the whole board.
            ahead: judge a strip by what may follow it, rather than by its value for its width.
        """
        left = limits.copy()
        cuts = []
        for rect in self.pricer.task.sorts[sort].rects[self.way(sort)]:
            mode = self.modes[int(self.mode_worth[:, rect].argmax())]
            cuts.append(_Filling(self, mode, rect, ahead=ahead).fill(left))
        return self._column(sort, cuts)

    def _column(self, sort: int, cuts: Sequence[Cut]) -> Column:
        task = self.pricer.task
        return Column(
            sort=sort,
            way=self.way(sort),
            cuts=tuple(cuts),
            counts=counts_of(cuts, len(task.sizes)),
            cost=float(task.cost[sort]),
        )


class _Filling:
    """A rectangle filled strip by strip, each strip the best that what is still wanted allows."""

    def __init__(self, prices: Prices, mode: Mode, rect: int, *, ahead: bool) -> None:
        self.prices = prices
        self.mode = mode
        self.frame = prices.pricer.frames[mode.strips]
        self.room = int(self.frame.room[rect])
        self.reach = int(self.frame.reach[rect])
        self.ahead = ahead

    def fill(self, left: Ints) -> Cut:
        """The filled rectangle; what it takes is taken off what is left."""
        stack = self.prices.stacks[self.mode.strips]
        if self.mode.sectioned:
            lengths = self.prices.sections[self.mode.strips].ends_of(self.room, self.reach)
            sections = [list(self._strips(left, end, stack.table[:, end])) for end in lengths]
        else:
            column = stack.table[:, int(np.searchsorted(stack.reaches, self.reach))]
            sections = [list(self._strips(left, self.reach, column))]
        found = _by_row(self.frame, tuple(tuple(section) for section in sections if section))
        return Cut(strips=self.mode.strips, sectioned=self.mode.sectioned, sections=found)

    def _strips(self, left: Ints, reach: int, to_come: Floats) -> Iterator[Strip]:
        room = self.room
        frame = self.frame
        barred: frozenset[int] = frozenset()
        while room > 1:
            strips = frame.strips(self.prices.values, left, barred)
            after = frame.back_across[room]
            value = strips.best(reach)
            if not ((value > 0) & (after > 0)).any():
                return
            score = value + to_come[after] if self.ahead else value / self._taken(room, after)
            score = np.where((after > 0) & (value > 0), score, -np.inf)
            width = int(score.argmax())
            strip = strips.strip(width, reach)
            twice = _both_ways(frame, strip, left)
            if twice is not None:
                barred |= {twice}
                continue
            for lying, times in strip:
                left[frame.lying[lying].row] -= times
            barred = frozenset()
            yield strip
            room = int(after[width])

    def _taken(self, room: int, after: Ints) -> Ints:
        """Width that a strip uses up: all that is left if nothing fits beside it."""
        places = self.frame.across.at
        rest = places[np.maximum(after, 1)]
        return np.where(rest >= self.frame.widths[0], self.frame.widths, np.maximum(places[room], 1))


def _both_ways(frame: Frame, strip: Strip, left: Ints) -> int | None:
    """Of a size that lies both ways in a strip, more of it than is wanted: the way that it lies less often."""
    times = dict(strip)
    for index, _ in sorted(strip, key=lambda each: each[1]):
        row = frame.lying[index].row
        if sum(m for k, m in times.items() if frame.lying[k].row == row) > left[row]:
            return index
    return None


def _by_row(frame: Frame, sections: tuple[tuple[Strip, ...], ...]) -> tuple[tuple[RowStrip, ...], ...]:
    return tuple(
        tuple(tuple((frame.lying[i].row, frame.lying[i].turned, n) for i, n in strip) for strip in section)
        for section in sections
    )
