"""Improve a plan a few boards at a time: take them apart and cut their parts anew, with any boards that are left."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from planner.stock.solver.columns import Column
from planner.stock.solver.diving import Left, dive, total
from planner.stock.solver.generating import Generator
from planner.stock.solver.master import Relaxed, missing_cost
from planner.stock.solver.pricing import Mode
from planner.stock.solver.task import Floats

_LEAST, _MOST = 2, 9
"""Boards taken apart at once."""
_ROUNDS = 4
_IN_PROGRAMME = 120
_EFFORT = 60
_BETTER = 1e-6


class Neighbours:
    """Plans near a given one."""

    def __init__(self, generator: Generator, chance: np.random.Generator) -> None:
        self.generator = generator
        self.chance = chance

    def try_one(self, columns: Sequence[Column], root: Relaxed, modes: Sequence[Mode]) -> list[Column] | None:
        """A plan that keeps most boards of this one and costs less or lacks less, if one is found.

        Args:
            columns: of the plan.
            root: the solution whose values show which boards are cut badly.
            modes: the ways of cutting to use for new columns.
        """
        if not columns:
            return None
        taken = self._taken_apart(columns, root)
        fixed = [column for number, column in enumerate(columns) if number not in taken]
        task = self.generator.task
        whole = Left(task.demand, task.limit)
        left = whole.after(fixed)
        missing = float(missing_cost(task) @ whole.after(columns).demand)
        allowed = total(self.generator, columns) + missing - total(self.generator, fixed) - _BETTER
        found = dive(self.generator, modes, left, rounds=_ROUNDS, allowed=allowed) or self._whole(left, allowed)
        return None if found is None else [*fixed, *found]

    def _taken_apart(self, columns: Sequence[Column], root: Relaxed) -> set[int]:
        """Numbers of a few boards, those that cost more than they are worth most of all."""
        weights = np.maximum(self._regrets(columns, root), 0.0)
        weights += 0.3 * weights.mean() + 1e-9
        size = int(self.chance.integers(_LEAST, _MOST + 1))
        drawn = self.chance.choice(len(columns), size=min(size, len(columns)), replace=False, p=weights / weights.sum())
        return set(map(int, drawn))

    def _regrets(self, columns: Sequence[Column], root: Relaxed) -> Floats:
        found: Floats = np.array([each.cost - root.values @ each.counts + root.rents[each.sort] for each in columns])
        return found

    def _whole(self, left: Left, allowed: float) -> list[Column] | None:
        """The same parts cut from columns that are known already."""
        generator = self.generator
        relaxed = generator.solve(left.demand, left.boards)
        if relaxed.value >= allowed:
            return None
        usable = generator.usable(left.demand, left.boards)
        chosen = generator.master.promising(relaxed, usable, _IN_PROGRAMME)
        return generator.master.whole(
            chosen, demand=left.demand, boards=left.boards, effort=_EFFORT, keep_going=generator.keep_going
        )
