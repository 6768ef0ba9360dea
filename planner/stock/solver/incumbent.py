"""The best plan so far: least missing, then least cost, then fewest boards, then fewest settings of the saw."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from planner.stock.pieces import CuttingPlan
from planner.stock.solver.columns import Column
from planner.stock.solver.drawing import cutting_plan
from planner.stock.solver.task import Task


class Incumbent:
    """The best plan so far, as columns and as it will be drawn."""

    def __init__(self, task: Task) -> None:
        self.task = task
        self.columns: list[Column] = []
        self.plan: CuttingPlan = cutting_plan(task, [])
        self.sizes = {mark: size.area for size in task.sizes for mark in size.marks}

    @property
    def complete(self) -> bool:
        """Whether every part that fits on a board at all is cut."""
        return len(self.plan.missing) == len(self.task.unfit)

    def offer(self, columns: Sequence[Column]) -> bool:
        """Take a plan if it is better; whether it was."""
        if self._hopeless(columns):
            return False
        plan = cutting_plan(self.task, columns)
        if self._rank(plan) >= self._rank(self.plan):
            return False
        self.columns, self.plan = list(columns), plan
        return True

    def _rank(self, plan: CuttingPlan) -> tuple[int, int, int, int]:
        missing = sum(self.sizes.get(mark, 0) for mark in plan.missing)
        return missing, plan.cost, len(plan.layouts), plan.settings

    def _hopeless(self, columns: Sequence[Column]) -> bool:
        """Whether it is plain without drawing it that a plan is no better."""
        if not columns or not self.complete:
            return not columns
        given = np.sum([column.counts for column in columns], axis=0)
        lacks = bool((given < self.task.demand).any())
        exact = self.task.job.wish.keep is None and bool((given == self.task.demand).all())
        return lacks or (exact and sum(column.cost for column in columns) > self.plan.cost)
