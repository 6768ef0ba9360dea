"""Every cut at the sled in shop order: how the board stands, and where to line it up."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import groupby, pairwise

from planner.derive.passes import NEGLIGIBLE_MM2
from planner.domain.operation import Machine
from planner.domain.plan import EndCut, Pass, Plan, SledSetting
from planner.lengths import Grid, show_length
from planner.present.table import Cell, Column, Group, Kind, Table, setting
from planner.present.views.joints import slope_words

HOW_TO_STAND = (
    "Stand the board on the end named, OUTSIDE FACE TO YOU, at both fences.",
    "End A down: reference edge at your RIGHT. End B down: reference edge at your LEFT.",
    "RIGHT fence: bring each mark to the RIGHT edge of the slot. LEFT fence: each mark to the LEFT edge of the slot.",
    "Marks are on the outside face, measured from your left. Sockets (1), (2), (3) … are counted from your left.",
)
WEDGE = "Wedge left: end grain that stays for the chisel on the whole end, once it has been cut at both fences."
LABELS_DECIDE = "Read the label before each cut. Where board and sheet don't agree, stop: don't cut by guess."


def sled(plan: Plan) -> Table:
    """One row for each board end at each fence."""
    unit = plan.project.unit
    wedges = any(_wedge(cut) for at in plan.sled.settings for cut in at.cuts)
    return Table(
        title="Sled settings",
        grid=plan.project.grid,
        columns=(
            Column(heading="Cut", kind=Kind.TICK),
            Column(heading="Setting", kind=Kind.COUNT, repeats=True),
            Column(heading="Fence", repeats=True),
            Column(heading=f"Bit height, {unit}", repeats=True),
            Column(heading="Board", strong=True),
            Column(heading="End down", strong=True),
            Column(heading="Outside face", repeats=True),
            Column(heading="Reference edge at your", strong=True),
            Column(heading=f"(Socket) and mark, from your left, {unit}", kind=Kind.MARKS),
            Column(heading="Joint"),
            Column(heading="Width", kind=Kind.LENGTH),
            Column(heading="Thickness", kind=Kind.LENGTH),
            *((Column(heading="Wedge left, mm²", kind=Kind.AMOUNT, decimals=1),) if wedges else ()),
        ),
        groups=tuple(_groups(plan, wedges=wedges)),
        notes=(*HOW_TO_STAND, LABELS_DECIDE, *((WEDGE,) if wedges else ()), counts(plan)),
        page_per_group=True,
    )


def counts(plan: Plan) -> str:
    """Changes as planned, and joint by joint."""
    grouped = plan.sled.sled_changes + plan.sled.height_changes + plan.sled.fence_swaps
    return (
        f"Changes as planned: {grouped} ({_times(plan.sled.sled_changes, 'sled')}, "
        f"{_times(plan.sled.height_changes, 'bit height')}, {_times(plan.sled.fence_swaps, 'fence')}). "
        f"Joint by joint it would be {plan.sled.joint_by_joint_changes}."
    )


def _times(count: int, what: str) -> str:
    return f"{what} {count}×"


def _cautions(plan: Plan) -> tuple[str, ...]:
    """What to heed at the sled, each once."""
    return tuple(
        dict.fromkeys(
            caution for work in plan.order if work.machine is Machine.ROUTER_TABLE_SLED for caution in work.cautions
        )
    )


def _groups(plan: Plan, *, wedges: bool) -> Iterator[Group]:
    settings, grid, heed = plan.sled.settings, plan.project.grid, _cautions(plan)
    changes = ["first setting", *(_change(before, now, grid) for before, now in pairwise(settings))]
    for at, change in zip(settings, changes, strict=False):
        fence = at.fence.upper()
        bit = f"bit {setting(at.bit_nm, grid)}, bit height {setting(at.bit_height_nm, grid)} {grid.unit}"
        yield Group(
            heading=f"Setting {at.number} ({change}): {fence} FENCE, outside face to you, "
            f"mark to the {fence} edge of the slot. Sled {at.sled}, slope {slope_words(at.slope)}, {bit}.",
            cautions=heed,
            rows=tuple((*_row(at, cut, grid), *((_wedge(cut),) if wedges else ())) for cut in at.cuts),
        )


def _change(before: SledSetting, now: SledSetting, grid: Grid) -> str:
    if now.sled != before.sled:
        return f"put on sled {now.sled}"
    if now.bit_height_nm != before.bit_height_nm:
        return f"set the bit height to {setting(now.bit_height_nm, grid)} {grid.unit}"
    return f"walk round to the {now.fence} fence"


def _row(at: SledSetting, cut: EndCut, grid: Grid) -> tuple[Cell, ...]:
    return (
        None,
        at.number,
        at.fence.upper(),
        setting(at.bit_height_nm, grid),
        cut.board,
        cut.end.value,
        "to you",
        cut.reference_edge.upper(),
        tuple(_marks(cut.passes, grid)),
        cut.joint,
        cut.width_nm,
        cut.thickness_nm,
    )


def _wedge(cut: EndCut) -> Fraction | None:
    return Fraction(cut.residue_mm2) if cut.residue_mm2 > NEGLIGIBLE_MM2 else None


def _marks(passes: Sequence[Pass], grid: Grid) -> Iterator[str]:
    """Each socket with its marks: ``(1) 1 5/32``, or for two passes ``(1) 1 5/32 and 1 1/2``."""
    for socket, in_socket in groupby(passes, key=lambda one: one.socket):
        yield f"({socket}) {' and '.join(show_length(one.mark_nm, grid.fine) for one in in_socket)}"
