"""The passes of one socket against worked values, brute force and polygons."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.derive.passes import clear_socket
from planner.derive.slot import Slot
from planner.lengths import Nm, Unit, read_length
from tests.oracle.sled_polygons import EndGrain, what_stays

MM = 1_000_000


def inches(text: str) -> Nm:
    return read_length(text, Unit.INCH)


def test_the_slot_of_a_half_inch_bit_at_one_in_eight_is_wider_than_the_bit() -> None:
    # k = D √(1 + 1/n²) = 0.5 · √(65/64) = 0.503891… in, worked by hand.
    slot = Slot(slope=Fraction(8), bit_nm=inches("1/2"))
    assert slot.clears_nm / inches("1") == pytest.approx(0.50389, abs=5e-6)
    assert slot.needs_nm == slot.clears_nm + 1


def test_five_tails_on_a_five_and_a_half_inch_front_need_two_passes_each() -> None:
    # w_out = (5.5 − 2·0.25 − 4·0.125)/5 = 0.9 in; w_in = 0.9 − 2·0.75/8 = 0.7125 in; 0.9 ≤ 2·0.50389.
    cut = clear_socket(inches("0.9 in"), inches("3/4"), Slot(slope=Fraction(8), bit_nm=inches("1/2")))
    assert (cut.first, cut.second, cut.residue_mm2) == ((0,), (0,), 0.0)


def test_a_thick_board_with_a_steep_slope_leaves_a_wedge_of_80_square_millimetres() -> None:
    # T 40, 1:5, D 6.35, w_out 24: w_in = 24 − 2·40/5 = 8; k = 6.35·√1.04 = 6.4757; wedge (24 − 16)²·5/4 = 80 mm².
    slot = Slot(slope=Fraction(5), bit_nm=Nm(6_350_000))
    cut = clear_socket(Nm(24 * MM), Nm(40 * MM), slot)
    assert slot.clears_nm / MM == pytest.approx(6.35 * 1.04**0.5, abs=1e-6)
    assert cut.residue_mm2 == pytest.approx(80, abs=1e-4)
    assert (len(cut.first), len(cut.second)) == (2, 2)


@st.composite
def sockets(draw: st.DrawFn) -> tuple[Nm, Nm, Slot]:
    slope = Fraction(draw(st.integers(4_000_000, 10_000_000)), 1_000_000)
    slot = Slot(
        slope=slope, bit_nm=Nm(draw(st.sampled_from([6_000_000, 6_350_000, 9_960_000, 12_620_000, 12_700_000])))
    )
    thickness = Nm(draw(st.integers(6 * MM, 45 * MM)))
    least = slot.needs_nm + 2 * slot.lean_nm(thickness)
    return Nm(least + draw(st.integers(0, 60 * MM))), thickness, slot


@given(sockets())
def test_passes_enter_no_pin_and_leave_just_what_is_reported(socket: tuple[Nm, Nm, Slot]) -> None:
    wide, thickness, slot = socket
    cut = clear_socket(wide, thickness, slot)
    edge = 20.0
    end = EndGrain(
        width=wide / MM + 2 * edge,
        thickness=thickness / MM,
        slope=float(slot.slope),
        bit=slot.bit_nm / MM,
        pins=[(0.0, edge), (edge + wide / MM, 2 * edge + wide / MM)],
    )
    for first, second in (("right", "left"), ("left", "right")):
        walls = {"right": edge + wide / MM, "left": edge}
        inward = {"right": -1, "left": 1}
        passes = [
            (fence, walls[fence] + inward[fence] * shift / MM)
            for fence, shifts in ((first, cut.first), (second, cut.second))
            for shift in shifts
        ]
        spoilt, left = what_stays(end, "B", passes)
        assert spoilt == pytest.approx(0, abs=1e-6)
        assert left == pytest.approx(cut.residue_mm2, abs=1e-6)


@given(sockets())
def test_no_fewer_passes_would_do(socket: tuple[Nm, Nm, Slot]) -> None:
    wide, thickness, slot = socket
    cut = clear_socket(wide, thickness, slot)
    narrow = wide / MM - 2 * thickness / MM / float(slot.slope)
    k = slot.width_mm

    def left_by(right: int, left: int) -> float:
        return float(max(0.0, wide / MM - min(right * k, narrow) - min(left * k, narrow)))

    used = len(cut.first) + len(cut.second)
    best = left_by(used, used)
    ways = [(right, left) for right in range(1, used + 1) for left in range(1, used + 1)]

    def fewest(sliver_mm: float) -> int:
        return min(right + left for right, left in ways if left_by(right, left) <= best + sliver_mm)

    assert fewest(0.0011) <= used <= fewest(1e-9)
    if 2 * narrow >= wide / MM:
        assert used >= max(2, ceil((wide / MM - 0.002) / k))
