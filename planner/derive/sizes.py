"""Finished sizes of every board, joint allowance included.

Through dovetail: both boards run to the outside of the corner, and stand ``proud`` of it at each end, to be planed
flush after the glue is dry. So a ring board's length is the outside size along it and ``proud`` at each end. At a
half-blind corner the tail board is shorter by the lap that covers it, and nothing stands out there. A board in
housings is longer than the clear span by the depth of the housing at each end; a panel in grooves by the depth of the
groove on each side, less the play it needs.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from planner.derive.openings import column_widths, inside_depth, inside_height, inside_width
from planner.domain.box import BottomPanel, Box
from planner.domain.carcase import Carcase, Drawer, Opening
from planner.domain.marks import board_mark
from planner.domain.plan import BoardSize, OpeningSize
from planner.domain.project import Project
from planner.domain.ring import Corner, Ring, Stuff
from planner.domain.words import Carries, End, Role, SizesOver
from planner.errors import PlanError, Problem
from planner.lengths import Grid, Nm, show_length


@dataclass(frozen=True, slots=True, kw_only=True)
class RingSize:
    """Outside sizes of a ring.

    Attributes:
        first_nm: along the first and third board.
        second_nm: along the second and fourth.
        width_nm: width of all four boards.
    """

    first_nm: Nm
    second_nm: Nm
    width_nm: Nm


def ring_sizes(project: Project, openings: tuple[OpeningSize, ...]) -> dict[str, RingSize]:
    """Outside sizes of every ring, by its mark.

    Raises:
        PlanError: a ring has no inside; all such rings are named.
    """
    by_drawer = {opening.drawer: opening for opening in openings}
    sizes = {box.ring.mark: _box(box) for box in project.boxes}
    sizes |= {carcase.ring.mark: _carcase(carcase) for carcase in project.carcases}
    sizes |= {drawer.ring.mark: _drawer(drawer, by_drawer[drawer.ring.mark]) for drawer in project.drawers()}
    hollow = [
        problem for ring in project.rings() if (problem := _no_inside(ring, sizes[ring.mark], project.grid)) is not None
    ]
    if hollow:
        raise PlanError(hollow)
    return sizes


def _box(box: Box) -> RingSize:
    if box.sizes_over is SizesOver.OUTSIDE:
        return RingSize(first_nm=box.length_nm, second_nm=box.width_nm, width_nm=box.height_nm)
    first, second, third, fourth = (board.stuff.thickness_nm for board in box.ring.boards)
    return RingSize(
        first_nm=Nm(box.length_nm + second + fourth),
        second_nm=Nm(box.width_nm + first + third),
        width_nm=box.height_nm,
    )


def _carcase(carcase: Carcase) -> RingSize:
    return RingSize(first_nm=carcase.width_nm, second_nm=carcase.height_nm, width_nm=carcase.depth_nm)


def _drawer(drawer: Drawer, opening: OpeningSize) -> RingSize:
    before = drawer.applied_front.stuff.thickness_nm if drawer.applied_front else 0
    return RingSize(
        first_nm=Nm(opening.width_nm - 2 * drawer.side_clearance_nm),
        second_nm=Nm(opening.depth_nm - drawer.back_clearance_nm - before),
        width_nm=Nm(opening.height_nm - drawer.top_clearance_nm),
    )


def inside(ring: Ring, size: RingSize) -> tuple[Nm, Nm]:
    """Clear sizes along the first and along the second board of a ring."""
    first, second, third, fourth = (board.stuff.thickness_nm for board in ring.boards)
    return Nm(size.first_nm - second - fourth), Nm(size.second_nm - first - third)


def _no_inside(ring: Ring, size: RingSize, grid: Grid) -> Problem | None:
    if min(*inside(ring, size), size.width_nm) > 0:
        return None
    outside = " × ".join(show_length(s, grid) for s in (size.first_nm, size.second_nm, size.width_nm))
    return Problem(
        where=ring.mark,
        what=f"has no inside: it would be {outside} {grid.unit} over its outside.",
        remedy="Give it larger sizes, thinner boards or smaller clearances.",
    )


def board_sizes(
    project: Project, rings: Mapping[str, RingSize], openings: tuple[OpeningSize, ...]
) -> tuple[BoardSize, ...]:
    """Every board of the project at its finished size: ring by ring, then what stands in each."""
    clear = {opening.drawer: opening for opening in openings}
    boards: list[BoardSize] = []
    for ring in project.rings():
        boards += _ring_boards(ring, rings[ring.mark], project.proud_nm)
    for ring, bottom in project.bottoms():
        boards.append(_bottom(ring, bottom, rings[ring.mark]))
    for drawer in project.drawers():
        boards += _applied_front(drawer, clear[drawer.ring.mark])
    for carcase in project.carcases:
        boards += _in_carcase(carcase, project.grid)
    return tuple(boards)


def _ring_boards(ring: Ring, size: RingSize, proud: Nm) -> Iterator[BoardSize]:
    for index, board in enumerate(ring.boards):
        outside = size.second_nm if index % 2 else size.first_nm
        length = outside + sum(_allowance(ring.corner_at(board.mark, end), board.mark, proud) for end in End)
        yield _sized(board.mark, ring.mark, board.role, board.stuff, (Nm(length), size.width_nm))


def _allowance(corner: Corner, board: str, proud: Nm) -> int:
    """What the joint at one end adds to the outside size."""
    if corner.lap_nm is not None and corner.carries(board) is Carries.TAILS:
        return -corner.lap_nm
    return proud


def _bottom(ring: Ring, bottom: BottomPanel, size: RingSize) -> BoardSize:
    grown = 2 * bottom.groove_depth_nm - bottom.play_nm
    along, across = inside(ring, size)
    mark = board_mark(ring.mark, Role.BOTTOM_PANEL)
    return _sized(mark, ring.mark, Role.BOTTOM_PANEL, bottom.stuff, (Nm(along + grown), Nm(across + grown)))


def _applied_front(drawer: Drawer, opening: OpeningSize) -> Iterator[BoardSize]:
    if drawer.applied_front:
        gaps = 2 * drawer.applied_front.gap_nm
        mark = board_mark(drawer.ring.mark, Role.APPLIED_FRONT)
        size = (Nm(opening.width_nm - gaps), Nm(opening.height_nm - gaps))
        yield _sized(mark, drawer.ring.mark, Role.APPLIED_FRONT, drawer.applied_front.stuff, size)


def _in_carcase(carcase: Carcase, grid: Grid) -> Iterator[BoardSize]:
    box = carcase.ring.mark
    high, wide = inside_height(carcase), inside_width(carcase)
    if carcase.back:
        grown = 2 * carcase.back.rabbet_depth_nm - carcase.back.play_nm
        mark = board_mark(box, Role.BACK_PANEL)
        yield _sized(mark, box, Role.BACK_PANEL, carcase.back.stuff, (Nm(wide + grown), Nm(high + grown)))
    if carcase.partitions:
        length = Nm(high + 2 * carcase.partitions.housing_depth_nm)
        for number in range(1, len(carcase.columns)):
            mark = board_mark(box, Role.PARTITION, number)
            yield _sized(mark, box, Role.PARTITION, carcase.partitions.stuff, (length, inside_depth(carcase)))
    if carcase.rails:
        for column, clear in zip(carcase.columns, column_widths(carcase, grid), strict=True):
            length = Nm(clear + 2 * carcase.rails.housing_depth_nm)
            for opening in column.openings[:-1]:
                mark = rail_mark(opening)
                yield _sized(mark, box, Role.RAIL, carcase.rails.stuff, (length, carcase.rails.width_nm))


def rail_mark(above: Opening) -> str:
    """Mark of the rail below an opening: it is named after the drawer that stands on it."""
    return board_mark(above.drawer.ring.mark, Role.RAIL)


def _sized(mark: str, box: str, role: Role, stuff: Stuff, length_and_width: tuple[Nm, Nm]) -> BoardSize:
    length, width = length_and_width
    return BoardSize(
        mark=mark,
        box=box,
        role=role,
        length_nm=length,
        width_nm=width,
        thickness_nm=stuff.thickness_nm,
        material=stuff.material,
    )
