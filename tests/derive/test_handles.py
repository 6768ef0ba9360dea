"""Holes for handles keep out of the sides of the drawer.

By hand: an opening W wide holds a front of W - 3 mm. A pull with holes 96 mm apart, a quarter way in, has its outer
hole of 5 mm at (W - 3) / 4 - 48 - 2.5 mm from the front's end. The side is 12 mm thick, so W must be 253 mm or more.
"""

from __future__ import annotations

import pytest

from planner.domain.words import FeatureKind
from planner.errors import PlanError
from planner.pipeline import plan
from tests.oracle.assembly_pieces import WITH_HANDLES, carcase, columns, drawers, holding, mm, project


def with_drawer(wide: float) -> list[int]:
    """Where the holes of a drawer in an opening so wide begin, from the left end of its front."""
    inside = holding(columns(holding(drawers(WITH_HANDLES, 1)[0].holds, size=wide), holding()))
    whole = plan(project(carcases=(carcase(inside),), proud=0))
    return sorted(cut.x[0] for cut in whole.features if cut.board == "D101-front" and cut.kind is FeatureKind.HOLE)


def test_the_narrowest_drawer_that_takes_two_pulls() -> None:
    assert with_drawer(253) == [mm(12), mm(12 + 96), mm(250 - 12 - 5 - 96), mm(250 - 12 - 5)]


def test_a_millimetre_less_is_refused() -> None:
    with pytest.raises(PlanError) as caught:
        with_drawer(252)
    (problem,) = caught.value.problems
    assert problem.where == "handles of D101"
    assert "side of the drawer" in problem.what
