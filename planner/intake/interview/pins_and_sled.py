"""How pins are spaced, and the sled on which they are cut."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from planner.domain.sled import MICRO, Sled
from planner.intake.interview.asking import Asking
from planner.intake.interview.beginning import Stock
from planner.intake.interview.question import Script
from planner.intake.interview.sums import either, near, up
from planner.intake.sharing import Table
from planner.intake.slope import write_slope
from planner.lengths import Nm, write_length

SHORTER = "the shorter pair"
_ANOTHER = "another"
_BITS = (("1/2 in", "12 mm"), ("3/8 in", "10 mm"), ("1/4 in", "6 mm"))
"""Straight bits, the thickest first. Common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pins:
    """How pins are spaced."""

    half_pin: Nm
    pin: Nm
    tail: Nm
    pins_on: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Needs:
    """What a sled must take.

    Attributes:
        wide: the widest board.
        upright: the longest board that stands on end.
        thick: the thickest board.
        narrow: the narrowest board.
    """

    wide: Nm
    upright: Nm
    thick: Nm
    narrow: Nm


def pins(asking: Asking, stock: Stock, other_pairs: tuple[str, ...]) -> Script[Pins]:
    """Ask how pins are spaced, and which pair of boards carries them.

    The usual pins are a third of the thickness wide, the usual tails half as wide again as it: common practice, no
    source.
    """
    unit, thick = asking.unit, stock.thickness

    def each() -> Script[Pins]:
        pins_on = yield from asking.choice_of("pins_on", dict.fromkeys((SHORTER, *other_pairs), ""), SHORTER)
        third = max(near(Fraction(thick, 3), unit), either(unit, "1/8 in", "3 mm"))
        half_pin = yield from asking.length("half_pin", third)
        pin = yield from asking.length("pin", half_pin)
        tail = yield from asking.length("tail", near(Fraction(thick * 3, 2), unit))
        return Pins(half_pin=half_pin, pin=pin, tail=tail, pins_on=pins_on)

    return (yield from asking.as_listed("pins_as_listed", each))


def pins_tables(said: Pins, asking: Asking) -> Table:
    """The pins of a project file."""
    return {
        "half_pin": write_length(said.half_pin, asking.unit),
        "pin": write_length(said.pin, asking.unit),
        "tail": write_length(said.tail, asking.unit),
        "greatest_tail": write_length(max(Nm(said.tail * 3 // 2), said.tail), asking.unit),
    }


def sled(asking: Asking, stock: Stock, kept: tuple[Sled, ...], needs: Needs) -> Script[Table]:
    """Ask which sled the pins are cut on: one that the store keeps, or another, of which the figures are asked for.

    The usual sled takes the piece; its figures are to be measured all the same.
    """
    if kept:
        fitting = [each.name for each in kept if _takes(each, needs)]
        names = dict.fromkeys((each.name for each in kept), "kept in the store")
        name = yield from asking.choice_of("sled", names | {_ANOTHER: ""}, (*fitting, _ANOTHER)[0])
        if name != _ANOTHER:
            return {name: {"kept": True}}
    return (yield from asking.as_listed("sled_as_listed", lambda: _figures(asking, stock, kept, needs)))


def _takes(sled: Sled, needs: Needs) -> bool:
    return (
        sled.greatest_width_nm >= needs.wide
        and sled.greatest_upright_nm >= needs.upright
        and sled.greatest_bit_height_nm >= needs.thick
        and sled.bit_nm <= needs.thick
    )


def _figures(asking: Asking, stock: Stock, kept: tuple[Sled, ...], needs: Needs) -> Script[Table]:
    unit = asking.unit
    name = yield from asking.text("sled_name", "bench", taken=[each.name for each in kept])
    slope = yield from asking.slope("slope", (6 if stock.is_soft else 8) * MICRO)
    bits = [either(unit, *each) for each in _BITS]
    left = needs.narrow - stock.thickness - either(unit, "1/8 in", "3 mm")  # beside two half-pins
    thin = [each for each in bits if each <= min(stock.thickness * 7 // 10, left)]
    bit = yield from asking.length("bit", (*thin, bits[-1])[0])
    height = yield from asking.length("bit_height", max(either(unit, "1 1/4 in", "32 mm"), up(needs.thick, unit)))
    wide = yield from asking.length("sled_width", max(either(unit, "20 in", "500 mm"), up(needs.wide, unit, "reach")))
    upright = yield from asking.length(
        "sled_upright", max(either(unit, "30 in", "750 mm"), up(needs.upright, unit, "reach"))
    )
    return {
        name: {
            "slope": write_slope(slope),
            "bit": write_length(bit, unit),
            "greatest_bit_height": write_length(height, unit),
            "greatest_width": write_length(wide, unit),
            "greatest_upright": write_length(upright, unit),
        }
    }


def with_proud(needs: Needs, proud: Nm) -> Needs:
    """The same when joints stand out so far at each end."""
    return replace(needs, upright=Nm(needs.upright + 2 * proud), thick=Nm(needs.thick + proud))
