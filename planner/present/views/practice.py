"""Practice joints: what to cut from offcuts before the real boards, and what each error means."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from planner.domain.operation import Machine
from planner.domain.plan import Pass, Plan, PracticeJoint
from planner.lengths import Grid, show_length
from planner.plan.cautions import cautions
from planner.plan.fit import WHAT_ERRORS_MEAN
from planner.present.table import Cell, Column, Group, Kind, Table, setting

HOW = (
    "Cut both offcuts from the same wood as the real boards. Mark outside face, reference edge and ends as on those.",
    "Pins on end B, outside face to you: reference edge at your LEFT. Trace the tails on end A and saw them.",
    "Each needs both fences once more; these walks and passes are not in the counts of the sled settings.",
    "Put it together dry, and measure: pins against the tail board's face, tails against the pin board's face, gaps.",
)


def practice(plan: Plan) -> Table:
    """One row for each practice joint."""
    unit = plan.project.unit
    return Table(
        title="Practice joints",
        grid=plan.project.grid,
        columns=(
            Column(heading="Made", kind=Kind.TICK),
            Column(heading="Practice joint", strong=True),
            Column(heading="Sled"),
            Column(heading=f"Bit height, {unit}", strong=True),
            Column(heading="Pin board thick", kind=Kind.LENGTH),
            Column(heading="Tail board thick", kind=Kind.LENGTH),
            Column(heading="Width", kind=Kind.PLACE),
            Column(heading="Length at least", kind=Kind.LENGTH),
            Column(heading=f"Fence, (socket) and mark from your left, {unit}", kind=Kind.MARKS),
            Column(heading="Stands for", kind=Kind.MARKS),
        ),
        groups=(Group(rows=tuple(_row(each, plan.project.grid) for each in plan.practice)),),
        notes=(*HOW, *(f"{seen}: {means}" for seen, means in WHAT_ERRORS_MEAN)),
        cautions=cautions(Machine.ROUTER_TABLE_SLED) if plan.practice else (),
    )


def _row(each: PracticeJoint, grid: Grid) -> tuple[Cell, ...]:
    return (
        None,
        each.joint.mark,
        each.joint.sled,
        setting(each.bit_height_nm, grid),
        each.joint.pin_thickness_nm,
        each.joint.tail_thickness_nm,
        each.joint.width_nm,
        each.length_nm,
        (
            *_marks(each.first_fence.upper(), each.first, grid),
            *_marks(each.first_fence.other.upper(), each.second, grid),
        ),
        each.stands_for,
    )


def _marks(fence: str, passes: Sequence[Pass], grid: Grid) -> Iterator[str]:
    for one in passes:
        yield f"{fence} ({one.socket}) {show_length(one.mark_nm, grid.fine)}"
