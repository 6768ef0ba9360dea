"""The tables of carcases: the spaces within, what divides and fills them, what closes and carries the carcase.

All of it is written anew with each save.
"""

from __future__ import annotations

from sqlalchemy import (  # noqa: TID253 - like tables: all of the store is imported inside functions
    CheckConstraint,
    ForeignKeyConstraint,
    Index,
    Text,
    UniqueConstraint,
    text,
)
from sqlmodel import Field  # noqa: TID253

from planner.domain.words import DividerJoint, DividerKind, HeightRule, RunnerKind, Side, SizesOver, Stands, Way
from planner.lengths import Nm
from planner.store.kinds import BackKind, BoxKind, Holds, MadeAs
from planner.store.rules import (
    in_carcase,
    in_space,
    more_than_nothing,
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


class CarcaseRow(PartRow, table=True):
    """What is said of a carcase beyond its ring."""

    __tablename__ = "carcase"
    __table_args__ = (
        *of_box(BoxKind.CARCASE),
        UniqueConstraint("project_id", "box_id", name="box"),
        *more_than_nothing("width_nm", "height_nm", "depth_nm"),
        one_of("sizes_over", *SizesOver),
        STRICT,
    )

    box_id: int = Field(primary_key=True)
    kind: str = Field(sa_type=Text)
    title: str = Field(sa_type=Text)
    width_nm: Nm = Field(sa_type=NM)
    height_nm: Nm = Field(sa_type=NM)
    depth_nm: Nm = Field(sa_type=NM)
    sizes_over: str = Field(sa_type=Text)


# --- the spaces within -------------------------------------------------------------------------------------


class SpaceRow(PartRow, table=True):
    """A space of a carcase: the whole inside, or a part of the space that is its parent, counted from left or top.

    Shares and ratios are kept as fractions.
    """

    __tablename__ = "space"
    __table_args__ = (
        in_carcase(),
        ForeignKeyConstraint(
            ["project_id", "carcase_id", "parent_id"],
            ["space.project_id", "space.carcase_id", "space.id"],
            name="parent",
            ondelete="CASCADE",
        ),
        UniqueConstraint("project_id", "id", name="id"),
        UniqueConstraint("project_id", "carcase_id", "id", name="carcase"),
        UniqueConstraint("project_id", "id", "holds", name="holds"),
        UniqueConstraint("parent_id", "position", name="position"),
        Index("uq_space_root", "carcase_id", unique=True, sqlite_where=text("parent_id IS NULL")),
        CheckConstraint("parent_id <> id", name="parent"),
        *more_than_nothing("position", "size_nm", "share_top", "share_bottom"),
        one_of("holds", *Holds),
        *said_if("holds = 'division'", "way", "divider", "rule"),
        one_of("way", *Way),
        one_of("divider", *DividerKind),
        one_of("rule", *HeightRule),
        *more_than_nothing("step_nm", "ratio_top", "ratio_bottom"),
        *said_if("rule IS 'step'", "step_nm"),
        *said_if("rule IS 'ratio'", "ratio_top"),
        whole("ratio", "ratio_top", "ratio_bottom"),
        STRICT,
    )

    id: int = Field(default=None, primary_key=True)
    carcase_id: int
    parent_id: int | None
    position: int
    size_nm: Nm | None = Field(sa_type=NM)
    share_top: int
    share_bottom: int
    holds: str = Field(sa_type=Text)
    way: str | None = Field(sa_type=Text)
    divider: str | None = Field(sa_type=Text)
    rule: str | None = Field(sa_type=Text)
    step_nm: Nm | None = Field(sa_type=NM)
    ratio_top: int | None
    ratio_bottom: int | None


class LooseShelvesRow(PartRow, table=True):
    """The loose shelves in a space."""

    __tablename__ = "loose_shelves"
    __table_args__ = (
        *in_space(Holds.LOOSE_SHELVES),
        of_material(),
        *more_than_nothing("count", "thickness_nm"),
        *nothing_or_more("play_nm", "setback_nm"),
        STRICT,
    )

    space_id: int = Field(primary_key=True)
    kind: str = Field(sa_type=Text)
    count: int
    material_id: int
    thickness_nm: Nm = Field(sa_type=NM)
    play_nm: Nm = Field(sa_type=NM)
    setback_nm: Nm = Field(sa_type=NM)


class DoorsRow(PartRow, table=True):
    """The doors before a space, whatever it holds; how they are made stands in ``made``."""

    __tablename__ = "doors"
    __table_args__ = (
        ForeignKeyConstraint(
            ["project_id", "space_id"], ["space.project_id", "space.id"], name="space", ondelete="CASCADE"
        ),
        UniqueConstraint("project_id", "space_id", name="space"),
        *one_or_two("leaves"),
        one_of("hinged", *Side),
        one_of("stands", *Stands),
        *nothing_or_more("gap_nm", "overlay_nm"),
        STRICT,
    )

    space_id: int = Field(primary_key=True)
    leaves: int
    hinged: str = Field(sa_type=Text)
    stands: str = Field(sa_type=Text)
    gap_nm: Nm = Field(sa_type=NM)
    overlay_nm: Nm = Field(sa_type=NM)


# --- what divides it, and what drawers run on --------------------------------------------------------------


class RailsRow(PartRow, table=True):
    """The rails between the tiers of a carcase."""

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


class DividersRow(PartRow, table=True):
    """The partitions or the fixed shelves of a carcase."""

    __tablename__ = "dividers"
    __table_args__ = (
        in_carcase(),
        of_material(),
        one_of("kind", DividerKind.PARTITION, DividerKind.SHELF),
        one_of("joint", *DividerJoint),
        *more_than_nothing("thickness_nm"),
        *nothing_or_more("housing_depth_nm", "stop_nm", "tenons"),
        STRICT,
    )

    carcase_id: int = Field(primary_key=True)
    kind: str = Field(sa_type=Text, primary_key=True)
    material_id: int
    thickness_nm: Nm = Field(sa_type=NM)
    joint: str = Field(sa_type=Text)
    housing_depth_nm: Nm = Field(sa_type=NM)
    stop_nm: Nm = Field(sa_type=NM)
    tenons: int


class FramesRow(PartRow, table=True):
    """The web frames of a carcase."""

    __tablename__ = "frames"
    __table_args__ = (
        in_carcase(),
        of_material(),
        of_material("dust_panel"),
        *more_than_nothing("thickness_nm", "rail_nm", "runner_nm", "housing_depth_nm", "groove_nm", "tenon_nm"),
        *more_than_nothing("dust_panel_thickness_nm"),
        whole("dust_panel", "dust_panel_material_id", "dust_panel_thickness_nm"),
        *nothing_or_more("play_nm"),
        STRICT,
    )

    carcase_id: int = Field(primary_key=True)
    material_id: int
    thickness_nm: Nm = Field(sa_type=NM)
    rail_nm: Nm = Field(sa_type=NM)
    runner_nm: Nm = Field(sa_type=NM)
    housing_depth_nm: Nm = Field(sa_type=NM)
    groove_nm: Nm = Field(sa_type=NM)
    tenon_nm: Nm = Field(sa_type=NM)
    dust_panel_material_id: int | None
    dust_panel_thickness_nm: Nm | None = Field(sa_type=NM)
    play_nm: Nm = Field(sa_type=NM)


class RunnersRow(PartRow, table=True):
    """What the drawers of a carcase run on where no board is below them; bought slides are of no material."""

    __tablename__ = "runners"
    __table_args__ = (
        in_carcase(),
        of_material(),
        one_of("kind", *RunnerKind),
        *said_if("kind <> 'slides'", "material_id", "thickness_nm"),
        *more_than_nothing("thickness_nm"),
        *nothing_or_more("width_nm"),
        CheckConstraint("kickers IN (0, 1)", name="kickers"),
        STRICT,
    )

    carcase_id: int = Field(primary_key=True)
    kind: str = Field(sa_type=Text)
    material_id: int | None
    thickness_nm: Nm | None = Field(sa_type=NM)
    width_nm: Nm = Field(sa_type=NM)
    kickers: int


# --- what closes it, carries it and lies on it -------------------------------------------------------------


class BackRow(PartRow, table=True):
    """The back of a carcase; how a panelled one is made stands in ``made``."""

    __tablename__ = "back"
    __table_args__ = (
        in_carcase(),
        UniqueConstraint("project_id", "carcase_id", name="carcase"),
        of_material(),
        one_of("kind", *BackKind),
        *more_than_nothing("rabbet_depth_nm", "thickness_nm", "board_nm", "lap_nm"),
        *nothing_or_more("play_nm", "gap_nm"),
        *said_if("kind <> 'panelled'", "material_id", "thickness_nm"),
        *said_if("kind = 'boards'", "board_nm", "lap_nm", "gap_nm"),
        STRICT,
    )

    carcase_id: int = Field(primary_key=True)
    kind: str = Field(sa_type=Text)
    rabbet_depth_nm: Nm = Field(sa_type=NM)
    play_nm: Nm = Field(sa_type=NM)
    material_id: int | None
    thickness_nm: Nm | None = Field(sa_type=NM)
    board_nm: Nm | None = Field(sa_type=NM)
    lap_nm: Nm | None = Field(sa_type=NM)
    gap_nm: Nm | None = Field(sa_type=NM)


class PlinthRow(PartRow, table=True):
    """What is said of a plinth beyond its ring, and the carcase that it carries."""

    __tablename__ = "plinth"
    __table_args__ = (
        *of_box(BoxKind.PLINTH),
        in_carcase(),
        UniqueConstraint("carcase_id", name="carcase"),
        *more_than_nothing("height_nm", "foot_nm"),
        *nothing_or_more("rise_nm"),
        STRICT,
    )

    box_id: int = Field(primary_key=True)
    kind: str = Field(sa_type=Text)
    carcase_id: int
    height_nm: Nm = Field(sa_type=NM)
    front_nm: Nm = Field(sa_type=NM)
    sides_nm: Nm = Field(sa_type=NM)
    back_nm: Nm = Field(sa_type=NM)
    foot_nm: Nm | None = Field(sa_type=NM)
    rise_nm: Nm = Field(sa_type=NM)


class StandRow(PartRow, table=True):
    """The stand that carries a carcase."""

    __tablename__ = "stand"
    __table_args__ = (
        in_carcase(),
        of_material("leg"),
        of_material("apron"),
        *more_than_nothing("leg_thickness_nm", "apron_thickness_nm", "height_nm", "apron_nm", "tenon_nm"),
        *nothing_or_more("setback_nm"),
        STRICT,
    )

    carcase_id: int = Field(primary_key=True)
    leg_material_id: int
    leg_thickness_nm: Nm = Field(sa_type=NM)
    apron_material_id: int
    apron_thickness_nm: Nm = Field(sa_type=NM)
    height_nm: Nm = Field(sa_type=NM)
    apron_nm: Nm = Field(sa_type=NM)
    tenon_nm: Nm = Field(sa_type=NM)
    front_nm: Nm = Field(sa_type=NM)
    sides_nm: Nm = Field(sa_type=NM)
    back_nm: Nm = Field(sa_type=NM)
    setback_nm: Nm = Field(sa_type=NM)


class SeparateTopRow(PartRow, table=True):
    """The separate top of a carcase."""

    __tablename__ = "separate_top"
    __table_args__ = (
        in_carcase(),
        of_material(),
        *more_than_nothing("thickness_nm"),
        *nothing_or_more("front_nm", "sides_nm", "back_nm"),
        STRICT,
    )

    carcase_id: int = Field(primary_key=True)
    material_id: int
    thickness_nm: Nm = Field(sa_type=NM)
    front_nm: Nm = Field(sa_type=NM)
    sides_nm: Nm = Field(sa_type=NM)
    back_nm: Nm = Field(sa_type=NM)


# --- doors, lids and backs ---------------------------------------------------------------------------------

_OF_A_FRAME = ("stile_nm", "rail_nm", "groove_nm", "tenon_nm", "panel_thickness_nm", "wide", "high")


class MadeRow(PartRow, table=True):
    """How the doors before a space, the lid of a box or the back of a carcase are made."""

    __tablename__ = "made"
    __table_args__ = (
        of_row("doors", "space_id"),
        of_row("lid", "box_id"),
        of_row("back", "carcase_id"),
        UniqueConstraint("space_id", name="space"),
        UniqueConstraint("box_id", name="box"),
        UniqueConstraint("carcase_id", name="carcase"),
        CheckConstraint("(space_id IS NOT NULL) + (box_id IS NOT NULL) + (carcase_id IS NOT NULL) = 1", name="owner"),
        one_of("kind", *MadeAs),
        CheckConstraint("carcase_id IS NULL OR kind = 'panelled'", name="back"),
        of_material(),
        of_material("panel"),
        *more_than_nothing("thickness_nm", *_OF_A_FRAME),
        *nothing_or_more("play_nm"),
        *said_if("kind = 'panelled'", *_OF_A_FRAME, "panel_material_id", "play_nm"),
        STRICT,
    )

    id: int = Field(default=None, primary_key=True)
    space_id: int | None
    box_id: int | None
    carcase_id: int | None
    kind: str = Field(sa_type=Text)
    material_id: int
    thickness_nm: Nm = Field(sa_type=NM)
    stile_nm: Nm | None = Field(sa_type=NM)
    rail_nm: Nm | None = Field(sa_type=NM)
    groove_nm: Nm | None = Field(sa_type=NM)
    tenon_nm: Nm | None = Field(sa_type=NM)
    panel_material_id: int | None
    panel_thickness_nm: Nm | None = Field(sa_type=NM)
    play_nm: Nm | None = Field(sa_type=NM)
    wide: int | None
    high: int | None
