"""The openings of every carcase and the drawers that fill them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from planner.domain.marks import board_mark
from planner.domain.plan import BoardSize, OpeningSize, Plan
from planner.domain.solid import UP
from planner.domain.space import LooseShelves
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
            Column(heading="Opening"),
            Column(heading="Holds"),
            Column(heading="Opening width", kind=Kind.LENGTH),
            Column(heading="Opening height", kind=Kind.LENGTH),
            Column(heading="Opening depth", kind=Kind.LENGTH),
            Column(heading="Drawer width", kind=Kind.LENGTH),
            Column(heading="Drawer height", kind=Kind.LENGTH),
            Column(heading="Drawer depth", kind=Kind.LENGTH),
        ),
        groups=(Group(rows=tuple(_rows(plan))),) if plan.openings else (),
        notes=(
            "C-2.1 is the second column from the left, its first tier from the top; further figures go on inwards.",
            "Drawer sizes are over the outside, once pins and tails are flush.",
        ),
    )


def _rows(plan: Plan) -> Iterator[tuple[Cell, ...]]:
    boards = {board.mark: board for board in plan.boards}
    for opening in plan.openings:
        clear = (opening.width_nm, opening.height_nm, opening.depth_nm)
        yield (opening.carcase, opening.mark, holds(opening), *clear, *_drawer(opening, boards))


def holds(opening: OpeningSize) -> str:
    """What is in an opening, in a word or two."""
    if opening.drawer:
        return opening.drawer
    held = opening.space.holds
    if isinstance(held, LooseShelves):
        return f"{held.count} loose shelves" if held.count > 1 else "1 loose shelf"
    return "nothing"


def _drawer(opening: OpeningSize, boards: Mapping[str, BoardSize]) -> tuple[Cell, ...]:
    """Outside sizes of the drawer, if one is there."""
    if not opening.drawer:
        return None, None, None
    front = boards[board_mark(opening.drawer, Role.FRONT)].place
    side = boards[board_mark(opening.drawer, Role.RIGHT)].place
    left = boards[board_mark(opening.drawer, Role.LEFT)].place
    return Nm(side.right[1] - left.right[0]), front.size(UP), Nm(max(front.back[1], side.back[1]) - front.back[0])
