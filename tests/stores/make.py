"""Make ``tests/stores/REVISION.db`` with the program as it is now; run once for each released schema, then keep it.

    python -m tests.stores.make

A store of every release stays here for good, so that tests can open it with the program of the day.
"""

from __future__ import annotations

import sqlite3
import sys
from contextlib import closing
from pathlib import Path

from planner.domain.rack import Flaw, Lot, Surfaced
from planner.intake.write_file import write_project
from planner.store.engine import writing
from planner.store.history import make_current, record
from planner.store.migrate import HEAD
from planner.store.projects import save_project
from planner.store.rack import put_in
from tests.pieces import inches
from tests.store.examples import cabinet

KEPT = Path(__file__).parent / f"{HEAD}.db"
BOARD = Lot(
    mark="R1",
    yard=None,
    material="ash",
    shortest_nm=inches("72"),
    longest_nm=inches("72"),
    narrowest_nm=inches("8"),
    widest_nm=inches("8"),
    thickness_nm=inches("1"),
    surfaced=Surfaced.ROUGH,
    count=1,
    flaws=(Flaw(along=(inches("10"), inches("12")), across=(inches("1"), inches("2"))),),
)
"""A board on the rack, with a knot."""

DRAWERS = {1: "read from hall.toml", 2: "a drawer more in each column", 3: "and another"}
"""Drawers in each column of the cabinet in its states, and the reasons for these."""


def make(path: Path) -> None:
    """Make a store with one project that has a row in every table, as small as SQLite can.

    Its second state is the present one; the third was undone.
    """
    with writing(path) as session:
        save_project(session, cabinet())
        put_in(session, [BOARD])
        for drawers, why in DRAWERS.items():
            text = write_project(cabinet(drawers=drawers))
            record(session, cabinet().name, file=text, why=why, at=f"2031-05-0{drawers}T08:00:00+00:00")
        make_current(session, cabinet().name, 2)
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        for pragma in ("journal_mode = DELETE", "page_size = 512"):
            connection.execute(f"PRAGMA {pragma}")
        connection.execute("VACUUM")
        connection.execute("PRAGMA journal_mode = WAL")


if __name__ == "__main__":
    if KEPT.exists():
        sys.exit(f"{KEPT} is there; a store that was released is never made again.")
    make(KEPT)
