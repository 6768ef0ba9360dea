"""Projects into the store and out of it."""

from __future__ import annotations

import sqlite3
from pathlib import Path

import pytest

from planner.app.plans import plan_of
from planner.app.projects import Change, Listed, forget, listed, read, stored, write, write_to
from planner.app.store_place import StorePlace
from planner.errors import InputError, PlanError, StoreError
from planner.intake.project_file import read_project
from tests.app.folders import contents
from tests.app.texts import BAD, BOX, CHEST, IMPOSSIBLE, named


def read_text(text: str, store: StorePlace, folder: Path) -> Change:
    path = folder / "project.toml"
    path.write_text(text, encoding="utf-8")
    return read(str(path), store).change


def test_a_project_read_twice_is_new_then_unchanged_then_changed(store: StorePlace, shop: Path) -> None:
    assert read_text(BOX, store, shop) is Change.NEW
    before = contents(store.path.parent)
    assert read_text(BOX, store, shop) is Change.UNCHANGED
    assert contents(store.path.parent) == before
    assert read_text(BOX.replace("240", "250"), store, shop) is Change.CHANGED
    (box,) = stored("Salt box", store).boxes
    assert box.length_nm == 250_000_000


def test_reading_tells_the_plan(store: StorePlace, box: Path) -> None:
    plan = read(str(box), store).plan
    assert (len(plan.boards), len(plan.joints)) == (4, 4)


@pytest.mark.parametrize(("text", "error"), [(BAD, InputError), (IMPOSSIBLE, PlanError), ("]", InputError)])
def test_a_file_that_cannot_be_planned_leaves_the_store_as_it_was(
    store: StorePlace, shop: Path, text: str, error: type[Exception]
) -> None:
    with pytest.raises(error):
        read_text(text, store, shop)
    assert not store.path.parent.exists()
    read_text(BOX, store, shop)
    before = contents(store.path.parent)
    with pytest.raises(error):
        read_text(text, store, shop)
    assert contents(store.path.parent) == before


def test_a_project_written_back_reads_as_the_same_project(store: StorePlace, shop: Path) -> None:
    read(str(CHEST), store)
    project = stored("Landing chest", store)
    assert read_project(write("Landing chest", store), "text") == project
    write_to(shop / "chest.toml", "Landing chest", store, force=False)
    assert read(str(shop / "chest.toml"), store).change is Change.UNCHANGED


def test_writing_back_overwrites_nothing_without_force(store: StorePlace, shop: Path, box: Path) -> None:
    read(str(box), store)
    (shop / "mine.toml").write_bytes(b"mine")
    with pytest.raises(InputError, match="is there already"):
        write_to(shop / "mine.toml", "Salt box", store, force=False)
    assert contents(shop) == {"mine.toml": b"mine"}
    write_to(shop / "mine.toml", "Salt box", store, force=True)
    assert (shop / "mine.toml").read_text(encoding="utf-8") == write("Salt box", store)


def test_the_list_counts_what_each_project_holds(store: StorePlace, box: Path) -> None:
    assert listed(store) == ()
    read(str(CHEST), store)
    read(str(box), store)
    assert listed(store) == (
        Listed(name="Landing chest", boxes=0, carcases=1, drawers=6),
        Listed(name="Salt box", boxes=1, carcases=0, drawers=0),
    )


def test_looking_into_a_store_that_is_not_there_makes_none(store: StorePlace) -> None:
    listed(store)
    with pytest.raises(InputError, match="holds no project yet"):
        plan_of(None, store)
    with pytest.raises(InputError, match="is not in the store"):
        plan_of("Salt box", store)
    assert not store.path.parent.exists()


def test_the_only_project_needs_no_name_and_one_of_several_does(store: StorePlace, shop: Path) -> None:
    read_text(BOX, store, shop)
    assert plan_of(None, store) == plan_of("Salt box", store)
    read_text(named("Tea box"), store, shop)
    with pytest.raises(InputError, match=r"Name one of: 'Salt box', 'Tea box'\."):
        plan_of(None, store)


def test_a_mistyped_name_is_answered_with_the_nearest(store: StorePlace, box: Path) -> None:
    read(str(box), store)
    with pytest.raises(InputError, match="Did you mean 'Salt box'"):
        plan_of("salt bx", store)


def test_a_forgotten_project_is_gone_and_the_others_stay(store: StorePlace, shop: Path) -> None:
    read_text(BOX, store, shop)
    read_text(named("Tea box"), store, shop)
    forget("Salt box", store)
    assert [each.name for each in listed(store)] == ["Tea box"]
    with pytest.raises(InputError, match="is not in the store"):
        forget("Salt box", store)


def test_a_damaged_project_is_refused_and_can_be_read_again_from_its_file(store: StorePlace, box: Path) -> None:
    read(str(box), store)
    with sqlite3.connect(store.path) as connection:
        connection.execute("DELETE FROM corner_joint WHERE mark = 'S-J2'")
    connection.close()
    with pytest.raises(StoreError):
        stored("Salt box", store)
    assert read(str(box), store).change is Change.CHANGED
    assert len(stored("Salt box", store).boxes) == 1


def test_a_store_that_is_no_store_is_refused_and_left_alone(shop: Path, box: Path) -> None:
    (shop / "letter.txt").write_bytes(b"Dear Anna")
    with pytest.raises(StoreError):
        read(str(box), StorePlace(shop / "letter.txt"))
    assert contents(shop) == {"letter.txt": b"Dear Anna"}
