"""Frames: how a board lies in the piece, and how it stands before the operator of the sled.

The only module that turns one frame into another, so the only place where a mirror error could hide.

In the piece, directions are (right, back, up) as seen by someone in front of it. A board's frame is ``along`` (end A to
end B), ``across`` (reference edge to far edge) and ``out`` (the way the outside face looks), with
``along = across × out``: outside face towards you and reference edge at the bottom, end A is at your left.
"""

from __future__ import annotations

from dataclasses import dataclass

from planner.domain.words import End, RingKind, Role, Side, Surface
from planner.lengths import Nm

Direction = tuple[int, int, int]

RIGHT: Direction = (1, 0, 0)
LEFT: Direction = (-1, 0, 0)
BACK: Direction = (0, 1, 0)
FRONT: Direction = (0, -1, 0)
UP: Direction = (0, 0, 1)
DOWN: Direction = (0, 0, -1)

DIRECTION_WORDS = {RIGHT: "right", LEFT: "left", BACK: "back", FRONT: "front", UP: "up", DOWN: "down"}


@dataclass(frozen=True, slots=True)
class Lie:
    """How a board lies in the piece."""

    across: Direction
    out: Direction

    @property
    def along(self) -> Direction:
        """From end A to end B."""
        return cross(self.across, self.out)

    def normal(self, surface: Surface) -> Direction:
        """The way a surface looks."""
        return {
            Surface.OUTSIDE: self.out,
            Surface.INSIDE: opposite(self.out),
            Surface.REFERENCE_EDGE: opposite(self.across),
            Surface.FAR_EDGE: self.across,
            Surface.END_A: opposite(self.along),
            Surface.END_B: self.along,
        }[surface]

    def surface_towards(self, direction: Direction) -> Surface:
        """The surface that looks in a direction."""
        return next(surface for surface in Surface if self.normal(surface) == direction)


_UPRIGHT = {
    Role.FRONT: Lie(across=UP, out=FRONT),
    Role.RIGHT: Lie(across=UP, out=RIGHT),
    Role.BACK: Lie(across=UP, out=BACK),
    Role.LEFT: Lie(across=UP, out=LEFT),
    Role.BOTTOM_PANEL: Lie(across=BACK, out=DOWN),
    Role.APPLIED_FRONT: Lie(across=UP, out=FRONT),
}
_CARCASE = {
    Role.TOP: Lie(across=BACK, out=UP),
    Role.RIGHT: Lie(across=BACK, out=RIGHT),
    Role.BOTTOM: Lie(across=BACK, out=DOWN),
    Role.LEFT: Lie(across=BACK, out=LEFT),
    Role.BACK_PANEL: Lie(across=UP, out=BACK),
    Role.RAIL: Lie(across=BACK, out=UP),
    Role.PARTITION: Lie(across=BACK, out=RIGHT),
}
LIES = {RingKind.UPRIGHT: _UPRIGHT, RingKind.CARCASE: _CARCASE}
"""How each board lies, by the kind of ring it belongs to and its role there."""


def cross(a: Direction, b: Direction) -> Direction:
    """Cross product."""
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def opposite(a: Direction) -> Direction:
    """The other way."""
    return (-a[0], -a[1], -a[2])


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
