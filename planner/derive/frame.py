"""Frames: how a board lies in the piece, and how it stands before the operator of the sled.

The only module that turns one frame into another, so the only place where a mirror error could hide.

In the piece, directions are (right, back, up) as seen by someone in front of it. A board's frame is ``along`` (end A to
end B), ``across`` (reference edge to far edge) and ``out`` (the way the outside face looks), with
``along = across × out``: outside face towards you and reference edge at the bottom, end A is at your left.
"""

from __future__ import annotations

from planner.domain.plan import BoardSize
from planner.domain.solid import BACK, DOWN, FRONT, LEFT, RIGHT, UP, Direction, Lie, Solid, cross, opposite
from planner.domain.words import End, RingKind, Role, Side, Surface
from planner.lengths import Nm, Span

DIRECTION_WORDS = {RIGHT: "right", LEFT: "left", BACK: "back", FRONT: "front", UP: "up", DOWN: "down"}

_UPRIGHT = {
    Role.FRONT: Lie(across=UP, out=FRONT),
    Role.RIGHT: Lie(across=UP, out=RIGHT),
    Role.BACK: Lie(across=UP, out=BACK),
    Role.LEFT: Lie(across=UP, out=LEFT),
}
_CARCASE = {
    Role.TOP: Lie(across=BACK, out=UP),
    Role.RIGHT: Lie(across=BACK, out=RIGHT),
    Role.BOTTOM: Lie(across=BACK, out=DOWN),
    Role.LEFT: Lie(across=BACK, out=LEFT),
}
LIES = {RingKind.UPRIGHT: _UPRIGHT, RingKind.CARCASE: _CARCASE}
"""How each board of a ring lies, by the kind of the ring and the board's role."""

FRONT_ON = Lie(across=UP, out=FRONT)
"""An upright board along the front, its outside face to the room: an applied front, a door."""
BACK_ON = Lie(across=UP, out=BACK)
"""An upright board along the back, its grain from side to side."""
FLAT = Lie(across=BACK, out=UP)
"""A flat board with its grain from side to side, reference edge in front: a rail, a shelf, a top."""
FLAT_BELOW = Lie(across=BACK, out=DOWN)
"""The same with its outside face below: a bottom."""
FLAT_DEEP = Lie(across=LEFT, out=UP)
"""A flat board with its grain from front to back, end A in front: a runner."""
FLAT_DEEP_BELOW = Lie(across=RIGHT, out=DOWN)
"""The same with its outside face below: a till's bottom."""
PARTING = Lie(across=BACK, out=RIGHT)
"""An upright board with its grain up and down, reference edge in front, end A at the top: a partition."""
STANDING = Lie(across=RIGHT, out=FRONT)
"""An upright board along the front with its grain up and down: a stile, a leg."""
STANDING_BEHIND = Lie(across=LEFT, out=BACK)
"""The same along the back, seen from behind: a board of a back."""
SIDE_ON_LEFT = Lie(across=UP, out=LEFT)
"""An upright board along the left, its grain from front to back."""
SIDE_ON_RIGHT = Lie(across=UP, out=RIGHT)
"""The same along the right."""


def in_board(board: BoardSize, block: Solid) -> tuple[Span, Span, Span]:
    """A block of the piece in the frame of a board: from end A, from the reference edge, from the outside face.

    What reaches to a finished end goes on through what stands proud of it.
    """
    lie, length = board.lie, board.length_nm
    x = _from(board.place, block, lie.along)
    start = x[0] + board.proud_a_nm if x[0] > 0 else x[0]
    stop = x[1] + board.proud_a_nm if x[1] < length - board.proud_a_nm - board.proud_b_nm else length
    return (Nm(start), Nm(stop)), _from(board.place, block, lie.across), _from(board.place, block, opposite(lie.out))


def in_piece(board: BoardSize, x: Span, u: Span, y: Span) -> Solid:
    """The block of the piece that places on a board stand for; what stands proud lies beyond the finished end."""
    lie, block = board.lie, board.place
    for direction, (low, high) in ((lie.along, x), (lie.across, u), (opposite(lie.out), y)):
        first = board.proud_a_nm if direction == lie.along else 0
        low_end, high_end = board.place.along(direction)
        if sum(direction) > 0:
            block = block.with_span(direction, (low_end + low - first, low_end + high - first))
        else:
            block = block.with_span(direction, (high_end - high + first, high_end - low + first))
    return block


def _from(place: Solid, block: Solid, direction: Direction) -> Span:
    (low, high), (start, stop) = place.along(direction), block.along(direction)
    return (Nm(start - low), Nm(stop - low)) if sum(direction) > 0 else (Nm(high - stop), Nm(high - start))


def seen_at(lie: Lie, face: Surface, direction: Direction) -> str:
    """Where ``direction`` points for someone who looks at a face: left, right, up or down.

    A face that looks up or down is seen with the reference edge at the bottom; any other as it stands in the piece.
    """
    normal = lie.normal(face)
    upward = lie.across if normal in (UP, DOWN) else UP
    rightward = cross(upward, normal)
    return {rightward: "right", opposite(rightward): "left", upward: "up", opposite(upward): "down"}[direction]


# --- at the sled -------------------------------------------------------------------------------------------


def reference_edge_side(end_down: End) -> Side:
    """Side of the operator on which the reference edge is, outside face to the operator.

    End A down: the board is turned so that its left end goes down, and its bottom edge comes to the right.
    """
    return Side.RIGHT if end_down is End.A else Side.LEFT


def from_left(place: int, width: int, end_down: End) -> Nm:
    """Place from the operator's left of a place measured from the reference edge; the same call turns it back."""
    return Nm(width - place) if reference_edge_side(end_down) is Side.RIGHT else Nm(place)
