"""Movement: worked examples of the handbook and of the trade, the identity of its two tables, and plain sense."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.domain.timber import Timber
from planner.domain.words import MaterialKind, Sawn
from planner.wood.least import least
from planner.wood.movement import (
    GREATEST_COEFFICIENT,
    across_width,
    along_grain,
    change,
    change_wide,
    coefficient_from_shrinkage,
    moisture_before,
    shrinkage_from_coefficient,
    strain,
    through_thickness,
)
from planner.wood.timbers import UnknownTimberError, shipped, timber_named
from tests.wood.cases import CASES, agrees

SOLID = [each for each in shipped().values() if each.kind is MaterialKind.SOLID]
DISAGREE = {"Ash, green", "Oak, northern red", "Oak, white", "Mahogany (Swietenia)", "Teak"}
"""Where the handbook's two tables rest on different data: see facts of Table 13-5 in ``timbers.csv``."""

COEFFICIENTS = st.floats(0.0005, GREATEST_COEFFICIENT)
CONTENTS = st.floats(0, 35)
WITHIN = st.floats(6, 14)


@pytest.mark.parametrize("case", ["wood-move-fir-mm", "wood-move-fir-in"])
def test_the_handbooks_worked_example(case: str) -> None:
    said, unit = CASES[case]["inputs"], case[-2:]
    size = said[f"width_{unit}"]
    changed = change(size, said["C"], said["mc_from_pct"], said["mc_to_pct"])
    agrees(case, **{f"change_{unit}": changed, f"final_{unit}": size + changed})


@pytest.mark.parametrize("case", ["wood-move-mesquite", "wood-move-alder"])
def test_examples_of_the_trade(case: str) -> None:
    said = CASES[case]["inputs"]
    agrees(case, change_in=change(said["width_in"], said["C"], said["mc_from_pct"], said["mc_to_pct"]))


def test_the_wide_formula_on_the_same_board() -> None:
    said = CASES["wood-move-full-fir"]["inputs"]
    wide = change_wide(said["width_mm"], said["shrink_pct"], said["mc_from_pct"], said["mc_to_pct"], said["F"])
    agrees("wood-move-full-fir", change_mm=wide)


@pytest.mark.parametrize("case", [each for each in CASES if each.startswith("coef-")])
def test_coefficients_from_shrinkage(case: str) -> None:
    said = CASES[case]["inputs"]
    agrees(case, C=coefficient_from_shrinkage(said["shrink_pct"], said["F"]))


def test_the_handbooks_two_tables_agree_for_thirty_species() -> None:
    """C = S/(100 F - S (F - 10)) yields Table 13-5 from Table 4-3, to one unit of the last decimal printed."""
    agreeing = set()
    for timber in SOLID:
        assert timber.shrinkage_tangential_pct is not None
        assert timber.shrinkage_radial_pct is not None
        pairs = (
            (timber.shrinkage_tangential_pct, timber.tangential),
            (timber.shrinkage_radial_pct, timber.radial),
        )
        if all(abs(coefficient_from_shrinkage(s, timber.intersection_pct) - c) < 0.00001 for s, c in pairs):
            agreeing.add(timber.name)
    assert agreeing == {timber.name for timber in SOLID} - DISAGREE
    assert len(agreeing) == 30


@given(COEFFICIENTS, st.sampled_from([22.0, 30.0]))
def test_shrinkage_turns_round(coefficient: float, intersection: float) -> None:
    shrinkage = shrinkage_from_coefficient(coefficient, intersection)
    assert coefficient_from_shrinkage(shrinkage, intersection) == pytest.approx(coefficient)


@given(st.sampled_from(SOLID), WITHIN, WITHIN)
def test_two_formulas_agree_from_6_to_14_percent(timber: Timber, start: float, end: float) -> None:
    """Both have the same slope at 10 %; the wide one is C/(1 + C (start - 10)), so they part by 4 C at most: 1.8 %.

    Of the handbook's white fir, 8 to 11 %, it is 0.4 % (own arithmetic): 2 x 0.00245 = 0.0049.
    """
    shrinkage = shrinkage_from_coefficient(timber.tangential, timber.intersection_pct)
    by_coefficient = change(100.0, timber.tangential, start, end)
    by_shrinkage = change_wide(100.0, shrinkage, start, end, timber.intersection_pct)
    assert by_shrinkage == pytest.approx(by_coefficient, rel=4.2 * timber.tangential, abs=1e-12)


@given(st.floats(1, 1000), COEFFICIENTS, WITHIN, WITHIN)
def test_the_moisture_before_is_found_again(size: float, coefficient: float, start: float, end: float) -> None:
    """The handbook says that Eq. 13-2 may be turned round for this (ch. 13, read)."""
    changed = change(size, coefficient, start, end)
    assert moisture_before(size, coefficient, end, changed) == pytest.approx(start)


