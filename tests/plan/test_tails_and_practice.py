"""Bandsaw set-ups and practice joints."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import pytest
from shapely.geometry import box

from planner.derive.tails import tail_end
from planner.domain.words import Side
from planner.pipeline import plan
from planner.plan.practice import practice_joints
from planner.plan.tails import tail_settings
from tests.oracle.sled_polygons import EndGrain, what_stays
from tests.pieces import inches, six_drawers

CHEST = plan(six_drawers())
ENDS = [tail_end(joint) for joint in CHEST.joints]
MM = 1_000_000


def test_two_thicknesses_need_one_change_of_guide_and_two_of_lean() -> None:
    settings = tail_settings(ENDS)
    assert [(s.thickness_nm, s.leans) for s in settings] == [
        (inches("1/2"), Side.RIGHT),
        (inches("1/2"), Side.LEFT),
        (inches("7/8"), Side.LEFT),
        (inches("7/8"), Side.RIGHT),
    ]
    assert sum(a.thickness_nm != b.thickness_nm for a, b in pairwise(settings)) == 1
    assert sum(a.leans is not b.leans for a, b in pairwise(settings)) == 2


def test_ends_of_another_slope_are_a_set_up_of_their_own() -> None:
    """A wedge for 1:8 doesn't serve 1:6: two slopes of one thickness make four set-ups, one change of slope."""
    box = next(end for end in ENDS if end.thickness_nm == inches("1/2"))
    settings = tail_settings([box, replace(box, board="X-right", slope=Fraction(6))])
    assert [(int(s.slope), s.leans) for s in settings] == [
        (6, Side.RIGHT),
        (6, Side.LEFT),
        (8, Side.LEFT),
        (8, Side.RIGHT),
    ]


def test_every_saw_cut_is_made_once() -> None:
    made = [(end.board, end.end, cut) for s in tail_settings(ENDS) for end in s.ends for cut in s.cuts(end)]
    wanted = [(end.board, end.end, cut) for end in ENDS for cut in end.saw_cuts]
    assert sorted(map(str, made)) == sorted(map(str, wanted))
    assert len(made) == sum(2 * len(joint.tails) for joint in CHEST.joints)


def test_one_practice_joint_for_each_way_of_cutting() -> None:
    """Drawers: fronts of 3/4 and backs of 1/2 to sides of 1/2; the carcase: 7/8 to 7/8. Three ways, at two heights."""
    practice = practice_joints(six_drawers(), CHEST.joints, CHEST.sled)
    ways = {(p.joint.pin_thickness_nm, p.joint.tail_thickness_nm, p.bit_height_nm) for p in practice}
    half = inches("1/2")
    assert ways == {
        (half, half, inches("33/64")),
        (inches("3/4"), half, inches("33/64")),
        (inches("7/8"), inches("7/8"), inches("57/64")),
    }
    assert sorted(mark for p in practice for mark in p.stands_for) == sorted(j.mark for j in CHEST.joints)


@pytest.mark.parametrize("number", range(3))
def test_a_practice_joint_cut_by_its_passes_keeps_its_pins(number: int) -> None:
    practice = practice_joints(six_drawers(), CHEST.joints, CHEST.sled)[number]
    joint = practice.joint
    grain = EndGrain(
        width=joint.width_nm / MM,
        thickness=joint.pin_thickness_nm / MM,
        slope=8,
        bit=12.7,
        pins=[(a / MM, b / MM) for a, b in joint.pins],
    )
    fences = ((practice.first_fence, practice.first), (practice.first_fence.other, practice.second))
    passes = [(fence.value, p.mark_nm / MM) for fence, at in fences for p in at]
    spoilt, left = what_stays(grain, "B", passes)
    assert spoilt == pytest.approx(0, abs=1e-6)
    assert left == pytest.approx(0, abs=1e-6)
    assert box(0, 0, grain.width, grain.thickness).area > 0
    assert len(joint.tails) == 2


def test_a_practice_joint_has_the_tails_of_the_real_one() -> None:
    # Drawer 1, front 5 3/8 high: tails of 1.458333 in, half-pins 1/4, pin 1/4; width 2·1.458333 + 3·0.25.
    practice = practice_joints(six_drawers(), CHEST.joints, CHEST.sled)
    front = next(p for p in practice if p.joint.pin_thickness_nm == inches("3/4"))
    assert front.joint.width_nm == pytest.approx(inches("1") * (2 * 1.4583333 + 0.75), abs=10)
    assert front.tails.board == "practice-D1-J1-tails"
    assert front.length_nm == inches("12")
