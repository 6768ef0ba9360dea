"""Every board with its size and what its two ends are joined to."""

from __future__ import annotations

from collections.abc import Iterator

from planner.derive.labels import held_in
from planner.domain.marks import end_mark
from planner.domain.plan import BoardSize, Joint, Plan
from planner.domain.words import Carries, End
from planner.present.table import Cell, Column, Group, Kind, Table
from planner.present.views.by_box import by_box


def boards(plan: Plan) -> Table:
    """One row for each board, box by box."""
    into = held_in({board.mark: board for board in plan.boards}, plan.features)
    ends = {end: (words,) for end, words in into.items()} | dict(_joined_ends(plan.joints))

    def row(board: BoardSize) -> tuple[Cell, ...]:
        return (
            board.mark,
            str(board.role),
            board.length_nm,
            board.width_nm,
            board.thickness_nm,
            board.material,
            *(ends.get(end_mark(board.mark, end), "") for end in End),
        )

    return Table(
        title="Boards",
        grid=plan.project.grid,
        columns=(
            Column(heading="Board"),
            Column(heading="Role"),
            Column(heading="Length", kind=Kind.LENGTH),
            Column(heading="Width", kind=Kind.LENGTH),
            Column(heading="Thickness", kind=Kind.LENGTH),
            Column(heading="Material"),
            Column(heading="End A", kind=Kind.MARKS),
            Column(heading="End B", kind=Kind.MARKS),
        ),
        groups=tuple(
            Group(heading=heading, rows=tuple(row(board) for board in found))
            for heading, found in by_box(plan, plan.boards)
        ),
        notes=("Outside face towards you, reference edge at the bottom: end A is at your left, end B at your right.",),
    )


def _joined_ends(joints: tuple[Joint, ...]) -> Iterator[tuple[str, tuple[str, ...]]]:
    """What every joined end carries, in which joint, and its mate."""
    for joint in joints:
        pin, tail = end_mark(joint.pin_board, joint.pin_end), end_mark(joint.tail_board, joint.tail_end)
        yield pin, (f"{joint.mark} {Carries.PINS}", f"meets {tail}")
        yield tail, (f"{joint.mark} {Carries.TAILS}", f"meets {pin}")
