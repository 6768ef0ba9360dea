"""Commands about the store as a whole."""

from __future__ import annotations

from typing import Annotated

import typer

from planner.cli import console
from planner.cli.settings import AsJson, NamedProject, store_of
from planner.errors import InputError, Problem

Yes = Annotated[bool, typer.Option("--yes", help="Don't ask back: forget it.")]


def projects(ctx: typer.Context, json: AsJson = False) -> None:
    """List the projects in the store."""
    from dataclasses import asdict

    from planner.app.projects import listed
    from planner.cli.summary import of_list

    found = listed(store_of(ctx))
    console.out_json([asdict(each) for each in found]) if json else console.out(of_list(found))


def forget(ctx: typer.Context, project: NamedProject, yes: Yes = False) -> None:
    """Take a project out of the store; files are left alone."""
    from planner.app import projects

    if not yes:
        remedy = f"To keep a copy: planner write {project!r} FILE. To forget it: add --yes."
        raise InputError([Problem(where=f"project {project!r}", what="would be lost.", remedy=remedy)])
    projects.forget(project, store_of(ctx))
    console.tell(f"Forgotten: {console.safe(project)}")
