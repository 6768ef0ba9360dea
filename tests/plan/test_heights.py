"""Shared bit heights: never short, and no fewer would do (tried all ways)."""

from __future__ import annotations

from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from planner.lengths import Nm
from planner.plan.heights import shared_heights


@given(st.lists(st.integers(1, 40), min_size=1, max_size=7), st.integers(0, 12))
def test_fewest_heights_that_leave_every_end_proud(needed: list[int], tolerance: int) -> None:
    to_set = shared_heights([Nm(h) for h in needed], Nm(tolerance))
    assert all(0 <= to_set[Nm(h)] - h <= tolerance for h in needed)
    distinct = sorted(set(needed))

    def serves(heights: tuple[int, ...]) -> bool:
        return all(any(0 <= set_to - h <= tolerance for set_to in heights) for h in distinct)

    fewest = next(n for n in range(1, len(distinct) + 1) if any(map(serves, combinations(distinct, n))))
    assert len(set(to_set.values())) == fewest
