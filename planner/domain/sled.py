"""A dovetail sled for the router table: one slope, one bit, and how much wood it takes."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from planner.lengths import Nm

MICRO = 1_000_000
"""The run of a slope is kept in millionths, so that a slope in degrees is exact enough (a nanometre on 40 mm)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sled:
    """A sled as measured.

    Attributes:
        name: the maker's name for it.
        run_micro: the slope is 1:n, and this is n in millionths (8 000 000 for 1:8).
        bit_nm: diameter of the straight bit, as measured.
        slot_nm: width of the slot that this bit really cuts, measured square across; None takes the bit's diameter.
        greatest_bit_height_nm: highest the bit can stand above the sled's floor.
        greatest_width_nm: widest board that fits beside the slot, at either fence.
        greatest_upright_nm: longest board that can stand on end.
        greatest_depth_soft_nm: highest cut to take at once in a soft wood; None sets no limit.
        greatest_depth_hard_nm: the same in a hard wood.
        kept: whether it is the store's sled of this name, shared between projects.
    """

    name: str
    run_micro: int
    bit_nm: Nm
    greatest_bit_height_nm: Nm
    greatest_width_nm: Nm
    greatest_upright_nm: Nm
    slot_nm: Nm | None = None
    greatest_depth_soft_nm: Nm | None = None
    greatest_depth_hard_nm: Nm | None = None
    kept: bool = False

    @property
    def slope(self) -> Fraction:
        """The n of the slope 1:n, exact."""
        return Fraction(self.run_micro, MICRO)
