"""Is this plan one that a saw can make? The last word on every cutting plan, before anybody sees it.

It knows nothing of how plans are found and shares no code with that, only the words of ``pieces``. It follows every
board from the whole one down the tree of cuts and adds everything up again.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from planner.domain.stock import SawWay
from planner.errors import Problem
from planner.lengths import Span
from planner.stock.pieces import Board, CuttingPlan, Job, Kind, Layout, Part, Piece


class UnsoundPlanError(Exception):
    """Our own plan is wrong: a bug, never the maker's doing."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems = tuple(problems)
        super().__init__("\n".join(map(str, self.problems)))


def must_be_sound(job: Job, plan: CuttingPlan) -> None:
    """Refuse a plan that doesn't hold.

    Raises:
        UnsoundPlanError: with all faults.
    """
    problems = faults(job, plan)
    if problems:
        raise UnsoundPlanError(problems)


def faults(job: Job, plan: CuttingPlan) -> tuple[Problem, ...]:
    """Everything that is wrong with a plan; nothing if the saw can make it and its figures are right."""
    return (*_count_faults(job, plan), *_stock_faults(job, plan), *_layout_faults(job, plan), *_sum_faults(job, plan))


def _fault(where: str, what: str, remedy: str) -> Problem:
    return Problem(where=where, what=what, remedy=remedy)


# --- parts, boards and money --------------------------------------------------------------------------------


def _count_faults(job: Job, plan: CuttingPlan) -> Iterator[Problem]:
    wanted = Counter(mark for part in job.parts for mark in part.marks)
    cut = Counter(piece.mark for piece in _leaves(plan) if piece.kind is Kind.PART)
    told = cut + Counter(plan.missing)
    for mark in sorted(wanted.keys() | told.keys()):
        if wanted[mark] != told[mark]:
            yield _fault(mark, f"cut or missing {told[mark]} times.", f"It is wanted {wanted[mark]} times.")


def _stock_faults(job: Job, plan: CuttingPlan) -> Iterator[Problem]:
    boards = {board.mark: board for board in job.boards}
    for (mark, number), times in sorted(Counter((each.board, each.number) for each in plan.layouts).items()):
        count = boards[mark].count if mark in boards else 0
        if number < 1 or (count is not None and number > count):
            yield _fault(f"{mark} {number}", "there is no such board.", f"There are {count}.")
        if times != 1:
            yield _fault(f"{mark} {number}", f"cut up {times} times.", "A board can be cut up once.")


def _sum_faults(job: Job, plan: CuttingPlan) -> Iterator[Problem]:
    boards = {board.mark: board for board in job.boards}
    known = [each for each in plan.layouts if each.board in boards]
    credit = sum(_credit(job, boards[each.board], piece) for each in known for piece in each.whole.within())
    cost = sum(boards[each.board].cost for each in known) - credit
    if plan.credit != credit:
        yield _fault("credit", f"{plan.credit}.", f"The offcuts come to {credit}.")
    if plan.cost != cost:
        yield _fault("cost", f"{plan.cost}.", f"Boards less credit come to {cost}.")
    needed = len(set(_settings(plan)))
    if plan.settings != needed:
        yield _fault("settings", f"{plan.settings}.", f"The cuts need {needed}.")


def _credit(job: Job, board: Board, piece: Piece) -> int:
    if piece.kind is not Kind.OFFCUT or job.wish.keep is None:
        return 0
    area = (piece.along[1] - piece.along[0]) * (piece.across[1] - piece.across[0])
    return board.cost * job.wish.keep.credit_pct * area // (100 * board.length_nm * board.width_nm)


def _settings(plan: CuttingPlan) -> Iterator[tuple[SawWay, int]]:
    for layout in plan.layouts:
        for piece in layout.whole.within():
            cut = piece.cut or SawWay.RIP
            for child in piece.pieces:
                sized = child.kind is Kind.PART or (child.kind is Kind.DIVIDED and piece.stage >= 1)
                low, high = _extent(child, cut)
                if sized and (low, high) != _extent(piece, cut):
                    yield cut, high - low


def _leaves(plan: CuttingPlan) -> Iterator[Piece]:
    return (piece for each in plan.layouts for piece in each.whole.within() if not piece.pieces)


# --- the cuts of one board ----------------------------------------------------------------------------------


def _layout_faults(job: Job, plan: CuttingPlan) -> Iterator[Problem]:
    boards = {board.mark: board for board in job.boards}
    parts = {mark: part for part in job.parts for mark in part.marks}
    for layout in plan.layouts:
        if layout.board in boards:
            yield from _Sawing(job, parts, boards[layout.board], layout).faults()
        else:
            yield _fault(layout.board, "isn't in the stock.", "Only boards that were offered can be cut.")


