"""Rules of the shop for a sled to be built: room, strength, hands.

Every one of them is common practice, no source. Each stands in handy figures of both units, counted in the finest step
of the unit, so that sizes come out in figures that a rule shows.
"""

from __future__ import annotations

from typing import NamedTuple

from planner.domain.sled_to_build import ClampRoom
from planner.lengths import Grid, Nm, Unit

UPRIGHT_PER_FENCE = 3
"""A fence holds a board up to three times its own height."""

SIGHT_PER_FENCE = 2
"""Over the nearer fence the operator sees the foot of the board if it is at least half that fence's height beyond."""

BIT_STICKS_OUT = 4
"""A bit that stands out more than four times its diameter chatters."""


class Rule(NamedTuple):
    """A length as the trade puts it in either unit."""

    sixty_fourths: int
    tenths: int

    def on(self, grid: Grid) -> Nm:
        """The length in the unit of a grid."""
        return Nm((self.tenths if grid.unit is Unit.MM else self.sixty_fourths) * grid.fine.step_nm)


CLEAR = Rule(24, 100)
"""Between bit and wood before the cut, and beyond the fence after it: 3/8 in, 10 mm."""

GUARD_WALL = Rule(48, 200)
"""Wood round the bit in the guard behind a fence: 3/4 in, 20 mm."""

BRIDGE = Rule(96, 400)
"""Floor beyond each end of the slot, which holds the two halves together: 1 1/2 in, 40 mm."""

ABOVE_CUT = Rule(128, 500)
"""Fence above the bit's cut through it, to hold floor and board; and room for a clamp there: 2 in, 50 mm."""

TALLEST_FENCE = Rule(768, 3000)
"""A higher fence is in the way; boards over three times this want a second support: 12 in, 300 mm."""

HANDS = Rule(384, 1500)
"""Between hands and slot: 6 in, 150 mm."""

HOLD = Rule(256, 1000)
"""Fence beyond that, to hold the sled by: a hand's breadth, 4 in, 100 mm."""

BEARING = Rule(128, 500)
"""Table beyond the sled's middle when the sled hangs out furthest: 2 in, 50 mm."""

RUNNER_PLAY = Rule(2, 5)
"""Between the runner and the bottom of the mitre slot: 1/32 in, 0.5 mm."""

LEAST_RUNNER = Rule(12, 50)
"""A lower runner does not guide: 3/16 in, 5 mm."""

RUNNER_FROM_SLOT = Rule(32, 120)
"""Between the runner's side and the slot: 1/2 in, 12 mm."""

LEAST_FLOOR = Rule(32, 120)
"""A thinner floor bends at the slot where it hangs over the table's opening or end: 1/2 in, 12 mm."""

LEAST_FENCE = Rule(48, 180)
"""A thinner fence bends; it is all that ties the floor above the cut: 3/4 in, 18 mm."""

LEAST_BIT = Rule(16, 60)
"""A thinner bit breaks or bends in a cut of a pin's height: 1/4 in, 6 mm."""

HANDY_RUN = Rule(768, 3000)
"""Run over which a fence's rise is set with square and rule: 12 in, 300 mm."""

_BESIDE, _BEFORE, _BEHIND = Rule(128, 500), Rule(160, 600), Rule(160, 600)


def usual_clamps(grid: Grid) -> ClampRoom:
    """Room for ordinary bar clamps: 2 in or 50 mm beside, 2 1/2 in or 60 mm before and behind."""
    return ClampRoom(beside_nm=_BESIDE.on(grid), before_nm=_BEFORE.on(grid), behind_nm=_BEHIND.on(grid))
