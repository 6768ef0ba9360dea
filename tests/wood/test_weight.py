"""Density and balance: the handbook's own examples, and what must hold of any wood."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.wood.weight import (
    NOTHING,
    Body,
    basic_gravity,
    density,
    density_from_ovendry,
    gravity_at,
    timber_density,
    together,
)
from tests.wood.cases import CASES, agrees

LB_IN_FT3 = 62.43
"""Water, as the handbook takes it."""

GRAVITIES = st.floats(0.2, 1.1)
MOISTURES = st.floats(0, 30)


def test_the_handbooks_example_of_a_density() -> None:
    said = CASES["density-0.4-12"]["inputs"]
    kg = density(said["G"], said["mc_pct"])
    agrees("density-0.4-12", kg_m3=kg, lb_ft3=kg / 1000 * LB_IN_FT3)


def test_cherry_weighs_what_a_public_species_sheet_says() -> None:
    # wood-database.com: 35 lb/ft3, 560 kg/m3 (read); 0.50 x 1.12 x 1000 = 560, x 62.43/1000 = 34.96.
    assert density(0.50, 12.0) == pytest.approx(560.0)
    assert timber_density(0.50, 12.0) == pytest.approx(560.0)


@pytest.mark.parametrize(("basic", "printed", "comes_to"), [(0.47, 0.50, 0.508), (0.38, 0.40, 0.404)])
def test_basic_gravity_comes_within_3_percent_of_printed_values(basic: float, printed: float, comes_to: float) -> None:
    # FPL-GTR-76 (memory): cherry 0.47 -> 0.508, table 0.50; ponderosa pine 0.38 -> 0.404, table 0.40.
    # 0.47/(1 - 0.265*0.6*0.47) = 0.47/0.92527 = 0.50796; 0.38/(1 - 0.06042) = 0.40444.
    assert gravity_at(basic, 12.0) == pytest.approx(comes_to, abs=0.0005)
    assert gravity_at(basic, 12.0) == pytest.approx(printed, rel=0.03)


@given(GRAVITIES, MOISTURES)
def test_basic_gravity_turns_round(gravity: float, moisture: float) -> None:
    assert gravity_at(basic_gravity(gravity, moisture), moisture) == pytest.approx(gravity)


@given(st.floats(0.3, 0.7), st.floats(0, 25))
def test_two_published_forms_agree(basic: float, moisture: float) -> None:
    """The NDS form begins with oven-dry wood, the other with green; both are rounded fits, so they agree to 3 %."""
    ovendry = gravity_at(basic, 0.0)
    one, other = density_from_ovendry(ovendry, moisture), density(gravity_at(basic, moisture), moisture)
    assert one == pytest.approx(other, rel=0.03)


@given(st.floats(0.2, 0.85), MOISTURES, MOISTURES)
def test_wetter_wood_is_never_lighter(gravity: float, one: float, other: float) -> None:
    """Of all but the very heaviest: the fitted formula swells woods of a basic gravity over 0.87 faster than it wets.

    From d/dx: 1/100 = 0.265·G/30 / (1 − 0.265·G), so 0.3·(1 − 0.265·G) = 0.265·G and G = 0.3/(0.265·1.3) = 0.871.
    """
    dry, wet = sorted((one, other))
    assert timber_density(gravity, dry) <= timber_density(gravity, wet) * (1 + 1e-12)


BODIES = st.lists(st.builds(Body, kg=st.floats(0, 50), right=st.floats(-2, 2),
                            back=st.floats(-2, 2), up=st.floats(0, 2)), max_size=6)  # fmt: skip


@given(BODIES)
def test_bodies_together_turn_about_any_point_as_they_do_apart(bodies: list[Body]) -> None:
    whole = together(bodies)
    assert whole.kg == pytest.approx(sum(body.kg for body in bodies))
    assert whole.kg * whole.back == pytest.approx(sum(body.kg * body.back for body in bodies), abs=1e-9)
    assert whole.kg * whole.up == pytest.approx(sum(body.kg * body.up for body in bodies), abs=1e-9)


def test_two_bodies_balance_nearer_to_the_heavier() -> None:
    # 3 kg at 0 and 1 kg at 1 m balance at a quarter.
    assert together([Body(3, 0, 0, 0), Body(1, 1, 2, 4)]) == Body(4, 0.25, 0.5, 1)
    assert together([]) == NOTHING
