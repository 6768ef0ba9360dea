"""What a maker does with whole projects: put one into the store, write one back, list them, forget one."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING

from planner import pipeline
from planner.app.outputs import placed
from planner.app.recording import record
from planner.app.source import STANDARD_INPUT, read_source
from planner.app.store_place import StorePlace
from planner.domain.plan import Plan
from planner.domain.project import Project
from planner.domain.sled import Sled
from planner.errors import InputError, Problem, StoreError

if TYPE_CHECKING:
    from planner.store.engine import Session


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
    made = plan_of_file(path, store)
    return Kept(plan=made, change=keep(made.project, store, why=read_from(path)))


def read_from(path: str) -> str:
    """Reason for a change by reading a project file."""
    return "read from standard input" if path == STANDARD_INPUT else f"read from {Path(path).name}"


def plan_of_file(path: str, store: StorePlace) -> Plan:
    """Plan of a project file, which is not stored; the store is looked into only for the kept sleds that it names."""
    from planner.intake.project_file import read_project
    from planner.store import engine, sleds

    def kept_sleds() -> tuple[Sled, ...]:
        with engine.reading(store.path, tell=store.tell) as session:
            return tuple(sleds.kept_sleds(session).values())

    source = read_source(path)
    return pipeline.plan(read_project(source.text, source.name, kept_sleds))


def keep(project: Project, store: StorePlace, *, why: str) -> Change:
    """Put a project into the store, over the one of the same name.

    Args:
        project: what to store.
        store: where.
        why: the reason in a few words, as the history of the project shows it.

    Raises:
        InputError: a kept sled is not like the store's, or no file describes just this project.
        StoreError: the store can't be written.
    """
    from planner.store import engine, projects

    with engine.writing(store.path, tell=store.tell) as session:
        _must_be_as_kept(session, project)
        is_new = project.name not in {summary.name for summary in projects.list_projects(session)}
        before: Project | None = None
        with suppress(StoreError):  # a damaged project is written anew
            before = None if is_new else projects.load_project(session, project.name)
        if before == project:
            return Change.UNCHANGED
        projects.save_project(session, project)
        record(session, before, project, why=why)
    return Change.NEW if is_new else Change.CHANGED


def _must_be_as_kept(session: Session, project: Project) -> None:
    """Refuse a project of which a kept sled is not like the store's of that name."""
    from planner.intake.kept_sleds import refusal_of_other_figures
    from planner.store import sleds

    kept = sleds.kept_sleds(session)
    others = [sled for sled in project.sleds if sled.kept and sled != kept.get(sled.name, sled)]
    told = [(sled.name, *refusal_of_other_figures(sled, kept[sled.name], project.unit)) for sled in others]
    if told:
        raise InputError(Problem(where=f"sled {name!r}", what=what, remedy=remedy) for name, what, remedy in told)


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
        return projects.load_project(session, _named(session, name))


def named(name: str | None, store: StorePlace) -> str:
    """Name of a stored project; without a name, that of the only one there is.

    Raises:
        InputError: no such project, or without a name, none or several to choose from.
    """
    from planner.store import engine, projects

    with engine.reading(store.path, tell=store.tell) as session:
        found = _named(session, name)
        projects.project_id(session, found)
        return found


def forget(name: str, store: StorePlace) -> None:
    """Take a project out of the store.

    Raises:
        InputError: no such project.
    """
    from planner.store import engine, projects

    with engine.writing(store.path, tell=store.tell) as session:
        projects.forget_project(session, name)


def _named(session: Session, name: str | None) -> str:
    """The name given, else that of the only project."""
    from planner.store import projects

    return _only([each.name for each in projects.list_projects(session)]) if name is None else name


def _only(names: list[str]) -> str:
    """Name of the only project."""
    if len(names) == 1:
        return names[0]
    if not names:
        raise InputError([Problem(where="store", what="holds no project yet.", remedy="Read one: planner read FILE")])
    listed_names = ", ".join(map(repr, names))
    raise InputError([Problem(where="project", what="is not named.", remedy=f"Name one of: {listed_names}.")])
