"""Undo, redo and the list of states."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from planner.app.history import history, redo, undo
from planner.app.measured import Measured
from planner.app.projects import Change, forget, keep, read, stored
from planner.app.sleds import drop, keep_sled, kept, measure
from planner.app.store_place import StorePlace
from planner.domain.project import Project
from planner.errors import InputError, PlanError
from planner.intake.project_file import read_project
from planner.intake.write_file import write_project
from planner.lengths import Nm
from tests.app.folders import contents
from tests.app.texts import BAD, BOX, CHEST, IMPOSSIBLE, named


def long(length: int, name: str = "Salt box") -> str:
    return named(name).replace("length = 240", f"length = {length}")


def read_text(text: str, store: StorePlace, folder: Path, file: str = "salt.toml") -> Project:
    path = folder / file
    path.write_text(text, encoding="utf-8")
    return read(str(path), store).plan.project


def marks(store: StorePlace, name: str | None = None) -> list[tuple[int, str, bool]]:
    return [(state.number, state.why, state.current) for state in history(name, store).states]


def length(store: StorePlace) -> int:
    return stored("Salt box", store).boxes[0].length_nm // 1_000_000


@pytest.fixture
def three(store: StorePlace, shop: Path) -> StorePlace:
    """A store with a box that was made longer twice."""
    for size in (240, 250, 260):
        read_text(long(size), store, shop, f"{size}.toml")
    return store


def test_every_change_is_a_state_with_its_reason(three: StorePlace) -> None:
    assert marks(three) == [
        (1, "read from 240.toml", False),
        (2, "read from 250.toml", False),
        (3, "read from 260.toml", True),
    ]


def test_a_state_bears_the_time_of_its_change_in_utc(store: StorePlace, box: Path) -> None:
    before = datetime.now(tz=UTC) - timedelta(seconds=1)
    read(str(box), store)
    (state,) = history(None, store).states
    assert state.at.endswith("+00:00")
    assert before <= datetime.fromisoformat(state.at) <= datetime.now(tz=UTC)


def test_what_changes_nothing_is_no_state(three: StorePlace, shop: Path) -> None:
    read_text(long(260), three, shop)
    assert len(marks(three)) == 3


def test_what_is_refused_is_no_state(three: StorePlace, shop: Path) -> None:
    before = contents(three.path.parent)
    for text in (BAD, IMPOSSIBLE):
        with pytest.raises((InputError, PlanError)):
            read_text(text, three, shop)
    assert contents(three.path.parent) == before


def test_undo_and_redo_go_through_the_states(three: StorePlace) -> None:
    seen = [length(three)]
    for go in (undo, undo, redo, redo, undo):
        moved = go(None, three)
        assert moved.plan.project == stored("Salt box", three)
        assert (moved.last, moved.state.current, moved.sleds) == (3, True, ())
        seen.append(length(three))
    assert seen == [260, 250, 240, 250, 260, 250]
    assert [current for _, _, current in marks(three)] == [False, True, False]


def test_several_steps_at_once(three: StorePlace) -> None:
    assert undo("Salt box", three, steps=2).state.number == 1
    assert length(three) == 240
    assert redo("Salt box", three, steps=2).state.number == 3
    assert length(three) == 260


@pytest.mark.parametrize(
    ("back", "go", "steps", "said"),
    [
        (0, redo, 1, "nothing is left to be made again"),
        (0, undo, 3, "only 2 can be undone"),
        (2, undo, 1, "nothing is left to be undone"),
        (2, redo, 3, "only 2 can be made again"),
    ],
)
def test_further_than_there_are_states_is_refused(
    three: StorePlace, back: int, go: object, steps: int, said: str
) -> None:
    if back:
        undo(None, three, steps=back)
    before = contents(three.path.parent)
    with pytest.raises(InputError, match=f"project 'Salt box': {said}.*planner history 'Salt box'"):
        go(None, three, steps=steps)  # type: ignore[operator]
    assert contents(three.path.parent) == before


def test_a_new_change_drops_what_was_undone(three: StorePlace, shop: Path) -> None:
    undo(None, three, steps=2)
    read_text(long(300), three, shop, "300.toml")
    assert marks(three) == [(1, "read from 240.toml", False), (2, "read from 300.toml", True)]
    with pytest.raises(InputError):
        redo(None, three)
    undo(None, three)
    assert length(three) == 240


def test_reading_again_what_stands_there_drops_nothing(three: StorePlace, shop: Path) -> None:
    undo(None, three)
    read_text(long(250), three, shop)
    redo(None, three)
    assert length(three) == 260


def test_undo_of_one_project_leaves_the_others_alone(three: StorePlace, shop: Path) -> None:
    read_text(long(400, "Pen box"), three, shop)
    undo("Salt box", three)
    assert marks(three, "Pen box") == [(1, "read from salt.toml", True)]
    with pytest.raises(InputError, match="Name one of"):
        undo(None, three)
    with pytest.raises(InputError, match="Did you mean 'Salt box'"):
        undo("Salt bx", three)


def test_undo_gives_back_the_whole_chest(store: StorePlace, shop: Path) -> None:
    text = CHEST.read_text(encoding="utf-8")
    chest = read_text(text, store, shop)
    read_text(text.replace('depth = "16 in"', 'depth = "15 in"').replace('"poplar"', '"ash"'), store, shop)
    assert stored("Landing chest", store) != chest
    undo(None, store)
    assert stored("Landing chest", store) == chest


def test_in_an_empty_store_there_is_nothing_to_go_back_to_and_none_is_made(store: StorePlace) -> None:
    for go in (undo, redo, history):
        with pytest.raises(InputError, match="holds no project yet"):
            go(None, store)
        with pytest.raises(InputError, match="is not in the store"):
            go("Salt box", store)
    assert not store.path.parent.exists()


def test_a_forgotten_project_begins_anew(three: StorePlace, shop: Path) -> None:
    forget("Salt box", three)
    read_text(long(240), three, shop)
    assert marks(three) == [(1, "read from salt.toml", True)]


def test_a_project_from_before_there_was_a_history_can_be_brought_back(three: StorePlace, shop: Path) -> None:
    """As in a store that an older program wrote: the first change also records what stood there."""
    with closing(sqlite3.connect(three.path)) as connection, connection:
        connection.execute("DELETE FROM project_state")
    assert marks(three) == []
    with pytest.raises(InputError, match="nothing is left to be undone"):
        undo(None, three)
    read_text(long(300), three, shop)
    assert marks(three) == [(1, "as it was stored before", False), (2, "read from salt.toml", True)]
    undo(None, three)
    assert length(three) == 260


def test_a_damaged_project_can_be_brought_back_to_a_state(three: StorePlace) -> None:
    with closing(sqlite3.connect(three.path)) as connection, connection:
        connection.execute("DELETE FROM corner_joint WHERE mark = 'S-J2'")
    undo(None, three)
    assert length(three) == 250


def test_a_state_that_no_plan_can_be_built_from_is_refused_and_named(store: StorePlace, shop: Path) -> None:
    keep(read_project(IMPOSSIBLE, "x"), store, why="as if an older program had stored it")
    read_text(BOX, store, shop)
    before = contents(store.path.parent)
    with pytest.raises(PlanError) as caught:
        undo(None, store)
    assert all(problem.where.startswith("state 1 of Salt box, S-J") for problem in caught.value.problems)
    assert contents(store.path.parent) == before


def test_a_project_that_no_file_describes_is_refused_and_not_stored(store: StorePlace, box: Path) -> None:
    read(str(box), store)
    before = contents(store.path.parent)
    project = stored("Salt box", store)
    (only,) = project.boxes
    other_batch = replace(project, boxes=(replace(only, batch="T"),))
    with pytest.raises(InputError, match="can't be described by a project file"):
        keep(other_batch, store, why="a test")
    assert contents(store.path.parent) == before


def test_a_reason_is_shown_and_never_obeyed(store: StorePlace) -> None:
    project = read_project(BOX, "x")
    assert keep(project, store, why="\x1b[2J wider \udcff") is Change.NEW
    assert marks(store) == [(1, "\\x1b[2J wider \\udcff", True)]


# --- kept sleds ---------------------------------------------------------------------------------------------


@pytest.fixture
def worn(three: StorePlace) -> StorePlace:
    """The box's sled was kept as state 4, and measured anew as state 5."""
    keep_sled("Salt box", None, three)
    measure("bench", Measured(bit="7.9 mm"), three)
    return three


