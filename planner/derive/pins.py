"""The pins of one end: laid out in a number that the bit can cut, or refused with the limit named.

On the outside face of the pin board the pins are narrow; going in, each side of a pin gains ``lean = T/n``. A socket
``w_out`` wide outside is ``w_out − 2·lean`` inside, and it can be cut only if the bit's slot fits it there.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from planner.derive.passes import clear_socket
from planner.derive.slot import Slot
from planner.derive.spacing import Places, places, tail_count
from planner.domain.spacing import Spacing
from planner.lengths import Nm, Span, nearest

MOST_TAILS = 60
"""More tails than this are not looked for."""

ROUNDING_NM = 1
"""Places are rounded to whole nanometres one by one, so a socket may come out this much narrower."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PinEnd:
    """The end of a pin board that is to be laid out."""

    width_nm: Nm
    thickness_nm: Nm
    slot: Slot


def can_be_cut(end: PinEnd, at: Places) -> bool:
    """Whether pins stand apart in order and the bit fits every socket where it is narrowest, on the inside face."""
    return min(at.sockets) >= least_socket(end) and all(a < b for a, b in at.pins)


def least_socket(end: PinEnd) -> int:
    """Least width of a socket on the outside face that the bit can cut."""
    return end.slot.needs_nm + 2 * end.slot.lean_nm(end.thickness_nm) + ROUNDING_NM


def rounded(at: Places) -> tuple[Span, ...]:
    """Places in whole nanometres, each rounded from its own exact place, so that the last pin does not drift."""
    return tuple((nearest(a), nearest(b)) for a, b in at.pins)


def between(pins: tuple[Span, ...]) -> tuple[Span, ...]:
    """What lies between neighbouring pins: sockets of the pin board, tails of its mate."""
    return tuple((a[1], b[0]) for a, b in pairwise(pins))


def lay_out(end: PinEnd, spacing: Spacing) -> tuple[Span, ...] | None:
    """Outside-face places of the pins, half-pins included, from the reference edge; None when they can't be cut."""
    tails = tail_count(spacing) or choose_tails(end, spacing)
    if tails is None:
        return None
    at = places(end.width_nm, spacing, tails)
    return rounded(at) if can_be_cut(end, at) else None


def choose_tails(end: PinEnd, spacing: Spacing) -> int | None:
    """Number of tails when the maker leaves it open; None when not even one can be cut.

    Of the counts whose sockets the bit can cut and whose tails are not wider than the greatest wanted (the most tails
    that can be cut, if all are wider), those that need the fewest passes over the whole end; of these the one whose
    tails come nearest, on average, to the width wished for; of two as near, the smaller count. Where tails are to be
    alike from drawer to drawer, nearness to the wish comes before the passes. The same end always gets the same count.
    """
    possible = {n: at for n in counts_to_try(end, spacing) if can_be_cut(end, at := places(end.width_nm, spacing, n))}
    if not possible:
        return None
    fitting = {count: at for count, at in possible.items() if max(at.sockets) <= spacing.greatest_tail_nm}

    def preference(count: int) -> tuple[Fraction, Fraction, int]:
        at = possible[count]
        off = abs(sum(at.sockets, Fraction(0)) / count - spacing.tail_nm)
        passes = Fraction(passes_over(end, at))
        return (off, passes, count) if spacing.alike else (passes, off, count)

    return min(fitting or [max(possible)], key=preference)


def counts_to_try(end: PinEnd, spacing: Spacing) -> range:
    """Counts for which the sockets are wide enough on average; beyond, the narrowest can't be either."""
    pin, least = spacing.pin_nm, least_socket(end)
    return range(1, min(MOST_TAILS, (end.width_nm - 2 * spacing.half_pin_nm + pin) // (least + pin)) + 1)


def passes_over(end: PinEnd, at: Places) -> int:
    """Sled passes that all sockets of an end need together."""
    cuts = [clear_socket(nearest(socket), end.thickness_nm, end.slot) for socket in at.sockets]
    return sum(len(cut.first) + len(cut.second) for cut in cuts)
