"""The way into a store, and what is said when there is none."""

from __future__ import annotations

import os
import resource
import shutil
import sqlite3
import tempfile
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, closing, contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from planner.errors import InputError, StoreError
from planner.store.engine import reading, writing
from planner.store.projects import list_projects, load_project, save_project
from tests.store.chains import HARMLESS, NEXT, longer
from tests.store.examples import ask, batch_of, cabinet, dump, folder_of, is_whole, load, save

if TYPE_CHECKING:
    from sqlmodel import Session

Open = Callable[[Path], AbstractContextManager["Session"]]
BOTH = pytest.mark.parametrize("open_store", [reading, writing])


# --- no store ----------------------------------------------------------------------------------------------


def test_a_missing_store_is_read_as_an_empty_one_and_not_made(place: Path) -> None:
    with reading(place / "no" / "such" / "folder.db") as session:
        assert list_projects(session) == ()
        with pytest.raises(InputError, match="The store is empty"):
            load_project(session, "chest")
    assert folder_of(place) == []


def test_a_missing_store_is_made_on_writing_with_its_folder(place: Path) -> None:
    deep = place.parent / "not" / "yet" / "there.db"
    save(deep, cabinet())
    assert folder_of(deep) == [deep.name]


def test_a_store_that_went_but_left_its_log_is_refused(stored: Path) -> None:
    log = stored.with_name(f"{stored.name}-wal")
    stored.rename(log)
    for open_store in (reading, writing):
        with pytest.raises(StoreError, match=r"its log planner\.db-wal is there"), open_store(stored):
            pass
    assert folder_of(stored) == [log.name]


# --- one transaction ---------------------------------------------------------------------------------------


def test_nothing_is_kept_when_the_body_fails(stored: Path) -> None:
    before = dump(stored)
    with pytest.raises(ZeroDivisionError), writing(stored) as session:
        _save_and_fail(session)
    assert dump(stored) == before
    assert folder_of(stored) == [stored.name]


def _save_and_fail(session: Session) -> None:
    save_project(session, batch_of(3))
    raise ZeroDivisionError


def test_trouble_of_the_caller_is_not_taken_for_trouble_of_the_store(stored: Path) -> None:
    for open_store in (reading, writing):
        with pytest.raises(FileNotFoundError), open_store(stored):
            raise FileNotFoundError("chest.toml")


def test_a_reader_sees_the_store_as_it_was_when_it_began(stored: Path) -> None:
    with reading(stored) as session:
        save(stored, batch_of(2))
        assert [each.name for each in list_projects(session)] == [cabinet().name]
    with reading(stored) as session:
        assert len(list_projects(session)) == 2


def test_a_reader_can_not_write(stored: Path) -> None:
    before = dump(stored)
    with pytest.raises(StoreError, match="read-only"), reading(stored) as session:
        save_project(session, batch_of(2))
    assert dump(stored) == before


def test_foreign_keys_are_enforced_in_a_session(stored: Path) -> None:
    with pytest.raises(StoreError, match="FOREIGN KEY"), writing(stored) as session:
        session.connection().exec_driver_sql("DELETE FROM material")


