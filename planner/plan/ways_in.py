"""Which way a part can still be put in once what holds it stands: along a straight line, through no wood.

The wood of a board is its place less all cuts in it; of a tenoned end only the tenons. A part can be put in along a
line when, drawn out again along that line, its wood meets none of the wood that stands. All of it is worked out
exactly, with blocks along the three directions.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from planner.derive.frame import in_piece
from planner.domain.plan import BoardSize, Feature
from planner.domain.solid import BACK, DOWN, FRONT, LEFT, RIGHT, UP, Direction, Solid
from planner.domain.words import FeatureKind, Surface
from planner.lengths import GREATEST_NM

WAYS: dict[Direction, str] = {
    BACK: "from behind",
    UP: "from above",
    FRONT: "from the front",
    DOWN: "from below",
    LEFT: "from the left",
    RIGHT: "from the right",
}
"""The way a part comes in from, by the direction in which it could be drawn out again."""

_LIKED = {BACK: 1, UP: 1, FRONT: 2, DOWN: 2, LEFT: 2, RIGHT: 2}
"""A maker takes another way only where it is much shorter: glue smeared in front shows. Common practice, no source."""

_FAR = 4 * GREATEST_NM
"""Further away than anything in a workshop."""


def place_in_piece(board: BoardSize, feature: Feature) -> Solid:
    """The block of the piece that a cut takes away (of a tenon, that stays), within the finished board."""
    block = in_piece(board, feature.x, feature.u, feature.y)
    return block.meeting(board.place) or block


def meet(a: Solid, b: Solid) -> bool:
    """Whether two blocks overlap."""
    return (
        a.right[0] < b.right[1]
        and b.right[0] < a.right[1]
        and a.back[0] < b.back[1]
        and b.back[0] < a.back[1]
        and a.up[0] < b.up[1]
        and b.up[0] < a.up[1]
    )


def touch(a: Solid, b: Solid) -> bool:
    """Whether two blocks overlap or share a side, in whole or in part; an edge in common is not enough."""
    low_high = ((a.right, b.right), (a.back, b.back), (a.up, b.up))
    over = [min(one[1], other[1]) - max(one[0], other[0]) for one, other in low_high]
    return min(over) >= 0 and sum(reach == 0 for reach in over) <= 1


def whittled(block: Solid, cuts: Iterable[Solid]) -> list[Solid]:
    """What is left of a block when others are taken away, in blocks that don't overlap."""
    left = [block]
    for cut in cuts:
        left = [piece for each in left for piece in _less(each, cut)]
    return left


def _less(block: Solid, cut: Solid) -> Iterator[Solid]:
    if not meet(block, cut):
        yield block
        return
    for direction in (RIGHT, BACK, UP):
        (low, high), (start, stop) = block.along(direction), cut.along(direction)
        if low < start:
            yield block.with_span(direction, (low, start))
        if stop < high:
            yield block.with_span(direction, (stop, high))
        block = block.with_span(direction, (max(low, start), min(high, stop)))


@dataclass(frozen=True, slots=True)
class Wood:
    """The wood of all boards of a project.

    Attributes:
        boards: by mark.
        hollows: what is cut away of each board.
        pins: of boards that turn or hang on round pins, the holes in other boards that these pins fill.
    """

    boards: Mapping[str, BoardSize]
    hollows: dict[str, list[Solid]] = field(default_factory=dict)
    pins: dict[str, list[Solid]] = field(default_factory=dict)

    @classmethod
    def of(cls, boards: Mapping[str, BoardSize], features: Iterable[Feature]) -> Wood:
        """The wood that all cuts leave."""
        wood = cls(boards)
        tenons: dict[tuple[str, Surface], list[Solid]] = {}
        for each in features:
            block = place_in_piece(boards[each.board], each)
            if each.kind is FeatureKind.TENON:
                tenons.setdefault((each.board, each.face), []).append(block)
                continue
            if each.kind is not FeatureKind.SAW_LINE:
                wood.hollows.setdefault(each.board, []).append(block)
            if each.kind is FeatureKind.HOLE and each.takes:
                wood.pins.setdefault(each.takes, []).append(block)
        for (mark, face), blocks in tenons.items():
            wood.hollows.setdefault(mark, []).extend(_shoulders(boards[mark], face, blocks))
        return wood

    def ways_out(self, part: Sequence[str], standing: Sequence[str]) -> list[Direction]:
        """Ways in which a part can be drawn out between boards that stand, the one that a maker likes best first."""
        free = [way for way in WAYS if not any(self.in_the_way(part, (each,), way) for each in standing)]
        return sorted(free, key=lambda way: self._travel(part, standing, way) * _LIKED[way])

    def in_the_way(self, part: Iterable[str], others: Iterable[str], way: Direction) -> bool:
        """Whether any of the others stands in the way of a part that is drawn out."""
        return any(self._hits(mark, other, way) for mark in part for other in others)

    def _hits(self, mark: str, other: str, way: Direction) -> bool:
        stands = self.boards[other].place
        moving = [*self.pins.get(mark, ())]
        whole = self.boards[mark].place
        if _meets_on_its_way(whole, way, stands):
            near = (hollow for hollow in self.hollows.get(mark, ()) if _meets_on_its_way(hollow, way, stands))
            moving += whittled(whole, near)
        for piece in moving:
            path = swept(piece, way).meeting(stands) if _meets_on_its_way(piece, way, stands) else None
            if path and whittled(path, (hollow for hollow in self.hollows.get(other, ()) if meet(hollow, path))):
                return True
        return False

    def _travel(self, part: Sequence[str], standing: Sequence[str], way: Direction) -> int:
        """How far a part must come to be clear of what stands."""
        own = [self.boards[mark].place.along(way) for mark in part]
        around = [self.boards[mark].place.along(way) for mark in standing]
        if sum(way) > 0:
            return max(high for _, high in around) - min(low for low, _ in own)
        return max(high for _, high in own) - min(low for low, _ in around)


def _meets_on_its_way(block: Solid, way: Direction, other: Solid) -> bool:
    """Whether a block that goes off this way comes to where another is."""
    right, back, up = way
    return (
        (right > 0 or other.right[0] < block.right[1])
        and (right < 0 or block.right[0] < other.right[1])
        and (back > 0 or other.back[0] < block.back[1])
        and (back < 0 or block.back[0] < other.back[1])
        and (up > 0 or other.up[0] < block.up[1])
        and (up < 0 or block.up[0] < other.up[1])
    )


def swept(block: Solid, way: Direction) -> Solid:
    """All that a block passes through on its way out, itself included."""
    return block.grown(way, _FAR)


def _shoulders(board: BoardSize, face: Surface, tenons: Sequence[Solid]) -> list[Solid]:
    """What is cut away around the tenons of one end."""
    way = board.lie.normal(face)
    longest = max(tenon.size(way) for tenon in tenons)
    end = board.place.beside(way, -longest, longest)
    return whittled(end, tenons)
