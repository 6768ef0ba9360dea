"""planner sled, of one project or of several cut together."""

from __future__ import annotations

import pytest

from planner.app.projects import keep
from planner.app.store_place import StorePlace
from planner.intake.project_file import read_project
from tests.app.texts import IMPOSSIBLE, named
from tests.cli.maker import Maker


@pytest.fixture
def full_maker(chest_maker: Maker) -> Maker:
    """A maker whose store holds the chest and two boxes alike, one of which can't be planned any more."""
    chest_maker("read", "box.toml")
    chest_maker("read", "-", stdin=named("Tea box"))
    keep(read_project(IMPOSSIBLE.replace("Salt box", "Old box"), "x"), StorePlace(chest_maker.store), why="a test")
    return chest_maker


def test_one_project_named_or_the_only_one_reads_the_same(chest_maker: Maker) -> None:
    assert chest_maker("sled") == chest_maker("sled", "Landing chest")
    assert chest_maker("sled", "--json").json["projects"] == ["Landing chest"]
    assert "Cut together" not in chest_maker("sled").out


def test_several_projects_are_cut_together_in_the_order_named(full_maker: Maker) -> None:
    """Two boxes alike on one sled: two settings, one swap; each has two pin boards, so eight handlings."""
    sled = full_maker("sled", "Tea box", "Salt box", "--json").json
    assert sled["projects"] == ["Tea box", "Salt box"]
    assert [at["sled"] for at in sled["settings"]] == ["bench", "bench"]
    assert (sled["sled_changes"], sled["height_changes"], sled["fence_swaps"], sled["handlings"]) == (0, 0, 1, 8)
    assert sled["joint_by_joint_changes"] == sled["joint_by_joint"]["changes"] == 8
    marks = [(cut["project"], cut["board"], cut["end"]) for at in sled["settings"] for cut in at["cuts"]]
    assert len(marks) == 2 * 8
    assert len(set(marks)) == 8
    assert [name for name, *_ in marks[:8]] == ["Tea box"] * 4 + ["Salt box"] * 4


def test_sleds_of_other_figures_are_named_apart(full_maker: Maker) -> None:
    sled = full_maker("sled", "Landing chest", "Salt box", "--json").json
    names = list(dict.fromkeys(at["sled"] for at in sled["settings"]))
    assert names == ["bench of Landing chest", "bench of Salt box"]
    assert sled["sled_changes"] == 1


@pytest.mark.parametrize("columns", ["20", "40", "80", "250"])
def test_the_sheet_of_several_fits_the_terminal_and_names_each_project(full_maker: Maker, columns: str) -> None:
    said = full_maker("sled", "Salt box", "Tea box", COLUMNS=columns)
    assert (said.code, said.err) == (0, "")
    assert max(map(len, said.out.splitlines())) <= max(int(columns), 40)
    told = " ".join(said.out.split())
    assert "Cut together: Salt box, Tea box." in told
    assert "! In more than one of these projects: S. Write the project beside the mark" in told
    assert "As planned: 2 settings, 1 change, 8 handlings, 8 turnings," in told
    assert said.out.count("Tea box") >= 8


def test_wrong_names_are_all_told_at_once(full_maker: Maker) -> None:
    said = full_maker("sled", "Salt box", "Tea bx", "Salt box", "Sugar box", "--json")
    assert (said.code, said.out) == (2, "")
    for told in ("project 'Salt box'", "is named 2 times", "Name each project once", "'Tea bx'", "'Sugar box'"):
        assert told in said.err


def test_without_a_name_there_must_be_only_one(full_maker: Maker) -> None:
    said = full_maker("sled")
    assert (said.code, said.out) == (2, "")
    assert "'Landing chest'" in said.err


def test_what_cannot_be_planned_is_told_with_its_project(full_maker: Maker) -> None:
    """All boxes have the same marks, so the mark alone would not say which of them it is."""
    said = full_maker("sled", "Salt box", "Old box")
    assert (said.code, said.out) == (1, "")
    assert "Old box, S-J1" in said.err
    assert "Salt box, S-J1" not in said.err


def test_a_store_without_projects_says_so(maker: Maker) -> None:
    said = maker("sled", "Salt box")
    assert (said.code, said.out) == (2, "")
    assert "Salt box" in said.err
