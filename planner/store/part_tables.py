"""The tables of what a ring is the frame of: plain boxes, carcases, drawers, and what is held in them."""

from __future__ import annotations

from sqlalchemy import (  # noqa: TID253 - like tables: all of the store is imported inside functions
    CheckConstraint,
    ForeignKeyConstraint,
    Text,
    UniqueConstraint,
)
from sqlmodel import Field  # noqa: TID253

from planner.domain.words import HeightRule, SizesOver
from planner.lengths import Nm
from planner.store.kinds import BoxKind
from planner.store.rules import (
    in_carcase,
    more_than_nothing,
    not_empty,
    nothing_or_more,
    of_box,
    of_material,
    one_of,
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


class CarcaseRow(PartRow, table=True):
    """What is said of a carcase beyond its ring."""

    __tablename__ = "carcase"
    __table_args__ = (
        *of_box(BoxKind.CARCASE),
        UniqueConstraint("project_id", "box_id", name="box"),
        *more_than_nothing("width_nm", "height_nm", "depth_nm"),
        STRICT,
    )

    box_id: int = Field(primary_key=True)
    kind: str = Field(sa_type=Text)
    title: str = Field(sa_type=Text)
    width_nm: Nm = Field(sa_type=NM)
    height_nm: Nm = Field(sa_type=NM)
    depth_nm: Nm = Field(sa_type=NM)


class ColumnRow(PartRow, table=True):
    """A column of openings in a carcase, counted from the left; its ratio is kept as a fraction."""

    __tablename__ = "carcase_column"
    __table_args__ = (
        in_carcase(),
        UniqueConstraint("project_id", "id", name="id"),
        UniqueConstraint("project_id", "carcase_id", "position", name="position"),
        *more_than_nothing("position", "width_nm", "step_nm", "ratio_top", "ratio_bottom"),
        one_of("heights", *HeightRule),
        CheckConstraint("(heights = 'step') = (step_nm IS NOT NULL)", name="step_said"),
        CheckConstraint("(heights = 'ratio') = (ratio_top IS NOT NULL)", name="ratio_said"),
        CheckConstraint("(ratio_top IS NULL) = (ratio_bottom IS NULL)", name="ratio_whole"),
        STRICT,
    )

    id: int = Field(default=None, primary_key=True)
    carcase_id: int
    position: int
    width_nm: Nm | None = Field(sa_type=NM)
    heights: str = Field(sa_type=Text)
    step_nm: Nm | None = Field(sa_type=NM)
    ratio_top: int | None
    ratio_bottom: int | None


class OpeningRow(PartRow, table=True):
    """An opening of a column, counted from the top."""

    __tablename__ = "opening"
    __table_args__ = (
        ForeignKeyConstraint(
            ["project_id", "column_id"],
            ["carcase_column.project_id", "carcase_column.id"],
            name="column",
            ondelete="CASCADE",
        ),
        UniqueConstraint("project_id", "id", name="id"),
        UniqueConstraint("project_id", "column_id", "position", name="position"),
        *more_than_nothing("position", "height_nm"),
        STRICT,
    )

    id: int = Field(default=None, primary_key=True)
    column_id: int
    position: int
    height_nm: Nm | None = Field(sa_type=NM)


class DrawerRow(PartRow, table=True):
    """What is said of a drawer beyond its ring, and the opening that it fills."""

    __tablename__ = "drawer"
    __table_args__ = (
        *of_box(BoxKind.DRAWER),
        ForeignKeyConstraint(
            ["project_id", "opening_id"], ["opening.project_id", "opening.id"], name="opening", ondelete="CASCADE"
        ),
        UniqueConstraint("opening_id", name="opening"),
        *nothing_or_more("side_clearance_nm", "top_clearance_nm", "back_clearance_nm"),
        STRICT,
    )

    box_id: int = Field(primary_key=True)
    kind: str = Field(sa_type=Text)
    opening_id: int
    side_clearance_nm: Nm = Field(sa_type=NM)
    top_clearance_nm: Nm = Field(sa_type=NM)
    back_clearance_nm: Nm = Field(sa_type=NM)


class BottomPanelRow(PartRow, table=True):
    """The bottom of a plain box or a drawer."""

    __tablename__ = "bottom_panel"
    __table_args__ = (
        *of_box(BoxKind.PLAIN, BoxKind.DRAWER),
        of_material(),
        *more_than_nothing("thickness_nm", "groove_depth_nm"),
        *nothing_or_more("up_nm", "play_nm"),
        STRICT,
    )

    box_id: int = Field(primary_key=True)
    kind: str = Field(sa_type=Text)
    material_id: int
    thickness_nm: Nm = Field(sa_type=NM)
    groove_depth_nm: Nm = Field(sa_type=NM)
    up_nm: Nm | None = Field(sa_type=NM)
    play_nm: Nm = Field(sa_type=NM)


class AppliedFrontRow(PartRow, table=True):
    """The applied front of a drawer."""

    __tablename__ = "applied_front"
    __table_args__ = (
        *of_box(BoxKind.DRAWER),
        of_material(),
        *more_than_nothing("thickness_nm"),
        *nothing_or_more("gap_nm"),
        STRICT,
    )

    box_id: int = Field(primary_key=True)
    kind: str = Field(sa_type=Text)
    material_id: int
    thickness_nm: Nm = Field(sa_type=NM)
    gap_nm: Nm = Field(sa_type=NM)


class RailsRow(PartRow, table=True):
    """The rails between the drawers of a carcase."""

    __tablename__ = "rails"
    __table_args__ = (
        in_carcase(),
        of_material(),
        *more_than_nothing("thickness_nm", "width_nm", "housing_depth_nm"),
        STRICT,
    )

    carcase_id: int = Field(primary_key=True)
    material_id: int
    thickness_nm: Nm = Field(sa_type=NM)
    width_nm: Nm = Field(sa_type=NM)
    housing_depth_nm: Nm = Field(sa_type=NM)


class PartitionsRow(PartRow, table=True):
    """The partitions between the columns of a carcase."""

    __tablename__ = "partitions"
    __table_args__ = (in_carcase(), of_material(), *more_than_nothing("thickness_nm", "housing_depth_nm"), STRICT)

    carcase_id: int = Field(primary_key=True)
    material_id: int
    thickness_nm: Nm = Field(sa_type=NM)
    housing_depth_nm: Nm = Field(sa_type=NM)


class BackPanelRow(PartRow, table=True):
    """The back of a carcase."""

    __tablename__ = "back_panel"
    __table_args__ = (
        in_carcase(),
        of_material(),
        *more_than_nothing("thickness_nm", "rabbet_depth_nm"),
        *nothing_or_more("play_nm"),
        STRICT,
    )

    carcase_id: int = Field(primary_key=True)
    material_id: int
    thickness_nm: Nm = Field(sa_type=NM)
    rabbet_depth_nm: Nm = Field(sa_type=NM)
    play_nm: Nm = Field(sa_type=NM)
