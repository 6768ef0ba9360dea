"""Record the states of projects as they are stored, each with its reason and time."""

from __future__ import annotations

from contextlib import suppress
from datetime import UTC, datetime
from typing import TYPE_CHECKING

from planner.domain.project import Project
from planner.errors import InputError
from planner.present.plain import visible

if TYPE_CHECKING:
    from planner.store.engine import Session

BEFORE = "as it was stored before"
"""Reason of a first state that nobody recorded when it came about."""


def record(session: Session, before: Project | None, project: Project, *, why: str) -> None:
    """Record the state of a project that has just been stored.

    Args:
        session: the transaction in which it was stored.
        before: what was stored until then; where no state of it was recorded, it becomes the first.
        project: what is stored now.
        why: the change in a few words.

    Raises:
        InputError: no file describes just this project.
    """
    from planner.intake.write_file import write_project
    from planner.store import history

    at = datetime.now(tz=UTC).isoformat(timespec="seconds")
    if before is not None and not history.states(session, project.name):
        with suppress(InputError):  # an older program may have stored what no file describes
            history.record(session, project.name, file=write_project(before), why=BEFORE, at=at)
    history.record(session, project.name, file=write_project(project), why=visible(why), at=at)
