"""Killed at any moment, the program leaves the store as before or as after, never between.

Set PLANNER_KILLS for more kills than the usual sixty. The moments are spread evenly over the time that the work takes;
where exactly they fall is up to the machine.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from multiprocessing.connection import Connection
from multiprocessing.process import BaseProcess
from pathlib import Path
from time import perf_counter

import pytest

from planner.errors import InputError
from planner.store.engine import reading
from planner.store.migrate import HEAD, Scripts
from planner.store.projects import list_projects, load_project
from tests.store import children
from tests.store.chains import NEXT, REBUILD, longer
from tests.store.examples import ask, dump, folder_of, is_whole, load, save

pytestmark = pytest.mark.kill

KILLS = int(os.environ.get("PLANNER_KILLS", "60"))
_GOLDEN = 0.618034
"""Multiples of it, without their whole part, spread evenly however many there are."""


@contextmanager
def at_work(work: Callable[..., None], *given: object) -> Iterator[tuple[BaseProcess, Connection]]:
    """A process of its own, which has just begun its work, and what it says; at the end it is killed."""
    hears, says = children.context().Pipe(duplex=False)
    child = children.context().Process(target=work, args=(*given, says))
    child.start()
    says.close()
    assert hears.recv() == "begun"
    try:
        yield child, hears
    finally:
        child.kill()  # SIGKILL
        child.join()
        child.close()
        hears.close()


def moment(number: int, within_s: float) -> float:
    """Seconds until the kill of this number."""
    return number * _GOLDEN % 1 * within_s


def time_for(work: Callable[..., None], *given: object) -> float:
    """Seconds that the work takes when it is left alone."""
    with at_work(work, *given) as (child, _):
        began = perf_counter()
        child.join()
        return perf_counter() - began


def test_killed_while_saving_the_store_is_as_before_or_as_after(place: Path) -> None:
    save(place, *children.contents(1))
    reached, caught_open = {1}, 0
    for number in range(KILLS):
        with at_work(children.save_for_ever, place) as (child, hears):
            if number % 2:  # while the transaction is being written down
                assert hears.recv() == "about to commit"
                child.join(timeout=moment(number, within_s=0.02))
            else:  # anywhere
                child.join(timeout=moment(number, within_s=0.25))
        caught_open += len(folder_of(place)) > 1
        with reading(place) as session:
            listed = list_projects(session)
            versions = {each.version for each in listed}
            assert len(versions) == 1
            assert tuple(load_project(session, each.name) for each in listed) == children.contents(*versions)
        assert is_whole(place)
        reached |= versions
    assert folder_of(place) == [place.name]
    assert caught_open
    assert len(reached) > 1


def test_killed_while_making_a_store_there_is_none_or_a_whole_one(tmp_path: Path) -> None:
    outcomes, within_s = set(), 1.5 * time_for(children.make_store, tmp_path / "alone" / "planner.db")
    for number in range(KILLS // 2):
        folder = tmp_path / str(number)
        folder.mkdir()
        place = folder / "planner.db"
        with at_work(children.make_store, place) as (child, _):
            child.join(timeout=moment(number, within_s))
        outcomes.add(_what_is_there(place))
        save(place, *children.contents(2))
        assert tuple(load(place, each.name) for each in children.contents(2)) == children.contents(2)
        assert all(name == place.name or name.startswith(".planner.db.") for name in folder_of(place))
    assert {"nothing", "projects"} <= outcomes <= {"nothing", "empty", "projects"}


def _what_is_there(place: Path) -> str:
    if not place.exists():
        return "nothing"
    assert ask(place, "SELECT version_num FROM alembic_version") == [(HEAD,)]
    assert is_whole(place)
    try:
        assert tuple(load(place, each.name) for each in children.contents(1)) == children.contents(1)
    except InputError:
        return "empty"
    return "projects"


def test_killed_while_upgrading_the_store_is_old_or_new_and_each_backup_whole(tmp_path: Path) -> None:
    old, new, scripts = tmp_path / "old.db", tmp_path / "new.db", longer(tmp_path, REBUILD)
    save(old, *children.contents(1))
    shutil.copy(old, new)
    within_s = 1.5 * time_for(children.upgrade_store, new, scripts)
    states = {HEAD: rows_of(old), NEXT: rows_of(new)}
    outcomes = set()
    for number in range(KILLS // 2):
        folder = tmp_path / str(number)
        folder.mkdir()
        place = Path(shutil.copy(old, folder / "planner.db"))
        with at_work(children.upgrade_store, place, scripts) as (child, _):
            child.join(timeout=moment(number, within_s))
        ((revision,),) = ask(place, "SELECT version_num FROM alembic_version")
        assert rows_of(place) == states[str(revision)]
        assert is_whole(place)
        backups = [each for each in folder.iterdir() if each.suffix == ".bak"]
        assert all(rows_of(backup) == states[HEAD] for backup in backups)
        assert backups or revision == HEAD
        outcomes.add(revision)
        assert _loads_with(place, scripts)
    assert outcomes == {HEAD, NEXT}


def rows_of(place: Path) -> list[str]:
    """All rows; a rebuilt table may have its constraints in another order."""
    return [line for line in dump(place) if line.startswith("INSERT")]


def _loads_with(place: Path, scripts: Scripts) -> bool:
    with reading(place, scripts=scripts) as session:
        return all(load_project(session, each.name) == each for each in children.contents(1))
