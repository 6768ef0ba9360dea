"""What other processes do in the tests of the store; they start quickly, since a server has all imports done."""

from __future__ import annotations

import multiprocessing
from multiprocessing.connection import Connection
from multiprocessing.context import ForkServerContext
from multiprocessing.pool import Pool
from pathlib import Path

from planner.domain.project import Project
from planner.store.engine import reading, writing
from planner.store.migrate import Scripts, Upgraded
from planner.store.projects import list_projects, load_project, save_project
from tests.store.examples import batch_of, cabinet, save


def context() -> ForkServerContext:
    """Where child processes come from."""
    server = multiprocessing.get_context("forkserver")
    server.set_forkserver_preload(["tests.store.children", "alembic.command"])
    return server


def workers(count: int) -> Pool:
    """A pool of processes."""
    return context().Pool(count)


def open_and_load(path: Path, scripts: Scripts, name: str) -> tuple[list[Upgraded], Project]:
    """Load a project from a store, which may have to be upgraded; returns what was told, and the project."""
    told: list[Upgraded] = []
    with reading(path, tell=told.append, scripts=scripts) as session:
        return told, load_project(session, name)


def contents(version: int) -> tuple[Project, ...]:
    """What the store holds at each version: two projects that change together."""
    return cabinet(drawers=1 + version % 2), batch_of(2 + version % 2)


def save_for_ever(path: Path, says: Connection) -> None:
    """Save the contents of the next version, and so on, until killed."""
    says.send("begun")
    while True:
        with writing(path) as session:
            version = list_projects(session)[0].version + 1
            for project in contents(version):
                save_project(session, project)
            says.send("about to commit")


def make_store(path: Path, says: Connection) -> None:
    """Make a store with the contents of version 1."""
    says.send("begun")
    save(path, *contents(1))


def upgrade_store(path: Path, scripts: Scripts, says: Connection) -> None:
    """Upgrade a store."""
    says.send("begun")
    with reading(path, scripts=scripts):
        pass
