"""What would keep a project from being stored and read back as it is; asked before saving and after loading."""

from __future__ import annotations

from collections.abc import Iterator

from planner.domain.project import Project, problems
from planner.domain.ring import Ring
from planner.domain.words import RingKind
from planner.errors import Problem
from planner.store.kinds import rings_by_kind


def faults(project: Project) -> list[Problem]:
    """All faults of a project, those within its rings included; empty when it is sound."""
    found = list(problems(project))
    for kind, ring in rings_by_kind(project):
        found += _ring_faults(ring, kind.ring_kind)
    return found


def _ring_faults(ring: Ring, kind: RingKind) -> Iterator[Problem]:
    if ring.kind is not kind or tuple(board.role for board in ring.boards) != kind.roles:
        order = ", ".join(kind.roles)
        yield Problem(where=ring.mark, what="its boards are not in ring order.", remedy=f"The order is {order}.")
    for index, corner in enumerate(ring.corners):
        here, following = ring.boards[index].mark, ring.boards[(index + 1) % len(ring.boards)].mark
        if (corner.board_at_b, corner.board_at_a) != (here, following):
            yield Problem(
                where=corner.mark,
                what=f"joins {corner.board_at_b!r} to {corner.board_at_a!r}.",
                remedy=f"It must join end B of {here!r} to end A of {following!r}.",
            )
