"""What can't be built: cuts that go through a board, meet from both faces, or lie outside it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import combinations

from planner.domain.plan import BoardSize, Feature
from planner.domain.project import Project
from planner.errors import PlanError, Problem
from planner.lengths import GREATEST_NM, Span, show_length


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
    if feature.depth_nm >= board.thickness_nm:
        yield "would go right through it.", "Cut it shallower or take a thicker board."
    if feature.u[0] < 0 or feature.u[1] > board.width_nm or feature.u[0] >= feature.u[1]:
        yield "is wider than the board, or lies past its edge.", "Check its place and the sizes of both boards."
    if feature.x[0] < 0 or feature.x[1] > board.length_nm or feature.x[0] >= feature.x[1]:
        yield "is longer than the board.", "Check the sizes of both boards."


def _meeting(boards: Mapping[str, BoardSize], features: Sequence[Feature]) -> Iterator[tuple[Feature, Feature]]:
    """Cuts in one board that run into each other: on one face, or from both faces when together too deep."""
    by_board: dict[str, list[Feature]] = {}
    for feature in features:
        by_board.setdefault(feature.board, []).append(feature)
    for mark, cuts in by_board.items():
        for a, b in combinations(cuts, 2):
            too_deep = a.face is b.face or a.depth_nm + b.depth_nm >= boards[mark].thickness_nm
            if too_deep and _overlap(a.x, b.x) and _overlap(a.u, b.u):
                yield a, b


def _overlap(a: Span, b: Span) -> bool:
    return a[0] < b[1] and b[0] < a[1]
