"""What a maker does with whole projects: put one into the store, write one back, list them, forget one."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path

from planner import pipeline
from planner.app.outputs import placed
from planner.app.source import read_source
from planner.app.store_place import StorePlace
from planner.domain.plan import Plan
from planner.domain.project import Project
from planner.errors import InputError, Problem, StoreError


class Change(StrEnum):
    """What storing a project changed."""

    NEW = "new"
    CHANGED = "changed"
    UNCHANGED = "unchanged"


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """A project that was put into the store, and the plan that shows it can be built."""

    plan: Plan
    change: Change


@dataclass(frozen=True, slots=True, kw_only=True)
class Listed:
    """A stored project, as it stands in the list of projects."""

    name: str
    boxes: int
    carcases: int
    drawers: int


def read(path: str, store: StorePlace) -> Kept:
    """Read a project file (``-``: standard input) into the store.

    Raises:
        InputError: the file can't be taken; every reason is named.
        PlanError: no plan can be built from it.
        StoreError: the store can't be written.
        In each case the store is as it was.
    """
    made = plan_of_file(path)
    return Kept(plan=made, change=keep(made.project, store))


def plan_of_file(path: str) -> Plan:
    """Plan of a project file, which is not stored."""
    from planner.intake.project_file import read_project

    source = read_source(path)
    return pipeline.plan(read_project(source.text, source.name))


def keep(project: Project, store: StorePlace) -> Change:
    """Put a project into the store, over the one of the same name."""
    from planner.store import engine, projects

    with engine.writing(store.path, tell=store.tell) as session:
        is_new = project.name not in {summary.name for summary in projects.list_projects(session)}
        with suppress(StoreError):  # a damaged project is written anew
            if not is_new and projects.load_project(session, project.name) == project:
                return Change.UNCHANGED
        projects.save_project(session, project)
    return Change.NEW if is_new else Change.CHANGED


def write(name: str, store: StorePlace) -> str:
    """Text of a project file for a stored project; reading it gives the same project."""
    from planner.intake.write_file import write_project

    return write_project(stored(name, store))


def write_to(path: Path, name: str, store: StorePlace, *, force: bool) -> None:
    """Write a stored project back to a project file.

    Raises:
        InputError: no such project, or the place is taken.
    """
    with placed({path: write(name, store).encode()}, force=force):
        pass


def listed(store: StorePlace) -> tuple[Listed, ...]:
    """What is in the store, by name; nothing when there is no store yet."""
    from planner.store import engine, projects

    with engine.reading(store.path, tell=store.tell) as session:
        return tuple(
            Listed(name=each.name, boxes=each.boxes, carcases=each.carcases, drawers=each.drawers)
            for each in projects.list_projects(session)
        )


def stored(name: str | None, store: StorePlace) -> Project:
    """The project of this name; without a name the only project there is.

    Raises:
        InputError: no such project, or without a name, none or several to choose from.
    """
    from planner.store import engine, projects

    with engine.reading(store.path, tell=store.tell) as session:
        names = [summary.name for summary in projects.list_projects(session)]
        return projects.load_project(session, _only(names) if name is None else name)


def forget(name: str, store: StorePlace) -> None:
    """Take a project out of the store.

    Raises:
        InputError: no such project.
    """
    from planner.store import engine, projects

    with engine.writing(store.path, tell=store.tell) as session:
        projects.forget_project(session, name)


def _only(names: list[str]) -> str:
    """Name of the only project."""
    if len(names) == 1:
        return names[0]
    if not names:
        raise InputError([Problem(where="store", what="holds no project yet.", remedy="Read one: planner read FILE")])
    listed_names = ", ".join(map(repr, names))
    raise InputError([Problem(where="project", what="is not named.", remedy=f"Name one of: {listed_names}.")])
