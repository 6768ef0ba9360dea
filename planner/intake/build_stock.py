"""From the table of a file to what the maker says of stock; usual values are put in here."""

from __future__ import annotations

from typing import TYPE_CHECKING

from planner.domain.stock import Keep, MaterialStock, SawWay, SoldAs, Stock, usual_stock
from planner.lengths import Nm, Unit

if TYPE_CHECKING:
    from planner.intake.file_stock import KeepTable, MaterialStockTable, StockTable


def stock_of(table: StockTable | None, unit: Unit) -> Stock | None:
    """What is said of stock; None where nothing is, or nothing but what is usual."""
    if table is None:
        return None
    usual = usual_stock(unit)
    stock = Stock(
        length_nm=_said(table.length, usual.length_nm),
        width_nm=_said(table.width, usual.width_nm),
        thickness_nm=table.thickness,
        sheet_nm=_said(table.sheet, usual.sheet_nm),
        end_trim_nm=_said(table.end_trim, usual.end_trim_nm),
        edge_trim_nm=_said(table.edge_trim, usual.edge_trim_nm),
        rip_kerf_nm=_said(table.rip_kerf, usual.rip_kerf_nm),
        crosscut_kerf_nm=_said(table.crosscut_kerf, usual.crosscut_kerf_nm),
        joint_nm=_said(table.joint, usual.joint_nm),
        least_stave_nm=_said(table.least_stave, usual.least_stave_nm),
        greatest_stave_nm=table.greatest_stave,
        spares=table.spares,
        spare_length_nm=_said(table.spare_length, usual.spare_length_nm),
        spare_width_nm=_said(table.spare_width, usual.spare_width_nm),
        practice=table.practice,
        waste_hundredths=table.waste,
        stages=table.stages,
        first_cut=SawWay(table.first_cut) if table.first_cut else None,
        keep=_keep(table.keep, usual.keep),
        materials=tuple(_material(name, each) for name, each in table.material.items()),
    )
    return None if stock == usual else stock


def _said(said: Nm | None, usual: Nm) -> Nm:
    return usual if said is None else said


def _keep(table: KeepTable | None, usual: Keep) -> Keep:
    if table is None:
        return usual
    return Keep(
        length_nm=_said(table.length, usual.length_nm),
        width_nm=_said(table.width, usual.width_nm),
        credit_pct=table.credit,
    )


def _material(name: str, table: MaterialStockTable) -> MaterialStock:
    return MaterialStock(
        material=name,
        sold_as=SoldAs(table.sold_as) if table.sold_as else None,
        length_nm=table.length,
        width_nm=table.width,
        thickness_nm=table.thickness,
        end_trim_nm=table.end_trim,
        edge_trim_nm=table.edge_trim,
        greatest_stave_nm=table.greatest_stave,
        waste_hundredths=table.waste,
        grain=table.grain,
    )
