"""Sizes of timber, board feet and prices, against published figures and sums by hand."""

from __future__ import annotations

from fractions import Fraction

import pytest

from planner.domain.rack import Lot, Per, Price, Surfaced
from planner.domain.stock import SoldAs
from planner.lengths import Nm, Unit, read_length
from planner.wood.lumber import THICKNESS, WIDTH, least_sold, planing, sold_sizes
from planner.wood.measure import amount, cents_of, least_cents, rounded_cents


def inches(said: str) -> Nm:
    return read_length(f"{said} in", Unit.INCH)


def test_dressed_softwood_loses_what_the_standard_s_table_says() -> None:
    """PS 20, dry: widths 2 to 7 lose 1/2 in, 8 and up 3/4 in; a 1 in board is 3/4 thick, a 2 in one 1 1/2."""
    for size in sold_sizes(SoldAs.DRESSED, WIDTH):
        loss = inches("1/2") if size.rough_nm < inches("8") else inches("3/4")
        assert size.rough_nm - size.gives_nm == loss, size.name
    by_name = {size.name: size.gives_nm for size in sold_sizes(SoldAs.DRESSED, THICKNESS)}
    assert (by_name["1"], by_name["2"]) == (inches("3/4"), inches("1 1/2"))


def test_hardwood_quarters_give_what_the_grading_rules_say() -> None:
    """NHLA rules, surfaced thickness, second-hand: 4/4 13/16, 5/4 1 1/16, 6/4 1 5/16, 8/4 1 3/4."""
    given = {size.name: size.gives_nm for size in sold_sizes(SoldAs.QUARTERS)}
    for name, said in (("4/4", "13/16"), ("5/4", "1 1/16"), ("6/4", "1 5/16"), ("8/4", "1 3/4")):
        assert given[name] == inches(said)


def test_quarters_are_quarters_of_an_inch() -> None:
    for size in sold_sizes(SoldAs.QUARTERS):
        assert size.rough_nm == inches("1") * Fraction(size.name)


@pytest.mark.parametrize("sold_as", SoldAs)
def test_every_size_has_a_source_and_says_how_it_was_obtained(sold_as: SoldAs) -> None:
    assert sold_sizes(sold_as)
    for size in sold_sizes(sold_as):
        assert size.source
        assert size.how.startswith(("read", "from memory"))
        assert 0 < size.gives_nm < size.rough_nm


@pytest.mark.parametrize(
    ("finished", "allowance", "name"),
    [
        ("3/4", None, "4/4"),
        ("13/16", None, "4/4"),
        ("7/8", None, "5/4"),
        ("7/8", "1/8", "4/4"),  # Noyes (1910) p. 48: a 1 in board dressed to 7/8
        ("1/2", None, "3/4"),
        ("1", None, "5/4"),
        ("1 3/4", None, "8/4"),
    ],
)
def test_the_thinnest_quarters_that_will_do_are_taken(finished: str, allowance: str | None, name: str) -> None:
    size = least_sold(inches(finished), SoldAs.QUARTERS, inches(allowance) if allowance else None)
    assert size is not None
    assert size.name == name


def test_nothing_is_sold_for_what_is_thicker_than_all() -> None:
    assert least_sold(inches("4"), SoldAs.QUARTERS) is None
    assert planing(SoldAs.QUARTERS, inches("4")) == inches("1/4")


@pytest.mark.parametrize(("feet", "width", "board_feet"), [(14, 11, "77/6"), (5, 9, "15/4"), (23, 13, "299/12")])
def test_published_board_feet_come_out(feet: int, width: int, board_feet: str) -> None:
    """Noyes, *Handwork in Wood* (1910) pp. 109-110: 12 ft 10 in, 3 ft 9 in, 24 ft 11 in, in feet and twelfths."""
    got = amount(Per.BOARD_FOOT, inches(str(feet * 12)), inches(str(width)), inches("1"))
    assert got == Fraction(board_feet)


def test_stock_under_an_inch_counts_as_an_inch_and_other_measures_go_by_size() -> None:
    """12 × 12 in of 1/2 in: one board foot, one square foot (Noyes p. 48). 2 m × 0.5 m × 40 mm: 1 m², 0.04 m³."""
    foot = inches("12")
    assert amount(Per.BOARD_FOOT, foot, foot, inches("1/2")) == amount(Per.SQUARE_FOOT, foot, foot, foot) == 1
    metric = (Nm(2_000_000_000), Nm(500_000_000), Nm(40_000_000))
    assert amount(Per.SQUARE_METRE, *metric) == 1
    assert amount(Per.CUBIC_METRE, *metric) == Fraction(4, 100)
    assert amount(Per.PIECE, *metric) == 1


def test_a_board_costs_its_measure_times_the_price_to_the_nearest_cent() -> None:
    """5 ft × 9 in × 1 in at 6.90: 3.75 × 690 = 2587.5, halves up; dressed 3/4 counted as 5/4: 4.6875 × 690 = 3234.375.

    A least order of 20 board feet is 138.00.
    """
    board = (inches("60"), inches("9"))
    lot = Lot(
        mark="Y", yard="Hollin yard", material="ash", shortest_nm=board[0], longest_nm=board[0], narrowest_nm=board[1],
        widest_nm=board[1], thickness_nm=inches("3/4"), surfaced=Surfaced.ROUGH, least_hundredths=2000,
        price=Price(cents=690, per=Per.BOARD_FOOT),
    )  # fmt: skip
    assert cents_of(lot, *board) == 2588
    assert cents_of(replaced(lot, inches("1 1/4")), *board) == 3234
    assert least_cents(lot) == 13_800
    assert rounded_cents(Fraction(1, 2)) == 1


def replaced(lot: Lot, counted: Nm) -> Lot:
    from dataclasses import replace

    return replace(lot, counted_nm=counted)
