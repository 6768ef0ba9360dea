"""What the database itself refuses, whatever the program does: each CHECK, UNIQUE and foreign key by a bad row.

The bad rows are listed by hand, and the list is compared with the constraints that the schema has.
"""

from __future__ import annotations

import re
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from planner.store.tables import Row
from tests.store.examples import batch_of, cabinet, save

NOBODY = 999_999


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
    """A store with two projects, and a row in every table."""
    path = tmp_path_factory.mktemp("tables") / "planner.db"
    save(path, cabinet(), batch_of(2))
    return path


@pytest.fixture
def store(filled: Path) -> Iterator[Store]:
    with closing(sqlite3.connect(filled, isolation_level=None)) as connection:
        connection.execute("PRAGMA foreign_keys = ON")
        connection.execute("BEGIN")
        yield Store(connection)
        connection.execute("ROLLBACK")


# --- CHECK -------------------------------------------------------------------------------------------------

WORDLESS: dict[str, dict[str, object]] = {
    "project": {
        "name": "", "unit": "ft", "grid": "1/8 in", "proud_nm": -1, "height_tolerance_nm": -1, "version": 0,
        "sled_change_s": -1, "height_change_s": -1, "fence_swap_s": -1, "handling_s": -1, "turning_s": -1, "pass_s": -1,
    },
    "material": {"name": "", "position": 0, "kind": "stone", "hardness": "medium"},
    "sled": {
        "name": "", "position": 0, "run_micro": 0, "bit_nm": 0, "greatest_bit_height_nm": 0, "greatest_width_nm": 0,
        "greatest_upright_nm": 0, "slot_nm": 0, "greatest_depth_soft_nm": 0, "greatest_depth_hard_nm": 0,
    },
    "box": {"mark": "", "kind": "chair", "position": 0},
    "board": {"mark": "", "role": "rail", "thickness_nm": 0},
    "corner_joint": {"mark": "", "pins_on": "C", "kind": "butt", "lap_nm": 0},
    "spacing": {
        "half_pin_nm": 0, "pin_nm": 0, "tails": 0, "tail_nm": 0, "greatest_tail_nm": 0, "spread": "random",
        "ratio_bottom": 0, "measured_from": "top", "alike": 2,
    },
    "pin_place": {"position": 0, "from_nm": 0, "to_nm": 0},
    "plain_box": {
        "kind": "drawer", "batch": "", "length_nm": 0, "width_nm": 0, "height_nm": 0, "sizes_over": "both",
    },
    "carcase": {"kind": "drawer", "width_nm": 0, "height_nm": 0, "depth_nm": 0},
    "carcase_column": {
        "position": 0, "width_nm": 0, "heights": "random", "step_nm": 0, "ratio_top": 0, "ratio_bottom": 0,
    },
    "opening": {"position": 0, "height_nm": 0},
    "drawer": {"kind": "carcase", "side_clearance_nm": -1, "top_clearance_nm": -1, "back_clearance_nm": -1},
    "bottom_panel": {"kind": "carcase", "thickness_nm": 0, "groove_depth_nm": 0, "up_nm": -1, "play_nm": -1},
    "applied_front": {"kind": "plain box", "thickness_nm": 0, "gap_nm": -1},
    "rails": {"thickness_nm": 0, "width_nm": 0, "housing_depth_nm": 0},
    "partitions": {"thickness_nm": 0, "housing_depth_nm": 0},
    "back_panel": {"thickness_nm": 0, "rabbet_depth_nm": 0, "play_nm": -1},
}  # fmt: skip
"""By table and column, a value that must be refused."""

