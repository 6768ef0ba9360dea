"""Which boards of a ring carry the pins when the maker doesn't say, and why."""

from __future__ import annotations

from collections.abc import Set as AbstractSet

from planner.domain.ring import Ring
from planner.domain.words import PinPair, RingKind

AGAINST_THE_PULL = "tails on the sides lock against the pull"
SHORTER = "they are the shorter pair, and a pin board stands upright on the router table"
AS_LONG = "both pairs are as long, so the first of them"
AS_SAID = "so the maker wants it"


def usual_pin_pair(kind: RingKind, *, drawer: bool, first_nm: int, second_nm: int) -> PinPair:
    """The pair that usually carries the pins.

    A drawer's front and back do, so that the tails on its sides lock against the pull. Elsewhere the shorter pair does,
    since a pin board stands upright on the router table; of equal pairs the first.

    Args:
        kind: the way the ring stands; the first pair is front and back, or top and bottom.
        drawer: whether the ring is a drawer.
        first_nm: outside size along the first pair.
        second_nm: outside size along the second pair.

    Source: common practice, no source.
    """
    if drawer and kind is RingKind.UPRIGHT:
        return PinPair.FIRST_AND_THIRD
    return PinPair.FIRST_AND_THIRD if first_nm <= second_nm else PinPair.SECOND_AND_FOURTH


def pair_words(ring: Ring) -> str:
    """What the boards that carry the pins are called."""
    if ring.pin_pair is PinPair.SECOND_AND_FOURTH:
        return "the two sides"
    return "front and back" if ring.kind is RingKind.UPRIGHT else "top and bottom"


def why_these_carry_pins(ring: Ring, drawers: AbstractSet[str], first_nm: int, second_nm: int) -> str:
    """Reason why the pins are where they are.

    Args:
        ring: the ring.
        drawers: marks of the rings that are drawers.
        first_nm: outside size along the first pair.
        second_nm: outside size along the second pair.
    """
    drawer = ring.mark in drawers
    if ring.pin_pair is not usual_pin_pair(ring.kind, drawer=drawer, first_nm=first_nm, second_nm=second_nm):
        return AS_SAID
    if drawer:
        return AGAINST_THE_PULL
    return AS_LONG if first_nm == second_nm else SHORTER
