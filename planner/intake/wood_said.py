"""What a maker says of timbers and of the air: the name of a species, shares, temperatures, strengths."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from typing import TypeVar

from planner.domain.timber import Timber
from planner.intake.refusal import RefusalError, quote
from planner.lengths import Unit
from planner.quantities import QuantityError, read_percent, read_pressure, read_temperature
from planner.wood.movement import GREATEST_COEFFICIENT
from planner.wood.timbers import UnknownTimberError, advice, full_name

GREATEST_MOISTURE = 40
"""Percent; wood as wet as this is fresh from the log, and no meter reads it."""

GREATEST_HUMIDITY = 100
OWN_FIGURES = "the maker's own figures"
GREATEST_GRAVITY = Decimal("1.5")
"""No wood is heavier: lignum vitae comes to about 1.3 (common knowledge, no source)."""

COEFFICIENT_PLACES, GRAVITY_PLACES = 6, 3
GREATEST_SHRINKAGE = 30
_GPA_PLACES, _MPA_PLACES = 3, 2
_MPA_IN_GPA = 1000
GREATEST_GPA, GREATEST_MPA = 40, 400
"""Twice what the stiffest and strongest woods come to."""

_Read = TypeVar("_Read")


def species(said: str, own: tuple[str, ...]) -> str:
    """The name of a timber as it is kept: one of the file's own, else one that is shipped."""
    try:
        return full_name(said, own)
    except UnknownTimberError as error:
        raise RefusalError(f"{quote(said)} is no known timber.", advice(error)) from error


def temperature(said: object, unit: Unit) -> int:
    """Temperature of air, in thousandths of a degree Celsius."""
    return _told(lambda: read_temperature(_text_or_number(said, '"70 °F" or "21 °C"'), unit))


def humidity(said: object) -> int:
    """Relative humidity of air, in hundredths of a percent."""
    return _told(lambda: read_percent(_text_or_number(said, '"45 %" or 45'), GREATEST_HUMIDITY))


def moisture(said: object) -> int:
    """Moisture content of wood, in hundredths of a percent."""
    return _told(lambda: read_percent(_text_or_number(said, '"8.5 %" or 8.5'), GREATEST_MOISTURE))


def share(said: object, most: int) -> int:
    """Share in hundredths of a percent."""
    return _told(lambda: read_percent(_text_or_number(said, '"25 %" or 25'), most))


def shrinkage(said: object) -> float:
    """Shrinkage from green to oven-dry, in percent."""
    return _number(said, GREATEST_SHRINKAGE, 2, "shrinkage in percent", "7.1")


def coefficient(said: object) -> float:
    """Change of size for each percent of moisture, as a part of the size."""
    try:
        return _number(said, GREATEST_COEFFICIENT, COEFFICIENT_PLACES, "change of size", "0.00248")
    except RefusalError as error:
        raise RefusalError(
            error.what,
            "Write the change for each percent of moisture as a part of the size, such as 0.00248; no wood changes by "
            f"more than {GREATEST_COEFFICIENT}. The whole shrinkage from green goes under shrinkage_tangential and "
            "shrinkage_radial.",
        ) from error


def gravity(said: object) -> float:
    """Specific gravity."""
    return _number(said, GREATEST_GRAVITY, GRAVITY_PLACES, "specific gravity", "0.5")


def stiffness(said: object) -> float:
    """Modulus of elasticity, in gigapascals."""
    gpa = _pressure(said) / _MPA_IN_GPA
    return _within(said, float(round(gpa, _GPA_PLACES)), GREATEST_GPA, "GPa")


def strength(said: object) -> float:
    """Modulus of rupture, in megapascals."""
    return _within(said, float(round(_pressure(said), _MPA_PLACES)), GREATEST_MPA, "MPa")


def write_pressures(timber: Timber) -> dict[str, str]:
    """Stiffness and strength as they stand in a project file."""
    return {
        "stiffness": f"{timber.stiffness_gpa:g} GPa",
        "strength": f"{timber.strength_mpa:g} MPa",
    }


def _pressure(said: object) -> Decimal:
    example = '"10.3 GPa", "85 MPa" or "1.49e6 psi"'
    if not isinstance(said, str):
        raise RefusalError(f"{quote(said)} has no unit.", f"Write it like {example}, in quotes.")
    exact = _told(lambda: read_pressure(said))
    return Decimal(exact.numerator) / exact.denominator


def _within(said: object, value: float, most: int, unit: str) -> float:
    if not 0 < value <= most:
        raise RefusalError(f"{quote(said)} is not that of any wood.", f"It is over 0 and up to {most} {unit}.")
    return value


def _number(said: object, most: float | Decimal, places: int, what: str, example: str) -> float:
    if not isinstance(said, bool) and isinstance(said, int | Decimal):
        number = Decimal(said)
        if number.is_finite() and 0 < number <= Decimal(str(most)) and round(number, places) == number:
            return float(number)
    raise RefusalError(
        f"{quote(said)} is no {what}.",
        f"Write a number over 0 and up to {most}, with at most {places} decimals, such as {example}.",
    )


def _text_or_number(said: object, example: str) -> str | int | Decimal:
    if isinstance(said, bool) or not isinstance(said, str | int | Decimal):
        raise RefusalError(f"{quote(said)} can't be read.", f"Write it like {example}.")
    return said


def _told(read: Callable[[], _Read]) -> _Read:
    try:
        return read()
    except QuantityError as error:
        raise RefusalError(error.what, error.remedy) from error
