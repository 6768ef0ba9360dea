"""Rows of blind holes in the boards beside loose shelves, for the pins that these lie on: four rows for each shelf.

The middle hole of a row is just below the shelf where it is planned, so that the shelf lies on a pin as thick as the
hole; the others are above and below it, a fixed distance apart. Rows stand as far in from the shelf's front and back
edges as the maker says. A level at which any of its four holes would come too near to another cut, to another hole or
to the end of the space is left out; at the planned level that is refused.

Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from planner.derive.parts import Item, LetIn, Shape
from planner.domain.marks import board_mark
from planner.domain.plan import BoardSize, OpeningSize
from planner.domain.solid import BACK, DOWN, FRONT, LEFT, RIGHT, UP, Solid
from planner.domain.space import LooseShelves, ShelfPins
from planner.domain.words import FeatureKind, Role
from planner.errors import PlanError, Problem
from planner.lengths import Grid, Nm, show_length

WOOD_NM = Nm(Grid.IN_16.step_nm)
"""1/16 in: the least wood to be left around a hole. Common practice, no source."""

_ALL_ROUND = (RIGHT, LEFT, BACK, FRONT, UP, DOWN)

_Level = tuple[tuple[str, Solid], ...]
"""The four holes of one height: the board of each, and what is drilled away."""


def shelf_pins(openings: Sequence[OpeningSize], items: Iterable[Item], grid: Grid) -> Iterator[Shape]:
    """The holes beside all loose shelves of a carcase that lie on pins.

    Args:
        openings: its spaces.
        items: all boards in it, and their cuts.
        grid: step to which lengths are shown.

    Raises:
        PlanError: a hole can't be drilled where its shelf is planned; all are named.
    """
    found = list(items)
    shelved = list(_shelved(openings, {each.mark: each for each in found if isinstance(each, BoardSize)}))
    drilled = _Drilled(found)
    wrong: list[Problem] = []
    for each in shelved:
        found_wrong = each.wrong(drilled, grid)
        wrong += found_wrong
        if not found_wrong:
            drilled.drill(each.level(0))
    if wrong:
        raise PlanError(wrong)
    for each in shelved:
        for step in range(1, each.pins.holes // 2 + 1):
            for level in (each.level(step), each.level(-step)):
                if each.within(level) and not drilled.in_the_way(level):
                    drilled.drill(level)
    yield from drilled.holes()


def _shelved(openings: Sequence[OpeningSize], boards: Mapping[str, BoardSize]) -> Iterator[_Shelved]:
    for opening in openings:
        held = opening.space.holds
        if isinstance(held, LooseShelves) and held.pins:
            for number in range(1, held.count + 1):
                shelf = boards[board_mark(opening.mark, Role.LOOSE_SHELF, number)]
                yield _Shelved(opening, shelf, held.pins, boards)


@dataclass(frozen=True, slots=True)
class _Shelved:
    """A loose shelf on pins."""

    opening: OpeningSize
    shelf: BoardSize
    pins: ShelfPins
    boards: Mapping[str, BoardSize]

    def level(self, step: int) -> _Level:
        """The four holes so many steps above the shelf's planned place; below it, less than nothing."""
        bore, depth, place = self.pins.hole_nm, self.pins.depth_nm, self.shelf.place
        top = place.up[0] + step * self.pins.apart_nm
        row = self.opening.place.with_span(UP, (top - bore, top))
        middles = (place.back[0] + self.pins.front_nm, place.back[1] - self.pins.back_nm)
        return tuple(
            (host, row.beside(way, 0, depth).with_span(BACK, (middle - bore // 2, middle - bore // 2 + bore)))
            for host, way in ((self.opening.left, LEFT), (self.opening.right, RIGHT))
            for middle in middles
        )

    def within(self, level: _Level) -> bool:
        """Whether a shelf on these pins, and the wood around them, is within its space."""
        (low, high), (start, stop) = self.opening.place.up, level[0][1].up
        return start - WOOD_NM >= low and stop + self.shelf.thickness_nm <= high

    def wrong(self, drilled: _Drilled, grid: Grid) -> list[Problem]:
        """Why there can be no holes where the shelf is planned."""
        level = self.level(0)
        first, last = level[0][1].back, level[1][1].back
        deep = show_length(self.pins.depth_nm, grid, with_unit=True)
        found = [
            (f"holes {deep} deep leave too little wood in {host}.", "Drill them less deep, or take a thicker board.")
            for host in dict.fromkeys((self.opening.left, self.opening.right))
            if self.pins.depth_nm + WOOD_NM > self.boards[host].thickness_nm
        ]
        if first[1] + WOOD_NM > last[0] or first[0] < self.shelf.place.back[0] or last[1] > self.shelf.place.back[1]:
            found.append(("its rows of holes lie past its edges, or run into each other.", _NEARER))
        if not self.within(level):
            found.append(("there is no room for pins below it.", "Take fewer shelves, or smaller pins."))
        if not found and (cut := drilled.in_the_way(level)):
            found.append((f"a hole for its pins would run into {cut}.", _ELSEWHERE))
        where = f"pins of {self.shelf.mark}"
        return [Problem(where=where, what=what, remedy=remedy) for what, remedy in found]


_NEARER = "Set the rows nearer to the edges, or take a deeper shelf."
_ELSEWHERE = "Drill less deep, set the rows further in, or take another number of shelves."


@dataclass(slots=True)
class _Drilled:
    """Holes drilled so far, and the cuts that they must keep clear of."""

    items: Sequence[Item]
    _holes: dict[str, list[Solid]] = field(default_factory=dict)

    def drill(self, level: _Level) -> None:
        """Drill the four holes of a level; one that is there already serves two shelves."""
        for host, hole in level:
            holes = self._holes.setdefault(host, [])
            if hole not in holes:
                holes.append(hole)

    def in_the_way(self, level: _Level) -> str:
        """What is nearer to one of the holes than it may be, in words; nothing when all can be drilled."""
        found = (self._near(host, hole) for host, hole in level)
        return next((words for words in found if words), "")

    def _near(self, host: str, hole: Solid) -> str:
        around = hole.shrunk(-WOOD_NM, *_ALL_ROUND)
        for each in self.items:
            match each:
                case LetIn() if each.host == host and each.room.meeting(around):
                    return f"the {each.kind} for {each.guest} in {host}"
                case Shape() if each.board == host and each.block.meeting(around):
                    return f"the {each.kind} in {host}"
        if any(other != hole and other.meeting(around) for other in self._holes.get(host, ())):
            return f"another hole in {host}"
        return ""

    def holes(self) -> Iterator[Shape]:
        """All holes, board by board, from below."""
        for host, holes in self._holes.items():
            for hole in sorted(holes, key=lambda each: (each.right, each.back, each.up)):
                yield Shape(board=host, block=hole, kind=FeatureKind.HOLE)
