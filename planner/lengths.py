"""Lengths: read what a maker writes, keep whole nanometres, show shop fractions or millimetres.

This is the only module that knows a unit factor or rounds a length for the eye. A whole nanometre keeps both
worlds exact: 1/64 in is 396 875 nm, 0.1 mm is 100 000 nm. Sums are made on nanometres, rounding comes last.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from functools import cache
from typing import TYPE_CHECKING, NewType

if TYPE_CHECKING:
    from pint import UnitRegistry

Nm = NewType("Nm", int)
"""A length or a place in whole nanometres."""

Span = tuple[Nm, Nm]
"""From and to, the smaller place first."""

NO_LENGTH = Nm(0)
"""Nothing: no play, no lap, nothing that stands out."""

GREATEST_M = 10
"""Lengths over ten metres are refused: nothing in a workshop is that long, a slipped unit is."""

_LONGEST_TEXT = 40


class Unit(StrEnum):
    """Unit of a project: bare numbers are read in it and sizes are shown in it."""

    INCH = "in"
    MM = "mm"


class Grid(StrEnum):
    """Step to which lengths are shown; the value is how a maker writes it."""

    IN_16 = "1/16 in"
    IN_32 = "1/32 in"
    IN_64 = "1/64 in"
    MM_TENTH = "0.1 mm"

    @property
    def unit(self) -> Unit:
        """Unit in which this grid shows lengths."""
        return Unit.MM if self is Grid.MM_TENTH else Unit.INCH

    @property
    def fine(self) -> Grid:
        """The finest grid of the same unit: what a machine is set to and where a line is drawn is shown to it."""
        return Grid.MM_TENTH if self is Grid.MM_TENTH else Grid.IN_64

    @property
    def step_nm(self) -> Nm:
        """The step in nanometres (a whole number for each grid)."""
        return _GRID_STEP[self]


class LengthError(ValueError):
    """A text or number that is no usable length: what was found, quoted, and what would be right."""

    def __init__(self, what: str, remedy: str = "") -> None:
        super().__init__(f"{what} {remedy}".rstrip())
        self.what = what
        self.remedy = remedy


def total(parts: Iterable[int]) -> Nm:
    """Sum of lengths, kept as a length."""
    return Nm(sum(parts))


def nearest(exact: Fraction) -> Nm:
    """Exact value in nanometres to the nearest whole one, ties to even."""
    return Nm(round(exact))


# --- reading -----------------------------------------------------------------------------------------------

_UNIT_WORDS = {
    "in": "inch", "inch": "inch", "inches": "inch", '"': "inch",
    "ft": "foot", "foot": "foot", "feet": "foot", "'": "foot",
    "mm": "millimeter", "cm": "centimeter", "m": "meter",
}  # fmt: skip

_FRACTION = r"(?:(?P<whole>[0-9]+)(?:[ ]+|-)(?=[0-9]+/))?(?P<top>[0-9]+)/(?P<bottom>[0-9]+)"
_DECIMAL = r"(?P<dec>[0-9]+\.?[0-9]*|\.[0-9]+)"
_WORD = r"[ ]*(?P<unit>inches|inch|in|feet|foot|ft|mm|cm|m|\"|')?"
_ONE = re.compile(f"(?:{_FRACTION}|{_DECIMAL}){_WORD}")
_FEET_AND_INCHES = re.compile(r"(?P<feet>.*?(?:feet|foot|ft|'))(?:[ ]*|-)(?P<inches>[0-9].*)")
_REMEDY = 'Write it like 23 1/2, 23-1/2", 1\' 6 1/2", 0.75 in, 19 mm or 1.9 cm.'


def read_length(said: str | int | Decimal, unit: Unit, *, zero: bool = False) -> Nm:
    r"""Length that a maker wrote, as whole nanometres.

    Args:
        said: text such as ``23 1/2 in``, or a bare number, which counts in ``unit``.
        unit: unit of bare numbers.
        zero: whether 0 is a sensible answer (an allowance or a clearance).

    Raises:
        LengthError: not a length, negative, zero, over 10 m, or finer than a nanometre. A fraction of an inch
            is exact down to 1/64; 1/128 is not, and is refused rather than rounded in silence.

    >>> read_length("23 1/2 in", Unit.MM)
    596900000
    >>> read_length("1' 6 1/2\"", Unit.INCH) == read_length("18-1/2", Unit.INCH)
    True
    """
    quoted = _quote(said)
    if isinstance(said, bool) or not isinstance(said, str | int | Decimal):
        raise LengthError(f"{quoted} is not a length.", _REMEDY)
    written = _written(said)
    if written is None:
        raise LengthError(f"{quoted} is too long for a length.", _REMEDY)
    text = _plain(written)
    if text.startswith("-"):
        raise LengthError(f"{quoted} is negative; a length is more than nothing.", _REMEDY)
    exact = _exact_nm(text, unit, quoted)
    if exact == 0 and not zero:
        raise LengthError(f"{quoted} is no length at all.", "It must be more than 0.")
    if exact > GREATEST_M * _nm_per("meter"):
        raise LengthError(f"{quoted} is over {GREATEST_M} m.", "Is the unit right?")
    if exact.denominator != 1:
        raise LengthError(
            f"{quoted} is not a whole number of nanometres.",
            "Use fractions of an inch down to 1/64, or a decimal with fewer places.",
        )
    return Nm(int(exact))


def _written(said: str | int | Decimal) -> str | None:
    """The text of what was said; None when it is longer than any length, found out without writing it all."""
    if isinstance(said, str):
        return said if len(said) <= _LONGEST_TEXT else None
    if isinstance(said, int):
        return str(said) if abs(said) < 10**_LONGEST_TEXT else None
    if not said.is_finite():
        return str(said)
    least = said.as_tuple().exponent
    too_long = said.adjusted() > _LONGEST_TEXT or (isinstance(least, int) and least < -_LONGEST_TEXT)
    return None if too_long else format(said, "f")


def _plain(text: str) -> str:
    """Typographic forms brought down to plain characters: ½ → 1/2, ″ ” → ", ′ ’ → ', any blank → space."""
    out: list[str] = []
    for char in text:
        spelled = unicodedata.normalize("NFKC", char)
        if _SLASH in spelled and spelled != char:
            out.append(f" {spelled.replace(_SLASH, '/')} ")  # blanks, or ½5 would be read as 1/25
        else:
            out.append(_PLAIN.get(char, " " if char.isspace() else char))
    return re.sub(" +", " ", "".join(out).replace("''", '"')).strip().lower()


