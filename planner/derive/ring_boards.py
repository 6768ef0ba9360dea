"""The four boards of a ring, from what the ring fills.

Through dovetail: both boards run to the outside of the corner, and stand ``proud`` of it, to be planed flush after the
glue is dry. At a half-blind corner the tail board is shorter by the lap that covers it, and in a rabbet the plain end
is shorter by the lap of the rabbeted board; nothing stands out there.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from planner.derive.frame import LIES
from planner.derive.parts import Item, LetIn, Maker
from planner.domain.plan import BoardSize
from planner.domain.ring import Board, Ring
from planner.domain.solid import Direction, Solid, opposite
from planner.domain.words import Carries, End, FeatureKind, JointKind
from planner.lengths import Nm

_COVERED = frozenset({(JointKind.HALF_BLIND, Carries.TAILS), (JointKind.RABBET, Carries.PLAIN_END)})
"""Ends that the mate covers by its lap."""


def ring_boards(maker: Maker, ring: Ring, block: Solid, proud: Nm) -> Iterator[Item]:
    """The boards of a ring that fills ``block``, and what its rabbets take."""
    boards = {board.mark: _board(maker, ring, board, block, proud) for board in ring.boards}
    yield from boards.values()
    for corner in ring.corners:
        if corner.kind is JointKind.RABBET:
            plain = corner.pin_board
            room = boards[plain].place
            yield LetIn(guest=plain, host=corner.tail_board, room=room, kind=FeatureKind.RABBET)


def _board(maker: Maker, ring: Ring, board: Board, block: Solid, proud: Nm) -> BoardSize:
    lie = LIES[ring.kind][board.role]
    place = block.shrunk(block.size(lie.out) - board.stuff.thickness_nm, opposite(lie.out))
    stands_out = {End.A: Nm(0), End.B: Nm(0)}
    for end, direction in ends_of(lie.along):
        corner = ring.corner_at(board.mark, end)
        if (corner.kind, corner.carries(board.mark)) in _COVERED:
            place = place.shrunk(corner.lap_nm or 0, direction)
        elif corner.kind is not JointKind.RABBET:
            stands_out[end] = proud
    made = maker.board(board.mark, board.role, board.stuff, lie, place)
    return replace(made, proud_a_nm=stands_out[End.A], proud_b_nm=stands_out[End.B])


def ends_of(along: Direction) -> tuple[tuple[End, Direction], tuple[End, Direction]]:
    """Both ends, each with the way it looks."""
    return (End.A, opposite(along)), (End.B, along)
