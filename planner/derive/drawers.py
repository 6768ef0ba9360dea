"""A drawer in its opening: its ring, its raised or lowered back, its applied front, its handles' holes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from planner.derive.bottoms import bottoms, raised_by
from planner.derive.frame import FRONT_ON
from planner.derive.handles import handle_holes
from planner.derive.parts import Item, LetIn, Maker
from planner.derive.ring_boards import ring_boards
from planner.domain.drawer import AppliedFront, Drawer
from planner.domain.marks import board_mark
from planner.domain.plan import BoardSize, OpeningSize
from planner.domain.project import Project
from planner.domain.solid import BACK, DOWN, FRONT, LEFT, RIGHT, UP, Solid
from planner.domain.words import Role, Stands
from planner.lengths import Nm


def drawer_block(drawer: Drawer, opening: OpeningSize, *, hung: bool) -> Solid:
    """What the ring of a drawer fills: its opening less the clearances and, before it, an inset front.

    A drawer that hangs on its sides has half of the clearance above it and half below, so that it drags on nothing.
    """
    front = drawer.applied_front
    before = front.stuff.thickness_nm if front and front.stands is Stands.INSET else 0
    below = drawer.top_clearance_nm // 2 if hung else 0
    return (
        opening.place.shrunk(drawer.side_clearance_nm, LEFT, RIGHT)
        .shrunk(drawer.top_clearance_nm - below, UP)
        .shrunk(below, DOWN)
        .shrunk(drawer.back_clearance_nm, BACK)
        .shrunk(before, FRONT)
    )


def drawers(project: Project, drawer: Drawer, opening: OpeningSize, *, hung: bool) -> Iterator[Item]:
    """All boards of a drawer, and their cuts."""
    ring, block = drawer.ring, drawer_block(drawer, opening, hung=hung)
    maker = Maker(ring.mark, opening.carcase)
    raised = raised_by(project, ring, drawer.bottom)
    back = ring.board(Role.BACK).mark
    for item in ring_boards(maker, ring, block, project.proud_nm):
        if isinstance(item, BoardSize) and item.mark == back:
            yield replace(item, place=_between(item.place, raised, drawer.back_lower_nm))
        elif isinstance(item, LetIn) and item.guest == back:
            yield replace(item, room=_between(item.room, raised, drawer.back_lower_nm))
        else:
            yield item
    if drawer.bottom:
        yield from bottoms(project, maker, ring, drawer.bottom, block)
    shows = block.beside(FRONT, -ring.boards[0].stuff.thickness_nm, ring.boards[0].stuff.thickness_nm)
    on = [ring.boards[0].mark]
    if drawer.applied_front:
        shows = _applied_place(drawer.applied_front, opening)
        on.append(board_mark(ring.mark, Role.APPLIED_FRONT))
        yield maker.board(on[-1], Role.APPLIED_FRONT, drawer.applied_front.stuff, FRONT_ON, shows)
    if drawer.handles:
        through = block.back[0] + ring.boards[0].stuff.thickness_nm
        seen = shows.with_span(BACK, (shows.back[0], through))
        yield from handle_holes(drawer, drawer.handles, on, seen, block)


def _between(block: Solid, raised: Nm, lower: Nm) -> Solid:
    return block.shrunk(raised, DOWN).shrunk(lower, UP)


def _applied_place(front: AppliedFront, opening: OpeningSize) -> Solid:
    thick = front.stuff.thickness_nm
    if front.stands is Stands.INSET:
        within = opening.place.shrunk(front.gap_nm, LEFT, RIGHT, UP, DOWN)
        return within.beside(FRONT, -thick, thick)
    return opening.place.shrunk(-front.overlay_nm, LEFT, RIGHT, UP, DOWN).beside(FRONT, 0, thick)
