"""The tables of timbers of the maker's own, and of the air that wood lives in; see ``tables.py``."""

from __future__ import annotations

from typing import Any, cast

from sqlalchemy import (  # noqa: TID253 - like tables: all of the store is imported inside functions
    REAL,
    CheckConstraint,
    Text,
    UniqueConstraint,
)
from sqlmodel import Field  # noqa: TID253

from planner.domain.climate import Where
from planner.domain.words import Hardness, MaterialKind
from planner.store.rules import more_than_nothing, not_empty, nothing_or_more, of_project, one_of, whole
from planner.store.tables import STRICT, PartRow

FIGURE = cast("type[Any]", REAL())
"""Column type of a published figure; STRICT tables know no FLOAT."""


class TimberRow(PartRow, table=True):
    """A timber of the maker's own in a project."""

    __tablename__ = "timber"
    __table_args__ = (
        of_project(),
        UniqueConstraint("project_id", "name", name="name"),
        *not_empty("name", "source"),
        *more_than_nothing("position", "tangential", "radial", "intersection_pct"),
        *more_than_nothing("shrinkage_tangential_pct", "shrinkage_radial_pct"),
        *more_than_nothing("specific_gravity", "stiffness_gpa", "strength_mpa"),
        one_of("kind", *MaterialKind),
        one_of("hardness", *Hardness),
        STRICT,
    )

    project_id: int = Field(primary_key=True)
    position: int = Field(primary_key=True)
    name: str = Field(sa_type=Text)
    kind: str = Field(sa_type=Text)
    hardness: str = Field(sa_type=Text)
    tangential: float = Field(sa_type=FIGURE)
    radial: float = Field(sa_type=FIGURE)
    intersection_pct: float = Field(sa_type=FIGURE)
    shrinkage_tangential_pct: float | None = Field(sa_type=FIGURE)
    shrinkage_radial_pct: float | None = Field(sa_type=FIGURE)
    specific_gravity: float = Field(sa_type=FIGURE)
    stiffness_gpa: float = Field(sa_type=FIGURE)
    strength_mpa: float = Field(sa_type=FIGURE)
    source: str = Field(sa_type=Text)
    how_movement: str = Field(sa_type=Text)
    how_shrinkage: str = Field(sa_type=Text)
    how_strength: str = Field(sa_type=Text)


class ClimateRow(PartRow, table=True):
    """The air, or the wood in it, of the room in its dry or damp season, or of the shop."""

    __tablename__ = "climate"
    __table_args__ = (
        of_project(),
        one_of("state_of", *Where),
        *nothing_or_more("moisture_hundredths", "humidity_hundredths"),
        whole("air", "humidity_hundredths", "temperature_milli_c"),
        CheckConstraint("moisture_hundredths IS NOT NULL OR humidity_hundredths IS NOT NULL", name="said"),
        STRICT,
    )

    project_id: int = Field(primary_key=True)
    state_of: str = Field(primary_key=True, sa_type=Text)
    moisture_hundredths: int | None
    humidity_hundredths: int | None
    temperature_milli_c: int | None
