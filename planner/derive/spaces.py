"""Where the spaces of a carcase are, what divides them, and what stands around each.

Places count from the outside front lower left corner of the carcase. Dividers fill the clear space between their
neighbours here; how far they go into them is for ``dividers`` to say.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from planner.derive.sharing import sizes
from planner.domain.carcase import Carcase
from planner.domain.drawer import Drawer
from planner.domain.marks import board_mark, space_mark
from planner.domain.panelled import thickness
from planner.domain.plan import OpeningSize
from planner.domain.ring import Stuff
from planner.domain.solid import BACK, DOWN, FRONT, LEFT, RIGHT, UP, Solid, solid
from planner.domain.space import Division, Doors, Space
from planner.domain.words import DividerKind, Role, SizesOver, Stands, Way
from planner.errors import PlanError, Problem
from planner.lengths import Grid, Nm, total


@dataclass(frozen=True, slots=True, kw_only=True)
class Around:
    """Marks of what stands around a space; None where only another space is."""

    left: str
    right: str
    below: str | None
    above: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class DividerPlace:
    """A divider and the clear space that it fills.

    Attributes:
        mark: of the board, or of the frame's front rail.
        owner: what the parts of a frame are named after.
        place: from upright to upright, or from the board below to the board above; from front to back.
        around: what stands around the space that it divides.
    """

    kind: DividerKind
    mark: str
    owner: str
    place: Solid
    around: Around


@dataclass(frozen=True, slots=True, kw_only=True)
class DoorPlace:
    """A door or a pair of doors, the clear space before which it stands, and what stands around that."""

    mark: str
    doors: Doors
    place: Solid
    around: Around


@dataclass(frozen=True, slots=True)
class Spaces:
    """All that the tree of a carcase comes to."""

    openings: tuple[OpeningSize, ...]
    dividers: tuple[DividerPlace, ...]
    doors: tuple[DoorPlace, ...]


def outside_of(carcase: Carcase) -> Solid:
    """What the ring of a carcase fills."""
    width, height, depth = carcase.width_nm, carcase.height_nm, carcase.depth_nm
    if carcase.sizes_over is SizesOver.INSIDE:
        ring = {board.role: board.stuff.thickness_nm for board in carcase.ring.boards}
        width = total((width, ring[Role.LEFT], ring[Role.RIGHT]))
        height = total((height, ring[Role.TOP], ring[Role.BOTTOM]))
        depth = total((depth, _back_thickness(carcase)))
    return solid((0, width), (0, depth), (0, height))


def inside_of(carcase: Carcase) -> Solid:
    """Clear space within the ring, to the back."""
    ring = {board.role: board.stuff.thickness_nm for board in carcase.ring.boards}
    block = outside_of(carcase)
    for role, direction in ((Role.LEFT, LEFT), (Role.RIGHT, RIGHT), (Role.TOP, UP), (Role.BOTTOM, DOWN)):
        block = block.shrunk(ring[role], direction)
    return block.shrunk(_back_thickness(carcase), BACK)


def _back_thickness(carcase: Carcase) -> Nm:
    return carcase.back.stuff.thickness_nm if carcase.back else Nm(0)


def spaces(carcase: Carcase, grid: Grid) -> Spaces:
    """Every opening, divider and door of a carcase.

    Raises:
        PlanError: it has no inside, or sizes don't add up.
    """
    block = inside_of(carcase)
    if min(block.size(RIGHT), block.size(BACK), block.size(UP)) <= 0:
        raise PlanError([
            Problem(
                where=carcase.ring.mark,
                what="has no inside: its boards are thicker than it is large.",
                remedy="Check the outside sizes and the thicknesses.",
            )
        ])  # fmt: skip
    ring = carcase.ring
    around = Around(
        left=ring.board(Role.LEFT).mark,
        right=ring.board(Role.RIGHT).mark,
        below=ring.board(Role.BOTTOM).mark,
        above=ring.board(Role.TOP).mark,
    )
    found = tuple(_Walk(carcase, grid).space(carcase.inside, block, around, ()))
    return Spaces(
        openings=tuple(each for each in found if isinstance(each, OpeningSize)),
        dividers=tuple(each for each in found if isinstance(each, DividerPlace)),
        doors=tuple(each for each in found if isinstance(each, DoorPlace)),
    )


@dataclass(frozen=True, slots=True)
class _Walk:
    """The way through the tree of one carcase."""

    carcase: Carcase
    grid: Grid

    def space(
        self, space: Space, place: Solid, around: Around, path: tuple[int, ...]
    ) -> Iterator[OpeningSize | DividerPlace | DoorPlace]:
        """All that is in a space, and what stands before it."""
        mark = space_mark(self.carcase.ring.mark, path)
        if space.doors:
            yield DoorPlace(mark=mark, doors=space.doors, place=place, around=around)
            if space.doors.stands is Stands.INSET:
                place = place.shrunk(thickness(space.doors.made) + space.doors.gap_nm, FRONT)
                if place.size(BACK) <= 0:
                    raise PlanError([_no_depth(mark)])
        if isinstance(space.holds, Division):
            yield from self._division(space.holds, place, around, path)
            return
        yield OpeningSize(
            mark=mark,
            carcase=self.carcase.ring.mark,
            drawer=space.holds.ring.mark if isinstance(space.holds, Drawer) else None,
            space=space,
            place=place,
            below=around.below,
            above=around.above,
            left=around.left,
            right=around.right,
        )

    def _division(
        self, division: Division, place: Solid, around: Around, path: tuple[int, ...]
    ) -> Iterator[OpeningSize | DividerPlace | DoorPlace]:
        columns = division.way is Way.COLUMNS
        direction = RIGHT if columns else DOWN
        thick = self._thickness(division.divider)
        clear = place.size(direction) - thick * (len(division.spaces) - 1)
        where = f"{space_mark(self.carcase.ring.mark, path)} {'column widths' if columns else 'heights'}"
        at = place.beside(direction, -place.size(direction), 0)  # a slice without thickness where the spaces begin
        before: str | None = around.left if columns else around.above
        each_size = sizes(division, clear, self.grid, where=where)
        for number, (space, size) in enumerate(zip(division.spaces, each_size, strict=True), 1):
            at = at.beside(direction, 0, size)
            divider = self._divider(division, number, at, around, path)
            after = (around.right if columns else around.below) if divider is None else _bounding(divider)
            yield from self.space(space, at, _between(around, before, after, columns=columns), (*path, number))
            if divider is not None:
                yield divider
                at = divider.place
            before = after

    def _divider(
        self, division: Division, number: int, at: Solid, around: Around, path: tuple[int, ...]
    ) -> DividerPlace | None:
        """The divider after the space of this number, None after the last."""
        if number == len(division.spaces):
            return None
        space = division.spaces[number - 1]
        columns = division.way is Way.COLUMNS
        here = space_mark(self.carcase.ring.mark, path)
        mark = space_mark(self.carcase.ring.mark, (*path, number))
        owner = space.holds.ring.mark if isinstance(space.holds, Drawer) else mark
        return DividerPlace(
            kind=division.divider,
            mark=board_mark(here, Role.PARTITION, number) if columns else board_mark(owner, _ROLES[division.divider]),
            owner=owner,
            place=at.beside(RIGHT if columns else DOWN, 0, self._thickness(division.divider)),
            around=around,
        )

    def _thickness(self, kind: DividerKind) -> Nm:
        stuff = divider_stuff(self.carcase, kind)
        return stuff.thickness_nm if stuff else Nm(0)


_ROLES = {
    DividerKind.RAIL: Role.RAIL,
    DividerKind.FRAME: Role.RAIL,
    DividerKind.SHELF: Role.SHELF,
    DividerKind.NOTHING: Role.RAIL,
}
"""What the board that divides tiers is; of a frame its front rail, and of nothing what it would be."""


def divider_stuff(carcase: Carcase, kind: DividerKind) -> Stuff | None:
    """What a kind of divider is made of; None when nothing divides."""
    parts = {
        DividerKind.PARTITION: carcase.partitions,
        DividerKind.RAIL: carcase.rails,
        DividerKind.SHELF: carcase.shelves,
        DividerKind.FRAME: carcase.frames,
    }
    part = parts.get(kind)
    return part.stuff if part else None


def _bounding(divider: DividerPlace) -> str | None:
    return None if divider.kind is DividerKind.NOTHING else divider.mark


def _between(around: Around, before: str | None, after: str | None, *, columns: bool) -> Around:
    if columns:
        return replace(around, left=before or around.left, right=after or around.right)
    return replace(around, above=before, below=after)


def _no_depth(mark: str) -> Problem:
    return Problem(
        where=mark, what="nothing is left behind its inset door.", remedy="Take a thinner door, or a deeper carcase."
    )
