"""Reading and showing what is not a length: weights, forces, temperatures, shares in percent, stiffness and strength.

One place for their units, as ``lengths`` is for lengths. What the maker says is kept as whole numbers: temperatures in
thousandths of a degree Celsius, shares in hundredths of a percent.
"""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction
from functools import cache
from typing import TYPE_CHECKING

from planner.lengths import Unit

if TYPE_CHECKING:
    from pint import UnitRegistry

_SMALL = 10
"""Below this a tenth is shown."""

HUNDREDTHS = 100
"""Hundredths of a percent in a percent."""

_THOUSANDTHS = 1000
_TENTHS = 10

COLDEST_MILLI_C, HOTTEST_MILLI_C = -20_000, 60_000
"""Rooms and shops are no colder and no hotter; 20 read as °F or °C makes the difference."""


class QuantityError(ValueError):
    """A text or number that can't be taken: what was found, quoted, and what would be right."""

    def __init__(self, what: str, remedy: str) -> None:
        super().__init__(f"{what} {remedy}")
        self.what = what
        self.remedy = remedy


# --- showing -----------------------------------------------------------------------------------------------


def show_mass(kg: float, unit: Unit) -> str:
    """Weight for the eye: pounds in a project in inches, else kilograms.

    >>> show_mass(1.0, Unit.INCH), show_mass(12.34, Unit.MM)
    ('2.2 lb', '12 kg')
    """
    return f"{_few_places(kg / _size('pound'))} lb" if unit is Unit.INCH else f"{_few_places(kg)} kg"


def show_force(newtons: float, unit: Unit) -> str:
    """Force for the eye: pounds-force in a project in inches, else newtons."""
    return f"{_few_places(newtons / _size('pound_force'))} lbf" if unit is Unit.INCH else f"{_few_places(newtons)} N"


def show_percent(hundredths: int) -> str:
    """Share for the eye, to a tenth of a percent where it has one.

    >>> show_percent(850), show_percent(1000)
    ('8.5 %', '10 %')
    """
    tenths = round(Fraction(hundredths * _TENTHS, HUNDREDTHS))
    return f"{Decimal(tenths) / _TENTHS:f} %"


def show_temperature(milli_c: int, unit: Unit) -> str:
    """Temperature for the eye, in whole degrees: Fahrenheit in a project in inches, else Celsius.

    >>> show_temperature(21_111, Unit.INCH), show_temperature(21_111, Unit.MM)
    ('70 °F', '21 °C')
    """
    degrees, letter = (_fahrenheit(milli_c), "F") if unit is Unit.INCH else (Fraction(milli_c, _THOUSANDTHS), "C")
    return f"{round(degrees)} °{letter}"


def _few_places(value: float) -> str:
    return f"{value:.1f}" if abs(value) < _SMALL else f"{value:.0f}"


# --- reading and writing -----------------------------------------------------------------------------------

_NUMBER = r"(?P<number>[-−]?[0-9]{1,9}(?:\.[0-9]{1,9})?)"
_TEMPERATURE = re.compile(_NUMBER + r"\s*(?:°|deg)?\s*(?P<letter>[CFcf])?", re.ASCII)
_PERCENT = re.compile(_NUMBER + r"\s*%?", re.ASCII)
_PRESSURE = re.compile(_NUMBER + r"(?P<power>[eE][+]?[0-9])?\s*(?P<unit>GPa|MPa|psi)", re.ASCII)
_LONGEST = 40


def read_temperature(said: str | int | Decimal, unit: Unit) -> int:
    """Temperature of air as thousandths of a degree Celsius, to the nearest.

    Args:
        said: text such as ``70 °F`` or ``21 C``, or a bare number, which counts in degrees of the project's unit.
        unit: inches go with Fahrenheit, millimetres with Celsius.

    Raises:
        QuantityError: no temperature, or none that a room or a shop has.
    """
    found = _TEMPERATURE.fullmatch(_text(said))
    if found is None:
        raise QuantityError(f"{_quote(said)} is no temperature.", 'Write it like "70 °F" or "21 °C".')
    degrees = Fraction(found["number"].replace("−", "-"))
    letter = (found["letter"] or ("F" if unit is Unit.INCH else "C")).upper()
    celsius = _converted(degrees, "fahrenheit", "celsius") if letter == "F" else degrees
    milli = round(celsius * _THOUSANDTHS)
    if not COLDEST_MILLI_C <= milli <= HOTTEST_MILLI_C:
        low, high = (show_temperature(each, unit) for each in (COLDEST_MILLI_C, HOTTEST_MILLI_C))
        raise QuantityError(f"{_quote(said)} is no temperature of a room or a shop.", f"Say one from {low} to {high}.")
    return milli


def write_temperature(milli_c: int, unit: Unit) -> str:
    """Temperature as it stands in a project file; reading it gives the same thousandths.

    >>> write_temperature(21_111, Unit.INCH), write_temperature(20_500, Unit.MM)
    ('70 °F', '20.5 °C')
    """
    if unit is Unit.INCH:
        shown = f"{Decimal(round(_fahrenheit(milli_c) * _TENTHS)) / _TENTHS:f} °F"
        if read_temperature(shown, unit) == milli_c:
            return shown
    return f"{Decimal(milli_c) / _THOUSANDTHS:f} °C"


