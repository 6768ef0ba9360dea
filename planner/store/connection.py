"""SQLite connections: how a store file is opened, and a session on such a connection.

The driver never begins or ends a transaction by itself: a migration that fails would leave half of its work behind.
"""

from __future__ import annotations

import sqlite3
from pathlib import Path
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from sqlalchemy import Engine

PATIENCE_S = 10.0
"""How long to wait for another program that is writing."""

Mode = Literal["ro", "rw", "rwc"]


def connect(path: Path, mode: Mode = "rw", *, foreign_keys: bool = True) -> sqlite3.Connection:
    """Connection to a store file; ``rwc`` makes the file.

    A store that can't be written at all (a read-only disk, another's folder) is opened as it lies, as long as nobody
    who may write has it open.
    """
    connection = _open(f"{path.absolute().as_uri()}?mode={mode}")
    try:
        connection.execute(f"PRAGMA foreign_keys = {'ON' if foreign_keys else 'OFF'}")
        connection.execute("SELECT count(*) FROM sqlite_master")  # only now is the file looked at
    except sqlite3.OperationalError as error:
        connection.close()
        shut_off = error.sqlite_errorcode in {sqlite3.SQLITE_READONLY_DIRECTORY, sqlite3.SQLITE_CANTOPEN}
        if not shut_off or log_of(path).exists():
            raise
        return _open(f"{path.absolute().as_uri()}?mode=ro&immutable=1")
    except sqlite3.Error:
        connection.close()
        raise
    return connection


def _open(uri: str) -> sqlite3.Connection:
    return sqlite3.connect(uri, uri=True, timeout=PATIENCE_S, isolation_level=None)


def log_of(path: Path) -> Path:
    """Where SQLite keeps what was written but not yet folded into the store file."""
    return path.with_name(f"{path.name}-wal")


def engine_on(connection: sqlite3.Connection, begin: str) -> Engine:
    """SQLAlchemy on this one connection; each of its transactions is begun by the statement ``begin``."""
    from sqlalchemy import create_engine, event
    from sqlalchemy.pool import StaticPool

    engine = create_engine("sqlite://", creator=lambda: connection, poolclass=StaticPool)
    event.listen(engine, "begin", lambda started: started.exec_driver_sql(begin))
    return engine
