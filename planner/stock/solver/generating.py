"""Column generation: values of the parts from the columns found so far, better columns at these values, and so on."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from planner.stock.solver.bounds import Bounds, scale
from planner.stock.solver.columns import Column, Pool
from planner.stock.solver.drawing import credited
from planner.stock.solver.highs import KeepGoing
from planner.stock.solver.master import Mask, Master, Relaxed, money
from planner.stock.solver.pricing import Mode, Pricer, Prices
from planner.stock.solver.task import Floats, Ints, Task

_MOST_SORTS = 10
"""Boards for which new patterns are worked out in one round."""
_AGAIN = 1
_LOOKED_AT = 3
"""How often the tables are worked out again for patterns within the demand, and by how many boards that is judged."""
_SMOOTH = 0.6
"""Weight of the values with the best bound so far against those of the last solution."""
_WORTH_A_ROUND = 1e-6


class Generator:
    """Columns for one task, and the programmes that choose among them."""

    def __init__(self, task: Task, pricer: Pricer, bounds: Bounds, keep_going: KeepGoing) -> None:
        self.task = task
        self.pricer = pricer
        self.bounds = bounds
        self.keep_going = keep_going
        self.pool = Pool(len(task.sizes))
        self.master = Master(task, self.pool)
        self.scale = scale(task)

    def whole(self, values: Floats) -> Floats:
        """Values in money as whole numbers."""
        found: Floats = np.floor(values * self.scale)
        return found

    def root(self, modes: Sequence[Mode], rounds: int) -> Relaxed:
        """Generate for the whole demand until nothing gets better; every round can raise the bound.

        Columns may give more of a row than is wanted here, so that the values become those of the best bound.
        """
        demand, boards = self.task.demand, self.task.limit
        relaxed = self.master.solve(demand, boards)
        centre = relaxed.values
        smooth = 0.0
        for _ in range(rounds):
            if not self.keep_going() or self._closed(relaxed):
                break
            values = smooth * centre + (1 - smooth) * relaxed.values
            before = self.bounds.best
            prices = self.pricer.price(self.whole(values), demand, modes)
            if self.bounds.trusts(prices):
                self.bounds.learn(prices.values, prices.worth)
            if self.bounds.best > before:
                centre = values
            sorts = self._promising(prices, relaxed, boards)
            columns = [column for sort in sorts for column in self._of_sort(prices, int(sort), demand, loose=True)]
            new = self.pool.add_all([credited(self.task, column) for column in columns])
            if new and (self.master.reduced(relaxed)[new] < -_WORTH_A_ROUND).any():
                relaxed = self.master.solve(demand, boards)
                smooth = _SMOOTH
            elif smooth > 0:
                smooth = 0.0
            else:
                break
        if not self.bounds.closest(modes):
            self.bounds.look(self.whole(relaxed.values))
        return relaxed

    def _closed(self, relaxed: Relaxed) -> bool:
        """Whether the bound can't rise any more: the fractions of boards cost no more than it."""
        return not relaxed.missing.any() and self.bounds.reached(relaxed.value)

    def proper(self, modes: Sequence[Mode], relaxed: Relaxed, demand: Ints, boards: Ints) -> bool:
        """Add columns that give no more than is still wanted, at the values of a solution; whether any improves it.

        The tables let a part come in every strip of a board. Where that spoils the pattern, what comes too often is
        made less attractive, and the tables are worked out again.
        """
        values = relaxed.values * (demand > 0)
        sorts: Ints | None = None
        for _ in range(_AGAIN + 1):
            prices = self.pricer.price(self.whole(values), demand, modes)
            sorts = self._promising(prices, relaxed, boards) if sorts is None else sorts
            columns = [column for sort in sorts for column in self._of_sort(prices, int(sort), demand, loose=False)]
            new = self.pool.add_all([credited(self.task, column) for column in columns])
            if (self.master.reduced(relaxed)[new] < -_WORTH_A_ROUND).any():
                return True
            much = np.max([prices.loose(int(sort)).counts for sort in sorts[:_LOOKED_AT]], axis=0, initial=0)
            if not len(sorts) or (much <= demand).all():
                return False
            values = values * np.sqrt(np.minimum(1.0, demand / np.maximum(much, 1)))
        return False

    def solve(self, demand: Ints, boards: Ints) -> Relaxed:
        """The optimum over the columns that give no more than is still wanted."""
        return self.master.solve(demand, boards, self.usable(demand, boards))

    def usable(self, demand: Ints, boards: Ints) -> Mask:
        """Which columns give no more than is still wanted, from boards that are left."""
        usable: Mask = (self.pool.counts <= demand).all(axis=1) & (boards[self.pool.sort] > 0)
        return usable

    def _promising(self, prices: Prices, relaxed: Relaxed, boards: Ints) -> Ints:
        """Sorts of boards that are worth more than they cost, the best first."""
        cost = money(self.task, self.task.cost) + relaxed.rents
        promise = np.where(boards > 0, prices.worth / self.scale / cost, 0.0)
        best: Ints = np.argsort(-promise, kind="stable")[:_MOST_SORTS]
        return best[promise[best] > 1.0 - _WORTH_A_ROUND]

    def _of_sort(self, prices: Prices, sort: int, demand: Ints, *, loose: bool) -> list[Column]:
        column = prices.loose(sort)
        if loose or (column.counts <= demand).all():
            return [column]
        return [prices.strict(sort, demand, ahead=ahead) for ahead in (True, False)]
