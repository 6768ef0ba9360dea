"""Every cut at the sled in shop order: how the board stands, and where to line it up."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from planner.derive.passes import NEGLIGIBLE_MM2
from planner.domain.marks import end_mark
from planner.domain.plan import EndCut, Plan, SledBatch, SledPlan, SledSetting
from planner.lengths import Grid, Nm, show_length
from planner.plan import tasks
from planner.present.table import Cell, Column, Group, Kind, Table, setting
from planner.present.views.heed import heed_at
from planner.present.views.joints import slope_words
from planner.present.views.passes import AGAIN, pass_marks
from planner.present.views.sled_savings import AS_PLANNED, JOINT_BY_JOINT, in_words, rates_in_words

HOW_TO_STAND = (
    "Stand the board on the end named, OUTSIDE FACE TO YOU, at both fences.",
    "End A down: reference edge at your RIGHT. End B down: reference edge at your LEFT.",
    "RIGHT fence: bring each mark to the RIGHT edge of the slot. LEFT fence: each mark to the LEFT edge of the slot.",
    "Marks are on the outside face, measured from your left. Sockets (1), (2), (3) … are counted from your left.",
    AGAIN,
)
WEDGE = "Wedge left: end grain that stays for the chisel on the whole end, once it has been cut at both fences."
LABELS_DECIDE = "Read the label before each cut. Where board and sheet don't agree, stop: don't cut by guess."
ENDS_IN_TURN = (
    "The ends of a board follow each other, beginning with the one that was down last. Keep to the order listed, "
    "and no board is turned more often than it must be."
)


@dataclass(frozen=True, slots=True)
class _Sheet:
    """What decides which columns there are and how lengths are shown."""

    grid: Grid
    projects: bool
    wedges: bool


def sled(plan: Plan) -> Table:
    """One row for each board end at each fence."""
    return sled_together(SledBatch(plans=(plan,), sled=plan.sled))


def sled_together(batch: SledBatch) -> Table:
    """The same for several projects whose cuts are made together, in the unit of the first of them."""
    first, several = batch.plans[0].project, len(batch.plans) > 1
    wedges = any(_wedge(cut) for at in batch.sled.settings for cut in at.cuts)
    sheet = _Sheet(first.grid, projects=several, wedges=wedges)
    return Table(
        title="Sled settings",
        grid=sheet.grid,
        columns=tuple(_columns(sheet)),
        groups=tuple(_groups(batch, sheet)),
        notes=(
            *(_together(batch) if several else ()),
            *HOW_TO_STAND,
            LABELS_DECIDE,
            ENDS_IN_TURN,
            *((WEDGE,) if wedges else ()),
            f"{AS_PLANNED}: {in_words(batch.sled.tally)}.",
            f"{JOINT_BY_JOINT}: {in_words(batch.sled.joint_by_joint)}.",
            rates_in_words(first.rates),
        ),
        cautions=tuple(_cautions_together(batch)),
        page_per_group=True,
    )


def _together(batch: SledBatch) -> tuple[str, ...]:
    """What to know of several projects before reading their common sheet."""
    first = batch.sled.projects[0]
    return (
        f"Cut together: {', '.join(batch.sled.projects)}.",
        f"Lengths are in the unit of {first} and times at its rates; name another project first to have its own.",
        "On each sled, bit heights share a setting within the smallest height tolerance of the projects that use it.",
    )


def _cautions_together(batch: SledBatch) -> Iterator[str]:
    """Where projects cut together could be mistaken for each other, or differ from their own plans."""
    times = Counter(ring.mark for plan in batch.plans for ring in plan.project.rings())
    alike = ", ".join(mark for mark, count in times.items() if count > 1)
    if alike:
        yield f"In more than one of these projects: {alike}. Write the project beside the mark on each of their boards."
    own = {end: height for plan in batch.plans for end, height in _heights(plan.sled)}
    other = ", ".join(dict.fromkeys(end[0] for end, height in _heights(batch.sled) if own[end] != height))
    if other:
        yield f"Bit heights here differ a little from those planned for {other} alone: gauge pin baselines to these."


def _heights(sled: SledPlan) -> Iterator[tuple[tuple[str, str], Nm]]:
    """Each project's joints with the bit height at which they are cut."""
    return (((cut.project, cut.joint), at.bit_height_nm) for at in sled.settings for cut in at.cuts)


def _columns(sheet: _Sheet) -> Iterator[Column]:
    unit = sheet.grid.unit
    yield Column(heading="Cut", kind=Kind.TICK)
    yield Column(heading="Setting, fence", repeats=True)
    yield Column(heading=f"Bit height and baseline, {unit}", repeats=True)
    if sheet.projects:
        yield Column(heading="Project", strong=True)
    yield Column(heading="Board", strong=True)
    yield Column(heading="End down", strong=True)
    yield Column(heading="Outside face to you, reference edge at your", strong=True)
    yield Column(heading=f"(Socket) and mark, from your left, {unit}", kind=Kind.MARKS)
    yield Column(heading="Joint")
    yield Column(heading=f"Width × thickness, {unit}")
    if sheet.wedges:
        yield Column(heading="Wedge left, mm²", kind=Kind.AMOUNT, decimals=1)


def _groups(batch: SledBatch, sheet: _Sheet) -> Iterator[Group]:
    settings, grid = batch.sled.settings, sheet.grid
    for before, at in zip((None, *settings), settings, strict=False):
        fence = at.fence.upper()
        bit = f"bit {setting(at.bit_nm, grid)}, bit height and baseline {setting(at.bit_height_nm, grid)} {grid.unit}"
        yield Group(
            heading=f"Setting {at.number} ({_change(before, at, grid)}): {fence} FENCE, outside face to you, "
            f"mark to the {fence} edge of the slot. Sled {at.sled}, slope {slope_words(at.slope)}, {bit}.",
            cautions=heed_at(batch.plans, tasks.PINS, {end_mark(cut.board, cut.end) for cut in at.cuts}),
            rows=tuple(tuple(_row(at, cut, sheet)) for cut in at.cuts),
        )


def _change(before: SledSetting | None, now: SledSetting, grid: Grid) -> str:
    """What to adjust; nothing is set up before the first setting."""
    if before is None or now.sled != before.sled:
        return f"put on sled {now.sled}, fit its bit, set the bit height"
    if now.bit_height_nm != before.bit_height_nm:
        return f"set the bit height to {setting(now.bit_height_nm, grid)} {grid.unit}"
    return f"walk round to the {now.fence} fence"


def _row(at: SledSetting, cut: EndCut, sheet: _Sheet) -> Iterator[Cell]:
    """Cells of the columns above."""
    yield from (None, f"{at.number} {at.fence.upper()}", setting(at.bit_height_nm, sheet.grid))
    if sheet.projects:
        yield cut.project
    yield from (cut.board, cut.end.value, cut.reference_edge.upper())
    yield tuple(pass_marks(cut.passes, sheet.grid))
    yield cut.joint
    yield f"{show_length(cut.width_nm, sheet.grid)} × {show_length(cut.thickness_nm, sheet.grid)}"
    if sheet.wedges:
        yield _wedge(cut)


def _wedge(cut: EndCut) -> Fraction | None:
    return Fraction(cut.residue_mm2) if cut.residue_mm2 > NEGLIGIBLE_MM2 else None
