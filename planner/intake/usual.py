"""Usual values: what counts when the maker leaves a key out. Reading, writing and the schema all ask here."""

from __future__ import annotations

from types import MappingProxyType

from planner.lengths import Grid, Nm, Unit, read_length

_LENGTHS = MappingProxyType(
    {
        "proud": ("1/64 in", "0.4 mm"),
        "height_tolerance": ("0.004 in", "0.1 mm"),
        "half_pin": ("1/4 in", "6 mm"),
        "pin": ("1/4 in", "6 mm"),
        "tail": ("1 in", "25 mm"),
        "greatest_tail": ("1 3/4 in", "45 mm"),
        "side_clearance": ("1/16 in", "1.5 mm"),
        "top_clearance": ("1/8 in", "3 mm"),
        "back_clearance": ("1/2 in", "12 mm"),
        "play": ("1/32 in", "1 mm"),
        "lap": ("1/4 in", "6 mm"),
        "gap": ("1/16 in", "1.5 mm"),
    }
)
"""Key → usual length in an inch project and in a metric one. The lap: Fairham, *Woodwork Joints*, p. 134."""

_SHARES = MappingProxyType({"groove_depth": 2, "rabbet_depth": 2, "housing_depth": 3})
"""Key → the cut usually goes this part of the thickness deep: a half, a third. Common practice, no source."""

GRIDS = MappingProxyType({Unit.INCH: Grid.IN_32, Unit.MM: Grid.MM_TENTH})
"""Step to which sizes are usually shown."""

_FINEST = MappingProxyType({Unit.INCH: Grid.IN_64, Unit.MM: Grid.MM_TENTH})


def usual_length(key: str, unit: Unit) -> Nm:
    """Usual length for a key of the project file."""
    return read_length(_LENGTHS[key][unit is Unit.MM], unit)


def usual_said(key: str) -> str:
    """The usual length of a key in words: ``1/64 in or 0.4 mm``."""
    return " or ".join(_LENGTHS[key])


def usual_depth(key: str, thickness: Nm, unit: Unit) -> Nm:
    """Usual depth of a groove, rabbet or housing in a board of this thickness.

    Rounded down to a whole 1/64 in or 0.1 mm; in a board too thin for that, down to a nanometre.
    """
    share, step = _SHARES[key], _FINEST[unit].step_nm
    return Nm(thickness // share // step * step or max(1, thickness // share))
