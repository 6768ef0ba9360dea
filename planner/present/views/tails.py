"""Tails: which pins each end is traced from, and its saw cuts, grouped by set-up of the bandsaw."""

from __future__ import annotations

from collections.abc import Iterator

from planner.domain.marks import end_mark
from planner.domain.operation import Machine
from planner.domain.plan import Plan
from planner.domain.tail import SawCut, TailEnd, TailSetting
from planner.lengths import Grid, show_length
from planner.plan.cautions import cautions
from planner.plan.fit import HOW_IT_SHOULD_FIT, WHEN_IT_DOES_NOT
from planner.present.table import Cell, Column, Group, Kind, Table, setting
from planner.present.views.joints import slope_words

HOW_TO_TRACE = (
    "Trace each end from its own pins and from no others: the joint's mark stands on both.",
    "Lay the tail board INSIDE FACE UP. Stand the pin board on it, inside face on the baseline, towards the middle.",
    "Reference edges flush. Draw round the pins, then draw the lines on to the end.",
)
HOW_TO_SAW = (
    "Saw INSIDE FACE UP, the end pointing away from you. Cuts are counted, and measured at the end, from your left.",
    "Saw the traced lines; the places are to check by. Keep the kerf in the waste.",
    "Then nibble out the waste to the baseline, and saw the shoulders for the half-pins, square to the edge.",
)


def tails(plan: Plan) -> Table:
    """One row for each tail end at each set-up."""
    grid, unit = plan.project.grid, plan.project.unit
    return Table(
        title="Tails",
        grid=grid,
        columns=(
            Column(heading="Sawn", kind=Kind.TICK),
            Column(heading="Board", strong=True),
            Column(heading="End", strong=True),
            Column(heading="Trace from", strong=True),
            Column(heading="Joint"),
            Column(heading=f"Baseline, {unit}"),
            Column(heading="Reference edge at your", strong=True),
            Column(heading=f"(Cut) place at the end, side of the waste, {unit}", kind=Kind.MARKS),
            Column(heading="Throat", kind=Kind.PLACE),
        ),
        groups=tuple(_group(plan, at) for at in plan.tails),
        notes=(*HOW_TO_TRACE, *HOW_TO_SAW, *_fit(plan)),
    )


def _group(plan: Plan, at: TailSetting) -> Group:
    grid = plan.project.grid
    return Group(
        heading=f"Set-up {at.number}: slope {slope_words(at.slope)}, "
        f"boards {show_length(at.thickness_nm, grid, with_unit=True)} thick, cuts that lean {at.leans.upper()} going "
        f"away, throat at least {setting(at.throat_nm, grid)} {grid.unit}.",
        cautions=cautions(Machine.BANDSAW),
        rows=tuple(_row(at, end, grid) for end in at.ends),
    )


def _row(at: TailSetting, end: TailEnd, grid: Grid) -> tuple[Cell, ...]:
    return (
        None,
        end.board,
        end.end.value,
        end_mark(end.trace_from, end.trace_from_end),
        end.joint,
        setting(end.baseline_nm, grid),
        end.reference_edge.upper(),
        tuple(_cuts(end, at.cuts(end), grid)),
        end.throat_nm,
    )


def _cuts(end: TailEnd, made_here: tuple[SawCut, ...], grid: Grid) -> Iterator[str]:
    for number, cut in enumerate(end.saw_cuts, 1):
        if cut in made_here:
            yield f"({number}) {show_length(cut.at_end_nm, grid.fine)} {cut.waste}"


def _fit(plan: Plan) -> Iterator[str]:
    boards = {board.mark: board.material for board in plan.boards}
    used = {plan.project.material(boards[joint.tail_board]).hardness for joint in plan.joints}
    yield from (f"Fit in {hardness} wood: {HOW_IT_SHOULD_FIT[hardness]}" for hardness in sorted(used))
    yield from (f"{seen}: {remedy}" for seen, remedy in WHEN_IT_DOES_NOT)
