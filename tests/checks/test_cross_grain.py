"""Wood glued across the grain: found by the way the boards lie, whatever the joint is called."""

from __future__ import annotations

from dataclasses import replace

import pytest

from planner.domain.carcase import Carcase, Dividers, Runners
from planner.domain.plan import Finding
from planner.domain.project import Project
from planner.domain.ring import Stuff
from planner.domain.space import Space
from planner.domain.words import DividerKind, RunnerKind
from planner.pipeline import plan
from tests.pieces import ash, columns, drawer, inches, ply, six_drawers, tiers


def bookcase(shelf: Stuff, **more: object) -> Project:
    """Two tiers of a carcase 20 deep with a fixed shelf between them; below it a drawer."""
    chest = six_drawers()
    (carcase,) = chest.carcases
    inside = columns(tiers(Space(), Space(size_nm=inches("6"), holds=drawer("D1")), by=DividerKind.SHELF))
    dividers = Dividers(stuff=shelf, housing_depth_nm=inches("1/4"))
    changed: Carcase = replace(carcase, inside=inside, rails=None, shelves=dividers, **more)  # type: ignore[arg-type]
    return replace(chest, carcases=(changed,))


def crossed(project: Project) -> list[Finding]:
    return [finding for finding in plan(project).findings if finding.code == "cross-grain"]


def test_a_solid_shelf_in_solid_sides_moves_with_them() -> None:
    # Sides: grain up and down, so they move from front to back. Shelf: grain side to side, and it does too.
    assert crossed(bookcase(ash("3/4"))) == []


def test_a_plywood_shelf_in_solid_sides_does_not_move_with_them() -> None:
    # The housing is 19 3/4 in from front to back (20 less a back of 1/4), far over the 4 in that glue bears.
    found = crossed(bookcase(ply("3/4")))
    assert {finding.marks for finding in found} == {("C-left", "C-1.1-shelf"), ("C-right", "C-1.1-shelf")}
    assert all("19 3/4 in" in finding.text and "C-1.1-shelf does not" in finding.text for finding in found)


def test_runners_across_the_sides_are_glued_in_front_only_and_so_not_found() -> None:
    chest = six_drawers()
    (carcase,) = chest.carcases
    runners = Runners(kind=RunnerKind.WOOD, stuff=ash("3/4"), width_nm=inches("1"), kickers=False)
    made = plan(replace(chest, carcases=(replace(carcase, runners=runners),)))
    cuts = [cut for cut in made.features if cut.takes == "D1-runner1"]
    assert [cut.held.value for cut in cuts] == ["glued in front"]
    assert not [finding for finding in made.findings if finding.code == "cross-grain"]


@pytest.mark.parametrize(("sheet", "count"), [("ash", 0), ("ply", 4)])
def test_a_ring_of_solid_wood_and_sheet_goods_is_found_at_each_mixed_corner(sheet: str, count: int) -> None:
    chest = six_drawers()
    (carcase,) = chest.carcases
    first, second, third, fourth = carcase.ring.boards
    other = Stuff(material=sheet, thickness_nm=first.stuff.thickness_nm)
    boards = (replace(first, stuff=other), second, replace(third, stuff=other), fourth)
    mixed = replace(carcase, ring=replace(carcase.ring, boards=boards))
    found = crossed(replace(chest, carcases=(mixed,)))
    assert len([finding for finding in found if "Corner" in finding.text]) == count
