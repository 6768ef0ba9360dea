"""Past states of projects, within the caller's session: each is the text of a project file, with its reason and time.

The store never looks into the texts, and never at a clock.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from planner.store.history_table import StateRow
from planner.store.projects import project_id

if TYPE_CHECKING:
    from sqlmodel import Session

MOST_STATES = 200
"""So many states of a project are kept; older ones are dropped. A day's work is some dozens of changes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """A state that a project had, or has.

    Attributes:
        number: counts up from 1; a number is given again only when the state that had it was undone and dropped.
        why: the change that led to it.
        at: when, as the caller said it.
        current: whether it is the present one.
    """

    number: int
    why: str
    at: str
    current: bool


def record(session: Session, name: str, *, file: str, why: str, at: str) -> None:
    """Make a state the present one of a project; states that were undone are dropped, and so are the oldest.

    Args:
        session: the caller's transaction.
        name: a project in the store.
        file: the whole project as the text of a project file.
        why: the change in a few words.
        at: when it was made.

    Raises:
        InputError: no such project.
    """
    from sqlmodel import col, delete

    owner = project_id(session, name)
    number = next((state.number for state in states(session, name) if state.current), 0) + 1
    of_owner = delete(StateRow).where(col(StateRow.project_id) == owner)
    connection = session.connection()
    connection.execute(of_owner.where(col(StateRow.number) >= number))
    connection.execute(of_owner.where(col(StateRow.number) <= number - MOST_STATES))
    _none_current(session, owner)
    session.add(StateRow(project_id=owner, number=number, why=why, at=at, file=file, current=1))
    session.flush()


def states(session: Session, name: str) -> tuple[State, ...]:
    """All states of a project, the oldest first; their texts are not read.

    Raises:
        InputError: no such project.
    """
    from sqlmodel import col, select

    told = select(StateRow.number, StateRow.why, StateRow.at, StateRow.current)
    of_owner = told.where(col(StateRow.project_id) == project_id(session, name)).order_by(col(StateRow.number))
    return tuple(
        State(number=number, why=why, at=at, current=bool(current))
        for number, why, at, current in session.exec(of_owner)
    )


def file_of(session: Session, name: str, number: int) -> str:
    """Text of the project file of one of a project's states.

    Raises:
        InputError: no such project.
    """
    from sqlmodel import col, select

    of_owner = select(StateRow.file).where(col(StateRow.project_id) == project_id(session, name))
    return session.exec(of_owner.where(col(StateRow.number) == number)).one()


def make_current(session: Session, name: str, number: int) -> None:
    """Call a state of a project the present one; the project itself is the caller's to save.

    Raises:
        InputError: no such project.
    """
    from sqlmodel import col, update

    owner = project_id(session, name)
    _none_current(session, owner)
    of_owner = update(StateRow).where(col(StateRow.project_id) == owner)
    session.connection().execute(of_owner.where(col(StateRow.number) == number).values(current=1))
    session.expire_all()


def _none_current(session: Session, owner: int) -> None:
    """Take the mark of the present state away; only one may have it at a time."""
    from sqlmodel import col, update

    of_owner = update(StateRow).where(col(StateRow.project_id) == owner)
    session.connection().execute(of_owner.values(current=0))
    session.expire_all()
