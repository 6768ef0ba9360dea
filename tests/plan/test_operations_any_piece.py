"""Any piece can be built in the order given: the shop in ``shop`` does it, operation by operation.

Not only in the order that the sheet gives: in every order that keeps what must come before what. So it is the
prerequisites that are tried, and not the luck of a sensible order.
"""

from __future__ import annotations

from random import Random

import pytest
from hypothesis import given, reject
from hypothesis import strategies as st

from planner.domain.project import Project
from planner.errors import PlanError
from planner.pipeline import plan
from tests.plan.any_piece import any_projects
from tests.plan.orders import at_random, found_for, in_shop_order
from tests.plan.pieces import ALL
from tests.plan.shop import faults

ALL_AT_ONCE = pytest.mark.parametrize("all_at_once", [False, True])


@ALL_AT_ONCE
@pytest.mark.parametrize("name", ALL)
def test_a_piece_of_each_kind_can_be_built_as_told(name: str, *, all_at_once: bool) -> None:
    piece = plan(ALL[name]())
    found = found_for(piece, all_at_once=all_at_once)
    assert faults(piece, in_shop_order(found)) == []
    for seed in range(3):
        assert faults(piece, at_random(found, Random(seed))) == []  # noqa: S311 - repeatable, not secret


@given(any_projects(), st.booleans(), st.randoms(use_true_random=False))
def test_any_piece_can_be_built_as_told(project: Project, all_at_once: bool, random: Random) -> None:  # noqa: FBT001
    try:
        piece = plan(project)
    except PlanError:
        reject()
    found = found_for(piece, all_at_once=all_at_once)
    assert faults(piece, in_shop_order(found)) == []
    assert faults(piece, at_random(found, random)) == []
