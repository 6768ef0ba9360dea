"""Boards that lie flat on each other and move unlike: of another timber, sawn otherwise, or with another grain.

At a corner the glue holds them over the whole width. A separate top, and a carcase on its base, are fixed by screws;
in slots, or with buttons, they may move. How far glue lets wood shear: common practice, no source; about as far as
those 4 in move that are trusted across the grain.
"""

from __future__ import annotations

from collections.abc import Iterator

from planner.checks.facts import Facts
from planner.checks.moving import Growth, Moving, axis_of
from planner.domain.carcase import Carcase
from planner.domain.plan import BoardSize, Finding, Joint
from planner.domain.solid import BACK, Direction
from planner.domain.words import Level, Role
from planner.lengths import Grid, Nm

BEARS_NM = Nm(2 * Grid.IN_64.step_nm)
"""1/32 in, about 0.8 mm."""

_BASE = frozenset({Role.APRON, Role.LEFT, Role.RIGHT})


def unlike_timber(facts: Facts) -> Iterator[Finding]:
    """Corners whose boards move unlike; tops and bases on which something moves."""
    moving = Moving(facts)
    yield from _corners(moving)
    for carcase in facts.project.carcases:
        yield from _fixed_by_screws(moving, carcase)


def _corners(moving: Moving) -> Iterator[Finding]:
    """One finding for all corners where the same two materials move unlike."""
    unlike: dict[tuple[str, str], list[tuple[float, Joint]]] = {}
    for joint in moving.facts.joints.values():
        one, other = (moving.facts.boards[mark] for mark in (joint.pin_board, joint.tail_board))
        if moving.is_known(one) and moving.is_known(other):
            apart = _apart(moving, one, other, axis_of(one.lie.across)).times(joint.width_nm)
            strained = max(apart.most, -apart.least)
            if strained > BEARS_NM:
                unlike.setdefault((one.material, other.material), []).append((strained, joint))
    for (one_stuff, other_stuff), found in unlike.items():
        most, worst = max(found, key=lambda each: each[0])
        boards = [moving.facts.boards[mark] for mark in (worst.pin_board, worst.tail_board)]
        yield Finding(
            code="unlike-timber",
            level=Level.CAUTION,
            marks=tuple(joint.mark for _, joint in found),
            text=f"{one_stuff} and {other_stuff} move unlike: at corner {worst.mark}, {moving.show(worst.width_nm)} "
            f"wide, one strains against the other by {moving.show(most)}. {moving.seasons.said()}",
            remedy="Make both boards of a corner of the same timber, sawn the same way; quarter-sawn boards move less.",
            source=moving.source(*boards),
        )


def _fixed_by_screws(moving: Moving, carcase: Carcase) -> Iterator[Finding]:
    """A separate top on the carcase, and the carcase on its base."""
    boards = list(moving.facts.boards.values())
    mark = carcase.ring.mark
    side, bottom = (moving.facts.boards[carcase.ring.board(role).mark] for role in (Role.LEFT, Role.BOTTOM))
    tops = [(board, side) for board in boards if board.box == mark and board.role is Role.SEPARATE_TOP]
    bases = [(bottom, board) for board in boards if board.role in _BASE and _lies_under(board, bottom)]
    for lying, on in (*tops, *bases[:1]):
        if moving.is_known(lying):
            apart = _apart(moving, lying, on, BACK).times(side.place.size(BACK))
            if apart.most - apart.least >= moving.step:
                yield _slots(moving, lying, on, apart.most - apart.least)


def _lies_under(board: BoardSize, bottom: BoardSize) -> bool:
    return board.piece == bottom.piece and board.place.up[1] == bottom.place.up[0] and axis_of(board.lie.along) == BACK


def _slots(moving: Moving, lying: BoardSize, on: BoardSize, parts: float) -> Finding:
    return Finding(
        code="slots-for-movement",
        level=Level.NOTE,
        marks=(lying.mark, on.mark),
        text=f"{lying.mark} moves {moving.show(parts)} over the year against {on.mark}, from front to back. "
        f"{moving.seasons.said()}",
        remedy="Screw it fast at the front edge, and behind in slots (or with buttons) that let the screw move by "
        f"{moving.show_up(parts)}.",
        source=moving.source(lying, on),
    )


def _apart(moving: Moving, one: BoardSize, other: BoardSize, axis: Direction) -> Growth:
    """How much more one board grows than another, as parts of their size."""
    a, b = moving.parts(one, axis), moving.parts(other, axis)
    return Growth(a.dry - b.dry, a.damp - b.damp)
