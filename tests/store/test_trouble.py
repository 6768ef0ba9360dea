"""Every kind of trouble that SQLite or the system reports becomes a problem with a place and a remedy."""

from __future__ import annotations

import errno
import os
import sqlite3
from pathlib import Path

import pytest

from planner.errors import StoreError
from planner.store.trouble import told

PLACE = Path("shop") / "planner.db"


def from_sqlite(code: int) -> sqlite3.Error:
    error = sqlite3.OperationalError("as SQLite puts it")
    error.sqlite_errorcode = code
    return error


@pytest.mark.parametrize(
    ("code", "said"),
    [
        (sqlite3.SQLITE_BUSY, "written by another program"),
        (sqlite3.SQLITE_BUSY_SNAPSHOT, "written by another program"),
        (sqlite3.SQLITE_LOCKED, "written by another program"),
        (sqlite3.SQLITE_READONLY_DBMOVED, "read-only"),
        (sqlite3.SQLITE_NOTADB, "not a store"),
        (sqlite3.SQLITE_CORRUPT_INDEX, "damaged"),
        (sqlite3.SQLITE_FULL, "disk is full"),
        (sqlite3.SQLITE_CANTOPEN_ISDIR, "can't be opened"),
        (sqlite3.SQLITE_PERM, "no right"),
        (sqlite3.SQLITE_IOERR_WRITE, "disk reports a fault"),
        (sqlite3.SQLITE_CONSTRAINT_CHECK, "does not take this project"),
        (sqlite3.SQLITE_TOOBIG, "does not answer"),
    ],
)
def test_what_sqlite_reports_is_told_with_a_remedy(code: int, said: str) -> None:
    with pytest.raises(StoreError, match=said) as caught, told(PLACE):
        raise from_sqlite(code)
    (problem,) = caught.value.problems
    assert problem.where == str(PLACE)
    assert "as SQLite puts it" in problem.what
    assert problem.what.endswith(".")
    assert problem.remedy.endswith(".")


@pytest.mark.parametrize(
    "number", [errno.EACCES, errno.EROFS, errno.ENOSPC, errno.ENOTDIR, errno.ENAMETOOLONG, errno.EMFILE]
)
def test_what_the_system_reports_is_told_with_a_remedy(number: int) -> None:
    with pytest.raises(StoreError, match=os.strerror(number)) as caught, told(PLACE, files=True):
        raise OSError(number, os.strerror(number), "elsewhere")
    (problem,) = caught.value.problems
    assert problem.where == "elsewhere"
    assert problem.remedy.endswith(".")


def test_an_error_without_a_file_is_told_of_the_store() -> None:
    with pytest.raises(StoreError) as caught, told(PLACE, files=True):
        raise OSError("odd")
    assert str(caught.value).startswith(f"{PLACE}: odd.")


def test_a_fault_of_the_program_is_not_hidden() -> None:
    with pytest.raises(sqlite3.ProgrammingError), told(PLACE):
        raise sqlite3.ProgrammingError("closed")
