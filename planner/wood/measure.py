"""How wood is measured when it is paid for, and what it costs.

A board foot is 144 cubic inches, and stock under 1 in thick counts as 1 in (Noyes, *Handwork in Wood*, 1910, p. 48).
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from planner.domain.rack import HUNDREDTHS, Lot, Per
from planner.lengths import Nm, Unit, in_unit

_BOARD_FOOT, _SQUARE_FOOT = 144, 144
"""Cubic inches, square inches."""

_AMOUNTS: dict[Per, tuple[Unit, Callable[[Fraction, Fraction], Fraction]]] = {
    Per.PIECE: (Unit.INCH, lambda *_: Fraction(1)),
    Per.BOARD_FOOT: (Unit.INCH, lambda area, thick: area * max(thick, Fraction(1)) / _BOARD_FOOT),
    Per.SQUARE_FOOT: (Unit.INCH, lambda area, _: area / _SQUARE_FOOT),
    Per.CUBIC_METRE: (Unit.MM, lambda area, thick: area * thick / 10**9),
    Per.SQUARE_METRE: (Unit.MM, lambda area, _: area / 10**6),
}


def amount(per: Per, length: Nm, width: Nm, thickness: Nm) -> Fraction:
    """How much wood one board is, exact."""
    return amount_over(per, length * width, thickness)


def amount_over(per: Per, area_nm2: int, thickness: Nm) -> Fraction:
    """How much wood so many square nanometres of boards are, exact."""
    unit, of = _AMOUNTS[per]
    return of(area_nm2 * in_unit(1, unit) ** 2, in_unit(thickness, unit))


def amount_of(lot: Lot, length: Nm, width: Nm) -> Fraction:
    """How much one board of a lot is, in what its price is for; pieces where it has no price."""
    return amount(lot.price.per if lot.price else Per.PIECE, length, width, lot.counted_nm or lot.thickness_nm)


def cents_of(lot: Lot, length: Nm, width: Nm) -> int:
    """What one board of a lot costs, to the nearest whole cent, halves up; nothing where it has no price."""
    return rounded_cents(amount_of(lot, length, width) * lot.price.cents) if lot.price else 0


def rounded_cents(exact: Fraction) -> int:
    """An exact amount of money to the nearest whole cent, halves up.

    >>> rounded_cents(Fraction(5, 2)), rounded_cents(Fraction(7, 3))
    (3, 2)
    """
    return int(exact + Fraction(1, 2))


def least_cents(lot: Lot) -> int:
    """What the least order of a lot costs; nothing where any amount is sold."""
    if lot.price is None or lot.least_hundredths is None:
        return 0
    return rounded_cents(Fraction(lot.least_hundredths * lot.price.cents, HUNDREDTHS))
