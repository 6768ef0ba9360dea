"""What the maker says of stock as a table of a file; what is usual is left out."""

from __future__ import annotations

from planner.domain.stock import Keep, MaterialStock, Stock, usual_stock
from planner.intake.sharing import Table
from planner.lengths import Unit, write_length
from planner.quantities import write_percent

_LENGTHS = (
    "length", "width", "thickness", "sheet", "end_trim", "edge_trim", "rip_kerf", "crosscut_kerf", "joint",
    "least_stave", "greatest_stave", "spare_length", "spare_width",
)  # fmt: skip
_PLAIN = ("spares", "practice", "stages")
_OF_MATERIAL = ("length", "width", "thickness", "end_trim", "edge_trim", "greatest_stave")


def stock_table(stock: Stock | None, unit: Unit) -> Table:
    """What differs from what is usual; empty where nothing is said."""
    if stock is None:
        return {}
    usual = usual_stock(unit)
    table: Table = _lengths(stock, usual, _LENGTHS, unit)
    table |= {key: getattr(stock, key) for key in _PLAIN if getattr(stock, key) != getattr(usual, key)}
    if stock.waste_hundredths != usual.waste_hundredths:
        table["waste"] = write_percent(stock.waste_hundredths)
    if stock.first_cut:
        table["first_cut"] = str(stock.first_cut)
    keep = _keep(stock.keep, usual.keep, unit)
    if keep:
        table["keep"] = keep
    if stock.materials:
        table["material"] = {each.material: _material(each, unit) for each in stock.materials}
    return table


def _lengths(said: object, usual: object, keys: tuple[str, ...], unit: Unit) -> Table:
    pairs = {key: (getattr(said, f"{key}_nm"), getattr(usual, f"{key}_nm")) for key in keys}
    return {key: write_length(own, unit) for key, (own, other) in pairs.items() if own is not None and own != other}


def _keep(keep: Keep, usual: Keep, unit: Unit) -> Table:
    credit = {} if keep.credit_pct == usual.credit_pct else {"credit": keep.credit_pct}
    return {**_lengths(keep, usual, ("length", "width"), unit), **credit}


def _material(own: MaterialStock, unit: Unit) -> Table:
    nothing = MaterialStock(material=own.material)
    return {
        **({"sold_as": str(own.sold_as)} if own.sold_as else {}),
        **_lengths(own, nothing, _OF_MATERIAL, unit),
        **({} if own.waste_hundredths is None else {"waste": write_percent(own.waste_hundredths)}),
        **({} if own.grain is None else {"grain": own.grain}),
    }
