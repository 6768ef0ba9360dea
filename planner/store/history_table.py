"""The table of past states: what a project was after each change, as the text of a project file."""

from __future__ import annotations

from sqlalchemy import (  # noqa: TID253 - like tables: all of the store is imported inside functions
    CheckConstraint,
    Index,
    PrimaryKeyConstraint,
    Text,
    text,
)
from sqlmodel import Field  # noqa: TID253

from planner.store.rules import more_than_nothing, not_empty, of_project
from planner.store.tables import STRICT, PartRow


class StateRow(PartRow, table=True):
    """A state of a project, numbered in order; the present one is ``current``, those above it were undone."""

    __tablename__ = "project_state"
    __table_args__ = (
        PrimaryKeyConstraint("project_id", "number"),
        of_project(),
        Index("uq_project_state_current", "project_id", unique=True, sqlite_where=text("current = 1")),
        *more_than_nothing("number"),
        *not_empty("why", "at", "file"),
        CheckConstraint("current IN (0, 1)", name="current"),
        STRICT,
    )

    project_id: int = Field(primary_key=True)
    number: int = Field(primary_key=True)
    why: str = Field(sa_type=Text)
    at: str = Field(sa_type=Text)
    file: str = Field(sa_type=Text)
    current: int
