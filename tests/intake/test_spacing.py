"""Pins as a file says them: for all, for a ring, for one drawer, for one joint."""

from __future__ import annotations

from fractions import Fraction

import pytest

from planner.domain.rates import USUAL_RATES, Rates
from planner.domain.spacing import Spacing
from planner.domain.words import EdgeName, Spread
from planner.intake.project_file import read_project
from tests.intake.bad_files import GOOD
from tests.intake.files import chest, refusals, rings

IN = 25_400_000


def own(*lines: str, ring: str = "D1", joint: int = 1) -> Spacing | None:
    """The spacing that a joint of the chest has of its own."""
    return rings(*lines)[ring].corners[joint - 1].spacing


def of(*lines: str, ring: str = "D1") -> Spacing:
    """The spacing of a ring of the chest."""
    return rings(*lines)[ring].spacing


# --- what the keys mean ----------------------------------------------------------------------------------------


def test_pins_of_which_nothing_is_said_are_even_and_measured_from_the_reference_edge() -> None:
    spacing = of()
    assert (spacing.spread, spacing.ratio, spacing.places) == (Spread.EVEN, None, ())
    assert (spacing.measured_from, spacing.alike) == (EdgeName.REFERENCE, False)


@pytest.mark.parametrize("spread", [Spread.MIDDLE, Spread.EDGE])
def test_graduated_tails_have_an_exact_ratio(spread: Spread) -> None:
    spacing = of(f'drawer.pins = {{ spread = "{spread}", ratio = 1.15, tails = 5, measured_from = "far edge" }}')
    assert (spacing.spread, spacing.ratio, spacing.tails) == (spread, Fraction(23, 20), 5)
    assert spacing.measured_from is EdgeName.FAR


