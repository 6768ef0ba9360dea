"""Diving: fix boards one after the other, with new columns for what is left each time, until every part is cut."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from planner.stock.solver.columns import Column
from planner.stock.solver.generating import Generator
from planner.stock.solver.master import Relaxed, money
from planner.stock.solver.pricing import Mode
from planner.stock.solver.task import Ints

_NEARLY = 1e-6
_LEAST_LUCK = 0.6


@dataclass(slots=True)
class Left:
    """What is still to be cut, by row, and the boards that are left, by sort."""

    demand: Ints
    boards: Ints

    def after(self, columns: Sequence[Column]) -> Left:
        """What is left once these columns are cut."""
        demand, boards = self.demand.copy(), self.boards.copy()
        for column in columns:
            demand -= column.counts
            boards[column.sort] -= 1
        return Left(np.maximum(demand, 0), boards)


def dive(
    generator: Generator,
    modes: Sequence[Mode],
    left: Left,
    *,
    rounds: int,
    chance: np.random.Generator | None = None,
    allowed: float = np.inf,
) -> list[Column] | None:
    """Columns that cut what is left, or None if they would cost more than is allowed, or time is up.

    Args:
        generator: of the task.
        modes: the ways of cutting to use for new columns.
        left: to be cut, and from what.
        rounds: of column generation after each step, at most.
        chance: to choose among columns that are nearly as good; None to choose the best.
        allowed: give up when the cost reaches this.
    """
    found: list[Column] = []
    while left.demand.any():
        relaxed = settle(generator, modes, left, rounds)
        spent = total(generator, found)
        if not generator.keep_going() or spent + relaxed.value >= allowed:
            return None
        chosen = _choose(generator, relaxed, left, chance)
        if not chosen:
            break
        found.extend(chosen)
        left = left.after(chosen)
    return found


def total(generator: Generator, columns: Sequence[Column]) -> float:
    """What columns cost, with the trifle for each board."""
    return float(money(generator.task, np.array([column.cost for column in columns])).sum())


def settle(generator: Generator, modes: Sequence[Mode], left: Left, rounds: int) -> Relaxed:
    """Generate columns for what is left until they get no better, for so many rounds at most."""
    relaxed = generator.solve(left.demand, left.boards)
    for _ in range(rounds):
        if not generator.keep_going() or not generator.proper(modes, relaxed, left.demand, left.boards):
            break
        relaxed = generator.solve(left.demand, left.boards)
    return relaxed


def _choose(generator: Generator, relaxed: Relaxed, left: Left, chance: np.random.Generator | None) -> list[Column]:
    """Columns to fix: all whole boards of the solution, or else the one that is nearest to a whole board."""
    pool, times = generator.pool, relaxed.times
    whole: list[Column] = []
    rest = left
    for number in np.argsort(-times, kind="stable"):
        column = pool.columns[number]
        n = min(int(times[number] + _NEARLY), _room(column, rest))
        if times[number] < 1 - _NEARLY:
            break
        whole.extend([column] * n)
        rest = rest.after([column] * n)
    if whole or not len(times):
        return whole
    weighed = times if chance is None else times * chance.uniform(_LEAST_LUCK, 1.0, size=len(times))
    best = int(weighed.argmax())
    return [pool.columns[best]] if times[best] > _NEARLY else []


def _room(column: Column, left: Left) -> int:
    """How often a column can be cut without giving more than is wanted."""
    given = column.counts > 0
    return min(int(left.boards[column.sort]), int((left.demand[given] // column.counts[given]).min()))
