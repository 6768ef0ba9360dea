"""What the maker says of rough wood: how much larger it is cut out, how it is glued up and sawn, and what is wasted.

All usual values: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from typing import Final

from planner.domain.material import Material
from planner.domain.words import Hardness, MaterialKind
from planner.errors import Problem
from planner.lengths import NO_LENGTH, Nm, Unit, read_length


class SoldAs(StrEnum):
    """How a timber's rough sizes are told at the yard."""

    QUARTERS = "quarters"
    """Rough, by quarters of an inch: 4/4, 5/4."""
    DRESSED = "dressed softwood"
    """Planed, by the nominal inches it had before."""
    METRIC_HARDWOOD = "metric hardwood"
    METRIC_SOFTWOOD = "metric softwood"


class SawWay(StrEnum):
    """The way of a saw cut."""

    RIP = "rip"
    """Along the grain: it divides the width."""
    CROSSCUT = "crosscut"
    """Across the grain: it divides the length."""

    @property
    def other(self) -> SawWay:
        """The other way."""
        return SawWay.CROSSCUT if self is SawWay.RIP else SawWay.RIP


@dataclass(frozen=True, slots=True, kw_only=True)
class Keep:
    """Which offcuts are worth keeping and what they are worth.

    Attributes:
        length_nm: the least, along the grain.
        width_nm: the least, across it.
        credit_pct: credit for its area, as a share of what that area of the board costs; rounded down to whole money.
    """

    length_nm: Nm
    width_nm: Nm
    credit_pct: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class MaterialStock:
    """What is different about one material; None where it is as for all.

    Attributes:
        material: its name.
        grain: of a sheet, whether its grain must run along the part; without, parts may be turned.
        (All others as in ``Stock``.)
    """

    material: str
    sold_as: SoldAs | None = None
    length_nm: Nm | None = None
    width_nm: Nm | None = None
    thickness_nm: Nm | None = None
    end_trim_nm: Nm | None = None
    edge_trim_nm: Nm | None = None
    greatest_stave_nm: Nm | None = None
    waste_hundredths: int | None = None
    grain: bool | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Stock:
    """How boards are cut out of rough wood.

    Attributes:
        length_nm: so much longer than finished is a rough part.
        width_nm: so much wider.
        thickness_nm: so much thicker at least; None goes by what a rough size gives when it is planed.
        sheet_nm: so much longer and wider is a part of a sheet.
        end_trim_nm: cut off each end of a rough board, where it is checked.
        edge_trim_nm: taken off each edge of a rough board, to make it straight.
        rip_kerf_nm: what a saw cut along the grain takes.
        crosscut_kerf_nm: the same across the grain.
        joint_nm: what jointing takes off each edge that is glued.
        least_stave_nm: the narrowest stave, rough.
        greatest_stave_nm: the widest; wider boards are glued up. None glues up only what no board is wide enough for.
        spares: boards of each timber and thickness to set machines with.
        spare_length_nm: length of these.
        spare_width_nm: their width.
        practice: whether the practice joints are cut from stock, rather than from offcuts.
        waste_hundredths: what is bought over the rough sizes where no stock is known, in hundredths of a percent.
        stages: rounds of saw cuts, 2 or 3.
        first_cut: the way of the first round; None for the better one.
        keep: offcuts worth keeping.
        materials: what is different about some materials.
    """

    length_nm: Nm
    width_nm: Nm
    thickness_nm: Nm | None
    sheet_nm: Nm
    end_trim_nm: Nm
    edge_trim_nm: Nm
    rip_kerf_nm: Nm
    crosscut_kerf_nm: Nm
    joint_nm: Nm
    least_stave_nm: Nm
    greatest_stave_nm: Nm | None
    spares: int
    spare_length_nm: Nm
    spare_width_nm: Nm
    practice: bool
    waste_hundredths: int
    stages: int
    first_cut: SawWay | None
    keep: Keep
    materials: tuple[MaterialStock, ...] = ()

    def of(self, material: str) -> MaterialStock:
        """What is different about a material; nothing, where nothing is said of it."""
        return next((each for each in self.materials if each.material == material), MaterialStock(material=material))


def stock_problems(stock: Stock) -> Iterator[Problem]:
    """What is wrong with what is said of stock as a whole."""
    said = {"stock": stock.greatest_stave_nm}
    said |= {f"stock of {each.material}": each.greatest_stave_nm for each in stock.materials}
    for where, greatest in said.items():
        if greatest is not None and greatest < stock.least_stave_nm:
            yield Problem(
                where=where,
                what="its greatest_stave is narrower than the least.",
                remedy="Take a wider one, or say a narrower least_stave, too.",
            )


