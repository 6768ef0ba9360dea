"""Whole projects in and out of a store, within the caller's session (see ``engine.reading`` and ``engine.writing``)."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from typing import TYPE_CHECKING

from planner.domain.project import Project
from planner.errors import InputError, Problem, StoreError
from planner.store.kinds import BoxKind
from planner.store.loading import assemble
from planner.store.names import unknown
from planner.store.saving import write_project
from planner.store.sleds import kept_sleds
from planner.store.soundness import faults
from planner.store.tables import BoxRow, ProjectRow

if TYPE_CHECKING:
    from sqlmodel import Session


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
    found = faults(project, kept_sleds(session))
    if found:
        raise StoreError(found)
    return project


def save_project(session: Session, project: Project) -> None:
    """Store a project, over the one of the same name if there is one.

    Rows of materials, sleds, boxes, boards and joints whose name or mark is unchanged keep their ids. A kept sled that
    the store has not yet is taken in.

    Raises:
        InputError: the project's parts don't fit together, a kept sled is not like the store's, or a number is beyond
            all measure.
    """
    new = {sled.name: sled for sled in project.sleds if sled.kept}
    found = faults(project, new | kept_sleds(session))
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


def project_id(session: Session, name: str) -> int:
    """Id of the project of this name.

    Raises:
        InputError: no such project; the nearest name is suggested.
    """
    return _row(session, name).id


def _row(session: Session, name: str) -> ProjectRow:
    """The project's own row; names are compared here, so that any text at all may be asked for."""
    from sqlmodel import select

    ids = {known: project_id for project_id, known in session.exec(select(ProjectRow.id, ProjectRow.name))}
    row = session.get(ProjectRow, ids[name]) if name in ids else None
    if row is None:
        if_none = "The store is empty: read a project file first."
        raise unknown("project", name, ids, what="is not in the store.", if_none=if_none)
    return row
