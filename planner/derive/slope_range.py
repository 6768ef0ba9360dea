"""Whether a slope lies outside what the textbooks draw.

The textbooks differ: Noyes, *Handwork in Wood* (1910) p. 165 draws 1:4.8; Fairham, *Woodwork Joints*, p. 134 holds 1:8
right and allows nothing steeper than 1:6. So nothing is refused; outside 1:4 to 1:9 the maker is asked to look again.
"""

from __future__ import annotations

from fractions import Fraction

from planner.domain.plan import Finding
from planner.domain.words import Level

STEEPEST = Fraction(4)
FLATTEST = Fraction(9)


def slope_finding(sled: str, slope: Fraction) -> Finding | None:
    """A caution on a sled that is steeper than 1:4 or flatter than 1:9; None where the slope is usual."""
    if STEEPEST <= slope <= FLATTEST:
        return None
    steep = "steep: short grain at the tails' corners breaks off."
    return Finding(
        code="slope",
        level=Level.CAUTION,
        marks=(sled,),
        text=f"Sled {sled} cuts 1:{float(slope):g}, {steep if slope < STEEPEST else 'flat: the tails hardly lock.'}",
        remedy="Usual slopes lie between 1:4 and 1:9; check the angle of the fences.",
    )
