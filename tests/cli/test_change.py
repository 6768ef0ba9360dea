"""One thing changed at the command line: what is stored, what is shown, what is refused."""

from __future__ import annotations

from pathlib import Path

import pytest

from planner.app.projects import keep, stored
from planner.app.store_place import StorePlace
from planner.intake.project_file import read_project
from planner.lengths import Unit, read_length
from tests.app.folders import contents
from tests.app.texts import CHEST, IMPOSSIBLE
from tests.cli.maker import Maker, Said

CHANGES = [
    ["change", "Landing chest", "carcase.C.height", "38"],
    ["change", "Landing chest", "pins.tail", "1 1/4", "--leave-out", "carcase.C.back"],
    ["resize", "Landing chest", "C", "--height", "38", "--width", "24 in"],
    ["add-drawer", "Landing chest", "--below", "D6"],
    ["add-drawer", "Landing chest", "--above", "D1", "--mark", "N"],
    ["remove-drawer", "Landing chest", "D3"],
    ["swap-timber", "Landing chest", "ash", "oak"],
    ["swap-timber", "Landing chest", "ash", "poplar", "--in", "C", "--in", "D2"],
]
KEYS = {
    "stored", "said", "project", "anything", "boards", "joints_anew", "cuts_anew", "stock", "sled", "settings",
    "operations", "checks",
}  # fmt: skip


def history(maker: Maker, name: str) -> list[str]:
    """Why each state of a project came about."""
    return [state["why"] for state in maker("history", name, "--json").json]


@pytest.mark.parametrize("args", CHANGES, ids=" ".join)
def test_a_change_is_stored_and_shown(chest_maker: Maker, args: list[str]) -> None:
    before = chest_maker("write", "Landing chest").out
    said = chest_maker(*args)
    assert (said.code, said.err) == (0, "")
    assert said.out.startswith("What is said\n")
    assert "Boards\n" in said.out
    assert said.out.endswith("Landing chest: changed in the store.\n")
    assert chest_maker("write", "Landing chest").out != before
    assert chest_maker("undo", "Landing chest").code == 0
    assert chest_maker("write", "Landing chest").out == before


@pytest.mark.parametrize("args", CHANGES, ids=" ".join)
def test_a_dry_fit_shows_the_same_and_stores_nothing(chest_maker: Maker, args: list[str]) -> None:
    before = contents(chest_maker.store.parent)
    fitted = chest_maker(*args, "--dry-fit")
    assert fitted.code == 0
    assert contents(chest_maker.store.parent) == before
    done = chest_maker(*args)
    assert fitted.out.splitlines()[:-1] == done.out.splitlines()[:-1]
    assert fitted.out.endswith("Landing chest: dry fit only, nothing is stored.\n")


@pytest.mark.parametrize("args", CHANGES, ids=" ".join)
def test_what_changed_is_to_be_had_as_json(chest_maker: Maker, args: list[str]) -> None:
    told = chest_maker(*args, "--json", "--dry-fit").json
    assert told.keys() == KEYS
    assert told["stored"] is None
    assert told["anything"] is True
    assert all(row.keys() == {"place", "before", "after"} for row in told["said"])
    assert told["boards"].keys() == {"new", "gone", "changed"}
    for change in told["stock"]:
        assert change.keys() == {"material", "kind", "thickness_mm", "before", "after"}
        for wood in (change["before"], change["after"]):
            assert wood.keys() == {"boards", "length_mm", "area_m2", "volume_m3"}
    for setting in told["settings"]:
        assert setting.keys() == {"sled", "slope", "bit_mm", "bit_height_mm", "fence", "ends"}
    assert chest_maker(*args, "--json").json == told | {"stored": "changed"}


