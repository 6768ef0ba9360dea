"""A board that lies free in grooves or rabbets at two opposite edges: whether it has room to swell and stays covered.

Lengths are whole nanometres. A groove is as deep on each side as it is told; what the board doesn't fill of both is its
play, wherever it lies.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import ceil, floor

from planner.wood.least import least


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitted:
    """A board between two grooves.

    Attributes:
        size: of the board, today.
        clear: from the mouth of one groove to that of the other.
        low: depth of the one.
        high: depth of the other.
        swells: greatest growth over the year, as a part of its size; nothing at least.
        shrinks: greatest loss over the year, likewise.
        slides: whether it may lie all to one side, since nothing holds its middle.
    """

    size: int
    clear: int
    low: int
    high: int
    swells: float
    shrinks: float
    slides: bool

    @property
    def play(self) -> int:
        """How much smaller it is than the room for it, today."""
        return self.low + self.clear + self.high - self.size

    @property
    def left_when_damp(self) -> int:
        """Play in the dampest season; nothing or less when it binds."""
        return self.play - ceil(self.size * self.swells)

    @property
    def covered_when_dry(self) -> int:
        """How far it still lies in each groove in the driest season, its middle in the middle."""
        return (self._size_when_dry - self.clear) // 2

    @property
    def covered_when_slid(self) -> int:
        """The same in the groove that it has left behind, when it lies all to the side of the deeper one."""
        return self._size_when_dry - self.clear - max(self.low, self.high)

    @property
    def _size_when_dry(self) -> int:
        return self.size - ceil(self.size * self.shrinks)

    def fits(self, covered: int) -> bool:
        """Whether it neither binds nor comes out of a groove; in each it must lie as far as told."""
        lies = self.covered_when_slid if self.slides else self.covered_when_dry
        return self.left_when_damp > 0 and lies >= covered

    def narrower(self, by: int) -> Fitted:
        """The same, made narrower."""
        return replace(self, size=self.size - by)

    def deeper(self, by: int, step: int) -> Fitted:
        """The same in deeper grooves, the board wider: as it filled them before, if so it has room to swell."""
        room = self.low + self.clear + self.high + 2 * by
        widest = (floor((room - 1) / (1 + self.swells)) - 1) // step * step  # by a nanometre on the safe side
        return replace(self, low=self.low + by, high=self.high + by, size=min(self.size + 2 * by, widest))


def narrower(fitted: Fitted, covered: int, step: int) -> int | None:
    """By how much a board that binds must at least be narrower; None when no narrower one would stay covered."""
    cut = least(lambda by: fitted.narrower(by).left_when_damp > 0, step, fitted.size // 2)
    return cut if cut is not None and fitted.narrower(cut).fits(covered) else None


def deeper(fitted: Fitted, covered: int, step: int) -> int | None:
    """By how much both grooves must at least be deeper, for a wider board to stay covered and have room."""
    return least(lambda by: fitted.deeper(by, step).fits(covered), step, fitted.size // 2)
