"""What drawers run on: strips level with the rails, or strips on the uprights; and kickers that keep them from tipping.

A drawer that stands on a board or on a web frame needs nothing else. Bought slides are no boards: of them only the
clearances count. A strip lies across the grain of its upright, so it is glued at its front end only.

Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from planner.derive.drawers import drawer_block
from planner.derive.frame import FLAT_DEEP, SIDE_ON_LEFT, SIDE_ON_RIGHT
from planner.derive.parts import Item, LetIn, Maker, Shape
from planner.derive.spaces import DividerPlace
from planner.domain.carcase import Carcase, Rails, Runners
from planner.domain.drawer import Drawer
from planner.domain.marks import board_mark
from planner.domain.plan import OpeningSize
from planner.domain.ring import Stuff
from planner.domain.solid import BACK, DOWN, FRONT, LEFT, RIGHT, UP, Direction, Lie, opposite
from planner.domain.words import DividerKind, FeatureKind, Held, Role, RunnerKind, Side
from planner.errors import PlanError, Problem
from planner.lengths import Grid, Nm

GROOVE_PLAY_NM = Nm(2 * Grid.IN_64.step_nm)
"""1/32 in: how much wider the groove of a hung drawer is than its strip. Common practice, no source."""

_SIDES: tuple[tuple[Side, Direction, Lie], ...] = (
    (Side.LEFT, LEFT, SIDE_ON_LEFT),
    (Side.RIGHT, RIGHT, SIDE_ON_RIGHT),
)


def runners(carcase: Carcase, openings: Sequence[OpeningSize], places: Sequence[DividerPlace]) -> Iterator[Item]:
    """Runners and kickers of a carcase.

    Raises:
        PlanError: a drawer has nothing to stand on.
    """
    how = carcase.runners
    _must_stand(openings, how)
    if how is None or how.stuff is None:
        return
    rails = {place.mark: place for place in places if place.kind is DividerKind.RAIL}
    made: set[str] = set()
    for opening in openings:
        drawer = opening.space.holds
        if not isinstance(drawer, Drawer):
            continue
        if how.kind is RunnerKind.SIDE_HUNG:
            yield from _side_hung(opening, drawer, how, how.stuff)
            continue
        wanted = {opening.below: Role.RUNNER} | ({opening.above: Role.KICKER} if how.kickers else {})
        for bound in [bound for bound in wanted if bound in rails and bound not in made]:
            made.add(bound)
            strips = _Strips(wanted[bound], how.stuff, how.width_nm, carcase.rails)
            yield from strips.behind(rails[bound], opening, drawer.ring.mark)


def _must_stand(openings: Sequence[OpeningSize], how: Runners | None) -> None:
    """Refuse drawers that have nothing below them and nothing at their sides."""
    hung = how is not None and how.kind is not RunnerKind.WOOD
    falling = [each for each in openings if each.drawer and each.below is None and not hung]
    if falling:
        raise PlanError([_nothing_below(each) for each in falling])


def _nothing_below(opening: OpeningSize) -> Problem:
    return Problem(
        where=opening.drawer or opening.mark,
        what="has nothing to stand on: no rail, shelf or frame is below it.",
        remedy='Hang it on its sides: runners of kind "side-hung" or "slides".',
    )


@dataclass(frozen=True, slots=True)
class _Strips:
    """Strips level with a rail: runners with its top, kickers with its underside."""

    role: Role
    stuff: Stuff
    width_nm: Nm
    rails: Rails | None

    def behind(self, rail: DividerPlace, opening: OpeningSize, owner: str) -> Iterator[Item]:
        """A strip at each side behind a rail, in the line of its housings."""
        if self.rails is None:
            return
        maker, thick = Maker(opening.carcase, opening.carcase), self.stuff.thickness_nm
        level = UP if self.role is Role.RUNNER else DOWN
        space = rail.place.shrunk(self.rails.width_nm, FRONT)
        space = space.shrunk(space.size(UP) - thick, opposite(level))
        for number, (way, host) in enumerate(((LEFT, opening.left), (RIGHT, opening.right)), 1):
            strip = space.shrunk(space.size(RIGHT) - self.width_nm, opposite(way))
            strip = strip.grown(way, self.rails.housing_depth_nm)
            mark = board_mark(owner, self.role, number)
            yield maker.board(mark, self.role, self.stuff, FLAT_DEEP, strip)
            yield LetIn(guest=mark, host=host, room=strip, kind=FeatureKind.HOUSING, held=Held.GLUED_IN_FRONT)


def _side_hung(opening: OpeningSize, drawer: Drawer, how: Runners, stuff: Stuff) -> Iterator[Item]:
    """A strip on each upright half way up the drawer, and the groove in the drawer's side that it runs in.

    The strip begins behind the drawer's front, which stops there. The groove is as deep as the strip stands in, so that
    the drawer keeps its clearance at the sides. The drawer hangs with the upper side of the groove on the strip; below
    the strip the groove has a little play, and no more, or the drawer would droop when it is pulled out. It runs out
    behind, through the back's ends too, so it is cut after the drawer is glued up.
    """
    maker, block = Maker(opening.carcase, opening.carcase), drawer_block(drawer, opening, hung=True)
    start = block.back[0] + drawer.ring.boards[0].stuff.thickness_nm
    middle = (block.up[0] + block.up[1]) // 2
    low = middle - how.width_nm // 2
    sides = {LEFT: drawer.ring.board(Role.LEFT).mark, RIGHT: drawer.ring.board(Role.RIGHT).mark}
    for side, way, lie in _SIDES:
        thick = stuff.thickness_nm
        strip = opening.place.beside(way, -thick, thick).with_span(UP, (low, low + how.width_nm))
        strip = strip.with_span(BACK, (start, block.back[1]))
        mark = f"{board_mark(drawer.ring.mark, Role.RUNNER)}-{side}"
        yield maker.board(mark, Role.RUNNER, stuff, lie, strip)
        groove = block.beside(way, -thick, thick).with_span(BACK, strip.back)
        groove = groove.with_span(UP, (low - GROOVE_PLAY_NM, low + how.width_nm))
        yield Shape(board=sides[way], block=groove, kind=FeatureKind.GROOVE, takes=mark, held=Held.FREE)
        back = drawer.ring.board(Role.BACK)
        through = groove.with_span(BACK, (block.back[1] - back.stuff.thickness_nm, block.back[1]))
        yield Shape(board=back.mark, block=through, kind=FeatureKind.NOTCH, takes=mark, held=Held.FREE)
