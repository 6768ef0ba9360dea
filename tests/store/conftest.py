"""Places for stores."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.store.examples import cabinet, save


@pytest.fixture
def place(tmp_path: Path) -> Path:
    """Where a store may be made; its folder holds nothing else."""
    folder = tmp_path / "shop"
    folder.mkdir()
    return folder / "planner.db"


@pytest.fixture
def stored(place: Path) -> Path:
    """A store with one cabinet."""
    save(place, cabinet())
    return place
