"""sleds, keep-sled, measure-sled, drop-sled."""

from __future__ import annotations

import pytest

from tests.app.folders import contents
from tests.app.texts import BOX, named
from tests.cli.maker import Maker

VALUES = BOX.partition("[sled.bench]\n")[2].partition("\n\n")[0]


@pytest.fixture
def sharer(maker: Maker) -> Maker:
    """A maker whose store keeps a sled that two boxes share."""
    assert maker("read", "box.toml").code == 0
    assert maker("keep-sled", "Salt box").code == 0
    assert maker("read", "-", stdin=named("Tea box").replace(VALUES, "kept = true")).code == 0
    return maker


def test_an_empty_wall_says_how_to_fill_it_and_makes_no_store(maker: Maker) -> None:
    said = maker("sleds")
    assert said.code == 0
    assert "planner keep-sled PROJECT SLED" in said.out
    assert maker("sleds", "--json").json == []
    assert not maker.store.parent.exists()


def test_the_list_says_what_was_measured_and_whose_it_is(sharer: Maker) -> None:
    out = sharer("sleds").out
    for told in ("bench: slope 1:7, bit 8 mm, slot as wide as the bit", "30 mm high", "400 mm wide, 600 mm long"):
        assert told in out
    assert "projects: Salt box, Tea box" in out


def test_the_list_as_json_has_its_keys(sharer: Maker) -> None:
    assert sharer("sleds", "--json").json == [
        {
            "name": "bench",
            "slope": 7.0,
            "bit_mm": 8.0,
            "slot_mm": None,
            "greatest_bit_height_mm": 30.0,
            "greatest_width_mm": 400.0,
            "greatest_upright_mm": 600.0,
            "greatest_depth_soft_mm": None,
            "greatest_depth_hard_mm": None,
            "projects": ["Salt box", "Tea box"],
        }
    ]


def test_keeping_a_sled_says_so_once(maker: Maker) -> None:
    maker("read", "box.toml")
    assert "bench: kept; Salt box" in maker("keep-sled", "Salt box", "bench").out
    assert "bench: kept already" in maker("keep-sled", "Salt box", "bench").out
    said = maker("keep-sled", "Salt box", "long")
    assert said.code == 2
    assert "Name one of: 'bench'." in said.err


def test_a_file_that_takes_a_kept_sled_is_refused_where_there_is_none_and_no_store_is_made(maker: Maker) -> None:
    said = maker("read", "-", stdin=BOX.replace(VALUES, "kept = true"))
    assert (said.code, said.out) == (2, "")
    assert "the store keeps no sled 'bench'" in said.err
    assert not maker.store.parent.exists()


def test_a_measure_is_told_for_each_project_in_a_line(sharer: Maker) -> None:
    """A bit half as wide: more passes, and marks at both ends of both pin boards."""
    said = sharer("measure-sled", "bench", "--bit", "4 mm")
    assert (said.code, said.err) == (0, "")
    for name in ("Salt box", "Tea box"):
        (line,) = (line for line in said.out.splitlines() if line.startswith(f"{name}: "))
        assert "settings 2; changes 1; passes " in line
        assert ", before " in line
        assert "new marks at 4 ends" in line
    assert "bit 4 mm" in said.out
    assert "out of date" in said.out
    assert sharer("sled", "Tea box", "--json").json["settings"][0]["bit_mm"] == 4.0


def test_a_measure_as_json_has_both_counts(sharer: Maker) -> None:
    told = sharer("measure-sled", "bench", "--bit", "4 mm", "--json").json
    assert told["sled"]["bit_mm"] == 4.0
    assert [each["project"] for each in told["projects"]] == ["Salt box", "Tea box"]
    for each in told["projects"]:
        assert each["before"]["passes"] < each["after"]["passes"]
        assert each["before"]["handlings"] == each["after"]["handlings"] == 4  # two pin boards at two fences
        assert (each["new_marks"], each["new_pins"] >= 0) == (4, True)


def test_the_same_measure_says_that_nothing_has_changed(sharer: Maker) -> None:
    assert "Nothing has changed." in sharer("measure-sled", "bench", "--bit", "8 mm").out


def test_what_cannot_be_built_any_more_has_the_code_of_a_plan_and_names_the_projects(sharer: Maker) -> None:
    before = contents(sharer.store.parent)
    said = sharer("measure-sled", "bench", "--greatest-width", "80 mm")
    assert (said.code, said.out) == (1, "")
    assert "Salt box, S-J1" in said.err
    assert "Tea box, S-J1" in said.err
    assert contents(sharer.store.parent) == before


@pytest.mark.parametrize(
    ("args", "told"),
    [
        (["measure-sled", "bnch", "--bit", "8 mm"], "Did you mean 'bench'?"),
        (["measure-sled", "bench"], "nothing was measured"),
        (["measure-sled", "bench", "--bit", "8"], "doesn't say its unit"),
        (["drop-sled", "bench"], "is in use by 'Salt box', 'Tea box'"),
        (["drop-sled", "bnch"], "Did you mean 'bench'?"),
        (["keep-sled", "Salt bx"], "Did you mean 'Salt box'?"),
    ],
)
def test_what_cannot_be_done_is_refused_and_nothing_is_changed(sharer: Maker, args: list[str], told: str) -> None:
    before = contents(sharer.store.parent)
    said = sharer(*args)
    assert (said.code, said.out) == (2, "")
    assert told in said.err
    assert contents(sharer.store.parent) == before


def test_a_dropped_sled_is_shown_for_the_last_time(sharer: Maker) -> None:
    for name in ("Salt box", "Tea box"):
        assert sharer("forget", name, "--yes").code == 0
    assert "projects: none" in sharer("sleds").out
    said = sharer("drop-sled", "bench")
    assert "No longer kept:" in said.out
    assert "slope 1:7, bit 8 mm" in said.out
    assert sharer("sleds", "--json").json == []


def test_a_name_is_shown_as_it_is_and_what_was_typed_cannot_steer_the_terminal(maker: Maker) -> None:
    maker("read", "-", stdin=BOX.replace("[sled.bench]", "[sled.'[red]b ench']"))
    assert "[red]b ench: kept" in maker("keep-sled", "Salt box").out
    assert "[red]b ench: slope 1:7" in maker("sleds").out
    for args in (["measure-sled", "\x1b[2J", "--bit", "9 mm"], ["measure-sled", "[red]b ench", "--bit", "\x1b[2J"]):
        said = maker(*args)
        assert said.code == 2
        assert all(char.isprintable() or char == "\n" for char in said.out + said.err)
