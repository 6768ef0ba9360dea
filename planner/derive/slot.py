"""The slot that a straight bit cuts when the board meets it at the dovetail's slope.

A bit of diameter D at slope 1:n cuts a slot ``k = D·√(1 + 1/n²)`` wide, measured across the board: the bit is round, so
square to its path the slot is D wide, and the path leans by the slope. k is irrational, so it is kept as whole
nanometres rounded down where it must clear wood, and up where it must not touch a pin.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from math import ceil, isqrt, sqrt

from planner.domain.sled import Sled
from planner.lengths import Nm, mm


@dataclass(frozen=True, slots=True, kw_only=True)
class Slot:
    """Width across the board of the slot that a sled's bit cuts, and the slope it leans with."""

    slope: Fraction
    bit_nm: Nm

    @property
    def clears_nm(self) -> Nm:
        """Width that is certainly cleared (rounded down)."""
        return Nm(isqrt(int(_square(self))))

    @property
    def needs_nm(self) -> Nm:
        """Width that is certainly enough for the bit (rounded up)."""
        down = self.clears_nm
        return down if down**2 == _square(self) else Nm(down + 1)

    @property
    def width_mm(self) -> float:
        """The width in millimetres, for areas."""
        return mm(1) * sqrt(_square(self))

    def lean_nm(self, thickness: int) -> Nm:
        """What a pin gains on each side from the outside to the inside face (rounded up, never into a pin)."""
        return Nm(ceil(Fraction(thickness) / self.slope))


@cache
def _square(slot: Slot) -> Fraction:
    """Square of the width, in nm²; the width itself is irrational."""
    return slot.bit_nm**2 * (1 + 1 / slot.slope**2)


def slot_of(sled: Sled) -> Slot:
    """The slot of a sled: as wide as was measured, else as the bit."""
    return Slot(slope=sled.slope, bit_nm=sled.bit_nm if sled.slot_nm is None else sled.slot_nm)
