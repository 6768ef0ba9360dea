"""Choose the boards first: the cheapest sets that could be worth the demand, and then try to cut everything from them.

A set that can't hold the parts even in fractions of patterns shows it by values of the parts that rule it out for good;
that raises the bound. A set that holds them in fractions is tried in earnest.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from planner.stock.solver.bounds import Bounds
from planner.stock.solver.columns import Column
from planner.stock.solver.diving import Left, dive, settle
from planner.stock.solver.generating import Generator
from planner.stock.solver.pricing import Mode

_ROUNDS = 12
_DIVE_ROUNDS = 5
_EFFORT = 300


class BoardSets:
    """Sets of boards from the cheapest that may do up to those that cost as much as the best plan, round and round."""

    def __init__(self, generator: Generator, bounds: Bounds, chance: np.random.Generator) -> None:
        self.generator = generator
        self.bounds = bounds
        self.chance = chance
        self.at_least = 0.0

    def try_one(self, modes: Sequence[Mode], best: float) -> list[Column] | None:
        """A plan that costs less than the best, if the next set of boards gives one.

        Args:
            modes: the ways of cutting to use for new columns.
            best: cost of the best plan.
        """
        generator = self.generator
        boards = self.bounds.choose_whole(effort=_EFFORT, keep_going=generator.keep_going, at_least=self.at_least)
        cost = np.inf if boards is None else float(boards @ np.array([float(cost) for cost in self.bounds.costs]))
        if boards is None or cost + float(self.bounds.fixed) >= best:
            self.at_least = 0.0
            return None
        left = Left(generator.task.demand, boards)
        relaxed = settle(generator, modes, left, _ROUNDS)
        if relaxed.missing.sum() > 1e-6:  # noqa: PLR2004 - HiGHS's tolerance
            before = self.bounds.best
            self.bounds.look(generator.whole(relaxed.values))
            if self.bounds.best == before:
                self.at_least = cost + float(self.bounds.step)
            return None
        self.at_least = cost + float(self.bounds.step)
        return dive(generator, modes, left, rounds=_DIVE_ROUNDS, chance=self.chance, allowed=best)
