"""Boards let free into grooves or rabbets: room to swell in the damp season, and still covered in the dry one.

One rule for bottoms, backs, dust panels and the panels of frames, since it asks of the wood only: across its grain a
board lies in a cut at both its edges, and the parts that hold these apart run with the grain there and keep their
distance. What is glued in front moves at its other edge alone. A back lies in rabbets and is fixed, so it can't slide;
any other panel may slide to one side unless its middle is held.

Common practice, no source: that a board must lie in its groove at all times, by 1/64 in at the least. Sheets hardly
move, and how much they do is from memory: that they bind is a caution only.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from planner.checks.facts import Facts
from planner.checks.moving import AXES, RUNS_NM, Moving, axis_of
from planner.derive.frame import in_piece
from planner.domain.plan import BoardSize, Feature, Finding
from planner.domain.solid import Direction, Solid
from planner.domain.words import FeatureKind, Held, Level
from planner.wood.panel import Fitted, deeper, narrower

_HOLDS = frozenset({FeatureKind.GROOVE, FeatureKind.RABBET})


@dataclass(frozen=True, slots=True)
class _Cut:
    """A groove or a rabbet in its place in the piece."""

    feature: Feature
    block: Solid


@dataclass(frozen=True, slots=True)
class _Held:
    """A board that lies free in two cuts, along one axis."""

    board: BoardSize
    cuts: tuple[_Cut, _Cut]
    fitted: Fitted

    @property
    def kind(self) -> str:
        """What takes it."""
        return self.cuts[0].feature.kind.value

    @property
    def hosts(self) -> str:
        """The two boards with these cuts."""
        return " and ".join(dict.fromkeys(cut.feature.board for cut in self.cuts))

    @property
    def marks(self) -> tuple[str, ...]:
        """It and what takes it."""
        return (self.board.mark, *dict.fromkeys(cut.feature.board for cut in self.cuts))


def panels_move(facts: Facts) -> Iterator[Finding]:
    """One finding for each board that would bind in its cuts, come out of one, or might slide out of one."""
    moving = Moving(facts)
    by_box: dict[str, list[_Cut]] = {}
    for feature in facts.features:
        if feature.kind in _HOLDS and feature.takes:
            host = facts.boards[feature.board]
            by_box.setdefault(host.box, []).append(_Cut(feature, in_piece(host, feature.x, feature.u, feature.y)))
    for board in facts.boards.values():
        if moving.is_known(board):
            for axis in AXES:
                if axis != axis_of(board.lie.out):
                    yield from _along(moving, board, axis, by_box.get(board.box, ()))


def _along(moving: Moving, board: BoardSize, axis: Direction, cuts: Sequence[_Cut]) -> Iterator[Finding]:
    grows = moving.parts(board, axis)
    pair = _at_both_edges(board, axis, cuts) if grows.dry or grows.damp else None
    if pair is None:
        return
    low, high = (cut.block.along(axis) for cut in pair)
    fitted = Fitted(
        size=board.place.size(axis),
        clear=high[0] - low[1],
        low=low[1] - low[0],
        high=high[1] - high[0],
        swells=grows.most,
        shrinks=-grows.least,
        slides=all(cut.feature.kind is FeatureKind.GROOVE for cut in pair),
    )
    held = _Held(board, pair, fitted)
    if fitted.left_when_damp <= 0:
        yield _binds(moving, held)
    elif fitted.covered_when_dry < RUNS_NM:
        yield _comes_out(moving, held)
    elif fitted.slides and fitted.covered_when_slid < RUNS_NM:
        yield _may_slide(moving, held)


def _at_both_edges(board: BoardSize, axis: Direction, cuts: Sequence[_Cut]) -> tuple[_Cut, _Cut] | None:
    """The cuts that take its two edges, of which one at least leaves it free."""
    taking = [cut for cut in cuts if cut.feature.board != board.mark and cut.block.meeting(board.place)]
    low = _at(board, axis, taking, far=False)
    high = _at(board, axis, taking, far=True)
    if low is None or high is None or all(cut.feature.held is Held.GLUED for cut in (low, high)):
        return None
    return low, high


def _at(board: BoardSize, axis: Direction, cuts: Sequence[_Cut], *, far: bool) -> _Cut | None:
    """The cut in which one edge lies; not one that runs along the board from edge to edge."""
    low, high = board.place.along(axis)
    for cut in cuts:
        start, stop = cut.block.along(axis)
        takes = low < start <= high <= stop if far else start <= low <= stop < high
        if takes:
            return cut
    return None


def _binds(moving: Moving, held: _Held) -> Finding:
    show, fitted = moving.show, held.fitted
    swells = fitted.size * fitted.swells
    cut = narrower(fitted, RUNS_NM, moving.step)
    if cut is not None:
        remedy = f"Make it {show(cut)} narrower, so that it has {show(fitted.play + cut)} of play today."
    else:
        remedy = _deeper(moving, held)
    return Finding(
        code="panel-binds",
        level=Level.STOP if moving.is_solid(held.board) else Level.CAUTION,
        marks=held.marks,
        text=f"{held.board.mark} has {show(fitted.play)} of play between {held.hosts} and swells by {show(swells)}: "
        f"it would push them apart. {moving.seasons.said()}",
        remedy=remedy,
        source=moving.source(held.board),
    )


def _comes_out(moving: Moving, held: _Held) -> Finding:
    show, fitted = moving.show, held.fitted
    return Finding(
        code="panel-comes-out",
        level=Level.STOP,
        marks=held.marks,
        text=f"{held.board.mark} shrinks by {show(fitted.size * fitted.shrinks)} between {held.hosts} and then lies "
        f"{show(max(fitted.covered_when_dry, 0))} deep in its {held.kind}s: it would come out. {moving.seasons.said()}",
        remedy=_deeper(moving, held),
        source=moving.source(held.board),
    )


def _may_slide(moving: Moving, held: _Held) -> Finding:
    show, fitted = moving.show, held.fitted
    return Finding(
        code="panel-may-slide",
        level=Level.CAUTION,
        marks=held.marks,
        text=f"{held.board.mark} shrinks by {show(fitted.size * fitted.shrinks)} between {held.hosts}; lying "
        f"all to one side it would come out of its {held.kind} on the other. {moving.seasons.said()}",
        remedy="Hold it in the middle of its width, with a pin or a spot of glue at each end. "
        f"Or: {_deeper(moving, held)}",
        source=moving.source(held.board),
    )


def _deeper(moving: Moving, held: _Held) -> str:
    by = deeper(held.fitted, RUNS_NM, moving.step)
    if by is None:
        return "Take quarter-sawn boards, or a sheet."
    size = held.fitted.deeper(by, moving.step).size
    return f"Cut each {held.kind} {moving.show(by)} deeper and make the board {moving.show(size)} wide."
