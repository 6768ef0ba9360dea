"""A slot that was measured far from the bit that cuts it: one of the two figures is a slip, and every pass hangs on it.

A bit that runs true cuts a few hundredths of a millimetre wider than it is. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from planner.checks.facts import Facts
from planner.domain.plan import Finding
from planner.domain.words import Level

FAR_OFF = Fraction(1, 20)
"""A twentieth of the bit."""


def slot(facts: Facts) -> Iterator[Finding]:
    """Sleds in use whose slot and bit differ by more than a twentieth."""
    used = {joint.sled for joint in facts.joints.values()}
    for sled in facts.project.sleds:
        if sled.name in used and sled.slot_nm and abs(sled.slot_nm - sled.bit_nm) > sled.bit_nm * FAR_OFF:
            yield Finding(
                code="slot-unlike-bit",
                level=Level.CAUTION,
                marks=(sled.name,),
                text=f"Sled {sled.name}: slot {facts.show(sled.slot_nm)}, but bit {facts.show(sled.bit_nm)}.",
                remedy="Measure both again, the slot square across; or leave the slot out.",
            )
