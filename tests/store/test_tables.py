"""What the database itself refuses, whatever the program does: each CHECK, UNIQUE and foreign key by a bad row.

The bad rows are listed by hand in ``bad_rows.py``, and the list is compared with the constraints that the schema has.
"""

from __future__ import annotations

import re
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import pytest

from planner.domain.rack import Flaw, Lot, Per, Price, Surfaced
from planner.lengths import Nm
from planner.store.engine import writing
from planner.store.rack import put_in
from planner.store.sleds import take_in
from planner.store.tables import Row
from tests.store.bad_rows import LEADS_TO, MAY_BE_UNSAID, NOBODY, STRAYS, TWICE, TWO_COLUMNS, WORDLESS
from tests.store.examples import SPARE, batch_of, cabinet, remember, save


@dataclass(frozen=True)
class Store:
    """A store whose rows are taken out and put back changed, inside a transaction that is never committed."""

    connection: sqlite3.Connection

    def rows(self, table: str) -> list[dict[str, Any]]:
        """All rows of a table."""
        self.connection.row_factory = sqlite3.Row
        return [dict(row) for row in self.connection.execute(f"SELECT * FROM {table}")]  # noqa: S608

    def first(self, table: str, **where: object) -> dict[str, Any]:
        """The first row that has these values."""
        return next(row for row in self.rows(table) if row.items() >= where.items())

    def take_out(self, table: str, row: dict[str, Any]) -> None:
        """Delete a row."""
        given = " AND ".join(f"{column} IS ?" for column in row)
        self.connection.execute(f"DELETE FROM {table} WHERE {given}", list(row.values()))  # noqa: S608

    def insert(self, table: str, row: dict[str, Any]) -> None:
        """Insert a row."""
        places = ", ".join("?" * len(row))
        self.connection.execute(
            f"INSERT INTO {table} ({', '.join(row)}) VALUES ({places})",  # noqa: S608
            list(row.values()),
        )


