"""What cutting in a given order takes: changes, handlings, turnings, passes and time, counted step by step."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import groupby, pairwise

from planner.domain.plan import SledTally
from planner.domain.rates import Rates
from planner.domain.words import End
from planner.plan.sled_ends import Board
from planner.plan.sled_order import Step


def tally(steps: Iterable[Step], rates: Rates) -> SledTally:
    """Count the steps, made in this order; a board that stays at its setting is not taken up again for its other end.

    Setting up the first sled at its first height and fence is the same for every order and is not counted.
    """
    steps = tuple(steps)
    visits = [visit for visit, _ in groupby(steps, key=lambda step: step.visit)]
    moves = list(pairwise(visits))
    sled_changes = sum(a.sled != b.sled for a, b in moves)
    height_changes = sum(a.sled == b.sled and a.height_nm != b.height_nm for a, b in moves)
    fence_swaps = sum(a.fence is not b.fence for a, b in moves)
    handlings = sum(1 for _ in groupby(steps, key=lambda step: (step.visit, step.end.board)))
    turnings = _turnings(steps)
    passes = sum(step.end.passes(at_first=step.at_first) for step in steps)
    return SledTally(
        settings=len(visits),
        sled_changes=sled_changes,
        height_changes=height_changes,
        fence_swaps=fence_swaps,
        handlings=handlings,
        turnings=turnings,
        passes=passes,
        estimate_s=sled_changes * rates.sled_change_s
        + height_changes * rates.height_change_s
        + fence_swaps * rates.fence_swap_s
        + handlings * rates.handling_s
        + turnings * rates.turning_s
        + passes * rates.pass_s,
    )


def _turnings(steps: Iterable[Step]) -> int:
    """Times that a board stands on its other end than when it was cut last."""
    down: dict[Board, End] = {}
    turnings = 0
    for step in steps:
        end = step.end.joint.pin_end
        turnings += down.get(step.end.board, end) is not end
        down[step.end.board] = end
    return turnings
