"""The tables of the store, and the rules that the database itself enforces: the project, its rings and their corners.

Rows are flat and know nothing of geometry; what can be derived is not kept. Every row but the project's own carries
``project_id``, and foreign keys lead to rows of the same project. The words in the CHECKs come from the domain, so a
new word without a migration shows as a difference between these tables and a migrated store. What a ring is the frame
of stands in ``part_tables.py``, what a carcase is made up of in ``carcase_tables.py``, the small parts that finish
either in ``stop_tables.py``.
"""

from typing import Any, ClassVar, Final, cast

from sqlalchemy import (
    BigInteger,
    CheckConstraint,
    ForeignKeyConstraint,
    Index,
    Integer,
    MetaData,
    Text,
    UniqueConstraint,
    text,
)
from sqlmodel import Field, SQLModel

from planner.domain.words import DrawersCut, EdgeName, End, Hardness, JointKind, Level, MaterialKind, Sawn, Spread
from planner.lengths import Grid, Nm, Unit
from planner.store.kinds import BoxKind
from planner.store.rules import (
    NAMES,
    measured_sled,
    more_than_nothing,
    not_empty,
    nothing_or_more,
    of_board,
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
        one_of("drawers_cut", *DrawersCut),
        *nothing_or_more("proud_nm", "height_tolerance_nm"),
        *nothing_or_more("sled_change_s", "height_change_s", "fence_swap_s", "handling_s", "turning_s", "pass_s"),
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
    sled_change_s: int
    height_change_s: int
    fence_swap_s: int
    handling_s: int
    turning_s: int
    pass_s: int
    drawers_cut: str = Field(sa_type=Text)


class AcknowledgedRow(PartRow, table=True):
    """A finding that the maker has answered for; its marks stand one to a line."""

    __tablename__ = "acknowledged"
    __table_args__ = (
        of_project(),
        UniqueConstraint("project_id", "code", "marks", name="finding"),
        *not_empty("code", "why"),
        *more_than_nothing("position"),
        one_of("level", *Level),
        STRICT,
    )

    project_id: int = Field(primary_key=True)
    position: int = Field(primary_key=True)
    code: str = Field(sa_type=Text)
    marks: str = Field(sa_type=Text)
    level: str = Field(sa_type=Text)
    why: str = Field(sa_type=Text)


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
        *not_empty("species"),
        one_of("sawn", *Sawn),
        STRICT,
    )

    position: int
    name: str = Field(sa_type=Text)
    kind: str = Field(sa_type=Text)
    hardness: str = Field(sa_type=Text)
    species: str | None = Field(sa_type=Text)
    sawn: str | None = Field(sa_type=Text)


class KeptSledRow(Row, table=True):
    """A sled of the store, which projects share."""

    __tablename__ = "kept_sled"
    __table_args__ = (
        UniqueConstraint("name", name="name"),
        UniqueConstraint("id", "name", name="id"),
        *not_empty("name"),
        *measured_sled(),
        STRICT,
    )

    id: int = Field(default=None, primary_key=True)
    name: str = Field(sa_type=Text)
    run_micro: int
    bit_nm: Nm = Field(sa_type=NM)
    greatest_bit_height_nm: Nm = Field(sa_type=NM)
    greatest_width_nm: Nm = Field(sa_type=NM)
    greatest_upright_nm: Nm = Field(sa_type=NM)
    slot_nm: Nm | None = Field(sa_type=NM)
    greatest_depth_soft_nm: Nm | None = Field(sa_type=NM)
    greatest_depth_hard_nm: Nm | None = Field(sa_type=NM)


class SledRow(KeptRow, table=True):
    """A sled of a project; its figures are a copy where it is one of the store's sleds."""

    __tablename__ = "sled"
    __table_args__ = (
        of_project(),
        UniqueConstraint("project_id", "id", name="id"),
        UniqueConstraint("project_id", "name", name="name"),
        UniqueConstraint("project_id", "position", name="position"),
        ForeignKeyConstraint(["kept_sled_id", "name"], ["kept_sled.id", "kept_sled.name"], name="kept_sled"),
        *not_empty("name"),
        *more_than_nothing("position"),
        *measured_sled(),
        STRICT,
    )

    position: int
    name: str = Field(sa_type=Text)
    run_micro: int
    bit_nm: Nm = Field(sa_type=NM)
    greatest_bit_height_nm: Nm = Field(sa_type=NM)
    greatest_width_nm: Nm = Field(sa_type=NM)
    greatest_upright_nm: Nm = Field(sa_type=NM)
    slot_nm: Nm | None = Field(sa_type=NM)
    greatest_depth_soft_nm: Nm | None = Field(sa_type=NM)
    greatest_depth_hard_nm: Nm | None = Field(sa_type=NM)
    kept_sled_id: int | None


