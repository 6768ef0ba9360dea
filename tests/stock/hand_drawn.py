"""A job and a plan for it, drawn and added up by hand, in small numbers instead of nanometres.

Board B, 100 by 40, loses 5 at each end and 4 at each edge: 90 by 32 are clear, from (5, 4) to (95, 36). Board C, 60 by
20, is split from 20 to 30. The saw takes 2 ripping and 3 crosscutting. Offcuts of 20 by 8 and more count for half.

    B: rip a strip of 15 and one of 10; 3 are left over.      C: crosscut at 20 and at 30, inside the split.
       15: a 40 x 15, b 30 x 12 trimmed from 15; waste 14.       20 x 20 is an offcut.
       10: c 50 x 10; offcut 37 x 10.                            30 x 20: rip d, 8 x 30 turned; offcut 30 x 10.

Credit: 370/4000 of 1000, halved: 46; 400/1200 of 300, halved: 50; 300/1200 of 300, halved: 37. Cost 1300 - 133 = 1167.
Settings: rip 15, 10, 12, 8; stop 40, 30, 50.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from planner.domain.stock import Keep, SawWay
from planner.lengths import Nm, Span
from planner.stock.pieces import Board, CuttingPlan, Job, Kind, Layout, Part, Piece, Saw, Wish, Zone


def part(mark: str, length: int, width: int, *, may_turn: bool = False) -> Part:
    return Part(marks=(mark,), length_nm=Nm(length), width_nm=Nm(width), may_turn=may_turn)


def span(low: int, high: int) -> Span:
    return Nm(low), Nm(high)


JOB = Job(
    parts=(part("a", 40, 15), part("b", 30, 12), part("c", 50, 10), part("d", 8, 30, may_turn=True), part("e", 95, 9)),
    boards=(
        Board(mark="B", length_nm=Nm(100), width_nm=Nm(40), cost=1000, count=2, end_trim_nm=Nm(5), edge_trim_nm=Nm(4)),
        Board(
            mark="C",
            length_nm=Nm(60),
            width_nm=Nm(20),
            cost=300,
            count=1,
            defects=(Zone(along=span(20, 30), across=span(0, 20)),),
        ),
    ),
    saw=Saw(rip_nm=Nm(2), crosscut_nm=Nm(3)),
    wish=Wish(stages=2, keep=Keep(length_nm=Nm(20), width_nm=Nm(8), credit_pct=50)),
)


def leaf(kind: Kind, along: tuple[int, int], across: tuple[int, int], mark: str = "", *, turned: bool = False) -> Piece:
    return Piece(along=span(*along), across=span(*across), kind=kind, mark=mark, turned=turned)


def divided(along: tuple[int, int], across: tuple[int, int], cut: SawWay, stage: int, *pieces: Piece) -> Piece:
    return Piece(along=span(*along), across=span(*across), kind=Kind.DIVIDED, cut=cut, stage=stage, pieces=pieces)


PART, OFFCUT, WASTE = Kind.PART, Kind.OFFCUT, Kind.WASTE

B_WHOLE = divided(
    (0, 100), (0, 40), SawWay.CROSSCUT, 0,
    leaf(WASTE, (0, 2), (0, 40)),
    divided(
        (5, 95), (0, 40), SawWay.RIP, 0,
        leaf(WASTE, (5, 95), (0, 2)),
        divided(
            (5, 95), (4, 36), SawWay.RIP, 1,
            divided(
                (5, 95), (4, 19), SawWay.CROSSCUT, 2,
                leaf(PART, (5, 45), (4, 19), "a"),
                divided(
                    (48, 78), (4, 19), SawWay.RIP, 3,
                    leaf(PART, (48, 78), (4, 16), "b"),
                    leaf(WASTE, (48, 78), (18, 19)),
                ),
                leaf(WASTE, (81, 95), (4, 19)),
            ),
            divided(
                (5, 95), (21, 31), SawWay.CROSSCUT, 2,
                leaf(PART, (5, 55), (21, 31), "c"),
                leaf(OFFCUT, (58, 95), (21, 31)),
            ),
            leaf(WASTE, (5, 95), (33, 36)),
        ),
        leaf(WASTE, (5, 95), (38, 40)),
    ),
    leaf(WASTE, (98, 100), (0, 40)),
)  # fmt: skip

C_WHOLE = divided(
    (0, 60), (0, 20), SawWay.CROSSCUT, 0,
    leaf(OFFCUT, (0, 20), (0, 20)),
    divided(
        (23, 60), (0, 20), SawWay.CROSSCUT, 0,
        leaf(WASTE, (23, 27), (0, 20)),
        divided(
            (30, 60), (0, 20), SawWay.RIP, 1,
            leaf(PART, (30, 60), (0, 8), "d", turned=True),
            leaf(OFFCUT, (30, 60), (10, 20)),
        ),
    ),
)  # fmt: skip

PLAN = CuttingPlan(
    layouts=(Layout(board="B", number=1, whole=B_WHOLE), Layout(board="C", number=1, whole=C_WHOLE)),
    missing=("e",),
    credit=133,
    cost=1167,
    settings=7,
)

B_STAGES = (0, 1, 1)
"""SawWay down the tree of board B's layout to the clear piece that is cut in stages."""
C_STAGES = (1, 1, 1)


def changed(plan: CuttingPlan, place: tuple[int, ...], **to: Any) -> CuttingPlan:
    """The plan with one piece changed: the number of the layout, then of the piece at each step down its tree."""
    layouts = list(plan.layouts)
    layouts[place[0]] = replace(layouts[place[0]], whole=_within(layouts[place[0]].whole, place[1:], to))
    return replace(plan, layouts=tuple(layouts))


def _within(piece: Piece, place: tuple[int, ...], to: dict[str, Any]) -> Piece:
    if not place:
        return replace(piece, **to)
    pieces = list(piece.pieces)
    pieces[place[0]] = _within(pieces[place[0]], place[1:], to)
    return replace(piece, pieces=tuple(pieces))
