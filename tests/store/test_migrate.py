"""New stores, older stores, newer stores."""

from __future__ import annotations

import hashlib
import re
import sqlite3
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, closing, contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from sqlmodel import Session

from planner.errors import StoreError
from planner.store import backup, files, migrate
from planner.store.engine import reading, writing
from planner.store.migrate import HEAD, Upgraded, migrations_dir, released
from planner.store.projects import list_projects, load_project
from planner.store.tables import Row
from tests.store import children
from tests.store.chains import HARMLESS, NEXT, REBUILD, longer
from tests.store.examples import (
    ask,
    batch_of,
    cabinet,
    dump,
    folder_of,
    is_whole,
    load,
    save,
    schema_of,
    schema_of_tables,
)

Open = Callable[[Path], AbstractContextManager["Session"]]


class PlannedError(Exception):
    """Raised by a test in the midst of something."""


@contextmanager
def failing_at(statement: int) -> Iterator[None]:
    """Let the statement with this number, counted from 0, fail."""
    from sqlalchemy import Engine, event

    done = 0

    def count(*_: object) -> None:
        nonlocal done
        if done == statement:
            raise PlannedError
        done += 1

    event.listen(Engine, "before_cursor_execute", count)
    try:
        yield
    finally:
        event.remove(Engine, "before_cursor_execute", count)


# --- the scripts -------------------------------------------------------------------------------------------


def test_head_is_the_single_head_of_the_scripts() -> None:
    from alembic.config import Config
    from alembic.script import ScriptDirectory

    config = Config()
    config.set_main_option("script_location", str(migrations_dir()))
    config.set_main_option("path_separator", "os")
    scripts = ScriptDirectory.from_config(config)
    assert scripts.get_heads() == [HEAD]
    assert released().known() == {script.revision for script in scripts.walk_revisions()}


def test_a_script_never_imports_the_program() -> None:
    for script in migrations_dir().rglob("*.py"):
        assert not re.search(r"^\s*(from|import)\s+planner\b", script.read_text(), re.MULTILINE), script


def test_the_scripts_lead_to_the_schema_of_the_tables(stored: Path) -> None:
    assert schema_of(stored) == schema_of_tables()


