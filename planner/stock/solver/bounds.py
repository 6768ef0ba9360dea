"""What no plan can cost less than.

For any values of the parts, no board can be worth more than its best pattern. So the boards of a plan must be worth
at least the demand: a knapsack, whose fractions give one bound and whose whole boards give a better one, the more sets
of values it must satisfy at once. Sums are exact: values are whole numbers, and the fraction is rounded once.

With a credit for offcuts, a board costs at least what its credit leaves of it when nothing is cut from it, and each
part that is cut takes credit for its area away.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, gcd

import numpy as np

from planner.stock.solver.highs import KeepGoing, Programme, solve_whole
from planner.stock.solver.pricing import Mode, Pricer, Prices
from planner.stock.solver.task import Floats, Ints, Task

_MOST_VALUES = 24
"""Sets of values that the choice of whole boards must satisfy."""
_SURE = 1e-6
"""Part of the bound that is given away, since HiGHS works in floats."""


@dataclass(frozen=True, slots=True)
class _Values:
    """What the demand is worth and what each board can be worth at most, at some values of the parts."""

    demand: int
    boards: tuple[int, ...]
    bound: Fraction


class Bounds:
    """The best bound so far, and what it rests on."""

    def __init__(self, task: Task, pricer: Pricer) -> None:
        self.task = task
        self.pricer = pricer if task.grid.exact else Pricer(task, hopeful=True)
        self.modes = self.pricer.deep or self.pricer.plain
        keep = task.job.wish.keep
        self.percent = keep.credit_pct if keep else 0
        costs = [sort.board.cost for sort in task.sorts]
        areas = [sort.board.length_nm * sort.board.width_nm for sort in task.sorts]
        self.rate = min(
            (Fraction(self.percent * c, 100 * a) for c, a in zip(costs, areas, strict=True)), default=Fraction(0)
        )
        wanted = sum(size.area * len(size.marks) for size in task.sizes)
        self.fixed = self.rate * wanted
        self.costs = [Fraction(cost * (100 - self.percent), 100) for cost in costs]
        self.step = (gcd(*costs) or 1) if keep is None else 1
        self.limits = [sort.limit for sort in task.sorts]
        self.best = 0
        self.impossible = not task.sizes
        self.kept: list[_Values] = []

    def trusts(self, prices: Prices) -> bool:
        """Whether a pass allowed everything that a plan may do."""
        return prices.pricer is self.pricer and self._all(prices.modes)

    def closest(self, modes: Sequence[Mode]) -> bool:
        """Whether a pass with these modes is all that the bound needs, so that none of its own gives more."""
        return self.task.grid.exact and not self.percent and self._all(modes)

    def _all(self, modes: Sequence[Mode]) -> bool:
        return set(self.modes) <= set(modes)

    def learn(self, values: Floats, worth: Floats) -> None:
        """Take in values of the parts with what each board is worth at most at them, both whole numbers.

        Args:
            values: by row.
            worth: by sort, from a pass that allows everything a plan may do.
        """
        demand = int(sum(int(v) * int(d) for v, d in zip(values, self.task.demand, strict=True)))
        boards = tuple(int(w) for w in worth)
        bound = self._fractional(demand, boards)
        if bound is None:
            self.impossible = True
            return
        self._raise(bound + self.fixed)
        self.kept.append(_Values(demand, boards, bound))
        if len(self.kept) > _MOST_VALUES:
            self.kept.remove(min(self.kept[:-1], key=lambda each: each.bound))

    def look(self, values: Floats) -> None:
        """Make a pass of our own at these values, with everything allowed that a plan may do."""
        rate = float(self.rate) * scale(self.task)
        own: Floats = np.floor(np.maximum(values - rate * self.task.area, 0.0))
        if own.any():
            self.learn(own, self.pricer.price(own, self.task.demand, self.modes).worth)

    def reached(self, cost: float) -> bool:
        """Whether a cost in fractions of boards lets the bound rise no more."""
        return ceil((Fraction(cost) * (1 - Fraction(_SURE))) / self.step) * self.step <= self.best

    def _raise(self, bound: Fraction) -> None:
        self.best = max(self.best, ceil(bound / self.step) * self.step)

    def _fractional(self, demand: int, boards: tuple[int, ...]) -> Fraction | None:
        """Cost of the cheapest fractions of boards that are worth the demand; None if all of them aren't."""
        order = sorted((k for k, worth in enumerate(boards) if worth), key=lambda k: self.costs[k] / boards[k])
        left, cost = Fraction(demand), Fraction(0)
        for k in order:
            limit = self.limits[k]
            take = left / boards[k] if limit is None else min(left / boards[k], Fraction(limit))
            cost += take * self.costs[k]
            left -= take * boards[k]
            if left <= 0:
                return cost
        return None if left > 0 else cost

    def choose_whole(self, *, effort: int, keep_going: KeepGoing, at_least: float = 0.0) -> Ints | None:
        """Bound by whole boards: the cheapest choice that is worth the demand at all values kept; None if unknown.

        Args:
            effort: of the search, at most.
            keep_going: whether there is still time.
            at_least: what the choice must cost; the bound is raised only if that is nothing.
        """
        if not self.kept or self.impossible:
            return None
        most = [int(self.task.demand.sum()) if limit is None else limit for limit in self.limits]
        cost = np.array([float(cost) for cost in self.costs])
        worth = np.array([[v.boards[k] / v.demand for v in self.kept] for k in range(len(cost))])
        programme = Programme(
            matrix=np.concatenate((worth, cost[:, None]), axis=1),
            cost=cost,
            high=np.array(most, dtype=np.float64),
            row_low=np.array([*[1.0 - _SURE] * len(self.kept), at_least]),
            row_high=np.full(len(self.kept) + 1, np.inf),
        )
        found = solve_whole(programme, effort=effort, keep_going=keep_going)
        if at_least == 0.0:
            self._take(found.bound)
        return found.columns

    def _take(self, bound: float) -> None:
        """Take a bound from HiGHS, a little less than it says."""
        if bound == np.inf:
            self.impossible = True
        elif np.isfinite(bound):
            self._raise(Fraction(bound * (1 - _SURE)) + self.fixed)


def scale(task: Task) -> float:
    """How many whole numbers make one unit of money in the pricing: a power of two, so that sums stay exact."""
    dearest = float(task.cost.max(initial=0.0)) + 1.0
    return float(2.0 ** (38 - np.ceil(np.log2(dearest))))
