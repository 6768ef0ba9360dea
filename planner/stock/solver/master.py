"""Which columns to cut, and how often: a linear programme for the values of the parts, an integer one for plans."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from planner.stock.solver.columns import Column, Pool
from planner.stock.solver.highs import KeepGoing, Linear, Programme, solve_whole
from planner.stock.solver.task import Floats, Ints, Task

Mask = npt.NDArray[np.bool_]


def money(task: Task, cost: Floats) -> Floats:
    """Costs with a trifle for each board on top, so that of two equal costs the one with fewer boards is less."""
    return cost + 0.5 / (1.0 + float(task.demand.sum()))


def missing_cost(task: Task) -> Floats:
    """What it costs in the programmes not to cut a part: more than any board, and more for larger parts."""
    dearest = float(task.cost.max(initial=0.0)) + 1.0
    cost: Floats = dearest * (1.0 + task.area / task.area.mean())
    return cost


@dataclass(frozen=True, slots=True, kw_only=True)
class Relaxed:
    """A solution in fractions of boards.

    Attributes:
        value: its cost.
        times: of each column of the pool.
        missing: by row.
        values: what one more part of each row would cost.
        rents: what one more board of each sort would save.
    """

    value: float
    times: Floats
    missing: Floats
    values: Floats
    rents: Floats


class Master:
    """The linear programme over the pool: cut the demand, with the boards there are, at least cost."""

    def __init__(self, task: Task, pool: Pool) -> None:
        self.task = task
        self.pool = pool
        self.limited: Ints = np.array(
            [k for k, sort in enumerate(task.sorts) if sort.limit is not None], dtype=np.int64
        )
        self.rows = len(task.sizes)
        self.known = 0
        low, high = self._rows(task.demand, task.limit)
        self.linear = Linear(low, high)
        missing = np.zeros((self.rows, len(low)))
        missing[:, : self.rows] = np.eye(self.rows)
        self.linear.add(missing, missing_cost(task), np.full(self.rows, np.inf))

    def _rows(self, demand: Ints, boards: Ints) -> tuple[Floats, Floats]:
        low: Floats = np.concatenate((demand, np.full(len(self.limited), -np.inf)))
        high: Floats = np.concatenate((np.full(self.rows, np.inf), boards[self.limited]))
        return low, high

    def matrix(self, chosen: Ints) -> Floats:
        """What columns give and which boards they take, a row for each of them."""
        boards = (self.pool.sort[chosen][:, None] == self.limited[None, :]).astype(np.float64)
        return np.concatenate((self.pool.counts[chosen].astype(np.float64), boards), axis=1)

    def _take_in(self) -> None:
        if self.known < len(self.pool):
            fresh = np.arange(self.known, len(self.pool))
            cost = money(self.task, self.pool.cost[fresh])
            self.linear.add(self.matrix(fresh), cost, np.full(len(fresh), np.inf))
            self.known = len(self.pool)

    def solve(self, demand: Ints, boards: Ints, usable: Mask | None = None) -> Relaxed:
        """The optimum for what is still to be cut from the boards that are left.

        Args:
            demand: by row.
            boards: by sort.
            usable: of the columns of the pool; all if not given.
        """
        self._take_in()
        self.linear.set_rows(*self._rows(demand, boards))
        high = np.full(self.rows + self.known, np.inf)
        if usable is not None:
            high[self.rows :][~usable] = 0.0
        self.linear.set_columns(high)
        solved = self.linear.solve()
        if solved is None:
            raise ArithmeticError("a linear programme with shortages allowed has no optimum")
        rents = np.zeros(len(self.task.sorts))
        rents[self.limited] = -solved.duals[self.rows :]
        return Relaxed(
            value=solved.value,
            times=solved.columns[self.rows :],
            missing=solved.columns[: self.rows],
            values=np.maximum(solved.duals[: self.rows], 0.0),
            rents=np.maximum(rents, 0.0),
        )

    def whole(
        self, chosen: Ints, *, demand: Ints, boards: Ints, effort: int, keep_going: KeepGoing
    ) -> list[Column] | None:
        """The best plan from some columns of the pool that was found; None if none was.

        Args:
            chosen: numbers of columns.
            demand: by row.
            boards: that are left, by sort.
            effort: of the search, at most.
            keep_going: whether there is still time.
        """
        low, high = self._rows(demand, boards)
        missing = np.zeros((self.rows, len(low)))
        missing[:, : self.rows] = np.eye(self.rows)
        programme = Programme(
            matrix=np.concatenate((missing, self.matrix(chosen))),
            cost=np.concatenate((missing_cost(self.task), money(self.task, self.pool.cost[chosen]))),
            high=np.concatenate((demand.astype(np.float64), boards[self.pool.sort[chosen]])),
            row_low=low,
            row_high=high,
        )
        found = solve_whole(programme, effort=effort, keep_going=keep_going)
        if found.columns is None:
            return None
        times = found.columns[self.rows :]
        return [self.pool.columns[number] for number, n in zip(chosen, times, strict=True) for _ in range(int(n))]

    def promising(self, relaxed: Relaxed, usable: Mask, most: int) -> Ints:
        """The columns with the least reduced cost, as many as an integer programme can deal with."""
        reduced = self.reduced(relaxed)
        order = np.argsort(np.where(usable, reduced, np.inf), kind="stable")[:most]
        return np.sort(order[usable[order]])

    def reduced(self, relaxed: Relaxed) -> Floats:
        """Reduced costs of the pool: what each column would cost more than it is worth."""
        pool = self.pool
        worth = pool.counts @ relaxed.values - relaxed.rents[pool.sort]
        reduced: Floats = money(self.task, pool.cost) - worth
        return reduced
