"""Materials, timbers of the maker's own, and the air around them as tables of a file."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal

from planner.domain.climate import Climate, Room
from planner.domain.material import Material
from planner.domain.timber import Timber
from planner.domain.words import Hardness, MaterialKind
from planner.intake.build_wood import usual_material
from planner.intake.sharing import Table
from planner.intake.wood_said import OWN_FIGURES, write_pressures
from planner.lengths import Unit
from planner.quantities import write_percent, write_temperature


def material_table(material: Material, own: Iterable[Timber]) -> Table:
    """A material; what goes without saying of its species is left out."""
    usual = usual_material(material.name, material.species, own)
    said = {
        "kind": None if material.kind is usual.kind else material.kind,
        "hardness": None if material.hardness is usual.hardness else material.hardness,
        "species": material.species,
        "sawn": material.sawn,
    }
    return {key: str(value) for key, value in said.items() if value is not None}


def timber_table(timber: Timber) -> Table:
    """A timber of the maker's own."""
    return {
        **({} if timber.kind is MaterialKind.SOLID else {"kind": str(timber.kind)}),
        **({} if timber.hardness is Hardness.HARD else {"hardness": str(timber.hardness)}),
        "tangential": _figure(timber.tangential),
        "radial": _figure(timber.radial),
        **_if_known("shrinkage_tangential", timber.shrinkage_tangential_pct),
        **_if_known("shrinkage_radial", timber.shrinkage_radial_pct),
        "specific_gravity": _figure(timber.specific_gravity),
        **write_pressures(timber),
        **({} if timber.source == OWN_FIGURES else {"source": timber.source}),
    }


def _if_known(key: str, figure: float | None) -> Table:
    return {} if figure is None else {key: _figure(figure)}


def _figure(figure: float) -> Decimal:
    """A figure with the digits that it was written with."""
    return Decimal(repr(figure))


def climate_table(climate: Climate | None, unit: Unit) -> Table:
    """Air, or wood; empty where nothing is said of it."""
    if climate is None:
        return {}
    moisture, humidity, temperature = (
        climate.moisture_hundredths,
        climate.humidity_hundredths,
        climate.temperature_milli_c,
    )
    return {
        **({} if moisture is None else {"moisture": write_percent(moisture)}),
        **({} if humidity is None else {"humidity": write_percent(humidity)}),
        **({} if temperature is None else {"temperature": write_temperature(temperature, unit)}),
    }


def room_table(room: Room | None, unit: Unit) -> Table:
    """The room over the year; empty where nothing is said of it."""
    if room is None:
        return {}
    return {"dry": climate_table(room.dry, unit), "damp": climate_table(room.damp, unit)}
