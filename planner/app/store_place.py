"""Where the store is: what the maker said, else the environment, else the user's data folder."""

from __future__ import annotations

import os
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

VARIABLE = "PLANNER_STORE"
"""Environment variable that names another store."""

_FOLDER, _FILE = "planner", "planner.db"


def _say_nothing(_: object) -> None:
    """What is done with news when nobody asks for them."""


@dataclass(frozen=True, slots=True)
class StorePlace:
    """A store by its place, whether it is there yet or not.

    Attributes:
        path: the store's file.
        tell: told in words of what was done to the store itself (an upgrade and its backup).
    """

    path: Path
    tell: Callable[[object], None] = _say_nothing


def store_path(said: Path | None = None) -> Path:
    """Absolute path of the store; nothing is made or opened."""
    named = said or os.environ.get(VARIABLE)
    return Path(os.path.expanduser(named)).absolute() if named else _usual()  # noqa: PTH111  (never fails)


def _usual() -> Path:
    from platformdirs import user_data_path

    return user_data_path(_FOLDER, appauthor=False) / _FILE
