"""The commands, in the order in which help lists them. Read this first to find one."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from planner.cli import ask, buying, change, checks, console, files, history, new_sled, sleds, stored, views
from planner.cli.group import Planner

app = typer.Typer(
    cls=Planner,
    name="planner",
    rich_markup_mode=None,
    context_settings={"help_option_names": ["-h", "--help"]},
)

app.command()(files.prepare)
app.command()(ask.ask)
app.command()(files.read)
app.command()(files.write)
app.command()(files.workbook)
app.command()(files.schema)
app.command()(stored.projects)
app.command()(stored.forget)
for command in (
    change.change, change.places, change.resize, change.add_drawer, change.remove_drawer, change.swap_timber
):  # fmt: skip
    app.command()(command)
app.command()(history.undo)
app.command()(history.redo)
app.command()(history.history)
for name, help_text in views.VIEWS.items():
    app.command(name, help=help_text)(views.view(name))
app.command()(buying.rough)
app.command()(buying.buy)
app.command()(buying.saw)
app.command()(buying.rack)
app.command()(buying.rack_in)
app.command()(buying.rack_out)
app.command()(checks.checks)
app.command()(checks.acknowledge)
app.command()(sleds.sleds)
app.command()(sleds.keep_sled)
app.command()(sleds.measure_sled)
app.command()(sleds.drop_sled)
app.command()(new_sled.new_sled)


def _version(asked: bool) -> None:
    if asked:
        from importlib.metadata import version

        console.out(f"planner {version('planner')}")
        raise typer.Exit


@app.callback()
def planner(
    store: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="The store; else PLANNER_STORE, else one in your data folder."),
    ] = None,
    debug: Annotated[bool, typer.Option("--debug", help="Show a traceback when something goes wrong.")] = False,
    version: Annotated[
        bool, typer.Option("--version", callback=_version, is_eager=True, help="Show the version.")
    ] = False,
) -> None:
    """Plan a whole piece of dovetailed casework: boards, labels, sled cuts, order of work, workbook."""


def run() -> None:
    """Entry point of the program."""
    app(prog_name="planner")
