"""From the table of a file to a box, to all boxes of a batch, or to a nest of boxes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from planner.domain.box import Box, HingedLid, SawnLid, Till
from planner.domain.ring import Stuff
from planner.domain.words import RingKind, SizesOver
from planner.intake.build_made import bottom_of, made_of
from planner.intake.shared import Shared, pin_pair_of, stuff_of
from planner.lengths import Nm

if TYPE_CHECKING:
    from planner.intake.file_box import BoxTable, LidTable, TillTable


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxSize:
    """Length, width and height of a box, measured as its table says."""

    length: Nm
    width: Nm
    height: Nm


def boxes_of(table: BoxTable, shared: Shared) -> Iterator[Box]:
    """One box, or all boxes of a batch or a nest."""
    sizes = sizes_of(table, shared)
    alone = len(sizes) == 1
    for number, size in enumerate(sizes, start=1):
        mark = table.mark if alone else f"{table.mark}{number}"
        yield _box(table, mark, mark if table.nest else table.mark, size, shared)


def sizes_of(table: BoxTable, shared: Shared) -> list[BoxSize]:
    """The sizes of one box, or of all boxes of a batch or a nest; those in a nest may come to nothing."""
    size = BoxSize(length=table.length, width=table.width, height=table.height)
    if table.nest is None:
        return [size] * table.count
    gap, lid = table.nest.gap, _lid(table.lid, table, shared)
    over = lid if isinstance(lid, HingedLid) else None
    lost_length = 2 * (table.thickness + gap + (over.sides_nm if over else 0))
    lost_width = 2 * (table.thickness + gap) + (over.front_nm + over.back_nm if over else 0)
    lost_height = gap + _below(table) + _above(lid)
    return [
        BoxSize(
            length=Nm(size.length - number * lost_length),
            width=Nm(size.width - number * lost_width),
            height=Nm(size.height - number * lost_height),
        )
        for number in range(table.nest.count)
    ]


def _below(table: BoxTable) -> int:
    """From the lower edge of a box to the upper face of its bottom."""
    return (table.bottom.up or 0) + table.bottom.thickness if table.bottom else 0


def _above(lid: HingedLid | SawnLid | None) -> int:
    """What a lid takes of the height in which the next box stands."""
    if lid is None:
        return 0
    return (
        lid.made.stuff.thickness_nm if isinstance(lid, HingedLid) else (lid.top.up_nm or 0) + lid.top.stuff.thickness_nm
    )


def _box(table: BoxTable, mark: str, batch: str, size: BoxSize, shared: Shared) -> Box:
    stuff = Stuff(material=table.material, thickness_nm=table.thickness)
    pin_pair = pin_pair_of(table.pins_on, RingKind.UPRIGHT, size.length, size.width)
    return Box(
        title=table.title,
        batch=batch,
        ring=shared.ring(mark, RingKind.UPRIGHT, (stuff, stuff, stuff, stuff), pin_pair, [table]),
        length_nm=size.length,
        width_nm=size.width,
        height_nm=size.height,
        sizes_over=SizesOver(table.sizes),
        bottom=bottom_of(table.bottom, table.bottom.up, table.thickness, shared) if table.bottom else None,
        lid=_lid(table.lid, table, shared),
        till=_till(table.till, stuff, shared) if table.till else None,
    )


def _lid(table: LidTable | None, box: BoxTable, shared: Shared) -> HingedLid | SawnLid | None:
    if table is None:
        return None
    if table.top is not None and table.height is not None:
        return SawnLid(
            top=bottom_of(table.top, table.top.down, box.thickness, shared),
            height_nm=table.height,
            kerf_nm=shared.length(table.kerf, "kerf"),
        )
    return HingedLid(
        made=made_of(table, Stuff(material=box.material, thickness_nm=box.thickness), shared),
        front_nm=shared.length(table.front, "lid_over"),
        sides_nm=shared.length(table.sides, "lid_over"),
        back_nm=table.back or Nm(0),
    )


def _till(table: TillTable, box: Stuff, shared: Shared) -> Till:
    stuff = stuff_of(
        table.material,
        table.thickness,
        Stuff(material=box.material, thickness_nm=shared.length(None, "till")),
    )
    return Till(
        stuff=stuff,
        width_nm=table.width,
        depth_nm=table.depth,
        housing_depth_nm=shared.depth(table.housing_depth, "housing_depth", box.thickness_nm),
        lid=None if table.lid is None else stuff_of(table.lid.material, table.lid.thickness, stuff),
    )
