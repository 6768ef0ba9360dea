"""From the tables of a file to materials, timbers of the maker's own, and the air around them."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from planner.domain.climate import Climate, Room
from planner.domain.material import Material
from planner.domain.timber import Timber
from planner.domain.words import Hardness, MaterialKind, Sawn
from planner.wood.timbers import timber_named

if TYPE_CHECKING:
    from planner.intake.file_wood import ClimateTable, MaterialTable, RoomTable, TimberTable


def usual_material(name: str, species: str | None, own: Iterable[Timber]) -> Material:
    """A material of which only its species is said: what kind it is and how it cuts follow from that.

    Raises:
        UnknownTimberError: there is no such species.
    """
    if species is None:
        return Material(name=name)
    timber = timber_named(species, own)
    return Material(name=name, kind=timber.kind, hardness=timber.hardness, species=species)


def material_of(name: str, table: MaterialTable, own: Iterable[Timber]) -> Material:
    """The material that a table describes."""
    usual = usual_material(name, table.species, own)
    return Material(
        name=name,
        kind=MaterialKind(table.kind) if table.kind else usual.kind,
        hardness=Hardness(table.hardness) if table.hardness else usual.hardness,
        species=table.species,
        sawn=Sawn(table.sawn) if table.sawn else None,
    )


def timber_of(name: str, table: TimberTable) -> Timber:
    """The timber of the maker's own that a table describes."""
    return Timber(
        name=name,
        kind=MaterialKind(table.kind),
        tangential=table.tangential,
        radial=table.radial,
        shrinkage_tangential_pct=table.shrinkage_tangential,
        shrinkage_radial_pct=table.shrinkage_radial,
        specific_gravity=table.specific_gravity,
        stiffness_gpa=table.stiffness,
        strength_mpa=table.strength,
        hardness=Hardness(table.hardness),
        source=table.source,
    )


def climate_of(table: ClimateTable) -> Climate:
    """Air, or wood, as a table says it."""
    return Climate(
        moisture_hundredths=table.moisture,
        humidity_hundredths=table.humidity,
        temperature_milli_c=table.temperature,
    )


def room_of(table: RoomTable) -> Room:
    """The room over the year."""
    return Room(dry=climate_of(table.dry), damp=climate_of(table.damp))
