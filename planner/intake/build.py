"""From the tables of a sound file to the frozen project: usual values are put in here."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from planner.derive.rings import usual_pin_pair
from planner.domain.box import BottomPanel, Box
from planner.domain.carcase import BackPanel, Carcase, Column, Drawer, Opening, Partitions, Rails
from planner.domain.marks import drawer_mark
from planner.domain.material import Material
from planner.domain.project import Project
from planner.domain.ring import Ring, Spacing, Stuff, make_ring
from planner.domain.sled import Sled
from planner.domain.words import Hardness, HeightRule, MaterialKind, PinPair, RingKind, SizesOver
from planner.intake.usual import GRIDS, usual_depth, usual_length
from planner.lengths import Grid, Nm, Unit

if TYPE_CHECKING:
    from planner.intake.file_model import (
        BackTable,
        BottomTable,
        BoxTable,
        CarcaseTable,
        ColumnTable,
        DrawerTable,
        File,
        MaterialTable,
        PinsTable,
        SledTable,
    )


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
    )


def _spacing(own: PinsTable | None, shared: Shared) -> Spacing:
    """Key by key: what the ring says, else what the project says, else what is usual."""

    def said(key: str) -> Any:  # noqa: ANN401 - each key has a kind of its own
        tables = (own, shared.pins)
        return next((value for table in tables if table and (value := getattr(table, key)) is not None), None)

    tails = said("tails")
    return Spacing(
        half_pin_nm=shared.length(said("half_pin"), "half_pin"),
        pin_nm=shared.length(said("pin"), "pin"),
        tails=None if tails == "choose" else tails,
        tail_nm=shared.length(said("tail"), "tail"),
        greatest_tail_nm=shared.length(said("greatest_tail"), "greatest_tail"),
    )


def _pin_pair(said: str | None, kind: RingKind, first: Nm, second: Nm) -> PinPair:
    """What is said, else the usual pair; inside sizes will do, as both lack the same two thicknesses."""
    if said is None:
        return usual_pin_pair(kind, drawer=False, first_nm=first, second_nm=second)
    return PinPair.SECOND_AND_FOURTH if said == "sides" else PinPair.FIRST_AND_THIRD


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
    spacing = _spacing(table.pins, shared)
    sled = table.sled or shared.sled
    bottom = _bottom(table.bottom, table.thickness, shared)
    marks = [f"{table.mark}{number}" for number in range(1, table.count + 1)] if table.count > 1 else [table.mark]
    for mark in marks:
        yield Box(
            title=table.title,
            batch=table.mark,
            ring=make_ring(mark, RingKind.UPRIGHT, (stuff, stuff, stuff, stuff), pin_pair, spacing, sled),
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
        made = {number + place: column for place, column in enumerate(table.column)}
        yield Carcase(
            title=table.title,
            ring=_carcase_ring(table, stuff, shared),
            width_nm=table.width,
            height_nm=table.height,
            depth_nm=table.depth,
            columns=tuple(
                _column(column, _marks(column, at, shared), table.drawer, exceptions, shared)
                for at, column in made.items()
            ),
            rails=_rails(table, shared),
            partitions=_partitions(table, shared),
            back=_back(table.back, stuff.thickness_nm, shared),
        )
        number += len(made)


def _carcase_ring(table: CarcaseTable, stuff: Stuff, shared: Shared) -> Ring:
    pin_pair = _pin_pair(table.pins_on, RingKind.CARCASE, table.width, table.height)
    boards = (stuff, stuff, stuff, stuff)
    return make_ring(
        table.mark, RingKind.CARCASE, boards, pin_pair, _spacing(table.pins, shared), table.sled or shared.sled
    )


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
    table: ColumnTable, marks: list[str], drawer: DrawerTable, exceptions: Mapping[str, DrawerTable], shared: Shared
) -> Column:
    heights = table.heights if isinstance(table.heights, list) else [None] * table.drawers
    return Column(
        width_nm=table.width,
        heights=_height_rule(table),
        step_nm=table.step,
        ratio=table.ratio,
        openings=tuple(
            Opening(height_nm=height, drawer=_drawer(exceptions.get(mark, drawer), mark, shared))
            for mark, height in zip(marks, heights, strict=True)
        ),
    )


def _height_rule(table: ColumnTable) -> HeightRule:
    if isinstance(table.heights, list):
        return HeightRule.LISTED
    if table.heights == "equal":
        return HeightRule.EQUAL
    return HeightRule.STEP if table.ratio is None else HeightRule.RATIO


def _drawer(table: DrawerTable, mark: str, shared: Shared) -> Drawer:
    front = Stuff(material=table.front_material or table.material, thickness_nm=table.front_thickness)
    side = Stuff(material=table.material, thickness_nm=table.side_thickness)
    back = Stuff(material=table.material, thickness_nm=table.back_thickness)
    pin_pair = PinPair.SECOND_AND_FOURTH if table.pins_on == "sides" else PinPair.FIRST_AND_THIRD
    thinnest = min(front.thickness_nm, side.thickness_nm, back.thickness_nm)
    return Drawer(
        ring=make_ring(
            mark,
            RingKind.UPRIGHT,
            (front, side, back, side),
            pin_pair,
            _spacing(table.pins, shared),
            table.sled or shared.sled,
        ),
        side_clearance_nm=shared.length(table.side_clearance, "side_clearance"),
        top_clearance_nm=shared.length(table.top_clearance, "top_clearance"),
        back_clearance_nm=shared.length(table.back_clearance, "back_clearance"),
        bottom=_bottom(table.bottom, thinnest, shared),
    )
