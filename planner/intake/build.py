"""From the tables of a sound file to the frozen project: usual values are put in here."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from planner.derive.rings import usual_pin_pair
from planner.domain.box import BottomPanel, Box
from planner.domain.carcase import AppliedFront, BackPanel, Carcase, Column, Drawer, Opening, Partitions, Rails
from planner.domain.marks import drawer_mark
from planner.domain.material import Material
from planner.domain.project import Project
from planner.domain.rates import USUAL_RATES, Rates
from planner.domain.ring import Ring, Stuff, make_ring, with_half_blind_front
from planner.domain.sled import Sled
from planner.domain.words import Hardness, HeightRule, MaterialKind, PinPair, RingKind, SizesOver
from planner.intake.spacing import spacing_of, with_own_spacings
from planner.intake.usual import GRIDS, usual_depth, usual_length
from planner.lengths import Grid, Nm, Unit

if TYPE_CHECKING:
    from planner.intake.file_drawer import AppliedFrontTable, BottomTable, DrawerPart, DrawerTable
    from planner.intake.file_model import (
        BackTable,
        BoxTable,
        CarcaseTable,
        ColumnTable,
        File,
        MaterialTable,
        RatesTable,
        SledTable,
    )
    from planner.intake.file_pins import PinsTable


@dataclass(frozen=True, slots=True, kw_only=True)
class Shared:
    """What every ring of a file falls back on."""

    unit: Unit
    pins: PinsTable | None
    sled: str
    only_column: bool

    def length(self, said: Nm | None, key: str) -> Nm:
        """A length that was said, else the usual one for its key."""
        return usual_length(key, self.unit) if said is None else said

    def depth(self, said: Nm | None, key: str, thickness: Nm) -> Nm:
        """The same for the depth of a cut in a board of this thickness."""
        return usual_depth(key, thickness, self.unit) if said is None else said


def build(file: File, drawers: list[dict[str, DrawerTable]]) -> Project:
    """The project that a sound file describes.

    Args:
        file: all tables.
        drawers: for each carcase, the drawers that differ from its others, by mark.
    """
    unit = Unit(file.project.units)
    shared = Shared(
        unit=unit,
        pins=file.pins,
        sled=file.project.sled or next(iter(file.sled)),
        only_column=sum(len(carcase.column) for carcase in file.carcase) == 1,
    )
    return Project(
        name=file.project.name,
        unit=unit,
        grid=Grid(file.project.show) if file.project.show else GRIDS[unit],
        proud_nm=shared.length(file.project.proud, "proud"),
        height_tolerance_nm=shared.length(file.project.height_tolerance, "height_tolerance"),
        materials=tuple(_material(name, table) for name, table in file.material.items()),
        sleds=tuple(_sled(name, table) for name, table in file.sled.items()),
        boxes=tuple(box for table in file.box for box in _boxes(table, shared)),
        carcases=tuple(_carcases(file.carcase, drawers, shared)),
        rates=USUAL_RATES if file.rates is None else _rates(file.rates),
    )


def _material(name: str, table: MaterialTable) -> Material:
    return Material(name=name, kind=MaterialKind(table.kind), hardness=Hardness(table.hardness))


def _sled(name: str, table: SledTable) -> Sled:
    return Sled(
        name=name,
        run_micro=table.slope,
        bit_nm=table.bit,
        greatest_bit_height_nm=table.greatest_bit_height,
        greatest_width_nm=table.greatest_width,
        greatest_upright_nm=table.greatest_upright,
        slot_nm=table.slot,
        greatest_depth_soft_nm=table.greatest_depth_soft,
        greatest_depth_hard_nm=table.greatest_depth_hard,
    )


def _rates(table: RatesTable) -> Rates:
    return Rates(
        sled_change_s=table.sled_change,
        height_change_s=table.height_change,
        fence_swap_s=table.fence_swap,
        handling_s=table.handling,
        turning_s=table.turning,
        pass_s=table.pass_,
    )


def _pin_pair(said: str | None, kind: RingKind, first: Nm, second: Nm) -> PinPair:
    """What is said, else the usual pair; inside sizes will do, as both lack the same two thicknesses."""
    if said is None:
        return usual_pin_pair(kind, drawer=False, first_nm=first, second_nm=second)
    return PinPair.SECOND_AND_FOURTH if said == "sides" else PinPair.FIRST_AND_THIRD


def _ring(
    mark: str,
    kind: RingKind,
    stuff: tuple[Stuff, Stuff, Stuff, Stuff],
    pin_pair: PinPair,
    tables: Sequence[BoxTable | CarcaseTable | DrawerPart],
    shared: Shared,
) -> Ring:
    """The ring of which these tables tell, the topmost first; below them lies what the project says for all."""
    pins = [table.pins for table in (*tables, shared) if table.pins is not None]
    joints = [table.joint for table in tables if table.joint is not None]
    sled = next((table.sled for table in tables if table.sled is not None), shared.sled)
    ring = make_ring(mark, kind, stuff, pin_pair, spacing_of(pins, shared.unit), sled)
    return with_own_spacings(ring, joints, pins, shared.unit)


def _bottom(table: BottomTable | None, thinnest: Nm, shared: Shared) -> BottomPanel | None:
    if table is None:
        return None
    return BottomPanel(
        stuff=Stuff(material=table.material, thickness_nm=table.thickness),
        groove_depth_nm=shared.depth(table.groove_depth, "groove_depth", thinnest),
        up_nm=table.up,
        play_nm=shared.length(table.play, "play"),
    )


def _boxes(table: BoxTable, shared: Shared) -> Iterator[Box]:
    """One box, or all boxes of a batch."""
    stuff = Stuff(material=table.material, thickness_nm=table.thickness)
    pin_pair = _pin_pair(table.pins_on, RingKind.UPRIGHT, table.length, table.width)
    bottom = _bottom(table.bottom, table.thickness, shared)
    marks = [f"{table.mark}{number}" for number in range(1, table.count + 1)] if table.count > 1 else [table.mark]
    for mark in marks:
        yield Box(
            title=table.title,
            batch=table.mark,
            ring=_ring(mark, RingKind.UPRIGHT, (stuff, stuff, stuff, stuff), pin_pair, [table], shared),
            length_nm=table.length,
            width_nm=table.width,
            height_nm=table.height,
            sizes_over=SizesOver(table.sizes),
            bottom=bottom,
        )


# --- carcases -----------------------------------------------------------------------------------------------


def _carcases(tables: list[CarcaseTable], drawers: list[dict[str, DrawerTable]], shared: Shared) -> Iterator[Carcase]:
    number = 1
    for table, exceptions in zip(tables, drawers, strict=True):
        stuff = Stuff(material=table.material, thickness_nm=table.thickness)
        pin_pair = _pin_pair(table.pins_on, RingKind.CARCASE, table.width, table.height)
        made = {number + place: column for place, column in enumerate(table.column)}
        yield Carcase(
            title=table.title,
            ring=_ring(table.mark, RingKind.CARCASE, (stuff, stuff, stuff, stuff), pin_pair, [table], shared),
            width_nm=table.width,
            height_nm=table.height,
            depth_nm=table.depth,
            columns=tuple(
                _column(column, _marks(column, at, shared), table, exceptions, shared) for at, column in made.items()
            ),
            rails=_rails(table, shared),
            partitions=_partitions(table, shared),
            back=_back(table.back, stuff.thickness_nm, shared),
        )
        number += len(made)


def _rails(carcase: CarcaseTable, shared: Shared) -> Rails | None:
    table = carcase.rails
    if table is None:
        return None
    return Rails(
        stuff=Stuff(material=table.material or carcase.material, thickness_nm=table.thickness),
        width_nm=table.width,
        housing_depth_nm=shared.depth(table.housing_depth, "housing_depth", carcase.thickness),
    )


def _partitions(carcase: CarcaseTable, shared: Shared) -> Partitions | None:
    table = carcase.partitions
    if table is None:
        return None
    return Partitions(
        stuff=Stuff(
            material=table.material or carcase.material,
            thickness_nm=carcase.thickness if table.thickness is None else table.thickness,
        ),
        housing_depth_nm=shared.depth(table.housing_depth, "housing_depth", carcase.thickness),
    )


def _back(table: BackTable | None, carcase_thickness: Nm, shared: Shared) -> BackPanel | None:
    if table is None:
        return None
    return BackPanel(
        stuff=Stuff(material=table.material, thickness_nm=table.thickness),
        rabbet_depth_nm=shared.depth(table.rabbet_depth, "rabbet_depth", carcase_thickness),
        play_nm=shared.length(table.play, "play"),
    )


def _marks(column: ColumnTable, number: int, shared: Shared) -> list[str]:
    tiers = range(1, column.drawers + 1)
    return column.marks or [drawer_mark(number, tier, only_column=shared.only_column) for tier in tiers]


def _column(
    table: ColumnTable, marks: list[str], carcase: CarcaseTable, exceptions: Mapping[str, DrawerTable], shared: Shared
) -> Column:
    heights = table.heights if isinstance(table.heights, list) else [None] * table.drawers
    return Column(
        width_nm=table.width,
        heights=_height_rule(table),
        step_nm=table.step,
        ratio=table.ratio,
        openings=tuple(
            Opening(height_nm=height, drawer=_drawer(mark, carcase, exceptions.get(mark), shared))
            for mark, height in zip(marks, heights, strict=True)
        ),
    )


def _height_rule(table: ColumnTable) -> HeightRule:
    if isinstance(table.heights, list):
        return HeightRule.LISTED
    if table.heights == "equal":
        return HeightRule.EQUAL
    return HeightRule.STEP if table.ratio is None else HeightRule.RATIO


def _drawer(mark: str, carcase: CarcaseTable, exception: DrawerTable | None, shared: Shared) -> Drawer:
    table = exception or carcase.drawer
    thinnest = min(table.front_thickness, table.side_thickness, table.back_thickness)
    return Drawer(
        ring=_drawer_ring(mark, table, [*_what_differs(mark, carcase), carcase.drawer], shared),
        side_clearance_nm=shared.length(table.side_clearance, "side_clearance"),
        top_clearance_nm=shared.length(table.top_clearance, "top_clearance"),
        back_clearance_nm=shared.length(table.back_clearance, "back_clearance"),
        bottom=_bottom(table.bottom, thinnest, shared),
        applied_front=_applied_front(table.applied_front, shared),
    )


def _what_differs(mark: str, carcase: CarcaseTable) -> list[DrawerPart]:
    return [carcase.except_[mark]] if mark in carcase.except_ else []


def _drawer_ring(mark: str, table: DrawerTable, tables: Sequence[DrawerPart], shared: Shared) -> Ring:
    front = Stuff(material=table.front_material or table.material, thickness_nm=table.front_thickness)
    side = Stuff(material=table.material, thickness_nm=table.side_thickness)
    back = Stuff(material=table.material, thickness_nm=table.back_thickness)
    pin_pair = PinPair.SECOND_AND_FOURTH if table.pins_on == "sides" else PinPair.FIRST_AND_THIRD
    ring = _ring(mark, RingKind.UPRIGHT, (front, side, back, side), pin_pair, tables, shared)
    if table.front_joint == "through":
        return ring
    return with_half_blind_front(ring, shared.length(table.lap, "lap"))


def _applied_front(table: AppliedFrontTable | None, shared: Shared) -> AppliedFront | None:
    if table is None:
        return None
    return AppliedFront(
        stuff=Stuff(material=table.material, thickness_nm=table.thickness), gap_nm=shared.length(table.gap, "gap")
    )
