"""From the tables of a sound file to the frozen project: usual values are put in here."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from planner.domain.acknowledged import Acknowledged
from planner.domain.project import Project
from planner.domain.rates import USUAL_RATES, Rates
from planner.domain.sled import Sled
from planner.domain.words import DrawersCut, Level
from planner.intake.build_box import boxes_of
from planner.intake.build_carcase import carcases_of
from planner.intake.build_stock import stock_of
from planner.intake.build_wood import climate_of, material_of, room_of, timber_of
from planner.intake.shared import Shared
from planner.intake.usual import GRIDS
from planner.lengths import Grid, Unit

if TYPE_CHECKING:
    from planner.intake.file_drawer import DrawerTable
    from planner.intake.file_model import AcknowledgedTable, File, KeptSledTable, RatesTable, SledTable


def shared_of(file: File) -> Shared:
    """What the parts of a file fall back on."""
    first = next(iter(file.sled))
    return Shared(
        unit=Unit(file.project.units),
        pins=file.pins,
        sled=file.project.sled or first,
        first_sled=first,
        only_column=sum(len(carcase.column) for carcase in file.carcase) == 1,
    )


def build(file: File, drawers: Sequence[Mapping[str, DrawerTable]], kept: Mapping[str, Sled]) -> Project:
    """The project that a sound file describes.

    Args:
        file: all tables.
        drawers: for each carcase, the drawers that differ from its others, by mark.
        kept: the store's sleds that the file may take, by name.
    """
    shared = shared_of(file)
    unit = shared.unit
    timbers = tuple(timber_of(name, table) for name, table in file.timber.items())
    return Project(
        name=file.project.name,
        unit=unit,
        grid=Grid(file.project.show) if file.project.show else GRIDS[unit],
        proud_nm=shared.length(file.project.proud, "proud"),
        height_tolerance_nm=shared.length(file.project.height_tolerance, "height_tolerance"),
        materials=tuple(material_of(name, table, timbers) for name, table in file.material.items()),
        timbers=timbers,
        room=room_of(file.room) if file.room else None,
        shop=climate_of(file.shop) if file.shop else None,
        stock=stock_of(file.stock, unit),
        sleds=tuple(_sled(name, table, kept) for name, table in file.sled.items()),
        boxes=tuple(box for table in file.box for box in boxes_of(table, shared)),
        carcases=tuple(carcases_of(file.carcase, drawers, shared)),
        drawers_cut=DrawersCut(file.project.drawers),
        acknowledged=tuple(_acknowledged(table) for table in file.acknowledged),
        rates=USUAL_RATES if file.rates is None else _rates(file.rates),
    )


def _sled(name: str, table: SledTable | KeptSledTable, kept: Mapping[str, Sled]) -> Sled:
    from planner.intake.file_model import KeptSledTable

    return kept[name] if isinstance(table, KeptSledTable) else sled_of(name, table)


def sled_of(name: str, table: SledTable) -> Sled:
    """The sled whose values a table gives."""
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
        kept=table.kept,
    )


def _acknowledged(table: AcknowledgedTable) -> Acknowledged:
    return Acknowledged(code=table.code, marks=tuple(table.marks), level=Level(table.level), why=table.why)


def _rates(table: RatesTable) -> Rates:
    return Rates(
        sled_change_s=table.sled_change,
        height_change_s=table.height_change,
        fence_swap_s=table.fence_swap,
        handling_s=table.handling,
        turning_s=table.turning,
        pass_s=table.pass_,
    )
