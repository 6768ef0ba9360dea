"""The way into a store: a session for reading or for writing, one transaction for each."""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, TypeAlias

from planner.store.connection import connect, engine_on
from planner.store.migrate import Scripts, Tell, Upgraded, build, create, make_current, refuse_unknown, released
from planner.store.peek import refusal, revision
from planner.store.trouble import told

if TYPE_CHECKING:
    import sqlmodel

    Session: TypeAlias = sqlmodel.Session
    """What the app hands from one function of the store to the next, without knowing what it is."""


def _say_nothing(_: Upgraded) -> None:
    """What is done with the news of an upgrade when the caller doesn't ask for it."""


@contextmanager
def reading(path: Path, *, tell: Tell = _say_nothing, scripts: Scripts | None = None) -> Iterator[Session]:
    """Session to read from the store at ``path``; what it sees does not change while it lasts.

    A missing store is not made, but read as an empty one. An older store is upgraded first.

    Args:
        path: the store.
        tell: told of an upgrade.
        scripts: migration scripts; the program's own when left out.

    Raises:
        StoreError: the store can't be read; it was left as it is.
    """
    place, scripts = _real(path), scripts or released()
    there = make_current(place, scripts, tell)
    with told(place), closing(connect(place) if there else _empty(scripts)) as connection:
        connection.execute("PRAGMA query_only = ON")
        with _session(place, connection, "BEGIN", scripts) as session:
            yield session


@contextmanager
def writing(path: Path, *, tell: Tell = _say_nothing, scripts: Scripts | None = None) -> Iterator[Session]:
    """Session to change the store at ``path``: all of it when the body ends well, else nothing.

    A missing store is made, with its folder; an older one is upgraded first. Others can read meanwhile, not write.

    Args:
        path: the store.
        tell: told of an upgrade.
        scripts: migration scripts; the program's own when left out.

    Raises:
        StoreError: the store can't be made or written; it was left as it is.
    """
    place, scripts = _real(path), scripts or released()
    if not make_current(place, scripts, tell):
        create(place, scripts)
    with told(place), closing(connect(place)) as connection:
        connection.execute("PRAGMA journal_mode = WAL")
        with _session(place, connection, "BEGIN IMMEDIATE", scripts) as session:
            yield session
            session.commit()


def _real(path: Path) -> Path:
    """The store itself, not a link to it: drafts and backups belong beside it."""
    return Path(os.path.realpath(path))


def _empty(scripts: Scripts) -> sqlite3.Connection:
    """What a missing store is read as."""
    connection = sqlite3.connect(":memory:", isolation_level=None)
    build(connection, scripts)
    return connection


@contextmanager
def _session(place: Path, connection: sqlite3.Connection, begin: str, scripts: Scripts) -> Iterator[Session]:
    from sqlmodel import Session

    with Session(engine_on(connection, begin)) as session:
        session.connection()
        found = revision(connection)  # another program may have been at it since we looked
        if found != scripts.head:
            refuse_unknown(place, found, scripts)
            raise refusal(place, "was changed by another program at this moment.", "Try again.")
        yield session
