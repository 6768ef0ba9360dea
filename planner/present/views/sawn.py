"""What becomes of the boards of a closed box once its lid is sawn off."""

from __future__ import annotations

from planner.domain.plan import Plan
from planner.present.table import Column, Group, Kind, Table


def sawn(plan: Plan) -> Table:
    """One row for each part; empty where nothing is sawn open."""
    material = {board.mark: board.material for board in plan.boards}
    rows = tuple(
        (
            part.mark,
            part.board,
            "lid" if part.of_lid else "box",
            part.length_nm,
            part.width_nm,
            part.thickness_nm,
            material[part.board],
        )
        for part in plan.sawn
    )
    return Table(
        title="After sawing",
        grid=plan.project.grid,
        columns=(
            Column(heading="Part"),
            Column(heading="Sawn from"),
            Column(heading="Of the"),
            Column(heading="Length", kind=Kind.LENGTH),
            Column(heading="Width", kind=Kind.LENGTH),
            Column(heading="Thickness", kind=Kind.LENGTH),
            Column(heading="Material"),
        ),
        groups=(Group(rows=rows),) if rows else (),
        notes=("Sizes once the corners are planed flush and both sawn edges are planed to the line.",),
    )
