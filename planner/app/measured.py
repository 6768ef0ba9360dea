"""What a maker measured on a sled, as typed: read all at once, over what was measured before."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, fields, replace
from types import MappingProxyType
from typing import Any

from planner.app.sled_slip import typed
from planner.domain.sled import Sled
from planner.errors import InputError, Problem
from planner.lengths import LengthError, Nm, Unit, read_length

NONE = "none"
"""What is typed for a measure that is no longer said."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """What was typed; None where nothing was. The keys are those of a sled in a project file."""

    slope: str | None = None
    bit: str | None = None
    slot: str | None = None
    greatest_bit_height: str | None = None
    greatest_width: str | None = None
    greatest_upright: str | None = None
    greatest_depth_soft: str | None = None
    greatest_depth_hard: str | None = None


def read_measured(said: Measured, before: Sled) -> Sled:
    """The sled with what was measured anew.

    Raises:
        InputError: nothing was measured, or something can't be read; every fault is named.
    """
    texts = {
        field.name: getattr(said, field.name) for field in fields(Measured) if getattr(said, field.name) is not None
    }
    wrong = list(_what_is_missing(texts, before))
    found: dict[str, Any] = {}
    for key, text in texts.items():
        field, read = _READERS[key]
        try:
            found[field] = read(text.strip())
        except LengthError as error:
            wrong.append(Problem(where=typed(key), what=error.what, remedy=error.remedy))
    if wrong:
        raise InputError(wrong)
    return replace(before, **found)


def _what_is_missing(texts: dict[str, str], before: Sled) -> Iterator[Problem]:
    if not texts:
        remedy = 'Say what you measured, such as --bit "12.62 mm".'
        yield Problem(where=f"sled {before.name!r}", what="nothing was measured.", remedy=remedy)
    if "bit" in texts and "slot" not in texts and before.slot_nm is not None:
        # another bit cuts another slot, and a slot that is wrong by a hair spoils every pin
        yield Problem(
            where=typed("slot"),
            what="is missing: the slot known until now was cut by the bit as it was.",
            remedy=f"Cut an offcut and measure its slot; or say --slot {NONE}, to take the bit's diameter.",
        )


# --- one measure --------------------------------------------------------------------------------------------


def _length(said: str) -> Nm:
    """A length that says its unit: a sled belongs to projects in inches and in millimetres alike."""
    in_mm, in_inches = (read_length(said, unit) for unit in Unit)
    if in_mm != in_inches:
        raise LengthError(f"{said!r} doesn't say its unit.", f'Write "{said} mm" or "{said} in".')
    return in_mm


def _length_or_none(said: str) -> Nm | None:
    return None if said == NONE else _length(said)


def _slope(said: str) -> int:
    from planner.intake.refusal import RefusalError
    from planner.intake.slope import read_slope

    try:
        return read_slope(said)
    except RefusalError as error:
        raise LengthError(error.what, error.remedy) from error


_READERS: MappingProxyType[str, tuple[str, Callable[[str], int | None]]] = MappingProxyType(
    {
        "slope": ("run_micro", _slope),
        "bit": ("bit_nm", _length),
        "slot": ("slot_nm", _length_or_none),
        "greatest_bit_height": ("greatest_bit_height_nm", _length),
        "greatest_width": ("greatest_width_nm", _length),
        "greatest_upright": ("greatest_upright_nm", _length),
        "greatest_depth_soft": ("greatest_depth_soft_nm", _length_or_none),
        "greatest_depth_hard": ("greatest_depth_hard_nm", _length_or_none),
    }
)
"""By key: the field of a sled, and how its text is read."""
