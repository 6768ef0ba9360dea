"""Tipping: figures worked out elsewhere, the search against all subsets, and what must hold of any piece."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import chain, combinations, product
from math import atan, degrees, radians

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.lengths import Nm, Unit, read_length
from planner.quantities import newtons
from planner.wood.bending import GRAVITY
from planner.wood.loads import spread
from planner.wood.tipping import Opens, Push, Standing, Worst, anchor, ballast, lean_on_block, margin, worst
from planner.wood.tipping_tests import (
    ALLOWANCE_NM,
    BLOCK_NM,
    CHILD_LB,
    FILL,
    GREATEST_PULL_UP_NM,
    PULL_LBF,
    SCOPE_CUBIC_FT,
    SCOPE_HEIGHT_NM,
    SCOPE_LB,
    SITUATIONS,
    Known,
    drawer_volume,
    enclosed_volume,
    in_scope,
)
from planner.wood.weight import NOTHING, Body
from tests.wood.cases import CASES, agrees

IN, LB = 0.0254, 0.45359237
LB_IN = LB * GRAVITY * IN
"""Newton metres in a pound-inch of moment."""


def inches(text: str) -> Nm:
    return read_length(text, Unit.INCH)


# --- "chest A": worked out in pounds and inches, beside the program -----------------------------------------

HEIGHTS = (8, 16, 24, 32, 40)
FILL_LB = 30 * 16 * 5.875 / 1728 * 8.5


def chest_a(most_open: int | None = None) -> Standing:
    """Case 60 lb at x 9, z 24; five drawers of 10 lb at x 9, travel 14; faces flush with the front supports."""
    drawers = tuple(
        Opens(
            mark=f"D{number}",
            body=Body(10 * LB, 0, 9 * IN, z * IN),
            travel=14 * IN,
            edge_back=-14 * IN,
            edge_up=(z + 3) * IN,
            fill=Body(FILL_LB * LB, 0, 9 * IN, z * IN),
        )
        for number, z in enumerate(HEIGHTS, 1)
    )
    case = Body(60 * LB, 0, 9 * IN, 24 * IN)
    return Standing(case=case, opens=drawers, spacing=17 * IN, height=46 * IN, most_open=most_open)


ALL = ("D1", "D2", "D3", "D4", "D5")
BLOCK = Push(lean=lean_on_block(0.43, 17), weight=60 * LB)


def lb_in(push: Push, opened: tuple[str, ...], filled: tuple[str, ...] = (), weight_on: str = "") -> float:
    return margin(chest_a(), push, opened, filled, weight_on) / LB_IN


@pytest.mark.parametrize(
    ("push", "opened", "filled", "weight_on", "expected"),
    [
        (Push(), (), (), "", 990.0),
        (Push(), (), ALL, "", 1614.2),
        (Push(), ALL, (), "", 290.0),
        (Push(), ALL, ALL, "", -56.8),
        (Push(), ("D1", "D2"), ALL, "", 945.8),
        (Push(pull=10 * LB * GRAVITY, pull_up=46 * IN), ALL, (), "", -170.0),
        (Push(pull=10 * LB * GRAVITY, pull_up=46 * IN), ("D5",), (), "", 390.0),
        (Push(weight=60 * LB), ("D5",), (), "D5", 10.0),
        (Push(weight=50 * LB), ("D5",), (), "D5", 150.0),
        (BLOCK, ("D5",), (), "D5", -122.0),
        (BLOCK, ("D1",), (), "D1", -73.5),
    ],
)
def test_chest_a_comes_to_the_figures_worked_out_beside_it(
    push: Push, opened: tuple[str, ...], filled: tuple[str, ...], weight_on: str, expected: float
) -> None:
    # Own arithmetic, twice and independently; published nowhere.
    assert lb_in(push, opened, filled, weight_on) == pytest.approx(expected, abs=0.05)


def test_the_cases_of_the_file() -> None:
    agrees("tip-all-open-filled", margin_lb_in=lb_in(Push(), ALL, ALL))
    agrees("tip-two-open-filled", margin_lb_in=lb_in(Push(), ("D2", "D4"), ALL))
    pulled = CASES["tip-pull-top-all-open"]["inputs"]
    push = Push(pull=pulled["pull_lbf"] * LB * GRAVITY, pull_up=pulled["pull_height_in"] * IN)
    agrees("tip-pull-top-all-open", margin_lb_in=lb_in(push, ALL))
    child = CASES["tip-60lb-top-open-carpet"]["inputs"]
    push = Push(
        lean=lean_on_block(child["rear_block_in"], child["feet_spacing_in"]), weight=child["front_weight_lb"] * LB
    )
    agrees(
        "tip-60lb-top-open-carpet",
        tilt_deg=degrees(push.lean),
        margin_lb_in=lb_in(push, ("D5",), (), "D5"),
        margin_on_flat_floor_lb_in=lb_in(replace(push, lean=0.0), ("D5",), (), "D5"),
    )


def test_the_fill_of_a_drawer() -> None:
    said = CASES["tip-fill-weight"]["inputs"]
    assert inches("1/8") == ALLOWANCE_NM
    assert said["height_allowance_in"] == 0.125
    volume = drawer_volume(*(inches(str(said[key])) for key in _SIZES))
    agrees("tip-fill-weight", volume_ft3=volume / (12 * IN) ** 3, fill_lb=volume * spread(FILL).kg / LB)


_SIZES = ("drawer_bottom_to_obstruction_in", "width_in", "depth_in")


def test_ballast_and_anchor_of_chest_a() -> None:
    """7.20 lb at x 17, z 2 bring the case of a child on the top drawer to 0; 122.04/46 = 2.653 lbf at the top."""
    left = margin(chest_a(), BLOCK, ("D5",), (), "D5")
    needed = ballast(left, BLOCK.lean, 17 * IN, 2 * IN)
    assert needed is not None
    assert needed / LB == pytest.approx(7.20, abs=0.005)
    held = replace(chest_a(), case=chest_a().case, opens=(*chest_a().opens, _lump(needed)))
    assert margin(held, BLOCK, ("D5",), (), "D5") == pytest.approx(0.0, abs=1e-9)
    assert anchor(left, 46 * IN) / (LB * GRAVITY) == pytest.approx(2.653, abs=0.001)
    assert ballast(1.0, 0.0, 0.4, 0.0) == 0.0
    assert ballast(-1.0, 0.0, -0.1, 0.0) is None


def _lump(kg: float) -> Opens:
    return Opens(mark="ballast", body=Body(kg, 0, 17 * IN, 2 * IN), travel=0, edge_back=0, edge_up=0)


def test_a_second_piece_in_millimetres() -> None:
    """Own arithmetic: 40 kg at 220 behind and 500 up; 4 kg 60 in front at 800; 60 lbf 280 in front at 800; t 1.42195°.

    Moments +81 405, −3 132, −80 005 N·mm; together −1 732: it tips. With tan t = block/spacing, which this takes from
    the floor; the program measures along the base, so it is told the angle. Least case for balance 40.851 kg.
    """
    lean = atan(10.922 / 440)
    assert degrees(lean) == pytest.approx(1.42195, abs=1e-5)
    drawer = Opens(mark="D", body=Body(4, 0, 0.1, 0.8), travel=0.16, edge_back=-0.28, edge_up=0.8)
    standing = Standing(case=Body(40, 0, 0.22, 0.5), opens=(drawer,), spacing=0.44, height=0.9)
    push = Push(lean=lean, weight=266.893 / GRAVITY)
    assert margin(standing, push, ("D",), (), "D") * 1000 == pytest.approx(-1732, abs=1)
    balanced = replace(standing, case=Body(40.851, 0, 0.22, 0.5))
    assert margin(balanced, push, ("D",), (), "D") * 1000 == pytest.approx(0, abs=2)
    assert worst(standing, push).margin * 1000 == pytest.approx(-1732, abs=1)


# --- the search against all subsets ------------------------------------------------------------------------

PLACES = st.floats(-0.6, 0.8)
BODIES = st.builds(Body, kg=st.floats(0, 30), right=st.just(0.0), back=PLACES, up=st.floats(0, 2))


def opens(number: int) -> st.SearchStrategy[Opens]:
    return st.builds(
        Opens,
        mark=st.just(f"D{number}"),
        body=BODIES,
        travel=st.floats(0, 0.7),
        edge_back=PLACES,
        edge_up=st.floats(0, 2),
        fill=st.one_of(st.just(NOTHING), BODIES),
        limited=st.booleans(),
    )


@st.composite
def pieces(draw: st.DrawFn, most: int = 12) -> Standing:
    count = draw(st.integers(0, most))
    return Standing(
        case=draw(BODIES),
        opens=tuple(draw(opens(number)) for number in range(count)),
        spacing=0.4,
        height=1.2,
        most_open=draw(st.one_of(st.none(), st.integers(0, most))),
    )


@st.composite
def pushes(draw: st.DrawFn) -> Push:
    return Push(
        lean=draw(st.sampled_from([0.0, radians(1.5), radians(4)])),
        pull=draw(st.sampled_from([0.0, 44.5])),
        pull_up=draw(st.floats(0, 1.5)),
        weight=draw(st.sampled_from([0.0, 27.2])),
        fills=draw(st.sampled_from([(False,), (True,), (False, True)])),
    )


def subsets(marks: list[str]) -> Iterator[tuple[str, ...]]:
    return chain.from_iterable(combinations(marks, size) for size in range(len(marks) + 1))


def least_of_all(standing: Standing, push: Push) -> float:
    """The least margin over every subset that may be open, every fill, and every place for the weight.

    Each drawer's fill is tried within each subset on its own, since the margin is a sum over drawers.
    """
    marks = [each.mark for each in standing.opens]
    limited = {each.mark for each in standing.opens if each.limited}
    best: list[float] = []
    for opened in subsets(marks):
        bearing = list(opened) if push.weight and marks else [""]
        for on in bearing:
            out = len(limited & set(opened)) - (1 if on in limited else 0)
            room = (
                len(marks) if standing.most_open is None else max(0, standing.most_open - (1 if on in limited else 0))
            )
            if out > room:
                continue
            nothing = margin(standing, push, opened, (), on)
            gains = [
                min(margin(standing, push, opened, full, on) - nothing for full in _fills(push, mark)) for mark in marks
            ]
            best.append(nothing + sum(gains))
    return min(best)


def _fills(push: Push, mark: str) -> list[tuple[str, ...]]:
    return [(mark,) if full else () for full in push.fills]


@given(pieces(), pushes())
def test_the_worst_case_is_that_of_all_subsets(standing: Standing, push: Push) -> None:
    found = worst(standing, push)
    assert found.margin == pytest.approx(least_of_all(standing, push), abs=1e-6)
    on = found.weight_on or ""
    assert found.margin == margin(standing, push, found.open, found.filled, on)
    assert not on or on in found.open


@given(pieces(4), pushes())
def test_fills_are_searched_as_if_all_were_tried(standing: Standing, push: Push) -> None:
    """No short way at all: every state of every drawer."""
    marks = [each.mark for each in standing.opens]
    limited = {each.mark for each in standing.opens if each.limited}
    least = []
    for opened in subsets(marks):
        for states in product(push.fills, repeat=len(marks)):
            filled = [mark for mark, full in zip(marks, states, strict=True) if full]
            for on in opened if push.weight and marks else ("",):
                free = (limited & set(opened)) - {on}
                bears = 1 if on in limited else 0
                if standing.most_open is None or len(free) <= max(0, standing.most_open - bears):
                    least.append(margin(standing, push, opened, filled, on))
    assert worst(standing, push).margin == pytest.approx(min(least), abs=1e-6)


def test_the_worst_of_chest_a() -> None:
    assert worst(chest_a(), Push(fills=(True,))) == Worst(
        margin=margin(chest_a(), Push(), ALL, ALL), open=ALL, filled=ALL, weight_on=None
    )
    two = worst(chest_a(2), Push(fills=(True,)))
    assert two.open == ("D1", "D2")
    assert two.margin / LB_IN == pytest.approx(945.8, abs=0.05)
    # With the lean the highest drawer is the worst place for a child; filled open drawers hurt, all being open.
    child = worst(chest_a(), replace(BLOCK, fills=(False, True)))
    assert (child.weight_on, child.open, child.filled) == ("D5", ALL, ALL)


# --- what must hold of any piece ---------------------------------------------------------------------------


@given(pieces(6), pushes(), st.data())
def test_opening_one_more_never_adds_margin(standing: Standing, push: Push, data: st.DataObject) -> None:
    """With the same things filled and the weight where it is: whatever opens only comes forward."""
    marks = [each.mark for each in standing.opens]
    opened, filled = (data.draw(st.sets(st.sampled_from(marks))) if marks else set() for _ in range(2))
    before = margin(standing, push, opened, filled)
    for mark in marks:
        assert margin(standing, push, opened | {mark}, filled) <= before + 1e-9


@given(pieces(6), pushes(), st.integers(0, 5))
def test_letting_one_more_open_at_once_never_adds_to_the_worst_margin(
    standing: Standing, push: Push, most: int
) -> None:
    fewer, more = (worst(replace(standing, most_open=n), push).margin for n in (most, most + 1))
    assert more <= fewer + 1e-9
    assert worst(replace(standing, most_open=None), push).margin <= more + 1e-9


@given(pieces(6), pushes(), st.floats(0, 50))
def test_a_heavier_case_never_tips_sooner_while_its_own_weight_holds_it(
    standing: Standing, push: Push, more: float
) -> None:
    """True just when the case's centre stays behind its supports as it leans: x·cos t ≥ z·sin t."""
    case = standing.case
    heavier = replace(standing, case=replace(case, kg=case.kg + more))
    holds = margin(replace(standing, case=replace(case, kg=1.0), opens=()), Push(lean=push.lean), (), ()) >= 0
    before, after = worst(standing, push).margin, worst(heavier, push).margin
    assert after >= before - 1e-9 if holds else after <= before + 1e-9


