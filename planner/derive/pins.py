"""Pins along a corner: evenly spaced between two half-pins, in a number that the bit can cut.

On the outside face of the pin board the pins are narrow; going in, each side of a pin gains ``lean = T/n``. With N
tails between two half-pins h and N − 1 pins p, each socket is ``w_out = (W − 2h − (N−1)p)/N`` wide outside and
``w_out − 2·lean`` inside. A socket can be cut only if the bit's slot fits it inside.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise, takewhile

from planner.derive.passes import clear_socket
from planner.derive.slot import Slot
from planner.domain.plan import Span
from planner.domain.ring import Spacing
from planner.errors import PlanError, Problem
from planner.lengths import Grid, Nm, nearest, show_length

MOST_TAILS = 60
"""More tails than this are not looked for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PinEnd:
    """The end of a pin board that is to be laid out."""

    width_nm: Nm
    thickness_nm: Nm
    slot: Slot


def socket_width(end: PinEnd, spacing: Spacing, tails: int) -> Fraction:
    """Exact width of a socket on the outside face; not above zero when the pins leave no room."""
    return Fraction(end.width_nm - 2 * spacing.half_pin_nm - (tails - 1) * spacing.pin_nm, tails)


def can_be_cut(end: PinEnd, socket: Fraction) -> bool:
    """Whether the bit fits the socket where it is narrowest, on the inside face."""
    return socket - 2 * end.slot.lean_nm(end.thickness_nm) >= end.slot.needs_nm + 1


def lay_out(end: PinEnd, spacing: Spacing, grid: Grid, *, where: str) -> tuple[Span, ...]:
    """Outside-face places of the pins, half-pins included, from the reference edge.

    Places are rounded one by one from their exact position, so that the last pin does not drift.

    Raises:
        PlanError: the count given can't be cut, or none can; the figures and the way out are named.
    """
    tails = spacing.tails or choose_tails(end, spacing, grid, where=where)
    socket = socket_width(end, spacing, tails)
    if not can_be_cut(end, socket):
        raise PlanError([_too_narrow(end, spacing, tails, grid, where)])
    pins: list[Span] = [(Nm(0), spacing.half_pin_nm)]
    for number in range(1, tails):
        start = spacing.half_pin_nm + number * socket + (number - 1) * spacing.pin_nm
        pins.append((nearest(start), nearest(start + spacing.pin_nm)))
    pins.append((Nm(end.width_nm - spacing.half_pin_nm), end.width_nm))
    return tuple(pins)


def between(pins: tuple[Span, ...]) -> tuple[Span, ...]:
    """What lies between neighbouring pins: sockets of the pin board, tails of its mate."""
    return tuple((a[1], b[0]) for a, b in pairwise(pins))


def choose_tails(end: PinEnd, spacing: Spacing, grid: Grid, *, where: str) -> int:
    """Number of tails when the maker leaves it open.

    Of the counts whose sockets the bit can cut and whose tails are not wider than the greatest wanted (the most tails
    that can be cut, if all are wider), those that need the fewest passes over the whole end; of these the one whose
    tails come nearest to the width wished for; of two as near, the smaller count. The same end always gets the same.

    Raises:
        PlanError: not even one tail can be cut.
    """
    counts = range(1, MOST_TAILS + 1)
    possible = list(takewhile(lambda n: can_be_cut(end, socket_width(end, spacing, n)), counts))
    if not possible:
        raise PlanError([_too_narrow(end, spacing, 1, grid, where)])
    fitting = [n for n in possible if socket_width(end, spacing, n) <= spacing.greatest_tail_nm]

    def preference(tails: int) -> tuple[int, Fraction, int]:
        socket = socket_width(end, spacing, tails)
        cut = clear_socket(nearest(socket), end.thickness_nm, end.slot)
        return tails * (len(cut.first) + len(cut.second)), abs(socket - spacing.tail_nm), tails

    return min(fitting or possible[-1:], key=preference)


def _too_narrow(end: PinEnd, spacing: Spacing, tails: int, grid: Grid, where: str) -> Problem:
    def show(length: int) -> str:
        return show_length(length, grid, with_unit=True)

    outside = round(socket_width(end, spacing, tails))
    inside = outside - 2 * end.slot.lean_nm(end.thickness_nm)
    most = max((n for n in range(1, tails) if can_be_cut(end, socket_width(end, spacing, n))), default=None)
    return Problem(
        where=where,
        what=f"{tails} tail{'s' if tails > 1 else ''} on a board {show(end.width_nm)} wide leave sockets "
        f"{show(outside)} wide outside and {show(inside)} inside; the bit's slot is {show(end.slot.needs_nm)}.",
        remedy=f"At most {most} can be cut here; or take narrower pins or a thinner bit."
        if most
        else "Take narrower half-pins, a thinner bit, a thinner board or a wider one.",
    )
