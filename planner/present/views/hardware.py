"""What is to be bought besides wood."""

from __future__ import annotations

from planner.domain.hardware import Hardware
from planner.domain.plan import Plan
from planner.lengths import Grid, show_length
from planner.present.table import Column, Group, Kind, Table


def hardware(plan: Plan) -> Table:
    """One row for each thing to buy; empty where nothing is needed."""
    grid = plan.project.grid.fine
    rows = tuple((each.count, each.kind.value, _sizes(each, grid), each.use, each.marks) for each in plan.hardware)
    return Table(
        title="Hardware",
        grid=plan.project.grid,
        columns=(
            Column(heading="Quantity", kind=Kind.COUNT, strong=True),
            Column(heading="What", strong=True),
            Column(heading="Size"),
            Column(heading="Use"),
            Column(heading="For", kind=Kind.MARKS),
        ),
        groups=(Group(rows=rows),) if rows else (),
        notes=(
            "Counts go by common practice; heavy doors and loads need more.",
            "Sizes not said are yours to choose. Have hinges, slides and pins in hand before you cut for them.",
            "No screw may be so long that its point comes out: leave a third of the board it goes into.",
        ),
    )


def _sizes(each: Hardware, grid: Grid) -> str:
    return ", ".join(f"{name} {show_length(length, grid, with_unit=True)}" for name, length in each.sizes)
