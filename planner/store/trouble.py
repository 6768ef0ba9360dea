"""What SQLite or the system says about a store, told in plain words with a remedy."""

from __future__ import annotations

import errno
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from planner.errors import Problem, StoreError

_PRIMARY = 0xFF
"""The low byte of an SQLite error code names its family."""

_SAID_BY_SQLITE = {
    sqlite3.SQLITE_BUSY: (
        "is being written by another program",
        "Wait until that has finished, then try again.",
    ),
    sqlite3.SQLITE_LOCKED: (
        "is being written by another program",
        "Wait until that has finished, then try again.",
    ),
    sqlite3.SQLITE_READONLY: (
        "can't be written: the file or its folder is read-only",
        "Allow writing there, or name another store with --store.",
    ),
    sqlite3.SQLITE_NOTADB: (
        "is not a store of this program",
        "Name another file with --store; this one was left as it is.",
    ),
    sqlite3.SQLITE_CORRUPT: (
        "is damaged",
        "Put a backup in its place, or name another store with --store and read the project files again.",
    ),
    sqlite3.SQLITE_FULL: (
        "can't grow: the disk is full",
        "Make room, then try again; the store is as it was before.",
    ),
    sqlite3.SQLITE_CANTOPEN: (
        "can't be opened",
        "Look whether the file and its folder may be read and written, or name another store with --store.",
    ),
    sqlite3.SQLITE_PERM: (
        "can't be opened: you have no right to",
        "Ask for the right, or name another store with --store.",
    ),
    sqlite3.SQLITE_IOERR: (
        "can't be read or written: the disk reports a fault",
        "Look after the disk and its free space, then try again; the store is as it was before.",
    ),
    sqlite3.SQLITE_CONSTRAINT: (
        "does not take this project",
        "Please report this with the project file; the store is as it was before.",
    ),
    sqlite3.SQLITE_ERROR: (
        "does not answer as a store should",
        "Put a backup in its place, or name another store with --store and read the project files again.",
    ),
}

_SAID_BY_SYSTEM = {
    errno.EACCES: "You have no right to do that: allow it, or name another store with --store.",
    errno.EPERM: "You have no right to do that: allow it, or name another store with --store.",
    errno.EROFS: "The disk is read-only: name another store with --store.",
    errno.ENOSPC: "Make room on the disk, then try again.",
    errno.EDQUOT: "Make room on the disk, then try again.",
    errno.ENOTDIR: "A part of the path is no folder: name another store with --store.",
    errno.EISDIR: "That is a folder: name a file in it with --store.",
    errno.ENAMETOOLONG: "The name is too long: name another store with --store.",
}

_OTHERWISE = "Name another store with --store, or put right what the system says."


@contextmanager
def told(path: Path, *, files: bool = False) -> Iterator[None]:
    """Turn trouble with the store at ``path`` into a StoreError.

    Args:
        path: the store.
        files: whether the body handles nothing but the store's own files, so that the system's errors belong to it.
    """
    try:
        yield
    except _database_errors() as error:
        cause = getattr(error, "orig", error)
        if isinstance(cause, sqlite3.ProgrammingError | sqlite3.InterfaceError):
            raise  # a fault of ours, not of the store
        raise StoreError([_from_sqlite(path, cause)]) from error
    except OSError as error:
        if not files:
            raise
        raise StoreError([_from_system(path, error)]) from error


def _database_errors() -> tuple[type[Exception], ...]:
    """Looked up only when something has gone wrong, for the sake of the library's weight."""
    from sqlalchemy.exc import DBAPIError

    return sqlite3.Error, DBAPIError


def _from_sqlite(path: Path, error: BaseException) -> Problem:
    code = getattr(error, "sqlite_errorcode", sqlite3.SQLITE_ERROR)
    what, remedy = _SAID_BY_SQLITE.get(code & _PRIMARY, _SAID_BY_SQLITE[sqlite3.SQLITE_ERROR])
    return Problem(where=str(path), what=f"{what} ({error}).", remedy=remedy)


def _from_system(path: Path, error: OSError) -> Problem:
    remedy = _SAID_BY_SYSTEM.get(error.errno or 0, _OTHERWISE)
    at = Path(error.filename) if isinstance(error.filename, str) else path
    return Problem(where=str(at), what=f"{error.strerror or error}.", remedy=remedy)
