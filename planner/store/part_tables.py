"""The tables of boxes and drawers: what is said of them beyond their rings, and what is held in them.

All of it is written anew with each save.
"""

from __future__ import annotations

from sqlalchemy import (  # noqa: TID253 - like tables: all of the store is imported inside functions
    CheckConstraint,
    Text,
    UniqueConstraint,
)
from sqlmodel import Field  # noqa: TID253

from planner.domain.words import BottomGoes, Role, SizesOver, Stands
from planner.lengths import Nm
from planner.store.kinds import BoxKind, Holds, LidKind
from planner.store.rules import (
    in_space,
    more_than_nothing,
    not_empty,
    nothing_or_more,
    of_box,
    of_material,
    of_row,
    one_of,
    one_or_two,
    said_if,
    whole,
)
from planner.store.tables import NM, STRICT, PartRow


class PlainBoxRow(PartRow, table=True):
    """What is said of a plain box beyond its ring."""

    __tablename__ = "plain_box"
    __table_args__ = (
        *of_box(BoxKind.PLAIN),
        *not_empty("batch"),
        *more_than_nothing("length_nm", "width_nm", "height_nm"),
        one_of("sizes_over", *SizesOver),
        STRICT,
    )

    box_id: int = Field(primary_key=True)
    kind: str = Field(sa_type=Text)
    title: str = Field(sa_type=Text)
    batch: str = Field(sa_type=Text)
    length_nm: Nm = Field(sa_type=NM)
    width_nm: Nm = Field(sa_type=NM)
    height_nm: Nm = Field(sa_type=NM)
    sizes_over: str = Field(sa_type=Text)


class LidRow(PartRow, table=True):
    """The lid of a plain box; what closes a sawn one is its top panel, how a hinged one is made stands in ``made``."""

    __tablename__ = "lid"
    __table_args__ = (
        *of_box(BoxKind.PLAIN),
        UniqueConstraint("project_id", "box_id", name="box"),
        one_of("lid_kind", *LidKind),
        *nothing_or_more("front_nm", "sides_nm", "back_nm", "kerf_nm"),
        *more_than_nothing("height_nm"),
        *said_if("lid_kind = 'hinged'", "front_nm", "sides_nm", "back_nm"),
        *said_if("lid_kind = 'sawn'", "height_nm", "kerf_nm"),
        STRICT,
    )

    box_id: int = Field(primary_key=True)
    kind: str = Field(sa_type=Text)
    lid_kind: str = Field(sa_type=Text)
    front_nm: Nm | None = Field(sa_type=NM)
    sides_nm: Nm | None = Field(sa_type=NM)
    back_nm: Nm | None = Field(sa_type=NM)
    height_nm: Nm | None = Field(sa_type=NM)
    kerf_nm: Nm | None = Field(sa_type=NM)


class TillRow(PartRow, table=True):
    """The till of a plain box."""

    __tablename__ = "till"
    __table_args__ = (
        *of_box(BoxKind.PLAIN),
        of_material(),
        of_material("lid"),
        *more_than_nothing("thickness_nm", "width_nm", "depth_nm", "housing_depth_nm", "lid_thickness_nm"),
        whole("lid", "lid_material_id", "lid_thickness_nm"),
        STRICT,
    )

    box_id: int = Field(primary_key=True)
    kind: str = Field(sa_type=Text)
    material_id: int
    thickness_nm: Nm = Field(sa_type=NM)
    width_nm: Nm = Field(sa_type=NM)
    depth_nm: Nm = Field(sa_type=NM)
    housing_depth_nm: Nm = Field(sa_type=NM)
    lid_material_id: int | None
    lid_thickness_nm: Nm | None = Field(sa_type=NM)


