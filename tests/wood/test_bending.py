"""Beams: published figures, a beam solved numerically, and what must hold of any board."""

from __future__ import annotations

from itertools import pairwise
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.wood.bending import (
    G_PER_E,
    GRAVITY,
    Beam,
    Overhanging,
    Section,
    TwoLoads,
    edged,
    moment,
    plank,
    sag,
    shear_sag,
    stress,
)
from tests.wood.cases import CASES, agrees

CHERRY = 10.3e9


def test_a_cherry_shelf_under_the_cabinet_class() -> None:
    """In pounds and inches throughout, which the formula does not mind."""
    said = CASES["beam-cherry-15psf"]["inputs"]
    load = said["load_psf"] / 144 * said["width_in"] * said["span_in"]
    board = plank(said["width_in"], said["thickness_in"])
    agrees(
        "beam-cherry-15psf",
        deflection_in=sag(Beam.SIMPLE_EVEN, load, said["span_in"], said["E_psi"], board),
        bending_stress_psi=stress(moment(Beam.SIMPLE_EVEN, load, said["span_in"]), board),
        kcma_limit_in=min(said["span_in"] / 12 / 16, 0.25),
    )


def test_the_same_shelf_with_books() -> None:
    said = CASES["beam-cherry-25plf"]["inputs"]
    load = said["load_lb_per_ft"] * said["span_in"] / 12
    found = sag(Beam.SIMPLE_EVEN, load, said["span_in"], said["E_psi"], plank(said["width_in"], said["thickness_in"]))
    agrees("beam-cherry-25plf", deflection_in=found, L_over_d=said["span_in"] / found)


def test_shear_adds_less_than_a_hundredth_to_a_shelf() -> None:
    """Own arithmetic: 300 x 19 mm cherry, 800 mm span, 10.3 GPa, 30 kg: 1.110 mm, and 0.010 mm of shear at E/16."""
    board, load = plank(0.3, 0.019), 30 * GRAVITY
    assert sag(Beam.SIMPLE_EVEN, load, 0.8, CHERRY, board) * 1000 == pytest.approx(1.110, abs=0.0005)
    assert shear_sag(Beam.SIMPLE_EVEN, load, 0.8, CHERRY * G_PER_E, board) * 1000 == pytest.approx(0.010, abs=0.0005)


# --- solved another way ------------------------------------------------------------------------------------


def by_strips(beam: Beam, steps: int = 4000) -> tuple[float, float]:
    """Greatest sag and moment of a unit beam (span, load and E·I all 1), by adding up curvature strip by strip.

    For clamped ends the end moment is the one that leaves both ends level.
    """
    even = beam.name.endswith("EVEN")
    at = [i / steps for i in range(steps + 1)]
    if beam in {Beam.HELD_AT_ONE_END_EVEN, Beam.HELD_AT_ONE_END_TIP}:
        moments = [(1 - x) ** 2 / 2 if even else 1 - x for x in at]
        return _integrate(moments, 0.0)[-1], max(moments)
    simple = [x * (1 - x) / 2 if even else min(x, 1 - x) / 2 for x in at]
    clamped = beam in {Beam.FIXED_EVEN, Beam.FIXED_CENTRE}
    held = sum(simple[1:] + simple[:-1]) / 2 / steps if clamped else 0.0
    moments = [value - held for value in simple]
    fallen = _integrate([-value for value in moments], 0.0)
    slope = fallen[-1]  # over a span of 1
    sags = [abs(y - slope * x) for x, y in zip(at, fallen, strict=True)]
    return max(sags), max(map(abs, moments))


def _integrate(curvature: list[float], slope: float) -> list[float]:
    """Deflections from curvature, by the trapezium rule twice."""
    step = 1 / (len(curvature) - 1)
    at, height = 0.0, [0.0]
    for before, after in pairwise(curvature):
        turned = slope + (before + after) / 2 * step
        at += (slope + turned) / 2 * step
        slope = turned
        height.append(at)
    return height


@pytest.mark.parametrize("beam", Beam)
def test_every_case_of_the_table_agrees_with_a_beam_added_up_strip_by_strip(beam: Beam) -> None:
    unit = Section(inertia=1.0, area=1.0, furthest=1.0)
    deflection, greatest = by_strips(beam)
    assert sag(beam, 1.0, 1.0, 1.0, unit) == pytest.approx(deflection, rel=1e-4)
    assert moment(beam, 1.0, 1.0) == pytest.approx(greatest, rel=1e-4)