TWO_COLUMNS: list[tuple[str, str, dict[str, object]]] = [
    ("board", "role", {"position": 1, "role": "back"}),
    ("board", "role", {"position": 5, "role": "left"}),
    ("board", "role", {"position": 0, "role": "front"}),
    ("corner_joint", "two_boards", {"board_at_b_id": 1, "board_at_a_id": 1}),
    ("corner_joint", "lap_said", {"kind": "half-blind dovetail", "lap_nm": None}),
    ("corner_joint", "lap_said", {"kind": "through dovetail", "lap_nm": 1}),
    ("spacing", "ratio_top", {"spread": "edge", "ratio_top": 2, "ratio_bottom": 2}),
    ("spacing", "ratio_whole", {"spread": "edge", "ratio_top": 3, "ratio_bottom": None}),
    ("spacing", "ratio_whole", {"spread": "even", "ratio_top": None, "ratio_bottom": 2}),
    ("spacing", "ratio_said", {"spread": "middle", "ratio_top": None, "ratio_bottom": None}),
    ("spacing", "ratio_said", {"spread": "even", "ratio_top": 3, "ratio_bottom": 2}),
    ("spacing", "ratio_said", {"spread": "listed", "tails": None, "ratio_top": 3, "ratio_bottom": 2}),
    ("spacing", "tails_listed", {"spread": "listed", "tails": 3, "ratio_top": None, "ratio_bottom": None}),
    ("carcase_column", "step_said", {"heights": "step", "step_nm": None, "ratio_top": None, "ratio_bottom": None}),
    ("carcase_column", "step_said", {"heights": "equal", "step_nm": 1, "ratio_top": None, "ratio_bottom": None}),
    ("carcase_column", "ratio_said", {"heights": "ratio", "step_nm": None, "ratio_top": None, "ratio_bottom": None}),
    ("carcase_column", "ratio_said", {"heights": "listed", "step_nm": None, "ratio_top": 3, "ratio_bottom": 2}),
    ("carcase_column", "ratio_whole", {"heights": "ratio", "step_nm": None, "ratio_top": 3, "ratio_bottom": None}),
    ("carcase_column", "ratio_whole", {"heights": "equal", "step_nm": None, "ratio_top": None, "ratio_bottom": 2}),
]
"""Table, name of the constraint, and values that don't go together."""

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

MAY_BE_UNSAID = {
    ("sled", "slot_nm"),
    ("sled", "greatest_depth_soft_nm"),
    ("sled", "greatest_depth_hard_nm"),
    ("corner_joint", "lap_nm"),
    ("spacing", "joint_id"),
    ("spacing", "tails"),
    ("spacing", "ratio_top"),
    ("spacing", "ratio_bottom"),
    ("carcase_column", "width_nm"),
    ("carcase_column", "step_nm"),
    ("carcase_column", "ratio_top"),
    ("carcase_column", "ratio_bottom"),
    ("opening", "height_nm"),
    ("bottom_panel", "up_nm"),
}
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

TWICE: list[tuple[str, tuple[str, ...], dict[str, object]]] = [
    ("project", ("name",), {"name": "tea boxes"}),
    ("material", ("project_id", "name"), {"name": "ash"}),
    ("material", ("project_id", "position"), {"position": 1}),
    ("sled", ("project_id", "name"), {"name": "main"}),
    ("sled", ("project_id", "position"), {"position": 1}),
    ("box", ("project_id", "mark"), {"mark": "C"}),
    ("box", ("project_id", "position"), {"position": 2}),
    ("board", ("project_id", "mark"), {"mark": "K-right"}),
    ("board", ("project_id", "box_id", "position"), {"position": 2, "role": "right"}),
    ("corner_joint", ("project_id", "mark"), {"mark": "K-J2"}),
    ("corner_joint", ("board_at_b_id",), {"board_at_b_id": 3}),
    ("corner_joint", ("board_at_a_id",), {"board_at_a_id": 3}),
    ("spacing", ("joint_id",), {"joint_id": 1}),
    ("spacing", ("box_id",), {"box_id": 2}),
    ("pin_place", ("project_id", "spacing_id", "position"), {"position": 2}),
    ("carcase_column", ("project_id", "carcase_id", "position"), {"position": 2}),
    ("opening", ("project_id", "column_id", "position"), {"position": 2}),
    ("drawer", ("opening_id",), {"opening_id": 2}),
]
"""Table, the columns that must differ together, and a value that another row has already."""

LEADS_TO = {
    ("material", ("project_id", "id")),
    ("sled", ("project_id", "id")),
    ("box", ("project_id", "id")),
    ("box", ("project_id", "id", "kind")),
    ("board", ("project_id", "box_id", "id")),
    ("corner_joint", ("project_id", "box_id", "id")),
    ("spacing", ("project_id", "id")),
    ("carcase", ("project_id", "box_id")),
    ("carcase_column", ("project_id", "id")),
    ("opening", ("project_id", "id")),
}
"""Unique because they hold the primary key; there for foreign keys to lead to."""


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

