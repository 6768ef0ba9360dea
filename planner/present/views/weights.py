"""What the piece and its parts weigh, and where they balance."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from planner.domain.plan import Plan
from planner.domain.weights import Part, Weight
from planner.lengths import Grid, Nm, Unit
from planner.present.table import Cell, Column, Group, Kind, Table
from planner.quantities import show_mass

_STEPS = {Unit.INCH: Grid.IN_16.step_nm * 2, Unit.MM: Grid.MM_TENTH.step_nm * 10}
_GREATEST_FIRST = (Part.PIECE, Part.REST, Part.DRAWER, Part.DOOR, Part.BOARD)


def weights(plan: Plan) -> Table:
    """One row for each part of known weight, pieces before drawers and doors before boards; empty if none is known."""
    unit = plan.project.unit
    rows = tuple(_row(each, unit) for part in _GREATEST_FIRST for each in plan.weights.of if each.part is part)
    unknown = ", ".join(plan.weights.unknown)
    return Table(
        title="Weights",
        grid=plan.project.grid,
        columns=(
            Column(heading="Mark"),
            Column(heading="Part"),
            Column(heading="Empty"),
            Column(heading="Filled"),
            Column(heading="Balance from the left", kind=Kind.LENGTH),
            Column(heading="Balance behind the front", kind=Kind.LENGTH),
            Column(heading="Balance above the lower edge", kind=Kind.LENGTH),
        ),
        groups=(Group(rows=rows),) if rows else (),
        notes=(
            "From published averages of the timbers, less the cuts in each board; without glue, finish and hardware.",
            "Balance: where it balances, to 1/8 in or 1 mm, from the lower left front corner above the base.",
            *((f"Not weighed, since no species is named: {unknown}.",) if unknown else ()),
        ),
    )


def _row(weight: Weight, unit: Unit) -> tuple[Cell, ...]:
    filled = show_mass(weight.filled_kg, unit) if weight.filled_kg > weight.kg else ""
    return (weight.mark, weight.part.value, show_mass(weight.kg, unit), filled, *_about(weight.centre, unit))


def _about(centre: tuple[Nm, Nm, Nm], unit: Unit) -> Iterator[Nm]:
    """An estimate has no use for the finest steps."""
    step = _STEPS[unit]
    return (Nm(round(Fraction(place, step)) * step) for place in centre)