def test_a_second_writer_waits_and_is_told_at_last(stored: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("planner.store.connection.PATIENCE_S", 0.05)
    with writing(stored) as session:
        with pytest.raises(StoreError, match="written by another program") as caught:
            save(stored, batch_of(2))
        assert "Wait" in caught.value.problems[0].remedy
        save_project(session, batch_of(3))
    assert load(stored, batch_of(3).name) == batch_of(3)


def test_a_store_held_by_another_program_is_refused(stored: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("planner.store.connection.PATIENCE_S", 0.05)
    with closing(sqlite3.connect(stored, isolation_level=None)) as other:
        other.execute("PRAGMA locking_mode = EXCLUSIVE")
        other.execute("BEGIN EXCLUSIVE")
        for open_store in (reading, writing):
            with pytest.raises(StoreError, match="written by another program"), open_store(stored):
                pass


def test_a_store_in_rollback_mode_is_brought_back_to_its_log(stored: Path) -> None:
    ask(stored, "PRAGMA journal_mode = DELETE")
    save(stored, batch_of(2))
    assert ask(stored, "PRAGMA journal_mode") == [("wal",)]


# --- no store of ours --------------------------------------------------------------------------------------


def _text(path: Path) -> None:
    path.write_text("[project]\nname = 'chest'\n" * 9)


def _empty(path: Path) -> None:
    path.touch()


def _short(path: Path) -> None:
    path.write_bytes(b"SQLite format 3\0")


def _foreign(path: Path) -> None:
    ask(path, "CREATE TABLE board (length REAL)")


def _folder(path: Path) -> None:
    path.mkdir()


def _pipe(path: Path) -> None:
    os.mkfifo(path)


def _without_revision(path: Path) -> None:
    save(path)
    with closing(sqlite3.connect(path)) as connection, connection:
        connection.execute("DELETE FROM alembic_version")


def _without_version_table(path: Path) -> None:
    save(path)
    with closing(sqlite3.connect(path)) as connection, connection:
        connection.execute("DROP TABLE alembic_version")


@pytest.mark.parametrize(
    ("make", "said"),
    [
        (_text, "is not a store"),
        (_empty, "is empty"),
        (_short, "another program"),
        (_foreign, "another program"),
        (_folder, "is not a file"),
        (_pipe, "is not a file"),
        (_without_revision, "does not say which revision"),
        (_without_version_table, "does not say which revision"),
    ],
)
@BOTH
def test_what_is_no_store_is_refused_and_left_alone(
    place: Path, make: Callable[[Path], None], said: str, open_store: Open
) -> None:
    make(place)
    before = place.read_bytes() if place.is_file() else b""
    with pytest.raises(StoreError, match=said) as caught, open_store(place):
        pass
    (problem,) = caught.value.problems
    assert problem.where == str(place)
    assert problem.remedy
    assert (place.read_bytes() if place.is_file() else b"") == before
    assert folder_of(place) == [place.name]


def test_a_store_whose_tables_are_gone_is_refused(stored: Path) -> None:
    with closing(sqlite3.connect(stored)) as connection, connection:
        connection.execute("DROP TABLE bottom_panel")
    with pytest.raises(StoreError, match="no such table: bottom_panel") as caught:
        load(stored, cabinet().name)
    assert "backup" in caught.value.problems[0].remedy


@pytest.mark.parametrize("cut", [4096, 20_000, 100_000])
def test_a_store_that_was_cut_off_is_refused(stored: Path, cut: int) -> None:
    stored.write_bytes(stored.read_bytes()[:cut])
    with pytest.raises(StoreError, match="is damaged"):
        load(stored, cabinet().name)


def test_a_store_with_scribbles_in_it_never_gives_another_project(stored: Path) -> None:
    whole = stored.read_bytes()
    refused = 0
    for page in range(1, len(whole) // 4096):
        at = page * 4096
        stored.write_bytes(whole[:at] + bytes(range(256)) + whole[at + 256 :])
        try:
            assert load(stored, cabinet().name) == cabinet()
        except (StoreError, InputError):
            refused += 1
    assert refused > 20


# --- no right, no room -------------------------------------------------------------------------------------


@pytest.fixture
def shelf() -> Iterator[Path]:
    """A folder that anybody may look into, unlike pytest's own."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder)
        path.chmod(0o755)
        yield path
        for each in [path, *path.rglob("*")]:
            each.chmod(0o755)


@contextmanager
def without_rights() -> Iterator[None]:
    """As a user to whom nothing belongs: permission bits don't bind root."""
    if os.geteuid() != 0:
        yield
        return
    os.seteuid(65534)
    try:
        yield
    finally:
        os.seteuid(0)


def test_a_read_only_store_in_a_read_only_folder_can_be_read_and_not_written(shelf: Path) -> None:
    store = shelf / "planner.db"
    save(store, cabinet())
    before = store.read_bytes()
    store.chmod(0o444)
    shelf.chmod(0o555)
    with without_rights():
        assert load(store, cabinet().name) == cabinet()
        with pytest.raises(StoreError, match="read-only") as caught:
            save(store, batch_of(2))
    assert "--store" in caught.value.problems[0].remedy
    assert store.read_bytes() == before
    assert folder_of(store) == [store.name]


def test_a_read_only_store_in_a_folder_of_ones_own_can_be_read_and_not_written(shelf: Path) -> None:
    store = shelf / "planner.db"
    save(store, cabinet())
    before = store.read_bytes()
    store.chmod(0o444)
    shelf.chmod(0o777)
    with without_rights():
        assert load(store, cabinet().name) == cabinet()
        with pytest.raises(StoreError, match="read-only"):
            save(store, batch_of(2))
    assert store.read_bytes() == before


@pytest.mark.parametrize("folder", [0o555, 0o777], ids=["locked folder", "open folder"])
def test_an_older_store_that_can_not_be_written_is_refused_untouched(shelf: Path, folder: int) -> None:
    store, scripts = shelf / "planner.db", longer(shelf, HARMLESS)
    save(store, cabinet())
    before = store.read_bytes()
    store.chmod(0o444)
    shelf.chmod(folder)
    wanted = f"must be upgraded to {NEXT}, but can't be written"
    with without_rights(), pytest.raises(StoreError, match=wanted), reading(store, scripts=scripts):
        pass
    assert store.read_bytes() == before
    assert not [name for name in folder_of(store) if name.endswith(".bak")]


@pytest.mark.parametrize("name", ["planner.db", "new/folder/planner.db"])
def test_where_nothing_may_be_made_no_store_is_made(shelf: Path, name: str) -> None:
    shelf.chmod(0o555)
    with without_rights():
        with pytest.raises(StoreError, match=r"unable to open|Permission denied") as caught:
            save(shelf / name, cabinet())
        with reading(shelf / name) as session:
            assert list_projects(session) == ()
    assert "--store" in caught.value.problems[0].remedy
    assert list(shelf.iterdir()) == []


@BOTH
def test_a_store_that_one_may_not_read_is_refused(shelf: Path, open_store: Open) -> None:
    store = shelf / "planner.db"
    save(store, cabinet())
    store.chmod(0)
    with without_rights(), pytest.raises(StoreError, match="Permission denied"), open_store(store):
        pass


@BOTH
def test_a_store_in_a_folder_that_one_may_not_enter_is_refused(shelf: Path, open_store: Open) -> None:
    store = shelf / "locked" / "planner.db"
    save(store, cabinet())
    store.parent.chmod(0)
    with without_rights(), pytest.raises(StoreError, match="Permission denied"), open_store(store):
        pass


def test_a_file_in_the_way_of_the_folder_is_named(place: Path) -> None:
    place.write_text("a file")
    with pytest.raises(StoreError, match=r"File exists|Not a directory"):
        save(place / "planner.db", cabinet())
    assert place.read_text() == "a file"


def test_a_name_that_is_too_long_is_refused(place: Path) -> None:
    with pytest.raises(StoreError, match="too long"):
        save(place.with_name("x" * 300), cabinet())
    assert folder_of(place) == []


@contextmanager
def room_for(size: int) -> Iterator[None]:
    """Files can't grow beyond this size: the nearest thing to a full disk that needs none."""
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))


def test_without_room_a_project_is_not_saved_and_the_store_stays_as_it_was(stored: Path) -> None:
    before = dump(stored)
    with room_for(40_000), pytest.raises(StoreError, match=r"disk reports a fault|disk is full"):
        save(stored, *(batch_of(12, f"batch {n}") for n in range(5)))
    assert dump(stored) == before
    assert is_whole(stored)


def test_without_room_no_store_is_made(place: Path) -> None:
    with room_for(10_000), pytest.raises(StoreError, match=r"disk reports a fault|disk is full"):
        save(place, cabinet())
    assert folder_of(place) == []


def test_without_room_for_a_backup_a_store_is_not_upgraded(stored: Path, tmp_path: Path) -> None:
    before, scripts = dump(stored), longer(tmp_path, HARMLESS)
    wanted = f"must be upgraded to {NEXT}, but"
    with room_for(40_000), pytest.raises(StoreError, match=wanted), reading(stored, scripts=scripts):
        pass
    assert dump(stored) == before
    assert folder_of(stored) == [stored.name]


def test_a_full_database_says_that_the_disk_is_full(stored: Path) -> None:
    before = dump(stored)
    with pytest.raises(StoreError, match="the disk is full"), writing(stored) as session:
        _fill_up(session)
    assert dump(stored) == before


def _fill_up(session: Session) -> None:
    (pages,) = session.connection().exec_driver_sql("PRAGMA page_count").one()
    session.connection().exec_driver_sql(f"PRAGMA max_page_count = {pages}")
    save_project(session, batch_of(200))  # more than fits into pages that are free


def test_a_copied_store_is_a_store(stored: Path, tmp_path: Path) -> None:
    copy = tmp_path / "copy.db"
    shutil.copy(stored, copy)
    assert load(copy, cabinet().name) == cabinet()
