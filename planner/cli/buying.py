"""Commands about wood: what there is, how large parts are sawn out, what to buy, and how to cut it."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Literal

import typer

from planner.cli import console
from planner.cli.settings import AnyProject, AsJson, Force, store_of
from planner.errors import PlannerError

if TYPE_CHECKING:
    from planner.app.buying import Bought, Progress

_GREATEST_SECONDS, _GREATEST_ROUNDS = 3600, 1000


def _marks(ctx: typer.Context, incomplete: str) -> list[str]:
    """Marks for shell completion; a store that can't be read completes nothing."""
    from planner.app.rack import on_the_rack

    try:
        return [lot.mark for lot in on_the_rack(store_of(ctx)) if lot.mark.startswith(incomplete)]
    except PlannerError:
        return []


ListFile = Annotated[str, typer.Argument(metavar="FILE", help="List of wood (CSV); - is standard input.")]
Units = Annotated[
    Literal["in", "mm"] | None,
    typer.Option(help="Unit of bare numbers, and of what is shown; else each length in a list must say its own."),
]
Marks = Annotated[list[str], typer.Argument(metavar="MARK...", help="Marks of the wood.", autocompletion=_marks)]
AimWord = Annotated[
    Literal["cheapest", "fewest", "on-hand"],
    typer.Option("--aim", help="What is kept lowest: cost, number of boards, or cost from the rack alone."),
]
Seconds = Annotated[
    float | None,
    typer.Option(
        "--seconds",
        min=0,
        max=_GREATEST_SECONDS,
        help="Look as long as this. Else a fixed number of rounds, which gives the same plan every time.",
    ),
]
Rounds = Annotated[
    int | None, typer.Option("--rounds", min=0, max=_GREATEST_ROUNDS, help="How many rounds that is. Usually 3.")
]
Book = Annotated[
    Path | None, typer.Option("--workbook", metavar="FILE", help="Write buying list and saw cuts as a workbook, too.")
]


def rack(ctx: typer.Context, units: Units = None, json: AsJson = False) -> None:
    """List the wood that is known of: on the rack, and on offer."""
    from planner.app.rack import on_the_rack
    from planner.lengths import Grid
    from planner.present.buying_json import rack_json
    from planner.present.views.rack import rack as table

    lots = on_the_rack(store_of(ctx))
    if json:
        console.out_json(rack_json(lots))
    elif lots:
        console.out_table(table(lots, Grid.MM_TENTH if units == "mm" else Grid.IN_32))
    else:
        console.out("No wood is known of yet. Read in a list: planner rack-in FILE")


def rack_in(ctx: typer.Context, file: ListFile, units: Units = None) -> None:
    """Read in a list of the wood on your rack and at the yard.

    One line for each lot, all or none; a mark that is known gets what the list says. Columns, named in the first line:
    mark, material, length, width, thickness; and if need be count, surfaced, yard, price, per, currency, least,
    counted, defects, remark.
    """
    from planner.app.rack import rack_in as read
    from planner.lengths import Unit

    done = read(file, Unit(units) if units else None, store_of(ctx))
    for marks, word in ((done.new, "new"), (done.changed, "changed"), (done.same, "as before")):
        if marks:
            console.out(f"{len(marks)} {word}: {', '.join(marks)}")


def rack_out(ctx: typer.Context, marks: Marks) -> None:
    """Take wood off the list: it is used up, or no longer on offer."""
    from planner.app.rack import rack_out as take_out

    take_out(marks, store_of(ctx))
    console.out(f"Taken out: {', '.join(marks)}")


def rough(ctx: typer.Context, project: AnyProject = None, json: AsJson = False) -> None:
    """Show how large to saw each part out before it is planed."""
    from planner.app.plans import plan_of
    from planner.present.buying_json import rough_json
    from planner.present.views.rough import rough as table

    plan = plan_of(project, store_of(ctx))
    console.out_json(rough_json(plan)) if json else console.out_table(table(plan))


def buy(
    ctx: typer.Context,
    project: AnyProject = None,
    *,
    aim: AimWord = "cheapest",
    seconds: Seconds = None,
    rounds: Rounds = None,
    workbook: Book = None,
    force: Force = False,
    json: AsJson = False,
) -> None:
    """Show what to buy and what to take from the rack.

    Where no wood is known, it goes by usual sizes, and adds your percentage for waste. Interrupt it (Ctrl-C), and it
    keeps the best it has found.
    """
    from planner.app.buying import write_workbook
    from planner.present.buying_json import buying_json
    from planner.present.views.buying import buying

    found = _bought(ctx, project, aim, seconds, rounds)
    if workbook:
        write_workbook(workbook, found, force=force)
    console.out_json(buying_json(found.purchase)) if json else console.out_table(buying(found.plan, found.purchase))


def saw(
    ctx: typer.Context,
    project: AnyProject = None,
    *,
    aim: AimWord = "cheapest",
    seconds: Seconds = None,
    rounds: Rounds = None,
    json: AsJson = False,
) -> None:
    """Show how to saw the rough parts out, setting by setting."""
    from planner.present.buying_json import buying_json
    from planner.present.views.saw_cuts import saw_cuts

    found = _bought(ctx, project, aim, seconds, rounds)
    console.out_json(buying_json(found.purchase)) if json else console.out_table(saw_cuts(found.plan, found.purchase))


def _bought(ctx: typer.Context, project: str | None, aim: str, seconds: float | None, rounds: int | None) -> Bought:
    from planner.app.buying import USUAL_ROUNDS, Effort
    from planner.app.buying import buy as bought
    from planner.plan.stock_jobs import Aim

    if seconds is not None and rounds is not None:
        raise typer.BadParameter("Give --seconds or --rounds, not both.")
    aims = {"cheapest": Aim.CHEAPEST, "fewest": Aim.FEWEST, "on-hand": Aim.ON_HAND}
    effort = Effort(seconds=seconds, rounds=USUAL_ROUNDS if rounds is None else rounds)
    shown = sys.stderr.isatty()
    try:
        return bought(project, aims[aim], effort, store_of(ctx), _show if shown else lambda _: None)
    finally:
        if shown:
            console.tell_passing("")


def _show(news: Progress) -> None:
    """One line that is written over."""
    from planner.present.views.buying import progress_words

    console.tell_passing(progress_words(news.stuff, (news.number, news.of), news.answer))
