"""Views of a plan: text that fits the terminal, JSON with fixed keys."""

from __future__ import annotations

import fcntl
import os
import re
import struct
import subprocess
import sys
import termios
from contextlib import suppress

import pytest

from planner.cli.views import VIEWS
from tests.cli.maker import Maker

KEYS = {
    # fixed by the design, so that others can check them
    "joints": {
        "joint", "kind", "pin_board", "pin_end", "tail_board", "tail_end", "width_mm", "pin_thickness_mm",
        "tail_thickness_mm", "slope", "bit_height_mm", "pins_mm", "tails_mm",
    },
    "boards": {"mark", "box", "role", "length_mm", "width_mm", "thickness_mm", "material", "labels"},
    # our own
    "cut-list": {"quantity", "length_mm", "width_mm", "thickness_mm", "material", "kind", "marks", "amount", "measure"},
    "hardware": {"what", "quantity", "sizes_mm", "use", "for"},
    "labels": {"mark", "labels"},
    "cuts": {"board", "kind", "face", "from_end_a_mm", "from_reference_edge_mm", "depth_mm", "takes"},
    "practice": {"joint", "bit_height_mm", "length_mm", "stands_for", "passes"},
    "tails": {"setting", "thickness_mm", "leans", "throat_mm", "ends"},
    "openings": {"carcase", "opening", "drawer", "width_mm", "height_mm", "depth_mm"},
    "order": {"number", "machine", "task", "setting", "lengths_mm", "operations", "cautions"},
    "weights": {"mark", "part", "piece", "kg", "filled_kg", "centre_mm"},
    "checks": {"code", "level", "marks", "text", "remedy", "source", "acknowledged"},
}  # fmt: skip
COUNTS = {
    "boards": 50,  # carcase 4 + back + 5 rails with 2 runners each; 6 drawers of 4 boards and a bottom
    "labels": 50,
    "joints": 28,  # 4 corners and 6 × 4
    "openings": 6,
    "practice": 3,  # fronts of 3/4 and backs of 1/2 to sides of 1/2; the carcase of 3/4
    "tails": 4,  # sides of 1/2 and of 3/4, each with cuts that lean left and right
}


def test_every_view_is_looked_at_here() -> None:
    assert KEYS.keys() | {"sled"} == VIEWS.keys() | {"checks"}


@pytest.mark.parametrize("view", KEYS)
def test_a_list_as_json_has_its_keys_and_its_length(chest_maker: Maker, view: str) -> None:
    said = chest_maker(view, "--json")
    assert (said.code, said.err) == (0, "")
    assert said.json
    for row in said.json:
        assert row.keys() >= KEYS[view]
    assert len(said.json) == COUNTS.get(view, len(said.json))


def test_the_sled_as_json_has_the_keys_of_the_design(chest_maker: Maker) -> None:
    sled = chest_maker("sled", "--json").json
    assert sled.keys() >= {"height_changes", "fence_swaps", "joint_by_joint_changes", "settings"}
    for at in sled["settings"]:
        assert at.keys() >= {"setting", "sled", "slope", "bit_mm", "bit_height_mm", "fence", "cuts"}
        assert at["fence"] in {"left", "right"}
        for cut in at["cuts"]:
            assert cut.keys() >= {
                "board", "end", "reference_edge", "width_mm", "thickness_mm", "passes", "residue_mm2"
            }  # fmt: skip
            assert cut["reference_edge"] in {"left", "right"}
            assert all(one.keys() == {"socket", "mark_mm"} for one in cut["passes"])
    ends = {(cut["board"], cut["end"]) for at in sled["settings"] for cut in at["cuts"]}
    assert len(ends) == 28  # half of the 56 joined ends carry pins


def test_labels_as_json_name_all_six_surfaces(chest_maker: Maker) -> None:
    surfaces = {"outside", "inside", "reference_edge", "far_edge", "end_a", "end_b"}
    for view in ("boards", "labels"):
        assert all(board["labels"].keys() == surfaces for board in chest_maker(view, "--json").json)


@pytest.mark.parametrize("view", VIEWS)
@pytest.mark.parametrize("columns", ["20", "40", "80", "250"])
def test_a_view_fits_the_terminal(chest_maker: Maker, view: str, columns: str) -> None:
    said = chest_maker(view, COLUMNS=columns)
    assert said.code == 0, said.err
    assert max(map(len, said.out.splitlines())) <= max(int(columns), 40)


@pytest.mark.parametrize("view", VIEWS)
def test_piped_text_holds_no_escape_codes_and_colour_can_be_forced_and_forbidden(chest_maker: Maker, view: str) -> None:
    plain = chest_maker(view)
    assert "\x1b" not in plain.out
    assert plain.out.strip()
    assert "\x1b[" in chest_maker(view, FORCE_COLOR="1").out
    assert chest_maker(view, FORCE_COLOR="1", NO_COLOR="1") == plain
    assert chest_maker(view, FORCE_COLOR="", NO_COLOR="") == plain


def on_a_terminal(columns: int, **environment: str) -> str:
    """What ``planner checks`` shows on a terminal of its own."""
    ours, theirs = os.openpty()
    fcntl.ioctl(theirs, termios.TIOCSWINSZ, struct.pack("HHHH", 24, columns, 0, 0))  # as tty_ioctl(4) has it
    told = {name: value for name, value in os.environ.items() if name != "COLUMNS"} | {"TERM": "xterm"} | environment
    with subprocess.Popen([sys.executable, "-m", "planner", "checks"], stdout=theirs, stderr=theirs, env=told) as shown:
        os.close(theirs)
        seen = b""
        with os.fdopen(ours, "rb", buffering=0) as screen, suppress(OSError):  # the terminal's end is an error
            while part := screen.read(4096):
                seen += part
        assert shown.wait() == 0
    return seen.decode().replace("\r\n", "\n")


def test_a_terminal_gets_colours_and_lines_that_fit(chest_maker: Maker) -> None:
    del chest_maker
    coloured = on_a_terminal(70)
    assert "\x1b[1m" in coloured
    plain = on_a_terminal(70, NO_COLOR="1")
    assert plain == re.sub(r"\x1b\[[0-9;]*m", "", coloured)
    assert 40 < max(map(len, plain.splitlines())) <= 70
    assert on_a_terminal(70, TERM="dumb") == plain


def test_a_view_without_rows_says_so(maker: Maker) -> None:
    maker("read", "box.toml")
    assert "Nothing." in maker("openings").out
    assert maker("openings", "--json").json == []


def test_a_project_that_is_not_named_must_be_the_only_one(chest_maker: Maker) -> None:
    assert chest_maker("boards") == chest_maker("boards", "Landing chest")
    chest_maker("read", "box.toml")
    said = chest_maker("boards")
    assert (said.code, said.out) == (2, "")
    assert "'Landing chest', 'Salt box'" in said.err
