"""Tails: which pins each end is traced from, and its saw cuts, grouped by set-up of the bandsaw."""

from __future__ import annotations

from collections.abc import Iterator

from planner.domain.marks import end_mark
from planner.domain.plan import Plan
from planner.domain.tail import SawCut, TailEnd, TailSetting
from planner.lengths import Grid, show_length
from planner.plan import tasks
from planner.plan.fit import HOW_IT_SHOULD_FIT, WHEN_IT_DOES_NOT
from planner.present.table import Cell, Column, Group, Kind, Table, setting
from planner.present.views.heed import heed_at
from planner.present.views.joints import slope_words

HOW_TO_TRACE = (
    "Trace each end from its own pins and from no others: the joint's mark stands on both.",
    "Lay the tail board INSIDE FACE UP. Stand the pin board's cut end on it, its INSIDE face on the baseline.",
    "So its inside face looks to the middle of the tail board, its outside face to the tail board's end.",
    "Reference edges flush. Draw round the pins, then draw the lines square across the end.",
)
HOW_TO_SAW = (
    "Saw INSIDE FACE UP, the end pointing away from you. Cuts are counted, and measured at the end, from your left.",
    "The saw's table stays square; a wedge of the slope or a mitre gauge leads the board along the lean.",
    "Saw the traced lines; the places are to check by. Keep the kerf in the waste.",
    "Saw all ends at one lean, then all at the other. Then nibble out the waste to the baseline.",
    "Last, saw the shoulders for the half-pins, square to the edge. 5 of 12: straight cuts here, and in all.",
)


def tails(plan: Plan) -> Table:
    """One row for each tail end at each set-up."""
    grid, unit = plan.project.grid, plan.project.unit
    return Table(
        title="Tails",
        grid=grid,
        columns=(
            Column(heading="Sawn", kind=Kind.TICK),
            Column(heading="Set-up, lean and waste", repeats=True),
            Column(heading="Board", strong=True),
            Column(heading="End", strong=True),
            Column(heading="Trace from", strong=True),
            Column(heading="Joint"),
            Column(heading=f"Baseline, {unit}"),
            Column(heading="Reference edge at your", strong=True),
            Column(heading=f"(Cut) place at the end, from your left, {unit}", kind=Kind.MARKS),
            Column(heading="Straight cuts"),
            Column(heading="Throat", kind=Kind.PLACE),
        ),
        groups=tuple(_group(plan, at) for at in plan.tails),
        notes=(*HOW_TO_TRACE, *HOW_TO_SAW, *_fit(plan)),
        page_per_group=True,
    )


def _group(plan: Plan, at: TailSetting) -> Group:
    """A set-up; its waste is on the side to which its cuts lean, since a tail is widest at its end."""
    grid, side = plan.project.grid, at.leans.upper()
    thick, throat = show_length(at.thickness_nm, grid), setting(at.throat_nm, grid)
    return Group(
        heading=f"Set-up {at.number}: INSIDE FACE UP, end away from you, cuts that lean {side} going away, waste at "
        f"the {side} of each. Slope {slope_words(at.slope)}, boards {thick} {grid.unit} thick, throat {throat} "
        f"{grid.unit} or more.",
        cautions=heed_at((plan,), tasks.SAW, {end_mark(end.board, end.end) for end in at.ends}),
        rows=tuple(_row(at, end, grid) for end in at.ends),
    )


def _row(at: TailSetting, end: TailEnd, grid: Grid) -> tuple[Cell, ...]:
    made_here = at.cuts(end)
    return (
        None,
        f"{at.number} {at.leans.upper()}",
        end.board,
        end.end.value,
        end_mark(end.trace_from, end.trace_from_end),
        end.joint,
        setting(end.baseline_nm, grid),
        end.reference_edge.upper(),
        tuple(_cuts(end, made_here, grid)),
        f"{len(made_here)} of {end.straight_cuts}",
        end.throat_nm,
    )


def _cuts(end: TailEnd, made_here: tuple[SawCut, ...], grid: Grid) -> Iterator[str]:
    for number, cut in enumerate(end.saw_cuts, 1):
        if cut in made_here:
            yield f"({number}) {show_length(cut.at_end_nm, grid.fine)}"
    yield from (f"square {show_length(place, grid.fine)}" for place in end.square_cuts_nm)


def _fit(plan: Plan) -> Iterator[str]:
    """How the joints of each wood that carries tails should fit, and what to do where they don't."""
    boards = {board.mark: board.material for board in plan.boards}
    for material in map(plan.project.material, dict.fromkeys(boards[joint.tail_board] for joint in plan.joints)):
        yield f"Fit in {material.name}, a {material.hardness} wood: {HOW_IT_SHOULD_FIT[material.hardness]}"
    yield from (f"{seen}: {remedy}" for seen, remedy in WHEN_IT_DOES_NOT)
