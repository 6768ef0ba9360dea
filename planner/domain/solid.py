"""Where a board is in the piece: directions, the way it lies, and the block of space that it fills.

Directions are (right, back, up) as seen by someone in front of the piece. Places count in whole nanometres from the
outside front lower left corner of its box or carcase; a base lies below 0, an overhang before it.
"""

from __future__ import annotations

from dataclasses import dataclass

from planner.domain.words import Surface
from planner.lengths import Nm, Span

Direction = tuple[int, int, int]

RIGHT: Direction = (1, 0, 0)
LEFT: Direction = (-1, 0, 0)
BACK: Direction = (0, 1, 0)
FRONT: Direction = (0, -1, 0)
UP: Direction = (0, 0, 1)
DOWN: Direction = (0, 0, -1)


def cross(a: Direction, b: Direction) -> Direction:
    """Cross product."""
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def opposite(a: Direction) -> Direction:
    """The other way."""
    return (-a[0], -a[1], -a[2])


@dataclass(frozen=True, slots=True)
class Lie:
    """How a board lies in the piece: ``across`` from reference edge to far edge, ``out`` where its outside face looks.

    Outside face towards you and reference edge at the bottom, end A is at your left: ``along = across x out``.
    """

    across: Direction
    out: Direction

    @property
    def along(self) -> Direction:
        """From end A to end B, which is along the grain."""
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


@dataclass(frozen=True, slots=True, kw_only=True)
class Solid:
    """A block of space, its sides along the three directions."""

    right: Span
    back: Span
    up: Span

    def along(self, direction: Direction) -> Span:
        """From where to where it reaches in this direction or against it."""
        return self.right if direction[0] else self.back if direction[1] else self.up

    def size(self, direction: Direction) -> Nm:
        """Its extent in this direction."""
        low, high = self.along(direction)
        return Nm(high - low)

    def with_span(self, direction: Direction, span: tuple[int, int]) -> Solid:
        """The same block with another extent in one direction."""
        to = (Nm(span[0]), Nm(span[1]))
        if direction[0]:
            return Solid(right=to, back=self.back, up=self.up)
        if direction[1]:
            return Solid(right=self.right, back=to, up=self.up)
        return Solid(right=self.right, back=self.back, up=to)

    def grown(self, direction: Direction, by: int) -> Solid:
        """The same block with the side that looks in this direction moved out (in, when less than nothing)."""
        low, high = self.along(direction)
        return self.with_span(direction, (low, high + by) if sum(direction) > 0 else (low - by, high))

    def shrunk(self, by: int, *directions: Direction) -> Solid:
        """The same block with some of its sides moved in."""
        block = self
        for direction in directions:
            block = block.grown(direction, -by)
        return block

    def beside(self, direction: Direction, gap: int, thickness: int) -> Solid:
        """A block as thick as told, beyond the side that looks in this direction, at a distance from it."""
        low, high = self.along(direction)
        if sum(direction) > 0:
            return self.with_span(direction, (high + gap, high + gap + thickness))
        return self.with_span(direction, (low - gap - thickness, low - gap))

    def meeting(self, other: Solid) -> Solid | None:
        """What both fill; None when they don't overlap."""
        spans = [
            (max(a[0], b[0]), min(a[1], b[1]))
            for a, b in ((self.right, other.right), (self.back, other.back), (self.up, other.up))
        ]
        if any(low >= high for low, high in spans):
            return None
        return Solid(right=spans[0], back=spans[1], up=spans[2])


def solid(right: tuple[int, int], back: tuple[int, int], up: tuple[int, int]) -> Solid:
    """A block from whole numbers of nanometres."""
    return Solid(right=(Nm(right[0]), Nm(right[1])), back=(Nm(back[0]), Nm(back[1])), up=(Nm(up[0]), Nm(up[1])))