# --- the published limits ----------------------------------------------------------------------------------


def test_figures_are_those_published() -> None:
    """27 in, 30 lb, 3.2 ft³, 8.5 lb/ft³, 10 lbf, 56 in, 60 lb, 0.43 in: how each is known stands beside it."""
    assert (inches("27"), inches("56"), inches("0.43")) == (SCOPE_HEIGHT_NM, GREATEST_PULL_UP_NM, BLOCK_NM)
    assert (SCOPE_LB, SCOPE_CUBIC_FT, PULL_LBF, CHILD_LB) == (30, 3.2, 10, 60)
    assert pytest.approx(136.157, abs=0.0005) == spread(FILL).kg
    assert pytest.approx(10 * LB * GRAVITY) == newtons(PULL_LBF)


def test_all_three_limits_together_make_the_scope() -> None:
    """30 lb are 13.6 kg, 3.2 ft³ are 90.6 dm³: a hair over each is in, a hair under any is out."""
    over = (SCOPE_HEIGHT_NM, 13.608, 0.0907)
    assert in_scope(*over)
    assert not in_scope(Nm(SCOPE_HEIGHT_NM - 1), *over[1:])
    assert not in_scope(over[0], 13.607, over[2])
    assert not in_scope(*over[:2], 0.0906)


def test_all_three_limits_must_be_reached() -> None:
    tall, heavy, roomy = inches("27"), 30 * LB + 1e-6, 3.2 * (12 * IN) ** 3 + 1e-9
    assert in_scope(tall, heavy, roomy)
    assert not in_scope(inches("26 63/64"), heavy, roomy)
    assert not in_scope(tall, 29.9 * LB, roomy)
    assert not in_scope(tall, heavy, 3.19 * (12 * IN) ** 3)


def test_half_of_an_enclosed_space_counts() -> None:
    assert enclosed_volume(inches("12"), inches("12"), inches("12")) / (12 * IN) ** 3 == pytest.approx(0.5)
    assert drawer_volume(inches("1/16"), inches("12"), inches("12")) == 0.0


def test_what_was_only_recalled_is_marked_so() -> None:
    known = {each.name: dict(each.known) for each in SITUATIONS}
    assert known["pull"]["10 lbf, at most 56 in up"] is Known.MEMORY
    assert known["child on carpet"]["60 lb"] is Known.READ
    assert all(Known.NOT_FOUND in known[name].values() for name in ("pull", "child on carpet"))
