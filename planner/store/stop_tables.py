"""The tables of the small parts of a finished piece: stops, pins of loose shelves, the rail that it hangs on.

All of it is written anew with each save.
"""

from __future__ import annotations

from sqlalchemy import CheckConstraint, Text  # noqa: TID253 - like tables: all of the store is imported inside functions
from sqlmodel import Field  # noqa: TID253

from planner.lengths import Nm
from planner.store.kinds import BoxKind, Holds
from planner.store.rules import in_carcase, in_space, more_than_nothing, of_box, of_material, of_row
from planner.store.tables import NM, STRICT, PartRow


class DrawerStopsRow(PartRow, table=True):
    """The blocks that a drawer shuts against."""

    __tablename__ = "drawer_stops"
    __table_args__ = (
        *of_box(BoxKind.DRAWER),
        of_material(),
        *more_than_nothing("thickness_nm", "length_nm", "width_nm"),
        STRICT,
    )

    box_id: int = Field(primary_key=True)
    kind: str = Field(sa_type=Text)
    material_id: int
    thickness_nm: Nm = Field(sa_type=NM)
    length_nm: Nm = Field(sa_type=NM)
    width_nm: Nm = Field(sa_type=NM)


class DoorStopsRow(PartRow, table=True):
    """The strips that the doors before a space shut against."""

    __tablename__ = "door_stops"
    __table_args__ = (
        of_row("doors", "space_id"),
        of_material(),
        *more_than_nothing("thickness_nm", "width_nm"),
        STRICT,
    )

    space_id: int = Field(primary_key=True)
    material_id: int
    thickness_nm: Nm = Field(sa_type=NM)
    width_nm: Nm = Field(sa_type=NM)


class ShelfPinsRow(PartRow, table=True):
    """The rows of holes for the pins of the loose shelves in a space."""

    __tablename__ = "shelf_pins"
    __table_args__ = (
        *in_space(Holds.LOOSE_SHELVES),
        CheckConstraint("holes > 0 AND holes % 2 = 1", name="holes"),
        *more_than_nothing("hole_nm", "depth_nm", "apart_nm", "front_nm", "back_nm"),
        STRICT,
    )

    space_id: int = Field(primary_key=True)
    kind: str = Field(sa_type=Text)
    holes: int
    hole_nm: Nm = Field(sa_type=NM)
    depth_nm: Nm = Field(sa_type=NM)
    apart_nm: Nm = Field(sa_type=NM)
    front_nm: Nm = Field(sa_type=NM)
    back_nm: Nm = Field(sa_type=NM)


class HangingRailRow(PartRow, table=True):
    """The boards through which a carcase is screwed to the wall."""

    __tablename__ = "hanging_rail"
    __table_args__ = (
        in_carcase(),
        of_material(),
        *more_than_nothing("thickness_nm", "width_nm"),
        STRICT,
    )

    carcase_id: int = Field(primary_key=True)
    material_id: int
    thickness_nm: Nm = Field(sa_type=NM)
    width_nm: Nm = Field(sa_type=NM)
