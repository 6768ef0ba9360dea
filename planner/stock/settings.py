"""How often the fence or the stop must be set: different rip widths and different stop lengths of a cutting plan."""

from __future__ import annotations

from collections.abc import Iterable

from planner.domain.stock import SawWay
from planner.lengths import Nm
from planner.stock.pieces import Kind, Layout, Piece


def settings(layouts: Iterable[Layout]) -> frozenset[tuple[SawWay, Nm]]:
    """Every fence or stop setting that the layouts need: the way of the cut and the size it leaves.

    Nothing is set for waste and offcuts, which are what is left over, nor for a piece that needs no cut.
    """
    return frozenset(
        (piece.cut, _size(child, piece.cut))
        for layout in layouts
        for piece in layout.whole.within()
        if piece.cut is not None
        for child in piece.pieces
        if child.kind is Kind.PART or (child.kind is Kind.DIVIDED and piece.stage > 0)
        if _size(child, piece.cut) != _size(piece, piece.cut)
    )


def _size(piece: Piece, cut: SawWay) -> Nm:
    return piece.width_nm if cut is SawWay.RIP else piece.length_nm
