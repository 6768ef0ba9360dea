"""Usual values: what counts when the maker leaves a key out. Reading, writing and the schema all ask here."""

from __future__ import annotations

from types import MappingProxyType

from planner.domain.words import BottomGoes, DividerKind, RunnerKind
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
        "slides_clearance": ("1/2 in", "12.7 mm"),
        "overlay": ("3/8 in", "10 mm"),
        "slip": ("3/8 in", "10 mm"),
        "slip_height": ("3/4 in", "20 mm"),
        "apart": ("3 in", "96 mm"),
        "hole": ("3/16 in", "5 mm"),
        "stop": ("1/2 in", "12 mm"),
        "web_rail": ("2 in", "50 mm"),
        "web_groove": ("3/8 in", "10 mm"),
        "web_tenon": ("1/4 in", "6 mm"),
        "runner_width": ("1 in", "25 mm"),
        "side_runner": ("3/8 in", "10 mm"),
        "side_runner_height": ("3/4 in", "20 mm"),
        "stile": ("2 in", "50 mm"),
        "panel_groove": ("3/8 in", "10 mm"),
        "panel": ("1/4 in", "6 mm"),
        "board": ("4 in", "100 mm"),
        "board_lap": ("3/8 in", "10 mm"),
        "foot": ("6 in", "150 mm"),
        "leg": ("1 3/4 in", "45 mm"),
        "apron": ("4 in", "100 mm"),
        "apron_setback": ("1/8 in", "3 mm"),
        "top_over": ("3/4 in", "20 mm"),
        "lid_over": ("1/2 in", "12 mm"),
        "kerf": ("1/8 in", "3 mm"),
        "till": ("3/8 in", "10 mm"),
        "shelf_play": ("1/8 in", "3 mm"),
        "shelf_setback": ("1/4 in", "6 mm"),
        "stop_height": ("1/4 in", "6 mm"),
        "stop_length": ("1 1/2 in", "40 mm"),
        "stop_width": ("3/4 in", "20 mm"),
        "door_stop": ("1/2 in", "12 mm"),
        "screw_slot": ("3/16 in", "5 mm"),
        "hanging_rail": ("3 in", "75 mm"),
        "pin_hole": ("1/4 in", "5 mm"),
        "pin_depth": ("5/16 in", "8 mm"),
        "pins_apart": ("1 1/4 in", "32 mm"),
        "pins_in": ("1 1/2 in", "37 mm"),
    }
)
"""Key → usual length in an inch project and in a metric one.

The lap: Fairham, *Woodwork Joints*, p. 134. All others: common practice, no source; of bought slides the maker's own
sheet has the last word.
"""

_SHARES = MappingProxyType(
    {"groove_depth": 2, "rabbet_depth": 2, "housing_depth": 3, "corner_lap": 3, "rise": 2, "tenon": 2}
)
"""Key → the usual part of a thickness, width or height: a half, a third. Common practice, no source.

A groove, a rabbet or a housing goes so deep into a board, a tenon so far into a stile or a leg. The lap of a rabbeted
corner is what is left of the rabbeted board. Bracket feet rise to half the height of the base.
"""

PIN_HOLES = 3
"""Holes in a row for the pins of a loose shelf. Common practice, no source."""

TENONS = 3
"""Through tenons at each end of a divider. Common practice, no source."""

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
    """Usual depth of a groove, rabbet or housing in a board of this thickness, and other parts of a length.

    Rounded down to a whole 1/64 in or 0.1 mm; in a board too thin for that, down to a nanometre.
    """
    share, step = _SHARES[key], _FINEST[unit].step_nm
    return Nm(thickness // share // step * step or max(1, thickness // share))


def usual_side_clearance(runners: RunnerKind | None, unit: Unit) -> Nm:
    """Usual space at each side of a drawer: what bought slides need, else what lets it run."""
    return usual_length("slides_clearance" if runners is RunnerKind.SLIDES else "side_clearance", unit)


def usual_runner(runners: RunnerKind, rails: Nm, unit: Unit) -> tuple[Nm, Nm]:
    """Usual thickness and width of wooden runners; those level with the rails are as thick as these."""
    if runners is RunnerKind.WOOD:
        return rails, usual_length("runner_width", unit)
    return usual_length("side_runner", unit), usual_length("side_runner_height", unit)


def usual_tenon(stile: Nm, groove: Nm, unit: Unit) -> Nm:
    """Usual length of the tenons of a frame: half the width of its stiles, and at least the depth of its groove."""
    return max(groove, usual_depth("tenon", stile, unit))


def grooved(front: Nm, side: Nm, back: Nm, goes: BottomGoes, slip: Nm | None) -> Nm:
    """Thickness of the thinnest board that has the groove for a bottom.

    Sides with slips have no groove of their own, and below a bottom that slides in the back has none.
    """
    return min([front, side if slip is None else slip, *([back] if goes is BottomGoes.ALL_ROUND else [])])


def usual_divider(rails: object, frames: object, shelves: object) -> DividerKind:
    """What usually stands between tiers: what the carcase has, asked for in this order; a rail where it has none."""
    if rails is None and frames is not None:
        return DividerKind.FRAME
    return DividerKind.SHELF if rails is None and shelves is not None else DividerKind.RAIL
