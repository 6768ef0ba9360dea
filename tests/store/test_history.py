"""Past states of projects, compared with a plain list."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.errors import InputError
from planner.store.engine import reading, writing
from planner.store.history import MOST_STATES, State, file_of, make_current, record, states
from planner.store.projects import forget_project
from tests.store.examples import ask, batch_of, cabinet, is_whole, remember, save

NAME = "hall cabinet"


def told(path: Path, name: str = NAME) -> tuple[State, ...]:
    with reading(path) as session:
        return states(session, name)


def marks(path: Path) -> list[tuple[int, str, bool]]:
    return [(state.number, state.why, state.current) for state in told(path)]


def test_a_project_just_saved_has_no_history(stored: Path) -> None:
    assert told(stored) == ()


def test_states_are_numbered_and_the_last_is_the_present_one(stored: Path) -> None:
    remember(stored, NAME, "read", "wider", "deeper")
    assert told(stored) == (
        State(number=1, why="read", at="2031-05-01T08:00:00+00:00", current=False),
        State(number=2, why="wider", at="2031-05-02T08:00:00+00:00", current=False),
        State(number=3, why="deeper", at="2031-05-03T08:00:00+00:00", current=True),
    )
    with reading(stored) as session:
        assert [file_of(session, NAME, number) for number in (1, 3)] == [f"file {n} of {NAME}" for n in (1, 3)]


def test_a_change_after_going_back_drops_what_was_undone(stored: Path) -> None:
    remember(stored, NAME, "read", "wider", "deeper")
    with writing(stored) as session:
        make_current(session, NAME, 1)
    assert marks(stored) == [(1, "read", True), (2, "wider", False), (3, "deeper", False)]
    with writing(stored) as session:
        record(session, NAME, file="other", why="taller", at="later")
    assert marks(stored) == [(1, "read", False), (2, "taller", True)]
    with reading(stored) as session:
        assert file_of(session, NAME, 2) == "other"


def test_only_the_newest_states_are_kept(stored: Path) -> None:
    with writing(stored) as session:
        for number in range(1, MOST_STATES + 8):
            record(session, NAME, file=f"file {number}", why=f"change {number}", at="then")
    numbers = [state.number for state in told(stored)]
    assert numbers == list(range(8, MOST_STATES + 8))
    with reading(stored) as session:
        assert file_of(session, NAME, 8) == "file 8"


def test_each_project_has_a_history_of_its_own_and_it_goes_with_the_project(stored: Path) -> None:
    save(stored, batch_of(1))
    remember(stored, NAME, "read", "wider")
    remember(stored, batch_of(1).name, "begun")
    with writing(stored) as session:
        make_current(session, NAME, 1)
    assert [state.current for state in told(stored, batch_of(1).name)] == [True]
    with writing(stored) as session:
        forget_project(session, NAME)
    assert ask(stored, "SELECT why FROM project_state") == [("begun",)]


def test_saving_a_project_leaves_its_history_alone(stored: Path) -> None:
    remember(stored, NAME, "read", "wider")
    before = told(stored)
    save(stored, cabinet(drawers=1))
    assert told(stored) == before


def test_an_unknown_project_has_no_history(stored: Path) -> None:
    with pytest.raises(InputError, match="Did you mean 'hall cabinet'"):
        told(stored, "hall cabinte")


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("shared") / "planner.db"
    save(path, batch_of(1, NAME))
    return path


@given(st.lists(st.just("change") | st.integers(-3, 3), max_size=25))
@settings(max_examples=60)
def test_any_changes_and_steps_come_out_as_on_a_list(shared: Path, doings: list[str | int]) -> None:
    """The list: texts so far, and a finger on one of them; a change cuts off what lies behind the finger."""
    pile, finger = list[str](), -1
    with writing(shared) as session:
        for count, doing in enumerate(doings):
            if isinstance(doing, str):
                pile, finger = [*pile[: finger + 1], f"text {count}"], finger + 1
                record(session, NAME, file=f"text {count}", why=doing, at="then")
            elif 0 <= finger + doing < len(pile):
                finger += doing
                make_current(session, NAME, states(session, NAME)[finger].number)
            found = states(session, NAME)
            assert [file_of(session, NAME, state.number) for state in found] == pile
            assert [place for place, state in enumerate(found) if state.current] == ([finger] if pile else [])
        session.rollback()
    assert is_whole(shared)
