"""Commands about what the checks found."""

from __future__ import annotations

from typing import Annotated

import typer

from planner.cli import console
from planner.cli.settings import AnyProject, AsJson, NamedProject, store_of

_ALL = "Usually all that the rule found."
Strict = Annotated[bool, typer.Option("--strict", help="End with exit code 1 while a stop is open.")]
Code = Annotated[str, typer.Argument(metavar="CODE", help="Name of the rule, as in planner checks --json.")]
Marks = Annotated[list[str] | None, typer.Argument(metavar="[MARK]...", help=f"What the finding is about. {_ALL}")]
Why = Annotated[str | None, typer.Option("--why", metavar="TEXT", help="Why you go on all the same.")]
OpenAgain = Annotated[bool, typer.Option("--open-again", help="Take back what was said of it.")]


def checks(ctx: typer.Context, project: AnyProject = None, strict: Strict = False, json: AsJson = False) -> None:
    """Show what to know before cutting."""
    from planner.app.plans import plan_of
    from planner.present.json_out import checks_json
    from planner.present.tables import checks as table

    plan = plan_of(project, store_of(ctx))
    if json:
        console.out_json(checks_json(plan))
    else:
        console.out_table(table(plan))
    if strict and any(each.level == "stop" and not each.acknowledged for each in plan.findings):
        raise typer.Exit(console.Exit.NO_PLAN)


def acknowledge(
    ctx: typer.Context,
    project: NamedProject,
    code: Code,
    marks: Marks = None,
    *,
    why: Why = None,
    open_again: OpenAgain = False,
) -> None:
    """Answer for a finding of the checks, with a reason.

    It is listed apart from the open ones from then on, and in the workbook with your reason. Should it become graver,
    it is open again.
    """
    from planner.app import acknowledge as app

    wanted = app.Wanted(project=project, code=code, marks=tuple(marks or ()))
    if open_again is (why is not None):
        raise typer.BadParameter("Give a reason with --why, or --open-again.")
    found = app.open_again(wanted, store_of(ctx)) if why is None else app.acknowledge(wanted, why, store_of(ctx))
    word = "Acknowledged" if why is not None else "Open again"
    console.out("\n".join(f"{word}: {console.safe(' '.join(each.marks))}: {console.safe(each.text)}" for each in found))
