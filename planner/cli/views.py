"""Commands that show a plan: each a list to read, or the same list as JSON."""

from __future__ import annotations

from collections.abc import Callable
from types import MappingProxyType

import typer

from planner.cli import console
from planner.cli.settings import AnyProject, AsJson, SeveralProjects, store_of

VIEWS = MappingProxyType(
    {
        "cut-list": "Show what to cut, by thickness and material.",
        "hardware": "Show what to buy besides wood.",
        "boards": "Show every board with its size and its two ends.",
        "labels": "Show what to write on every surface.",
        "joints": "Show every joint with its gauge settings and pin places.",
        "sled": "Show every sled cut of one or more projects, by setting.",
        "practice": "Show the practice joints to make first.",
        "tails": "Show where to trace and saw each tail end.",
        "cuts": "Show grooves, rabbets and housings.",
        "openings": "Show the openings and the drawers that fill them.",
        "order": "Show the order of operations.",
        "weights": "Show what the piece and its parts weigh.",
    }
)
"""Name of each view and its help."""


def view(name: str) -> Callable[..., None]:
    """The command that shows one view."""
    return _sled if name == "sled" else _view_of_one(name)


def _view_of_one(name: str) -> Callable[..., None]:
    def show(ctx: typer.Context, project: AnyProject = None, json: AsJson = False) -> None:
        from planner.app.plans import plan_of
        from planner.present import json_out, tables

        plan, function = plan_of(project, store_of(ctx)), name.replace("-", "_")
        if json:
            console.out_json(getattr(json_out, f"{function}_json")(plan))
        else:
            console.out_table(getattr(tables, function)(plan))

    return show


def _sled(ctx: typer.Context, projects: SeveralProjects = None, json: AsJson = False) -> None:
    from planner.app.plans import sled_batch
    from planner.present.json_sled import sled_plan_json
    from planner.present.views.sled import sled_together

    batch = sled_batch(projects or (), store_of(ctx))
    if json:
        console.out_json(sled_plan_json(batch.sled))
    else:
        console.out_table(sled_together(batch))
