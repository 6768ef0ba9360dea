"""Lids of boxes: one that lies on the box, or one that is sawn off it.

A lid that lies on the box has its grain from side to side. In a frame, the stiles run along front and back, so that no
end grain shows in front and hinges screw into long grain; the rails run from front to back, and the grain of the panels
lies along the stiles. Panels side by side are then parted by rails, panels behind each other by muntins.

Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from planner.derive.frame import FLAT
from planner.derive.panelled import made_of
from planner.derive.parts import Item, Maker
from planner.derive.sawn_lids import sawn_lid
from planner.domain.box import Box, HingedLid, SawnLid
from planner.domain.marks import board_mark
from planner.domain.panelled import Made, Panelled, thickness
from planner.domain.project import Project
from planner.domain.solid import BACK, FRONT, LEFT, RIGHT, UP, Solid
from planner.domain.words import Role
from planner.errors import PlanError, Problem
from planner.lengths import show_length


def lid(project: Project, maker: Maker, box: Box, block: Solid) -> Iterator[Item]:
    """The lid of a box that fills ``block``.

    Raises:
        PlanError: a lid that doesn't lie on the box, a frame that can't be made, a box that can't be sawn.
    """
    match box.lid:
        case HingedLid() as said:
            yield from _hinged(project, maker, box, said, block)
        case SawnLid() as said:
            yield from sawn_lid(project, maker, box, said, block)


def _hinged(project: Project, maker: Maker, box: Box, said: HingedLid, block: Solid) -> Iterator[Item]:
    mark = board_mark(box.ring.mark, Role.LID)
    place = block.beside(UP, 0, thickness(said.made))
    wrong: list[Problem] = []
    for role, way, over in (
        (Role.FRONT, FRONT, said.front_nm),
        (Role.RIGHT, RIGHT, said.sides_nm),
        (Role.BACK, BACK, said.back_nm),
        (Role.LEFT, LEFT, said.sides_nm),
    ):
        place = place.grown(way, over)
        board = box.ring.board(role)
        if -over >= board.stuff.thickness_nm:
            back, thick = (show_length(n, project.grid, with_unit=True) for n in (-over, board.stuff.thickness_nm))
            wrong.append(
                Problem(
                    where=mark,
                    what=f"stands back {back} from the {role} of the box, {board.mark}, which is only {thick} thick.",
                    remedy="Let it lie on all four boards.",
                )
            )
    if wrong:
        raise PlanError(wrong)
    whole = maker.board(mark, Role.LID, said.made.stuff, FLAT, place)
    yield from made_of(maker, _along_the_front(said.made), whole, project.grid)


def _along_the_front(made: Made) -> Made:
    """Stiles run from side to side here, so panels side by side follow each other along the stiles."""
    return replace(made, wide=made.high, high=made.wide) if isinstance(made, Panelled) else made
