"""A load in a project file: ``books``, ``25 lb/ft`` or ``120 kg/m2``; read and written back exactly."""

from __future__ import annotations

import re
from decimal import Decimal

from planner.domain.use import Load, LoadKind, LoadUnit
from planner.intake.refusal import RefusalError, quote

_NAMES = "|".join(kind for kind in LoadKind if kind is not LoadKind.OWN)
_FIGURE, _UNIT = r"[0-9]{1,4}(\.[0-9]{1,3})?", "(lb/ft|kg/m)[23]?"
_EITHER = re.compile(f"(?P<name>{_NAMES})|(?P<figure>{_FIGURE}) ?(?P<unit>{_UNIT})")

PATTERN = f"^({_NAMES})$|^{_FIGURE} ?{_UNIT}$"
"""A name, or a figure: weight on each length, area or volume."""

_THOUSAND = 1000
_REMEDY = (
    f'Write {_NAMES.replace("|", ", ")}, or a figure: "25 lb/ft" or "37 kg/m" on each length of board, "lb/ft2" or '
    '"kg/m2" on each area, "lb/ft3" or "kg/m3" in each volume.'
)


def read_load(said: object) -> Load:
    """The load that a maker names.

    Raises:
        RefusalError: neither a name nor a figure with its unit, or nothing at all.
    """
    found = _EITHER.fullmatch(said) if isinstance(said, str) else None
    if found is None:
        raise RefusalError(f"{quote(said)} is not a load.", _REMEDY)
    if found["name"]:
        return Load(kind=LoadKind(found["name"]))
    thousandths = int(Decimal(found["figure"]) * _THOUSAND)
    if not thousandths:
        raise RefusalError(f"{quote(said)} is no load at all.", "Leave it out.")
    return Load(kind=LoadKind.OWN, thousandths=thousandths, unit=LoadUnit(found["unit"]))


def write_load(load: Load) -> str:
    """The load as it stands in a project file."""
    if load.thousandths is None or load.unit is None:
        return str(load.kind)
    figure = Decimal(load.thousandths) / _THOUSAND
    return f"{figure:f} {load.unit}"
