"""Single values of a project file: what a maker may write, and the refusal of everything else."""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction
from itertools import pairwise
from typing import Literal

from planner.domain.marks import BOX_MARK
from planner.intake.nearest import advice
from planner.intake.refusal import RefusalError, quote
from planner.lengths import LengthError, Nm, Span, Unit, read_length, write_length

FORMAT = 1
"""Version of the format that this program reads and writes."""

GREATEST_CODE = 40
GREATEST_COUNT = 500
GREATEST_DRAWERS = 50
GREATEST_TIERS = GREATEST_DRAWERS
GREATEST_SHELVES = 50
GREATEST_PIN_HOLES = 21
GREATEST_DEPTH = 6
"""So many columns may stand in each other."""
GREATEST_NEST = 20
GREATEST_TENONS = 20
GREATEST_PANELS = 20
GREATEST_TAILS = 60
LEAST_SAG, GREATEST_SAG = 100, 2000
"""Of how many parts of its span a board may sag one."""
GREATEST_RATIO = 4
GREATEST_REASON = 200
RATIO_PLACES = 6
GREATEST_SHARE = 100
LEAST_BOARD = Nm(10_000_000)
"""Narrower boards, of which a back would need hundreds, are a slip of the pen."""
GREATEST_SECONDS = 24 * 60 * 60
"""Nothing at the sled takes longer than a day."""

_SPOKEN = {Unit.INCH: "inches", Unit.MM: "millimetres"}


def length(said: object, unit: Unit, *, zero: bool = False) -> Nm:
    """Length as whole nanometres; ``zero`` says whether 0 is a sensible answer."""
    spoken = _SPOKEN[unit]
    if isinstance(said, bool) or not isinstance(said, str | int | Decimal):
        raise RefusalError(
            f"{quote(said)} is not a length.", f'Write it like "3/4 in" or "19 mm", or a number of {spoken}.'
        )
    try:
        return read_length(said, unit, zero=zero)
    except LengthError as error:
        raise RefusalError(str(error), f"A bare number counts as {spoken}.") from error


def either_way(said: object, unit: Unit) -> Nm:
    """Length that may be less than nothing, when it goes the other way."""
    if isinstance(said, str) and said.strip()[:1] in _MINUS:
        return Nm(-length(said.strip()[1:].strip(), unit))
    if isinstance(said, int | Decimal) and not isinstance(said, bool) and Decimal(said).is_signed() and said != 0:
        return Nm(-length(-said, unit))
    return length(said, unit, zero=True)


_MINUS = ("-", "\N{MINUS SIGN}", "\N{EN DASH}", "\N{HYPHEN}", "\N{NON-BREAKING HYPHEN}")


def board_width(said: object, unit: Unit) -> Nm:
    """Width of the boards of a back."""
    width = length(said, unit)
    if width < LEAST_BOARD:
        raise RefusalError(
            f"{quote(said)} is too narrow for a board.", f"Take at least {write_length(LEAST_BOARD, unit)}."
        )
    return width


def place(said: object, unit: Unit) -> Span:
    """Where a listed pin starts and ends."""
    if not isinstance(said, list) or len(said) != 2:  # noqa: PLR2004 - from and to
        raise RefusalError(f"{quote(said)} is no place of a pin.", 'Write from and to: ["1 1/2 in", "1 3/4 in"].')
    start, end = (length(each, unit) for each in said)
    if start >= end:
        raise RefusalError(f"a pin from {quote(said[0])} to {quote(said[1])} has no width.", "Write from, then to.")
    return start, end


def apart(places: list[Span], unit: Unit) -> list[Span]:
    """Listed pins, which must stand in order with room for a tail between them."""
    for number, (before, after) in enumerate(pairwise(places), start=1):
        if before[1] >= after[0]:
            raise RefusalError(
                f"pin {number + 1} starts at {write_length(after[0], unit)}, "
                f"but pin {number} ends at {write_length(before[1], unit)}.",
                "List them in order, with room for a tail between them.",
            )
    return places


