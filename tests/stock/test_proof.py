"""The checker accepts a plan drawn by hand and finds every kind of fault that is planted in it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from planner.domain.stock import Keep, SawWay
from planner.errors import Problem
from planner.lengths import Nm
from planner.stock.pieces import CuttingPlan, Job, Kind, Layout
from planner.stock.proof import UnsoundPlanError, faults, must_be_sound
from planner.stock.settings import settings
from tests.stock.hand_drawn import (
    B_WHOLE,
    C_WHOLE,
    JOB,
    OFFCUT,
    PART,
    PLAN,
    WASTE,
    changed,
    divided,
    leaf,
    span,
)

CLEAR_B = (0, 1, 1)
STRIP_15 = (*CLEAR_B, 0)
STRIP_10 = (*CLEAR_B, 1)
CLEAR_C = (1, 1, 1)


def said(problems: tuple[Problem, ...]) -> str:
    return "\n".join(map(str, problems))


def wishing(**to: Any) -> Job:
    return replace(JOB, wish=replace(JOB.wish, **to))


def with_boards(*layouts: Layout) -> CuttingPlan:
    return replace(PLAN, layouts=(*PLAN.layouts, *layouts))


def test_a_plan_drawn_by_hand_is_sound() -> None:
    assert faults(JOB, PLAN) == ()
    must_be_sound(JOB, PLAN)
    assert len(settings(PLAN.layouts)) == PLAN.settings


FULL_STRIP = divided(
    (5, 95), (4, 19), SawWay.CROSSCUT, 2,
    leaf(PART, (5, 45), (4, 19), "a"),
    leaf(WASTE, (48, 95), (4, 19)),
)  # fmt: skip
TWICE_RIPPED = divided((5, 95), (4, 19), SawWay.RIP, 2, leaf(WASTE, (5, 95), (4, 10)), leaf(WASTE, (5, 95), (12, 19)))
FOUR_STAGES = divided(
    (48, 78), (4, 19), SawWay.RIP, 3,
    divided((48, 78), (4, 16), SawWay.CROSSCUT, 4, leaf(PART, (48, 78), (4, 16), "b")),
    leaf(WASTE, (48, 78), (18, 19)),
)  # fmt: skip
CUT_TOO_SOON = divided((0, 20), (0, 20), SawWay.RIP, 0, leaf(WASTE, (0, 20), (0, 20)))
PLANTED = {
    "a part cut twice": (JOB, changed(PLAN, (*STRIP_10, 0), mark="a"), "a: cut or missing 2 times"),
    "a part left out in silence": (JOB, replace(PLAN, missing=()), "e: cut or missing 0 times"),
    "a part both cut and missing": (JOB, replace(PLAN, missing=("a", "e")), "a: cut or missing 2 times"),
    "a part nobody asked for": (JOB, changed(PLAN, (*STRIP_10, 0), mark="z"), "is no part of this job"),
    "a part too short": (
        JOB,
        changed(changed(PLAN, (*STRIP_15, 0), along=span(5, 44)), (*STRIP_15, 1), along=span(47, 78)),
        "is 39 by 15 nm",
    ),
    "a part turned that may not be": (
        replace(JOB, parts=tuple(replace(each, may_turn=False) for each in JOB.parts)),
        PLAN,
        "may not be turned",
    ),
    "a part across its grain unsaid": (JOB, changed(PLAN, (*CLEAR_C, 0), turned=False), "is 30 by 8 nm"),
    "a part on a defect": (
        replace(JOB, boards=(JOB.boards[0], replace(JOB.boards[1], defects=(*JOB.boards[1].defects, *[
            replace(JOB.boards[1].defects[0], along=span(40, 41), across=span(7, 9))])))),
        PLAN,
        "C 1, d at 30–60 along, 0–8 across (nm): isn't clear wood",
    ),
    "a part in the trim": (
        replace(JOB, boards=(replace(JOB.boards[0], end_trim_nm=Nm(6)), JOB.boards[1])),
        PLAN,
        "a at 5–45 along, 4–19 across (nm): isn't clear wood",
    ),
    "a kerf too narrow": (JOB, changed(PLAN, (*STRIP_15, 1), along=span(47, 77)), "2 nm from what is before it"),
    "rip kerf where crosscut kerf is due": (
        replace(JOB, saw=replace(JOB.saw, crosscut_nm=Nm(2))),
        PLAN,
        "3 nm from what is before it",
    ),
    "strips that overlap": (JOB, changed(PLAN, STRIP_10, across=span(18, 28)), "-1 nm from what is before it"),
    "a cut that stops short": (JOB, changed(PLAN, (*STRIP_15, 0), across=span(4, 18)), "isn't cut right through"),
    "wood that vanishes": (JOB, changed(PLAN, STRIP_15, pieces=FULL_STRIP.pieces[:1]), "50 nm are left at its end"),
    "a stage too many": (JOB, changed(PLAN, (*STRIP_15, 1), pieces=FOUR_STAGES.pieces), "is cut in stage 4"),
    "two parts where one may be trimmed": (
        JOB,
        changed(PLAN, (*STRIP_15, 1, 1), kind=PART, mark="e"),
        "is divided after the last stage",
    ),
    "two stages the same way": (JOB, changed(PLAN, STRIP_15, cut=SawWay.RIP), "is cut the same way"),
    "a stage left out": (JOB, changed(PLAN, STRIP_15, stage=3), "stage 3 after stage 1"),
    "the wrong first cut": (wishing(first=SawWay.CROSSCUT), PLAN, "the first cuts are to be crosscuts".capitalize()),
    "cuts before the stages begin": (JOB, changed(PLAN, (1, 0), kind=Kind.DIVIDED, cut=SawWay.RIP,
        pieces=CUT_TOO_SOON.pieces), "is cut before the first stage"),
    "stages in uncleared wood": (JOB, changed(PLAN, (1, 1), stage=1), "Trim the board and saw out its defects"),
    "a board cut up twice": (JOB, with_boards(Layout(board="C", number=1, whole=C_WHOLE)), "C 1: cut up 2 times"),
    "a board there isn't": (JOB, with_boards(Layout(board="B", number=3, whole=B_WHOLE)), "B 3: there is no such"),
    "a board nobody offered": (JOB, with_boards(Layout(board="X", number=1, whole=C_WHOLE)), "X: isn't in the stock"),
    "a board larger than it is": (JOB, changed(PLAN, (1,), along=span(0, 61)), "isn't the whole board"),
    "a plan made to look cheaper": (JOB, replace(PLAN, cost=1166), "cost: 1166. Boards less credit come to 1167."),
    "a credit too high": (JOB, replace(PLAN, credit=134), "credit: 134. The offcuts come to 133."),
    "an offcut too small to keep": (
        wishing(keep=Keep(length_nm=Nm(20), width_nm=Nm(11), credit_pct=50)),
        PLAN,
        "offcut at 58–95 along, 21–31 across (nm): is too small to keep",
    ),
    "an offcut with a defect": (JOB, changed(PLAN, (1, 1, 0), kind=OFFCUT), "Only clear offcuts are worth keeping"),
    "settings miscounted": (JOB, replace(PLAN, settings=6), "settings: 6. The cuts need 7."),
    "pieces of something undivided": (JOB, changed(PLAN, STRIP_10, kind=WASTE), "Both or neither"),
    "a piece without wood": (JOB, changed(PLAN, (*STRIP_10, 1), along=span(95, 95)), "has no wood"),
    "the same way twice running": (
        JOB, changed(PLAN, STRIP_15, cut=SawWay.RIP, pieces=TWICE_RIPPED.pieces), "take turns",
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", PLANTED)
def test_planted_faults_are_found(name: str) -> None:
    job, plan, expected = PLANTED[name]
    assert expected in said(faults(job, plan))
    with pytest.raises(UnsoundPlanError):
        must_be_sound(job, plan)