@dataclass(frozen=True, slots=True)
class _Sawing:
    """One board on its way through the saw."""

    job: Job
    parts: Mapping[str, Part]
    board: Board
    layout: Layout

    def faults(self) -> Iterator[Problem]:
        whole = self.layout.whole
        if whole.along != (0, self.board.length_nm) or whole.across != (0, self.board.width_nm):
            yield self._fault(whole, "isn't the whole board.", "A layout starts with the board as it is.")
        yield from self._piece(whole, ())

    def _fault(self, piece: Piece, what: str, remedy: str) -> Problem:
        place = f"{piece.along[0]}–{piece.along[1]} along, {piece.across[0]}–{piece.across[1]} across (nm)"
        return _fault(f"{self.layout.board} {self.layout.number}, {piece.mark or piece.kind} at {place}", what, remedy)

    def _piece(self, piece: Piece, above: tuple[Piece, ...]) -> Iterator[Problem]:
        if piece.along[0] >= piece.along[1] or piece.across[0] >= piece.across[1]:
            yield self._fault(piece, "has no wood.", "A piece has a length and a width.")
        if (piece.kind is Kind.DIVIDED) != bool(piece.pieces) or bool(piece.pieces) != (piece.cut is not None):
            yield self._fault(piece, "is divided without pieces or has pieces without a cut.", "Both or neither.")
        if piece.kind is Kind.PART:
            yield from self._part(piece)
        if piece.kind is Kind.OFFCUT:
            yield from self._offcut(piece)
        if piece.cut is not None:
            yield from self._stage(piece, above)
            yield from self._cuts(piece, piece.cut)
        for child in piece.pieces:
            yield from self._piece(child, (*above, piece))

    def _part(self, piece: Piece) -> Iterator[Problem]:
        part = self.parts.get(piece.mark)
        if part is None:
            yield self._fault(piece, "is no part of this job.", "Cut only what is asked for.")
            return
        size = (piece.along[1] - piece.along[0], piece.across[1] - piece.across[0])
        asked = (part.length_nm, part.width_nm)
        if size != (asked[::-1] if piece.turned else asked):
            yield self._fault(piece, f"is {size[0]} by {size[1]} nm.", f"It should be {asked[0]} by {asked[1]} nm.")
        if piece.turned and not part.may_turn:
            yield self._fault(piece, "lies across the grain.", "It may not be turned.")
        if not self._clear(piece):
            yield self._fault(piece, "isn't clear wood.", "Keep to the wood inside the trim and clear of defects.")

    def _offcut(self, piece: Piece) -> Iterator[Problem]:
        keep = self.job.wish.keep
        length, width = piece.along[1] - piece.along[0], piece.across[1] - piece.across[0]
        if keep is None or length < keep.length_nm or width < keep.width_nm:
            yield self._fault(piece, "is too small to keep.", "Count it as waste.")
        if not self._clear(piece):
            yield self._fault(piece, "isn't clear wood.", "Only clear offcuts are worth keeping.")

    def _clear(self, piece: Piece) -> bool:
        board = self.board
        inside = (
            board.end_trim_nm <= piece.along[0]
            and piece.along[1] <= board.length_nm - board.end_trim_nm
            and board.edge_trim_nm <= piece.across[0]
            and piece.across[1] <= board.width_nm - board.edge_trim_nm
        )
        touched = any(
            _overlap(piece.along, zone.along) and _overlap(piece.across, zone.across) for zone in board.defects
        )
        return inside and not touched

    def _cuts(self, piece: Piece, cut: SawWay) -> Iterator[Problem]:
        kerf = self.job.saw.rip_nm if cut is SawWay.RIP else self.job.saw.crosscut_nm
        place, last = _extent(piece, cut)
        for number, child in enumerate(piece.pieces):
            if _extent(child, cut.other) != _extent(piece, cut.other):
                yield self._fault(child, "isn't cut right through.", "Every cut goes from one side to the other.")
            low, high = _extent(child, cut)
            gap = low - place
            if (gap != kerf) if number else not 0 <= gap <= kerf:
                yield self._fault(child, f"{gap} nm from what is before it.", f"The saw takes {kerf} nm.")
            place = high
        if not 0 <= last - place <= kerf:
            yield self._fault(piece, f"{last - place} nm are left at its end.", f"The saw takes at most {kerf} nm.")

    def _stage(self, piece: Piece, above: tuple[Piece, ...]) -> Iterator[Problem]:
        wish = self.job.wish
        before = above[-1] if above else None
        if piece.stage == 0:
            if self._clear(piece):
                yield self._fault(piece, "is cut before the first stage.", "Clear wood is cut in stages.")
            return
        if not self._clear(piece):
            yield self._fault(piece, "isn't clear wood.", "Trim the board and saw out its defects first.")
        came = before.stage if before else 0
        if piece.stage != came + 1:
            yield self._fault(piece, f"stage {piece.stage} after stage {came}.", "One stage follows another.")
        if before and came and before.cut is piece.cut:
            yield self._fault(piece, "is cut the same way as the piece it comes from.", "Stages take turns.")
        if piece.stage == 1 and wish.first not in (None, piece.cut):
            yield self._fault(piece, f"is first cut by a {piece.cut}.", f"The first cuts are to be {wish.first}s.")
        yield from self._last_stage(piece)

    def _last_stage(self, piece: Piece) -> Iterator[Problem]:
        stages = self.job.wish.stages
        if piece.stage > stages + 1:
            yield self._fault(piece, f"is cut in stage {piece.stage}.", f"There are {stages}, and trimming.")
        if piece.stage == stages + 1:
            kinds = sorted(child.kind for child in piece.pieces)
            if kinds.count(Kind.PART) != 1 or Kind.DIVIDED in kinds:
                yield self._fault(piece, "is divided after the last stage.", "Only one part may be trimmed there.")


def _extent(piece: Piece, cut: SawWay) -> Span:
    """Where a piece lies in the direction that a cut divides."""
    return piece.across if cut is SawWay.RIP else piece.along


def _overlap(a: Span, b: Span) -> bool:
    return a[0] < b[1] and b[0] < a[1]
