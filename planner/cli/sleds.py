"""Commands about the sleds on the wall, which the store keeps for all projects."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Annotated

import typer

from planner.cli import console
from planner.cli.settings import AsJson, NamedProject, store_of
from planner.errors import PlannerError

if TYPE_CHECKING:
    from planner.app.sleds import KeptSled, Remeasured


def _kept_names(ctx: typer.Context, incomplete: str) -> list[str]:
    """Names for shell completion; a store that can't be read completes nothing."""
    from planner.app.sleds import kept

    try:
        return [each.sled.name for each in kept(store_of(ctx)) if each.sled.name.startswith(incomplete)]
    except PlannerError:
        return []


KeptName = Annotated[
    str, typer.Argument(metavar="SLED", help="Name of a sled that the store keeps.", autocompletion=_kept_names)
]
OwnName = Annotated[
    str | None,
    typer.Argument(metavar="[SLED]", help="Name of a sled of the project. Leave it out when there is only one."),
]
_LENGTH, _OR_NONE = "LENGTH", "LENGTH|none"
Slope = Annotated[str | None, typer.Option(metavar="SLOPE", help="Of its fences: 1:8, or 7 deg off square.")]
Bit = Annotated[str | None, typer.Option(metavar=_LENGTH, help="Diameter of the bit, across its cutting edges.")]
Slot = Annotated[
    str | None,
    typer.Option(metavar=_OR_NONE, help="Width of the slot that the bit really cuts; none takes the bit's diameter."),
]
BitHeight = Annotated[
    str | None, typer.Option("--greatest-bit-height", metavar=_LENGTH, help="Highest the bit can stand.")
]
Widest = Annotated[str | None, typer.Option("--greatest-width", metavar=_LENGTH, help="Widest board that fits.")]
Longest = Annotated[
    str | None, typer.Option("--greatest-upright", metavar=_LENGTH, help="Longest board that can stand on end.")
]
DepthSoft = Annotated[
    str | None,
    typer.Option("--greatest-depth-soft", metavar=_OR_NONE, help="Highest cut to take at once in a soft wood."),
]
DepthHard = Annotated[
    str | None,
    typer.Option("--greatest-depth-hard", metavar=_OR_NONE, help="The same in a hard wood."),
]


def sleds(ctx: typer.Context, json: AsJson = False) -> None:
    """List the sleds that the store keeps, and their projects."""
    from planner.app.sleds import kept
    from planner.present.kept_sleds import sled_json

    found = kept(store_of(ctx))
    if json:
        console.out_json([sled_json(each.sled, each.projects) for each in found])
    elif found:
        console.out("\n".join(line for each in found for line in _in_words(each)))
    else:
        console.out("The store keeps no sled yet. Take one in: planner keep-sled PROJECT SLED")


def keep_sled(ctx: typer.Context, project: NamedProject, sled: OwnName = None) -> None:
    """Keep a sled of a stored project for all projects.

    A project takes a kept sled when its file says [sled.NAME] with kept = true.
    """
    from planner.app.projects import Change
    from planner.app.sleds import keep_sled as keep

    kept, change = keep(project, sled, store_of(ctx))
    already = " already" if change is Change.UNCHANGED else ""
    console.out(f"{console.safe(kept.name)}: kept{already}; {console.safe(project)} is one of its projects.")


def measure_sled(
    ctx: typer.Context,
    sled: KeptName,
    *,
    bit: Bit = None,
    slot: Slot = None,
    slope: Slope = None,
    greatest_bit_height: BitHeight = None,
    greatest_width: Widest = None,
    greatest_upright: Longest = None,
    greatest_depth_soft: DepthSoft = None,
    greatest_depth_hard: DepthHard = None,
    json: AsJson = False,
) -> None:
    """Say what was measured anew on a kept sled.

    Every project that shares the sled is planned again and shown. If one of them can't be built any more, nothing is
    changed. Lengths are given with their unit: "12.62 mm", "1/2 in".
    """
    from dataclasses import asdict

    from planner.app.measured import Measured
    from planner.app.sleds import measure
    from planner.present.kept_sleds import sled_json

    said = Measured(
        slope=slope, bit=bit, slot=slot, greatest_bit_height=greatest_bit_height, greatest_width=greatest_width,
        greatest_upright=greatest_upright, greatest_depth_soft=greatest_depth_soft,
        greatest_depth_hard=greatest_depth_hard,
    )  # fmt: skip
    done = measure(sled, said, store_of(ctx))
    if json:
        effects = [asdict(each) for each in done.effects]
        console.out_json({"sled": sled_json(done.after.sled, done.after.projects), "projects": effects})
    else:
        console.out("\n".join(_measured(done)))


def drop_sled(ctx: typer.Context, sled: KeptName) -> None:
    """Keep a sled no longer; only when no project has it."""
    from planner.app.sleds import drop

    dropped = drop(sled, store_of(ctx))
    console.out("\n".join(("No longer kept:", *_in_words(dropped))))


def _in_words(kept: KeptSled) -> Iterator[str]:
    from planner.present.kept_sleds import sled_in_words

    first, *limits = sled_in_words(kept.sled, kept.unit)
    yield f"{console.safe(kept.sled.name)}: {first}"
    yield from (f"  {limit}" for limit in limits)
    yield f"  projects: {', '.join(map(console.safe, kept.projects)) or 'none'}"


def _measured(done: Remeasured) -> Iterator[str]:
    from planner.present.kept_sleds import effect_in_words

    yield from _in_words(done.after)
    if done.before == done.after.sled:
        yield "Nothing has changed."
    for each in done.effects:
        counts = {"new_pins": each.new_pins, "new_marks": each.new_marks}
        yield f"{console.safe(each.project)}: {effect_in_words(each.before, each.after, **counts)}"
    if any(each.new_pins for each in done.effects):
        yield "! Other pins: a board that is cut already will not fit one that is cut from now on."
    if any(each.new_marks for each in done.effects):
        yield "! Sled sheets and workbooks made before this are out of date: make them again."
