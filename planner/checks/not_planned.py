"""What this piece needs that the planner does not plan; said plainly, so that nobody finds out at the glue-up."""

from __future__ import annotations

from collections.abc import Iterator

from planner.checks.facts import Facts
from planner.domain.plan import Finding
from planner.domain.words import Level


def not_planned(facts: Facts) -> Iterator[Finding]:
    """Runners and kickers of every carcase with drawers."""
    with_drawers = tuple(carcase.ring.mark for carcase in facts.project.carcases)
    if with_drawers:
        yield Finding(
            code="runners-not-planned",
            level=Level.CAUTION,
            marks=with_drawers,
            text="Runners and kickers for the drawers are not in this plan.",
            remedy="Plan and buy them yourself; make room for them behind the rails.",
        )