def test_listed_pins_are_places_in_any_unit() -> None:
    spacing = of('drawer.pins.places = [["1 1/2 in", 1.75], ["76.2 mm", "3-1/2\\""]]')
    assert spacing.spread is Spread.LISTED
    assert spacing.places == ((IN * 3 // 2, IN * 7 // 4), (IN * 3, IN * 7 // 2))
    assert spacing.tails is None


def test_drawers_may_be_asked_to_look_alike() -> None:
    assert of("drawer.pins.alike = true").alike
    assert not of("drawer.pins.alike = false").alike


# --- tables over each other ------------------------------------------------------------------------------------

EVERYWHERE = '[pins]\ntails = 5\nspread = "middle"\nratio = 2\npin = "1/8 in"'


def test_places_lie_over_the_count_and_spread_of_all() -> None:
    spacing = of("drawer.pins.places = [[1, 2]]", EVERYWHERE)
    assert (spacing.spread, spacing.places, spacing.tails, spacing.ratio) == (
        Spread.LISTED,
        ((IN, 2 * IN),),
        None,
        None,
    )
    assert spacing.pin_nm == IN // 8


@pytest.mark.parametrize(
    ("said", "spread", "tails"),
    [("tails = 3", Spread.EVEN, 3), ('tails = "choose"', Spread.EVEN, None), ('spread = "even"', Spread.EVEN, None)],
)
def test_a_count_or_a_spread_lies_over_the_places_of_all(said: str, spread: Spread, tails: int | None) -> None:
    spacing = of(f"drawer.pins = {{ {said} }}", "[pins]", "places = [[1, 2]]")
    assert (spacing.spread, spacing.tails, spacing.places) == (spread, tails, ())


def test_other_keys_leave_listed_pins_listed() -> None:
    spacing = of('drawer.pins = { half_pin = "1/2 in", measured_from = "far edge" }', "[pins]", "places = [[1, 2]]")
    assert (spacing.places, spacing.half_pin_nm, spacing.measured_from) == (((IN, 2 * IN),), IN // 2, EdgeName.FAR)


def test_a_ratio_goes_with_its_spread() -> None:
    """A spread that is said over takes the ratio below with it."""
    edge = of('drawer.pins = { spread = "edge", ratio = 3 }', EVERYWHERE)
    assert (edge.spread, edge.ratio, edge.tails) == (Spread.EDGE, Fraction(3), 5)
    even = of('drawer.pins.spread = "even"', EVERYWHERE)
    assert (even.spread, even.ratio, even.tails) == (Spread.EVEN, None, 5)


def test_a_ring_that_says_nothing_has_what_is_said_for_all() -> None:
    assert of(EVERYWHERE, ring="C") == of(EVERYWHERE, ring="D3")
    assert of(EVERYWHERE).ratio == 2


def test_pins_of_one_drawer_lie_over_those_of_its_fellows() -> None:
    lines = "drawer.pins = { places = [[1, 2]], pin = 0.5 }", "except.D2.pins = { tails = 3 }", EVERYWHERE
    one, other = of(*lines, ring="D2"), of(*lines, ring="D1")
    assert other.places == ((IN, 2 * IN),)
    assert (one.places, one.tails, one.pin_nm) == ((), 3, IN // 2)
    assert (one.spread, one.ratio) == (Spread.MIDDLE, Fraction(2))
    back = of(*lines[:1], "except.D2.pins.places = [[2, 3]]", EVERYWHERE, ring="D2")
    assert (back.places, back.pin_nm) == (((2 * IN, 3 * IN),), IN // 2)


# --- single joints ---------------------------------------------------------------------------------------------


def test_a_joint_has_no_spacing_of_its_own_unless_it_is_named() -> None:
    ring = rings('joint.J3.pin = "3/8 in"', EVERYWHERE)["C"]
    assert [corner.spacing is None for corner in ring.corners] == [True, True, False, True]
    joint = ring.corners[2].spacing
    assert joint is not None
    assert (joint.pin_nm, joint.tails, joint.ratio) == (IN * 3 // 8, 5, Fraction(2))


def test_a_joint_that_is_named_without_keys_is_spaced_as_its_ring() -> None:
    assert own("drawer.joint.J1 = {}", EVERYWHERE) == of(EVERYWHERE)


def test_a_joint_lies_over_its_ring_and_places_over_counts() -> None:
    lines = ("drawer.pins.tails = 4", "drawer.joint.J2.places = [[1, 2]]", "drawer.joint.J3.tails = 6", EVERYWHERE)
    listed, counted = own(*lines, joint=2), own(*lines, joint=3)
    assert listed is not None
    assert (listed.places, listed.tails, listed.spread) == (((IN, 2 * IN),), None, Spread.LISTED)
    assert counted is not None
    assert (counted.tails, counted.spread, counted.ratio) == (6, Spread.MIDDLE, Fraction(2))


def test_joints_of_one_drawer_lie_over_those_of_its_fellows_key_by_key() -> None:
    lines = (
        "drawer.joint.J1 = { tails = 4, pin = 0.5 }",
        "except.D2.joint.J1.tails = 6",
        "except.D2.joint.J4.tails = 7",
        "except.D2.pins.half_pin = 0.75",
    )
    first, fourth = own(*lines, ring="D2"), own(*lines, ring="D2", joint=4)
    assert first is not None
    assert (first.tails, first.pin_nm, first.half_pin_nm) == (6, IN // 2, IN * 3 // 4)
    assert fourth is not None
    assert (fourth.tails, fourth.pin_nm) == (7, IN // 4)
    assert own(*lines, ring="D1", joint=4) is None


def test_every_box_of_a_batch_has_the_same_joints() -> None:
    boxes = read_project(GOOD, "good.toml").boxes
    assert len({tuple(corner.spacing for corner in box.ring.corners) for box in boxes}) == 1
    listed = boxes[0].ring.corners[0].spacing
    assert listed is not None
    assert (len(listed.places), listed.measured_from, listed.pin_nm) == (2, EdgeName.FAR, IN // 8)


def test_keys_that_only_fit_together_across_tables_are_still_asked_for_in_one() -> None:
    (message,) = refusals("drawer.pins.ratio = 3", EVERYWHERE)
    assert message.startswith("carcase[1].drawer.pins.ratio: goes with graduated tails only.")


# --- sleds and rates -------------------------------------------------------------------------------------------


def test_a_sled_may_have_its_slot_measured_and_its_depth_limited() -> None:
    bench, small = read_project(GOOD, "good.toml").sleds
    assert (bench.slot_nm, bench.greatest_depth_soft_nm, bench.greatest_depth_hard_nm) == (
        12_750_000,
        IN,
        IN * 7 // 8,
    )
    assert (small.slot_nm, small.greatest_depth_soft_nm, small.greatest_depth_hard_nm) == (None, None, None)


def test_rates_that_are_left_out_are_usual() -> None:
    assert chest().rates == USUAL_RATES
    assert chest("[rates]").rates == USUAL_RATES
    assert chest("[rates]", "pass = 8", "turning = 0").rates == Rates(pass_s=8, turning_s=0)
