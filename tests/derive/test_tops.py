"""A separate top, worked out by hand."""

from __future__ import annotations

from dataclasses import replace

from planner.derive.assembly import assembly
from planner.derive.parts import Maker
from planner.derive.spaces import outside_of
from planner.derive.tops import separate_top
from planner.domain.carcase import SeparateTop
from planner.domain.plan import BoardSize
from planner.domain.solid import RIGHT
from planner.domain.words import Role
from tests.derive.metric import CARCASE, block, clashes, mm, oak, placed, project

TOP = SeparateTop(stuff=oak(22), front_nm=mm(20), sides_nm=mm(15), back_nm=mm(5))


def test_a_top_lies_on_the_carcase_and_stands_over_it() -> None:
    """Carcase 800 × 400 × 600: over the front by 20, the sides by 15, the back by 5; from 600 up, 22 thick.

    So it is 800 + 2·15 = 830 long with the grain from side to side, 400 + 20 + 5 = 425 wide, its reference edge in
    front, its outside face up.
    """
    carcase = replace(CARCASE, top=TOP)
    (top,) = separate_top(Maker("C", "C"), carcase, outside_of(carcase))
    assert isinstance(top, BoardSize)
    assert (top.mark, top.box, top.piece, top.role) == ("C-topboard", "C", "C", Role.SEPARATE_TOP)
    assert top.place == block((-15, 815), (-20, 405), (600, 622))
    assert (top.length_nm, top.width_nm, top.thickness_nm) == (mm(830), mm(425), mm(22))
    assert (top.lie.along, top.lie.across, top.lie.out) == (RIGHT, (0, 1, 0), (0, 0, 1))


def test_a_top_may_end_flush_and_a_carcase_without_one_gets_none() -> None:
    assert list(separate_top(Maker("C", "C"), CARCASE, outside_of(CARCASE))) == []
    flush = replace(TOP, front_nm=mm(0), sides_nm=mm(0), back_nm=mm(0))
    items = list(separate_top(Maker("C", "C"), replace(CARCASE, top=flush), outside_of(CARCASE)))
    assert placed(items) == {"C-topboard": block((0, 800), (0, 400), (600, 622))}


def test_a_top_is_part_of_the_piece_and_takes_no_wood_from_it() -> None:
    bare, topped = (assembly(project(carcases=(replace(CARCASE, top=top),))) for top in (None, TOP))
    assert {mark: topped.boards[mark] for mark in bare.boards} == bare.boards
    assert topped.boards.keys() - bare.boards.keys() == {"C-topboard"}
    assert (topped.let_in, topped.shapes) == (bare.let_in, bare.shapes)
    assert clashes([*topped.boards.values()]) == []
