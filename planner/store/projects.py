"""Whole projects in and out of a store, within the caller's session (see ``engine.reading`` and ``engine.writing``)."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from difflib import get_close_matches
from typing import TYPE_CHECKING

from planner.domain.project import Project
from planner.errors import InputError, Problem, StoreError
from planner.store.kinds import BoxKind
from planner.store.loading import assemble
from planner.store.saving import write_project
from planner.store.soundness import faults
from planner.store.tables import BoxRow, ProjectRow

if TYPE_CHECKING:
    from sqlmodel import Session

_LISTED = 12
"""So many names are given in a refusal; more are only counted."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ProjectSummary:
    """A line of the list of projects.

    Attributes:
        name: the project's name.
        version: how many times it was saved.
        boxes: number of plain boxes.
        carcases: number of carcases.
        drawers: number of drawers in all carcases.
    """

    name: str
    version: int
    boxes: int
    carcases: int
    drawers: int


def list_projects(session: Session) -> tuple[ProjectSummary, ...]:
    """What is in the store, by name; no project is loaded for it."""
    from sqlmodel import col, func, select

    counts: Counter[tuple[int, str]] = Counter()
    of_kind = select(BoxRow.project_id, BoxRow.kind, func.count()).group_by(col(BoxRow.project_id), col(BoxRow.kind))
    for project_id, kind, count in session.exec(of_kind):
        counts[project_id, kind] = count
    rows = session.exec(select(ProjectRow.id, ProjectRow.name, ProjectRow.version))
    return tuple(
        ProjectSummary(
            name=name,
            version=version,
            boxes=counts[project_id, BoxKind.PLAIN],
            carcases=counts[project_id, BoxKind.CARCASE],
            drawers=counts[project_id, BoxKind.DRAWER],
        )
        for project_id, name, version in sorted(rows, key=lambda row: (row[1].casefold(), row[1]))
    )


def load_project(session: Session, name: str) -> Project:
    """The project of this name.

    Raises:
        InputError: no such project; the nearest name is suggested.
        StoreError: what is stored is no sound project; the problems name the rows.
    """
    project = assemble(session, _row(session, name))
    found = faults(project)
    if found:
        raise StoreError(found)
    return project


def save_project(session: Session, project: Project) -> None:
    """Store a project, over the one of the same name if there is one.

    Rows of materials, sleds, boxes, boards and joints whose name or mark is unchanged keep their ids.

    Raises:
        InputError: the project's parts don't fit together, or a number in it is beyond all measure.
    """
    found = faults(project)
    if found:
        raise InputError(found)
    try:
        write_project(session, project)
    except OverflowError as error:
        problem = Problem(
            where=f"project {project.name!r}",
            what="holds a number that is too large to be kept.",
            remedy="Give ratios and slopes fewer digits.",
        )
        raise InputError([problem]) from error


def forget_project(session: Session, name: str) -> None:
    """Take a project out of the store, with all that belongs to it.

    Raises:
        InputError: no such project; the nearest name is suggested.
    """
    session.delete(_row(session, name))
    session.flush()


def _row(session: Session, name: str) -> ProjectRow:
    """The project's own row; names are compared here, so that any text at all may be asked for."""
    from sqlmodel import select

    ids = {known: project_id for project_id, known in session.exec(select(ProjectRow.id, ProjectRow.name))}
    row = session.get(ProjectRow, ids[name]) if name in ids else None
    if row is None:
        raise InputError([_unknown(name, sorted(ids, key=str.casefold))])
    return row


def _unknown(name: str, known: list[str]) -> Problem:
    where, what = f"project {name!r}", "is not in the store."
    if not known:
        return Problem(where=where, what=what, remedy="The store is empty: read a project file first.")
    near = get_close_matches(name.casefold(), {each.casefold(): each for each in known}, n=1)
    meant = next((each for each in known if near and each.casefold() == near[0]), None)
    listed = ", ".join(map(repr, known[:_LISTED]))
    more = f" and {len(known) - _LISTED} more" if len(known) > _LISTED else ""
    question = f"Did you mean {meant!r}? " if meant else ""
    return Problem(where=where, what=what, remedy=f"{question}In the store: {listed}{more}.")
