"""The rail that a wall cabinet hangs on: a board below the top, in front of the back, from upright to upright.

It is glued to the top along its whole length, its grain with that of the top, and the cabinet is screwed to the wall
through rail and back. Where uprights stand below the top, each of the uppermost spaces has a piece of it. All that
stands in these spaces must leave room, and a drawer a little more, so that it doesn't shut against the rail.

Common practice, no source. What the wall and its screws bear is for the maker to see to.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from planner.derive.frame import FRONT_ON
from planner.derive.parts import Item, Maker
from planner.domain.carcase import Carcase, HangingRail
from planner.domain.marks import board_mark
from planner.domain.plan import BoardSize, OpeningSize
from planner.domain.solid import BACK, FRONT, UP, Solid
from planner.domain.words import Role
from planner.errors import PlanError, Problem
from planner.lengths import Grid, Nm, show_length

AIR_NM = Nm(Grid.IN_16.step_nm)
"""1/16 in: the least space between a drawer and the rail behind it. Common practice, no source."""


def hanging_rails(
    carcase: Carcase, openings: Sequence[OpeningSize], boards: Iterable[BoardSize], grid: Grid
) -> Iterator[Item]:
    """The hanging rail of a carcase, if it has one.

    Args:
        carcase: what hangs.
        openings: its spaces.
        boards: all that stands in it.
        grid: step to which lengths are shown.

    Raises:
        PlanError: there is no room for it; all that is in the way is named.
    """
    how = carcase.hanging_rail
    if how is None:
        return
    top = carcase.ring.board(Role.TOP).mark
    highest = [opening for opening in openings if opening.above == top]
    places = {_mark(opening): _place(how, opening) for opening in highest}
    wrong = [problem for opening in highest for problem in _without_room(how, opening, grid)]
    wrong = wrong or _blocked(how, places, list(boards), grid)
    if wrong or not places:
        raise PlanError(wrong or [_nothing_to_hang_on(carcase)])
    maker = Maker(carcase.ring.mark, carcase.ring.mark)
    for mark, place in places.items():
        yield maker.board(mark, Role.HANGING_RAIL, how.stuff, FRONT_ON, place)


def _mark(opening: OpeningSize) -> str:
    return board_mark(opening.drawer or opening.mark, Role.HANGING_RAIL)


def _place(how: HangingRail, opening: OpeningSize) -> Solid:
    thick = how.stuff.thickness_nm
    return opening.place.beside(BACK, -thick, thick).beside(UP, -how.width_nm, how.width_nm)


def _without_room(how: HangingRail, opening: OpeningSize, grid: Grid) -> Iterator[Problem]:
    if how.width_nm >= opening.height_nm or how.stuff.thickness_nm >= opening.depth_nm:
        width, thick = (show_length(length, grid, with_unit=True) for length in (how.width_nm, how.stuff.thickness_nm))
        yield Problem(
            where=_mark(opening),
            what=f"a rail {width} wide and {thick} thick fills {opening.mark}.",
            remedy="Take a narrower or thinner rail, or a larger space.",
        )


def _blocked(how: HangingRail, places: dict[str, Solid], boards: Sequence[BoardSize], grid: Grid) -> list[Problem]:
    """What stands where the rail should, each drawer once."""
    deep = show_length(how.stuff.thickness_nm + AIR_NM, grid, with_unit=True)
    found: dict[tuple[str, str], Problem] = {}
    for mark, place in places.items():
        for board in boards:
            in_drawer = board.box != board.piece
            if board.place.meeting(place.grown(FRONT, AIR_NM) if in_drawer else place):
                what = board.box if in_drawer else board.mark
                remedy = f"Give {what} a back_clearance of at least {deep}, or leave" if in_drawer else "Leave"
                found[mark, what] = Problem(
                    where=mark,
                    what=f"{what} stands where it should be.",
                    remedy=f"{remedy} more room below the top.",
                )
    return list(found.values())


def _nothing_to_hang_on(carcase: Carcase) -> Problem:
    return Problem(
        where=f"hanging rail of {carcase.ring.mark}",
        what="no space lies below the top.",
        remedy="Leave out the rail; please report this.",
    )
