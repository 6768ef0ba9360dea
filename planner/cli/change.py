"""Commands that change one thing of a stored project and show what follows from it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from planner.cli import console
from planner.cli.settings import AsJson, NamedProject, store_of

if TYPE_CHECKING:
    from planner.app.change import Bench, Changed

_MARK, _LENGTH, _PLACE, _MATERIAL = "MARK", "LENGTH", "PLACE", "MATERIAL"
DryFit = Annotated[bool, typer.Option("--dry-fit", help="Only show what would change; store nothing.")]
Pairs = Annotated[
    list[str] | None,
    typer.Argument(
        metavar="[PLACE VALUE]...",
        help="Where to say something else, and what: carcase.C.height 38. See: planner places.",
    ),
]
LeftOut = Annotated[
    list[str] | None,
    typer.Option(
        "--leave-out",
        metavar=_PLACE,
        help="Say nothing there any more: what is usual counts again, or a part is not made at all.",
    ),
]
Within = Annotated[
    str | None, typer.Argument(metavar=_PLACE, help="Show all that may be said there, such as carcase.C.drawer.")
]
Below = Annotated[str | None, typer.Option(metavar=_MARK, help="The drawer above the new one.")]
Above = Annotated[str | None, typer.Option(metavar=_MARK, help="The drawer below the new one.")]
OwnMark = Annotated[str | None, typer.Option(metavar=_MARK, help="Of the new drawer. Usually the next free one.")]
OpeningHeight = Annotated[
    str | None,
    typer.Option(
        metavar=_LENGTH,
        help="Of the new opening, where the heights of the column are listed. Usually that of the drawer named.",
    ),
]
Drawer = Annotated[str, typer.Argument(metavar=_MARK, help="Mark of the drawer.")]
OldTimber = Annotated[str, typer.Argument(metavar="OLD", help="Name of the material that is there.")]
NewTimber = Annotated[
    str, typer.Argument(metavar="NEW", help="Name of the other; if new, of the kind and hardness of the old one.")
]
OnlyIn = Annotated[
    list[str] | None,
    typer.Option(
        "--in", metavar=_MARK, help="Only in this box, drawer, or carcase without its drawers. Usually in all."
    ),
]
Ring = Annotated[str, typer.Argument(metavar=_MARK, help="Mark of the box or carcase.")]
Length = Annotated[str | None, typer.Option(metavar=_LENGTH, help="Of a box, along the front.")]
Width = Annotated[
    str | None, typer.Option(metavar=_LENGTH, help="Of a carcase, along the front; of a box, front to back.")
]
Height = Annotated[str | None, typer.Option(metavar=_LENGTH, help="Of a box or a carcase.")]
Depth = Annotated[str | None, typer.Option(metavar=_LENGTH, help="Of a carcase, front to back.")]


def change(
    ctx: typer.Context,
    project: NamedProject,
    pairs: Pairs = None,
    leave_out: LeftOut = None,
    dry_fit: DryFit = False,
    json: AsJson = False,
) -> None:
    """Change what is said at a place, and show what follows.

    Places are those that "planner places" lists. What goes together is changed together, in pairs.
    """
    from planner.app.change import change as changed

    _show(changed(_bench(ctx, project, dry_fit), pairs or (), leave_out or ()), json)


def add_drawer(
    ctx: typer.Context,
    project: NamedProject,
    *,
    below: Below = None,
    above: Above = None,
    mark: OwnMark = None,
    height: OpeningHeight = None,
    dry_fit: DryFit = False,
    json: AsJson = False,
) -> None:
    """Add a drawer to a column; the others keep their marks."""
    from planner.app.change import add_drawer as added

    _show(added(_bench(ctx, project, dry_fit), below=below, above=above, mark=mark, height=height), json)


def remove_drawer(
    ctx: typer.Context, project: NamedProject, drawer: Drawer, dry_fit: DryFit = False, json: AsJson = False
) -> None:
    """Take out a drawer; the others keep their marks."""
    from planner.app.change import remove_drawer as removed

    _show(removed(_bench(ctx, project, dry_fit), drawer), json)


def swap_timber(
    ctx: typer.Context,
    project: NamedProject,
    old: OldTimber,
    new: NewTimber,
    *,
    only_in: OnlyIn = None,
    dry_fit: DryFit = False,
    json: AsJson = False,
) -> None:
    """Make of another timber what is of one now."""
    from planner.app.change import swap_timber as swapped

    _show(swapped(_bench(ctx, project, dry_fit), old, new, only_in or ()), json)


def resize(
    ctx: typer.Context,
    project: NamedProject,
    ring: Ring,
    *,
    length: Length = None,
    width: Width = None,
    height: Height = None,
    depth: Depth = None,
    dry_fit: DryFit = False,
    json: AsJson = False,
) -> None:
    """Give a box or a carcase other sizes."""
    from planner.app.change import resize as resized

    said = {"length": length, "width": width, "height": height, "depth": depth}
    sizes = {key: text for key, text in said.items() if text is not None}
    _show(resized(_bench(ctx, project, dry_fit), ring, sizes), json)


def places(ctx: typer.Context, project: NamedProject, place: Within = None, json: AsJson = False) -> None:
    """List what can be changed in a project, with its meaning."""
    from planner.app.change import places as listed
    from planner.present.changes_json import places_json
    from planner.present.views.changes import places as table

    found = listed(project, place, store_of(ctx))
    console.out_json(places_json(found)) if json else console.out_table(table(project, found))


def _bench(ctx: typer.Context, project: str, dry_fit: bool) -> Bench:
    from planner.app.change import Bench

    return Bench(name=project, store=store_of(ctx), dry_fit=dry_fit)


def _show(changed: Changed, as_json: bool) -> None:
    from planner.present.changes_json import changes_json, said_json
    from planner.present.views.changes import NOTHING, changes, said_otherwise

    if as_json:
        stored = None if changed.stored is None else changed.stored.value
        console.out_json({"stored": stored, "said": said_json(changed.said), **changes_json(changed.changes)})
        return
    project = changed.changes.project.after
    tables = (said_otherwise(changed.said, project.grid), *changes(changed.changes))
    for table in tables:
        if any(table.rows):
            console.out_table(table)
            console.out("")
    if not changed.changes.any:
        console.out(NOTHING)
    console.out(f"{console.safe(project.name)}: {_stored(changed)}.")


def _stored(changed: Changed) -> str:
    from planner.cli.summary import STORED

    return "dry fit only, nothing is stored" if changed.stored is None else STORED[changed.stored]
