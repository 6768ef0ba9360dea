"""Which of several equal parts is sawn where: the staves of a panel from as few different boards as can be.

So the panel's colour is even (common practice, no source). No cut changes, only the marks of parts of one size.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import replace

from planner.stock.pieces import CuttingPlan, Job, Kind, Piece
from planner.stock.proof import must_be_sound

_Board = tuple[str, int]


def matched(job: Job, plan: CuttingPlan, panels: Mapping[str, str]) -> CuttingPlan:
    """The same plan with the marks of equal parts changed about.

    Args:
        job: what was asked.
        plan: the answer.
        panels: by the mark of a stave, the mark of the panel that it belongs to.

    Raises:
        UnsoundPlanError: a bug of ours.
    """
    if not panels:
        return plan
    marks: dict[str, str] = {}
    for part in job.parts:
        places = [
            (layout.board, layout.number) for layout in plan.layouts for each in _cut_of(layout.whole, part.marks)
        ]
        cut = [each for layout in plan.layouts for each in _cut_of(layout.whole, part.marks)]
        new = _shared_out(cut, places, panels)
        marks |= dict(zip(cut, new, strict=True))
    layouts = tuple(replace(layout, whole=_renamed(layout.whole, marks)) for layout in plan.layouts)
    found = replace(plan, layouts=layouts)
    must_be_sound(job, found)
    return found


def _cut_of(whole: Piece, marks: tuple[str, ...]) -> Iterator[str]:
    return (piece.mark for piece in whole.within() if piece.kind is Kind.PART and piece.mark in marks)


def _shared_out(marks: list[str], places: list[_Board], panels: Mapping[str, str]) -> list[str]:
    """The marks in another order: panel by panel, the largest first, each from the board that just has enough."""
    free = {board: [at for at, place in enumerate(places) if place == board] for board in dict.fromkeys(places)}
    groups: dict[str, list[str]] = {}
    for mark in marks:
        groups.setdefault(panels.get(mark, mark), []).append(mark)
    new = list(marks)
    for group in sorted(groups.values(), key=lambda each: -len(each)):
        left = list(group)
        while left:
            board = _board_for(len(left), free)
            for _ in range(min(len(left), len(free[board]))):
                new[free[board].pop(0)] = left.pop(0)
    return new


def _board_for(wanted: int, free: Mapping[_Board, list[int]]) -> _Board:
    """The board with the fewest free places that are enough; else the one with the most."""
    enough = [board for board, places in free.items() if len(places) >= wanted]
    if enough:
        return min(enough, key=lambda board: len(free[board]))
    return max(free, key=lambda board: len(free[board]))


def boards_of(plan: CuttingPlan, panels: Mapping[str, str]) -> Counter[str]:
    """By panel, from how many different boards its staves come."""
    pairs = {
        (panels[piece.mark], layout.board, layout.number)
        for layout in plan.layouts
        for piece in layout.whole.within()
        if piece.kind is Kind.PART and piece.mark in panels
    }
    return Counter(panel for panel, _, _ in pairs)


def _renamed(piece: Piece, marks: Mapping[str, str]) -> Piece:
    mark = marks.get(piece.mark, piece.mark)
    return replace(piece, mark=mark, pieces=tuple(_renamed(each, marks) for each in piece.pieces))