@pytest.mark.parametrize("beyond", [0.0, 0.1, 0.2071, 0.2232, 0.4])
def test_an_overhanging_beam_agrees_with_one_added_up_strip_by_strip(beyond: float) -> None:
    """A beam of whole length 1, w = 1, E·I = 1, on supports ``beyond`` from each end."""
    steps = 20_000
    span = 1 - 2 * beyond
    at = [i / steps for i in range(steps + 1)]
    left, right = beyond, 1 - beyond
    moments = [0.5 * max(0.0, x - left) + 0.5 * max(0.0, x - right) - x * x / 2 for x in at]
    fallen = _integrate([-value for value in moments], 0.0)
    a, b = round(left * steps), round(right * steps)
    slope = (fallen[b] - fallen[a]) / (at[b] - at[a])
    sags = [y - fallen[a] - slope * (x - at[a]) for x, y in zip(at, fallen, strict=True)]
    beam, unit = Overhanging(1.0, span, beyond), Section(1.0, 1.0, 1.0)
    assert beam.sag_between(1.0, unit) == pytest.approx(sags[steps // 2], abs=2e-6)
    assert beam.sag_at_the_ends(1.0, unit) == pytest.approx(sags[0], abs=2e-6)


@pytest.mark.parametrize("off", [0.01, 0.1, 0.25, 0.5])
def test_two_loads_agree_with_a_beam_added_up_strip_by_strip(off: float) -> None:
    steps = 20_000
    at = [i / steps for i in range(steps + 1)]
    moments = [min(x, 1 - x, off) / 2 for x in at]
    fallen = _integrate([-value for value in moments], 0.0)
    sags = [fallen[-1] * x - y for x, y in zip(at, fallen, strict=True)]
    loads, unit = TwoLoads(1.0, 1.0, off), Section(1.0, 1.0, 1.0)
    assert loads.sag(1.0, unit) == pytest.approx(abs(sags[steps // 2]), rel=1e-4)
    assert loads.moment() == pytest.approx(max(moments))


def test_overhangs_of_about_a_fifth_balance_a_shelf() -> None:
    """Facts sec. 4 (memory): 0.2071 of the whole length evens the moments, 0.2232 the sags."""
    even = Overhanging(1.0, 1 - 2 * 0.2071, 0.2071).moments()
    assert even[0] == pytest.approx(even[1], rel=1e-3)
    assert (sqrt(2) - 1) / 2 == pytest.approx(0.2071, abs=1e-4)
    beam, unit = Overhanging(1.0, 1 - 2 * 0.2232, 0.2232), Section(1.0, 1.0, 1.0)
    assert beam.sag_between(1.0, unit) == pytest.approx(beam.sag_at_the_ends(1.0, unit), rel=1e-2)


# --- what must hold of any board ---------------------------------------------------------------------------

SIZES = st.floats(0.005, 0.1)


@given(SIZES, SIZES, st.floats(0.3, 3), st.floats(1, 500), st.sampled_from(Beam))
def test_a_thicker_board_never_sags_more(one: float, other: float, span: float, load: float, beam: Beam) -> None:
    thin, thick = sorted((one, other))
    assert sag(beam, load, span, CHERRY, plank(0.3, thick)) <= sag(beam, load, span, CHERRY, plank(0.3, thin))


@given(st.floats(0.3, 3), st.floats(0.3, 3), st.floats(0.01, 0.04))
def test_a_shorter_span_never_sags_more_under_an_even_load(one: float, other: float, thickness: float) -> None:
    short, long = sorted((one, other))
    board = plank(0.3, thickness)
    assert sag(Beam.SIMPLE_EVEN, 300 * short, short, CHERRY, board) <= sag(
        Beam.SIMPLE_EVEN, 300 * long, long, CHERRY, board
    )


@given(st.floats(0.1, 0.5), st.floats(0.01, 0.04), st.floats(0, 0.03), st.floats(0, 0.08), st.floats(0, 0.08))
def test_a_deeper_edging_never_makes_a_shelf_weaker(
    width: float, thickness: float, strip: float, one: float, other: float
) -> None:
    low, high = sorted((one, other))
    bare, with_low, with_high = (
        plank(width, thickness).inertia,
        edged(width, thickness, strip, thickness + low).inertia,
        edged(width, thickness, strip, thickness + high).inertia,
    )
    assert bare <= with_low * (1 + 1e-12)
    assert with_low <= with_high * (1 + 1e-12)


def test_an_edging_as_high_as_the_shelf_only_makes_it_wider() -> None:
    wider, built_up = plank(0.3, 0.02), edged(0.28, 0.02, 0.02, 0.02)
    assert built_up.inertia == pytest.approx(wider.inertia)
    assert built_up.furthest == pytest.approx(wider.furthest)


def test_an_edging_of_a_shelf_by_hand() -> None:
    """Shelf 200 x 20, strip 20 x 50, upper sides level; millimetres.

    Areas 4000 and 1000, middles 10 and 25 below: axis at 65 000/5000 = 13. Shelf 200·8000/12 + 4000·9 = 169 333;
    strip 20·125 000/12 + 1000·144 = 352 333; together 521 667 mm⁴. Furthest: 50 − 13 = 37.
    """
    section = edged(200, 20, 20, 50)
    assert section.inertia == pytest.approx(521_666.67)
    assert section.furthest == pytest.approx(37)
