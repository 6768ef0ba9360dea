"""The saw cuts of a cutting plan, setting by setting.

Boards are trimmed and cleared of defects first, by marks on the board. Then round follows round; within a round, cuts
of one setting follow each other, whatever board they are in. A piece is cut in a later round than the one it comes
from, so no cut comes before its piece is there.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import groupby

from planner.domain.stock import SawWay
from planner.lengths import Nm
from planner.stock.pieces import CuttingPlan, Kind, Layout, Piece


@dataclass(frozen=True, slots=True, kw_only=True)
class SawCut:
    """One piece sawn off.

    Attributes:
        of: what it is sawn off: a board's mark, or that of a piece.
        gives: mark of the part, or name of the piece, which is cut further.
        kind: what it is then.
        length_nm: along the grain of the board.
        width_nm: across it.
        place_nm: where it begins, from the end or the edge of what it is sawn off.
        turned: whether it is a part that lies across the board.
    """

    of: str
    gives: str
    kind: Kind
    length_nm: Nm
    width_nm: Nm
    place_nm: Nm
    turned: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class SawSetting:
    """Cuts made with one setting of the fence or the stop.

    Attributes:
        number: in order, from 1.
        stage: the round: 0 for trimming boards and clearing them of defects.
        size_nm: what the fence or the stop is set to; None where cuts are made to marks.
    """

    number: int
    stage: int
    way: SawWay
    size_nm: Nm | None
    cuts: tuple[SawCut, ...]


def saw_settings(plan: CuttingPlan) -> tuple[SawSetting, ...]:
    """All cuts of a plan, in order."""
    several = Counter(layout.board for layout in plan.layouts)
    cuts = [each for layout in plan.layouts for each in _cuts(layout.whole, board_name(layout, several))]
    together = groupby(sorted(cuts, key=_Cut.turn), key=_Cut.turn)
    return tuple(
        SawSetting(
            number=number,
            stage=same[0].stage,
            way=same[0].way,
            size_nm=same[0].size_nm,
            cuts=tuple(each.cut for each in same),
        )
        for number, same in enumerate((list(group) for _, group in together), start=1)
    )


@dataclass(frozen=True, slots=True)
class _Cut:
    """A saw cut with its setting, and how many cuts deep in the board it comes."""

    stage: int
    depth: int
    way: SawWay
    size_nm: Nm | None
    cut: SawCut

    def turn(self) -> tuple[int, int, int, int]:
        """When it is made: trimming in the order of its cuts, then round by round, the largest size first."""
        trimming = self.depth if self.stage == 0 else 0
        return self.stage, trimming, tuple(SawWay).index(self.way), -(self.size_nm or 0)


def board_name(layout: Layout, several: Counter[str]) -> str:
    """What to write on the board: its mark, with a number where several of it are cut."""
    return f"{layout.board}.{layout.number}" if several[layout.board] > 1 else layout.board


def _cuts(piece: Piece, name: str, depth: int = 0) -> Iterator[_Cut]:
    """The cuts that divide a piece, and those that divide what comes of it."""
    piece = _uncut(piece)
    if piece.cut is None:
        return
    children = [_uncut(child) for child in piece.pieces]
    for child, gives in zip(children, _named(piece, children, name), strict=True):
        size = child.width_nm if piece.cut is SawWay.RIP else child.length_nm
        start = child.across[0] - piece.across[0] if piece.cut is SawWay.RIP else child.along[0] - piece.along[0]
        whole = size == (piece.width_nm if piece.cut is SawWay.RIP else piece.length_nm)
        if child.kind in {Kind.PART, Kind.DIVIDED} and not whole:
            cut = SawCut(
                of=name,
                gives=gives,
                kind=child.kind,
                length_nm=child.length_nm,
                width_nm=child.width_nm,
                place_nm=Nm(start),
                turned=child.turned,
            )
            yield _Cut(piece.stage, depth, piece.cut, size if piece.stage else None, cut)
        yield from _cuts(child, gives, depth + 1)


def _uncut(piece: Piece) -> Piece:
    """What a piece is that needs no cut to become its only piece: as wide as the one strip that is ripped of it."""
    while len(piece.pieces) == 1 and (piece.along, piece.across) == (piece.pieces[0].along, piece.pieces[0].across):
        piece = piece.pieces[0]
    return piece


def _named(piece: Piece, children: list[Piece], name: str) -> list[str]:
    """A name for each piece: parts have their marks; the one good piece of a trimmed board keeps the board's name."""
    to_cut = [child for child in children if child.kind is Kind.DIVIDED]
    alone = piece.stage == 0 and len(to_cut) == 1
    numbers = iter(range(1, len(to_cut) + 1))
    return [_name(child, name if alone else "", name, numbers) for child in children]


def _name(child: Piece, same: str, above: str, numbers: Iterator[int]) -> str:
    match child.kind:
        case Kind.PART:
            return child.mark
        case Kind.DIVIDED:
            return same or f"{above}-{next(numbers)}"
        case _:
            return child.kind.value


def offcuts(layouts: Iterable[Layout]) -> Iterator[tuple[Layout, Piece]]:
    """The pieces that go back to the rack."""
    for layout in layouts:
        yield from ((layout, piece) for piece in layout.whole.within() if piece.kind is Kind.OFFCUT)
