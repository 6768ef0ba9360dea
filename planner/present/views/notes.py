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
    rows: tuple[tuple[Cell, ...], ...] = tuple(
        ((machine,), caution, "") for machine, heed in heeded.items() for caution in heed
    )
    at_machines = (Group(heading="Cautions at the machines", rows=rows),) if rows else ()
    found = checks(plan)
    return replace(found, title="Notes", groups=(*found.groups, *at_machines))


def _by_level(findings: Sequence[Finding], words: Mapping[Level, str]) -> Iterator[Group]:
    for level in Level:
        rows = tuple((found.marks, found.text, found.remedy) for found in findings if found.level is level)
        if rows:
            yield Group(heading=words[level], rows=rows)