@pytest.fixture(scope="module")
def filled(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A store with three projects, two sleds of its own, and a row in every table."""
    path = tmp_path_factory.mktemp("tables") / "planner.db"
    save(path, cabinet(), batch_of(2), cabinet("shop cabinet"))
    remember(path, cabinet().name, "read", "changed")
    with writing(path) as session:
        take_in(session, [replace(SPARE, name="wide")])
        put_in(session, LOTS)
    return path


@pytest.fixture
def store(filled: Path) -> Iterator[Store]:
    with closing(sqlite3.connect(filled, isolation_level=None)) as connection:
        connection.execute("PRAGMA foreign_keys = ON")
        connection.execute("BEGIN")
        yield Store(connection)
        connection.execute("ROLLBACK")


LOTS = (
    Lot(
        mark="Y1", yard="Hollin yard", material="ash", shortest_nm=Nm(10), longest_nm=Nm(20), narrowest_nm=Nm(5),
        widest_nm=Nm(9), thickness_nm=Nm(4), surfaced=Surfaced.ROUGH, price=Price(cents=5, per=Per.PIECE),
        least_hundredths=50,
    ),
    Lot(
        mark="Y2", yard=None, material="ash", shortest_nm=Nm(10), longest_nm=Nm(10), narrowest_nm=Nm(5),
        widest_nm=Nm(5), thickness_nm=Nm(4), surfaced=Surfaced.ROUGH, count=1,
        flaws=(Flaw(along=(Nm(0), Nm(2)), across=(Nm(0), Nm(1))),),
    ),
)  # fmt: skip


# --- CHECK -------------------------------------------------------------------------------------------------

ALONE = [(table, column, {column: value}) for table, bad in WORDLESS.items() for column, value in bad.items()]


@pytest.mark.parametrize(("table", "name", "bad"), ALONE + TWO_COLUMNS)
def test_a_row_with_a_bad_value_is_refused(store: Store, table: str, name: str, bad: dict[str, object]) -> None:
    row = store.rows(table)[0]
    with pytest.raises(sqlite3.IntegrityError, match=f"CHECK constraint failed: ck_{table}_{name}$"):
        store.insert(table, row | bad)


def test_every_check_has_a_bad_row(store: Store) -> None:
    schema = "\n".join(row["sql"] for row in store.rows("sqlite_master") if row["sql"])
    assert set(re.findall(r"CONSTRAINT (ck_\w+)", schema)) == {f"ck_{t}_{name}" for t, name, _ in ALONE + TWO_COLUMNS}


def test_a_row_that_was_taken_out_can_be_put_back(store: Store) -> None:
    for table in WORDLESS:
        for row in store.rows(table):
            store.connection.execute("SAVEPOINT one")
            store.connection.execute("PRAGMA defer_foreign_keys = ON")
            store.take_out(table, row)
            store.insert(table, row)
            store.connection.execute("ROLLBACK TO one")


# --- STRICT and NOT NULL -----------------------------------------------------------------------------------

COLUMNS = [
    (table.name, column.name)
    for table in Row.metadata.sorted_tables
    for column in table.columns
    if not column.primary_key  # SQLite gives the next number where none is said
]
LENGTHS = [(table, column) for table, column in COLUMNS if column.endswith("_nm")]


@pytest.mark.parametrize(("table", "column"), LENGTHS)
@pytest.mark.parametrize("value", ["abc", 1.5, b"1"], ids=["text", "float", "bytes"])
def test_a_length_that_is_no_whole_number_is_refused(store: Store, table: str, column: str, value: object) -> None:
    row = store.rows(table)[0]
    with pytest.raises(sqlite3.IntegrityError, match=f"cannot store .* value in INTEGER column {table}.{column}"):
        store.insert(table, row | {column: value})


@pytest.mark.parametrize(("table", "column"), [each for each in COLUMNS if each not in MAY_BE_UNSAID])
def test_a_row_without_a_value_is_refused(store: Store, table: str, column: str) -> None:
    row = store.rows(table)[0]
    with pytest.raises(sqlite3.IntegrityError, match=f"NOT NULL constraint failed: {table}.{column}"):
        store.insert(table, row | {column: None})


def test_only_what_may_be_left_unsaid_may_be_null(store: Store) -> None:
    nullable = {
        (table, row[1])
        for table in WORDLESS
        for row in store.connection.execute(f"PRAGMA table_info({table})")
        if not row[3] and not row[5]
    }
    assert nullable == MAY_BE_UNSAID


# --- UNIQUE ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("table", "columns", "taken"), TWICE)
def test_what_is_given_already_is_refused(
    store: Store, table: str, columns: tuple[str, ...], taken: dict[str, object]
) -> None:
    last = {"material": {"name": "larch"}, "sled": {"name": "spare"}}.get(table, {})
    row = store.first(table, **last)
    store.connection.execute("PRAGMA defer_foreign_keys = ON")
    store.take_out(table, row)
    listed = ", ".join(f"{table}.{column}" for column in columns)
    with pytest.raises(sqlite3.IntegrityError, match=f"UNIQUE constraint failed: {listed}$"):
        store.insert(table, row | taken)


def test_every_unique_constraint_has_a_bad_row(store: Store) -> None:
    found = {
        (table, tuple(column for (_, _, column) in store.connection.execute(f"PRAGMA index_info({name})")))
        for table in WORDLESS
        for (_, name, unique, origin, _) in store.connection.execute(f"PRAGMA index_list({table})").fetchall()
        if unique and origin != "pk"
    }
    assert found == {(table, columns) for table, columns, _ in TWICE} | LEADS_TO


def test_a_board_end_can_be_in_one_joint_only(store: Store) -> None:
    joint = store.rows("corner_joint")[0]
    with pytest.raises(sqlite3.IntegrityError, match=r"UNIQUE constraint failed: corner_joint.board_at_b_id"):
        store.insert("corner_joint", joint | {"id": None, "mark": "K-J9", "board_at_a_id": NOBODY})
    with pytest.raises(sqlite3.IntegrityError, match=r"UNIQUE constraint failed: corner_joint.board_at_a_id"):
        store.insert("corner_joint", joint | {"id": None, "mark": "K-J9", "board_at_b_id": NOBODY})


# --- foreign keys ------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("table", "bad"), [(table, bad) for table, _, _, strays in STRAYS for bad in strays])
def test_a_row_that_leads_nowhere_is_refused(store: Store, table: str, bad: dict[str, object]) -> None:
    last = {"material": {"name": "larch"}, "sled": {"name": "spare"}}.get(table, {})
    row = store.first(table, **last)
    store.connection.execute("PRAGMA foreign_keys = ON")
    store.take_out(table, row)
    with pytest.raises(sqlite3.IntegrityError, match="FOREIGN KEY constraint failed"):
        store.insert(table, row | bad)


def test_every_foreign_key_has_a_bad_row(store: Store) -> None:
    found: dict[tuple[str, int], tuple[str, list[str]]] = {}
    for table in WORDLESS:
        for number, _, parent, column, *_ in store.connection.execute(f"PRAGMA foreign_key_list({table})"):
            found.setdefault((table, number), (parent, []))[1].append(column)
    assert {(table, tuple(columns), parent) for (table, _), (parent, columns) in found.items()} == {
        (table, columns, parent) for table, columns, parent, _ in STRAYS
    }


@pytest.mark.parametrize("in_use", [("material", "ash"), ("sled", "main"), ("kept_sled", "spare")])
def test_what_is_in_use_can_not_be_taken_away(store: Store, in_use: tuple[str, str]) -> None:
    table, name = in_use
    with pytest.raises(sqlite3.IntegrityError, match="FOREIGN KEY constraint failed"):
        store.connection.execute(f"DELETE FROM {table} WHERE name = ?", (name,))  # noqa: S608


def test_the_tables_are_those_of_the_schema(store: Store) -> None:
    assert set(WORDLESS) == {table.name for table in Row.metadata.sorted_tables}
    assert all(store.rows(table) for table in WORDLESS)
