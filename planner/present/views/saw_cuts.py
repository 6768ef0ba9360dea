"""The cutting plan as saw cuts, setting by setting."""

from __future__ import annotations

from collections.abc import Iterator

from planner.domain.plan import Plan
from planner.domain.stock import SawWay
from planner.lengths import show_length
from planner.plan.purchase import Need, Purchase
from planner.plan.saw_cuts import SawCut, SawSetting, offcuts, saw_settings
from planner.present.table import Cell, Column, Group, Kind, Table, setting
from planner.present.views.rough import stuff_words
from planner.stock.pieces import Kind as Becomes
from planner.stock.pieces import Layout, Piece

HOW = (
    "Write the mark on each board, and the name on each piece as it is sawn off: BOARD-1 is the first strip of BOARD.",
    "Sizes are rough. Within a setting, cut in the order listed; rounds follow each other, so no cut comes too early.",
)
CAUTIONS = (
    "Rough wood isn't straight: joint an edge before it runs along the fence. Rip a twisted board on the bandsaw.",
    "Riving knife and guard on, push sticks for narrow strips, eyes and ears protected.",
    "The machine's manual and your local rules have the last word.",
)


def saw_cuts(plan: Plan, purchase: Purchase) -> Table:
    """One row for each piece sawn off; empty where no wood is known."""
    groups = tuple(group for need in purchase.needs if need.cutting for group in _groups(plan, need))
    return Table(
        title="Saw cuts",
        grid=plan.project.grid,
        columns=(
            Column(heading="Sawn", kind=Kind.TICK),
            Column(heading="From", strong=True),
            Column(heading="Begins at", kind=Kind.PLACE),
            Column(heading="Gives", strong=True),
            Column(heading="Length", kind=Kind.LENGTH),
            Column(heading="Width", kind=Kind.LENGTH),
            Column(heading="Then"),
        ),
        groups=groups,
        notes=HOW,
        cautions=CAUTIONS if groups else (),
    )


def _groups(plan: Plan, need: Need) -> Iterator[Group]:
    if need.cutting is None:
        return
    keep = tuple(_keep(plan, *each) for each in offcuts(need.cutting.answer.plan.layouts))
    wood = stuff_words(plan, need.stuff).partition(":")[0]
    for each in saw_settings(need.cutting.answer.plan):
        yield Group(
            heading=f"{wood}, {each.number}: {_words(plan, each)}",
            notes=(f"Offcuts to keep: {'; '.join(keep)}.",) if keep and each.number == 1 else (),
            rows=tuple(_row(cut) for cut in each.cuts),
        )


def _keep(plan: Plan, layout: Layout, piece: Piece) -> str:
    length, width = (show_length(size, plan.project.grid) for size in (piece.length_nm, piece.width_nm))
    return f"{length} × {width} {plan.project.grid.unit} of {layout.board}"


def _words(plan: Plan, each: SawSetting) -> str:
    grid = plan.project.grid
    if each.size_nm is None:
        return f"trim and cut out defects, {each.way}s to marks"
    if each.way is SawWay.RIP:
        return f"RIP, fence {setting(each.size_nm, grid)} {grid.unit}"
    return f"CROSSCUT, stop {show_length(each.size_nm, grid.fine)} {grid.unit}"


def _row(cut: SawCut) -> tuple[Cell, ...]:
    then = (
        "to be cut further" if cut.kind is Becomes.DIVIDED else "a part, across the sheet" if cut.turned else "a part"
    )
    return None, cut.of, cut.place_nm, cut.gives, cut.length_nm, cut.width_nm, then
