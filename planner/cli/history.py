"""Commands that go back and forth between the states of a project."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime
from typing import TYPE_CHECKING, Annotated

import typer

from planner.cli import console
from planner.cli.settings import AnyProject, AsJson, store_of

if TYPE_CHECKING:
    from planner.app.history import History, Moved

Steps = Annotated[int, typer.Option("--steps", metavar="NUMBER", min=1, help="How many changes.")]


def undo(ctx: typer.Context, project: AnyProject = None, steps: Steps = 1) -> None:
    """Undo the last change of a stored project, or several.

    What was undone can be made again with "planner redo", until the project is changed anew: then it is dropped. The
    sleds that the store keeps stay as they were measured last.
    """
    from planner.app import history

    console.out(_moved(history.undo(project, store_of(ctx), steps=steps)))


def redo(ctx: typer.Context, project: AnyProject = None, steps: Steps = 1) -> None:
    """Make a change again that was undone, or several.

    A new change of the project after "planner undo" drops what was undone.
    """
    from planner.app import history

    console.out(_moved(history.redo(project, store_of(ctx), steps=steps)))


def history(ctx: typer.Context, project: AnyProject = None, json: AsJson = False) -> None:
    """List the states that a project had, and which it has now.

    Every change of a stored project is a state, and so is a kept sled of its measured anew. The last 200 are kept.
    """
    from dataclasses import asdict

    from planner.app.history import history as states_of
    from planner.present.views.history import history as table

    found = states_of(project, store_of(ctx))
    if json:
        console.out_json([asdict(state) for state in found.states])
    else:
        console.out_table(table(found.project, _rows(found)))


def _moved(moved: Moved) -> str:
    state = moved.state
    name = console.safe(moved.plan.project.name)
    reached = f"{name}: now as in state {state.number} of {moved.last} ({console.safe(state.why)})."
    return "\n".join((reached, *map(console.safe, moved.sleds)))


def _rows(found: History) -> Iterator[tuple[int, str, str, str]]:
    here = next((state.number for state in found.states if state.current), 0)
    for state in found.states:
        now = "now" if state.current else "undone" if state.number > here else ""
        yield state.number, now, _local(state.at), state.why


def _local(at: str) -> str:
    """A time of the store as the clock on the wall shows it."""
    return f"{datetime.fromisoformat(at).astimezone():%Y-%m-%d %H:%M}"
