"""Backups: a copy of the store beside it, checked before anything relies on it."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

from planner.store.connection import connect
from planner.store.files import draft_of
from planner.store.peek import refusal

KEPT = 3
"""So many backups of one revision are kept; older ones are removed."""


def back_up(path: Path, revision: str) -> Path:
    """Copy the store to ``NAME.REVISION.TIME.bak`` beside it, and check the copy; returns its place.

    The caller holds the store's write lock, so that nothing changes meanwhile.

    Raises:
        StoreError: the copy is not like the store.
        sqlite3.Error, OSError: no room, or no right.
    """
    made = datetime.now(tz=UTC).strftime("%Y%m%d-%H%M%S-%f")
    kept = path.with_name(f"{path.name}.{revision}.{made}.bak")
    with draft_of(kept) as draft, closing(connect(path, "ro")) as source, closing(connect(draft, "rwc")) as copy:
        source.backup(copy)
        copy.execute("PRAGMA journal_mode = DELETE")  # all of it in the one file
        fault = _fault(source, copy)
        if fault:
            raise refusal(
                path,
                f"can't be backed up: {fault}.",
                "The store or the disk is damaged: look after the disk, or put an older backup in its place.",
            )
    _age_out(path, revision)
    return kept


def _fault(source: sqlite3.Connection, copy: sqlite3.Connection) -> str | None:
    (said,) = copy.execute("PRAGMA integrity_check").fetchone()
    if said != "ok":
        return str(said)
    return None if row_counts(copy) == row_counts(source) else "the copy does not have the same rows"


def row_counts(connection: sqlite3.Connection) -> dict[str, int]:
    """Number of rows in every table."""
    tables = connection.execute("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
    return {
        name: connection.execute(f'SELECT count(*) FROM "{name}"').fetchone()[0]  # noqa: S608 - a name from the schema
        for (name,) in tables.fetchall()
    }


def _age_out(path: Path, revision: str) -> None:
    name = f"{path.name}.{revision}."
    backups = sorted(each for each in path.parent.iterdir() if each.name.startswith(name) and each.suffix == ".bak")
    for old in backups[:-KEPT]:
        old.unlink(missing_ok=True)