def test_a_measure_is_not_undone_since_the_bit_does_not_grow_again(worn: StorePlace) -> None:
    moved = undo(None, worn)
    assert moved.state.number == 4
    assert moved.sleds == ("Sled bench stays as it was measured last: bit 7.9 mm, then 8 mm.",)
    assert stored("Salt box", worn).sled("bench").bit_nm == 7_900_000
    assert kept(worn)[0].sled.bit_nm == 7_900_000


def test_a_state_from_before_the_sled_was_kept_has_its_own_sled_again(worn: StorePlace) -> None:
    moved = undo(None, worn, steps=2)
    sled = moved.plan.project.sled("bench")
    assert (sled.kept, sled.bit_nm) == (False, 8_000_000)
    assert kept(worn)[0].projects == ()
    redo(None, worn)
    assert stored("Salt box", worn).sled("bench") == kept(worn)[0].sled


def test_a_state_whose_sled_was_dropped_takes_it_in_again(worn: StorePlace) -> None:
    undo(None, worn, steps=2)
    drop("bench", worn)
    redo(None, worn, steps=2)
    (sled,) = kept(worn)
    assert (sled.projects, sled.sled.bit_nm) == (("Salt box",), 7_900_000)


def test_a_change_on_a_measured_sled_is_undone_to_the_measured_sled(worn: StorePlace) -> None:
    """Length and bit change by turns; undo brings back each length, and always with the bit as it is."""
    project = stored("Salt box", worn)
    (box,) = project.boxes
    keep(replace(project, boxes=(replace(box, length_nm=Nm(300_000_000)),)), worn, why="longer")
    measure("bench", Measured(bit="7.8 mm"), worn)
    undo(None, worn, steps=2)
    assert length(worn) == 260
    assert stored("Salt box", worn).sled("bench").bit_nm == 7_800_000


def test_the_file_of_every_state_holds_all_that_is_in_it(worn: StorePlace) -> None:
    """So that it can be read by itself, and for ever."""
    with closing(sqlite3.connect(worn.path)) as connection:
        texts = [text for (text,) in connection.execute("SELECT file FROM project_state ORDER BY number")]
    projects = [read_project(text, "state") for text in texts]
    assert [each.boxes[0].length_nm // 1_000_000 for each in projects] == [240, 250, 260, 260, 260]
    assert [each.sled("bench").kept for each in projects] == [False, False, False, True, True]
    assert [each.sled("bench").bit_nm // 100_000 for each in projects] == [80, 80, 80, 80, 79]
    assert [write_project(each) for each in projects] == texts