class BoxRow(KeptRow, table=True):
    """A ring of four boards, of whatever kind."""

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
        *more_than_nothing("position"),
        STRICT,
    )

    position: int
    mark: str = Field(sa_type=Text)
    kind: str = Field(sa_type=Text)
    sled_id: int


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
        UniqueConstraint("project_id", "box_id", "id", name="id"),
        UniqueConstraint("board_at_b_id", name="board_at_b"),
        UniqueConstraint("board_at_a_id", name="board_at_a"),
        UniqueConstraint("project_id", "mark", name="mark"),
        CheckConstraint("board_at_b_id <> board_at_a_id", name="two_boards"),
        *not_empty("mark"),
        one_of("pins_on", *End),
        one_of("kind", *JointKind),
        *more_than_nothing("lap_nm"),
        CheckConstraint("(kind IN ('half-blind dovetail', 'rabbet')) = (lap_nm IS NOT NULL)", name="lap_said"),
        STRICT,
    )

    box_id: int
    mark: str = Field(sa_type=Text)
    board_at_b_id: int
    board_at_a_id: int
    pins_on: str = Field(sa_type=Text)
    kind: str = Field(sa_type=Text)
    lap_nm: Nm | None = Field(sa_type=NM)


class SpacingRow(PartRow, table=True):
    """How pins are spaced: along all corners of a ring, or along one joint of it that has a spacing of its own."""

    __tablename__ = "spacing"
    __table_args__ = (
        ForeignKeyConstraint(["project_id", "box_id"], ["box.project_id", "box.id"], name="box", ondelete="CASCADE"),
        ForeignKeyConstraint(
            ["project_id", "box_id", "joint_id"],
            ["corner_joint.project_id", "corner_joint.box_id", "corner_joint.id"],
            name="joint",
            ondelete="CASCADE",
        ),
        UniqueConstraint("project_id", "id", name="id"),
        UniqueConstraint("joint_id", name="joint"),
        Index("uq_spacing_box", "box_id", unique=True, sqlite_where=text("joint_id IS NULL")),
        *more_than_nothing("half_pin_nm", "pin_nm", "tails", "tail_nm", "greatest_tail_nm", "ratio_bottom"),
        one_of("spread", *Spread),
        CheckConstraint("ratio_top > ratio_bottom", name="ratio_top"),
        CheckConstraint("(ratio_top IS NULL) = (ratio_bottom IS NULL)", name="ratio_whole"),
        CheckConstraint("(spread IN ('middle', 'edge')) = (ratio_top IS NOT NULL)", name="ratio_said"),
        CheckConstraint("spread <> 'listed' OR tails IS NULL", name="tails_listed"),
        one_of("measured_from", *EdgeName),
        CheckConstraint("alike IN (0, 1)", name="alike"),
        STRICT,
    )

    id: int = Field(default=None, primary_key=True)
    box_id: int
    joint_id: int | None
    half_pin_nm: Nm = Field(sa_type=NM)
    pin_nm: Nm = Field(sa_type=NM)
    tails: int | None
    tail_nm: Nm = Field(sa_type=NM)
    greatest_tail_nm: Nm = Field(sa_type=NM)
    spread: str = Field(sa_type=Text)
    ratio_top: int | None
    ratio_bottom: int | None
    measured_from: str = Field(sa_type=Text)
    alike: int


class PinPlaceRow(PartRow, table=True):
    """A listed pin of a spacing, counted from the edge that is measured from."""

    __tablename__ = "pin_place"
    __table_args__ = (
        ForeignKeyConstraint(
            ["project_id", "spacing_id"], ["spacing.project_id", "spacing.id"], name="spacing", ondelete="CASCADE"
        ),
        UniqueConstraint("project_id", "spacing_id", "position", name="position"),
        *more_than_nothing("position", "from_nm"),
        CheckConstraint("to_nm > from_nm", name="to_nm"),
        STRICT,
    )

    id: int = Field(default=None, primary_key=True)
    spacing_id: int
    position: int
    from_nm: Nm = Field(sa_type=NM)
    to_nm: Nm = Field(sa_type=NM)
