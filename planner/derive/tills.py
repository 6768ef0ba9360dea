"""The till in a chest: a small tray at its left end, let into front and back.

The bottom lies from the chest's left side to the outside of the till's side, which stands on it; the grain of both
runs from front to back. The housings follow: that of the side ends where that of the bottom begins. Front and back
don't move along their grain and a solid bottom does across its own, so it is not glued in.

The lid lies between front and back, just below the chest's top edge, on the till's side. It swings on two round
pins near its left edge, which is rounded. They are half as thick as the lid, in the middle of its thickness and as
far from the left edge as from its faces; they go as deep into front and back as the housings, and twice as deep
into the lid.

Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from planner.derive.bottoms import groove_up
from planner.derive.frame import FLAT_DEEP, FLAT_DEEP_BELOW, SIDE_ON_RIGHT
from planner.derive.parts import Item, LetIn, Maker, Shape
from planner.domain.box import Box, SawnLid, Till
from planner.domain.marks import board_mark
from planner.domain.project import Project
from planner.domain.ring import Stuff
from planner.domain.solid import BACK, FRONT, LEFT, RIGHT, UP, Solid
from planner.domain.words import FeatureKind, Held, MaterialKind, Role
from planner.errors import PlanError, Problem
from planner.lengths import Grid, Nm, Unit, show_length

PLAY_NM = {Unit.INCH: Nm(2 * Grid.IN_64.step_nm), Unit.MM: Nm(10 * Grid.MM_TENTH.step_nm)}
"""1/32 in, 1 mm: space before a till's lid, behind it, at its left and above it. Common practice, no source."""


def till(project: Project, maker: Maker, box: Box, block: Solid) -> Iterator[Item]:
    """The till of a box that fills ``block``, if it has one.

    Raises:
        PlanError: there is no room for it; every reason is named.
    """
    how, ring = box.till, box.ring
    if how is None:
        return
    clear = block
    for role, way in ((Role.FRONT, FRONT), (Role.RIGHT, RIGHT), (Role.BACK, BACK), (Role.LEFT, LEFT)):
        clear = clear.shrunk(ring.board(role).stuff.thickness_nm, way)
    wrong = list(_problems(project, box, how, clear))
    if wrong:
        raise PlanError(wrong)
    left, (_, top), thick, play = clear.right[0], clear.up, how.stuff.thickness_nm, PLAY_NM[project.unit]
    within, outer, floor = left + how.width_nm, left + how.width_nm + thick, top - how.depth_nm
    under_lid = top - play - how.lid.thickness_nm if how.lid else top
    housed = clear.shrunk(-how.housing_depth_nm, FRONT, BACK)
    side = housed.with_span(RIGHT, (within, outer)).with_span(UP, (floor, under_lid))
    bottom = housed.with_span(RIGHT, (left, outer)).with_span(UP, (floor - thick, floor))
    side_mark, bottom_mark = (board_mark(ring.mark, role) for role in (Role.TILL_SIDE, Role.TILL_BOTTOM))
    held = Held.FREE if project.material(how.stuff.material).kind is MaterialKind.SOLID else Held.GLUED
    yield maker.board(side_mark, Role.TILL_SIDE, how.stuff, SIDE_ON_RIGHT, side)
    yield maker.board(bottom_mark, Role.TILL_BOTTOM, how.stuff, FLAT_DEEP_BELOW, bottom)
    for host in (ring.board(Role.FRONT).mark, ring.board(Role.BACK).mark):
        yield LetIn(guest=side_mark, host=host, room=side, kind=FeatureKind.HOUSING)
        yield LetIn(guest=bottom_mark, host=host, room=bottom, kind=FeatureKind.HOUSING, held=held)
    if how.lid:
        lid = clear.with_span(RIGHT, (left + play, outer)).with_span(UP, (under_lid, top - play))
        yield from _lid(maker, box, how.lid, lid.shrunk(play, FRONT, BACK), (play, how.housing_depth_nm))


def _lid(maker: Maker, box: Box, stuff: Stuff, place: Solid, pins: tuple[Nm, Nm]) -> Iterator[Item]:
    """The lid, and the holes for its pins, which cross its play and go so deep into front and back."""
    mark = board_mark(box.ring.mark, Role.TILL_LID)
    yield maker.board(mark, Role.TILL_LID, stuff, FLAT_DEEP, place)
    play, deep = pins
    bore, around = stuff.thickness_nm // 2, stuff.thickness_nm // 4
    start, low = place.right[0] + around, place.up[0] + around
    pin = place.with_span(RIGHT, (start, start + bore)).with_span(UP, (low, low + bore))
    for way, role in ((FRONT, Role.FRONT), (BACK, Role.BACK)):
        for board, gap, depth in ((mark, -2 * deep, 2 * deep), (box.ring.board(role).mark, play, deep)):
            hole = pin.beside(way, gap, depth)
            yield Shape(board=board, block=hole, kind=FeatureKind.HOLE, takes="" if board == mark else mark)


def _problems(project: Project, box: Box, how: Till, clear: Solid) -> Iterator[Problem]:
    """Why a till doesn't fit in what is clear within the chest's boards."""

    def show(length: int) -> str:
        return show_length(length, project.grid, with_unit=True)

    where, thick = f"{box.ring.mark} till", how.stuff.thickness_nm
    if isinstance(box.lid, SawnLid):
        yield Problem(
            where=where, what="doesn't go with a lid that is sawn off.", remedy="Leave one out, or hang the lid."
        )
    long = clear.size(RIGHT)
    if how.width_nm + thick >= long:
        yield Problem(
            where=where,
            what=f"with its side it would take {show(how.width_nm + thick)} of the {show(long)} within the chest.",
            remedy=f"Make it narrower than {show(long - thick)}.",
        )
    lowest = clear.up[0]
    if box.bottom:
        lowest = Nm(lowest + groove_up(project, box.ring, box.bottom) + box.bottom.stuff.thickness_nm)
    deepest = clear.up[1] - lowest - thick
    if how.depth_nm > deepest:
        yield Problem(
            where=where,
            what=f"{show(how.depth_nm)} deep, its bottom would lie below what is clear within the chest.",
            remedy=f"Make it at most {show(deepest)} deep.",
        )
    if how.lid and how.lid.thickness_nm + PLAY_NM[project.unit] >= how.depth_nm:
        yield Problem(
            where=where,
            what=f"a lid {show(how.lid.thickness_nm)} thick fills the depth of {show(how.depth_nm)}.",
            remedy="Make the till deeper, or the lid thinner.",
        )
