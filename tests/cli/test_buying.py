"""rough, buy, saw, rack, rack-in, rack-out."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from tests.app.texts import SAMPLES
from tests.cli.maker import Maker

RACK = str(SAMPLES / "hollin_rack.csv")


@pytest.fixture
def stocked(maker: Maker) -> Maker:
    """A maker with a box and a rack."""
    assert maker("read", "box.toml").code == 0
    assert maker("rack-in", RACK).code == 0
    return maker


def test_an_empty_rack_says_how_to_fill_it_and_makes_no_store(maker: Maker) -> None:
    said = maker("rack")
    assert said.code == 0
    assert "planner rack-in FILE" in said.out
    assert maker("rack", "--json").json == []
    assert not maker.store.parent.exists()


def test_the_rack_lists_what_was_read_in_and_gives_it_up(stocked: Maker) -> None:
    out = stocked("rack", COLUMNS="200").out
    for told in ("On the rack", "Hollin yard", "ASH-1", "6.90 USD / board foot", "1 defect"):
        assert told in " ".join(out.split())
    assert "ASH-1, ASH-2" in stocked("rack-in", RACK).out
    assert stocked("rack-out", "ASH-1").code == 0
    refused = stocked("rack-out", "ASH-1")
    assert refused.code == 2
    assert "'ASH-1'" in refused.err
    marks = {lot["mark"] for lot in stocked("rack", "--json").json}
    assert "ASH-1" not in marks
    assert "ASH-2" in marks


def test_a_bad_list_is_refused_by_line_and_column_and_takes_nothing_in(maker: Maker) -> None:
    said = maker("rack-in", "-", stdin="mark,material,length,width,thickness,count\nR1,ash,8,6 in,4/4,1\n")
    assert said.code == 2
    assert "standard input, line 2, column length" in said.err
    assert maker("rack", "--json").json == []
    assert (
        maker(
            "rack-in", "-", "--units", "in", stdin="mark,material,length,width,thickness,count\nR1,ash,80,6,4/4,1\n"
        ).code
        == 0
    )


def test_buying_and_sawing_without_wood_say_what_to_find(maker: Maker) -> None:
    maker("read", "box.toml")
    assert "to find" in maker("buy").out
    assert "Nothing." in maker("saw").out
    assert maker("rough").code == 0
    assert {"parts", "sold", "material"} <= maker("rough", "--json").json[0].keys()
    need = maker("buy", "--json").json["needs"][0]
    assert need["cutting"] is None
    assert need["to_find"]["waste_percent"] == 25.0


def test_buying_writes_a_workbook_once(stocked: Maker, tmp_path: Path) -> None:
    book = tmp_path / "stock.xlsx"
    assert stocked("buy", "--rounds", "0", "--workbook", str(book)).code == 0
    assert book.exists()
    assert stocked("buy", "--rounds", "0", "--workbook", str(book)).code == 2
    assert stocked("buy", "--rounds", "0", "--workbook", str(tmp_path / "stock.txt")).code == 2


def test_seconds_and_rounds_together_are_refused(stocked: Maker) -> None:
    said = stocked("buy", "--seconds", "1", "--rounds", "1")
    assert said.code == 2
    assert "not both" in said.err


def test_commands_that_do_not_cut_load_no_solver() -> None:
    code = (
        "import sys; sys.argv = ['planner', 'rack', '--help']\n"
        "from planner.cli.main import run\n"
        "try: run()\nexcept SystemExit: print(sorted({'numpy', 'highspy'} & set(sys.modules)), file=sys.stderr)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stderr.strip() == "[]"
