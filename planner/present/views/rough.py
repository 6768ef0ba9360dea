"""Rough sizes: what to saw out of the wood before anything is planed."""

from __future__ import annotations

from collections.abc import Iterable

from planner.domain.plan import Plan
from planner.domain.words import MaterialKind
from planner.lengths import show_length
from planner.plan.rough import RoughPart, Use, stock_of
from planner.plan.staves import in_staves
from planner.plan.stock_jobs import Stuff, by_stuff
from planner.present.table import Cell, Column, Group, Kind, Table
from planner.present.views.cut_list import KIND_WORDS

ROUGH = "These sizes are for rough wood: longer for trimming, wider for jointing, thick enough to plane both faces."
SOURCE = "They go by common practice, or by what [stock] in the project file says."
LET_LIE = "Wood moves when it is sawn: let rough parts lie for some days, then plane them."
STAVES = "A mark with a stroke (C-top/1) is a stave: glue the staves of one mark to a panel, then plane it."


def rough(plan: Plan) -> Table:
    """One row for each rough size, by timber and thickness; staves where the maker's greatest stave asks for them."""
    stuffs = {
        stuff: [each for part in parts for each in in_staves(part, plan.project, None)]
        for stuff, parts in by_stuff(plan).items()
    }
    staves = any(part.use is Use.STAVE for parts in stuffs.values() for part in parts)
    return Table(
        title="Rough sizes",
        grid=plan.project.grid,
        columns=(
            Column(heading="Cut", kind=Kind.TICK),
            Column(heading="Quantity", kind=Kind.COUNT, summed=True, strong=True),
            Column(heading="Rough length", kind=Kind.LENGTH, strong=True),
            Column(heading="Rough width", kind=Kind.LENGTH, strong=True),
            Column(heading="For", repeats=False),
            Column(heading="Finished, as a whole"),
            Column(heading="Marks", kind=Kind.MARKS),
        ),
        groups=tuple(
            Group(heading=stuff_words(plan, stuff), rows=_rows(plan, parts)) for stuff, parts in stuffs.items()
        ),
        notes=(ROUGH, SOURCE, LET_LIE, *((STAVES,) if staves else ()), _sawn_with(plan)),
    )


def _sawn_with(plan: Plan) -> str:
    stock, grid = stock_of(plan.project), plan.project.grid
    ends, edges = (show_length(each, grid, with_unit=True) for each in (stock.end_trim_nm, stock.edge_trim_nm))
    return f"Of each rough board, {ends} at both ends (checks) and {edges} at both edges don't count."


def stuff_words(plan: Plan, stuff: Stuff) -> str:
    """What to ask for."""
    thick = show_length(stuff.finished_nm, plan.project.grid, with_unit=True)
    if stuff.kind is MaterialKind.SHEET:
        return f"{stuff.material}, {thick} thick, {KIND_WORDS[stuff.kind]}"
    least = show_length(stuff.least_nm, plan.project.grid, with_unit=True)
    sold = stuff.sold.name if stuff.sold else f"{least} thick"
    return f"{stuff.material}, {sold}: boards up to {thick} thick, rough wood at least {least}"


def _rows(plan: Plan, parts: Iterable[RoughPart]) -> tuple[tuple[Cell, ...], ...]:
    alike: dict[tuple[object, ...], list[RoughPart]] = {}
    for part in parts:
        alike.setdefault((-part.length_nm, -part.width_nm, part.use, part.finished), []).append(part)
    return tuple(_row(plan, alike[size]) for size in sorted(alike, key=lambda size: size[:2]))


def _row(plan: Plan, same: list[RoughPart]) -> tuple[Cell, ...]:
    first, grid = same[0], plan.project.grid
    finished = " × ".join(show_length(size, grid) for size in first.finished)
    marks = tuple(part.mark for part in same)
    return None, len(same), first.length_nm, first.width_nm, first.use.value, f"{finished} {grid.unit}", marks
