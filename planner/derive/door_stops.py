"""Stops that an inset door shuts against: a strip behind its closing edge, or strips above and below behind a pair.

A strip is fixed along its whole length to the board beside, above or below the space, its grain with that board's. It
begins where the shut door ends, so all that stands behind the door must leave room for it, and drawers must pass.
Where a fixed board stands just behind the door, that stops the door already.

Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from planner.derive.frame import FRONT_ON, STANDING
from planner.derive.parts import Item, Maker
from planner.derive.spaces import DoorPlace
from planner.domain.marks import board_mark
from planner.domain.panelled import thickness
from planner.domain.plan import BoardSize
from planner.domain.solid import BACK, DOWN, LEFT, RIGHT, UP, Direction, Lie, Solid
from planner.domain.space import DoorStops
from planner.domain.words import Role, Side, Stands
from planner.errors import PlanError, Problem
from planner.lengths import Grid, show_length


@dataclass(frozen=True, slots=True)
class _Strip:
    """A strip that is wanted: its mark, the side of the space that it is on, what it is fixed to, how it lies."""

    mark: str
    way: Direction
    host: str | None
    lie: Lie


def door_stops(maker: Maker, places: Sequence[DoorPlace], boards: Sequence[BoardSize], grid: Grid) -> Iterator[Item]:
    """The stops of all doors of a carcase.

    Args:
        maker: of the carcase's boards.
        places: the spaces before which doors stand.
        boards: all that stands in the carcase.
        grid: step to which lengths are shown.

    Raises:
        PlanError: nothing to fix a stop to, or something in its way; all are named.
    """
    wrong: list[Problem] = []
    for place in places:
        how = place.doors.stops
        if how is None or place.doors.stands is not Stands.INSET:
            continue
        for strip in _strips(place):
            block = _block(place, how, strip.way)
            found = [*_unfixed(strip), *_blocked(strip, block, boards, grid)]
            wrong += found
            if not found:
                yield maker.board(strip.mark, Role.DOOR_STOP, how.stuff, strip.lie, block)
    if wrong:
        raise PlanError(wrong)


def _strips(place: DoorPlace) -> Iterator[_Strip]:
    if place.doors.leaves > 1:
        for number, (way, host) in enumerate(((UP, place.around.above), (DOWN, place.around.below)), 1):
            yield _Strip(board_mark(place.mark, Role.DOOR_STOP, number), way, host, FRONT_ON)
        return
    hung_left = place.doors.hinged is Side.LEFT
    way, host = (RIGHT, place.around.right) if hung_left else (LEFT, place.around.left)
    yield _Strip(board_mark(place.mark, Role.DOOR_STOP), way, host, STANDING)


def _block(place: DoorPlace, how: DoorStops, way: Direction) -> Solid:
    behind = place.place.back[0] + thickness(place.doors.made)
    strip = place.place.with_span(BACK, (behind, behind + how.stuff.thickness_nm))
    return strip.beside(way, -how.width_nm, how.width_nm)


def _unfixed(strip: _Strip) -> Iterator[Problem]:
    if strip.host is None:
        where = "above" if strip.way is UP else "below"
        yield Problem(
            where=strip.mark,
            what=f"nothing is {where} the doors to fix it to.",
            remedy="Leave out the stops, or part these tiers by a shelf or a rail.",
        )


def _blocked(strip: _Strip, block: Solid, boards: Sequence[BoardSize], grid: Grid) -> Iterator[Problem]:
    """What stands where a strip should, and drawers that come out there, each once."""
    told: set[str] = set()
    for board in boards:
        in_drawer = board.box != board.piece
        taken = board.place.with_span(BACK, (block.back[0], board.place.back[1])) if in_drawer else board.place
        what = board.box if in_drawer else board.mark
        if what in told or board.place.back[1] <= block.back[0] or not taken.meeting(block):
            continue
        told.add(what)
        if in_drawer:
            yield Problem(
                where=strip.mark,
                what=f"the drawer {what} could not come out past it.",
                remedy="Leave out the stops: the door can shut against blocks between the drawers, or a catch.",
            )
        else:
            short = show_length(block.back[1] - board.place.back[0], grid, with_unit=True)
            yield Problem(
                where=strip.mark,
                what=f"{what} is in its way by {short}.",
                remedy=f"If {what} stops the door already, leave out the stops; else set it further back.",
            )
