"""What the checks found, and what to heed at each machine."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from planner.domain.plan import Plan
from planner.domain.words import Level
from planner.present.table import Cell, Column, Group, Kind, Table

_LEVEL_WORDS = {
    Level.STOP: "Stop: don't cut before this is settled",
    Level.CAUTION: "Cautions",
    Level.NOTE: "Notes",
}


def checks(plan: Plan) -> Table:
    """One row for each finding, the gravest first."""
    return Table(
        title="Checks",
        grid=plan.project.grid,
        columns=(
            Column(heading="About", kind=Kind.MARKS),
            Column(heading="What"),
            Column(heading="What to do"),
        ),
        groups=tuple(_by_level(plan)),
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


def _by_level(plan: Plan) -> Iterator[Group]:
    for level in Level:
        rows = tuple((found.marks, found.text, found.remedy) for found in plan.findings if found.level is level)
        if rows:
            yield Group(heading=_LEVEL_WORDS[level], rows=rows)
