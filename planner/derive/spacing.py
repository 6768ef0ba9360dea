"""Where pins stand along a corner: exact places on the outside face, before any rounding.

With N tails between two half-pins h and N − 1 pins p, the tails share what is left, ``W − 2h − (N−1)p``:

- even: all alike;
- middle: widest in the middle, narrowing in equal steps to both edges;
- edge: widening in equal steps from the edge that is measured from to the other.

For graduated tails ``ratio`` is the widest over the narrowest. Listed pins stand where they are listed. Measuring from
the far edge gives the mirror image.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from planner.domain.spacing import Spacing
from planner.domain.words import EdgeName, Spread

Exact = tuple[Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class Places:
    """Exact outside-face places of the pins of an end, half-pins included, from the reference edge, in nanometres."""

    pins: tuple[Exact, ...]

    @property
    def sockets(self) -> tuple[Fraction, ...]:
        """Widths of what lies between neighbouring pins; not above zero where pins leave no room."""
        return tuple(b[0] - a[1] for a, b in pairwise(self.pins))


def tail_count(spacing: Spacing) -> int | None:
    """How many tails the maker asked for; None when the choice is left to the planner."""
    return len(spacing.places) + 1 if spacing.spread is Spread.LISTED else spacing.tails


def places(width_nm: int, spacing: Spacing, tails: int) -> Places:
    """Places of the pins of an end ``width_nm`` wide with so many tails."""
    width, half = Fraction(width_nm), Fraction(spacing.half_pin_nm)
    whole = _listed(spacing) if spacing.spread is Spread.LISTED else _shared(width, spacing, tails)
    pins = ((Fraction(0), half), *whole, (width - half, width))
    if spacing.measured_from is EdgeName.FAR:
        pins = tuple((width - b, width - a) for a, b in reversed(pins))
    return Places(pins)


def _listed(spacing: Spacing) -> tuple[Exact, ...]:
    return tuple((Fraction(a), Fraction(b)) for a, b in spacing.places)


def _shared(width: Fraction, spacing: Spacing, tails: int) -> tuple[Exact, ...]:
    shares = _shares(spacing, tails)
    clear = (width - 2 * spacing.half_pin_nm - (tails - 1) * spacing.pin_nm) / sum(shares)
    pins: list[Exact] = []
    start = Fraction(spacing.half_pin_nm)
    for share in shares[:-1]:
        start += clear * share
        pins.append((start, start + spacing.pin_nm))
        start += spacing.pin_nm
    return tuple(pins)


def _shares(spacing: Spacing, tails: int) -> Sequence[Fraction]:
    """Relative widths of the tails, from the edge that is measured from."""
    gain = (spacing.ratio or Fraction(1)) - 1
    match spacing.spread:
        case Spread.EDGE:
            steps = [Fraction(i, max(1, tails - 1)) for i in range(tails)]
        case Spread.MIDDLE:
            from_middle = [abs(2 * i - (tails - 1)) for i in range(tails)]
            span = max(1, max(from_middle) - min(from_middle))
            steps = [Fraction(max(from_middle) - away, span) for away in from_middle]
        case _:
            steps = [Fraction(0)] * tails
    return [1 + gain * step for step in steps]
