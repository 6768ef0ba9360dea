"""What can't be built: cuts that go through a board, meet from both faces, or lie outside it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import combinations

from planner.domain.plan import BoardSize, Feature
from planner.domain.project import Project
from planner.domain.words import FeatureKind, Surface
from planner.errors import PlanError, Problem
from planner.lengths import GREATEST_NM, Nm, Span, show_length


def must_fit(project: Project, boards: Mapping[str, BoardSize], features: Sequence[Feature]) -> None:
    """Refuse boards without size and cuts that can't be made.

    Raises:
        PlanError: naming every such board and cut.
    """

    def show(length: int) -> str:
        return show_length(length, project.grid, with_unit=True)

    wrong = [
        Problem(
            where=board.mark,
            what=f"would be {show(board.length_nm)} long and {show(board.width_nm)} wide.",
            remedy="Check the sizes of what it stands in.",
        )
        for board in boards.values()
        if min(board.length_nm, board.width_nm) <= 0 or max(board.length_nm, board.width_nm) > GREATEST_NM
    ]
    for feature in features:
        board = boards[feature.board]
        wrong += [
            Problem(where=feature.board, what=f"the {feature.kind} for {feature.takes} {what}", remedy=remedy)
            for what, remedy in _outside(board, feature)
        ]
    wrong += [
        Problem(
            where=a.board,
            what=f"the {a.kind} for {a.takes} and the {b.kind} for {b.takes} meet inside the board.",
            remedy="Cut them shallower, move one, or take a thicker board.",
        )
        for a, b in _meeting(boards, features)
    ]
    if wrong:
        raise PlanError(wrong)


def _outside(board: BoardSize, feature: Feature) -> Iterator[tuple[str, str]]:
    whole = _across(board, feature.face)
    if feature.kind in _LEAVES_WOOD and feature.depth_nm >= whole:
        yield "would go right through it.", "Cut it shallower or take a thicker board."
    if feature.u[0] < 0 or feature.u[1] > board.width_nm or feature.u[0] >= feature.u[1]:
        yield "is wider than the board, or lies past its edge.", "Check its place and the sizes of both boards."
    if feature.x[0] < 0 or feature.x[1] > board.length_nm or feature.x[0] >= feature.x[1]:
        yield "is longer than the board.", "Check the sizes of both boards."


_LEAVES_WOOD = frozenset({FeatureKind.GROOVE, FeatureKind.HOUSING, FeatureKind.RABBET})
"""Cuts that must not go right through."""

_MAY_MEET = frozenset({
    frozenset({FeatureKind.RABBET}),
    frozenset({FeatureKind.RABBET, FeatureKind.GROOVE}),
    frozenset({FeatureKind.MORTISE, FeatureKind.GROOVE}),
})  # fmt: skip
"""Kinds of cuts that may run into each other, since what goes into them is cut to fit there."""


def _across(board: BoardSize, face: Surface) -> Nm:
    """Size of a board in the direction in which a cut goes in."""
    if face in {Surface.OUTSIDE, Surface.INSIDE}:
        return board.thickness_nm
    return board.width_nm if face in {Surface.REFERENCE_EDGE, Surface.FAR_EDGE} else board.length_nm


def _meeting(boards: Mapping[str, BoardSize], features: Sequence[Feature]) -> Iterator[tuple[Feature, Feature]]:
    """Cuts in one board whose guests would run into each other, or that leave no wood between two faces."""
    by_board: dict[str, list[Feature]] = {}
    for feature in features:
        if feature.takes and feature.kind is not FeatureKind.TENON:
            by_board.setdefault(feature.board, []).append(feature)
    for mark, cuts in by_board.items():
        for a, b in combinations(cuts, 2):
            if a.takes == b.takes or frozenset({a.kind, b.kind}) in _MAY_MEET:
                continue
            if _overlap(a.x, b.x) and _overlap(a.u, b.u) and (_overlap(a.y, b.y) or _no_wood(boards[mark], a, b)):
                yield a, b


def _no_wood(board: BoardSize, a: Feature, b: Feature) -> bool:
    """Whether cuts from the two faces leave nothing between them."""
    faces = {Surface.OUTSIDE, Surface.INSIDE}
    return {a.face, b.face} == faces and a.depth_nm + b.depth_nm >= board.thickness_nm


def _overlap(a: Span, b: Span) -> bool:
    return a[0] < b[1] and b[0] < a[1]
