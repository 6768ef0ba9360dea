"""The states of a project, one a line."""

from __future__ import annotations

from collections.abc import Iterable

from planner.lengths import Grid
from planner.present.table import Column, Group, Kind, Table

COLUMNS = (
    Column(heading="State", kind=Kind.COUNT, strong=True),
    Column(heading="Stands"),
    Column(heading="When"),
    Column(heading="Why"),
)


def history(project: str, states: Iterable[tuple[int, str, str, str]]) -> Table:
    """States as number, whether it is the present one or was undone, time, and reason; the oldest first."""
    return Table(
        title=f"History of {project}",
        grid=Grid.MM_TENTH,  # no lengths in it
        columns=COLUMNS,
        groups=(Group(rows=tuple(states)),),
    )
