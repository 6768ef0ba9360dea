"""projects, forget, and where the store is."""

from __future__ import annotations

from tests.app.folders import contents
from tests.cli.maker import Maker


def test_an_empty_list_says_how_to_fill_it_and_makes_no_store(maker: Maker) -> None:
    said = maker("projects")
    assert said.code == 0
    assert "planner read" in said.out
    assert maker("projects", "--json").json == []
    assert not maker.store.parent.exists()


def test_the_list_as_json_has_its_keys(chest_maker: Maker) -> None:
    assert chest_maker("projects", "--json").json == [
        {"name": "Landing chest", "boxes": 0, "carcases": 1, "drawers": 6}
    ]


def test_a_project_is_forgotten_only_when_one_insists(chest_maker: Maker) -> None:
    before = contents(chest_maker.store.parent)
    said = chest_maker("forget", "Landing chest")
    assert said.code == 2
    assert "--yes" in said.err
    assert contents(chest_maker.store.parent) == before
    assert chest_maker("forget", "Landing chst", "--yes").code == 2
    assert chest_maker("forget", "Landing chest", "--yes").code == 0
    assert chest_maker("projects", "--json").json == []


def test_another_store_can_be_named_before_or_after_the_command(maker: Maker) -> None:
    assert maker("--store", "mine.db", "read", "box.toml").code == 0
    assert maker("projects", "--json", "--store", "mine.db").json[0]["name"] == "Salt box"
    assert maker("projects", "--store=mine.db", "--json").json[0]["name"] == "Salt box"
    assert maker("projects", "--json").json == []
    assert maker("projects", "--json", PLANNER_STORE="mine.db").json[0]["name"] == "Salt box"


def test_after_two_hyphens_nothing_is_an_option(maker: Maker) -> None:
    said = maker("boards", "--", "--store")
    assert said.code == 2
    assert "project '--store'" in said.err


def test_a_store_with_blanks_and_signs_in_its_path(maker: Maker) -> None:
    path = str(maker.folder / "größe %20 #1 ?" / "my store.db")
    assert maker("read", "box.toml", "--store", path).code == 0
    assert maker("projects", "--json", "--store", path).json[0]["name"] == "Salt box"
    assert [name for name in contents(maker.folder) if name.endswith(".db")] == ["größe %20 #1 ?/my store.db"]
