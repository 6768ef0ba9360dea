"""Places for files and stores."""

from __future__ import annotations

from pathlib import Path

import pytest

from planner.app.store_place import StorePlace
from tests.app.texts import BOX


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """An empty folder."""
    folder = tmp_path / "shop"
    folder.mkdir()
    return folder


@pytest.fixture
def store(tmp_path: Path) -> StorePlace:
    """A store that isn't there yet, in a folder that isn't there either."""
    return StorePlace(tmp_path / "data" / "planner.db")


@pytest.fixture
def box(tmp_path: Path) -> Path:
    """Project file of a small box."""
    path = tmp_path / "salt box.toml"
    path.write_text(BOX, encoding="utf-8")
    return path
