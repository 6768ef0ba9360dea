"""Boards that bear a load: how far each spans, and what it bears it with.

A shelf spans from upright to upright; a partition below it bears it too, so the widest opening below counts. A loose
shelf lies on pegs near its ends. A top spans the widest opening below it, and a separate top bears with it. A rail
bears the whole drawer that is drawn out over it, on the lower edges of the drawer's sides. The bottom of a drawer is
held in grooves on three or four sides, but counts as strips that lie on two of them only: along the grain of solid
wood, the shorter way of a sheet. That is conservative, as is that every end counts as free to turn.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from planner.derive.drawer_room import drawer_rooms
from planner.domain.carcase import Carcase
from planner.domain.drawer import Drawer
from planner.domain.marks import board_mark
from planner.domain.plan import BoardSize, OpeningSize
from planner.domain.project import Project
from planner.domain.solid import BACK, RIGHT, UP
from planner.domain.use import Borne
from planner.domain.words import MaterialKind, Role
from planner.lengths import NO_LENGTH, Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Layer:
    """A board that bears.

    Attributes:
        wide_nm: across the span.
        thick_nm: from its upper to its lower side.
    """

    mark: str
    material: str
    wide_nm: Nm
    thick_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Bearing:
    """A board that bears a load.

    Attributes:
        what: what it is, in a word.
        on: what kind of load it bears.
        span_nm: between its supports.
        deep_nm: extent of the load across the span.
        above_nm: clear height above it.
        layers: itself, and what lies on it and bends with it.
        seen: whether its sag is seen.
        drawer: mark of the drawer whose whole weight it bears; None for a load that is spread on it.
        off_nm: how far from its ends the sides of that drawer stand.
    """

    mark: str
    what: str
    on: Borne
    span_nm: Nm
    deep_nm: Nm
    above_nm: Nm
    layers: tuple[Layer, ...]
    seen: bool = True
    drawer: str | None = None
    off_nm: Nm = NO_LENGTH


def bearings(
    project: Project, carcase: Carcase, boards: Mapping[str, BoardSize], openings: Sequence[OpeningSize]
) -> Iterator[Bearing]:
    """All boards of a carcase that bear a load: shelves, the top, rails below drawers, bottoms of drawers."""
    own = [opening for opening in openings if opening.carcase == carcase.ring.mark]
    in_case = [board for board in boards.values() if board.box == carcase.ring.mark]
    yield from _shelves(in_case, own)
    yield from _top(carcase, boards, own)
    yield from _rails(boards, own)
    yield from _bottoms(project, boards, own)


def _layer(board: BoardSize) -> Layer:
    return Layer(
        mark=board.mark, material=board.material, wide_nm=board.place.size(BACK), thick_nm=board.place.size(UP)
    )


def _shelves(boards: Iterable[BoardSize], openings: Sequence[OpeningSize]) -> Iterator[Bearing]:
    for board in boards:
        if board.role in {Role.SHELF, Role.LOOSE_SHELF}:
            below = [opening.width_nm for opening in openings if opening.above == board.mark]
            above = [opening.height_nm for opening in openings if opening.below == board.mark]
            yield Bearing(
                mark=board.mark,
                what=str(board.role),
                on=Borne.SHELVES,
                span_nm=max(below, default=board.length_nm),
                deep_nm=board.place.size(BACK),
                above_nm=max(above, default=_left_above(board, openings)),
                layers=(_layer(board),),
            )


def _left_above(board: BoardSize, openings: Sequence[OpeningSize]) -> Nm:
    """Clear height above a loose shelf: to the top of the opening that it lies in."""
    around = [opening.place for opening in openings if opening.place.meeting(board.place)]
    return Nm(max((place.up[1] - board.place.up[1] for place in around), default=0))


def _top(carcase: Carcase, boards: Mapping[str, BoardSize], openings: Sequence[OpeningSize]) -> Iterator[Bearing]:
    top = boards[carcase.ring.board(Role.TOP).mark]
    lies_on_it = boards.get(board_mark(carcase.ring.mark, Role.SEPARATE_TOP))
    below = [opening.width_nm for opening in openings if opening.above == top.mark]
    if below:
        upper = lies_on_it or top
        yield Bearing(
            mark=upper.mark,
            what="top",
            on=Borne.TOP,
            span_nm=max(below),
            deep_nm=upper.place.size(BACK),
            above_nm=Nm(0),
            layers=(_layer(top), *([_layer(lies_on_it)] if lies_on_it else [])),
        )


def _rails(boards: Mapping[str, BoardSize], openings: Sequence[OpeningSize]) -> Iterator[Bearing]:
    """Rails below drawers, which bear them whole when they are drawn out."""
    for opening in openings:
        rail = boards.get(opening.below or "")
        held = opening.space.holds
        if rail is not None and rail.role is Role.RAIL and isinstance(held, Drawer):
            side = boards[held.ring.board(Role.LEFT).mark].place
            yield Bearing(
                mark=rail.mark,
                what="rail",
                on=Borne.DRAWERS,
                span_nm=opening.width_nm,
                deep_nm=rail.place.size(BACK),
                above_nm=opening.height_nm,
                layers=(_layer(rail),),
                drawer=opening.drawer,
                off_nm=Nm((side.right[0] + side.right[1]) // 2 - opening.place.right[0]),
            )


def _bottoms(project: Project, boards: Mapping[str, BoardSize], openings: Sequence[OpeningSize]) -> Iterator[Bearing]:
    for drawer, room in drawer_rooms(boards, openings).items():
        board = boards[board_mark(drawer, Role.BOTTOM_PANEL)]
        sizes = {way: room.size(way) for way in (RIGHT, BACK)}
        if project.material(board.material).kind is MaterialKind.SOLID:
            along = RIGHT if board.lie.along[0] else BACK
        else:
            along = min(sizes, key=sizes.__getitem__)
        across = BACK if along == RIGHT else RIGHT
        yield Bearing(
            mark=board.mark,
            what="drawer bottom",
            on=Borne.DRAWERS,
            span_nm=sizes[along],
            deep_nm=sizes[across],
            above_nm=room.size(UP),
            layers=(
                Layer(mark=board.mark, material=board.material, wide_nm=sizes[across], thick_nm=board.thickness_nm),
            ),
            seen=False,
        )