@given(COEFFICIENTS, st.sampled_from([22.0, 30.0]), CONTENTS, CONTENTS, CONTENTS)
def test_wetter_wood_never_shrinks(c: float, intersection: float, start: float, one: float, other: float) -> None:
    low, high = sorted((one, other))
    assert strain(c, intersection, start, low) <= strain(c, intersection, start, high)
    assert strain(c, intersection, start, start) == 0


@given(COEFFICIENTS, WITHIN, WITHIN)
def test_within_its_range_the_coefficient_alone_counts(coefficient: float, start: float, end: float) -> None:
    assert strain(coefficient, 30.0, start, end) == pytest.approx(change(1.0, coefficient, start, end), abs=1e-12)


def test_from_green_to_dry_comes_near_the_printed_shrinkage() -> None:
    """Cherry, 7.1 % of the green size (Table 4-3, read); made up of three pieces, so within a twentieth of it."""
    cherry = timber_named("Cherry, black")
    swollen = strain(cherry.tangential, 30.0, 0.0, 30.0)
    assert 100 * swollen / (1 + swollen) == pytest.approx(7.1, rel=0.05)
    assert strain(cherry.tangential, 30.0, 30.0, 80.0) == 0  # above the intersection point nothing moves


def test_no_shipped_timber_moves_more_than_any_wood_does() -> None:
    """Half a percent for each point; who takes the whole shrinkage instead gets ten times that."""
    for timber in shipped().values():
        assert 0 < timber.radial <= timber.tangential <= GREATEST_COEFFICIENT
        assert (timber.shrinkage_tangential_pct or 1) / 100 > GREATEST_COEFFICIENT


def test_how_a_board_was_sawn_decides_and_what_is_not_known_counts_as_worst() -> None:
    """Cherry: C_T 0.00248, C_R 0.00126 (Table 13-5, read); between them lies 0.00187."""
    cherry = timber_named("Cherry, black")
    widths = {sawn: across_width(cherry, sawn) for sawn in (None, *Sawn)}
    assert widths[None] == widths[Sawn.FLAT] == 0.00248
    assert widths[Sawn.QUARTER] == 0.00126
    assert widths[Sawn.RIFT] == pytest.approx(0.00187)
    assert through_thickness(cherry, Sawn.FLAT) == 0.00126
    assert through_thickness(cherry, Sawn.QUARTER) == through_thickness(cherry, None) == 0.00248
    assert along_grain(cherry) == 0
    mdf = timber_named("MDF")
    assert across_width(mdf, Sawn.QUARTER) == along_grain(mdf) == mdf.tangential
    assert through_thickness(mdf, None) == 0


@given(st.integers(0, 500), st.integers(1, 20), st.integers(0, 1000))
def test_the_least_change_is_that_of_trying_all(needed: int, step: int, most: int) -> None:
    tried = [change for change in range(0, most + 1, step) if change >= needed]
    assert least(lambda change: change >= needed, step, most) == (tried[0] if tried else None)


# --- the shipped timbers ----------------------------------------------------------------------------------------


def test_every_value_says_where_it_comes_from() -> None:
    for timber in shipped().values():
        assert timber.source
        assert timber.how_movement
        assert timber.how_strength
        assert bool(timber.how_shrinkage) is (timber.shrinkage_tangential_pct is not None)
        if timber.kind is MaterialKind.SHEET:
            assert "memory" in timber.how_movement
            assert "memory" in timber.how_strength


def test_thirty_five_species_and_some_sheets() -> None:
    """Figures of three rows as printed: Tables 13-5, 4-3 and 5-3a of the Wood Handbook (read)."""
    assert len(SOLID) == 35
    assert len(shipped()) > 35
    beech, alder, walnut = (timber_named(name) for name in ("Beech, American", "Alder, red", "Walnut, black"))
    assert (beech.tangential, beech.radial, beech.specific_gravity) == (0.00431, 0.00190, 0.64)
    assert (alder.shrinkage_tangential_pct, alder.shrinkage_radial_pct) == (7.3, 4.4)
    assert (walnut.stiffness_gpa, walnut.strength_mpa) == (11.6, 101)


def test_names_are_found_in_any_order_and_misspelt_ones_suggested() -> None:
    assert timber_named("black cherry") is timber_named("CHERRY, BLACK") is shipped()["Cherry, black"]
    with pytest.raises(UnknownTimberError) as error:
        timber_named("chery")
    assert error.value.near == ("Cherry, black",)
    with pytest.raises(UnknownTimberError) as error:
        timber_named("oak")
    assert error.value.near == ("Oak, northern red", "Oak, white")
