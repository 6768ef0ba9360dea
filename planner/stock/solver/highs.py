"""The one place that speaks to HiGHS: linear programmes that grow, and integer programmes with a limit of effort.

No clock decides here: a limit of effort gives the same answer each time, and ``keep_going`` is the caller's.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from planner.stock.solver.task import Floats, Ints

if TYPE_CHECKING:
    import highspy

KeepGoing = Callable[[], bool]
Shorts = npt.NDArray[np.int32]


def _quiet() -> highspy.Highs:
    import highspy

    class Quiet(highspy.Highs):
        """Silent from the start: HiGHS greets the terminal as soon as its callbacks are enabled."""

        def enableCallbacks(self) -> None:  # noqa: N802 - HiGHS's own name
            self.setOptionValue("output_flag", False)  # noqa: FBT003 - HiGHS's own signature
            super().enableCallbacks()  # type: ignore[no-untyped-call, unused-ignore]

    solver = Quiet()  # type: ignore[no-untyped-call, unused-ignore]
    solver.setOptionValue("threads", 1)
    solver.setOptionValue("random_seed", 0)
    return solver


@dataclass(frozen=True, slots=True, kw_only=True)
class Solved:
    """Solution of a linear programme."""

    value: float
    columns: Floats
    duals: Floats


class Linear:
    """A linear programme with fixed rows and columns that are added as they are found. It minimises."""

    def __init__(self, low: Floats, high: Floats) -> None:
        self.solver = _quiet()
        none: Shorts = np.zeros(0, dtype=np.int32)
        self.rows = len(low)
        self.columns = 0
        self.solver.addRows(self.rows, low, high, 0, np.zeros(self.rows, dtype=np.int32), none, np.zeros(0))

    def add(self, matrix: Floats, cost: Floats, high: Floats) -> None:
        """Add columns, one a row of the matrix, from 0 up to their upper bounds."""
        starts, rows, values = _sparse(matrix)
        count = len(cost)
        self.solver.addCols(count, cost, np.zeros(count), high, len(values), starts, rows, values)
        self.columns += count

    def set_rows(self, low: Floats, high: Floats) -> None:
        """Bound the rows anew."""
        for row in range(self.rows):
            self.solver.changeRowBounds(row, low[row], high[row])

    def set_columns(self, high: Floats) -> None:
        """Bound the columns anew."""
        numbers = np.arange(self.columns, dtype=np.int32)
        self.solver.changeColsBounds(self.columns, numbers, np.zeros(self.columns), high)

    def solve(self) -> Solved | None:
        """The optimum; None if there is none."""
        import highspy

        self.solver.run()
        if self.solver.getModelStatus() != highspy.HighsModelStatus.kOptimal:
            return None
        solution = self.solver.getSolution()
        return Solved(
            value=self.solver.getInfo().objective_function_value,
            columns=np.array(solution.col_value),
            duals=np.array(solution.row_dual),
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Whole:
    """What is known of an integer programme.

    Attributes:
        columns: the best solution; None if none was found.
        bound: no solution is below it; infinite if there is proven to be none.
    """

    columns: Ints | None
    bound: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Programme:
    """An integer programme to minimise; the matrix has one row for each column of it."""

    matrix: Floats
    cost: Floats
    high: Floats
    row_low: Floats
    row_high: Floats


def solve_whole(programme: Programme, *, effort: int, keep_going: KeepGoing) -> Whole:
    """Solve an integer programme, or as much of it as the effort allows.

    Args:
        programme: all of whose columns are whole.
        effort: how often HiGHS may ask whether to go on; it asks at the same moments each time.
        keep_going: asked at these moments; when it says no, the best so far is the answer.
    """
    import highspy

    solver = _quiet()
    linear = Linear.__new__(Linear)
    linear.solver, linear.rows, linear.columns = solver, len(programme.row_low), 0
    none: Shorts = np.zeros(0, dtype=np.int32)
    starts = np.zeros(linear.rows, dtype=np.int32)
    solver.addRows(linear.rows, programme.row_low, programme.row_high, 0, starts, none, np.zeros(0))
    linear.add(programme.matrix, programme.cost, programme.high)
    count = len(programme.cost)
    kinds = np.full(count, int(highspy.HighsVarType.kInteger), dtype=np.uint8)
    solver.changeColsIntegrality(count, np.arange(count, dtype=np.int32), kinds)
    solver.setOptionValue("mip_rel_gap", 0.0)

    asked = 0

    def ask(event: highspy.HighsCallbackEvent) -> None:
        nonlocal asked
        asked += 1
        if asked > effort or not keep_going():
            event.interrupt()

    solver.cbMipInterrupt += ask
    solver.run()
    return _whole(solver)


def _whole(solver: highspy.Highs) -> Whole:
    import highspy

    info = solver.getInfo()
    if solver.getModelStatus() == highspy.HighsModelStatus.kInfeasible:
        return Whole(columns=None, bound=np.inf)
    if info.primal_solution_status != int(highspy.SolutionStatus.kSolutionStatusFeasible):
        return Whole(columns=None, bound=info.mip_dual_bound)
    columns = np.rint(np.array(solver.getSolution().col_value)).astype(np.int64)
    return Whole(columns=columns, bound=info.mip_dual_bound)


def _sparse(matrix: Floats) -> tuple[Shorts, Shorts, Floats]:
    """Starts, indexes and values, by rows of the matrix."""
    rows, columns = np.nonzero(matrix)
    starts = np.searchsorted(rows, np.arange(len(matrix))).astype(np.int32)
    return starts, columns.astype(np.int32), matrix[rows, columns].astype(np.float64)
