"""Between the ``pins`` and ``joint`` tables of a file and the spacing of a ring or a corner.

Tables lie over each other: a joint's over its ring's, that over the project's. Each key counts as the topmost table
says it that says it at all. Two things hold together: a ratio goes with the spread beside it; and pins are listed, or
shared out, as the topmost table says that gives places, or tails or a spread.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from decimal import Decimal
from typing import TYPE_CHECKING, Any

from planner.domain.ring import Corner, Ring
from planner.domain.spacing import Spacing
from planner.domain.words import EdgeName, Spread
from planner.intake.sharing import Table, differences
from planner.intake.usual import usual_length
from planner.lengths import Nm, Unit, write_length

if TYPE_CHECKING:
    from planner.intake.file_pins import JointsTable, PinsTable

JOINTS = ("J1", "J2", "J3", "J4")
"""Keys of a ``joint`` table, in the order of a ring's corners."""

USUAL = {"tails": "choose", "spread": Spread.EVEN, "measured_from": EdgeName.REFERENCE, "alike": False}
"""What counts for keys that aren't lengths when no table says them."""

# --- reading ------------------------------------------------------------------------------------------------


def spacing_of(tables: Sequence[PinsTable], unit: Unit) -> Spacing:
    """The spacing that tables give together, the topmost first."""

    def topmost(*keys: str) -> PinsTable | None:
        return next((table for table in tables if any(getattr(table, key) is not None for key in keys)), None)

    def said(key: str) -> Any:  # noqa: ANN401 - each key has a kind of its own
        table = topmost(key)
        return USUAL[key] if table is None else getattr(table, key)

    def length(key: str) -> Nm:
        table = topmost(key)
        return usual_length(key, unit) if table is None else getattr(table, key)

    decides, spreads = topmost("places", "tails", "spread"), topmost("spread")
    shared = Spacing(
        half_pin_nm=length("half_pin"),
        pin_nm=length("pin"),
        tails=None if said("tails") == "choose" else said("tails"),
        tail_nm=length("tail"),
        greatest_tail_nm=length("greatest_tail"),
        spread=Spread(said("spread")),
        ratio=None if spreads is None else spreads.ratio,
        measured_from=EdgeName(said("measured_from")),
        alike=said("alike"),
    )
    if decides is None or decides.places is None:
        return shared
    return replace(shared, tails=None, spread=Spread.LISTED, ratio=None, places=tuple(decides.places))


def with_own_spacings(ring: Ring, joints: Sequence[JointsTable], pins: Sequence[PinsTable], unit: Unit) -> Ring:
    """The ring with the spacings that joints have of their own.

    Args:
        ring: without any such.
        joints: what is said of its joints, the topmost table first.
        pins: what is said of the whole ring, likewise.
        unit: unit of the usual lengths.
    """

    def corner(name: str, as_usual: Corner) -> Corner:
        own = [table for joint in joints if (table := getattr(joint, name)) is not None]
        return replace(as_usual, spacing=spacing_of([*own, *pins], unit)) if own else as_usual

    first, second, third, fourth = map(corner, JOINTS, ring.corners)
    return replace(ring, corners=(first, second, third, fourth))


# --- writing ------------------------------------------------------------------------------------------------


def pins_table(spacing: Spacing, unit: Unit) -> Table:
    """All keys of a spacing; one that is graduated has spread and ratio as a pair, to be shared or said over as one."""
    listed = spacing.spread is Spread.LISTED
    return {
        "half_pin": write_length(spacing.half_pin_nm, unit),
        "pin": write_length(spacing.pin_nm, unit),
        **({"places": _places(spacing, unit)} if listed else {"tails": spacing.tails or "choose"}),
        "tail": write_length(spacing.tail_nm, unit),
        "greatest_tail": write_length(spacing.greatest_tail_nm, unit),
        **({} if listed else {"spread": _spread(spacing)}),
        "measured_from": str(spacing.measured_from),
        "alike": spacing.alike,
    }


def _places(spacing: Spacing, unit: Unit) -> tuple[tuple[str, ...], ...]:
    return tuple(tuple(write_length(end, unit) for end in place) for place in spacing.places)


def _spread(spacing: Spacing) -> str | tuple[str, Decimal]:
    ratio = spacing.ratio
    return str(spacing.spread) if ratio is None else (str(spacing.spread), Decimal(ratio.numerator) / ratio.denominator)


def usual_pins(unit: Unit) -> Table:
    """All keys of a spacing of which nothing is said."""
    return pins_table(spacing_of([], unit), unit)


def joints_table(ring: Ring, unit: Unit) -> Table:
    """What is different about the joints with a spacing of their own; a joint stands here even if nothing is."""
    ring_pins = pins_table(ring.spacing, unit)
    return {
        name: differences(pins_table(corner.spacing, unit), ring_pins)
        for name, corner in zip(JOINTS, ring.corners, strict=True)
        if corner.spacing is not None
    }


def spelled_out(said: Any) -> Any:  # noqa: ANN401 - any value of a file
    """A file, or part of one, with each spread beside its ratio and nothing in it but tables, lists and values."""
    if isinstance(said, list | tuple):
        return [spelled_out(each) for each in said]
    if not isinstance(said, Mapping):
        return said
    apart: Table = {}
    for key, value in said.items():
        if key == "spread" and isinstance(value, tuple):
            apart["spread"], apart["ratio"] = value
        else:
            apart[key] = spelled_out(value)
    return apart
