"""A plinth: a dovetailed ring below the carcase, whole or cut away to bracket feet.

For feet all four boards are cut away between them, the back too: a piece that stands on its four corners doesn't
rock on an uneven floor. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from planner.derive.frame import LIES
from planner.derive.parts import Item, Maker, Shape
from planner.derive.ring_boards import ring_boards
from planner.domain.carcase import Plinth
from planner.domain.solid import BACK, RIGHT, UP, Solid, opposite
from planner.domain.words import FeatureKind
from planner.errors import Problem
from planner.lengths import Grid, Nm, show_length


def plinth(maker: Maker, how: Plinth, block: Solid, proud: Nm) -> Iterator[Item]:
    """The four boards of a plinth that fills ``block``, and what is cut away between its feet."""
    ring, foot = how.ring, how.foot_nm
    yield from ring_boards(Maker(ring.mark, maker.piece), ring, block, proud)
    if foot is None:
        return
    low = block.up[0]
    for board in ring.boards:
        lie = LIES[ring.kind][board.role]
        between = block.shrunk(foot, lie.along, opposite(lie.along)).with_span(UP, (low, low + how.rise_nm))
        notch = between.shrunk(between.size(lie.out) - board.stuff.thickness_nm, opposite(lie.out))
        yield Shape(board=board.mark, block=notch, kind=FeatureKind.NOTCH)


def plinth_problems(how: Plinth, block: Solid, grid: Grid) -> Iterator[Problem]:
    """Why a plinth can't have the feet that it should have."""
    if how.foot_nm is None:
        return

    def show(length: int) -> str:
        return show_length(length, grid, with_unit=True)

    where, foot = how.ring.mark, how.foot_nm
    shortest = min(block.size(RIGHT), block.size(BACK))
    thickest = max(board.stuff.thickness_nm for board in how.ring.boards)
    if 2 * foot >= shortest:
        yield Problem(
            where=where,
            what=f"feet {show(foot)} long leave nothing between them on a board {show(shortest)} long.",
            remedy=f"Make them shorter than {show(shortest // 2)}.",
        )
    if foot <= thickest:
        yield Problem(
            where=where,
            what=f"feet {show(foot)} long end within the corner joints, which take {show(thickest)}.",
            remedy=f"Make them longer than {show(thickest)}.",
        )
    if how.rise_nm >= how.height_nm:
        yield Problem(
            where=where,
            what=f"is cut away {show(how.rise_nm)} between its feet, and is only {show(how.height_nm)} high.",
            remedy=f"Cut away less than {show(how.height_nm)}.",
        )
