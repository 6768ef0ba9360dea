"""The wood that is left of every board, as a body: what its place holds, less its cuts.

Its cuts are blocks; a round hole counts as a cylinder. At a dovetailed corner both boards fill the same block: the
pins' share of it goes by their mean width, and the tails get the rest, so together they weigh exactly what they fill.
Within that block wood and gaps count as spread evenly, and cuts that run out through it are not counted. So a single
board's centre of gravity is off by less than half its thickness times the corner's share of its weight, and its weight
by less than the section of such a cut times a board's thickness. A whole corner of one timber balances where it should.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import pi

from planner.derive.frame import in_piece
from planner.domain.plan import BoardSize, Feature, Joint
from planner.domain.solid import BACK, RIGHT, UP, Direction, Solid, opposite
from planner.domain.words import End, FeatureKind
from planner.lengths import Nm, metres
from planner.wood.weight import Body, together

_AXES = (RIGHT, BACK, UP)
_SQUARE_LESS_ROUND = 1 - pi / 4
"""What of a square hole stays when a round one is drilled."""


def board_bodies(
    boards: Mapping[str, BoardSize],
    features: Sequence[Feature],
    joints: Iterable[Joint],
    densities: Mapping[str, float],
) -> dict[str, Body]:
    """The body of every board of a material whose density (kg/m³, by the material's name) is known."""
    cuts: dict[str, list[Feature]] = {}
    for feature in features:
        cuts.setdefault(feature.board, []).append(feature)
    corners: dict[str, list[_Corner]] = {}
    for joint in joints:
        for corner in _corners(joint):
            corners.setdefault(corner.board, []).append(corner)
    return {
        mark: _body(board, cuts.get(mark, ()), corners.get(mark, ()), densities[board.material])
        for mark, board in boards.items()
        if board.material in densities
    }


@dataclass(frozen=True, slots=True)
class _Corner:
    """The end of a board that carries pins or tails: how long these are, and their share of what they stand in."""

    board: str
    end: End
    length_nm: Nm
    share: float


def _corners(joint: Joint) -> tuple[_Corner, _Corner]:
    lean = joint.socket_depth_nm / joint.slope
    pins = sum(stop - start for start, stop in joint.pins) + lean * len(joint.tails)
    pins_fill = pins * joint.socket_depth_nm + joint.width_nm * joint.lap_nm
    on_pin_board = Fraction(pins_fill) / (joint.width_nm * joint.pin_thickness_nm)
    on_tail_board = 1 - Fraction(pins) / joint.tail_width_nm
    return (
        _Corner(joint.pin_board, joint.pin_end, joint.tail_thickness_nm, float(on_pin_board)),
        _Corner(joint.tail_board, joint.tail_end, joint.socket_depth_nm, float(on_tail_board)),
    )


def _body(board: BoardSize, cuts: Sequence[Feature], corners: Sequence[_Corner], density: float) -> Body:
    parts = [_piece(block, share * density) for block, share in _left(board, cuts, corners)]
    return together(parts)


def _left(board: BoardSize, cuts: Sequence[Feature], corners: Sequence[_Corner]) -> Iterator[tuple[Solid, float]]:
    """Blocks that don't overlap, each with the share of it that is wood."""
    middle = board.place
    for corner in corners:
        way = board.lie.along if corner.end is End.B else opposite(board.lie.along)
        middle = middle.shrunk(corner.length_nm, way)
        yield board.place.beside(way, -corner.length_nm, corner.length_nm), corner.share
    taken = [*_taken(board, cuts), *_around_tenons(board, cuts)]
    blocks = [middle]
    for cut in taken:
        blocks = [left for block in blocks for left in _less(block, cut)]
    yield from ((block, 1.0) for block in blocks)
    for drilled in cuts:
        hole = _block(board, drilled).meeting(middle) if drilled.kind is FeatureKind.HOLE else None
        if hole:
            yield hole, _SQUARE_LESS_ROUND


def _block(board: BoardSize, cut: Feature) -> Solid:
    return in_piece(board, cut.x, cut.u, cut.y)


def _taken(board: BoardSize, cuts: Sequence[Feature]) -> Iterator[Solid]:
    yield from (_block(board, cut) for cut in cuts if cut.kind is not FeatureKind.TENON)


def _around_tenons(board: BoardSize, cuts: Sequence[Feature]) -> Iterator[Solid]:
    """What is cut away around the tenons of an end, from the shoulder on."""
    tenons = [_block(board, cut) for cut in cuts if cut.kind is FeatureKind.TENON]
    way = board.lie.along
    for span in dict.fromkeys(tenon.along(way) for tenon in tenons):
        blocks = [board.place.with_span(way, span)]
        for tenon in tenons:
            if tenon.along(way) == span:
                blocks = [left for block in blocks for left in _less(block, tenon)]
        yield from blocks


def _less(block: Solid, cut: Solid) -> Iterator[Solid]:
    """What is left of a block, as blocks that don't overlap."""
    common = block.meeting(cut)
    if common is None:
        yield block
        return
    rest = block
    for axis in _AXES:
        (low, high), (start, stop) = rest.along(axis), common.along(axis)
        yield from (rest.with_span(axis, span) for span in ((low, start), (stop, high)) if span[0] < span[1])
        rest = rest.with_span(axis, (start, stop))


def _piece(block: Solid, density: float) -> Body:
    sizes = [metres(block.size(axis)) for axis in _AXES]
    right, back, up = (_middle(block, axis) for axis in _AXES)
    return Body(density * sizes[0] * sizes[1] * sizes[2], right, back, up)


def _middle(block: Solid, axis: Direction) -> float:
    low, high = block.along(axis)
    return metres(low + high) / 2
