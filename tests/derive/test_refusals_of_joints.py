"""What is wrong with many joints in the same way is told once, with the joints named or counted."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.derive.joints import told_once
from planner.derive.offers import nearest_layouts
from planner.domain.project import Project
from planner.errors import PlanError, Problem
from planner.pipeline import plan
from tests.pieces import SLED, inches, small_box


def refused(project: Project) -> tuple[Problem, ...]:
    with pytest.raises(PlanError) as refusal:
        plan(project)
    return refusal.value.problems


def at(*places: str, what: str = "is wrong.") -> list[Problem]:
    return [Problem(where=place, what=what, remedy="Put it right.") for place in places]


@pytest.mark.parametrize(
    ("places", "told"),
    [
        (["K-J1"], "K-J1"),
        (["K-J1", "K-J4"], "K-J1, K-J4"),
        (["K-J1", "K-J2", "K-J3"], "K-J1, K-J2, K-J3"),
        (["K-J1", "K-J2", "K-J3", "K-J4"], "K-J1, K-J2 and 2 more"),
        ([f"D{drawer}-J{joint}" for drawer in range(1, 7) for joint in range(1, 5)], "D1-J1, D1-J2 and 22 more"),
    ],
)
def test_places_are_named_together(places: list[str], told: str) -> None:
    assert told_once(at(*places)) == at(told)


def test_what_differs_is_told_apart_in_the_order_it_was_met() -> None:
    mixed = [*at("A"), *at("B", what="is wrong too."), *at("C")]
    assert told_once(mixed) == [*at("A, C"), *at("B", what="is wrong too.")]


@given(st.lists(st.tuples(st.sampled_from("ABCDEFGH"), st.sampled_from(["one", "other"])), max_size=12))
def test_nothing_is_lost(said: list[tuple[str, str]]) -> None:
    problems = [problem for place, what in said for problem in at(place, what=what)]
    told = told_once(problems)
    counts = {each.what: _named(each.where) for each in told}
    assert counts == Counter(what for _, what in said)
    assert len(told) == len(counts)


def _named(where: str) -> int:
    """How many places a text names or counts."""
    names, _, more = where.partition(" and ")
    return len(names.split(", ")) + (int(more.removesuffix(" more")) if more else 0)


def test_offers_are_worked_out_once_for_like_ends() -> None:
    """A box of boards of one thickness has four like joints, on boards of two lengths."""
    nearest_layouts.cache_clear()
    (problem,) = refused(crowded())
    assert problem.where == "K-J1, K-J2 and 2 more"
    asked = nearest_layouts.cache_info()
    assert (asked.misses, asked.hits) == (1, 3)


def crowded() -> Project:
    """The box with more tails than its boards have room for."""
    project = small_box()
    (box,) = project.boxes
    ring = replace(box.ring, spacing=replace(box.ring.spacing, tails=60))
    return replace(project, sleds=(SLED,), boxes=(replace(box, ring=ring),))


def test_a_joint_that_is_unlike_the_others_is_told_by_itself() -> None:
    project = crowded()
    (box,) = project.boxes
    first, *others = box.ring.corners
    own = replace(first, spacing=replace(box.ring.spacing, half_pin_nm=inches("1/8"), tails=50))
    ring = replace(box.ring, corners=(own, *others))  # type: ignore[arg-type]
    told = refused(replace(project, boxes=(replace(box, ring=ring),)))
    assert [problem.where for problem in told] == ["K-J1", "K-J2, K-J3, K-J4"]
