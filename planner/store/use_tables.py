"""The tables that say how a carcase is used, and what lies on its boards.

All of it is written anew with each save.
"""

from __future__ import annotations

from sqlalchemy import Text, UniqueConstraint  # noqa: TID253 - like tables: all of the store is imported inside functions
from sqlmodel import Field  # noqa: TID253

from planner.domain.use import Borne, FixedTo, Floor, LoadKind, LoadUnit
from planner.store.rules import in_carcase, more_than_nothing, of_row, one_of, said_if
from planner.store.tables import STRICT, PartRow


class UseRow(PartRow, table=True):
    """How a carcase is used; none where nothing is said."""

    __tablename__ = "carcase_use"
    __table_args__ = (
        in_carcase(),
        UniqueConstraint("project_id", "carcase_id", name="carcase"),
        one_of("fixed_to", *FixedTo),
        one_of("floor", *Floor),
        *more_than_nothing("open_at_once", "sag"),
        STRICT,
    )

    carcase_id: int = Field(primary_key=True)
    fixed_to: str = Field(sa_type=Text)
    floor: str = Field(sa_type=Text)
    open_at_once: int | None
    sag: int | None


class CarriedLoadRow(PartRow, table=True):
    """What lies on the shelves, in the drawers or on the top of a carcase."""

    __tablename__ = "carried_load"
    __table_args__ = (
        of_row("carcase_use", "carcase_id"),
        one_of("borne_by", *Borne),
        one_of("kind", *LoadKind),
        one_of("unit", *LoadUnit),
        *more_than_nothing("thousandths"),
        *said_if("kind = 'own'", "thousandths", "unit"),
        STRICT,
    )

    carcase_id: int = Field(primary_key=True)
    borne_by: str = Field(sa_type=Text, primary_key=True)
    kind: str = Field(sa_type=Text)
    thousandths: int | None
    unit: str | None = Field(sa_type=Text)
