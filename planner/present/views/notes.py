"""What the checks found, and what to heed at each machine."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from planner.domain.plan import Finding, Plan
from planner.domain.words import Level
from planner.lengths import Grid
from planner.present.table import Cell, Column, Group, Kind, Table

_LEVEL_WORDS = {
    Level.STOP: "Stop: don't cut before this is settled",
    Level.CAUTION: "Cautions",
    Level.NOTE: "Notes",
}


def checks(plan: Plan) -> Table:
    """One row for each finding, the gravest first."""
    return findings_table("Checks", plan.findings, plan.project.grid, _LEVEL_WORDS)


def findings_table(title: str, findings: Sequence[Finding], grid: Grid, words: Mapping[Level, str]) -> Table:
    """Findings under a heading for each level, the gravest first."""
    return Table(
        title=title,
        grid=grid,
        columns=(
            Column(heading="About", kind=Kind.MARKS),
            Column(heading="What"),
            Column(heading="What to do"),
        ),
        groups=tuple(_by_level(findings, words)),
    )


def notes(plan: Plan) -> Table:
    """The findings, then what to heed at each machine, in the order in which the machines are first used."""
    heeded: dict[str, dict[str, None]] = {}
    for work in plan.order:
        heeded.setdefault(work.machine.value, {}).update(dict.fromkeys(work.cautions))
    found = checks(plan)
    at_machines = (
        Group(heading=f"Cautions: {machine}", notes=tuple(heed), rows=()) for machine, heed in heeded.items() if heed
    )
    return replace(found, title="Notes", groups=(*found.groups, *at_machines))


def _by_level(findings: Sequence[Finding], words: Mapping[Level, str]) -> Iterator[Group]:
    """Those that are open by their level, then those that the maker has answered for."""

    def row(found: Finding) -> tuple[Cell, ...]:
        todo = f"Acknowledged: {found.acknowledged}" if found.acknowledged else found.remedy
        return (found.marks, found.text, f"{todo} Source: {found.source}." if found.source else todo)

    still = [found for found in findings if not found.acknowledged]
    groups = {words[level]: [row(found) for found in still if found.level is level] for level in Level}
    groups["Acknowledged"] = [row(found) for found in findings if found.acknowledged]
    yield from (Group(heading=heading, rows=tuple(rows)) for heading, rows in groups.items() if rows)
