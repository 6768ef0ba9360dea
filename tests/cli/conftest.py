"""The command line, driven in process as a maker would."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from typer.testing import CliRunner

from planner.app.projects import read
from planner.app.store_place import VARIABLE, StorePlace
from tests.app.texts import BOX, CHEST
from tests.cli.maker import Maker

SETTLED_BY_THE_TERMINAL = ("NO_COLOR", "FORCE_COLOR", "COLUMNS", "TERM", VARIABLE)


@pytest.fixture(scope="session")
def chest_store(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A store that holds the six-drawer chest."""
    path = tmp_path_factory.mktemp("chest") / "planner.db"
    read(str(CHEST), StorePlace(path))
    return path


@pytest.fixture
def maker(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Maker:
    """A maker in an empty folder with a project file, and no store yet."""
    for name in SETTLED_BY_THE_TERMINAL:
        monkeypatch.delenv(name, raising=False)
    (tmp_path / "shop").mkdir()
    monkeypatch.chdir(tmp_path / "shop")
    monkeypatch.setenv(VARIABLE, str(tmp_path / "data" / "planner.db"))
    Path("box.toml").write_text(BOX, encoding="utf-8")
    return Maker(folder=tmp_path / "shop", store=tmp_path / "data" / "planner.db", runner=CliRunner())


@pytest.fixture
def chest_maker(maker: Maker, chest_store: Path) -> Maker:
    """A maker whose store holds the six-drawer chest."""
    maker.store.parent.mkdir()
    shutil.copy(chest_store, maker.store)
    return maker
