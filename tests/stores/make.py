"""Make ``tests/stores/REVISION.db`` with the program as it is now; run once for each released schema, then keep it.

    python -m tests.stores.make

A store of every release stays here for good, so that tests can open it with the program of the day.
"""

from __future__ import annotations

import sqlite3
import sys
from contextlib import closing
from pathlib import Path

from planner.store.engine import writing
from planner.store.migrate import HEAD
from planner.store.projects import save_project
from tests.store.examples import cabinet

KEPT = Path(__file__).parent / f"{HEAD}.db"


def make(path: Path) -> None:
    """Make a store with one project that has a row in every table, as small as SQLite can."""
    with writing(path) as session:
        save_project(session, cabinet())
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        for pragma in ("journal_mode = DELETE", "page_size = 512"):
            connection.execute(f"PRAGMA {pragma}")
        connection.execute("VACUUM")
        connection.execute("PRAGMA journal_mode = WAL")


if __name__ == "__main__":
    if KEPT.exists():
        sys.exit(f"{KEPT} is there; a store that was released is never made again.")
    make(KEPT)
