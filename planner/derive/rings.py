"""Which boards of a ring carry the pins when the maker doesn't say, and why."""

from __future__ import annotations

from planner.domain.words import PinPair, RingKind


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
