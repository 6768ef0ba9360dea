"""Grooves, rabbets and housings: on which face, where, how deep, and where each stops."""

from __future__ import annotations

from collections.abc import Iterator

from planner.domain.operation import Machine
from planner.domain.plan import BoardSize, Feature, Plan
from planner.domain.words import FeatureKind, Surface
from planner.lengths import Nm
from planner.present.table import Cell, Column, Group, Kind, Table
from planner.present.views.by_box import by_box
from planner.present.views.heed import heed

_FACES = (Surface.OUTSIDE, Surface.INSIDE)
_EDGES = (Surface.REFERENCE_EDGE, Surface.FAR_EDGE)
_ENDS = (Surface.END_A, Surface.END_B)


def cuts(plan: Plan) -> Table:
    """One row for each cut, board by board."""
    on_board: dict[str, list[Feature]] = {}
    for feature in plan.features:
        on_board.setdefault(feature.board, []).append(feature)
    boards = [board for board in plan.boards if board.mark in on_board]
    return Table(
        title="Grooves and housings",
        grid=plan.project.grid,
        columns=(
            Column(heading="Board"),
            Column(heading="Cut"),
            Column(heading="Surface", kind=Kind.MARKS),
            Column(heading="Takes"),
            Column(heading="Depth", kind=Kind.PLACE),
            Column(heading="Reference edge to near side", kind=Kind.PLACE),
            Column(heading="Reference edge to far side", kind=Kind.PLACE),
            Column(heading="Outside face to near side", kind=Kind.PLACE),
            Column(heading="Outside face to far side", kind=Kind.PLACE),
            Column(heading="End A to start", kind=Kind.PLACE),
            Column(heading="End A to finish", kind=Kind.PLACE),
            Column(heading="End B to finish", kind=Kind.PLACE),
            Column(heading="Stops before", kind=Kind.MARKS),
        ),
        groups=tuple(
            Group(
                heading=heading,
                rows=tuple(_row(board, feature) for board in found for feature in on_board[board.mark]),
            )
            for heading, found in by_box(plan, boards)
        ),
        notes=(
            "Near side and far side are seen from the reference edge or the outside face, start and finish from end A.",
            "A place is empty where the surface and the depth say it already.",
            "Of a tenon the wood that stays is measured, and its length stands under the depth.",
            "Where a cut stops before an end or an edge it must not run out there: it would show.",
        ),
        cautions=heed((plan,), Machine.ROUTER_TABLE_FENCE, Machine.ROUTER_GUIDE, Machine.MORTISER, Machine.DRILL),
    )


def _row(board: BoardSize, cut: Feature) -> tuple[Cell, ...]:
    return (
        board.mark,
        str(cut.kind),
        (cut.face.words,),
        cut.takes,
        cut.depth_nm,
        *_unless(cut.face in _EDGES, cut.u),
        *_unless(cut.face in _FACES, cut.y),
        *_unless(cut.face in _ENDS, (*cut.x, Nm(board.length_nm - cut.x[1]))),
        tuple(_stops(board, cut)),
    )


def _unless(known: bool, places: tuple[Nm, ...]) -> tuple[Cell, ...]:  # noqa: FBT001 - reads as a sentence
    return (None,) * len(places) if known else places


def _stops(board: BoardSize, cut: Feature) -> Iterator[str]:
    """What the cut doesn't reach on its way: edges for a housing, ends for any other; one from an end has no way."""
    if cut.face in _ENDS:
        return
    way, end, names = (
        (cut.u, board.width_nm, ("reference edge", "far edge"))
        if cut.kind is FeatureKind.HOUSING
        else (cut.x, board.length_nm, ("end A", "end B"))
    )
    if way[0] > 0:
        yield names[0]
    if way[1] < end:
        yield names[1]
