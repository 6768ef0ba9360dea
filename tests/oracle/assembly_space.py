"""Blocks of space, and boards turned into a piece: whole nanometres, and nothing borrowed from the derivation.

Axes of the piece are 0 right, 1 back, 2 up, for someone in front of it. A way is an axis and a sign.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

Span = tuple[int, int]
Block = tuple[Span, Span, Span]
Place = tuple[int, int, int]
Way = tuple[int, int]

RIGHT, BACK, UP = 0, 1, 2
AXIS_NAMES = ("right", "back", "up")
WAYS: dict[str, Way] = {
    "right": (0, 1),
    "left": (0, -1),
    "back": (1, 1),
    "front": (1, -1),
    "up": (2, 1),
    "down": (2, -1),
}


def against(way: Way) -> Way:
    """The other way."""
    return (way[0], -way[1])


def to_the_right(looking: Way, upward: Way) -> Way:
    """Where someone's right hand points who looks one way with another way upward.

    Someone who looks back with up upward has right at the right hand; turning the three axes round keeps that.
    """
    assert looking[0] != upward[0]
    axis = 3 - looking[0] - upward[0]
    keeps_hand = (upward[0] - looking[0]) % 3 == 1
    return (axis, looking[1] * upward[1] * (1 if keeps_hand else -1))


def meet(a: Block, b: Block) -> Block | None:
    """What two blocks both fill; None when that is nothing."""
    right, back, up = ((max(p[0], q[0]), min(p[1], q[1])) for p, q in zip(a, b, strict=True))
    if right[0] >= right[1] or back[0] >= back[1] or up[0] >= up[1]:
        return None
    return (right, back, up)


def less(block: Block, taken: Block) -> list[Block]:
    """What stays of a block when another is taken from it, in at most six blocks."""
    cut = meet(block, taken)
    if cut is None:
        return [block]
    left: list[Block] = []
    rest = block
    for axis in range(3):
        (low, high), (start, stop) = rest[axis], cut[axis]
        left += [spanned(rest, axis, part) for part in ((low, start), (stop, high)) if part[0] < part[1]]
        rest = spanned(rest, axis, (start, stop))
    return left


def less_all(blocks: Iterable[Block], taken: Iterable[Block]) -> list[Block]:
    """What stays of blocks when others are taken from them."""
    rest = list(blocks)
    for block in taken:
        rest = [part for each in rest for part in less(each, block)]
    return rest


def spanned(block: Block, axis: int, span: Span) -> Block:
    """The same block with another extent along one axis."""
    spans = list(block)
    spans[axis] = span
    return (spans[0], spans[1], spans[2])


def grown(block: Block, axis: int, low: int, high: int) -> Block:
    """The same block with both its sides along an axis moved outwards."""
    return spanned(block, axis, (block[axis][0] - low, block[axis][1] + high))


def moved(block: Block, by: Sequence[int]) -> Block:
    """The same block elsewhere."""
    right, back, up = ((low + step, high + step) for (low, high), step in zip(block, by, strict=True))
    return (right, back, up)


def size(block: Block, axis: int) -> int:
    """Extent along an axis."""
    return block[axis][1] - block[axis][0]


def hull(blocks: Iterable[Block]) -> Block:
    """The least block around some."""
    all_of_them = list(blocks)
    right, back, up = (
        (min(block[axis][0] for block in all_of_them), max(block[axis][1] for block in all_of_them))
        for axis in range(3)
    )
    return (right, back, up)


def slab(block: Block, way: Way, thickness: int) -> Block:
    """The slice just beyond the side of a block that looks one way."""
    low, high = block[way[0]]
    return spanned(block, way[0], (high, high + thickness) if way[1] > 0 else (low - thickness, low))


def reach(block: Block, way: Way) -> int:
    """The place of the side that looks one way."""
    return block[way[0]][1 if way[1] > 0 else 0]


@dataclass(frozen=True, slots=True)
class Turn:
    """How a board stands in the piece: where its x (end A to B), u (reference to far edge) and y (into it) point."""

    x: Way
    u: Way
    y: Way

    def block(self, x: Span, u: Span, y: Span, sizes: Place) -> Block:
        """A block of the board's frame in the piece, the board's own blank beginning at nothing on all three axes."""
        spans: dict[int, Span] = {}
        for (axis, sign), (low, high), whole in zip((self.x, self.u, self.y), (x, u, y), sizes, strict=True):
            spans[axis] = (low, high) if sign > 0 else (whole - high, whole - low)
        return (spans[0], spans[1], spans[2])


def turned(out: Way, reference_edge: Way) -> Turn:
    """A board by the ways its outside face and its reference edge look.

    Look at the outside face with the reference edge at the bottom: end A is at the left, end B at the right.
    """
    across = against(reference_edge)
    return Turn(x=to_the_right(against(out), across), u=across, y=against(out))