_SLASH = "\N{FRACTION SLASH}"
_PLAIN = {
    _SLASH: "/", "\N{DOUBLE PRIME}": '"', "\N{RIGHT DOUBLE QUOTATION MARK}": '"',
    "\N{LEFT DOUBLE QUOTATION MARK}": '"', "\N{PRIME}": "'", "\N{RIGHT SINGLE QUOTATION MARK}": "'",
    "\N{LEFT SINGLE QUOTATION MARK}": "'", "\N{HYPHEN}": "-", "\N{NON-BREAKING HYPHEN}": "-",
    "\N{EN DASH}": "-", "\N{MINUS SIGN}": "-",
}  # fmt: skip


def _exact_nm(text: str, unit: Unit, quoted: str) -> Fraction:
    compound = _FEET_AND_INCHES.fullmatch(text)
    if compound:
        feet, feet_unit = _one(compound["feet"], quoted)
        inches, inches_unit = _one(compound["inches"], quoted)
        if feet_unit != "foot" or inches_unit != "inch":
            raise LengthError(f"{quoted}: after feet, inches with their mark are wanted.", _REMEDY)
        return feet * _nm_per("foot") + inches * _nm_per("inch")
    number, named = _one(text, quoted)
    return number * _nm_per(named or _UNIT_WORDS[unit])


def _one(text: str, quoted: str) -> tuple[Fraction, str | None]:
    found = _ONE.fullmatch(text.strip())
    if found is None:
        raise LengthError(f"{quoted} is not a length.", _REMEDY)
    named = _UNIT_WORDS[found["unit"]] if found["unit"] else None
    if found["dec"] is not None:
        return Fraction(found["dec"].rstrip(".")), named
    top, bottom = int(found["top"]), int(found["bottom"])
    if bottom == 0 or (found["whole"] and top >= bottom):
        raise LengthError(f"{quoted}: the fraction {top}/{bottom} makes no sense there.", _REMEDY)
    return int(found["whole"] or 0) + Fraction(top, bottom), named


