"""Bottoms in their grooves: shut in on all four sides, or slid in from behind below a raised back.

Along its grain and across it a bottom is smaller than the room in the grooves by its play, half of it on each side. A
bottom that slides in is glued in front only and reaches to the outside of the back, where a screw in a slot holds it
(Noyes, *Handwork in Wood*, 1910, pp. 190-191; Griffith, *Essentials of Woodworking*, 1908, sec. 105).
"""

from __future__ import annotations

from collections.abc import Iterator

from planner.derive.frame import FLAT_BELOW, SIDE_ON_LEFT, SIDE_ON_RIGHT
from planner.derive.parts import Item, LetIn, Maker, Shape
from planner.derive.pin_ends import half_pin_inside
from planner.domain.bottom import BottomPanel, Slips
from planner.domain.marks import board_mark
from planner.domain.plan import BoardSize
from planner.domain.project import Project
from planner.domain.ring import Ring
from planner.domain.solid import BACK, FRONT, LEFT, RIGHT, UP, Solid
from planner.domain.words import BottomGoes, FeatureKind, Held, MaterialKind, Role
from planner.lengths import Grid, Nm, on_grid

SLOT_EVERY_NM = Nm(192 * Grid.IN_16.step_nm)
"""1 ft: a bottom gets a slot for each whole foot of its width, and at least one. Common practice, no source."""


def groove_up(project: Project, ring: Ring, bottom: BottomPanel) -> Nm:
    """Height of a bottom's groove above the reference edge: as said, or just clear of the half-pins inside.

    The panel that closes a box at the top counts from the far edge.

    Below a raised back there is no corner, so only the corners at the front count. Where no corner has pins, as much
    wood is left below the groove as the bottom is thick. Common practice, no source.
    """
    if bottom.up_nm is not None:
        return bottom.up_nm
    first, second, third, fourth = ring.corners
    in_front = bottom.goes is BottomGoes.SLID_IN
    corners = (first, fourth) if in_front else (first, second, third, fourth)
    least = max(half_pin_inside(project, ring, corner) for corner in corners) or bottom.stuff.thickness_nm
    up = on_grid(least, project.grid)
    return up if up >= least else Nm(up + project.grid.step_nm)


def raised_by(project: Project, ring: Ring, bottom: BottomPanel | None) -> Nm:
    """How high the back's lower edge stands above that of the sides."""
    if bottom is None or bottom.goes is BottomGoes.ALL_ROUND:
        return Nm(0)
    return Nm(groove_up(project, ring, bottom) + bottom.stuff.thickness_nm)


def bottoms(project: Project, maker: Maker, ring: Ring, bottom: BottomPanel, block: Solid) -> Iterator[Item]:
    """The bottom of a ring that fills ``block``, its slips, and the grooves that take it."""
    up = groove_up(project, ring, bottom)
    thick = {board.role: board.stuff.thickness_nm for board in ring.boards}
    inside = block
    for role, way in ((Role.FRONT, FRONT), (Role.RIGHT, RIGHT), (Role.BACK, BACK), (Role.LEFT, LEFT)):
        inside = inside.shrunk(thick[role], way)
    low = block.up[0] + up
    inside = inside.with_span(UP, (low, low + bottom.stuff.thickness_nm))
    hosts = {role: ring.board(role).mark for role in (Role.FRONT, Role.RIGHT, Role.BACK, Role.LEFT)}
    if bottom.slips:
        slips = _slips(maker, ring, bottom.slips, inside, block)
        for role, item in slips:
            hosts[role] = item.mark
            yield item
        inside = inside.shrunk(bottom.slips.stuff.thickness_nm, LEFT, RIGHT)
    room = inside.shrunk(-bottom.groove_depth_nm, FRONT, RIGHT, BACK, LEFT)
    play, half = bottom.play_nm, bottom.play_nm // 2
    if bottom.goes is BottomGoes.SLID_IN:
        room = room.with_span(BACK, (room.back[0], block.back[1]))
        panel = room.shrunk(half, LEFT).shrunk(play - half, RIGHT)
        del hosts[Role.BACK]
    else:
        panel = room.shrunk(half, LEFT, FRONT).shrunk(play - half, RIGHT, BACK)
    mark = board_mark(ring.mark, Role.BOTTOM_PANEL)
    yield maker.board(mark, Role.BOTTOM_PANEL, bottom.stuff, FLAT_BELOW, panel)
    held = Held.FREE if project.material(bottom.stuff.material).kind is MaterialKind.SOLID else Held.GLUED
    for role, host in hosts.items():
        fixed = role is Role.FRONT and bottom.goes is BottomGoes.SLID_IN
        yield LetIn(guest=mark, host=host, room=room, kind=FeatureKind.GROOVE, held=Held.GLUED if fixed else held)
    if bottom.screw_slot_nm:
        yield from _screw_slots(mark, bottom.screw_slot_nm, panel.beside(BACK, -thick[Role.BACK], thick[Role.BACK]))


def _screw_slots(mark: str, wide: Nm, below_back: Solid) -> Iterator[Shape]:
    """Slots from the back edge of a bottom as far as it lies below the back, one for each foot of its width."""
    low, high = below_back.right
    count = max(1, (high - low) // SLOT_EVERY_NM)
    for part in range(1, 2 * count, 2):
        start = low + (high - low) * part // (2 * count) - wide // 2
        yield Shape(board=mark, block=below_back.with_span(RIGHT, (start, start + wide)), kind=FeatureKind.NOTCH)


def _slips(maker: Maker, ring: Ring, slips: Slips, inside: Solid, block: Solid) -> Iterator[tuple[Role, BoardSize]]:
    """Both slips, from the front to the back; under a raised back the bottom goes on without them."""
    strip = inside.with_span(UP, (block.up[0], block.up[0] + slips.height_nm))
    for role, lie, way in ((Role.RIGHT, SIDE_ON_RIGHT, RIGHT), (Role.LEFT, SIDE_ON_LEFT, LEFT)):
        place = strip.beside(way, -slips.stuff.thickness_nm, slips.stuff.thickness_nm)
        mark = f"{board_mark(ring.mark, Role.SLIP)}-{role}"
        yield role, maker.board(mark, Role.SLIP, slips.stuff, lie, place)
