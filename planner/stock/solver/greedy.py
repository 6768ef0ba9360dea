"""The first answer: board after board, always the pattern that gives most for its money."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from planner.stock.solver.columns import Column
from planner.stock.solver.pricing import Mode, Pricer, Prices
from planner.stock.solver.task import Floats, Ints, Task

_FINENESS = 1 << 20


def variants(task: Task) -> tuple[Floats, ...]:
    """Values of the parts for several first answers: by area, and with large, long or wide parts counting for more."""
    area = task.area / task.area.max()
    length: Floats = np.array([size.length_nm for size in task.sizes], dtype=np.float64)
    width: Floats = np.array([size.width_nm for size in task.sizes], dtype=np.float64)
    return tuple(
        whole(values)
        for values in (area, area**1.15, area * (1 + length / length.max()), area * (1 + width / width.max()))
    )


def whole(values: Floats) -> Floats:
    """Values as whole numbers, fine enough to tell parts apart."""
    scaled: Floats = np.ceil(values / values.max() * _FINENESS)
    return scaled


def greedy(pricer: Pricer, modes: Sequence[Mode], values: Floats, *, tried: int) -> list[Column]:
    """Columns that cut the demand, or as much of it as the boards allow.

    Args:
        pricer: of the task.
        modes: the ways of cutting to use.
        values: of the parts, whole numbers.
        tried: boards whose patterns are worked out in full at each step.
    """
    left, boards = pricer.task.demand.copy(), pricer.task.limit.copy()
    found: list[Column] = []
    while left.any() and boards.any():
        column = _best(pricer.price(np.where(left > 0, values, 0.0), left, modes), left, boards, tried)
        if column is None:
            break
        given = column.counts > 0
        times = min(int((left[given] // column.counts[given]).min()), int(boards[column.sort]))
        found.extend([column] * times)
        left -= column.counts * times
        boards[column.sort] -= times
    return found


def _best(prices: Prices, left: Ints, boards: Ints, tried: int) -> Column | None:
    values, cost = prices.values, prices.pricer.task.cost
    money = cost + 1e-6 * (cost.max() + 1.0)
    promise = np.where((boards > 0) & (prices.worth > 0), np.minimum(prices.worth, values @ left) / money, -1.0)
    best: Column | None = None
    most = 0.0
    for sort in np.argsort(-promise, kind="stable")[:tried]:
        if promise[sort] > most:
            column = _filled(prices, int(sort), left)
            worth = float(values @ column.counts) / money[sort]
            if worth > most:
                best, most = column, worth
    return best


def _filled(prices: Prices, sort: int, left: Ints) -> Column:
    loose = prices.loose(sort)
    return loose if (loose.counts <= left).all() else prices.strict(sort, left, ahead=True)