def read_percent(said: str | int | Decimal, most: int) -> int:
    """Share as whole hundredths of a percent: from 0 to ``most`` percent.

    Raises:
        QuantityError: no share, over the most, or finer than a hundredth.
    """
    found = _PERCENT.fullmatch(_text(said))
    remedy = f'Write it like "8.5 %" or 8.5, from 0 to {most}, with at most two decimals.'
    if found is None:
        raise QuantityError(f"{_quote(said)} is no share in percent.", remedy)
    hundredths = Fraction(found["number"].replace("−", "-")) * HUNDREDTHS
    if hundredths.denominator != 1 or not 0 <= hundredths <= most * HUNDREDTHS:
        raise QuantityError(f"{_quote(said)} can't be.", remedy)
    return int(hundredths)


def write_percent(hundredths: int) -> str:
    """Share as it stands in a project file; reading it gives the same hundredths."""
    return f"{Decimal(hundredths) / HUNDREDTHS:f} %"


def read_pressure(said: str) -> Fraction:
    """Stiffness or strength as megapascals, from a text such as ``10.3 GPa``, ``85 MPa`` or ``1.49e6 psi``.

    Raises:
        QuantityError: none.
    """
    found = _PRESSURE.fullmatch(_text(said))
    if found is None or Fraction(found["number"].replace("−", "-")) <= 0:
        raise QuantityError(
            f"{_quote(said)} is no stiffness or strength.", 'Write it like "10.3 GPa", "85 MPa" or "1.49e6 psi".'
        )
    number = Fraction(found["number"]) * 10 ** int((found["power"] or "e0")[1:])
    return _converted(number, {"GPa": "gigapascal", "MPa": "megapascal", "psi": "psi"}[found["unit"]], "megapascal")


def _text(said: str | int | Decimal) -> str:
    """What was said as a text; longer than any quantity when it is."""
    if isinstance(said, bool) or (isinstance(said, Decimal) and not said.is_finite()):
        return ""
    text = format(said, "f") if isinstance(said, Decimal) and abs(said.adjusted()) < _LONGEST else str(said)
    return " ".join(text.split())[: _LONGEST + 1]


def _quote(said: object) -> str:
    text = repr(said[:_LONGEST]) if isinstance(said, str) else str(said)
    return text if len(text) <= _LONGEST + 2 else text[:_LONGEST] + "…"


def kilograms(pounds: float) -> float:
    """Kilograms in so many pounds."""
    return pounds * _size("pound")


def newtons(pounds: float) -> float:
    """Newtons in so many pounds of force."""
    return pounds * _size("pound_force")


# --- money ---------------------------------------------------------------------------------------------------

_MONEY = re.compile(r"[0-9]{1,9}(?:\.[0-9]{1,2})?", re.ASCII)
_CENTS = 100


def read_money(said: str) -> int:
    """Money as whole cents, whatever it is called.

    Raises:
        QuantityError: no amount, or finer than a cent.

    >>> read_money("12.5"), read_money("8")
    (1250, 800)
    """
    text = said.strip()
    if not _MONEY.fullmatch(text):
        raise QuantityError(f"{_quote(said)} is no price.", "Write it like 12.50: digits, with a point before cents.")
    return int(Decimal(text) * _CENTS)


def show_money(cents: int, currency: str = "") -> str:
    """Money for the eye.

    >>> show_money(1250, "USD"), show_money(-5)
    ('12.50 USD', '-0.05')
    """
    whole, part = divmod(abs(cents), _CENTS)
    return f"{'-' if cents < 0 else ''}{whole}.{part:02d} {currency}".rstrip()


# --- units -------------------------------------------------------------------------------------------------

_DEFINITIONS = (
    "kelvin = [temperature] = K",
    "celsius = kelvin; offset: 273.15",
    "fahrenheit = 5 / 9 * kelvin; offset: 233.15 + 200 / 9",
    "meter = [length] = m",
    "inch = 0.0254 * meter",
    "second = [time] = s",
    "kilogram = [mass] = kg",
    "pound = 0.45359237 * kilogram = lb",
    "newton = kilogram * meter / second ** 2 = N",
    "pound_force = 9.80665 * meter / second ** 2 * pound = lbf",
    "pascal = newton / meter ** 2 = Pa",
    "psi = pound_force / inch ** 2",
    "mega- = 1e6",
    "giga- = 1e9",
)
"""All the units there are: pound, inch and standard gravity by definition (NIST SP 811)."""

_SI = {"pound": "kilogram", "pound_force": "newton"}


@cache
def _registry() -> UnitRegistry[Fraction]:
    from pint import UnitRegistry

    return UnitRegistry(_DEFINITIONS, non_int_type=Fraction)


def _converted(value: Fraction, unit: str, into: str) -> Fraction:
    return Fraction(_registry().Quantity(value, unit).to(into).magnitude)


@cache
def _size(unit: str) -> float:
    """How much of the SI unit one unit is."""
    return float(_converted(Fraction(1), unit, _SI[unit]))


def _fahrenheit(milli_c: int) -> Fraction:
    return _converted(Fraction(milli_c, _THOUSANDTHS), "celsius", "fahrenheit")
