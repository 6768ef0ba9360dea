"""What a sled to be built must serve, and the exact sine and cosine of its fences.

With tan θ = 1/n the sine is ``1/√(n² + 1)`` and the cosine ``n/√(n² + 1)``: irrational. Every size of the sled is a sum
``plain + askew/√(n² + 1)`` of two fractions, and the least step of the grid that reaches it is found by squaring.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, isqrt

from planner.derive.sled_practice import Rule
from planner.domain.sled import MICRO
from planner.domain.sled_to_build import SledWish, UprightBoard
from planner.lengths import Nm, show_length

Exact = Fraction | int
"""An exact length in nanometres, or one that is still to be divided by √(n² + 1)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SledCase:
    """A sled wished for, its boards, and the greatest of each measure over all of them."""

    wish: SledWish
    boards: tuple[UprightBoard, ...]
    width_nm: Nm
    thickness_nm: Nm
    length_nm: Nm
    bit_height_nm: Nm

    @classmethod
    def of(cls, wish: SledWish, boards: Sequence[UprightBoard]) -> SledCase:
        """The case of at least one board."""
        return cls(
            wish=wish,
            boards=tuple(boards),
            width_nm=max(board.width_nm for board in boards),
            thickness_nm=max(board.thickness_nm for board in boards),
            length_nm=max(board.length_nm for board in boards),
            bit_height_nm=max(board.bit_height_nm for board in boards),
        )

    @property
    def slope(self) -> Fraction:
        """The n of the slope 1:n."""
        return Fraction(self.wish.run_micro, MICRO)

    @property
    def half_bit(self) -> Fraction:
        """Half the bit's diameter."""
        return Fraction(self.wish.bit.diameter_nm, 2)

    @property
    def stands_nm(self) -> Nm:
        """How far the bit stands out of the table at its greatest height: through the floor and up into the board."""
        return Nm(self.wish.floor_thickness_nm + self.bit_height_nm)

    def rule(self, rule: Rule) -> Nm:
        """A rule of the shop in the unit of the grid."""
        return rule.on(self.wish.grid)

    def show(self, length: int) -> str:
        """A length for the eye, on the finest grid, with its unit."""
        return show_length(length, self.wish.grid.fine, with_unit=True)

    # Each of the next gives what is still to be divided by √(n² + 1).

    def sin(self, length: Exact) -> Fraction:
        """The length times sin θ."""
        return Fraction(length)

    def cos(self, length: Exact) -> Fraction:
        """The length times cos θ."""
        return length * self.slope

    def per_cos(self, length: Exact) -> Fraction:
        """The length over cos θ: how far along the slot something askew and so thick reaches."""
        return length * (self.slope**2 + 1) / self.slope

    def between_fences(self, length: Exact) -> Fraction:
        """The length times cos 2θ over cos θ: what something so thick on one fence takes of the room to the other."""
        return length * max(self.slope**2 - 1, Fraction(0)) / self.slope

    def up(self, plain: Exact, askew: Exact = 0) -> Nm:
        """Least place on the grid that is not below ``plain + askew/√(n² + 1)``."""
        step = self.wish.grid.step_nm
        square = Fraction(askew) ** 2 / (self.slope**2 + 1)
        root = isqrt(int(square))
        steps = ceil((plain + (root if askew >= 0 else -root - 1)) / Fraction(step))
        while not _reaches(steps * step - plain, askew, square):
            steps += 1
        return Nm(steps * step)


def _reaches(length: Exact, askew: Exact, square: Fraction) -> bool:
    """Whether a length is at least the root of ``square``, taken with the sign of ``askew``."""
    if askew >= 0:
        return length >= 0 and length**2 >= square
    return length >= 0 or length**2 <= square
