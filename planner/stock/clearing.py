"""Trim a board and saw out its defects: the few ways to cut it down to rectangles of clear wood.

A defect is sawn out by cuts along its four sides, each right through what is left of the board. Which side goes first
decides which clear pieces stay long and which stay wide, so every order is tried, and the best few are kept.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from planner.domain.stock import SawWay
from planner.lengths import Nm, Span
from planner.stock.pieces import Board, Saw, Zone

MOST_WAYS = 12
"""Ways of clearing a board that are kept: those that leave the largest rectangles."""
_MOST_TRIED = 400


@dataclass(frozen=True, slots=True, kw_only=True)
class Rest:
    """What is left of a board on the way to clear wood.

    Attributes:
        cut: the way of the cuts that divide it; None for clear wood and for waste.
        clear: whether it is clear wood.
    """

    along: Span
    across: Span
    cut: SawWay | None = None
    pieces: tuple[Rest, ...] = ()
    clear: bool = False

    @property
    def area(self) -> int:
        """Square nanometres."""
        return (self.along[1] - self.along[0]) * (self.across[1] - self.across[0])

    def clear_pieces(self) -> Iterator[Rest]:
        """The clear rectangles, in order."""
        if self.clear:
            yield self
        for piece in self.pieces:
            yield from piece.clear_pieces()


def clearings(board: Board, saw: Saw) -> tuple[Rest, ...]:
    """Ways to come from a whole board to clear rectangles; none if its trim leaves nothing."""
    along = (board.end_trim_nm, Nm(board.length_nm - board.end_trim_nm))
    across = (board.edge_trim_nm, Nm(board.width_nm - board.edge_trim_nm))
    if along[0] >= along[1] or across[0] >= across[1]:
        return ()
    ways = _Clearing(saw).ways(Rest(along=along, across=across), board.defects)
    best = sorted(dict.fromkeys(ways), key=_worth, reverse=True)[:MOST_WAYS]
    return tuple(_trimmed(board, saw, way) for way in best)


def _worth(rest: Rest) -> int:
    """Large rectangles count for more than the same area in small ones."""
    return sum(piece.area**2 for piece in rest.clear_pieces())


class _Clearing:
    def __init__(self, saw: Saw) -> None:
        self.saw = saw
        self.tries = 0

    def ways(self, rest: Rest, defects: tuple[Zone, ...]) -> list[Rest]:
        """Every way to clear what is left; only the first ones of very many."""
        here = [zone for zone in defects if _meet(rest, zone)]
        if not here:
            return [Rest(along=rest.along, across=rest.across, clear=True)]
        if all(zone.along[0] <= rest.along[0] and rest.along[1] <= zone.along[1] for zone in here[:1]) and all(
            zone.across[0] <= rest.across[0] and rest.across[1] <= zone.across[1] for zone in here[:1]
        ):
            return [rest]
        return [
            way for zone in here[:1] for halves in self._cuts(rest, zone) for way in self._both(rest, halves, defects)
        ]

    def _cuts(self, rest: Rest, zone: Zone) -> Iterator[tuple[SawWay, tuple[Rest, ...]]]:
        """Cuts along one side of a defect, with the kerf inside it."""
        for cut in (SawWay.CROSSCUT, SawWay.RIP):
            kerf = self.saw.kerf(cut)
            low, high = _extent(rest, cut)
            start, end = zone.along if cut is SawWay.CROSSCUT else zone.across
            if low < start:
                yield cut, _kept(_part(rest, cut, (low, start)), _part(rest, cut, (Nm(start + kerf), high)))
            if end < high:
                yield cut, _kept(_part(rest, cut, (low, Nm(end - kerf))), _part(rest, cut, (end, high)))

    def _both(self, rest: Rest, halves: tuple[SawWay, tuple[Rest, ...]], defects: tuple[Zone, ...]) -> Iterator[Rest]:
        self.tries += 1
        if self.tries > _MOST_TRIED:
            return
        cut, pieces = halves
        combined: list[tuple[Rest, ...]] = [()]
        for piece in pieces:
            combined = [(*before, way) for before in combined for way in self.ways(piece, defects)]
        for each in combined:
            yield Rest(along=rest.along, across=rest.across, cut=cut, pieces=each)


def _meet(rest: Rest, zone: Zone) -> bool:
    return all(a[0] < b[1] and b[0] < a[1] for a, b in ((rest.along, zone.along), (rest.across, zone.across)))


def _extent(rest: Rest, cut: SawWay) -> Span:
    return rest.across if cut is SawWay.RIP else rest.along


def _part(rest: Rest, cut: SawWay, span: Span) -> Rest:
    if cut is SawWay.RIP:
        return Rest(along=rest.along, across=span)
    return Rest(along=span, across=rest.across)


def _kept(*pieces: Rest) -> tuple[Rest, ...]:
    """Those that the saw leaves anything of."""
    return tuple(each for each in pieces if each.along[0] < each.along[1] and each.across[0] < each.across[1])


def _trimmed(board: Board, saw: Saw, cleared: Rest) -> Rest:
    """The whole board, trimmed at its ends and then at its edges to what is cleared."""
    length = (Nm(0), board.length_nm)
    width = (Nm(0), board.width_nm)
    for cut, trim, whole in (
        (SawWay.RIP, board.edge_trim_nm, Rest(along=cleared.along, across=width)),
        (SawWay.CROSSCUT, board.end_trim_nm, Rest(along=length, across=width)),
    ):
        if trim:
            low, high = _extent(whole, cut)
            kerf = saw.kerf(cut)
            start = _part(whole, cut, (low, Nm(low + trim - kerf)))
            end = _part(whole, cut, (Nm(high - trim + kerf), high))
            cleared = Rest(
                along=whole.along,
                across=whole.across,
                cut=cut,
                pieces=(*_kept(start), cleared, *_kept(end)),
            )
    return cleared
