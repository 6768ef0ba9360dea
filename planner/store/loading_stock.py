"""From its rows to what a project says of stock."""

from __future__ import annotations

from planner.domain.stock import Keep, MaterialStock, Stock
from planner.store.rows import Rows
from planner.store.stock_tables import MaterialStockRow, StockRow


def stock(rows: Rows, where: str) -> Stock | None:
    """What is said of stock; None where nothing is."""
    row = rows.maybe(StockRow)
    if row is None:
        return None
    keep = Keep(length_nm=row.keep_length_nm, width_nm=row.keep_width_nm, credit_pct=row.keep_credit_pct)
    materials = tuple(
        rows.value(MaterialStock, each, where, material=rows.materials[each.material_id].name)
        for each in rows.several(MaterialStockRow)
    )
    return rows.value(Stock, row, where, keep=keep, materials=materials)
