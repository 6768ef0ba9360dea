"""Migration scripts that don't exist yet: a copy of the real ones with one more, so that today's stores are old."""

from __future__ import annotations

import shutil
from pathlib import Path
from textwrap import dedent, indent

from planner.store.migrate import HEAD, Scripts, released

NEXT = f"{int(HEAD) + 1:04}"

HARMLESS = 'op.add_column("project", sa.Column("note", sa.Text(), nullable=True))'
REBUILD = """
with op.batch_alter_table("box", recreate="always", table_kwargs={"sqlite_strict": True}) as box:
    box.add_column(sa.Column("note", sa.Text(), nullable=True))
with op.batch_alter_table("project", table_kwargs={"sqlite_strict": True}) as project:
    project.create_check_constraint("ck_project_long_name", "length(name) < 200")
op.execute("UPDATE box SET note = mark || ' was here'")
"""


def longer(folder: Path, steps: str, *, header: str = "") -> Scripts:
    """The released scripts and one more with these steps, in a folder of their own."""
    scripts = folder / "later scripts 100%"
    shutil.copytree(released().folder, scripts, ignore=shutil.ignore_patterns("__pycache__"))
    text = dedent(
        f'''\
        """Not released."""

        import sqlalchemy as sa
        from alembic import op

        revision = "{NEXT}"
        down_revision = "{released().head}"
        {header}


        def upgrade() -> None:
        '''
    )
    (scripts / "versions" / f"{NEXT}_later.py").write_text(text + indent(steps.strip(), "    ") + "\n")
    return Scripts(folder=scripts, head=NEXT)