OTHER_PROJECT: dict[str, object] = {"project_id": 2}
STRAYS: list[tuple[str, tuple[str, ...], str, list[dict[str, object]]]] = [
    ("material", ("project_id",), "project", [{"project_id": NOBODY}]),
    ("sled", ("project_id",), "project", [{"project_id": NOBODY}]),
    ("box", ("project_id",), "project", [{"project_id": NOBODY}]),
    ("box", ("project_id", "sled_id"), "sled", [{"sled_id": NOBODY}, {"sled_id": 3}]),
    ("board", ("project_id", "box_id"), "box", [{"box_id": NOBODY}, OTHER_PROJECT]),
    ("board", ("project_id", "material_id"), "material", [{"material_id": NOBODY}, {"material_id": 4}]),
    ("corner_joint", ("project_id", "box_id", "board_at_b_id"), "board", [{"board_at_b_id": NOBODY}, {"box_id": 2}]),
    ("corner_joint", ("project_id", "box_id", "board_at_a_id"), "board", [{"board_at_a_id": NOBODY}, OTHER_PROJECT]),
    ("spacing", ("project_id", "box_id"), "box", [{"box_id": NOBODY}, OTHER_PROJECT]),
    ("spacing", ("project_id", "box_id", "joint_id"), "corner_joint", [{"joint_id": NOBODY}, {"joint_id": 5}]),
    ("pin_place", ("project_id", "spacing_id"), "spacing", [{"spacing_id": NOBODY}, OTHER_PROJECT]),
    ("plain_box", ("project_id", "box_id", "kind"), "box", [{"box_id": NOBODY}, {"box_id": 2}, OTHER_PROJECT]),
    ("carcase", ("project_id", "box_id", "kind"), "box", [{"box_id": NOBODY}, {"box_id": 3}, OTHER_PROJECT]),
    ("carcase_column", ("project_id", "carcase_id"), "carcase", [{"carcase_id": NOBODY}, OTHER_PROJECT]),
    ("opening", ("project_id", "column_id"), "carcase_column", [{"column_id": NOBODY}, OTHER_PROJECT]),
    ("drawer", ("project_id", "box_id", "kind"), "box", [{"box_id": NOBODY}, {"box_id": 2}]),
    ("drawer", ("project_id", "opening_id"), "opening", [{"opening_id": NOBODY}]),
    ("bottom_panel", ("project_id", "box_id", "kind"), "box", [{"box_id": NOBODY}, {"box_id": 2}]),
    ("bottom_panel", ("project_id", "material_id"), "material", [{"material_id": NOBODY}, {"material_id": 4}]),
    ("applied_front", ("project_id", "box_id", "kind"), "box", [{"box_id": NOBODY}, {"box_id": 1}]),
    ("applied_front", ("project_id", "material_id"), "material", [{"material_id": NOBODY}, {"material_id": 4}]),
    ("rails", ("project_id", "carcase_id"), "carcase", [{"carcase_id": NOBODY}, {"carcase_id": 3}]),
    ("rails", ("project_id", "material_id"), "material", [{"material_id": NOBODY}, {"material_id": 4}]),
    ("partitions", ("project_id", "carcase_id"), "carcase", [{"carcase_id": NOBODY}, {"carcase_id": 3}]),
    ("partitions", ("project_id", "material_id"), "material", [{"material_id": NOBODY}, {"material_id": 4}]),
    ("back_panel", ("project_id", "carcase_id"), "carcase", [{"carcase_id": NOBODY}, {"carcase_id": 3}]),
    ("back_panel", ("project_id", "material_id"), "material", [{"material_id": NOBODY}, {"material_id": 4}]),
]
"""Table, columns, the table they lead to, and values that lead to no row, to another project's or to a wrong kind's.

Boxes by id: 1 is K, a plain box; 2 is C, the carcase; 3 is D101, a drawer. Joint 1 is K-J1, joint 5 is C-J1. Sleds 3
and up and materials 4 and up are those of the other project.
"""


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


@pytest.mark.parametrize("in_use", [("material", "ash"), ("sled", "main")])
def test_what_is_in_use_can_not_be_taken_away(store: Store, in_use: tuple[str, str]) -> None:
    table, name = in_use
    with pytest.raises(sqlite3.IntegrityError, match="FOREIGN KEY constraint failed"):
        store.connection.execute(f"DELETE FROM {table} WHERE name = ?", (name,))  # noqa: S608


def test_the_tables_are_those_of_the_schema(store: Store) -> None:
    assert set(WORDLESS) == {table.name for table in Row.metadata.sorted_tables}
    assert all(store.rows(table) for table in WORDLESS)
