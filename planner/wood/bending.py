"""How boards bend under load, by elementary beam theory.

``sag = k·W·L³/(E·I)`` with W the whole load on the beam, and for the part that shear adds ``k_s·W·L/(G·A')``,
``A' = 5/6·b·t``: Wood Handbook Eq. 9-1 and Table 9-1 (from memory; the bending part is in every textbook). A printed
modulus of elasticity was measured on beams of span to depth 14 and has the shear in it already, so for boards that are
thin for their span the bending term alone is right; shear is a check. The overhanging beam is textbook theory too.

All figures are SI: metres, newtons, pascals.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

GRAVITY = 9.80665
"""Newtons to a kilogram: the standard value by definition."""

LONG_TERM = 1.5
"""How much more seasoned wood in the dry sags under a load that stays: NDS 3.5.2, from memory.

The Wood Handbook, ch. 5, says that it can come to about twice the first sag (from memory).
"""

G_PER_E = 1 / 16
"""Modulus of rigidity to modulus of elasticity: a usual round value for wood, from memory."""


class Beam(Enum):
    """How a beam is held and loaded; its value are the factors of Table 9-1: bending, shear, greatest moment."""

    SIMPLE_EVEN = (5 / 384, 1 / 8, 1 / 8)
    """On two supports, the load spread evenly."""
    SIMPLE_CENTRE = (1 / 48, 1 / 4, 1 / 4)
    """On two supports, the load in the middle."""
    FIXED_EVEN = (1 / 384, 1 / 8, 1 / 12)
    """Both ends clamped, the load spread evenly."""
    FIXED_CENTRE = (1 / 192, 1 / 4, 1 / 8)
    """Both ends clamped, the load in the middle."""
    HELD_AT_ONE_END_EVEN = (1 / 8, 1 / 2, 1 / 2)
    """Standing out from one clamped end, the load spread evenly."""
    HELD_AT_ONE_END_TIP = (1 / 3, 1.0, 1.0)
    """The same with the load at the tip."""


@dataclass(frozen=True, slots=True)
class Section:
    """A beam seen from its end.

    Attributes:
        inertia: second moment of area about its neutral axis, m⁴.
        area: m².
        furthest: from the neutral axis to the wood furthest from it, m.
    """

    inertia: float
    area: float
    furthest: float


def plank(width: float, thickness: float) -> Section:
    """A board lying flat."""
    return Section(width * thickness**3 / 12, width * thickness, thickness / 2)


def edged(width: float, thickness: float, strip_thickness: float, strip_height: float) -> Section:
    """A board with a strip glued to its front edge, their upper sides level; both of like wood.

    The parallel axis theorem about the neutral axis of both together.
    """
    parts = ((width, thickness), (strip_thickness, strip_height))
    area = sum(wide * high for wide, high in parts)
    axis = sum(wide * high * high / 2 for wide, high in parts) / area  # below the upper side
    inertia = sum(wide * high**3 / 12 + wide * high * (high / 2 - axis) ** 2 for wide, high in parts)
    deepest = max(thickness, strip_height)
    return Section(inertia, area, max(axis, deepest - axis))


def sag(beam: Beam, load: float, span: float, stiffness: float, section: Section) -> float:
    """Greatest sag of a beam under a whole load, without what shear adds."""
    bending, _, _ = beam.value
    return bending * load * span**3 / (stiffness * section.inertia)


def shear_sag(beam: Beam, load: float, span: float, rigidity: float, section: Section) -> float:
    """What shear adds to the sag."""
    _, shear, _ = beam.value
    return shear * load * span / (rigidity * 5 / 6 * section.area)


def moment(beam: Beam, load: float, span: float) -> float:
    """Greatest bending moment."""
    _, _, greatest = beam.value
    return greatest * load * span


def stress(bending_moment: float, section: Section) -> float:
    """Greatest stress in bending."""
    return bending_moment * section.furthest / section.inertia


@dataclass(frozen=True, slots=True)
class Overhanging:
    """An evenly loaded beam that stands out beyond both its supports alike.

    Attributes:
        per_length: load on each metre.
        between: span between the supports.
        beyond: what stands out at each end.
    """

    per_length: float
    between: float
    beyond: float

    def sag_between(self, stiffness: float, section: Section) -> float:
        """Sag midway between the supports; less than nothing when the ends lift it."""
        span, out = self.between, self.beyond
        return self.per_length * span**2 * (5 * span**2 - 24 * out**2) / (384 * stiffness * section.inertia)

    def sag_at_the_ends(self, stiffness: float, section: Section) -> float:
        """Sag of the ends; less than nothing when they rise."""
        span, out = self.between, self.beyond
        return self.per_length * out * (3 * out**3 + 6 * out**2 * span - span**3) / (24 * stiffness * section.inertia)

    def moments(self) -> tuple[float, float]:
        """Bending moments midway (where it sags) and over the supports (where it hogs)."""
        over = self.per_length * self.beyond**2 / 2
        return self.per_length * self.between**2 / 8 - over, over


@dataclass(frozen=True, slots=True)
class TwoLoads:
    """A beam on two supports with half of its load at an equal distance from each.

    Attributes:
        load: both halves.
        span: between the supports.
        off: from a support to the load next to it.
    """

    load: float
    span: float
    off: float

    def sag(self, stiffness: float, section: Section) -> float:
        """Sag midway: ``W/2·a·(3·L² − 4·a²)/(24·E·I)``."""
        return self.load / 2 * self.off * (3 * self.span**2 - 4 * self.off**2) / (24 * stiffness * section.inertia)

    def moment(self) -> float:
        """Greatest bending moment, which holds between the loads."""
        return self.load / 2 * self.off
