"""The first sheet: what the piece is, what the grouping of sled cuts saves, and how to read the rest."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from planner.domain.box import Box
from planner.domain.carcase import Carcase
from planner.domain.plan import Plan
from planner.domain.space import Division
from planner.domain.words import Level, SizesOver
from planner.lengths import Grid, Nm, show_length
from planner.present.table import Cell, Column, Group, Table
from planner.present.views.sled_savings import comparison, rates_in_words

Row = tuple[Cell, ...]

HOW_TO_READ = (
    ("Cut list", "What to cut: finished sizes by thickness and material, with quantity and marks."),
    ("Hardware", "What to buy besides wood: hinges, pins, screws and the like, with what each is for."),
    ("Boards", "Each board by its mark, with the joint at each end."),
    ("Openings", "Drawer openings, and the drawer that fills each."),
    ("Labels", "What to write on all six surfaces of each board."),
    ("Joints", "Gauge settings and the place of each pin from the reference edge."),
    ("Practice joints", "A joint on offcuts for each way of cutting, and what its errors mean. Make them first."),
    ("Sled settings", "Every sled cut in shop order: which end down, which fence, where to line up. Tick each cut."),
    ("Tails", "Which pins each end is traced from, and its saw cuts by set-up of the bandsaw."),
    ("Grooves and housings", "Where each groove, rabbet and housing runs, and where it stops."),
    ("Order of operations", "The whole build, one heading for each setting. Tick as you go."),
    ("Weights", "What the piece and its parts weigh, and where they balance."),
    ("Notes", "What the checks found, and what to heed at each machine. Read them before cutting."),
)
"""Sheets and what they are for; a sheet without rows is left out."""

_WORDS = (
    ("Board marks", "Box, then role: D3-front. Joints: D3-J1. Board ends: D3-front-A."),
    ("Reference edge", "Boxes and drawers: the bottom edge. Carcases: the front edge."),
    ("Ends A and B", "Outside face towards you, reference edge at the bottom: end A is left, end B is right."),
)


def piece(plan: Plan) -> Table:
    """What the piece is, counts and words."""
    held = {table for table, _ in HOW_TO_READ}
    if not plan.openings:
        held.discard("Openings")
    if not plan.practice:
        held -= {"Practice joints", "Sled settings"}
    if not plan.hardware:
        held.discard("Hardware")
    if not plan.weights.of:
        held.discard("Weights")
    if not plan.features:
        held.discard("Grooves and housings")
    return Table(
        title="Piece",
        grid=plan.project.grid,
        columns=(Column(heading="What"), Column(heading="Figures")),
        groups=(
            Group(heading=plan.project.name, rows=tuple(_piece_rows(plan))),
            Group(heading="At the sled", rows=tuple(_sled_rows(plan))),
            Group(heading="Words", rows=(*_WORDS, *_lengths_rows(plan))),
            Group(heading="Sheets", rows=tuple(row for row in HOW_TO_READ if row[0] in held)),
        ),
        cautions=tuple(_read_first(plan)),
    )


def _read_first(plan: Plan) -> Iterator[str]:
    levels = Counter(finding.level for finding in plan.findings if not finding.acknowledged)
    if levels[Level.STOP]:
        yield f"STOP: {levels[Level.STOP]} of the checks say that this must not be cut yet. See Notes."
    if levels[Level.CAUTION]:
        yield f"Cautions from the checks: {levels[Level.CAUTION]}. See Notes before cutting."


# --- the piece ---------------------------------------------------------------------------------------------


def _piece_rows(plan: Plan) -> Iterator[Row]:
    project = plan.project
    for carcase in project.carcases:
        yield f"{carcase.ring.mark}, {carcase.title or 'carcase'}", _carcase_words(carcase, project.grid)
    batches: dict[str, list[Box]] = {}
    for box in project.boxes:
        batches.setdefault(box.batch, []).append(box)
    for batch, boxes in batches.items():
        yield f"{batch}, {boxes[0].title or 'box'}", _box_words(boxes, project.grid)
    yield "Boards", str(len(plan.boards))
    yield "Corner joints", f"{len(plan.joints)}, so {2 * len(plan.joints)} board ends, half of them with pins"


def _carcase_words(carcase: Carcase, grid: Grid) -> str:
    sizes = _sizes((carcase.width_nm, carcase.height_nm, carcase.depth_nm), grid)
    drawers = [drawer.ring.mark for drawer in carcase.drawers()]
    columns = len(carcase.inside.holds.spaces) if isinstance(carcase.inside.holds, Division) else 1
    over = "outside" if carcase.sizes_over is SizesOver.OUTSIDE else "inside"
    return (
        f"{sizes} (width × height × depth) over the {over}; "
        f"{_count(columns, 'column')}, {_count(len(drawers), 'drawer')}{': ' if drawers else ''}{', '.join(drawers)}"
    )


def _box_words(boxes: list[Box], grid: Grid) -> str:
    first = boxes[0]
    sizes = _sizes((first.length_nm, first.width_nm, first.height_nm), grid)
    over = "the outside" if first.sizes_over is SizesOver.OUTSIDE else "the inside; the height is that of the boards"
    alike = f"; {len(boxes)} alike: {', '.join(box.ring.mark for box in boxes)}" if len(boxes) > 1 else ""
    return f"{sizes} (length × width × height) over {over}{alike}"


def _sizes(sizes: tuple[Nm, ...], grid: Grid) -> str:
    return f"{' × '.join(show_length(size, grid) for size in sizes)} {grid.unit}"


def _count(number: int, what: str) -> str:
    return f"{number} {what}{'' if number == 1 else 's'}"


# --- at the sled -------------------------------------------------------------------------------------------


def _sled_rows(plan: Plan) -> Iterator[Row]:
    cuts = sum(len(at.cuts) for at in plan.sled.settings)
    heights = len({(at.sled, at.bit_height_nm) for at in plan.sled.settings})
    yield "Bit heights", f"{heights}, each set once and cut at both fences"
    yield "Cuts", f"{cuts} (a board end at a fence), {plan.sled.tally.passes} passes"
    yield from comparison(plan.sled)
    yield "Rates", rates_in_words(plan.project.rates)


def _lengths_rows(plan: Plan) -> Iterator[Row]:
    grid = plan.project.grid
    steps = f"Sizes to {grid.value}, settings and places to {grid.fine.value}."
    yield "Lengths", f"{steps} ~ before a length: rounded to show it. In brackets: what to set, in decimals."
    proud = show_length(plan.project.proud_nm, grid.fine, with_unit=True)
    yield "Proud", f"Pins and tails stand {proud} proud at each corner, to be planed flush. Board lengths include it."
