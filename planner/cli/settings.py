"""Options and arguments that several commands share."""

from __future__ import annotations

from typing import Annotated

import typer

from planner.app.store_place import StorePlace, store_path
from planner.cli import console
from planner.errors import PlannerError


def store_of(ctx: typer.Context) -> StorePlace:
    """The store that the general options name."""
    return StorePlace(
        store_path(ctx.find_root().params["store"]), tell=lambda news: console.tell(console.safe(str(news)))
    )


def _stored_names(ctx: typer.Context, incomplete: str) -> list[str]:
    """Names for shell completion; a store that can't be read completes nothing."""
    from planner.app.projects import listed

    try:
        return [summary.name for summary in listed(store_of(ctx)) if summary.name.startswith(incomplete)]
    except PlannerError:
        return []


_NAME = "Name of a stored project."
AnyProject = Annotated[
    str | None,
    typer.Argument(
        metavar="PROJECT", help=f"{_NAME} Leave it out when there is only one.", autocompletion=_stored_names
    ),
]
SeveralProjects = Annotated[
    list[str] | None,
    typer.Argument(
        metavar="[PROJECT]...",
        help="Names of stored projects to cut together. Leave them out when there is only one.",
        autocompletion=_stored_names,
    ),
]
NamedProject = Annotated[str, typer.Argument(metavar="PROJECT", help=_NAME, autocompletion=_stored_names)]
ProjectFile = Annotated[str, typer.Argument(metavar="FILE", help="Project file; - is standard input.")]
Force = Annotated[bool, typer.Option("--force", help="Overwrite files that are there already.")]
AsJson = Annotated[bool, typer.Option("--json", help="Print JSON instead of text; lengths in millimetres.")]
