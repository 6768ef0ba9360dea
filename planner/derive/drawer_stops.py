"""Stops that a drawer shuts against: blocks behind its front, glued to what it stands on.

Two blocks stand a quarter of the way in from each side; in a drawer narrower inside than four of them, one stands in
the middle. Their grain runs along the front, with that of the rail below. They lie behind the drawer's own front where
it is when the drawer is shut, and lower than its bottom, which passes over them; so does its back, which is raised.

A front over the edges of the carcase stops by itself, and a drawer that hangs lies on nothing: there is none then.

Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from planner.derive.bottoms import groove_up, raised_by
from planner.derive.drawers import drawer_block
from planner.derive.frame import FLAT
from planner.derive.parts import Item, Maker
from planner.domain.drawer import Drawer, DrawerStops
from planner.domain.marks import board_mark
from planner.domain.plan import BoardSize, OpeningSize
from planner.domain.project import Project
from planner.domain.solid import BACK, DOWN, LEFT, RIGHT, Solid
from planner.domain.words import Role, Stands
from planner.errors import PlanError, Problem
from planner.lengths import show_length

_ROOM_FOR_TWO = 4
"""A drawer so many times as wide inside as a block is long gets two."""


def drawer_stops(
    project: Project, openings: Sequence[OpeningSize], boards: Mapping[str, BoardSize], *, hung: bool
) -> Iterator[Item]:
    """The stops of all drawers of a carcase.

    Args:
        project: the maker's word.
        openings: the spaces of the carcase.
        boards: all that stands in it, by mark.
        hung: whether its drawers hang on their sides.

    Raises:
        PlanError: stops that the drawer can't pass, or that lie on nothing; all are named.
    """
    stopped = [each for opening in openings if (each := _Stopped.of(project, opening)) and not hung]
    wrong = [problem for each in stopped for problem in each.wrong(boards)]
    if wrong:
        raise PlanError(wrong)
    for each in stopped:
        maker, stuff = Maker(each.opening.carcase, each.opening.carcase), each.stops.stuff
        for number, block in enumerate(each.blocks(), 1):
            mark = board_mark(each.drawer.ring.mark, Role.DRAWER_STOP, number)
            yield maker.board(mark, Role.DRAWER_STOP, stuff, FLAT, block)


@dataclass(frozen=True, slots=True)
class _Stopped:
    """A drawer that shuts against stops."""

    project: Project
    opening: OpeningSize
    drawer: Drawer
    stops: DrawerStops

    @classmethod
    def of(cls, project: Project, opening: OpeningSize) -> _Stopped | None:
        """The drawer of an opening, if it shuts against stops."""
        drawer = opening.space.holds
        if not isinstance(drawer, Drawer) or drawer.stops is None:
            return None
        front = drawer.applied_front
        covers = front is not None and front.stands is Stands.OVERLAY
        return None if covers else cls(project, opening, drawer, drawer.stops)

    def blocks(self) -> Iterator[Solid]:
        """What the stops fill, from the left."""
        low, high = self._inside().right
        length = self.stops.length_nm
        count = 2 if high - low >= _ROOM_FOR_TWO * length else 1
        for part in range(1, 2 * count, 2):
            start = low + (high - low) * part // (2 * count) - length // 2
            yield self._strip().with_span(RIGHT, (start, start + length))

    def _strip(self) -> Solid:
        """As wide as the opening: from the drawer's front back, from what it stands on up."""
        block = drawer_block(self.drawer, self.opening, hung=False)
        front = block.back[0] + self.drawer.ring.board(Role.FRONT).stuff.thickness_nm
        strip = self.opening.place.with_span(BACK, (front, front + self.stops.width_nm))
        return strip.beside(DOWN, -self.stops.stuff.thickness_nm, self.stops.stuff.thickness_nm)

    def _inside(self) -> Solid:
        """Between the drawer's sides, and their slips."""
        block, bottom = drawer_block(self.drawer, self.opening, hung=False), self.drawer.bottom
        slip = bottom.slips.stuff.thickness_nm if bottom and bottom.slips else 0
        for role, way in ((Role.LEFT, LEFT), (Role.RIGHT, RIGHT)):
            block = block.shrunk(self.drawer.ring.board(role).stuff.thickness_nm + slip, way)
        return block

    def wrong(self, boards: Mapping[str, BoardSize]) -> Iterator[Problem]:
        """Why these stops can't be."""
        where = f"stops of {self.drawer.ring.mark}"
        for what, remedy in (*self._in_the_way(), *self._on_nothing(boards)):
            yield Problem(where=where, what=what, remedy=remedy)

    def _in_the_way(self) -> Iterator[tuple[str, str]]:
        ring, bottom, high = self.drawer.ring, self.drawer.bottom, self.stops.stuff.thickness_nm
        if bottom is None or not raised_by(self.project, ring, bottom):
            yield (
                "the drawer's back reaches down to what it runs on, so it can't be put in over stops in front.",
                'Raise the back: goes = "slid in" of its bottom. Or leave out the stops.',
            )
        elif (up := groove_up(self.project, ring, bottom)) <= high:
            yield (
                f"blocks {self._show(high)} high are in the way of the bottom, which lies {self._show(up)} up.",
                "Take lower blocks, or put the bottom's groove higher.",
            )
        if self._inside().size(RIGHT) < self.stops.length_nm:
            yield (
                f"blocks {self._show(self.stops.length_nm)} long don't fit between the drawer's sides.",
                "Take shorter blocks.",
            )

    def _on_nothing(self, boards: Mapping[str, BoardSize]) -> Iterator[tuple[str, str]]:
        """Stops stand on wood for the whole of their width."""
        below = boards.get(self.opening.below or "")
        if below is None:
            return
        reach, stands = self._strip().along(BACK), below.place.along(BACK)
        if reach[1] > stands[1]:
            room = stands[1] - reach[0]
            left = f"only {self._show(room)} of it is" if room > 0 else "nothing of it is"
            yield (
                f"blocks {self._show(self.stops.width_nm)} wide lie past {below.mark}: {left} behind the front.",
                f"Take narrower blocks, or make {below.mark} wider.",
            )

    def _show(self, length: int) -> str:
        return show_length(length, self.project.grid, with_unit=True)
