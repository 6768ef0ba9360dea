"""How a store gets the schema that this program writes.

The scripts in ``migrations/`` are the only way to a schema, for a new store as for an old one. alembic is loaded only
when they have to run.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from contextlib import closing
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from planner.errors import StoreError
from planner.store.backup import back_up, row_counts
from planner.store.connection import connect, engine_on
from planner.store.files import draft_of
from planner.store.peek import APPLICATION_ID, peek, refusal, revision
from planner.store.trouble import told

if TYPE_CHECKING:
    from sqlalchemy import Connection

HEAD = "0004"
"""The newest revision; a test compares it with the scripts."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Scripts:
    """The migration scripts and the revision to which they lead."""

    folder: Path
    head: str

    def known(self) -> frozenset[str]:
        """Revisions that the scripts know, from their file names (``0001_what.py``)."""
        return frozenset(script.name.partition("_")[0] for script in (self.folder / "versions").glob("[0-9]*_*.py"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Upgraded:
    """What was done to an older store; its text is what to tell the user."""

    store: Path
    was: str
    now: str
    backup: Path

    def __str__(self) -> str:
        done = f"The store {self.store} was upgraded from {self.was} to {self.now}."
        return f"{done} As it was before, it is kept in {self.backup}."


Tell = Callable[[Upgraded], None]
"""Called once for each store that was upgraded."""


def migrations_dir() -> Path:
    """Where the scripts are: beside the installed package, else in the checkout."""
    package = Path(__file__).resolve().parent.parent
    shipped = package / "_migrations"
    return shipped if shipped.is_dir() else package.parent / "migrations"


def released() -> Scripts:
    """The scripts of this program."""
    return Scripts(folder=migrations_dir(), head=HEAD)


def make_current(path: Path, scripts: Scripts, tell: Tell) -> bool:
    """See to it that the store at ``path``, if there is one, has the newest revision; False when there is none.

    Raises:
        StoreError: it is no store, a newer one, or it can't be upgraded; it was left as it is.
    """
    with told(path, files=True):
        found = peek(path)
    if found is None:
        return False
    if found != scripts.head:
        refuse_unknown(path, found, scripts)
        try:
            done = _upgrade(path, scripts)
        except StoreError as error:
            need = f"has revision {found} and must be upgraded to {scripts.head}, but"
            raise StoreError(replace(each, what=f"{need} {each.what}") for each in error.problems) from error
        if done is not None:
            tell(done)
    return True


def refuse_unknown(path: Path, found: str | None, scripts: Scripts) -> None:
    """Refuse a store whose revision this program doesn't know.

    Raises:
        StoreError: it was written by a newer program.
    """
    if found not in scripts.known():
        what = f"was written by a newer program: it has revision {found}, this program knows up to {scripts.head}."
        raise refusal(path, what, "Update this program; the store was left as it is.")


def create(path: Path, scripts: Scripts) -> None:
    """Make a new store, whole or not at all; its folder is made if need be.

    If another process makes one at the same time, the first one stands.

    Raises:
        StoreError: no right, no room.
    """
    with told(path, files=True):
        path.parent.mkdir(parents=True, exist_ok=True)
        try:
            with draft_of(path) as draft, closing(connect(draft, "rwc")) as connection:
                build(connection, scripts)
                connection.execute("PRAGMA journal_mode = WAL")
        except FileExistsError:
            return


def build(connection: sqlite3.Connection, scripts: Scripts) -> None:
    """Make an empty database a store."""
    with engine_on(connection, "BEGIN IMMEDIATE").begin() as begun:
        connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
        _run(begun, scripts)


def _upgrade(path: Path, scripts: Scripts) -> Upgraded | None:
    """Bring an older store to the head in one transaction, after a backup; None when another process was quicker."""
    # with foreign keys on, rebuilding a table would empty the tables that cascade from it
    with (
        told(path, files=True),
        closing(connect(path, foreign_keys=False)) as connection,
        engine_on(connection, "BEGIN IMMEDIATE").begin() as begun,
    ):
        was = revision(connection)
        refuse_unknown(path, was, scripts)
        if was is None or was == scripts.head:
            return None
        connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")  # a read-only store says so before any backup
        done = Upgraded(store=path, was=was, now=scripts.head, backup=back_up(path, was))
        try:
            with told(path):
                _step_up(begun, connection, scripts)
        except Exception as error:  # whatever a script may raise
            raise _failed(done, error) from error
    return done


def _failed(meant: Upgraded, error: Exception) -> StoreError:
    why = f"it {error.problems[0].what}" if isinstance(error, StoreError) else f"{type(error).__name__}: {error}"
    remedy = f"The store is as it was; there is a copy in {meant.backup}. Please report this."
    return refusal(meant.store, f"the upgrade failed: {why}", remedy)


def _step_up(begun: Connection, connection: sqlite3.Connection, scripts: Scripts) -> None:
    """Run the scripts, and prove that what they did not mean to touch is still there and can be loaded."""
    from sqlmodel import Session

    from planner.store.projects import list_projects, load_project

    before = row_counts(connection)
    meant = _run(begun, scripts)
    after = row_counts(connection)
    lost = sorted(name for name in before.keys() - meant if after.get(name) != before[name])
    if lost:
        raise ValueError(f"rows of {', '.join(lost)} would be lost or added")
    broken = connection.execute("PRAGMA foreign_key_check").fetchall()
    if broken:
        raise ValueError(f"{len(broken)} rows would refer to nothing")
    with Session(begun) as session:
        for summary in list_projects(session):
            load_project(session, summary.name)


def _run(begun: Connection, scripts: Scripts) -> frozenset[str]:
    """Run the scripts that a database still lacks; returns the tables whose rows they mean to add or take away."""
    from alembic.command import upgrade
    from alembic.config import Config
    from alembic.runtime.migration import MigrationContext
    from alembic.script import ScriptDirectory

    config = Config()
    config.set_main_option("script_location", str(scripts.folder).replace("%", "%%"))
    config.set_main_option("path_separator", "os")
    config.attributes["connection"] = begun
    was = MigrationContext.configure(begun).get_current_revision()
    upgrade(config, scripts.head)
    steps = ScriptDirectory.from_config(config).iterate_revisions(scripts.head, was or "base")
    return frozenset(table for step in steps for table in getattr(step.module, "CHANGES_ROWS_OF", ()))