USUAL = {
    "length": ("1 in", "25 mm"),
    "width": ("1/4 in", "6 mm"),
    "sheet": ("1/8 in", "3 mm"),
    "end_trim": ("2 in", "50 mm"),
    "edge_trim": ("1/4 in", "6 mm"),
    "rip_kerf": ("1/8 in", "3 mm"),
    "crosscut_kerf": ("1/8 in", "3 mm"),
    "joint": ("1/16 in", "1.5 mm"),
    "least_stave": ("2 in", "50 mm"),
    "spare_length": ("16 in", "400 mm"),
    "spare_width": ("4 in", "100 mm"),
    "keep_length": ("12 in", "300 mm"),
    "keep_width": ("3 in", "75 mm"),
}
"""Key → usual length in an inch project and in a metric one."""

USUAL_SPARES = 1
USUAL_WASTE_PCT = 25
USUAL_STAGES: Final = 2
USUAL_CREDIT_PCT = 0


@cache
def usual_stock(unit: Unit) -> Stock:
    """What counts where nothing is said."""
    usual = {key: read_length(said[unit is Unit.MM], unit) for key, said in USUAL.items()}
    return Stock(
        length_nm=usual["length"],
        width_nm=usual["width"],
        thickness_nm=None,
        sheet_nm=usual["sheet"],
        end_trim_nm=usual["end_trim"],
        edge_trim_nm=usual["edge_trim"],
        rip_kerf_nm=usual["rip_kerf"],
        crosscut_kerf_nm=usual["crosscut_kerf"],
        joint_nm=usual["joint"],
        least_stave_nm=usual["least_stave"],
        greatest_stave_nm=None,
        spares=USUAL_SPARES,
        spare_length_nm=usual["spare_length"],
        spare_width_nm=usual["spare_width"],
        practice=True,
        waste_hundredths=USUAL_WASTE_PCT * 100,
        stages=USUAL_STAGES,
        first_cut=None,
        keep=Keep(length_nm=usual["keep_length"], width_nm=usual["keep_width"], credit_pct=USUAL_CREDIT_PCT),
    )


GRAINLESS = frozenset({"MDF", "Particleboard", "Hardboard"})
"""Sheets without grain, by the names under which they are listed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Allowances:
    """What holds for one material, once everything said is taken together; as in ``Stock`` and ``MaterialStock``."""

    sold_as: SoldAs
    length_nm: Nm
    width_nm: Nm
    thickness_nm: Nm | None
    end_trim_nm: Nm
    edge_trim_nm: Nm
    greatest_stave_nm: Nm | None
    waste_hundredths: int
    may_turn: bool


def allowances(stock: Stock, material: Material, unit: Unit) -> Allowances:
    """What is said of a material, else of all, else what is usual: a sheet needs neither planing nor trimming."""
    own, sheet = stock.of(material.name), material.kind is MaterialKind.SHEET
    grain = material.species not in GRAINLESS if own.grain is None else own.grain
    return Allowances(
        sold_as=own.sold_as or usual_sold_as(material, unit),
        length_nm=_first(own.length_nm, stock.sheet_nm if sheet else stock.length_nm),
        width_nm=_first(own.width_nm, stock.sheet_nm if sheet else stock.width_nm),
        thickness_nm=NO_LENGTH if sheet else _either(own.thickness_nm, stock.thickness_nm),
        end_trim_nm=_first(own.end_trim_nm, NO_LENGTH if sheet else stock.end_trim_nm),
        edge_trim_nm=_first(own.edge_trim_nm, NO_LENGTH if sheet else stock.edge_trim_nm),
        greatest_stave_nm=None if sheet else _either(own.greatest_stave_nm, stock.greatest_stave_nm),
        waste_hundredths=stock.waste_hundredths if own.waste_hundredths is None else own.waste_hundredths,
        may_turn=sheet and not grain,
    )


def usual_sold_as(material: Material, unit: Unit) -> SoldAs:
    """How a timber is usually sold: by quarters in an inch project, else by metric sizes as it is hard or soft."""
    if unit is Unit.INCH:
        return SoldAs.QUARTERS
    return SoldAs.METRIC_SOFTWOOD if material.hardness is Hardness.SOFT else SoldAs.METRIC_HARDWOOD


def _first(own: Nm | None, of_all: Nm) -> Nm:
    return of_all if own is None else own


def _either(own: Nm | None, of_all: Nm | None) -> Nm | None:
    return of_all if own is None else own
