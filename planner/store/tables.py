"""The tables of the store, and the rules that the database itself enforces.

Rows are flat and know nothing of geometry; what can be derived is not kept. Every row but the project's own carries
``project_id``, and foreign keys lead to rows of the same project. The words in the CHECKs come from the domain, so a
new word without a migration shows as a difference between these tables and a migrated store.
"""

from typing import Any, ClassVar, Final, cast

from sqlalchemy import BigInteger, CheckConstraint, ForeignKeyConstraint, Integer, MetaData, Text, UniqueConstraint
from sqlmodel import Field, SQLModel

from planner.domain.words import End, Hardness, HeightRule, JointKind, MaterialKind, SizesOver
from planner.lengths import Grid, Nm, Unit
from planner.store.kinds import BoxKind
from planner.store.rules import (
    NAMES,
    in_carcase,
    more_than_nothing,
    not_empty,
    nothing_or_more,
    of_board,
    of_box,
    of_material,
    of_project,
    one_of,
)

NM = cast("type[Any]", BigInteger().with_variant(Integer(), "sqlite"))
"""Column type of a length: 32 bits would end at 2.1 m, and STRICT tables know no BIGINT."""

STRICT: Final = {"sqlite_strict": True}
"""Makes SQLite refuse a text or a float where a whole number belongs."""


class Row(SQLModel):
    """Base of all rows."""

    metadata: ClassVar[MetaData] = NAMES


class PartRow(Row):
    """A row of a project, written anew with each save."""

    project_id: int


class KeptRow(PartRow):
    """A row of a project whose id outlives a save as long as its name or mark does."""

    id: int = Field(default=None, primary_key=True)


class ProjectRow(Row, table=True):
    """A project; ``version`` grows by one with each save."""

    __tablename__ = "project"
    __table_args__ = (
        UniqueConstraint("name", name="name"),
        *not_empty("name"),
        one_of("unit", *Unit),
        one_of("grid", *Grid),
        *nothing_or_more("proud_nm", "height_tolerance_nm"),
        *more_than_nothing("version"),
        STRICT,
    )

    id: int = Field(default=None, primary_key=True)
    version: int
    name: str = Field(sa_type=Text)
    unit: str = Field(sa_type=Text)
    grid: str = Field(sa_type=Text)
    proud_nm: Nm = Field(sa_type=NM)
    height_tolerance_nm: Nm = Field(sa_type=NM)


class MaterialRow(KeptRow, table=True):
    """A timber or a sheet good of a project."""

    __tablename__ = "material"
    __table_args__ = (
        of_project(),
        UniqueConstraint("project_id", "id", name="id"),
        UniqueConstraint("project_id", "name", name="name"),
        UniqueConstraint("project_id", "position", name="position"),
        *not_empty("name"),
        *more_than_nothing("position"),
        one_of("kind", *MaterialKind),
        one_of("hardness", *Hardness),
        STRICT,
    )

    position: int
    name: str = Field(sa_type=Text)
    kind: str = Field(sa_type=Text)
    hardness: str = Field(sa_type=Text)


class SledRow(KeptRow, table=True):
    """A sled of a project."""

    __tablename__ = "sled"
    __table_args__ = (
        of_project(),
        UniqueConstraint("project_id", "id", name="id"),
        UniqueConstraint("project_id", "name", name="name"),
        UniqueConstraint("project_id", "position", name="position"),
        *not_empty("name"),
        *more_than_nothing("position", "run_micro", "bit_nm"),
        *more_than_nothing("greatest_bit_height_nm", "greatest_width_nm", "greatest_upright_nm"),
        STRICT,
    )

    position: int
    name: str = Field(sa_type=Text)
    run_micro: int
    bit_nm: Nm = Field(sa_type=NM)
    greatest_bit_height_nm: Nm = Field(sa_type=NM)
    greatest_width_nm: Nm = Field(sa_type=NM)
    greatest_upright_nm: Nm = Field(sa_type=NM)


class BoxRow(KeptRow, table=True):
    """A ring of four boards, of whatever kind, and how its pins are spaced."""

    __tablename__ = "box"
    __table_args__ = (
        of_project(),
        ForeignKeyConstraint(["project_id", "sled_id"], ["sled.project_id", "sled.id"], name="sled"),
        UniqueConstraint("project_id", "id", name="id"),
        UniqueConstraint("project_id", "id", "kind", name="kind"),
        UniqueConstraint("project_id", "mark", name="mark"),
        UniqueConstraint("project_id", "position", name="position"),
        *not_empty("mark"),
        one_of("kind", *BoxKind),
        *more_than_nothing("position", "half_pin_nm", "pin_nm", "tails", "tail_nm", "greatest_tail_nm"),
        STRICT,
    )

    position: int
    mark: str = Field(sa_type=Text)
    kind: str = Field(sa_type=Text)
    sled_id: int
    half_pin_nm: Nm = Field(sa_type=NM)
    pin_nm: Nm = Field(sa_type=NM)
    tails: int | None
    tail_nm: Nm = Field(sa_type=NM)
    greatest_tail_nm: Nm = Field(sa_type=NM)


class BoardRow(KeptRow, table=True):
    """A board of a ring; ``position`` counts round the ring from 1."""

    __tablename__ = "board"
    __table_args__ = (
        ForeignKeyConstraint(["project_id", "box_id"], ["box.project_id", "box.id"], name="box", ondelete="CASCADE"),
        of_material(),
        UniqueConstraint("project_id", "box_id", "id", name="id"),
        UniqueConstraint("project_id", "box_id", "position", name="position"),
        UniqueConstraint("project_id", "mark", name="mark"),
        *not_empty("mark"),
        CheckConstraint(
            "position = 1 AND role IN ('front', 'top') OR position = 2 AND role = 'right' "
            "OR position = 3 AND role IN ('back', 'bottom') OR position = 4 AND role = 'left'",
            name="role",
        ),
        *more_than_nothing("thickness_nm"),
        STRICT,
    )

    box_id: int
    position: int
    mark: str = Field(sa_type=Text)
    role: str = Field(sa_type=Text)
    material_id: int
    thickness_nm: Nm = Field(sa_type=NM)


class CornerJointRow(KeptRow, table=True):
    """A corner joint: one board's end B and another's end A in the same ring; an end is in one joint at most."""

    __tablename__ = "corner_joint"
    __table_args__ = (
        of_board("board_at_b"),
        of_board("board_at_a"),
        UniqueConstraint("board_at_b_id", name="board_at_b"),
        UniqueConstraint("board_at_a_id", name="board_at_a"),
        UniqueConstraint("project_id", "mark", name="mark"),
        CheckConstraint("board_at_b_id <> board_at_a_id", name="two_boards"),
        *not_empty("mark"),
        one_of("pins_on", *End),
        one_of("kind", *JointKind),
        STRICT,
    )

    box_id: int
    mark: str = Field(sa_type=Text)
    board_at_b_id: int
    board_at_a_id: int
    pins_on: str = Field(sa_type=Text)
    kind: str = Field(sa_type=Text)


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
