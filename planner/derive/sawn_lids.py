"""A lid sawn off a closed box: the panel that closes it, and the saw line all round.

The four boards of the ring stay whole until the box is glued up; then the saw parts them. Grooves must stay clear
of the line, or the saw would open them. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from planner.derive.bottoms import groove_up
from planner.derive.frame import FLAT
from planner.derive.parts import Item, LetIn, Maker, Shape
from planner.derive.ring_boards import ring_boards
from planner.derive.sawn_pins import kerf_of
from planner.domain.box import Box, SawnLid
from planner.domain.marks import board_mark
from planner.domain.plan import BoardSize
from planner.domain.project import Project
from planner.domain.sawn import SawnPart
from planner.domain.solid import BACK, FRONT, LEFT, RIGHT, UP, Solid
from planner.domain.words import FeatureKind, Held, MaterialKind, Role
from planner.errors import PlanError, Problem
from planner.lengths import Nm, Span, show_length


def sawn_lid(project: Project, maker: Maker, box: Box, lid: SawnLid, block: Solid) -> Iterator[Item]:
    """The top panel of a closed box that fills ``block``, its grooves, and the saw line on all four boards.

    Raises:
        PlanError: nothing is left of the box, or a groove meets the saw line.
    """
    ring, kerf = box.ring, kerf_of(box, lid)
    down = groove_up(project, ring, lid.top)
    over = Nm(box.height_nm - down)
    top = (Nm(over - lid.top.stuff.thickness_nm), over)
    wrong = list(_problems(project, box, kerf, top))
    if wrong:
        raise PlanError(wrong)
    yield from _top(project, maker, box, lid, block.with_span(UP, (block.up[0] + top[0], block.up[0] + top[1])))
    line = (block.up[0] + kerf[0], block.up[0] + kerf[1])
    for board in ring_boards(maker, ring, block, project.proud_nm):
        if isinstance(board, BoardSize):
            yield Shape(board=board.mark, block=board.place.with_span(UP, line), kind=FeatureKind.SAW_LINE)


def _top(project: Project, maker: Maker, box: Box, lid: SawnLid, slice_of_box: Solid) -> Iterator[Item]:
    """The panel, with half its play on each side, in a groove on all four boards."""
    ring, top = box.ring, lid.top
    room = slice_of_box
    for role, way in ((Role.FRONT, FRONT), (Role.RIGHT, RIGHT), (Role.BACK, BACK), (Role.LEFT, LEFT)):
        room = room.shrunk(ring.board(role).stuff.thickness_nm - top.groove_depth_nm, way)
    half = top.play_nm // 2
    panel = room.shrunk(half, LEFT, FRONT).shrunk(top.play_nm - half, RIGHT, BACK)
    mark = board_mark(ring.mark, Role.TOP_PANEL)
    yield maker.board(mark, Role.TOP_PANEL, top.stuff, FLAT, panel)
    held = Held.FREE if project.material(top.stuff.material).kind is MaterialKind.SOLID else Held.GLUED
    for board in ring.boards:
        yield LetIn(guest=mark, host=board.mark, room=room, kind=FeatureKind.GROOVE, held=held)


def _problems(project: Project, box: Box, kerf: Span, top: Span) -> Iterator[Problem]:
    """Why the box can't be sawn where it should be."""

    def show(length: int) -> str:
        return show_length(length, project.grid, with_unit=True)

    where, high = box.ring.mark, box.height_nm
    if kerf[0] <= 0:
        yield Problem(
            where=where,
            what=f"a lid {show(high - kerf[1])} high and a kerf of {show(kerf[1] - kerf[0])} leave nothing of a "
            f"closed box {show(high)} high.",
            remedy=f"Make the lid lower than {show(high - (kerf[1] - kerf[0]))}, or the closed box higher.",
        )
        return
    line = f"the saw line, {show(kerf[0])} to {show(kerf[1])} up"
    if box.bottom:
        up = groove_up(project, box.ring, box.bottom)
        above = Nm(up + box.bottom.stuff.thickness_nm)
        if above >= kerf[0]:
            yield Problem(
                where=where,
                what=f"the bottom's groove, {show(up)} to {show(above)} up, meets {line}.",
                remedy=f"Let it end below {show(kerf[0])}, or make the lid lower.",
            )
    if top[0] <= kerf[1]:
        yield Problem(
            where=where,
            what=f"the top's groove, {show(top[0])} to {show(top[1])} up, meets {line}.",
            remedy=f"Let it begin less than {show(high - kerf[1] - (top[1] - top[0]))} below the upper edge, "
            "or make the lid higher.",
        )


def sawn_sizes(box: Box, boards: Mapping[str, BoardSize]) -> tuple[SawnPart, ...]:
    """The parts of each board once the lid is sawn off, those of the box first; none where nothing is sawn.

    Args:
        box: a box of any kind.
        boards: finished sizes by mark.
    """
    lid = box.lid
    if not isinstance(lid, SawnLid):
        return ()
    heights = {False: kerf_of(box, lid)[0], True: lid.height_nm}
    return tuple(
        SawnPart(
            mark=board_mark(f"{box.ring.mark}-lid", board.role) if of_lid else board.mark,
            board=board.mark,
            of_lid=of_lid,
            length_nm=boards[board.mark].place.size(boards[board.mark].lie.along),
            width_nm=height,
            thickness_nm=board.stuff.thickness_nm,
        )
        for of_lid, height in heights.items()
        for board in box.ring.boards
    )
