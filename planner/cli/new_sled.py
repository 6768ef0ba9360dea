"""The command that works out a sled to be built."""

from __future__ import annotations

from typing import Annotated

import typer

from planner.app.sled_slip import A_BOARD, GREATEST_NAME, MEASURES, SledSlip
from planner.cli import console
from planner.cli.settings import AnyProject, AsJson, store_of


def _usually(name: str, usual: str) -> str:
    return f"{MEASURES[name]} Usually {usual}."


_LENGTH = "LENGTH"
Boards = Annotated[
    list[str] | None,
    typer.Option(
        "--board",
        metavar="SIZES",
        help="A pin board in place of a project: width x thickness x length, and its mate's thickness, such as "
        f'"{A_BOARD}". Give one for each size.',
    ),
]
Units = Annotated[str | None, typer.Option(metavar="in|mm", help="With --board: unit of bare numbers.")]
Proud = Annotated[
    str | None,
    typer.Option(metavar=_LENGTH, help="With --board: how far joints stand out. Usually 1/64 in or 0.4 mm."),
]
Like = Annotated[
    str | None,
    typer.Option(metavar="NAME", help="Sled of the project whose joints are meant. Usually all of one slope."),
]
Name = Annotated[
    str | None,
    typer.Option(
        metavar="NAME", help=f"The new sled's, up to {GREATEST_NAME} characters. Usually that of the old one."
    ),
]
Slope = Annotated[
    str | None,
    typer.Option(metavar="SLOPE", help=_usually("slope", "that of the project's sled, if they all share one")),
]
Bit = Annotated[str | None, typer.Option(metavar=_LENGTH, help=MEASURES["bit"])]
Cutting = Annotated[str | None, typer.Option(metavar=_LENGTH, help=MEASURES["cutting"])]
Reach = Annotated[str | None, typer.Option(metavar=_LENGTH, help=MEASURES["reach"])]
MitreWidth = Annotated[str | None, typer.Option(metavar=_LENGTH, help=MEASURES["mitre_width"])]
MitreDepth = Annotated[str | None, typer.Option(metavar=_LENGTH, help=MEASURES["mitre_depth"])]
MitreFromBit = Annotated[str | None, typer.Option(metavar=_LENGTH, help=MEASURES["mitre_from_bit"])]
MitreSide = Annotated[str | None, typer.Option(metavar="left|right", help=MEASURES["mitre_side"])]
TableEnd = Annotated[str | None, typer.Option("--table", metavar=_LENGTH, help=MEASURES["table"])]
Floor = Annotated[str | None, typer.Option(metavar=_LENGTH, help=MEASURES["floor"])]
Fence = Annotated[str | None, typer.Option(metavar=_LENGTH, help=MEASURES["fence"])]
Beside = Annotated[str | None, typer.Option(metavar=_LENGTH, help=_usually("beside", "2 in or 50 mm"))]
Before = Annotated[str | None, typer.Option(metavar=_LENGTH, help=_usually("before", "2 1/2 in or 60 mm"))]
Behind = Annotated[str | None, typer.Option(metavar=_LENGTH, help=_usually("behind", "2 1/2 in or 60 mm"))]


def new_sled(
    ctx: typer.Context,
    project: AnyProject = None,
    *,
    bit: Bit = None,
    cutting: Cutting = None,
    reach: Reach = None,
    mitre_width: MitreWidth = None,
    mitre_depth: MitreDepth = None,
    mitre_from_bit: MitreFromBit = None,
    mitre_side: MitreSide = None,
    table: TableEnd = None,
    floor: Floor = None,
    fence: Fence = None,
    slope: Slope = None,
    beside: Beside = None,
    before: Before = None,
    behind: Behind = None,
    like: Like = None,
    name: Name = None,
    board: Boards = None,
    units: Units = None,
    proud: Proud = None,
    json: AsJson = False,
) -> None:
    """Work out a sled to build, for a project or for boards.

    Every measure without a usual one must be given. Lengths are read as in a project file: 1/2, 5-3/8, 12.7 mm.
    """
    slip = SledSlip(
        bit=bit, cutting=cutting, reach=reach, table=table, floor=floor, fence=fence, slope=slope,
        mitre_width=mitre_width, mitre_depth=mitre_depth, mitre_from_bit=mitre_from_bit, mitre_side=mitre_side,
        beside=beside, before=before, behind=behind, like=like, name=name,
        boards=tuple(board or ()), units=units, proud=proud,
    )  # fmt: skip
    _show(ctx, project, slip, as_json=json)


def _show(ctx: typer.Context, project: str | None, slip: SledSlip, *, as_json: bool) -> None:
    from planner.app.new_sled import new_sled as worked_out
    from planner.present.new_sled_json import new_sled_json
    from planner.present.views.new_sled import new_sled as tables

    found = worked_out(project, slip, store_of(ctx))
    if as_json:
        console.out_json(new_sled_json(found.built, found.boards, found.project_file))
        return
    for table in tables(found.built, found.wish, found.boards):
        console.out_table(table)
        console.out("")
    console.out(f"For the project file:\n\n{found.project_file}")
