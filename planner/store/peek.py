"""Which revision a store has, by a glance that changes nothing and loads no library."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

from planner.errors import Problem, StoreError
from planner.store.connection import connect, log_of

APPLICATION_ID = int.from_bytes(b"PLNR")
"""Stands in the header of each store, so that another program's SQLite file is known as such."""

_MAGIC = b"SQLite format 3\0"
_APPLICATION_ID_AT = slice(68, 72)
"""Place of the application id in an SQLite file (sqlite.org/fileformat2.html, section 1.3)."""

_ELSEWHERE = "Name another file with --store; this one was left as it is."


def peek(path: Path) -> str | None:
    """Revision of the store at ``path``, or None when there is no file.

    Raises:
        StoreError: there is something, but no store of ours.
        sqlite3.Error, OSError: it can't be read.
    """
    log = log_of(path)
    if not path.exists():
        if log.exists():
            raise refusal(
                path, f"is gone, but its log {log.name} is there.", "Bring the store back, or remove its log."
            )
        return None
    _refuse_foreign(path)
    # the log of a killed program is read but not folded in: a store that turns out newer must stay as it is
    with closing(connect(path, "ro" if log.exists() else "rw")) as connection:
        found = revision(connection)
    if found is None:
        raise refusal(path, "is damaged: it does not say which revision it has.", "Put a backup in its place.")
    return found


def revision(connection: sqlite3.Connection) -> str | None:
    """Revision that a database says it has; None when it says nothing."""
    if connection.execute("SELECT count(*) FROM sqlite_master WHERE name = 'alembic_version'").fetchone() == (0,):
        return None
    row = connection.execute("SELECT version_num FROM alembic_version").fetchone()
    return None if row is None else str(row[0])


def refusal(path: Path, what: str, remedy: str) -> StoreError:
    """Error with one problem of the store at ``path``."""
    return StoreError([Problem(where=str(path), what=what, remedy=remedy)])


def _refuse_foreign(path: Path) -> None:
    if not path.is_file():
        raise refusal(path, "is not a file.", _ELSEWHERE)
    with path.open("rb") as opened:
        header = opened.read(_APPLICATION_ID_AT.stop)
    if not header:
        raise refusal(path, "is empty.", "Remove it, or name another file with --store.")
    if not header.startswith(_MAGIC):
        raise refusal(path, "is not a store of this program.", _ELSEWHERE)
    if int.from_bytes(header[_APPLICATION_ID_AT]) != APPLICATION_ID:
        raise refusal(path, "is the database of another program.", _ELSEWHERE)
