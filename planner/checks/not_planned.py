"""What this piece needs that the planner does not plan; said plainly, so that nobody finds out at the glue-up."""

from __future__ import annotations

from collections.abc import Iterator

from planner.checks.facts import Facts
from planner.domain.plan import Finding
from planner.domain.words import Level, Role, RunnerKind


def not_planned(facts: Facts) -> Iterator[Finding]:
    """Drawers that stand on rails behind which nothing is planned to carry them."""
    rails = {board.mark for board in facts.boards.values() if board.role is Role.RAIL}
    carried = {board.box for board in facts.boards.values() if board.role is Role.RUNNER}
    bare = [each for each in facts.openings if each.drawer and each.below in rails and each.carcase not in carried]
    hung = {c.ring.mark for c in facts.project.carcases if c.runners and c.runners.kind is not RunnerKind.WOOD}
    with_drawers = tuple(dict.fromkeys(each.carcase for each in bare if each.carcase not in hung))
    if with_drawers:
        yield Finding(
            code="runners-not-planned",
            level=Level.CAUTION,
            marks=with_drawers,
            text="Runners and kickers for the drawers are not in this plan.",
            remedy="Say runners in the project file, or plan them yourself; make room for them behind the rails.",
        )
