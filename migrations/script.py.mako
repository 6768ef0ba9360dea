"""${message}

Append only: once released, a script is never edited. It must mean the same in five years, so it never imports the
program; repeat here what it needs. Tables whose rows it adds or removes on purpose: CHANGES_ROWS_OF = ("board",).
Rebuild a table with op.batch_alter_table(name, table_kwargs={"sqlite_strict": True}), and name each constraint.
"""

import sqlalchemy as sa
from alembic import op

revision = ${repr(up_revision)}
down_revision = ${repr(down_revision)}
branch_labels = None
depends_on = None


def upgrade() -> None:
    ${upgrades if upgrades else "pass"}


def downgrade() -> None:
    raise NotImplementedError("Restore the backup that was made before the upgrade.")
