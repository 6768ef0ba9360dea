"""Rough sizes and staves: sums by hand, and what must hold of any piece."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from planner.domain.plan import Plan
from planner.domain.project import Project
from planner.domain.stock import MaterialStock, SoldAs, Stock, allowances, usual_stock
from planner.domain.words import MaterialKind
from planner.intake.project_file import read_project
from planner.lengths import Nm, Unit, read_length
from planner.pipeline import plan
from planner.plan.rough import Use, rough_parts
from planner.plan.staves import in_staves, stave_widths
from planner.plan.stock_jobs import by_stuff
from tests.app.texts import CHEST
from tests.buildable import buildable_projects

MM = 1_000_000


def inches(said: str) -> Nm:
    return read_length(f"{said} in", Unit.INCH)


def chest(**said: Any) -> Plan:
    """The six-drawer chest, with other words about stock."""
    project = read_project(CHEST.read_text(encoding="utf-8"), "chest")
    stock = usual_stock(Unit.INCH)
    return plan(replace(project, stock=replace(stock, **said)))


def test_a_board_is_cut_longer_and_wider_and_from_thicker_wood() -> None:
    """C-top is 22 1/32 × 16 × 3/4: 1 in longer is 23 1/32, up to a sixteenth 23 1/16; 1/4 wider 16 1/4; from 4/4.

    For 3/4 the table's 4/4 loses 3/16, so wood of 15/16 will do. A back of 1/4 plywood is cut 1/8 larger.
    """
    parts = {part.mark: part for part in rough_parts(chest())}
    top, back = parts["C-top"], parts["C-back"]
    assert (top.length_nm, top.width_nm, top.least_nm) == (inches("23 1/16"), inches("16 1/4"), inches("15/16"))
    assert top.sold is not None
    assert top.sold.name == "4/4"
    assert back.sold is None
    assert back.least_nm == back.finished[2]
    assert inches("1/8") <= back.length_nm - back.finished[0] < inches("3/16")


def test_spares_and_practice_joints_are_cut_too_unless_they_are_not_wanted() -> None:
    """Ash 3/4, poplar 3/4 and 1/2: three kinds of solid boards, so six spares for two each; a joint has two boards."""
    two = chest(spares=2)
    uses = [part.use for part in rough_parts(two)]
    assert uses.count(Use.SPARE) == 6
    assert uses.count(Use.PRACTICE) == 2 * len(two.practice)
    none = rough_parts(chest(spares=0, practice=False))
    assert {part.mark for part in none} == {board.mark for board in two.boards}


def test_practice_boards_are_of_the_timber_and_size_they_stand_for() -> None:
    made = chest()
    parts = {part.mark: part for part in rough_parts(made)}
    for each in made.practice:
        pins = parts[each.joint.pin_board]
        assert pins.finished == (each.length_nm, each.joint.width_nm, each.joint.pin_thickness_nm)
        real = next(joint for joint in made.joints if joint.mark == each.stands_for[0])
        assert pins.material == next(board.material for board in made.boards if board.mark == real.pin_board)


def test_a_material_s_own_allowances_win_over_those_of_all() -> None:
    """Ash with 1/8 in to plane: 7/8 would do for 3/4, but the thinnest quarters that thick are 4/4."""
    own = MaterialStock(material="ash", length_nm=inches("2"), thickness_nm=inches("1/8"))
    parts = {part.mark: part for part in rough_parts(chest(materials=(own,)))}
    assert parts["C-top"].least_nm == inches("7/8")
    assert parts["C-top"].length_nm == inches("24 1/16")
    assert parts["D1-back"].length_nm < inches("22")


def test_sheets_without_grain_may_be_turned() -> None:
    made = chest()
    stock, ply = usual_stock(Unit.INCH), made.project.material("birch plywood")
    assert not allowances(stock, ply, Unit.INCH).may_turn
    assert allowances(stock, replace(ply, species="MDF"), Unit.INCH).may_turn
    plain = replace(stock, materials=(MaterialStock(material=ply.name, grain=False),))
    assert allowances(plain, ply, Unit.INCH).may_turn
    solid = replace(ply, kind=MaterialKind.SOLID)
    assert not allowances(plain, solid, Unit.INCH).may_turn


@settings(max_examples=20)
@given(buildable_projects())
def test_no_rough_part_is_smaller_than_finished_and_its_allowance(project: Project) -> None:
    made = plan(project)
    stock = usual_stock(made.project.unit)
    for part in rough_parts(made):
        allowed = allowances(stock, made.project.material(part.material), made.project.unit)
        length, width, thickness = part.finished
        assert part.length_nm >= length + allowed.length_nm
        assert part.width_nm >= width + allowed.width_nm
        assert part.least_nm >= thickness
        if part.sold:
            assert part.sold.gives_nm >= thickness
            assert allowed.sold_as is not SoldAs.QUARTERS or part.sold.rough_nm >= part.least_nm
    groups = by_stuff(made)
    assert sorted(part.mark for parts in groups.values() for part in parts) == sorted(
        part.mark for part in rough_parts(made)
    )


# --- staves -------------------------------------------------------------------------------------------------


def test_a_panel_takes_the_fewest_equal_staves() -> None:
    """500 mm from staves up to 140, 1.5 mm an edge: three would give 420 − 6; four need (500 + 9)/4 = 127.25 each."""
    assert stave_widths(Nm(500 * MM), Nm(3 * MM // 2), (Nm(50 * MM), Nm(140 * MM))) == (Nm(127_250_000),) * 4


def test_a_panel_of_crumbs_is_no_panel() -> None:
    """A metre from staves of 5 mm: 200 of them."""
    assert stave_widths(Nm(1000 * MM), Nm(0), (Nm(1), Nm(5 * MM))) is None


def test_staves_that_the_jointer_would_eat_make_no_panel() -> None:
    assert stave_widths(Nm(500 * MM), Nm(20 * MM), (Nm(10 * MM), Nm(40 * MM))) is None


@given(
    panel=st.integers(1, 2000 * MM),
    joint=st.integers(0, 5 * MM),
    least=st.integers(25 * MM, 60 * MM),
    more=st.integers(0, 300 * MM),
)
def test_staves_give_the_panel_within_their_limits(panel: int, joint: int, least: int, more: int) -> None:
    greatest = max(least + more, 2 * joint + 1)
    widths = stave_widths(Nm(panel), Nm(joint), (Nm(least), Nm(greatest)))
    assert widths is not None
    assert sum(widths) >= panel + 2 * (len(widths) - 1) * joint
    assert all(min(least, greatest) <= width <= greatest for width in widths)
    fewer = len(widths) - 1
    assert fewer * greatest - 2 * max(0, fewer - 1) * joint < panel


def test_wide_boards_become_staves_and_their_glue_up_an_operation() -> None:
    """Staves up to 5 in: C-top, 16 1/4 rough, takes four of (16 1/4 + 6/16)/4 = 4 5/32, up to 4 3/16."""
    made = chest(greatest_stave_nm=inches("5"))
    top = next(part for part in rough_parts(made) if part.mark == "C-top")
    staves = in_staves(top, made.project, None)
    assert [stave.mark for stave in staves] == ["C-top/1", "C-top/2", "C-top/3", "C-top/4"]
    assert {(stave.width_nm, stave.length_nm, stave.board) for stave in staves} == {
        (inches("4 3/16"), inches("23 1/16"), "C-top")
    }
    operations = {operation.mark: operation for operation in made.operations}
    assert operations["panel C-top"].count == 3
    assert "panel C-top" in operations["plane C-top"].after
    assert "panel C-back" not in operations
    assert not [mark for mark in {o.mark for o in chest().operations} if mark.startswith("panel ")]


def test_stock_that_says_what_is_usual_is_what_is_usual() -> None:
    usual: Stock = usual_stock(Unit.MM)
    assert usual.of("oak") == MaterialStock(material="oak")
