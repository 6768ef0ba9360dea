"""What can't be checked, since nobody said what the wood is; asked only of a project that says it of some wood."""

from __future__ import annotations

from collections.abc import Iterator

from planner.checks.facts import Facts
from planner.domain.plan import Finding
from planner.domain.words import Level


def unnamed_timber(facts: Facts) -> Iterator[Finding]:
    """One note for all materials of which no species is named."""
    project = facts.project
    begun = facts.timbers or project.room or project.shop
    used = {board.material for board in facts.boards.values()}
    unknown = [each.name for each in project.materials if each.name in used and each.name not in facts.timbers]
    if begun and unknown:
        yield Finding(
            code="unnamed-timber",
            level=Level.NOTE,
            marks=tuple(unknown),
            text=f"Of {', '.join(unknown)} no species is named, so nothing tells how far it moves, what it weighs and "
            "what it bears.",
            remedy='Name it in its table of the project file: species = "black cherry". For a timber that isn\'t '
            "known here, give its figures under [timber.NAME].",
        )
