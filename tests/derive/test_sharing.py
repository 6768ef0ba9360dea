"""Shared heights and widths: exact sums, the rounding remainder at the bottom, worked examples."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.derive.sharing import rounded, shared
from planner.domain.space import Space
from planner.errors import PlanError
from planner.lengths import Grid, Nm, Unit, read_length


def inches(*texts: str) -> tuple[Nm, ...]:
    return tuple(read_length(text, Unit.INCH) for text in texts)


def said(*sizes: Nm | None) -> list[Space]:
    return [Space(size_nm=size) for size in sizes]


def test_equal_openings_put_the_rounding_remainder_at_the_bottom() -> None:
    # 10 in by three is 3 1/3 in; to 1/32 that is 3 11/32 (3.34375); the bottom gets 10 − 2·3 11/32 = 3 5/16 (3.3125).
    sizes = shared(inches("10")[0], said(None, None, None), Grid.IN_32, where="x")
    assert sizes == inches("3 11/32", "3 11/32", "3 5/16")


def test_what_is_given_stays_and_the_rest_is_shared() -> None:
    sizes = shared(inches("20")[0], said(inches("4")[0], None, inches("7")[0]), Grid.IN_32, where="x")
    assert sizes == inches("4", "9", "7")


def test_shares_weigh_what_is_left() -> None:
    # 20 − 2 = 18 left for shares 2, 1 and 3: 6, 3 and 9 in.
    spaces = [Space(share=Fraction(n)) for n in (2, 1, 3)]
    assert shared(inches("20")[0], [*said(inches("2")[0]), *spaces], Grid.IN_32, where="x") == inches(
        "2", "6", "3", "9"
    )


def test_given_sizes_that_do_not_add_up_are_refused_with_the_difference() -> None:
    with pytest.raises(PlanError, match="1/2 in too great for the clear 20 in"):
        shared(inches("20")[0], said(*inches("10", "10 1/2")), Grid.IN_32, where="x")


def test_sizes_that_leave_nothing_to_share_are_refused() -> None:
    with pytest.raises(PlanError, match="would be left to share"):
        shared(inches("20")[0], said(inches("20")[0], None), Grid.IN_32, where="x")


@given(
    st.integers(10_000_000, 3_000_000_000),
    st.lists(st.integers(1, 100), min_size=1, max_size=30),
    st.sampled_from(list(Grid)),
)
def test_rounded_sizes_always_add_up_and_only_the_last_is_off_the_grid(
    clear: int, weights: list[int], grid: Grid
) -> None:
    ideal = [Fraction(clear * weight, sum(weights)) for weight in weights]
    try:
        sizes = rounded(ideal, grid, where="x")
    except PlanError:
        assert min(ideal) < grid.step_nm * len(ideal)  # only a share finer than the rounding can vanish
        return
    assert sum(sizes) == clear
    assert all(size % grid.step_nm == 0 for size in sizes[:-1])
    assert all(abs(size - want) <= Fraction(grid.step_nm, 2) + 1 for size, want in zip(sizes[:-1], ideal, strict=False))
    assert min(sizes) > 0
