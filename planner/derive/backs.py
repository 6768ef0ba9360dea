"""The back of a carcase, in a rabbet on the inside of all four boards: one panel, upright boards, frame and panel.

Seen from behind, as the maker who fits it does, its parts are numbered from the left and from the top. Every board of
the carcase has one rabbet for the whole back; the cut is named after the first part of the back that lies in it.

Upright boards overlap by rabbets from opposite faces, each half as deep as the boards are thick: from outside on the
edge towards the next board, from inside on its other edge. A rabbet is wider than the overlap by the gap, so that on
both faces the boards have room to swell. None is glued: each is fixed by itself and may move.

Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from planner.derive.frame import BACK_ON, STANDING_BEHIND
from planner.derive.panelled import made_of
from planner.derive.parts import Item, LetIn, Maker, Shape
from planner.domain.carcase import BackPanel, BoardedBack, Carcase, PanelledBack
from planner.domain.marks import board_mark
from planner.domain.plan import BoardSize
from planner.domain.solid import BACK, DOWN, FRONT, LEFT, RIGHT, UP, Solid
from planner.domain.words import FeatureKind, Held, Role
from planner.errors import PlanError, Problem
from planner.lengths import Grid, show_length

_SIDES = ((Role.TOP, UP), (Role.RIGHT, RIGHT), (Role.BOTTOM, DOWN), (Role.LEFT, LEFT))


def back(maker: Maker, carcase: Carcase, outside: Solid, inside: Solid, grid: Grid) -> Iterator[Item]:
    """The back and the rabbets that take it.

    Args:
        maker: of the carcase's boards.
        carcase: what is closed.
        outside: what its ring fills.
        inside: clear space within the ring, to the back.
        grid: step to which lengths are shown.

    Raises:
        PlanError: boards or a frame that can't be made.
    """
    how = carcase.back
    if how is None:
        return
    room = inside.shrunk(-how.rabbet_depth_nm, LEFT, RIGHT, UP, DOWN)
    room = room.with_span(BACK, (outside.back[1] - how.stuff.thickness_nm, outside.back[1]))
    half = how.play_nm // 2
    whole = room.shrunk(half, LEFT, DOWN).shrunk(how.play_nm - half, RIGHT, UP)
    mark = board_mark(carcase.ring.mark, Role.BACK_PANEL)
    parts: list[Item]
    match how:
        case BackPanel():
            parts = [maker.board(mark, Role.BACK_PANEL, how.stuff, BACK_ON, whole)]
        case BoardedBack():
            parts = list(_boards(maker, how, carcase.ring.mark, whole, grid))
        case PanelledBack():
            frame = maker.board(mark, Role.BACK_PANEL, how.stuff, STANDING_BEHIND, whole)
            parts = list(made_of(maker, how.made, frame, grid))
    yield from parts
    for role, way in _SIDES:
        reach, positive = whole.along(way), sum(way) > 0
        guest = next(
            part.mark
            for part in parts
            if isinstance(part, BoardSize) and part.place.along(way)[positive] == reach[positive]
        )
        host = carcase.ring.board(role).mark
        yield LetIn(guest=guest, host=host, room=room, kind=FeatureKind.RABBET, held=Held.FREE)


def _boards(maker: Maker, how: BoardedBack, owner: str, whole: Solid, grid: Grid) -> Iterator[Item]:
    """As few upright boards as may be, alike to the nanometre, and the rabbets by which they overlap.

    Of n boards b wide that overlap by l, the width is n·b − (n − 1)·l; so n is the least whole number that is not below
    (width − l)/(greatest b − l).
    """
    _must_overlap(how, owner, grid)
    apart = whole.size(RIGHT) - how.lap_nm
    count = max(1, -(-apart // (how.board_nm - how.lap_nm)))
    thick, rabbet = how.stuff.thickness_nm, how.lap_nm + how.gap_nm
    if count > 1 and apart // count + how.lap_nm <= 2 * rabbet:
        raise PlanError([_rabbets_meet(how, owner, apart // count + how.lap_nm, grid)])
    right = whole.right[1]
    for number in range(1, count + 1):
        mark = board_mark(owner, Role.BACK_BOARD, number)
        span = (right - apart * number // count - how.lap_nm, right - apart * (number - 1) // count)
        place = whole.with_span(RIGHT, span)
        yield maker.board(mark, Role.BACK_BOARD, how.stuff, STANDING_BEHIND, place)
        if number > 1:
            block = place.shrunk(place.size(RIGHT) - rabbet, LEFT).shrunk(thick // 2, BACK)
            yield Shape(board=mark, block=block, kind=FeatureKind.RABBET)
        if number < count:
            block = place.shrunk(place.size(RIGHT) - rabbet, RIGHT).shrunk(thick - thick // 2, FRONT)
            yield Shape(board=mark, block=block, kind=FeatureKind.RABBET)


def _must_overlap(how: BoardedBack, owner: str, grid: Grid) -> None:
    if how.board_nm > how.lap_nm:
        return
    board, lap = (show_length(length, grid, with_unit=True) for length in (how.board_nm, how.lap_nm))
    raise PlanError([
        Problem(
            where=board_mark(owner, Role.BACK_BOARD, 1),
            what=f"boards of the back {board} wide overlap by {lap}, which is all of them.",
            remedy="Take wider boards or a smaller lap.",
        )
    ])  # fmt: skip


def _rabbets_meet(how: BoardedBack, owner: str, width: int, grid: Grid) -> Problem:
    board, lap, gap = (show_length(length, grid, with_unit=True) for length in (width, how.lap_nm, how.gap_nm))
    return Problem(
        where=board_mark(owner, Role.BACK_BOARD, 1),
        what=f"the rabbets on both edges of boards {board} wide, with a lap of {lap} and a gap of {gap}, "
        "leave no whole wood between them.",
        remedy="Take wider boards, a smaller lap or a smaller gap.",
    )
