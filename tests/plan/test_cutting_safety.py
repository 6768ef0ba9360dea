"""Cautions that follow from the very boards, cuts and bits: there where they matter, silent elsewhere."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from planner.domain.drawer import Handles
from planner.domain.operation import Machine
from planner.domain.plan import BoardSize, Plan
from planner.domain.project import Project
from planner.lengths import Unit
from planner.pipeline import plan
from planner.plan import tasks
from tests.golden.hand import sample
from tests.pieces import SLED, inches, project, six_drawers, small_box, with_drawer
from tests.plan.pieces import ALL

SAMPLES = ("six_drawer_chest", "bookcase_with_drawers", "chest_on_stand", "blanket_chest", "letter_box", "sideboard")


def said(made: Plan, machine: Machine) -> list[str]:
    """All that is said at a machine, each once."""
    works = (work for work in made.order if work.machine is machine)
    return list(dict.fromkeys(caution for work in works for caution in work.cautions))


def lines(made: Plan, machine: Machine, begins: str) -> list[str]:
    return [caution for caution in said(made, machine) if caution.startswith(begins)]


def chest() -> Plan:
    return plan(six_drawers())


def worked(made: Plan, machine: Machine) -> dict[str, set[str]]:
    """By each caution, the boards of the runs at which it stands."""
    boards = {operation.mark: operation.boards for operation in made.operations}
    found: dict[str, set[str]] = {}
    for work in made.order:
        if work.machine is machine:
            for caution in work.cautions:
                found.setdefault(caution, set()).update(mark for each in work.operations for mark in boards[each])
    return found


# --- small boards ------------------------------------------------------------------------------------------

RULES: dict[str, tuple[Machine, Callable[[BoardSize], bool]]] = {
    "Shorter than 12 in": (Machine.PLANER, lambda board: board.length_nm < inches("12")),
    "Narrower than 2 in": (Machine.TABLE_SAW_RIP, lambda board: board.width_nm < inches("2")),
    "Shorter than 6 in": (Machine.TABLE_SAW_CROSSCUT, lambda board: board.length_nm < inches("6")),
    "Thinner than 1/4 in": (Machine.PLANER, lambda board: board.thickness_nm < inches("1/4")),
    "Longer than 24 in": (Machine.BANDSAW, lambda board: board.length_nm > inches("24")),
    "Top-heavy on end": (Machine.ROUTER_TABLE_SLED, lambda board: board.length_nm > inches("24")),
}
"""Common practice, no source: which boards want what said."""


@pytest.mark.parametrize("name", [name for name in SAMPLES if name not in {"sideboard", "bookcase_with_drawers"}])
@pytest.mark.parametrize("begins", RULES)
def test_each_run_tells_just_the_boards_that_its_rule_is_about(name: str, begins: str) -> None:
    made = sample(f"{name}.toml")
    assert made.project.unit is Unit.INCH
    machine, wants = RULES[begins]
    boards = {board.mark: board for board in made.boards}
    operations = {operation.mark: operation for operation in made.operations}
    for work in (work for work in made.order if work.machine is machine):
        on = {mark for each in work.operations for mark in operations[each].boards}
        wanted = [mark for mark in on if wants(boards[mark])]
        told = [caution for caution in work.cautions if caution.startswith(begins)]
        assert len(told) == bool(wanted), (work.task, wanted)
        if told and len(wanted) <= 4:
            assert all(mark in told[0] for mark in wanted)
        elif told:
            assert f"and {len(wanted) - 3} more" in told[0]


def test_metric_projects_are_told_in_round_metric_lengths() -> None:
    text = " ".join(said(sample("bookcase_with_drawers.toml"), Machine.PLANER))
    assert "Shorter than 300 mm: " in text
    assert " in:" not in text


def test_a_box_of_long_boards_is_told_nothing_of_short_ones() -> None:
    """The chest's rails, its drawers and its back are all over 12 in long, but no drawer side is over 24."""
    made = chest()
    assert min(board.length_nm for board in made.boards) > inches("12")
    assert lines(made, Machine.PLANER, "Shorter") == lines(made, Machine.TABLE_SAW_RIP, "Shorter") == []


# --- the sled ----------------------------------------------------------------------------------------------


