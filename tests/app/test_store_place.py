"""Where the store is."""

from __future__ import annotations

from pathlib import Path

import platformdirs
import pytest

from planner.app.store_place import VARIABLE, store_path


def test_what_the_maker_says_comes_first_then_the_environment(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv(VARIABLE, str(tmp_path / "env.db"))
    assert store_path(tmp_path / "said.db") == tmp_path / "said.db"
    assert store_path() == tmp_path / "env.db"


@pytest.mark.parametrize("said", [None, ""])
def test_otherwise_it_is_in_the_users_data_folder(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, said: str | None
) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    monkeypatch.setenv(VARIABLE, said) if said is not None else monkeypatch.delenv(VARIABLE, raising=False)
    assert store_path() == platformdirs.user_data_path("planner", appauthor=False) / "planner.db"
    assert list(tmp_path.iterdir()) == []


def test_a_relative_place_counts_from_the_folder_one_is_in(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.chdir(tmp_path)
    assert store_path(Path("shop.db")) == tmp_path / "shop.db"


def test_a_tilde_is_the_home_folder_and_a_strangers_tilde_is_left_alone(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("HOME", str(tmp_path))
    assert store_path(Path("~/shop.db")) == tmp_path / "shop.db"
    assert store_path(Path("~nobody-here/shop.db")).name == "shop.db"
