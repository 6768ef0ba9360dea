"""The boards of a back that overlap: room to swell between them, and no light through when they have shrunk.

Each is fixed at its middle, so neighbours come nearer to each other by the growth of one board. Common practice, no
source.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from planner.checks.facts import Facts
from planner.checks.moving import Moving
from planner.domain.carcase import BoardedBack
from planner.domain.plan import BoardSize, Finding
from planner.domain.solid import RIGHT
from planner.domain.words import Level, Role


def boarded_backs(facts: Facts) -> Iterator[Finding]:
    """At most one finding for each back of boards: that they would push each other off, or that they would part."""
    moving = Moving(facts)
    for carcase in facts.project.carcases:
        back, mark = carcase.back, carcase.ring.mark
        boards = [each for each in facts.boards.values() if each.box == mark and each.role is Role.BACK_BOARD]
        if isinstance(back, BoardedBack) and boards and moving.is_known(boards[0]):
            yield from _of(moving, back, boards)


def _of(moving: Moving, back: BoardedBack, boards: list[BoardSize]) -> Iterator[Finding]:
    pairs = list(pairwise(boards))
    if not pairs:
        return
    first, second = max(pairs, key=lambda pair: sum(board.place.size(RIGHT) for board in pair))
    grows = [moving.growth(board, RIGHT) for board in (first, second)]
    swells = sum(each.most for each in grows) / 2
    shrinks = -sum(each.least for each in grows) / 2
    about = f"Boards of the back {moving.show(first.width_nm)} wide"
    if swells >= back.gap_nm:
        yield Finding(
            code="back-boards-bind",
            level=Level.STOP,
            marks=tuple(board.mark for board in boards),
            text=f"{about} swell by {moving.show(swells)}, and have {moving.show(back.gap_nm)} between them: "
            f"they would push each other off. {moving.seasons.said()}",
            remedy=f'Leave gap = "{moving.show_up(swells + 1)}" at least, or take narrower boards.',
            source=moving.source(first),
        )
    elif shrinks >= back.lap_nm:
        yield Finding(
            code="back-boards-part",
            level=Level.CAUTION,
            marks=tuple(board.mark for board in boards),
            text=f"{about} shrink by {moving.show(shrinks)}, and overlap by {moving.show(back.lap_nm)}: "
            f"light would show between them. {moving.seasons.said()}",
            remedy=f'Let them overlap more: lap = "{moving.show_up(shrinks + 1)}" at least, or take narrower boards.',
            source=moving.source(first),
        )
