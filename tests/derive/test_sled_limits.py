"""What a sled can't take is refused with both figures and a way out that really is one."""

from __future__ import annotations

from dataclasses import replace

import pytest

from planner.domain.material import Material
from planner.domain.project import Project
from planner.domain.sled import Sled
from planner.domain.words import Hardness, MaterialKind
from planner.errors import PlanError, Problem
from planner.pipeline import plan
from tests.pieces import SLED, inches, small_box

# The box: front and back 13 1/32 long, sides 9 1/32 with the pins, all 5 1/2 wide and 1/2 thick; bit height 33/64.


def refused(project: Project) -> tuple[Problem, ...]:
    with pytest.raises(PlanError) as refusal:
        plan(project)
    return refusal.value.problems


def with_sleds(*sleds: Sled) -> Project:
    return replace(small_box(), sleds=sleds)


@pytest.mark.parametrize(
    ("limit", "figures"),
    [
        ({"greatest_bit_height_nm": inches("1/2")}, ("33/64 in high", "1/2 in as its greatest bit height")),
        ({"greatest_width_nm": inches("5")}, ("5 1/2 in wide", "5 in as its greatest board width")),
        ({"greatest_upright_nm": inches("9")}, ("9 1/32 in long", "9 in as its greatest upright board")),
        ({"greatest_depth_hard_nm": inches("3/8")}, ("33/64 in would be cut at once", "3/8 in", "cut in hard wood")),
    ],
)
def test_each_limit_is_named_with_what_is_needed_and_what_there_is(
    limit: dict[str, int], figures: tuple[str, ...]
) -> None:
    (problem,) = refused(with_sleds(replace(SLED, **limit)))  # type: ignore[arg-type]
    assert problem.where == "K-J1, K-J2 and 2 more"
    assert all(figure in problem.what for figure in figures)


@pytest.mark.parametrize("limit", ["greatest_bit_height_nm", "greatest_width_nm", "greatest_upright_nm"])
def test_a_board_just_as_large_as_the_sled_takes_is_cut(limit: str) -> None:
    just = {
        "greatest_bit_height_nm": inches("33/64"),
        "greatest_width_nm": inches("5 1/2"),
        "greatest_upright_nm": inches("9 1/32"),
    }
    plan(with_sleds(replace(SLED, **{limit: just[limit]})))  # type: ignore[arg-type]
    refused(with_sleds(replace(SLED, **{limit: just[limit] - 1})))  # type: ignore[arg-type]


def test_soft_wood_has_a_limit_of_its_own() -> None:
    soft = (Material(name="ash", hardness=Hardness.SOFT), Material(name="ply", kind=MaterialKind.SHEET))
    sled = replace(SLED, greatest_depth_hard_nm=inches("3/8"), greatest_depth_soft_nm=inches("3/4"))
    plan(replace(with_sleds(sled), materials=soft))
    refused(replace(with_sleds(replace(sled, greatest_depth_soft_nm=inches("1/2"))), materials=soft))


def test_another_sled_of_the_project_is_offered_and_does_take_it() -> None:
    low, high = replace(SLED, greatest_bit_height_nm=inches("1/2")), replace(SLED, name="high")
    problems = refused(with_sleds(low, high))
    assert problems[0].remedy.startswith("Take sled 'high'")
    plan(with_sleds(replace(high, name="main")))


def test_the_other_pair_is_offered_only_where_the_sled_takes_it() -> None:
    # A front that is too long to stand upright: the sides would do, so they are offered; not where they are too wide.
    problems = refused(with_sleds(replace(SLED, greatest_upright_nm=inches("9"))))
    assert "carry the pins" not in problems[0].remedy  # the other pair, 13 1/32, is longer still
    longer_sides = replace(small_box().boxes[0], length_nm=inches("6"), width_nm=inches("12"))
    turned = replace(with_sleds(replace(SLED, greatest_upright_nm=inches("9"))), boxes=(longer_sides,))
    assert "Let K-front carry the pins" in refused(turned)[0].remedy
