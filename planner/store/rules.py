"""Constraints by what they say; each gets a name, since an unnamed one can't be altered by a migration."""

from __future__ import annotations

from enum import StrEnum

from sqlalchemy import CheckConstraint, ForeignKeyConstraint, MetaData

NAMES = MetaData(
    naming_convention={
        "pk": "pk_%(table_name)s",
        "fk": "fk_%(table_name)s_%(constraint_name)s",
        "uq": "uq_%(table_name)s_%(constraint_name)s",
        "ck": "ck_%(table_name)s_%(constraint_name)s",
    }
)
"""The store's own metadata; a constraint called ``box`` on table ``board`` comes out as ``fk_board_box``."""


def one_of(column: str, *words: StrEnum) -> CheckConstraint:
    """The column holds one of these words."""
    listed = ", ".join(f"'{word}'" for word in words)
    return CheckConstraint(f"{column} IN ({listed})", name=column)


def more_than_nothing(*columns: str) -> tuple[CheckConstraint, ...]:
    """Each column is over 0, or not said."""
    return tuple(CheckConstraint(f"{column} > 0", name=column) for column in columns)


def nothing_or_more(*columns: str) -> tuple[CheckConstraint, ...]:
    """Each column is 0 or more, or not said."""
    return tuple(CheckConstraint(f"{column} >= 0", name=column) for column in columns)


def not_empty(*columns: str) -> tuple[CheckConstraint, ...]:
    """Each column has some text."""
    return tuple(CheckConstraint(f"{column} <> ''", name=column) for column in columns)


def said_if(condition: str, *columns: str) -> tuple[CheckConstraint, ...]:
    """Each column is said just where the condition holds, which itself is never unknown."""
    return tuple(
        CheckConstraint(f"({condition}) = ({column} IS NOT NULL)", name=f"{column}_said") for column in columns
    )


def whole(name: str, *columns: str) -> CheckConstraint:
    """Two columns are said together or not at all."""
    first, second = columns
    return CheckConstraint(f"({first} IS NULL) = ({second} IS NULL)", name=f"{name}_whole")


def one_or_two(*columns: str) -> tuple[CheckConstraint, ...]:
    """Each column is 1 or 2."""
    return tuple(CheckConstraint(f"{column} IN (1, 2)", name=column) for column in columns)


def measured_sled() -> tuple[CheckConstraint, ...]:
    """All that was measured on a sled is over 0, or not said."""
    return more_than_nothing(
        "run_micro",
        "bit_nm",
        "greatest_bit_height_nm",
        "greatest_width_nm",
        "greatest_upright_nm",
        "slot_nm",
        "greatest_depth_soft_nm",
        "greatest_depth_hard_nm",
    )


def of_project() -> ForeignKeyConstraint:
    """The row goes with its project."""
    return ForeignKeyConstraint(["project_id"], ["project.id"], name="project", ondelete="CASCADE")


def of_box(*kinds: StrEnum) -> tuple[CheckConstraint | ForeignKeyConstraint, ...]:
    """The row goes with a ring of the same project, of one of these kinds."""
    here, there = ("project_id", "box_id", "kind"), ("box.project_id", "box.id", "box.kind")
    return one_of("kind", *kinds), ForeignKeyConstraint(here, there, name="box", ondelete="CASCADE")


def in_carcase() -> ForeignKeyConstraint:
    """The row goes with a carcase of the same project."""
    here, there = ("project_id", "carcase_id"), ("carcase.project_id", "carcase.box_id")
    return ForeignKeyConstraint(here, there, name="carcase", ondelete="CASCADE")


def of_material(of: str = "") -> ForeignKeyConstraint:
    """The material is one of the same project; ``of="panel"`` is for the column ``panel_material_id``."""
    name = f"{of}_material" if of else "material"
    return ForeignKeyConstraint(["project_id", f"{name}_id"], ["material.project_id", "material.id"], name=name)


def in_space(*holds: StrEnum) -> tuple[CheckConstraint | ForeignKeyConstraint, ...]:
    """The row is what a space of the same project holds, and that space says so."""
    here, there = ("project_id", "space_id", "kind"), ("space.project_id", "space.id", "space.holds")
    return one_of("kind", *holds), ForeignKeyConstraint(here, there, name="space", ondelete="CASCADE")


def of_row(table: str, *columns: str) -> ForeignKeyConstraint:
    """The row goes with a row of another table of the same project that has the same values in these columns."""
    here = ["project_id", *columns]
    return ForeignKeyConstraint(here, [f"{table}.{column}" for column in here], name=table, ondelete="CASCADE")


def of_board(name: str) -> ForeignKeyConstraint:
    """The column ``<name>_id`` is a board of the same ring."""
    here, there = ("project_id", "box_id", f"{name}_id"), ("board.project_id", "board.box_id", "board.id")
    return ForeignKeyConstraint(here, there, name=name, ondelete="CASCADE")
