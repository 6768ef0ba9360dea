"""Where the strips go that drawers hang on: no cut in the upright tells, so it is said here.

A strip lies across the grain of its upright: screwed fast in front, in slots behind. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from planner.checks.facts import Facts
from planner.domain.drawer import Drawer
from planner.domain.marks import board_mark
from planner.domain.plan import Finding
from planner.domain.words import Level, Role, RunnerKind


def hung_drawers(facts: Facts) -> Iterator[Finding]:
    """One note for each drawer that hangs on strips."""
    for carcase in facts.project.carcases:
        if carcase.runners is None or carcase.runners.kind is not RunnerKind.SIDE_HUNG:
            continue
        outside = facts.boards[carcase.ring.board(Role.LEFT).mark].place
        for opening in facts.openings:
            if opening.carcase == carcase.ring.mark and isinstance(opening.space.holds, Drawer) and opening.drawer:
                strips = [f"{board_mark(opening.drawer, Role.RUNNER)}-{side}" for side in (Role.LEFT, Role.RIGHT)]
                place = facts.boards[strips[0]].place
                yield Finding(
                    code="hung-drawer",
                    level=Level.NOTE,
                    marks=tuple(strips),
                    text=f"Drawer {opening.drawer} hangs on strips on {opening.left} and {opening.right}: upper edge "
                    f"{facts.show(place.up[1] - outside.up[0])} above the carcase's underside, front end "
                    f"{facts.show(place.back[0] - outside.back[0])} behind its front edges.",
                    remedy="Screw each strip fast in front and in slots behind: it lies across the upright's grain.",
                )
