"""Proportions and construction of the samples and of the usual values against printed textbooks.

Sources: Noyes, *Handwork in Wood* (1910); Griffith, *Essentials of Woodworking* (1908); Fairham, *Woodwork Joints*
(revised edition, p. 134); drawer stock as drawn in a woodworking magazine's book of 2007: front 3/4 to 7/8 in, sides
3/8 to 1/2 in, lap 3/32 to 3/16 in. No other published proportions of cases were found, so everything else in
``tests/golden`` is common practice, no source.
"""

from __future__ import annotations

import pytest

from planner.domain.solid import LEFT, RIGHT
from planner.domain.words import BottomGoes, FeatureKind, Held, MaterialKind, Role
from planner.intake.usual import usual_depth, usual_length
from planner.lengths import Unit
from tests.golden.hand import NAMES, inch, sample

IN_INCHES = [name for name in NAMES if sample(name).project.unit is Unit.INCH]
WITH_DRAWERS = [name for name in IN_INCHES if list(sample(name).project.drawers())]
SOLID_BOTTOMS = [
    name
    for name in NAMES
    if any(
        each.bottom
        and each.bottom.goes is BottomGoes.SLID_IN
        and sample(name).project.material(each.bottom.stuff.material).kind is MaterialKind.SOLID
        for each in sample(name).project.drawers()
    )
]


@pytest.mark.parametrize("name", WITH_DRAWERS)
def test_drawers_are_of_such_stock_as_textbooks_draw(name: str) -> None:
    """Small drawers are made lighter, so of a small one only what is not too heavy is asked."""
    (light, heavy), (thin, thick) = inch("3/4", "7/8"), inch("3/8", "1/2")
    for drawer in sample(name).project.drawers():
        front = drawer.ring.board(Role.FRONT).stuff.thickness_nm
        side = drawer.ring.board(Role.LEFT).stuff.thickness_nm
        assert front <= heavy
        assert side <= thick
        if front >= light:
            assert side >= thin


def test_a_groove_for_a_bottom_is_as_usual_a_quarter_of_an_inch() -> None:
    """Noyes pp. 190-191: 1/4 in; with us half of a side of 1/2 in."""
    (half, quarter) = inch("1/2", "1/4")
    assert usual_depth("groove_depth", half, Unit.INCH) == quarter  # type: ignore[arg-type]


def test_tails_are_no_wider_than_the_textbook_has_them() -> None:
    """Noyes p. 165: for looks up to four times as wide as the pins, and normally not over 1 3/4 in."""
    assert usual_length("greatest_tail", Unit.INCH) <= inch("1 3/4")[0]
    assert usual_length("tail", Unit.INCH) <= 4 * usual_length("pin", Unit.INCH)


def test_ends_stand_no_further_proud_than_the_textbook_gauges_them() -> None:
    """Noyes pp. 164-165: the baseline up to 1/32 in more than the mate is thick."""
    assert usual_length("proud", Unit.INCH) <= inch("1/32")[0]


@pytest.mark.parametrize("name", SOLID_BOTTOMS)
def test_solid_bottoms_run_from_side_to_side_and_are_free_but_in_front(name: str) -> None:
    """Noyes pp. 190-191 and Griffith sec. 105: grain from side to side, fixed at the front only, free behind."""
    plan = sample(name)
    solid = {each.name for each in plan.project.materials if each.kind is MaterialKind.SOLID}
    bottoms = [each for each in plan.boards if each.role is Role.BOTTOM_PANEL and each.material in solid]
    assert bottoms
    for bottom in bottoms:
        assert bottom.lie.along in {LEFT, RIGHT}
        held = {cut.board: cut.held for cut in plan.features if cut.takes == bottom.mark}
        free = {board for board, how in held.items() if how is Held.FREE}
        assert free == held.keys() - {f"{bottom.box}-front"}
        assert {cut.kind for cut in plan.features if cut.takes == bottom.mark} <= {FeatureKind.GROOVE}
