"""Practice joints: what to cut from offcuts before the real boards, and what each error means."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from planner.domain.plan import Pass, Plan, PracticeJoint
from planner.domain.words import Side
from planner.lengths import Grid, show_length
from planner.plan import tasks
from planner.plan.fit import WHAT_ERRORS_MEAN
from planner.present.table import Cell, Column, Group, Kind, Table, setting
from planner.present.views.heed import heed_at
from planner.present.views.passes import AGAIN, pass_marks

HOW = (
    "Cut both offcuts from the same wood as the real boards. Mark outside face, reference edge and ends as on those.",
    "Pins on end B, outside face to you: reference edge at your LEFT. Trace the tails on end A and saw them.",
    AGAIN,
    "Each needs both fences once more; these walks and passes are not in the counts of the sled settings.",
    "Measure the walls of the sockets against their lines, on the outside face. Then put it together dry.",
)


def practice(plan: Plan) -> Table:
    """One row for each practice joint."""
    unit, grid = plan.project.unit, plan.project.grid
    return Table(
        title="Practice joints",
        grid=grid,
        columns=(
            Column(heading="Made", kind=Kind.TICK),
            Column(heading="Practice joint", strong=True),
            Column(heading="Sled"),
            Column(heading=f"Bit height and pin baseline, {unit}", strong=True),
            Column(heading=f"Tail baseline, {unit}", strong=True),
            Column(heading="Pin board thick", kind=Kind.LENGTH),
            Column(heading="Tail board thick", kind=Kind.LENGTH),
            Column(heading="Width", kind=Kind.PLACE),
            Column(heading="Length at least", kind=Kind.LENGTH),
            Column(heading=f"Fence, (socket) and mark from your left, {unit}", kind=Kind.MARKS),
            Column(heading="Stands for", kind=Kind.MARKS),
        ),
        groups=(Group(rows=tuple(_row(each, grid) for each in plan.practice)),),
        notes=(*HOW, _planned(plan), *(f"{seen}: {means}" for seen, means in WHAT_ERRORS_MEAN)),
        cautions=heed_at((plan,), tasks.PRACTICE, {each.joint.mark for each in plan.practice}),
    )


def _planned(plan: Plan) -> str:
    proud = show_length(plan.project.proud_nm, plan.project.grid.fine, with_unit=True)
    return f"Then measure whether pins and tails stand proud as planned, {proud}, and every gap."


def _row(each: PracticeJoint, grid: Grid) -> tuple[Cell, ...]:
    return (
        None,
        each.joint.mark,
        each.joint.sled,
        setting(each.bit_height_nm, grid),
        setting(each.joint.tail_baseline_nm, grid),
        each.joint.pin_thickness_nm,
        each.joint.tail_thickness_nm,
        each.joint.width_nm,
        each.length_nm,
        (
            *_marks(each.first_fence, each.first, grid),
            *_marks(each.first_fence.other, each.second, grid),
        ),
        each.stands_for,
    )


def _marks(fence: Side, passes: Sequence[Pass], grid: Grid) -> Iterator[str]:
    return (f"{fence.upper()} {mark}" for mark in pass_marks(passes, grid))
