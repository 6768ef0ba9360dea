"""Everything that can't be done is refused in plain words, with its own exit code, and changes nothing."""

from __future__ import annotations

import errno
import json
import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from planner.app.projects import keep
from planner.app.store_place import StorePlace
from planner.cli.console import Exit
from planner.intake.project_file import read_project
from tests.app.folders import contents
from tests.app.texts import BAD, BOX, IMPOSSIBLE
from tests.cli.maker import Maker, Said


def refused(said: Said, code: int) -> str:
    assert (said.code, said.out) == (code, "")
    assert "Traceback" not in said.err
    return said.err


def test_the_exit_codes_are_those_agreed() -> None:
    assert (Exit.DONE, Exit.NO_PLAN, Exit.INPUT, Exit.STORE, Exit.INTERRUPTED) == (0, 1, 2, 3, 130)


@pytest.mark.parametrize("command", [["read", "-"], ["prepare", "-", "--into", "out"]])
@pytest.mark.parametrize(
    ("text", "code"),
    [
        (BAD, 2),
        (BOX[: len(BOX) // 2], 2),
        ("", 2),
        ("format = 2", 2),
        (b"\xff\xfe\x00", 2),
        (b"name = '\xf6'", 2),
        ("x" * 1_000_001, 2),
        (IMPOSSIBLE, 1),
    ],
    ids=["two mistakes", "torn", "empty", "newer", "utf-16", "latin-1", "long", "impossible"],
)
def test_bad_files_change_nothing(chest_maker: Maker, command: list[str], text: str | bytes, code: int) -> None:
    before = contents(chest_maker.folder.parent)
    err = refused(chest_maker(*command, stdin=text), code)
    assert contents(chest_maker.folder.parent) == before
    assert len(err.splitlines()) >= 3  # heading, place, what


def test_all_problems_are_told_each_with_place_and_remedy(maker: Maker) -> None:
    err = refused(maker("read", "-", stdin=BAD), 2)
    assert "standard input, line 18: box[1].length" in err
    assert "240 furlongs" in err
    assert "standard input, line 23: box[1].castors" in err
    assert "Write it like 23 1/2" in err
    assert "Known here: mark, title" in err


def test_problems_are_told_as_json_when_json_was_asked_for(maker: Maker) -> None:
    told = json.loads(refused(maker("boards", "Salt bx", "--json"), 2))
    assert [problem.keys() for problem in told["problems"]] == [{"where", "what", "remedy"}]
    assert json.loads(refused(maker("boards", "--json", "--jsn"), 2))["problems"][0]["where"] == "planner boards"


def test_problems_fit_a_narrow_terminal(maker: Maker) -> None:
    err = refused(maker("read", "-", stdin=BAD, COLUMNS="40"), 2)
    assert max(map(len, err.splitlines())) <= 40
    assert "240 furlongs" in err


def test_problems_have_colour_only_where_it_is_wanted(maker: Maker) -> None:
    assert "\x1b" not in maker("read", "none").err
    assert "\x1b[1;31m" in maker("read", "none", FORCE_COLOR="1").err
    assert "\x1b" not in maker("read", "none", FORCE_COLOR="1", NO_COLOR="1").err


@pytest.mark.parametrize(
    "args", [["read", "\x1b[31mred\x07"], ["boards", "\x1b]0;title\x07"], ["\x1b[2J"], ["--\x1b[2J"]]
)
def test_what_was_typed_cannot_steer_the_terminal(maker: Maker, args: list[str]) -> None:
    err = refused(maker(*args), 2)
    assert all(char.isprintable() or char == "\n" for char in err)


def test_text_from_a_file_cannot_steer_the_terminal(maker: Maker) -> None:
    text = BOX.replace('mark = "S"', 'mark = "S"\ntitle = "\\u001b[2J\\u202e"')
    for said in (maker("read", "-", stdin=text), maker("boards", "Salt box"), maker("labels", "Salt box")):
        assert all(char.isprintable() or char == "\n" for char in said.out + said.err)


def test_a_store_that_is_none_is_refused_by_its_own_code(maker: Maker) -> None:
    for args in (["read", "box.toml"], ["boards"], ["projects"], ["forget", "x", "--yes"], ["write", "x"]):
        before = contents(maker.folder)
        assert "box.toml" in refused(maker(*args, "--store", "box.toml"), 3)
        assert contents(maker.folder) == before


def test_a_stored_project_that_cannot_be_planned_has_the_code_of_a_plan(maker: Maker) -> None:
    keep(read_project(IMPOSSIBLE, "as if an older program had stored it"), StorePlace(maker.store), why="a test")
    assert "60 tails" in refused(maker("boards"), 1)
    assert "60 tails" in refused(maker("workbook", "Salt box", "box.xlsx"), 1)
    assert sorted(contents(maker.folder)) == ["box.toml"]


@pytest.mark.parametrize("name", [b"\xff.toml", b"a\nb.toml"])
def test_names_that_cannot_be_printed_are_spelled_out(maker: Maker, name: bytes) -> None:
    err = refused(maker("read", os.fsdecode(name)), 2)
    assert "no such file" in err
    assert "\\" in err


# --- the program's own mistakes, interruptions, readers that go away ----------------------------------------


def planned_mistake(*_: object, **__: object) -> None:
    raise RuntimeError("the glue\x1b[2J is dry")


def test_a_mistake_of_the_program_is_owned_without_a_traceback(maker: Maker, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("planner.pipeline.plan", planned_mistake)
    err = refused(maker("read", "box.toml"), 70)
    assert "the glue\\x1b[2J is dry" in err
    assert "--debug" in err
    assert not maker.store.parent.exists()


def test_debug_shows_where_it_happened(maker: Maker, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("planner.pipeline.plan", planned_mistake)
    for args in (["--debug", "read", "box.toml"], ["read", "box.toml", "--debug"]):
        said = maker(*args)
        assert said.code == 70
        assert "Traceback" in said.err
        assert "planned_mistake" in said.err
    assert "Traceback" in maker("--debug", "read", "none").err


def test_what_the_system_refuses_is_told_as_such(maker: Maker, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object) -> None:
        raise OSError(errno.EMFILE, os.strerror(errno.EMFILE), "some file")

    monkeypatch.setattr("planner.pipeline.plan", refuse)
    err = refused(maker("read", "box.toml"), 2)
    assert "some file" in err
    assert "Too many open files" in err


def test_an_interruption_leaves_nothing_and_says_so(maker: Maker, monkeypatch: pytest.MonkeyPatch) -> None:
    def interrupted(*_: object, **__: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("planner.app.plans.keep", interrupted)
    before = contents(maker.folder)
    assert refused(maker("prepare", "box.toml", "--into", "out"), 130) == "Interrupted.\n"
    assert contents(maker.folder) == before


def test_a_signal_in_the_middle_leaves_nothing(maker: Maker) -> None:
    with subprocess.Popen(
        [sys.executable, "-m", "planner", "read", "-"], stdin=subprocess.PIPE, stderr=subprocess.PIPE
    ) as waiting:
        assert waiting.stdin
        assert waiting.stderr
        waiting.stdin.write(BOX.encode() + b"#" * 70_000)  # more than a pipe holds: once written, it is reading
        waiting.stdin.flush()
        waiting.send_signal(signal.SIGINT)
        waiting.stdin.close()
        assert waiting.wait() == 130
        assert waiting.stderr.read() == b"Interrupted.\n"
    assert not maker.store.parent.exists()


@pytest.mark.parametrize("args", [["order", "--json"], ["labels"], ["write", "Landing chest"], ["--help"]])
def test_a_reader_that_goes_away_is_no_trouble(chest_maker: Maker, args: list[str]) -> None:
    del chest_maker
    reader, writer = os.pipe()
    os.close(reader)
    done = subprocess.run([sys.executable, "-m", "planner", *args], stdout=writer, stderr=subprocess.PIPE, check=False)
    os.close(writer)
    assert done.stderr == b""
    assert done.returncode in {141, 1}  # 1 is typer's own, for help


def test_a_full_disk_behind_standard_output_is_refused(chest_maker: Maker) -> None:
    del chest_maker
    with Path("/dev/full").open("wb") as full:
        done = subprocess.run(
            [sys.executable, "-m", "planner", "order"], stdout=full, stderr=subprocess.PIPE, check=False
        )
    assert done.returncode == 2
    assert b"No space left on device" in done.stderr
    assert b"Exception" not in done.stderr


def test_a_terminal_that_knows_only_ascii_gets_everything_spelled_out(maker: Maker) -> None:
    text = BOX.replace("Salt box", "Größe ½ 木")
    assert maker.outside("read", "-", stdin=text.encode(), environment={"PYTHONIOENCODING": "ascii"}).code == 0
    said = maker.outside("order", environment={"PYTHONIOENCODING": "ascii"})
    assert (said.code, said.err) == (0, "")
    assert said.out.isascii()
