"""Sleds of the store, which projects share; past states of projects.

Append only: once released, a script is never edited. It must mean the same in five years, so it never imports the
program.
"""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None

NM = sa.BigInteger().with_variant(sa.Integer(), "sqlite")


def upgrade() -> None:
    op.create_table(
        "kept_sled",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        *figures(),
        sa.PrimaryKeyConstraint("id", name="pk_kept_sled"),
        sa.UniqueConstraint("name", name="uq_kept_sled_name"),
        sa.UniqueConstraint("id", "name", name="uq_kept_sled_id"),
        sa.CheckConstraint("name <> ''", name="ck_kept_sled_name"),
        *figures_over_nothing("kept_sled"),
        sqlite_strict=True,
    )
    rebuild_sled()
    op.create_table(
        "project_state",
        sa.Column("project_id", sa.Integer(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("why", sa.Text(), nullable=False),
        sa.Column("at", sa.Text(), nullable=False),
        sa.Column("file", sa.Text(), nullable=False),
        sa.Column("current", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("project_id", "number", name="pk_project_state"),
        sa.ForeignKeyConstraint(
            ["project_id"], ["project.id"], name="fk_project_state_project", ondelete="CASCADE"
        ),
        sa.CheckConstraint("number > 0", name="ck_project_state_number"),
        sa.CheckConstraint("why <> ''", name="ck_project_state_why"),
        sa.CheckConstraint("at <> ''", name="ck_project_state_at"),
        sa.CheckConstraint("file <> ''", name="ck_project_state_file"),
        sa.CheckConstraint("current IN (0, 1)", name="ck_project_state_current"),
        sqlite_strict=True,
    )
    op.create_index(
        "uq_project_state_current", "project_state", ["project_id"], unique=True, sqlite_where=sa.text("current = 1")
    )


def rebuild_sled() -> None:
    """Give each sled of a project a way to the store's sled that it is; a table must be made anew for a foreign key.

    As in sqlite.org/lang_altertable.html, section 7: make the new one, fill it, drop the old one, rename.
    """
    op.create_table(
        "new_sled",
        sa.Column("project_id", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        *figures(),
        sa.Column("kept_sled_id", sa.Integer(), nullable=True),
        sa.PrimaryKeyConstraint("id", name="pk_sled"),
        sa.ForeignKeyConstraint(["project_id"], ["project.id"], name="fk_sled_project", ondelete="CASCADE"),
        sa.UniqueConstraint("project_id", "id", name="uq_sled_id"),
        sa.UniqueConstraint("project_id", "name", name="uq_sled_name"),
        sa.UniqueConstraint("project_id", "position", name="uq_sled_position"),
        sa.ForeignKeyConstraint(
            ["kept_sled_id", "name"], ["kept_sled.id", "kept_sled.name"], name="fk_sled_kept_sled"
        ),
        sa.CheckConstraint("name <> ''", name="ck_sled_name"),
        sa.CheckConstraint("position > 0", name="ck_sled_position"),
        *figures_over_nothing("sled"),
        sqlite_strict=True,
    )
    copied = ", ".join(["project_id", "id", "position", "name", *(column.name for column in figures())])
    op.execute(f"INSERT INTO new_sled ({copied}) SELECT {copied} FROM sled")
    op.drop_table("sled")
    op.rename_table("new_sled", "sled")


def figures() -> list[sa.Column]:
    """What is measured on a sled."""
    return [
        sa.Column("run_micro", sa.Integer(), nullable=False),
        sa.Column("bit_nm", NM, nullable=False),
        sa.Column("greatest_bit_height_nm", NM, nullable=False),
        sa.Column("greatest_width_nm", NM, nullable=False),
        sa.Column("greatest_upright_nm", NM, nullable=False),
        sa.Column("slot_nm", NM, nullable=True),
        sa.Column("greatest_depth_soft_nm", NM, nullable=True),
        sa.Column("greatest_depth_hard_nm", NM, nullable=True),
    ]


def figures_over_nothing(table: str) -> list[sa.CheckConstraint]:
    """Each is over 0, or not said."""
    return [sa.CheckConstraint(f"{column.name} > 0", name=f"ck_{table}_{column.name}") for column in figures()]


def downgrade() -> None:
    raise NotImplementedError("Put back the backup that was made before the upgrade.")