def name(said: str) -> str:
    """Name or title that can be shown anywhere: no control characters, no blanks at its ends."""
    if said != said.strip():
        raise RefusalError(f"{quote(said)} has blanks at an end.", "Leave them out.")
    if not said.isprintable():
        raise unseen(said)
    return said


def reason(said: str) -> str:
    """Why somebody goes on all the same."""
    if not 0 < len(said) <= GREATEST_REASON:
        raise RefusalError(f"{quote(said)} is no reason.", f"Say it in 1 to {GREATEST_REASON} characters.")
    return name(said)


def unseen(said: object) -> RefusalError:
    """Refusal of a text with control characters, or with others that show as nothing or turn what follows."""
    return RefusalError(
        f"{quote(said)} has characters that can't be seen.", "Use letters, digits, signs and plain blanks only."
    )


CODE = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*", re.ASCII)
"""Name of a rule that finds something."""


def code(said: str) -> str:
    """Name of a rule that finds something."""
    if len(said) > GREATEST_CODE or not CODE.fullmatch(said):
        raise RefusalError(
            f"{quote(said)} is no code of a finding.", "Write it as planner checks --json gives it: cross-grain."
        )
    return said


def mark(said: str) -> str:
    """Mark of a box, carcase or drawer."""
    if not BOX_MARK.fullmatch(said):
        raise RefusalError(
            f"{quote(said)} is no mark.", "Write a capital letter, then up to 7 capitals or digits: K, C2."
        )
    return said


def one_of(said: str, names: tuple[str, ...] | None, what: str) -> str:
    """One of the names that the file gives; None where they can't be read, so that any will do."""
    if names is not None and said not in names:
        raise RefusalError(f"{quote(said)} is not one of the file's {what}.", advice(said, names))
    return said


def tails(said: object) -> int | Literal["choose"]:
    """How many tails a corner has, or that the planner may choose."""
    if said == "choose":
        return "choose"
    if isinstance(said, int) and not isinstance(said, bool) and 1 <= said <= GREATEST_TAILS:
        return said
    raise RefusalError(
        f"{quote(said)} is no count of tails.", f'Write a number from 1 to {GREATEST_TAILS}, or "choose".'
    )


def ratio(said: object) -> Fraction:
    """How many times as large one thing is as another."""
    if not isinstance(said, bool) and isinstance(said, int | Decimal) and _is_ratio(Decimal(said)):
        return Fraction(round(Decimal(said), RATIO_PLACES))
    raise RefusalError(
        f"{quote(said)} is no ratio.",
        f"Write a number over 1 and up to {GREATEST_RATIO}, with at most {RATIO_PLACES} decimals, such as 1.15.",
    )


def share(said: object) -> Fraction:
    """Weight of a space among those that share what is left."""
    if not isinstance(said, bool) and isinstance(said, int | Decimal) and _is_share(Decimal(said)):
        return Fraction(round(Decimal(said), RATIO_PLACES))
    raise RefusalError(
        f"{quote(said)} is no share.",
        f"Write a number over 0 and up to {GREATEST_SHARE}, with at most {RATIO_PLACES} decimals, such as 2.",
    )


def _is_share(number: Decimal) -> bool:
    return number.is_finite() and 0 < number <= GREATEST_SHARE and round(number, RATIO_PLACES) == number


def _is_ratio(number: Decimal) -> bool:
    return number.is_finite() and 1 < number <= GREATEST_RATIO and round(number, RATIO_PLACES) == number


def version(said: object) -> int:
    """Version of the format: the one that this program reads."""
    if isinstance(said, bool) or not isinstance(said, int) or said < FORMAT:
        raise RefusalError(f"{quote(said)} is no version of the format.", f"Write format = {FORMAT}.")
    if said > FORMAT:
        raise RefusalError(f"format {quote(said)} is newer than this program reads.", "Read it with a newer planner.")
    return said
