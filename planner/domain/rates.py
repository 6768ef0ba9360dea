"""How long things take at the sled, as the maker knows it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Rates:
    """Seconds for each step; the usual values are rough: common practice, no source."""

    sled_change_s: int = 300
    height_change_s: int = 120
    fence_swap_s: int = 20
    handling_s: int = 15
    """Taking a board up, setting it to its first mark, clamping it, and putting it down."""
    turning_s: int = 10
    """Turning a board end for end."""
    pass_s: int = 10
    """One run past the bit and back, with the shift to its mark."""


USUAL_RATES = Rates()