def test_columns_and_tiers_within_each_other_are_changed(maker: Maker) -> None:
    name, stand = "Hall chest", CHEST.with_name("chest_on_stand.toml")
    assert maker("read", str(stand)).code == 0
    before = maker("write", name).out
    for args, told in (
        (["change", name, "carcase.C.column.1.tier.1.height", "5"], "carcase.C.column.1.tier.1.height"),
        (["add-drawer", name, "--above", "D3", "--height", "4"], "carcase.C.column.1.tier.D5.mark"),
        (["remove-drawer", name, "D3"], "carcase.C.except.D3"),
        (["swap-timber", name, "cherry", "poplar", "--in", "C"], "carcase.C.back.material"),
        (["resize", name, "C", "--height", "24"], "carcase.C.height"),
    ):
        said = maker(*args)
        assert (said.code, said.err) == (0, "")
        assert told in said.out
        assert maker("undo", name).code == 0
        assert maker("write", name).out == before
    only = refused(maker("remove-drawer", name, "D1"), 2)
    assert "--leave-out carcase.C.column.1.tier.1.column.1" in only
    doors = maker("places", name, "carcase.C.column.1.tier.2.doors").out
    assert "carcase.C.column.1.tier.2.doors.stile" in doors


def test_the_stored_project_is_the_changed_one(chest_maker: Maker) -> None:
    chest_maker("resize", "Landing chest", "C", "--height", "38")
    (carcase,) = stored("Landing chest", StorePlace(chest_maker.store)).carcases
    assert carcase.height_nm == read_length("38", Unit.INCH)
    text = CHEST.read_text(encoding="utf-8").replace('height = "36 in"', 'height = "38 in"')
    assert stored("Landing chest", StorePlace(chest_maker.store)) == read_project(text, "by hand")


def test_what_does_not_change_says_so(chest_maker: Maker) -> None:
    before = contents(chest_maker.store.parent)
    same = chest_maker("change", "Landing chest", "carcase.C.height", "36")
    assert same.out == (
        "What is said\n\nPlace             Before  After\n----------------  ------  -----\n"
        "carcase.C.height  36 in   36\n\nNo board, joint, setting or check changes.\n"
        "Landing chest: in the store already, unchanged.\n"
    )
    assert contents(chest_maker.store.parent) == before
    title = chest_maker("change", "Landing chest", "carcase.C.title", "Upper landing")
    assert "No board, joint, setting or check changes.\nLanding chest: changed in the store." in title.out
    told = chest_maker("change", "Landing chest", "carcase.C.title", "Upper landing", "--json").json
    assert (told["stored"], told["anything"], told["said"]) == ("unchanged", False, [])


def test_the_history_tells_what_was_said(chest_maker: Maker) -> None:
    chest_maker("change", "Landing chest", "carcase.C.height", "38")
    chest_maker("remove-drawer", "Landing chest", "D6")
    chest_maker("swap-timber", "Landing chest", "ash", "oak")
    chest_maker("change", "Landing chest", *(t for p in ("half_pin", "pin", "tail", "alike") for t in PINS[p]))
    assert history(chest_maker, "Landing chest")[1:] == [
        "carcase.C.height: 36 in → 38",
        "carcase.C.column.1.drawers: 6 → 5",
        (
            'material.oak: not said → { kind = "solid", hardness = "hard" }; carcase.C.material: ash → oak; '
            "carcase.C.drawer.front_material: ash → oak"
        ),
        "pins.half_pin: not said → 5/16; pins.pin: not said → 5/16; pins.tail: 1 1/8 in → 1 1/4; and 1 more",
    ]


PINS = {
    "half_pin": ("pins.half_pin", "5/16"),
    "pin": ("pins.pin", "5/16"),
    "tail": ("pins.tail", "1 1/4"),
    "alike": ("pins.alike", "true"),
}


# --- refusals -----------------------------------------------------------------------------------------------


def refused(said: Said, code: int) -> str:
    assert (said.code, said.out) == (code, "")
    assert "Traceback" not in said.err
    return said.err


