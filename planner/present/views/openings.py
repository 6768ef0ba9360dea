"""The openings of every carcase and the drawers that fill them."""

from __future__ import annotations

from collections.abc import Iterator

from planner.domain.marks import board_mark
from planner.domain.plan import OpeningSize, Plan
from planner.domain.words import Role
from planner.lengths import Nm
from planner.present.table import Cell, Column, Group, Kind, Table


def openings(plan: Plan) -> Table:
    """One row for each opening, column by column, from the top down."""
    return Table(
        title="Openings",
        grid=plan.project.grid,
        columns=(
            Column(heading="Carcase"),
            Column(heading="Column", kind=Kind.COUNT),
            Column(heading="From the top", kind=Kind.COUNT),
            Column(heading="Drawer"),
            Column(heading="Opening width", kind=Kind.LENGTH),
            Column(heading="Opening height", kind=Kind.LENGTH),
            Column(heading="Opening depth", kind=Kind.LENGTH),
            Column(heading="Drawer width", kind=Kind.LENGTH),
            Column(heading="Drawer height", kind=Kind.LENGTH),
            Column(heading="Drawer depth", kind=Kind.LENGTH),
        ),
        groups=(Group(rows=tuple(_rows(plan))),) if plan.openings else (),
        notes=("Columns are counted from the left. Drawer sizes are over the outside, once pins and tails are flush.",),
    )


def _rows(plan: Plan) -> Iterator[tuple[Cell, ...]]:
    boards = {board.mark: board for board in plan.boards}
    for opening in plan.openings:
        front = boards[board_mark(opening.drawer, Role.FRONT)]
        side = boards[board_mark(opening.drawer, Role.RIGHT)]
        proud = 2 * plan.project.proud_nm
        yield (
            *_place(opening),
            opening.width_nm,
            opening.height_nm,
            opening.depth_nm,
            Nm(front.length_nm - proud),
            front.width_nm,
            Nm(side.length_nm - proud),
        )


def _place(opening: OpeningSize) -> tuple[Cell, ...]:
    return opening.carcase, opening.column, opening.tier, opening.drawer
