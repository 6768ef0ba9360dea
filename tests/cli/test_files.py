"""prepare, read, write, workbook and schema."""

from __future__ import annotations

import json
from pathlib import Path

import jsonschema
import pytest

from tests.app.folders import contents, sheets
from tests.app.texts import BOX, CHEST, named
from tests.cli.maker import Maker


def test_prepare_does_all_at_once_and_says_so_in_a_few_lines(maker: Maker) -> None:
    said = maker("prepare", str(CHEST), "--into", "out")
    assert said.code == 0, said.err
    assert said.err == ""
    lines = said.out.splitlines()
    assert len(lines) <= 8
    assert lines[0] == "Landing chest: new in the store."
    # 28 corners: 4 of the carcase, 6 × 4 of the drawers; 50 boards: 6 × 5, 4 and a back, 5 × (rail and 2 runners)
    assert lines[1] == "50 boards, 28 corners, 56 joined ends."
    # two bit heights (3/4 and 1/2 in tail boards), each at both fences: 1 change of height and 2 of fence
    # 14 boards with pins (front and back of 6 drawers, two of the carcase), taken up and turned at two fences each
    assert lines[2].startswith("Sled: 4 settings, 3 changes, 28 handlings, 28 turnings, ")
    # joint by joint: 28 walks round and one change of height; one board of each of the 7 boxes stays at a fence once
    assert lines[3].startswith("Joint by joint: 30 settings, 29 changes, 49 handlings, 14 turnings, ")
    assert "Checks: 0 stops, 0 cautions, " in said.out
    book = Path("out") / "Landing chest.xlsx"
    assert f"Workbook: {book}" in lines
    assert f"Plan: {Path('out') / 'Landing chest.json'}" in lines
    assert sheets(book)
    assert maker("projects").out == "Landing chest: 1 carcase, 6 drawers\n"


def test_the_plan_file_holds_what_the_views_print_as_json(maker: Maker) -> None:
    maker("prepare", "box.toml", "--into", "out")
    plan = json.loads(Path("out/Salt box.json").read_bytes())
    for view in ("boards", "joints", "sled", "order", "cuts", "openings", "checks"):
        assert plan[view] == maker(view, "--json").json


def test_prepare_overwrites_only_by_force(maker: Maker) -> None:
    assert maker("prepare", "box.toml", "--into", "out").code == 0
    before = contents(maker.folder)
    Path("box.toml").write_text(BOX.replace("240", "250"), encoding="utf-8")
    said = maker("prepare", "box.toml", "--into", "out")
    assert said.code == 2
    assert said.err.count("is there already") == 2
    assert "--force" in said.err
    assert contents(maker.folder / "out") == {name[4:]: file for name, file in before.items() if name[:4] == "out/"}
    assert maker("prepare", "box.toml", "--into", "out", "--force").out.startswith("Salt box: changed in the store.")


@pytest.mark.parametrize("folder", ["out", "with blanks", "größe/木", "a/b/c", "."])
def test_prepare_writes_into_any_folder(maker: Maker, folder: str) -> None:
    said = maker("prepare", "box.toml", "--into", folder)
    assert said.code == 0, said.err
    assert {"Salt box.xlsx", "Salt box.json"} <= contents(maker.folder / folder).keys()


def test_read_says_what_it_stored(maker: Maker) -> None:
    assert maker("read", "box.toml").out == "Salt box: new in the store.\n4 boards, 4 corners, 8 joined ends.\n"
    assert maker("read", "box.toml").out.startswith("Salt box: in the store already, unchanged.")


def test_a_hyphen_reads_standard_input(maker: Maker) -> None:
    assert maker("read", "-", stdin=BOX).code == 0
    assert maker.outside("read", "-", stdin=named("Tea box").encode()).code == 0
    assert [each["name"] for each in maker("projects", "--json").json] == ["Salt box", "Tea box"]
    assert "standard input, line 1" in maker("read", "-", stdin="]").err


def test_write_gives_back_a_file_that_reads_as_the_same(maker: Maker) -> None:
    maker("read", "box.toml")
    said = maker("write", "Salt box")
    assert said == maker("write", "Salt box", "-")
    assert (said.code, said.err) == (0, "")
    assert "unchanged" in maker("read", "-", stdin=said.out).out
    assert maker("write", "Salt box", "again.toml").code == 0
    assert Path("again.toml").read_text(encoding="utf-8") == said.out
    assert maker("write", "Salt box", "again.toml").code == 2
    assert maker("write", "Salt box", "again.toml", "--force").code == 0


def test_a_workbook_of_a_stored_project_is_written_where_one_says(maker: Maker) -> None:
    maker("read", "box.toml")
    said = maker("workbook", "Salt box", "the box.xlsx")
    assert (said.code, said.out) == (0, "")
    assert "the box.xlsx" in said.err
    assert sheets(Path("the box.xlsx"))
    assert maker("workbook", "Salt box", "the box.xlsx").code == 2
    assert maker("workbook", "Salt box", "box.toml", "--force").code == 2
    assert Path("box.toml").read_text(encoding="utf-8") == BOX


def test_the_schema_printed_is_one_that_a_validator_takes(maker: Maker) -> None:
    schema = maker("schema").json
    jsonschema.Draft202012Validator.check_schema(schema)
