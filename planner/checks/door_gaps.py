"""The gaps of inset doors and of pairs of doors, when the doors have grown in width.

A door's stiles run up and down, so its height stays; its width grows by that of a slab, or of the two stiles of a
frame. It grows away from its hinges: a single door towards the edge it shuts against, the leaves of a pair towards each
other. Least gap: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from planner.checks.facts import Facts
from planner.checks.moving import RUNS_NM, STILL, Moving
from planner.derive.doors import doors_of
from planner.derive.weights import in_door
from planner.domain.plan import BoardSize, Finding
from planner.domain.solid import RIGHT
from planner.domain.space import Doors
from planner.domain.words import Level, Role, Stands

_WIDE = frozenset({Role.DOOR, Role.STILE})


def door_gaps(facts: Facts) -> Iterator[Finding]:
    """One finding for each door or pair that would bind."""
    moving = Moving(facts)
    for carcase in facts.project.carcases:
        for doors, marks in doors_of(carcase):
            boards = [
                board
                for mark in marks
                for board in (facts.boards[each] for each in in_door(facts.boards, mark, carcase.ring.mark))
                if board.role in _WIDE and moving.is_known(board)
            ]
            if boards and (doors.stands is Stands.INSET or doors.leaves > 1):
                yield from _of(moving, doors, marks, boards)


def _of(moving: Moving, doors: Doors, marks: tuple[str, ...], boards: Sequence[BoardSize]) -> Iterator[Finding]:
    grows = STILL
    for board in boards:
        grows = grows.plus(moving.growth(board, RIGHT))
    left = doors.gap_nm - grows.most
    if left >= RUNS_NM:
        return
    binds = left <= 0
    wanted = moving.stepped_up(grows.most + RUNS_NM)
    yield Finding(
        code="door-binds" if binds else "door-tight",
        level=Level.STOP if binds else Level.CAUTION,
        marks=marks,
        text=f"{' and '.join(marks)} {'swell' if len(marks) > 1 else 'swells'} by {moving.show(grows.most)} in width, "
        f"into a gap of {moving.show(doors.gap_nm)} today. {moving.seasons.said()}",
        remedy=f"Plane {moving.show(wanted - doors.gap_nm)} off the edge{'s' if len(marks) > 1 else ''} where "
        f"{'they meet' if len(marks) > 1 else 'it shuts'}, for a gap of {moving.show(wanted)} today. "
        "Quarter-sawn boards move less.",
        source=moving.source(*boards),
    )