def test_the_scripts_beside_the_package_come_before_the_checkout(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    module = tmp_path / "planner" / "store" / "migrate.py"
    monkeypatch.setattr(migrate, "__file__", str(module))
    assert migrations_dir() == tmp_path / "migrations"
    (tmp_path / "planner" / "_migrations").mkdir(parents=True)
    assert migrations_dir() == tmp_path / "planner" / "_migrations"


# --- new stores --------------------------------------------------------------------------------------------


def test_a_new_store_says_whose_it_is_and_which_revision_it_has(stored: Path) -> None:
    assert ask(stored, "PRAGMA application_id") == [(int.from_bytes(b"PLNR"),)]
    assert ask(stored, "SELECT version_num FROM alembic_version") == [(HEAD,)]
    assert ask(stored, "PRAGMA journal_mode") == [("wal",)]
    assert folder_of(stored) == [stored.name]
    assert is_whole(stored)


@pytest.mark.parametrize("name", ["100% oak.db", "Küche & Flur.db", "棚 #1?.db", "a'b\"c.db", "%41.db", "file:x.db"])
def test_a_path_may_hold_any_characters(tmp_path: Path, name: str) -> None:
    place = tmp_path / f"{name} %(here)s" / "deeper" / name
    save(place, cabinet())
    assert load(place, cabinet().name) == cabinet()
    scripts = longer(place.parent, HARMLESS)
    with reading(place, scripts=scripts) as session:
        assert load_project(session, cabinet().name) == cabinet()
    assert {each.partition(".db.")[0] for each in folder_of(place)} == {
        name,
        name.removesuffix(".db"),
        scripts.folder.name,
    }


def test_a_store_may_be_reached_by_a_link(place: Path, tmp_path: Path) -> None:
    link = tmp_path / "link.db"
    link.symlink_to(place)
    save(link, cabinet())
    assert load(place, cabinet().name) == cabinet()
    assert link.is_symlink()


def test_a_failure_after_any_statement_leaves_no_new_store(place: Path) -> None:
    for statement in range(1000):
        try:
            with failing_at(statement):
                migrate.create(place, released())
            break
        except PlannedError:
            assert folder_of(place) == []
    assert statement > len(Row.metadata.tables)
    assert is_whole(place)


def test_of_two_who_make_a_store_at_once_the_first_one_stands(place: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    real = files._move

    def second(draft: Path, final: Path) -> None:
        monkeypatch.setattr(files, "_move", real)
        save(final, cabinet())
        real(draft, final)

    monkeypatch.setattr(files, "_move", second)
    save(place, batch_of(2))
    with reading(place) as session:
        assert [each.name for each in list_projects(session)] == ["hall cabinet", "tea boxes"]
    assert folder_of(place) == [place.name]


def test_a_disk_without_hard_links_will_do(place: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object) -> None:
        raise PermissionError(1, "Operation not permitted")

    monkeypatch.setattr("os.link", refuse)
    save(place, cabinet())
    assert folder_of(place) == [place.name]
    with pytest.raises(FileExistsError), files.draft_of(place) as draft:
        draft.write_bytes(b"second")
    assert load(place, cabinet().name) == cabinet()
    assert folder_of(place) == [place.name]


# --- older stores ------------------------------------------------------------------------------------------


def test_an_older_store_is_upgraded_after_a_backup_and_the_user_is_told(stored: Path, tmp_path: Path) -> None:
    before, told = dump(stored), list[Upgraded]()
    with reading(stored, tell=told.append, scripts=longer(tmp_path, HARMLESS)) as session:
        assert load_project(session, cabinet().name) == cabinet()
    (news,) = told
    assert (news.store, news.was, news.now) == (stored, HEAD, NEXT)
    assert all(word in str(news) for word in (str(stored), HEAD, NEXT, str(news.backup)))
    assert dump(news.backup) == before
    assert folder_of(stored) == [stored.name, news.backup.name]
    assert load(news.backup, cabinet().name) == cabinet()
    assert ask(stored, "SELECT version_num FROM alembic_version") == [(NEXT,)]
    assert is_whole(stored)


def test_writing_upgrades_as_well_and_only_once(stored: Path, tmp_path: Path) -> None:
    told, scripts = list[Upgraded](), longer(tmp_path, HARMLESS)
    for _ in range(2):
        with writing(stored, tell=told.append, scripts=scripts):
            pass
    assert len(told) == 1


def test_rebuilding_a_table_loses_no_row_that_cascades_from_it(stored: Path, tmp_path: Path) -> None:
    tables = [name for (name,) in ask(stored, "SELECT name FROM sqlite_master WHERE type = 'table'")]
    before = {name: ask(stored, f"SELECT count(*) FROM {name}") for name in tables}  # noqa: S608
    with reading(stored, scripts=longer(tmp_path, REBUILD)):
        pass
    assert {name: ask(stored, f"SELECT count(*) FROM {name}") for name in tables} == before  # noqa: S608
    assert ("D101 was here",) in ask(stored, "SELECT note FROM box")


def test_a_failure_after_any_statement_leaves_an_older_store_as_it_was(stored: Path, tmp_path: Path) -> None:
    before, scripts, told = dump(stored), longer(tmp_path, REBUILD), list[Upgraded]()
    for statement in range(1000):
        try:
            with failing_at(statement):
                migrate.make_current(stored, scripts, told.append)
            break
        except (PlannedError, StoreError):
            assert dump(stored) == before
    assert statement > 20
    assert [news.now for news in told] == [NEXT]
    assert ask(stored, "SELECT version_num FROM alembic_version") == [(NEXT,)]


def test_a_failure_after_any_statement_of_saving_leaves_the_store_as_it_was(place: Path) -> None:
    save(place, cabinet(drawers=1))
    before = dump(place)
    for statement in range(1000):
        try:
            with failing_at(statement):
                save(place, cabinet(drawers=2), batch_of(1))
            break
        except PlannedError:
            assert dump(place) == before
    assert statement > 20
    assert load(place, cabinet().name) == cabinet(drawers=2)


BAD_STEPS = [
    ('raise ValueError("no such thing")', "ValueError: no such thing"),
    ('op.execute("DELETE FROM space")', "rows of space would be lost"),
    ('op.execute("DELETE FROM rails")', "rows of rails would be lost"),
    ('op.drop_table("rails")', "rows of rails would be lost"),
    ('op.execute("UPDATE board SET material_id = 99")', "would refer to nothing"),
    ('op.execute("UPDATE nowhere SET x = 1")', "no such table: nowhere"),
    ("op.execute(\"UPDATE board SET mark = ''\")", "CHECK constraint failed"),
]


@pytest.mark.parametrize(("steps", "why"), BAD_STEPS)
def test_an_upgrade_that_goes_wrong_is_refused_and_names_the_backup(
    stored: Path, tmp_path: Path, steps: str, why: str
) -> None:
    before = dump(stored)
    with pytest.raises(StoreError) as caught, reading(stored, scripts=longer(tmp_path, f"{HARMLESS}\n{steps}")):
        pass
    (problem,) = caught.value.problems
    assert problem.where == str(stored)
    assert why in problem.what
    (copy,) = (each for each in stored.parent.iterdir() if each.suffix == ".bak")
    assert str(copy) in problem.remedy
    assert dump(stored) == before == dump(copy)
    assert load(stored, cabinet().name) == cabinet()


def test_a_step_may_take_rows_away_when_it_says_so(stored: Path, tmp_path: Path) -> None:
    scripts = longer(tmp_path, 'op.execute("DELETE FROM till")', header='CHANGES_ROWS_OF = ("till",)')
    with reading(stored, scripts=scripts) as session:
        (box,) = load_project(session, cabinet().name).boxes
    assert box.till is None


def test_an_upgraded_store_that_holds_no_sound_project_is_refused(stored: Path, tmp_path: Path) -> None:
    before = dump(stored)
    scripts = longer(tmp_path, 'op.execute("DELETE FROM rails")', header='CHANGES_ROWS_OF = ("rails",)')
    with pytest.raises(StoreError, match="drawers above each other need rails"), reading(stored, scripts=scripts):
        pass
    assert dump(stored) == before


def test_without_room_for_a_backup_there_is_no_upgrade(
    stored: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    before = dump(stored)
    monkeypatch.setattr("os.fsync", full)
    with (
        pytest.raises(StoreError, match="No space left") as caught,
        reading(stored, scripts=longer(tmp_path, HARMLESS)),
    ):
        pass
    assert "Make room" in caught.value.problems[0].remedy
    assert dump(stored) == before
    assert folder_of(stored) == [stored.name]


def test_a_copy_that_differs_is_no_backup(stored: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    counts = iter([{"board": 3}, {"board": 4}])
    monkeypatch.setattr(backup, "row_counts", lambda _: next(counts))
    with pytest.raises(StoreError, match="can't be backed up"), reading(stored, scripts=longer(tmp_path, HARMLESS)):
        pass
    assert folder_of(stored) == [stored.name]


def test_a_store_that_breaks_its_own_rules_is_not_upgraded(stored: Path, tmp_path: Path) -> None:
    with closing(sqlite3.connect(stored)) as connection:
        connection.executescript("PRAGMA ignore_check_constraints = ON; UPDATE board SET thickness_nm = -1;")
    before = dump(stored)
    wanted = "can't be backed up: CHECK constraint failed in board"
    with pytest.raises(StoreError, match=wanted), reading(stored, scripts=longer(tmp_path, HARMLESS)):
        pass
    assert dump(stored) == before
    assert folder_of(stored) == [stored.name]


def test_only_the_newest_backups_of_a_revision_are_kept(stored: Path) -> None:
    other = stored.with_name(f"{stored.name}.0000.20200101-000000-000000.bak")
    other.write_bytes(b"of another revision")
    with writing(stored):
        made = [backup.back_up(stored, HEAD) for _ in range(backup.KEPT + 2)]
    assert folder_of(stored) == sorted([stored.name, other.name, *(each.name for each in made[-backup.KEPT :])])


def test_a_store_upgraded_by_another_process_meanwhile_is_not_upgraded_again(
    stored: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    scripts, told = longer(tmp_path, HARMLESS), list[Upgraded]()
    with reading(stored, scripts=scripts):
        pass
    monkeypatch.setattr(migrate, "peek", lambda _: HEAD)  # as the glance saw it before the other was done
    assert migrate.make_current(stored, scripts, told.append)
    assert told == []


def test_many_processes_that_open_an_older_store_upgrade_it_once(stored: Path, tmp_path: Path) -> None:
    scripts = longer(tmp_path, REBUILD)
    with children.workers(4) as pool:
        news = pool.starmap(children.open_and_load, [(stored, scripts, cabinet().name)] * 8)
    assert [project for _, project in news] == [cabinet()] * 8
    assert sum(len(told) for told, _ in news) == 1
    assert len(folder_of(stored)) == 2
    assert is_whole(stored)


def test_many_processes_that_make_a_store_at_once_make_one(place: Path) -> None:
    projects = [batch_of(1, f"box {n}") for n in range(8)]
    with children.workers(4) as pool:
        pool.starmap(save, [(place, project) for project in projects])
    with reading(place) as session:
        assert [load_project(session, each.name) for each in list_projects(session)] == projects
    assert folder_of(place) == [place.name]


# --- newer stores ------------------------------------------------------------------------------------------


@pytest.mark.parametrize("revision", [NEXT, "9999", "", "x'y"])
@pytest.mark.parametrize("open_store", [reading, writing])
def test_a_newer_store_is_refused_untouched(stored: Path, revision: str, open_store: Open) -> None:
    with closing(sqlite3.connect(stored)) as connection, connection:
        connection.execute("UPDATE alembic_version SET version_num = ?", (revision,))
    before = hashlib.sha256(stored.read_bytes()).hexdigest()
    with pytest.raises(StoreError, match="newer program") as caught, open_store(stored):
        pass
    assert HEAD in caught.value.problems[0].what
    assert "Update" in caught.value.problems[0].remedy
    assert hashlib.sha256(stored.read_bytes()).hexdigest() == before
    assert folder_of(stored) == [stored.name]


def test_a_newer_store_with_a_log_left_by_a_killed_program_is_refused_untouched(stored: Path) -> None:
    with closing(sqlite3.connect(stored)) as connection, connection:
        connection.execute("UPDATE alembic_version SET version_num = '0007'")
        connection.commit()
        store, log = stored.read_bytes(), stored.with_name(f"{stored.name}-wal").read_bytes()
        assert log
    stored.write_bytes(store)
    stored.with_name(f"{stored.name}-wal").write_bytes(log)
    with pytest.raises(StoreError, match="0007"), reading(stored):
        pass
    assert stored.read_bytes() == store
    assert stored.with_name(f"{stored.name}-wal").read_bytes() == log


def test_a_store_upgraded_by_a_newer_program_after_the_glance_is_refused(
    stored: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("planner.store.engine.make_current", lambda *_: True)
    with closing(sqlite3.connect(stored)) as connection, connection:
        connection.execute("UPDATE alembic_version SET version_num = '0007'")
    before = dump(stored)
    for open_store in (reading, writing):
        with pytest.raises(StoreError, match="newer program"), open_store(stored):
            pass
    assert dump(stored) == before


def test_an_older_store_that_appears_after_the_glance_is_refused(
    stored: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("planner.store.engine.make_current", lambda *_: True)
    scripts = longer(tmp_path, HARMLESS)
    for open_store in (reading, writing):
        with pytest.raises(StoreError, match="Try again"), open_store(stored, scripts=scripts):
            pass


# --- weight ------------------------------------------------------------------------------------------------

GLANCE = """
import sys
from pathlib import Path
import planner.store.engine, planner.store.peek
planner.store.peek.peek(Path(sys.argv[1]))
assert not {"sqlalchemy", "sqlmodel", "alembic"} & sys.modules.keys()
from planner.store.projects import load_project
with planner.store.engine.reading(Path(sys.argv[1])) as session:
    load_project(session, sys.argv[2])
assert "alembic" not in sys.modules
"""


def test_a_store_at_head_is_opened_without_alembic_and_glanced_at_without_anything(stored: Path) -> None:
    subprocess.run([sys.executable, "-c", GLANCE, str(stored), cabinet().name], check=True)
