"""Pin layouts against worked examples, textbooks, plain arithmetic and polygons."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given

from planner.derive.limits import layout_problem
from planner.derive.offers import nearest_layouts
from planner.derive.passes import clear_socket
from planner.derive.pins import MOST_TAILS, PinEnd, between, choose_tails, lay_out
from planner.derive.slot import Slot
from planner.derive.spacing import places
from planner.domain.spacing import Spacing
from planner.domain.words import EdgeName, Spread
from planner.lengths import Grid, Nm, Span, Unit, read_length
from tests.derive.ends import MM, cases
from tests.oracle.sled_polygons import EndGrain, what_stays


def inches(text: str) -> Nm:
    return read_length(text, Unit.INCH)


def as_inches(spans: tuple[Span, ...]) -> list[tuple[float, float]]:
    return [(a / inches("1"), b / inches("1")) for a, b in spans]


def spacing(half: str = "1/4", pin: str = "1/8", tails: int | None = 5) -> Spacing:
    return Spacing(
        half_pin_nm=inches(half),
        pin_nm=inches(pin),
        tails=tails,
        tail_nm=inches("1"),
        greatest_tail_nm=inches("1 3/4"),
    )


def laid_out(end: PinEnd, wish: Spacing) -> tuple[Span, ...]:
    pins = lay_out(end, wish)
    assert pins is not None
    return pins


HALF_INCH_1_IN_8 = Slot(slope=Fraction(8), bit_nm=inches("1/2"))
FRONT = PinEnd(width_nm=inches("5 1/2"), thickness_nm=inches("3/4"), slot=HALF_INCH_1_IN_8)


# --- worked by hand ----------------------------------------------------------------------------------------


def test_a_drawer_front_laid_out_by_hand() -> None:
    # From the reference edge: half-pin 0–1/4, then five sockets of 0.9 in with pins of 1/8 in between.
    by_hand = [(0, 0.25), (1.15, 1.275), (2.175, 2.3), (3.2, 3.325), (4.225, 4.35), (5.25, 5.5)]
    assert as_inches(laid_out(FRONT, spacing())) == [pytest.approx(p) for p in by_hand]


def test_tails_widest_in_the_middle_by_hand() -> None:
    """Three tails 1 : 1.5 : 1 on 5 1/2: clear 5.5 − 0.5 − 0.25 = 4.75, by 3.5 is 1.357143; the middle 1.5 as wide.

    Four tails 1 : 1.5 : 1.5 : 1 share 4.625 by 5: 0.925, 1.3875, 1.3875, 0.925.
    """
    three = replace(spacing(tails=3), spread=Spread.MIDDLE, ratio=Fraction(3, 2))
    widths = [b - a for a, b in as_inches(between(laid_out(FRONT, three)))]
    assert widths == pytest.approx([1.357143, 2.035714, 1.357143], abs=1e-6)
    four = replace(three, tails=4)
    widths = [b - a for a, b in as_inches(between(laid_out(FRONT, four)))]
    assert widths == pytest.approx([0.925, 1.3875, 1.3875, 0.925], abs=1e-6)


def test_tails_growing_to_one_edge_by_hand() -> None:
    """Three tails in equal steps, the last twice the first: 1 : 1.5 : 2 of 4.75 is 1.055556, 1.583333, 2.111111."""
    growing = replace(spacing(tails=3), spread=Spread.EDGE, ratio=Fraction(2))
    up = [b - a for a, b in as_inches(between(laid_out(FRONT, growing)))]
    assert up == pytest.approx([1.055556, 1.583333, 2.111111], abs=1e-6)
    down = laid_out(FRONT, replace(growing, measured_from=EdgeName.FAR))
    assert [b - a for a, b in as_inches(between(down))] == pytest.approx(up[::-1])


def test_listed_pins_stand_where_they_are_listed() -> None:
    listed = replace(
        spacing(tails=None),
        spread=Spread.LISTED,
        places=((inches("1 1/2"), inches("1 3/4")), (inches("3"), inches("3 1/2"))),
    )
    assert as_inches(laid_out(FRONT, listed)) == [(0, 0.25), (1.5, 1.75), (3, 3.5), (5.25, 5.5)]
    mirrored = laid_out(FRONT, replace(listed, measured_from=EdgeName.FAR))
    assert as_inches(mirrored) == [(0, 0.25), (2, 2.5), (3.75, 4), (5.25, 5.5)]


def test_textbook_division_puts_pin_centres_at_equal_steps() -> None:
    """Noyes, *Handwork in Wood* (1910) p. 165: the line is divided into as many equal spaces as there are tails.

    Half a pin's width is set off each side of every division and in from both edges, so with a half-pin of half a pin
    the centres of the pins are the division points.
    """
    pins = laid_out(FRONT, spacing(half="1/16", tails=4))
    centres = [(a + b) / 2 for a, b in pins[1:-1]]
    assert centres == [pytest.approx(inches("5 1/2") * i / 4, abs=1) for i in (1, 2, 3)]


def test_textbook_pins_stand_with_centres_at_equal_spacing() -> None:
    """Griffith, *Essentials of Woodworking* (1908) sec. 100: centre lines of the pins at equal spacing."""
    pins = laid_out(FRONT, spacing(pin="1/4", tails=4))
    centres = [(a + b) / 2 for a, b in pins[1:-1]]
    assert [b - a for a, b in pairwise(centres)] == pytest.approx([centres[1] - centres[0]] * 2, abs=1)


def test_the_chosen_count_by_hand() -> None:
    """All counts for 5 1/2 in, half-pin 1/4, pin 1/8, T 3/4, wish 1 in, greatest 1 3/4 in.

    w_out by count: 1: 5.0, 2: 2.4375, 3: 1.5833, 4: 1.15625, 5: 0.9, 6: 0.729; 7 and more can't be cut. Over 1 3/4: 1
    and 2. Passes ⌈w_out/0.50389⌉ at least 2: 3 → 4 each, 12 in all; 4 → 3 each, 12; 5 → 2 each, 10; 6 → 2 each, 12.
    """
    assert choose_tails(FRONT, spacing(tails=None)) == 5


def test_drawers_of_one_family_have_tails_alike() -> None:
    """Wish 1 in, pins and half-pins 1/4: one tail more for every 1 1/4 in of height, and all tails near 1 in.

    W = 0.5 + N + 0.25·(N − 1) gives tails of just 1 in: 4 for 5 1/4, 5 for 6 1/2, 6 for 7 3/4.
    """
    family = replace(spacing(pin="1/4", tails=None), alike=True)
    for height, count in (("5 1/4", 4), ("6 1/2", 5), ("7 3/4", 6)):
        pins = laid_out(replace(FRONT, width_nm=inches(height)), family)
        assert [b - a for a, b in between(pins)] == [inches("1")] * count


def test_a_worn_bit_changes_what_can_be_cut() -> None:
    # w_in = 12.75 mm at slope 1:8: k(12.70) = 12.7988 > 12.75 > k(12.62) = 12.7182. T 16, so w_out = 12.75 + 4 = 16.75.
    wish = replace(spacing(tails=1), half_pin_nm=Nm(6 * MM))
    for bit, cut in ((12_700_000, False), (12_620_000, True)):
        slot = Slot(slope=Fraction(8), bit_nm=Nm(bit))
        end = PinEnd(width_nm=Nm(28_750_000), thickness_nm=Nm(16 * MM), slot=slot)
        assert (lay_out(end, wish) is not None) is cut


# --- refusals ----------------------------------------------------------------------------------------------


def test_a_count_that_the_bit_cannot_cut_is_refused_with_figures_and_ways_out() -> None:
    # 8 tails: w_out = (5.5 − 0.5 − 7/8)/8 = 0.515625 in; inside 0.328125 in, under the slot's 0.50389 in.
    # 7: (5 − 0.75)/7 = 0.607 → 0.4196 inside; 6: (5 − 0.625)/6 = 0.729 → 0.5417 inside, so six are the most.
    # Pins would have to be −0.1 in wide, so no pin is offered. Bit: 0.328125/√(65/64) = 0.32559 in = 8.27 mm.
    problem = layout_problem(FRONT, spacing(tails=8), Grid.IN_64, where="D1-J1")
    assert problem.where == "D1-J1"
    assert "the narrowest socket is 33/64 in outside and 21/64 in inside" in problem.what
    assert problem.remedy.startswith("This can be cut: 6 tails; or a bit of ")
    (bit,) = [o.end.slot.bit_nm for o in nearest_layouts(FRONT, spacing(tails=8)) if o.changed == "bit"]
    assert bit == 8_200_000


def test_pins_that_overlap_inside_are_called_that() -> None:
    # 20 tails: w_out = (5 − 19/8)/20 = 0.13125 in, less than the 0.1875 in that the slope takes.
    problem = layout_problem(FRONT, spacing(tails=20), Grid.IN_64, where="x")
    assert "the pins overlap on the inside face" in problem.what


def test_pins_without_room_outside_are_called_that() -> None:
    problem = layout_problem(FRONT, spacing(pin="2", tails=5), Grid.IN_64, where="x")
    assert "the pins overlap on the outside face" in problem.what


def test_a_board_too_narrow_for_one_tail_is_refused() -> None:
    narrow = replace(FRONT, width_nm=inches("1"))
    assert lay_out(narrow, spacing(tails=None)) is None
    assert "1 tail on a board 1 in wide" in layout_problem(narrow, spacing(tails=None), Grid.IN_32, where="x").what


# --- properties --------------------------------------------------------------------------------------------


def inside_room_nm(end: PinEnd, wish: Spacing, count: int) -> float:
    """Room that the slot has in the narrowest socket on the inside face, by plain arithmetic."""
    at = places(end.width_nm, wish, count)
    if any(a >= b for a, b in at.pins):
        return -1.0
    return float(min(at.sockets)) - 2 * end.thickness_nm / float(end.slot.slope) - end.slot.width_mm * MM


def counts_to_try(wish: Spacing) -> list[int]:
    if wish.spread is Spread.LISTED:
        return [len(wish.places) + 1]
    return [wish.tails] if wish.tails else list(range(1, MOST_TAILS + 1))


@given(cases())
def test_layouts_fill_the_board_and_refusals_have_a_reason_of_their_own(case: tuple[PinEnd, Spacing]) -> None:
    end, wish = case
    room = [inside_room_nm(end, wish, count) for count in counts_to_try(wish)]
    pins = lay_out(end, wish)
    if pins is None:
        assert max(room) < 4  # nanometres: no count that may be used leaves room for the slot
        assert layout_problem(end, wish, Grid.MM_TENTH, where="x").remedy
        return
    assert max(room) >= 0
    assert pins[0] == (0, wish.half_pin_nm)
    assert pins[-1] == (end.width_nm - wish.half_pin_nm, end.width_nm)
    assert all(a[0] < a[1] < b[0] for a, b in pairwise(pins))
    if wish.spread is not Spread.LISTED:
        assert all(abs(b - a - wish.pin_nm) <= 1 for a, b in pins[1:-1])


@given(cases())
def test_what_is_offered_can_be_cut_and_changes_one_thing(case: tuple[PinEnd, Spacing]) -> None:
    end, wish = case
    if lay_out(end, wish) is not None:
        return
    for offer in nearest_layouts(end, wish):
        assert lay_out(offer.end, offer.spacing) is not None
        assert min(inside_room_nm(offer.end, offer.spacing, n) for n in counts_to_try(offer.spacing)[:1]) >= 0
        assert (offer.end == end) is (offer.changed != "bit")
        assert offer.words(Grid.MM_TENTH)


@given(cases())
def test_graduated_tails_keep_their_ratio_and_their_order(case: tuple[PinEnd, Spacing]) -> None:
    end, wish = case
    pins = lay_out(end, wish)
    if pins is None or wish.spread is Spread.LISTED:
        return
    widths = [b - a for a, b in between(pins)]
    if wish.spread is Spread.EVEN:
        assert max(widths) - min(widths) <= 2
    elif wish.spread is Spread.MIDDLE:
        assert widths == pytest.approx(widths[::-1], abs=2)
        half = widths[: (len(widths) + 1) // 2]
        assert half == sorted(half)
    else:
        growing = widths if wish.measured_from is EdgeName.REFERENCE else widths[::-1]
        assert growing == sorted(growing)
    if wish.ratio and len(widths) > 2:
        assert max(widths) / min(widths) == pytest.approx(float(wish.ratio), rel=1e-5)


@given(cases())
def test_the_mirror_of_the_mirror_is_the_layout(case: tuple[PinEnd, Spacing]) -> None:
    end, wish = case
    other = EdgeName.FAR if wish.measured_from is EdgeName.REFERENCE else EdgeName.REFERENCE
    pins, mirrored = lay_out(end, wish), lay_out(end, replace(wish, measured_from=other))
    assert (pins is None) is (mirrored is None)
    if pins and mirrored:
        turned = [(end.width_nm - b, end.width_nm - a) for a, b in reversed(mirrored)]
        assert all(abs(a - b) <= 1 for p, q in zip(pins, turned, strict=True) for a, b in zip(p, q, strict=True))


@given(cases())
def test_no_other_count_beats_the_chosen_one(case: tuple[PinEnd, Spacing]) -> None:
    end, wish = case
    chosen = None if wish.spread is Spread.LISTED else choose_tails(end, wish)
    if chosen is None:
        return

    def passes(count: int) -> int:
        sockets = [round(s) for s in places(end.width_nm, wish, count).sockets]
        cuts = [clear_socket(Nm(s), end.thickness_nm, end.slot) for s in sockets]
        return sum(len(cut.first) + len(cut.second) for cut in cuts)

    can = [n for n in range(1, MOST_TAILS + 1) if inside_room_nm(end, wish, n) >= 4]
    widest = {n: max(places(end.width_nm, wish, n).sockets) for n in can}
    narrow_enough = [n for n in can if widest[n] <= wish.greatest_tail_nm]
    if not narrow_enough:
        assert chosen == max(can, default=chosen)
        return
    mean = {n: sum(places(end.width_nm, wish, n).sockets) / n for n in narrow_enough}
    off = {n: abs(mean[n] - wish.tail_nm) for n in narrow_enough}
    ways = [(off[n], passes(n), n) if wish.alike else (passes(n), off[n], n) for n in narrow_enough]
    assert chosen == min(ways)[2]


@given(cases())
def test_a_whole_end_cut_by_its_passes_keeps_its_pins(case: tuple[PinEnd, Spacing]) -> None:
    """All sockets at once, asymmetric layouts and both ends included; what stays is what is reported, to 1e-6 mm²."""
    end, wish = case
    pins = lay_out(end, wish)
    if pins is None:
        return
    grain = EndGrain(
        width=end.width_nm / MM,
        thickness=end.thickness_nm / MM,
        slope=float(end.slot.slope),
        bit=end.slot.bit_nm / MM,
        pins=[(a / MM, b / MM) for a, b in pins],
    )
    cuts = [(a, b, clear_socket(Nm(b - a), end.thickness_nm, end.slot)) for a, b in between(pins)]
    passes = [("right", (b - shift) / MM) for _, b, cut in cuts for shift in cut.first]
    passes += [("left", (a + shift) / MM) for a, _, cut in cuts for shift in cut.second]
    spoilt, left = what_stays(grain, "B", passes)
    assert spoilt == pytest.approx(0, abs=1e-6)
    assert left == pytest.approx(sum(cut.residue_mm2 for _, _, cut in cuts), abs=1e-6)
