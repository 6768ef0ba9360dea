"""The wood that there is: on the rack, and on offer."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from planner.domain.rack import HUNDREDTHS, Lot
from planner.lengths import Grid, show_length
from planner.present.table import Cell, Column, Group, Kind, Table
from planner.present.views.buying import PER_WORDS, price_words


def rack(lots: Iterable[Lot], grid: Grid) -> Table:
    """One row for each lot; the rack first, then yard by yard."""
    by_place: dict[str, list[Lot]] = {}
    for lot in sorted(lots, key=lambda lot: (not lot.on_hand, (lot.yard or "").casefold())):
        by_place.setdefault(lot.yard or "", []).append(lot)
    return Table(
        title="Wood",
        grid=grid,
        columns=(
            Column(heading="Mark", strong=True),
            Column(heading="Material"),
            Column(heading="Boards", kind=Kind.COUNT),
            Column(heading=f"Length × width × thickness, {grid.unit}"),
            Column(heading="Price"),
            Column(heading="Remarks"),
        ),
        groups=tuple(
            Group(heading=yard or "On the rack", rows=tuple(_row(lot, grid) for lot in sorted_lots(of_yard)))
            for yard, of_yard in by_place.items()
        ),
    )


def sorted_lots(lots: Sequence[Lot]) -> list[Lot]:
    """By material, the thickest first."""
    return sorted(lots, key=lambda lot: (lot.material.casefold(), -lot.thickness_nm, lot.mark))


def _row(lot: Lot, grid: Grid) -> tuple[Cell, ...]:
    length, width = _range(lot.shortest_nm, lot.longest_nm, grid), _range(lot.narrowest_nm, lot.widest_nm, grid)
    size = f"{length} × {width} × {show_length(lot.thickness_nm, grid)} {lot.surfaced}"
    least = ""
    if lot.least_hundredths is not None and lot.price:
        least = f"at least {lot.least_hundredths / HUNDREDTHS:g} {PER_WORDS[lot.price.per]}"
    flaws = f"{len(lot.flaws)} defect{'' if len(lot.flaws) == 1 else 's'}" if lot.flaws else ""
    remarks = "; ".join(each for each in (least, flaws, lot.remark) if each)
    return lot.mark, lot.material, lot.count, size, price_words(lot), remarks


def _range(low: int, high: int, grid: Grid) -> str:
    return show_length(low, grid) if low == high else f"{show_length(low, grid)} to {show_length(high, grid)}"
