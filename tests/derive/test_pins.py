"""Pin layouts against worked examples and textbooks."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.derive.passes import clear_socket
from planner.derive.pins import MOST_TAILS, PinEnd, between, choose_tails, lay_out, socket_width
from planner.derive.slot import Slot
from planner.domain.ring import Spacing
from planner.errors import PlanError
from planner.lengths import Grid, Nm, Unit, nearest, read_length


def inches(text: str) -> Nm:
    return read_length(text, Unit.INCH)


def spacing(half: str = "1/4", pin: str = "1/8", tails: int | None = 5) -> Spacing:
    return Spacing(
        half_pin_nm=inches(half),
        pin_nm=inches(pin),
        tails=tails,
        tail_nm=inches("1"),
        greatest_tail_nm=inches("1 3/4"),
    )


HALF_INCH_1_IN_8 = Slot(slope=Fraction(8), bit_nm=inches("1/2"))
FRONT = PinEnd(width_nm=inches("5 1/2"), thickness_nm=inches("3/4"), slot=HALF_INCH_1_IN_8)


def test_a_drawer_front_laid_out_by_hand() -> None:
    # From the reference edge: half-pin 0–1/4, then five sockets of 0.9 in with pins of 1/8 in between.
    pins = lay_out(FRONT, spacing(), Grid.IN_32, where="D1-J1")
    by_hand = [(0, 0.25), (1.15, 1.275), (2.175, 2.3), (3.2, 3.325), (4.225, 4.35), (5.25, 5.5)]
    assert [(a / inches("1"), b / inches("1")) for a, b in pins] == [pytest.approx(p) for p in by_hand]


def test_textbook_division_puts_pin_centres_at_equal_steps() -> None:
    """Noyes, *Handwork in Wood* (1910) p. 165: the line is divided into as many equal spaces as there are tails.

    Half a pin's width is set off each side of every division and in from both edges, so with a half-pin of half a pin
    the centres of the pins are the division points.
    """
    pins = lay_out(FRONT, spacing(half="1/16", tails=4), Grid.IN_32, where="x")
    centres = [(a + b) / 2 for a, b in pins[1:-1]]
    assert centres == [pytest.approx(inches("5 1/2") * i / 4, abs=1) for i in (1, 2, 3)]


def test_a_count_that_the_bit_cannot_cut_is_refused_with_figures_and_a_way_out() -> None:
    # 8 tails: w_out = (5.5 − 0.5 − 7/8)/8 = 0.515625 in; inside 0.328125 in, under the slot's 0.50389 in.
    # 7: (5 − 0.75)/7 = 0.607 → 0.4196 inside; 6: (5 − 0.625)/6 = 0.729 → 0.5417 inside, so six are the most.
    with pytest.raises(PlanError) as refused:
        lay_out(FRONT, spacing(tails=8), Grid.IN_64, where="D1-J1")
    (problem,) = refused.value.problems
    assert problem.where == "D1-J1"
    assert "33/64 in wide outside" in problem.what
    assert "21/64 in inside" in problem.what
    assert "At most 6" in problem.remedy


def test_a_board_too_narrow_for_one_tail_is_refused() -> None:
    narrow = PinEnd(width_nm=inches("1"), thickness_nm=inches("3/4"), slot=HALF_INCH_1_IN_8)
    with pytest.raises(PlanError, match="1 tail on a board 1 in wide"):
        lay_out(narrow, spacing(tails=None), Grid.IN_32, where="x")


def test_the_chosen_count_by_hand() -> None:
    """All counts for 5 1/2 in, half-pin 1/4, pin 1/8, T 3/4, wish 1 in, greatest 1 3/4 in.

    w_out by count: 1: 5.0, 2: 2.4375, 3: 1.5833, 4: 1.15625, 5: 0.9, 6: 0.729; 7 and more can't be cut. Over 1 3/4: 1
    and 2. Passes ⌈w_out/0.50389⌉ at least 2: 3 → 4 each, 12 in all; 4 → 3 each, 12; 5 → 2 each, 10; 6 → 2 each, 12.
    """
    assert choose_tails(FRONT, spacing(tails=None), Grid.IN_32, where="x") == 5


@st.composite
def ends(draw: st.DrawFn) -> tuple[PinEnd, Spacing]:
    mm = 1_000_000
    slope = Fraction(draw(st.integers(4_000_000, 10_000_000)), 1_000_000)
    bit = draw(st.sampled_from([6_000_000, 6_350_000, 9_960_000, 12_620_000, 12_700_000]))
    end = PinEnd(
        width_nm=Nm(draw(st.integers(20 * mm, 600 * mm))),
        thickness_nm=Nm(draw(st.integers(6 * mm, 45 * mm))),
        slot=Slot(slope=slope, bit_nm=Nm(bit)),
    )
    wish = Spacing(
        half_pin_nm=Nm(draw(st.integers(2 * mm, 12 * mm))),
        pin_nm=Nm(draw(st.integers(1 * mm, 15 * mm))),
        tails=draw(st.none() | st.integers(1, 20)),
        tail_nm=Nm(draw(st.integers(8 * mm, 60 * mm))),
        greatest_tail_nm=Nm(draw(st.integers(20 * mm, 80 * mm))),
    )
    return end, wish


@given(ends())
def test_layouts_fill_the_board_evenly_and_refusals_have_a_reason_of_their_own(case: tuple[PinEnd, Spacing]) -> None:
    end, wish = case
    counts = [wish.tails] if wish.tails else range(1, MOST_TAILS + 1)
    lean_mm = end.thickness_nm / float(end.slot.slope)
    inside = [float(socket_width(end, wish, n)) - 2 * lean_mm - end.slot.width_mm * 1e6 for n in counts]
    try:
        pins = lay_out(end, wish, Grid.MM_TENTH, where="x")
    except PlanError:
        assert max(inside) < 3  # nanometres: no count that may be used leaves room for the slot
        return
    assert max(inside) >= 0
    assert pins[0] == (0, wish.half_pin_nm)
    assert pins[-1] == (end.width_nm - wish.half_pin_nm, end.width_nm)
    assert all(abs(b - a - wish.pin_nm) <= 1 for a, b in pins[1:-1])
    sockets = [b - a for a, b in between(pins)]
    assert max(sockets) - min(sockets) <= 2
    assert all(a[1] < b[0] for a, b in pairwise(pins))


@given(ends())
def test_no_other_count_beats_the_chosen_one(case: tuple[PinEnd, Spacing]) -> None:
    end, wish = case
    try:
        chosen = choose_tails(end, wish, Grid.MM_TENTH, where="x")
    except PlanError:
        return

    def passes(count: int) -> int:
        cut = clear_socket(nearest(socket_width(end, wish, count)), end.thickness_nm, end.slot)
        return count * (len(cut.first) + len(cut.second))

    lean = 2 * end.slot.lean_nm(end.thickness_nm)
    can = [n for n in range(1, MOST_TAILS + 1) if socket_width(end, wish, n) - lean > end.slot.needs_nm]
    narrow_enough = [n for n in can if socket_width(end, wish, n) <= wish.greatest_tail_nm]
    if narrow_enough:
        assert chosen in narrow_enough
        assert passes(chosen) == min(map(passes, narrow_enough))
        same = [n for n in narrow_enough if passes(n) == passes(chosen)]
        assert chosen == min(same, key=lambda n: (abs(socket_width(end, wish, n) - wish.tail_nm), n))
    else:
        assert chosen == max(can)
