"""How far a loaded board sags, and how hard it is stressed.

Boards lie on two supports, free to turn there; their own weight, under a tenth of such loads, is left out. Boards that
lie loose on each other share the load by their stiffness. SI units.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from planner.wood.bending import GRAVITY, LONG_TERM, Beam, Section, TwoLoads, moment, sag

BEARS = 0.25
"""A load that stays may stress wood to this share of its printed strength: common practice, no source.

Printed strengths are averages of small clear pieces, for minutes.
"""

BREAKS = 0.5
"""From here on it must not be built so. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class Stiff:
    """A board seen from its end, and what its timber is like.

    Attributes:
        section: its shape.
        stiffness: modulus of elasticity, Pa.
        strength: modulus of rupture, Pa.
    """

    section: Section
    stiffness: float
    strength: float


@dataclass(frozen=True, slots=True)
class Bent:
    """What a load does.

    Attributes:
        first: sag at once, m.
        stress: greatest stress as a share of the printed strength.
    """

    first: float
    stress: float

    @property
    def in_the_long_run(self) -> float:
        """Sag under a load that stays for years, m."""
        return self.first * LONG_TERM


def bent(boards: Sequence[Stiff], kg: float, span: float, off: float | None = None) -> Bent:
    """What a load does to boards that bend together.

    Args:
        boards: all that bend, each with its own section.
        kg: the whole load.
        span: between the supports.
        off: how far from each support half of the load stands; None spreads it evenly.
    """
    weight = kg * GRAVITY
    rigidity = sum(each.stiffness * each.section.inertia for each in boards)
    whole = Section(rigidity, 0.0, 0.0)  # as if the modulus of elasticity were 1
    if off is None:
        first, turned = sag(Beam.SIMPLE_EVEN, weight, span, 1.0, whole), moment(Beam.SIMPLE_EVEN, weight, span)
    else:
        loads = TwoLoads(weight, span, off)
        first, turned = loads.sag(1.0, whole), loads.moment()
    shares = (turned * each.stiffness * each.section.furthest / rigidity / each.strength for each in boards)
    return Bent(first, max(shares))