class DrawerRow(PartRow, table=True):
    """What is said of a drawer beyond its ring, and the space that it fills."""

    __tablename__ = "drawer"
    __table_args__ = (
        *of_box(BoxKind.DRAWER),
        in_space(Holds.DRAWER)[1],
        UniqueConstraint("space_id", name="space"),
        *nothing_or_more("side_clearance_nm", "top_clearance_nm", "back_clearance_nm", "back_lower_nm"),
        STRICT,
    )

    box_id: int = Field(primary_key=True)
    kind: str = Field(sa_type=Text)
    space_id: int
    side_clearance_nm: Nm = Field(sa_type=NM)
    top_clearance_nm: Nm = Field(sa_type=NM)
    back_clearance_nm: Nm = Field(sa_type=NM)
    back_lower_nm: Nm = Field(sa_type=NM)


class BottomPanelRow(PartRow, table=True):
    """The bottom of a plain box or a drawer, or the panel that closes a plain box above, until its lid is sawn off."""

    __tablename__ = "bottom_panel"
    __table_args__ = (
        *of_box(BoxKind.PLAIN, BoxKind.DRAWER),
        UniqueConstraint("project_id", "box_id", "role", name="role"),
        of_material(),
        one_of("role", Role.BOTTOM_PANEL, Role.TOP_PANEL),
        CheckConstraint("role = 'bottom panel' OR kind = 'plain box'", name="top_of_box"),
        *more_than_nothing("thickness_nm", "groove_depth_nm"),
        *nothing_or_more("up_nm", "play_nm"),
        one_of("goes", *BottomGoes),
        *more_than_nothing("screw_slot_nm"),
        CheckConstraint("screw_slot_nm IS NULL OR goes = 'slid in'", name="slot_slid_in"),
        STRICT,
    )

    box_id: int = Field(primary_key=True)
    role: str = Field(sa_type=Text, primary_key=True)
    kind: str = Field(sa_type=Text)
    material_id: int
    thickness_nm: Nm = Field(sa_type=NM)
    groove_depth_nm: Nm = Field(sa_type=NM)
    up_nm: Nm | None = Field(sa_type=NM)
    play_nm: Nm = Field(sa_type=NM)
    goes: str = Field(sa_type=Text)
    screw_slot_nm: Nm | None = Field(sa_type=NM)


class SlipsRow(PartRow, table=True):
    """The slips that hold a bottom."""

    __tablename__ = "slips"
    __table_args__ = (
        of_row("bottom_panel", "box_id", "role"),
        of_material(),
        *more_than_nothing("thickness_nm", "height_nm"),
        STRICT,
    )

    box_id: int = Field(primary_key=True)
    role: str = Field(sa_type=Text, primary_key=True)
    material_id: int
    thickness_nm: Nm = Field(sa_type=NM)
    height_nm: Nm = Field(sa_type=NM)


class AppliedFrontRow(PartRow, table=True):
    """The applied front of a drawer."""

    __tablename__ = "applied_front"
    __table_args__ = (
        *of_box(BoxKind.DRAWER),
        of_material(),
        *more_than_nothing("thickness_nm"),
        *nothing_or_more("gap_nm", "overlay_nm"),
        one_of("stands", *Stands),
        STRICT,
    )

    box_id: int = Field(primary_key=True)
    kind: str = Field(sa_type=Text)
    material_id: int
    thickness_nm: Nm = Field(sa_type=NM)
    gap_nm: Nm = Field(sa_type=NM)
    stands: str = Field(sa_type=Text)
    overlay_nm: Nm = Field(sa_type=NM)


class HandlesRow(PartRow, table=True):
    """The handles of a drawer."""

    __tablename__ = "handles"
    __table_args__ = (
        *of_box(BoxKind.DRAWER),
        *one_or_two("count", "holes"),
        *nothing_or_more("apart_nm"),
        *more_than_nothing("hole_nm"),
        STRICT,
    )

    box_id: int = Field(primary_key=True)
    kind: str = Field(sa_type=Text)
    count: int
    holes: int
    apart_nm: Nm = Field(sa_type=NM)
    hole_nm: Nm = Field(sa_type=NM)
