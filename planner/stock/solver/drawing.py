"""From columns to layouts: every board as a tree of cuts in nanometres, every part with its mark."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from planner.domain.stock import Keep, SawWay
from planner.lengths import Nm, Span
from planner.stock.clearing import Rest
from planner.stock.pieces import Board, CuttingPlan, Job, Kind, Layout, Piece
from planner.stock.settings import settings
from planner.stock.solver.columns import Column, Cut, Strip
from planner.stock.solver.task import Size, Task

_SURPLUS = ""
"""Mark of a part that is drawn for its size only."""


def cutting_plan(task: Task, columns: Sequence[Column]) -> CuttingPlan:
    """The plan that cuts these columns; what they give beyond the demand is left uncut, what they lack is missing."""
    marks = [list(reversed(size.marks)) for size in task.sizes]
    used: Counter[int] = Counter()
    layouts = []
    for column in sorted(columns, key=lambda each: (each.sort, -each.counts.sum(), each.counts.tobytes())):
        sort = task.sorts[column.sort]
        mark, number = sort.numbers[used[column.sort]]
        used[column.sort] += 1
        whole = _Drawing(task, column, marks).whole()
        if any(piece.kind is Kind.PART for piece in whole.within()):
            layouts.append(Layout(board=mark, number=number, whole=whole))
        else:
            used[column.sort] -= 1
    missing = sorted([mark for rest in marks for mark in rest] + list(task.unfit))
    return _summed(task.job, layouts, missing)


def _summed(job: Job, layouts: Sequence[Layout], missing: Sequence[str]) -> CuttingPlan:
    boards = {board.mark: board for board in job.boards}
    credit = sum(credits_of(boards[each.board], each.whole, job.wish.keep) for each in layouts)
    return CuttingPlan(
        layouts=tuple(layouts),
        missing=tuple(missing),
        credit=credit,
        cost=sum(boards[each.board].cost for each in layouts) - credit,
        settings=len(settings(layouts)),
    )


def credited(task: Task, column: Column) -> Column:
    """The column with the credit for its offcuts taken off its cost."""
    keep = task.job.wish.keep
    if keep is None:
        return column
    marks = [[_SURPLUS] * int(count) for count in column.counts]
    board = task.sorts[column.sort].board
    credit = credits_of(board, _Drawing(task, column, marks).whole(), keep)
    return replace(column, cost=float(board.cost - credit))


def credits_of(board: Board, whole: Piece, keep: Keep | None) -> int:
    """What the offcuts of a board are worth, each rounded down."""
    if keep is None:
        return 0
    areas = (piece.length_nm * piece.width_nm for piece in whole.within() if piece.kind is Kind.OFFCUT)
    return sum(board.cost * keep.credit_pct * area // (100 * board.length_nm * board.width_nm) for area in areas)


@dataclass(frozen=True, slots=True)
class _Placed:
    """A part that will be cut: its size in the way it lies."""

    size: Size
    turned: bool
    mark: str

    def extent(self, cut: SawWay) -> int:
        """Size in the direction that a cut of this way divides."""
        return self.size.width_nm if (cut is SawWay.RIP) != self.turned else self.size.length_nm


class _Drawing:
    def __init__(self, task: Task, column: Column, marks: Sequence[list[str]]) -> None:
        self.task = task
        self.column = column
        self.marks = marks
        self.saw = task.job.saw
        self.keep = task.job.wish.keep

    def whole(self) -> Piece:
        """The board as a tree of cuts."""
        way = self.task.sorts[self.column.sort].ways[self.column.way]
        return self._cleared(way, iter(self.column.cuts))

    def _cleared(self, rest: Rest, cuts: Iterator[Cut]) -> Piece:
        if rest.clear:
            return self._rectangle(rest.along, rest.across, next(cuts))
        if rest.cut is None:
            return Piece(along=rest.along, across=rest.across, kind=Kind.WASTE)
        pieces = tuple(self._cleared(piece, cuts) for piece in rest.pieces)
        return Piece(along=rest.along, across=rest.across, kind=Kind.DIVIDED, cut=rest.cut, pieces=pieces)

    def _rectangle(self, along: Span, across: Span, cut: Cut) -> Piece:
        sections = [
            [placed for strip in section if (placed := self._placed(strip, cut.strips))] for section in cut.sections
        ]
        whole = Piece(along=along, across=across, kind=Kind.WASTE)
        if not any(sections):
            return self._left(whole)
        if not cut.sectioned:
            return self._stack(whole, cut.strips, sections[0], 1)
        sized = sorted(
            ((self._reach(section, cut.strips), section) for section in sections if section), key=_size, reverse=True
        )
        pieces = [
            self._stack(piece, cut.strips, section, 2)
            for piece, (_, section) in zip(
                self._slices(whole, cut.strips.other, [s for s, _ in sized]), sized, strict=True
            )
        ]
        return self._divided(whole, cut.strips.other, 1, pieces)

    def _placed(self, strip: Strip, strips: SawWay) -> list[_Placed]:
        """Parts of a strip that are still wanted, the longest first."""
        found = [
            _Placed(self.task.sizes[row], turned, self.marks[row].pop())
            for row, turned, times in strip
            for _ in range(min(times, len(self.marks[row])))
        ]
        return sorted(found, key=lambda each: (each.extent(strips.other), each.extent(strips)), reverse=True)

    def _reach(self, section: Sequence[Sequence[_Placed]], strips: SawWay) -> int:
        kerf = self.saw.kerf(strips.other)
        return max(sum(each.extent(strips.other) + kerf for each in strip) - kerf for strip in section)

    def _stack(self, whole: Piece, strips: SawWay, stack: Sequence[list[_Placed]], stage: int) -> Piece:
        sized = sorted(
            ((max(each.extent(strips) for each in strip), strip) for strip in stack), key=_size, reverse=True
        )
        pieces = [
            self._strip(piece, strips, strip, stage + 1)
            for piece, (_, strip) in zip(self._slices(whole, strips, [s for s, _ in sized]), sized, strict=True)
        ]
        return self._divided(whole, strips, stage, pieces)

    def _strip(self, whole: Piece, strips: SawWay, strip: list[_Placed], stage: int) -> Piece:
        sizes = [each.extent(strips.other) for each in strip]
        pieces = [
            self._part(piece, strips, placed, stage + 1)
            for piece, placed in zip(self._slices(whole, strips.other, sizes), strip, strict=True)
        ]
        return self._divided(whole, strips.other, stage, pieces)

    def _part(self, whole: Piece, strips: SawWay, placed: _Placed, stage: int) -> Piece:
        size = placed.extent(strips)
        (piece,) = self._slices(whole, strips, [size])
        part = replace(piece, kind=Kind.PART, mark=placed.mark, turned=placed.turned)
        low, high = _span(whole, strips)
        return part if size == high - low else self._divided(whole, strips, stage, [part])

    def _slices(self, whole: Piece, cut: SawWay, sizes: Sequence[int]) -> list[Piece]:
        """Pieces of these sizes side by side, a kerf between them."""
        kerf = self.saw.kerf(cut)
        place = _span(whole, cut)[0]
        found = []
        for size in sizes:
            found.append(_spanning(whole, cut, (place, Nm(place + size))))
            place = Nm(place + size + kerf)
        return found

    def _divided(self, whole: Piece, cut: SawWay, stage: int, pieces: Sequence[Piece]) -> Piece:
        """A piece and what it falls into, with what is left over at the end."""
        high = _span(whole, cut)[1]
        start = Nm(_span(pieces[-1], cut)[1] + self.saw.kerf(cut))
        rest = (self._left(_spanning(whole, cut, (start, high))),) if start < high else ()
        return replace(whole, kind=Kind.DIVIDED, cut=cut, stage=stage, pieces=(*pieces, *rest))

    def _left(self, piece: Piece) -> Piece:
        keep = self.keep
        worth_it = keep is not None and piece.length_nm >= keep.length_nm and piece.width_nm >= keep.width_nm
        return replace(piece, kind=Kind.OFFCUT if worth_it else Kind.WASTE)


def _size(sized: tuple[int, object]) -> int:
    return sized[0]


def _span(piece: Piece, cut: SawWay) -> Span:
    return piece.across if cut is SawWay.RIP else piece.along


def _spanning(whole: Piece, cut: SawWay, span: Span) -> Piece:
    """The slice of a piece between two cuts."""
    if cut is SawWay.RIP:
        return Piece(along=whole.along, across=span, kind=Kind.WASTE)
    return Piece(along=span, across=whole.across, kind=Kind.WASTE)
