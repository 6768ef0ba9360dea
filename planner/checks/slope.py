"""A slope outside what the textbooks draw.

The textbooks differ: Noyes, *Handwork in Wood* (1910) p. 165 draws 1:4.8; Fairham, *Woodwork Joints*, p. 134 holds 1:8
right and allows nothing steeper than 1:6. So nothing is refused; outside 1:4 to 1:9 the maker is asked to look again.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from planner.checks.facts import Facts
from planner.domain.plan import Finding
from planner.domain.words import Level

STEEPEST = Fraction(4)
FLATTEST = Fraction(9)


def slope(facts: Facts) -> Iterator[Finding]:
    """Sleds whose slope is steeper than 1:4 or flatter than 1:9."""
    used = {joint.sled for joint in facts.joints.values()}
    for sled in facts.project.sleds:
        if sled.name in used and not STEEPEST <= sled.slope <= FLATTEST:
            steep = sled.slope < STEEPEST
            yield Finding(
                code="slope",
                level=Level.CAUTION,
                marks=(sled.name,),
                text=f"Sled {sled.name} cuts 1:{float(sled.slope):g}, "
                + ("steep: short grain at the tails' corners breaks off." if steep else "flat: the tails hardly lock."),
                remedy="Usual slopes lie between 1:4 and 1:9; check the angle of the fences.",
            )