REFUSED = [
    (["change", "Landing chest", "carcase.C.hheight", "38"], 2, "Did you mean carcase.C.height?"),
    (["change", "Landing chest", "carcase.C.height"], 2, "stands without a value."),
    (["change", "Landing chest"], 2, "no place is named."),
    (["change", "Landing chst", "carcase.C.height", "38"], 2, "Did you mean 'Landing chest'?"),
    (["change", "Landing chest", "--leave-out", "carcase.C.pins"], 2, "is not said, so it can't be left out."),
    (["change", "Landing chest", "carcase.C.height", "8"], 1, "C-1 heights"),
    (["change", "Landing chest", "pins.tails", "60"], 1, "C-J1, C-J2 and 2 more\n  60 tails"),
    (["change", "Landing chest", "sled.bench.greatest_upright", "12"], 1, "greatest upright board"),
    (["resize", "Landing chest", "C", "--height", "2"], 1, "C"),
    (["resize", "Landing chest", "C", "--length", "2"], 2, "'length' is not known"),
    (["add-drawer", "Landing chest"], 2, "where the new drawer goes must be said once."),
    (["add-drawer", "Landing chest", "--below", "D2", "--above", "D3"], 2, "must be said once."),
    (["add-drawer", "Landing chest", "--below", "D9"], 2, "no drawer is marked 'D9'."),
    (["remove-drawer", "Landing chest", "D9"], 2, "no drawer is marked 'D9'."),
    (["swap-timber", "Landing chest", "pine", "oak"], 2, "is not one of the project's materials."),
    (["places", "Landing chest", "carcase.K"], 2, "carcase has no 'K'."),
]


@pytest.mark.parametrize(("args", "code", "told"), REFUSED, ids=[" ".join(args) for args, *_ in REFUSED])
def test_what_is_refused_leaves_the_store_as_it_was(chest_maker: Maker, args: list[str], code: int, told: str) -> None:
    before = contents(chest_maker.folder.parent)
    assert told in refused(chest_maker(*args), code)
    assert contents(chest_maker.folder.parent) == before


def test_a_store_that_is_none_has_its_own_code(maker: Maker) -> None:
    for args in CHANGES:
        assert "box.toml" in refused(maker(*args, "--store", "box.toml"), 3)


def test_a_project_that_could_not_be_planned_before_is_told_as_such(maker: Maker) -> None:
    keep(read_project(IMPOSSIBLE, "as if an older program had stored it"), StorePlace(maker.store), why="a test")
    told = refused(maker("change", "Salt box", "box.S.title", "Salt"), 1)
    assert "Salt box as it stands in the store, S-J1" in told


def test_kept_sleds_can_be_taken_and_not_changed(chest_maker: Maker) -> None:
    chest_maker("read", "box.toml")
    chest_maker("keep-sled", "Landing chest")
    taken = chest_maker("change", "Salt box", "sled.bench", "{ kept = true }", "--json", "--dry-fit").json
    assert {setting["bit_mm"] for setting in taken["settings"] if setting["ends"]["after"]} == {12.7}
    before = contents(chest_maker.store.parent)
    for how in ([], ["--dry-fit"]):
        told = refused(chest_maker("change", "Landing chest", "sled.bench.bit", "0.498", *how), 2)
        assert "is not like the sled 'bench' that the store keeps" in told
    assert contents(chest_maker.store.parent) == before


# --- places -------------------------------------------------------------------------------------------------


def test_places_are_listed_with_what_is_said_and_meant(chest_maker: Maker) -> None:
    told = {row["place"]: row for row in chest_maker("places", "Landing chest", "--json").json}
    assert told["carcase.C.height"] == {
        "place": "carcase.C.height", "said": "36 in", "meaning": "Height of the ring, without base and separate top."
    }  # fmt: skip
    below = chest_maker("places", "Landing chest", "carcase.C.pins", "--json").json
    assert [row["said"] for row in below if row["place"] == "carcase.C.pins.tail"] == [None]
    assert "carcase.C.height" in chest_maker("places", "Landing chest").out
    assert "not said" in chest_maker("places", "Landing chest", "carcase.C").out


@pytest.mark.parametrize("columns", ["60", "200"])
def test_all_of_it_fits_the_terminal(chest_maker: Maker, columns: str) -> None:
    for args in (["places", "Landing chest"], *([*args, "--dry-fit"] for args in CHANGES[:4])):
        said = chest_maker(*args, COLUMNS=columns)
        assert said.code == 0
        assert max(map(len, said.out.splitlines())) <= int(columns)


def test_what_is_typed_cannot_steer_the_terminal(maker: Maker, tmp_path: Path) -> None:
    maker("read", str(tmp_path / "shop" / "box.toml"))
    told = maker("change", "Salt box", "box.S.title", "\x1b[2J\u202e")
    assert all(char.isprintable() or char == "\n" for char in told.out + told.err)
    assert told.code == 2
