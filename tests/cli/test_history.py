"""undo, redo, history."""

from __future__ import annotations

import re

import pytest

from planner.store.history import MOST_STATES
from tests.app.folders import contents
from tests.app.texts import BOX
from tests.cli.maker import Maker


@pytest.fixture
def changer(maker: Maker) -> Maker:
    """A maker who made a box longer."""
    assert maker("read", "box.toml").code == 0
    assert maker("read", "-", stdin=BOX.replace("240", "250")).code == 0
    return maker


def lengths(maker: Maker) -> float:
    """Of the longest board, which stands out at both ends."""
    return max(float(board["length_mm"]) for board in maker("boards", "--json").json)


def test_undo_and_redo_say_where_they_led(changer: Maker) -> None:
    there = lengths(changer)
    said = changer("undo")
    assert (said.code, said.err) == (0, "")
    assert said.out == "Salt box: now as in state 1 of 2 (read from box.toml).\n"
    assert lengths(changer) == there - 10
    assert changer("redo", "Salt box").out == "Salt box: now as in state 2 of 2 (read from standard input).\n"
    assert lengths(changer) == there


def test_the_list_marks_where_one_stands_and_what_was_undone(changer: Maker) -> None:
    changer("read", "-", stdin=BOX.replace("240", "260"))
    changer("undo")
    rows = [re.split("  +", line.strip()) for line in changer("history").out.splitlines()]
    when = r"\d{4}-\d\d-\d\d \d\d:\d\d"
    assert [[cell for cell in row if not re.fullmatch(when, cell)] for row in rows[-3:]] == [
        ["1", "read from box.toml"],
        ["2", "now", "read from standard input"],
        ["3", "undone", "read from standard input"],
    ]
    assert all(re.search(when, "  ".join(row)) for row in rows[-3:])


def test_times_are_shown_as_on_the_clock_on_the_wall_and_told_in_utc(changer: Maker) -> None:
    """Nepal is 5:45 h before UTC, all the year round."""
    utc = changer("history", "--json").json[0]["at"]
    here = changer.outside("history", environment={"TZ": "<+0545>-05:45"}).out
    hours, minutes = int(utc[11:13]), int(utc[14:16])
    later = hours * 60 + minutes + 5 * 60 + 45
    assert f"{later // 60 % 24:02}:{later % 60:02}" in here


def test_the_list_as_json_has_its_keys(changer: Maker) -> None:
    first, second = changer("history", "--json").json
    assert first.keys() == {"number", "why", "at", "current"}
    assert (second["number"], second["why"], second["current"]) == (2, "read from standard input", True)


def test_steps_are_counted_and_what_is_too_far_is_refused(changer: Maker) -> None:
    before = contents(changer.store.parent)
    for args in (["undo", "--steps", "2"], ["redo"], ["undo", "--steps", "0"], ["undo", "--steps", "x"]):
        said = changer(*args)
        assert (said.code, said.out) == (2, ""), args
    assert contents(changer.store.parent) == before
    assert changer("undo", "--steps", "1").code == 0


def test_a_sled_measured_anew_is_told_when_it_stays(changer: Maker) -> None:
    changer("keep-sled", "Salt box")
    changer("measure-sled", "bench", "--bit", "7.9 mm")
    assert "Sled bench stays as it was measured last: bit 7.9 mm, then 8 mm." in changer("undo").out


def test_help_says_what_is_dropped_and_how_much_is_kept(maker: Maker) -> None:
    undo, redo, history = (" ".join(maker(name, "--help").out.split()) for name in ("undo", "redo", "history"))
    assert "changed anew: then it is dropped" in undo
    assert "drops what was undone" in redo
    assert f"The last {MOST_STATES} are kept" in history
