"""Commands that read or write files."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from planner.cli import console
from planner.cli.settings import Force, NamedProject, ProjectFile, store_of

Into = Annotated[Path, typer.Option("--into", metavar="FOLDER", help="Folder for the files; made if need be.")]
Target = Annotated[Path, typer.Argument(metavar="FILE", help="Where to write it.")]
TargetOrOut = Annotated[str, typer.Argument(metavar="[FILE]", help="Where to write it; - is standard output.")]


def prepare(ctx: typer.Context, file: ProjectFile, into: Into, force: Force = False) -> None:
    """Do all at once: project file to store, workbook and plan."""
    from planner.app import plans
    from planner.cli.summary import of_prepared

    console.out(of_prepared(plans.prepare(file, into, store_of(ctx), force=force)))


def read(ctx: typer.Context, file: ProjectFile) -> None:
    """Read a project file into the store."""
    from planner.app import projects
    from planner.cli.summary import of_kept

    console.out(of_kept(projects.read(file, store_of(ctx))))


def write(ctx: typer.Context, project: NamedProject, file: TargetOrOut = "-", force: Force = False) -> None:
    """Write a stored project back to a project file."""
    from planner.app import projects
    from planner.app.source import STANDARD_INPUT

    if file == STANDARD_INPUT:
        console.out(projects.write(project, store_of(ctx)))
    else:
        projects.write_to(Path(file), project, store_of(ctx), force=force)
        console.tell(f"Written: {console.safe(file)}")


def workbook(ctx: typer.Context, project: NamedProject, file: Target, force: Force = False) -> None:
    """Write the workbook of a stored project."""
    from planner.app import plans

    plans.write_workbook(file, project, store_of(ctx), force=force)
    console.tell(f"Written: {console.safe(str(file))}")


def schema() -> None:
    """Print the JSON Schema of the project file."""
    from planner.app.schema import schema

    console.out_json(schema())
