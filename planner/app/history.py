"""Go back and forth between the states that a project had."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from planner import pipeline
from planner.app.projects import named
from planner.app.store_place import StorePlace
from planner.domain.plan import Plan
from planner.domain.project import Project
from planner.domain.sled import Sled
from planner.errors import InputError, PlanError, Problem

if TYPE_CHECKING:
    from planner.store.history import State


@dataclass(frozen=True, slots=True, kw_only=True)
class History:
    """The states of a project, the oldest first."""

    project: str
    states: tuple[State, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """A project that was brought to another of its states.

    Attributes:
        plan: of the project as it is now.
        state: the one it has now.
        last: number of the last state that can be gone to.
        sleds: what did not come back, since the store's sleds stay as they were measured last.
    """

    plan: Plan
    state: State
    last: int
    sleds: tuple[str, ...]


def history(name: str | None, store: StorePlace) -> History:
    """The states of a stored project; without a name, of the only one there is.

    Raises:
        InputError: no such project.
    """
    from planner.store import engine, history

    project = named(name, store)
    with engine.reading(store.path, tell=store.tell) as session:
        return History(project=project, states=history.states(session, project))


def undo(name: str | None, store: StorePlace, *, steps: int = 1) -> Moved:
    """Bring a stored project back to the state that it had so many changes ago.

    Raises:
        InputError: no such project, or not so many changes.
        PlanError: no plan can be built any more from that state.
        StoreError: the store can't be written.
        In each case the store is as it was.
    """
    return _moved(name, store, -steps)


def redo(name: str | None, store: StorePlace, *, steps: int = 1) -> Moved:
    """Make so many changes again that were undone; otherwise as ``undo``."""
    return _moved(name, store, steps)


def _moved(name: str | None, store: StorePlace, steps: int) -> Moved:
    from planner.intake.project_file import read_project
    from planner.store import engine, history, projects, sleds

    project_name = named(name, store)
    with engine.writing(store.path, tell=store.tell) as session:
        states = history.states(session, project_name)
        state = _state_at(states, steps, project_name)
        where = f"state {state.number} of {project_name}"
        then = read_project(history.file_of(session, project_name, state.number), where)
        kept = sleds.kept_sleds(session)
        now = replace(then, sleds=tuple(kept.get(sled.name, sled) if sled.kept else sled for sled in then.sleds))
        plan = _planned(now, where)
        projects.save_project(session, now)
        history.make_current(session, project_name, state.number)
    return Moved(
        plan=plan,
        state=replace(state, current=True),
        last=states[-1].number,
        sleds=tuple(_as_measured_last(then.sleds, now)),
    )


def _state_at(states: Sequence[State], steps: int, name: str) -> State:
    """The state so many steps on from the present one; back, if they are negative."""
    here = next((place for place, state in enumerate(states) if state.current), 0)
    if states and 0 <= here + steps < len(states):
        return states[here + steps]
    there_are, done = (here, "undone") if steps < 0 else (max(len(states) - 1 - here, 0), "made again")
    changes = f"only {there_are} can be" if there_are else "nothing is left to be"
    remedy = f"Look at its states: planner history {name!r}"
    raise InputError([Problem(where=f"project {name!r}", what=f"{changes} {done}.", remedy=remedy)])


def _planned(project: Project, where: str) -> Plan:
    try:
        return pipeline.plan(project)
    except PlanError as error:
        raise PlanError(replace(each, where=f"{where}, {each.where}") for each in error.problems) from error


def _as_measured_last(then: Sequence[Sled], now: Project) -> Iterator[str]:
    from planner.intake.kept_sleds import differences

    for sled in then:
        pairs = differences(now.sled(sled.name), sled, now.unit)
        if pairs:
            said = "; ".join(f"{key} {is_now}, then {was}" for key, (is_now, was) in pairs.items())
            yield f"Sled {sled.name} stays as it was measured last: {said}."
