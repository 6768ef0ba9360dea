"""Run the migration scripts on the connection that the program hands over (see ``planner/store/migrate.py``)."""
# ruff: noqa: INP001, TID253 - alembic runs this file as a script

from __future__ import annotations

from alembic import context

context.configure(connection=context.config.attributes["connection"], render_as_batch=True)
with context.begin_transaction():
    context.run_migrations()
