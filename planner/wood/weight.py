"""What wood weighs: density from specific gravity and moisture, bodies, and where they balance.

Wood Handbook (FPL-GTR-190) ch. 4: ``density = water · G_x · (1 + x/100)``, with G_x on oven-dry weight and the volume
at moisture content x (read: oakmissouri.org/forestfunction/density.html). Between moisture contents G changes with the
volume: ``G_x = G_b / (1 − 0.265·a·G_b)``, ``a = (30 − x)/30``, G_b on the green volume (FPL-GTR-76, Simpson 1993; from
memory, checked against printed values within 3 %). Never mix the three G's: they differ by 5 to 15 %.

All figures are SI: kilograms and metres.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import fsum

WATER = 1000.0
"""Kilograms in a cubic metre of water, as the handbook takes it; 62.43 lb/ft³."""

GREEN_PCT = 30.0
"""At this moisture content wood begins to shrink, as FPL-GTR-76 takes it."""

PRINTED_PCT = 12.0
"""Moisture content of the printed specific gravities."""

_SHRINKS = 0.265
_PART = 100.0


def density(gravity: float, moisture_pct: float) -> float:
    """Kilograms in a cubic metre, from the specific gravity at the same moisture content.

    >>> density(0.40, 12.0)
    448.0
    """
    return WATER * gravity * (1 + moisture_pct / _PART)


def density_from_ovendry(gravity: float, moisture_pct: float) -> float:
    """The same from the specific gravity on oven-dry weight and oven-dry volume (the form of the NDS)."""
    return density(gravity / (1 + 0.009 * gravity * moisture_pct), moisture_pct)


def gravity_at(basic: float, moisture_pct: float) -> float:
    """Specific gravity at a moisture content up to 30 %, from the basic one, which is on the green volume."""
    dried = (GREEN_PCT - moisture_pct) / GREEN_PCT
    return basic / (1 - _SHRINKS * dried * basic)


def basic_gravity(gravity: float, moisture_pct: float) -> float:
    """Basic specific gravity from the one at a moisture content: ``gravity_at`` turned round."""
    dried = (GREEN_PCT - moisture_pct) / GREEN_PCT
    return gravity / (1 + _SHRINKS * dried * gravity)


def timber_density(printed_gravity: float, moisture_pct: float) -> float:
    """Kilograms in a cubic metre at a moisture content, from a specific gravity printed for 12 %."""
    return density(gravity_at(basic_gravity(printed_gravity, PRINTED_PCT), moisture_pct), moisture_pct)


@dataclass(frozen=True, slots=True)
class Body:
    """Something heavy: its kilograms, and its centre of gravity in metres, right, back and up."""

    kg: float
    right: float
    back: float
    up: float

    def moved(self, *, back: float = 0.0) -> Body:
        """The same body further back; less than nothing moves it forward."""
        return Body(self.kg, self.right, self.back + back, self.up)


NOTHING = Body(0.0, 0.0, 0.0, 0.0)


def together(bodies: Iterable[Body]) -> Body:
    """Several bodies as one: the sum of their weights, at the place where they balance."""
    held = [body for body in bodies if body.kg]
    kg = fsum(body.kg for body in held)
    if not kg:
        return NOTHING
    return Body(
        kg,
        fsum(body.kg * body.right for body in held) / kg,
        fsum(body.kg * body.back for body in held) / kg,
        fsum(body.kg * body.up for body in held) / kg,
    )