def _quote(said: object) -> str:
    if isinstance(said, int) and abs(said) >= 10**_LONGEST_TEXT:
        return "a number of over 40 digits"
    text = repr(said) if isinstance(said, str) else str(said)
    return text if len(text) <= _LONGEST_TEXT else text[:_LONGEST_TEXT] + "…"


_DEFINITIONS = (
    "meter = [length] = m",
    "inch = 0.0254 * meter = in",
    "foot = 12 * inch = ft",
    "milli- = 1e-3 = m-",
    "centi- = 1e-2 = c-",
    "nano- = 1e-9 = n-",
)
"""All the units there are: the inch is 25.4 mm by definition (NIST SP 811). Pint's full list takes 40 times as long."""


@cache
def _registry() -> UnitRegistry[Fraction]:
    from pint import UnitRegistry

    return UnitRegistry(_DEFINITIONS, non_int_type=Fraction)


@cache
def _nm_per(unit: str) -> Fraction:
    """Nanometres in one unit, exact."""
    return Fraction(_registry().Quantity(Fraction(1), unit).to("nanometer").magnitude)


# --- showing -----------------------------------------------------------------------------------------------

_GRID_STEP = {
    Grid.IN_16: Nm(1_587_500),
    Grid.IN_32: Nm(793_750),
    Grid.IN_64: Nm(396_875),
    Grid.MM_TENTH: Nm(100_000),
}
ROUNDED = "~"
"""Put before a shown length that is not exactly the length meant."""


def on_grid(length: int, grid: Grid) -> Nm:
    """Nearest place on the grid, ties to the even step (as ASTM E29 rounds)."""
    step = grid.step_nm
    return Nm(round(Fraction(length, step)) * step)


def show_length(length: int, grid: Grid, *, with_unit: bool = False) -> str:
    """Length for the eye: ``5 11/32`` or ``136.5``; ``~`` before it when it had to be rounded.

    >>> show_length(read_length("5 11/32 in", Unit.INCH), Grid.IN_32, with_unit=True)
    '5 11/32 in'
    >>> show_length(12_345_678, Grid.MM_TENTH)
    '~12.3'
    """
    shown = on_grid(abs(length), grid)
    number = _tenths(shown) if grid is Grid.MM_TENTH else _fraction(Fraction(shown, grid.step_nm), grid)
    sign = "-" if length < 0 and shown else ""
    mark = "" if shown == abs(length) else ROUNDED
    return f"{mark}{sign}{number}" + (f" {grid.unit}" if with_unit else "")


def _tenths(shown: int) -> str:
    tenths = shown // Grid.MM_TENTH.step_nm
    return f"{tenths // 10}.{tenths % 10}"


def _fraction(steps: Fraction, grid: Grid) -> str:
    whole, part = divmod(steps * grid.step_nm / _IN, 1)
    if not part:
        return str(whole)
    return f"{whole} {part}" if whole else str(part)


_MM = 1_000_000
GREATEST_NM = Nm(GREATEST_M * 1000 * _MM)
"""The same limit in nanometres, for lengths that are worked out."""
_IN = 64 * _GRID_STEP[Grid.IN_64]


def write_length(length: int, unit: Unit) -> str:
    """Length with its unit, exact, as it stands in a project file; reading it gives the same nanometres.

    >>> write_length(read_length("23 1/2", Unit.INCH), Unit.INCH), write_length(12_620_000, Unit.INCH)
    ('23 1/2 in', '12.62 mm')
    """
    if unit is Unit.INCH and length % Grid.IN_64.step_nm == 0:
        return show_length(length, Grid.IN_64, with_unit=True)
    return f"{format(Decimal(length) / _MM, 'f')} mm"


def in_unit(length: int, unit: Unit) -> Fraction:
    """Length as an exact number of inches or millimetres, for a spreadsheet cell."""
    return Fraction(length, _IN if unit is Unit.INCH else _MM)


def metres(length: int) -> float:
    """Length in metres, for the formulas of mechanics."""
    return mm(length) / 1000


def from_metres(length: float) -> Nm:
    """Metres as a length, to the nearest nanometre."""
    return Nm(round(length * 1_000_000_000))


def mm(length: int) -> float:
    """Length in millimetres, for JSON."""
    return length / _MM