def test_tall_boards_on_end_are_named_with_their_height() -> None:
    """Top and bottom of the chest carry pins: 36 in and twice 1/64 proud, 36 1/32; drawer fronts stand 34 1/8."""
    told = lines(chest(), Machine.ROUTER_TABLE_SLED, "Top-heavy")
    assert any("up to 36 1/32 in tall: C-bottom, C-top." in each or "C-top, C-bottom." in each for each in told)
    assert lines(plan(small_box()), Machine.ROUTER_TABLE_SLED, "Top-heavy") == []


def test_the_face_that_breaks_out_at_the_sled_is_the_inside() -> None:
    """The bit goes in at the outside face, which is to the operator, and out through the fence behind."""
    (told,) = lines(chest(), Machine.ROUTER_TABLE_SLED, "The bit breaks out")
    assert "inside face" in told
    assert "backing board" in told


@pytest.mark.parametrize(
    ("bit", "speeds"), [("1/2", "22 000 to 24 000"), ("1", "22 000 to 24 000"), ("1 1/16", "18 000 to 22 000")]
)
def test_the_bit_of_the_sled_is_told_its_printed_speed(bit: str, speeds: str) -> None:
    # a printed chart, no standard: to 1 in 22 000-24 000, 1-2 in 18 000-22 000 rpm.
    box = small_box().boxes[0]
    wide = replace(box.ring.spacing, tails=1)
    made = project(boxes=(replace(box, ring=replace(box.ring, spacing=wide)),))
    made = replace(made, sleds=(replace(SLED, bit_nm=inches(bit)),))
    (told,) = lines(plan(made), Machine.ROUTER_TABLE_SLED, "A bit of")
    assert told.startswith(f"A bit of {bit} in: charts print {speeds} rpm")
    assert "marked on the cutter rules" in told
    assert "no standard" in told


# --- breakout ----------------------------------------------------------------------------------------------


def test_a_housing_right_across_wants_its_far_edge_backed() -> None:
    """Full-depth shelves lie in housings that leave the sides at the back; rails only begin at the front."""
    (told,) = lines(plan(ALL["of_doors"]()), Machine.ROUTER_GUIDE, "The bit breaks out")[:1]
    assert "enter at the reference edge" in told
    assert "far edge of" in told
    assert lines(chest(), Machine.ROUTER_GUIDE, "The bit breaks out") == []


def test_through_holes_and_mortises_are_backed_at_the_other_face() -> None:
    made = six_drawers()
    handles = Handles(count=1, holes=1, apart_nm=inches("3"), hole_nm=inches("3/16"))
    held = plan(with_drawer(made, replace(next(iter(made.drawers())), handles=handles)))
    (told,) = lines(held, Machine.DRILL, "It comes out")
    assert told.startswith("It comes out at the inside face: clamp a backing board there on D1-front,")
    through = lines(plan(ALL["tenoned"]()), Machine.MORTISER, "It comes out")
    assert through
    blind = lines(sample("chest_on_stand.toml"), Machine.MORTISER, "It comes out")
    assert blind == []


def test_tails_break_out_at_the_outside_face() -> None:
    work = next(work for work in chest().order if work.task == tasks.SAW.does)
    assert any("outside face, which lies on the table" in caution for caution in work.cautions)
    shoulders = next(work for work in chest().order if work.task == tasks.SHOULDERS.does)
    assert not any("lies on the table" in caution for caution in shoulders.cautions)


# --- everywhere --------------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", SAMPLES)
def test_noise_is_told_once_where_the_first_loud_machine_is(name: str) -> None:
    """29 CFR 1910.95 table G-16: 8 h at 90, 4 at 95, 2 at 100, 1 at 105 dBA."""
    made = sample(f"{name}.toml")
    told = [work for work in made.order if any("G-16" in caution for caution in work.cautions)]
    assert [work.number for work in told] == [1]
    assert any("8 h at 90, 4 h at 95, 2 h at 100, 1 h at 105 dBA" in caution for caution in told[0].cautions)


@pytest.mark.parametrize("make", [*ALL.values(), six_drawers, small_box], ids=lambda make: make.__name__)
def test_no_caution_is_said_twice_at_one_visit(make: Callable[[], Project]) -> None:
    for work in plan(make()).order:
        assert len(set(work.cautions)) == len(work.cautions)
        assert all(caution.strip() == caution and caution.endswith(".") for caution in work.cautions)
