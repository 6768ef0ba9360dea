"""Help, version, mistyped commands and completion."""

from __future__ import annotations

from importlib.metadata import version

import pytest
from typer.main import get_command

from planner.cli.main import app
from planner.cli.views import VIEWS
from tests.cli.maker import Maker

COMMANDS = sorted(get_command(app).commands)  # type: ignore[attr-defined]


def test_the_commands_are_those_agreed() -> None:
    others = {"prepare", "read", "write", "workbook", "schema", "projects", "forget", "new-sled"}
    others |= {"undo", "redo", "history", "sleds", "keep-sled", "measure-sled", "drop-sled"}
    others |= {"change", "places", "resize", "add-drawer", "ask", "remove-drawer", "swap-timber"}
    others |= {"checks", "acknowledge", "rough", "buy", "saw", "rack", "rack-in", "rack-out"}
    assert set(COMMANDS) == others | VIEWS.keys()


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_has_help_and_stands_in_the_list_in_full(maker: Maker, command: str) -> None:
    said = maker(command, "--help")
    assert said.code == 0
    assert f"Usage: planner {command}" in said.out
    first_line = said.out.split("\n\n")[1].strip()
    assert first_line.endswith(".")
    listed = maker("--help", COLUMNS="80").out.split("Commands:")[1]
    assert any(line.split() == [command, *first_line.split()] for line in listed.splitlines())


@pytest.mark.parametrize("command", COMMANDS)
def test_every_argument_and_option_is_explained(command: str) -> None:
    for parameter in get_command(app).commands[command].params:  # type: ignore[attr-defined]
        assert parameter.help.endswith(".")


def test_no_command_at_all_shows_the_help(maker: Maker) -> None:
    assert maker() == maker("--help") == maker("-h")
    assert maker().code == 0


def test_the_version_is_that_of_the_package(maker: Maker) -> None:
    said = maker("--version")
    assert (said.code, said.out) == (0, f"planner {version('planner')}\n")


@pytest.mark.parametrize(("typed", "meant"), [("bords", "boards"), ("prepar", "prepare"), ("work-book", "workbook")])
def test_a_mistyped_command_is_answered_with_the_nearest(maker: Maker, typed: str, meant: str) -> None:
    said = maker(typed)
    assert (said.code, said.out) == (2, "")
    assert typed in said.err
    assert meant in said.err
    assert "planner --help" in said.err


@pytest.mark.parametrize(
    ("args", "told"),
    [
        (["read"], "FILE"),
        (["boards", "--jsn"], "--json"),
        (["prepare", "box.toml"], "--into"),
        (["prepare", "box.toml", "--into"], "--into"),
        (["boards", "--store"], "--store"),
        (["boards", "a", "b"], "b"),
    ],
)
def test_misuse_is_refused_with_what_is_wrong_and_where_help_is(maker: Maker, args: list[str], told: str) -> None:
    said = maker(*args)
    assert (said.code, said.out) == (2, "")
    assert told in said.err
    assert "--help" in said.err
    assert not maker.store.parent.exists()


@pytest.mark.parametrize("columns", ["40", "60", "200"])
def test_help_fits_the_terminal(maker: Maker, columns: str) -> None:
    for args in ([], ["prepare"], ["boards"]):
        out = maker(*args, "--help", COLUMNS=columns).out
        assert max(map(len, out.splitlines())) <= int(columns)


# --- completion ---------------------------------------------------------------------------------------------


def complete(maker: Maker, line: str, **environment: str) -> set[str]:
    asked = {"_PLANNER_COMPLETE": "complete_bash", "COMP_WORDS": line, "COMP_CWORD": str(line.count(" "))}
    said = maker.outside(environment=asked | environment)
    return set(said.out.split("\n")) - {""}


def test_the_shell_completes_commands_and_options(maker: Maker) -> None:
    assert complete(maker, "planner bo") == {"boards"}
    assert "--json" in complete(maker, "planner boards --")


def test_the_shell_completes_names_of_stored_projects(chest_maker: Maker) -> None:
    assert complete(chest_maker, "planner boards La") == {"Landing chest"}


def test_a_store_that_cannot_be_read_completes_nothing(maker: Maker) -> None:
    assert complete(maker, "planner boards x", PLANNER_STORE=str(maker.folder)) == set()


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_completion_can_be_shown_for_each_shell(maker: Maker, shell: str) -> None:
    said = maker.outside(environment={"_PLANNER_COMPLETE": f"source_{shell}"})
    assert said.code == 0
    assert "_PLANNER_COMPLETE" in said.out
