"""The order of operations as it is read in the shop: headings, boxes, hands and hours."""

from __future__ import annotations

from functools import cache

import pytest

from planner.domain.operation import Machine
from planner.domain.plan import Plan
from planner.domain.space import Space
from planner.plan import tasks
from planner.present import json_out, tables
from planner.present.table import Group, Kind
from planner.present.text import render
from tests.pieces import columns, drawer, inches, project, six_drawers, tiers
from tests.plan import pieces
from tests.plan.orders import planned

CHEST = planned(six_drawers())


def group(piece: Plan, task: tasks.Task, *, at: int = 0) -> Group:
    """The heading and what stands below it for a visit of a task."""
    works = [work for work in piece.order if work.task == task.does]
    return tables.order(piece).groups[works[at].number - 1]


def test_one_visit_is_one_heading_with_its_number_its_task_and_its_setting() -> None:
    table = tables.order(CHEST)
    assert len(table.groups) == len(CHEST.order)
    for number, (work, each) in enumerate(zip(CHEST.order, table.groups, strict=True), 1):
        assert each.heading.startswith(f"{number}. {work.task}")
    assert group(CHEST, tasks.RIP).heading == "4. Rip to width: width 44 31/32"
    assert group(CHEST, tasks.GLUE).heading.endswith(tasks.GLUE.does)


def test_every_operation_is_on_the_sheet_once_beside_its_box() -> None:
    for work, each in zip(CHEST.order, tables.order(CHEST).groups, strict=True):
        said = [(box, what) for boxes, on in each.rows for box in boxes for what in on]  # type: ignore[union-attr]
        assert len(said) == len(set(said)) == len(work.operations)


def test_boxes_that_get_the_same_share_a_row_each_with_a_box_to_tick() -> None:
    assert group(CHEST, tasks.GROOVE).rows == (
        (
            ("D1", "D2", "D3", "D4", "D5", "D6"),
            ("front for bottom", "right for bottom", "back for bottom", "left for bottom"),
        ),
    )
    assert tables.order(CHEST).columns[0].kind is Kind.TICKS


def test_what_is_put_together_is_named_with_what_is_caught_in_it() -> None:
    rows = group(planned(pieces.blanket_chest()), tasks.DRY).rows
    assert rows == (
        (("K",), ("front right back left bottom tillside tillbottom tilllid",)),
        (("Q",), ("front right back left bottom",)),
    )


def test_notes_say_where_how_long_how_many_clamps_and_people_and_after_what() -> None:
    """Glue: 20 min for the carcase, 8 clamps, two people for 33 kg; after the sanding, the run before."""
    glue, sanding = group(CHEST, tasks.GLUE), group(CHEST, tasks.SAND).heading.split(".")[0]
    assert glue.notes == (f"Clamps; about 20 min; 8 clamps; two people; after {sanding}.",)
    drawers = group(CHEST, tasks.GLUE, at=1)
    assert "4 clamps each" in drawers.notes[0]
    assert "people" not in drawers.notes[0]


def test_a_new_part_of_the_build_is_announced() -> None:
    announced = [note for each in tables.order(CHEST).groups for note in each.notes if note.startswith("From here on")]
    assert announced == [
        "From here on: made to the openings as measured.",
        "From here on: fitted and finished.",
    ]


def test_hours_of_the_parts_add_up_to_the_whole() -> None:
    """Each rounded to the hour, so the sum may be off by one and a half at most, rounded."""
    note = tables.order(CHEST).notes[1]
    whole, *parts = (int(text.split()[0]) for text in note.split(": ")[1].split(", "))
    assert abs(whole - sum(parts)) <= 2
    assert whole == round(sum(work.estimate_s for work in CHEST.order) / 3600)


def test_cautions_stand_where_the_machine_is_taken_up_and_not_again_at_its_next_setting() -> None:
    for before, work, each in zip((None, *CHEST.order), CHEST.order, tables.order(CHEST).groups, strict=False):
        if before is None or before.machine is not work.machine:
            assert each.cautions == work.cautions
        elif before.task == work.task:
            assert each.cautions == ()
    at_sled = next(work for work in CHEST.order if work.machine is Machine.ROUTER_TABLE_SLED)
    assert any(
        "clamp the board" in caution.lower() for caution in tables.order(CHEST).groups[at_sled.number - 1].cautions
    )


@cache
def twenty_four_drawers() -> Plan:
    marks = [[f"D{column}{tier:02d}" for tier in range(1, 7)] for column in range(1, 5)]
    inside = columns(*(tiers(*(Space(holds=drawer(mark)) for mark in column)) for column in marks))
    cabinet = pieces.carcase("C", inside, width_nm=inches("47"), height_nm=inches("44"))
    return planned(project(carcases=(cabinet,)))


def test_the_sheet_of_24_drawers_can_still_be_read() -> None:
    """Over 2 000 operations: with a line each nobody would read it. Rows grow with the settings, not with drawers."""
    cabinet = twenty_four_drawers()
    table = tables.order(cabinet)
    assert len(cabinet.operations) > 2_000
    assert len(list(table.rows)) < len(cabinet.order) + 2 * 24
    lines = render([table], width=100, colour=False).splitlines()
    assert len(lines) < 800


def test_json_says_of_each_operation_its_boards_and_cuts_and_of_each_run_its_hands() -> None:
    runs = json_out.order_json(CHEST)
    made = [cut for run in runs for operation in run["operations"] for cut in operation["cuts"]]
    assert sorted(made) == list(range(len(json_out.cuts_json(CHEST))))
    rabbet = next(run for run in runs if run["task"] == tasks.RABBET.does)
    assert [operation["boards"] for operation in rabbet["operations"]] == [
        ["C-top"],
        ["C-right"],
        ["C-bottom"],
        ["C-left"],
    ]
    assert (rabbet["hands"], rabbet["clamps"], rabbet["chapter"]) == (1, 0, "made to the plan's sizes")
    assert rabbet["estimate_s"] == tasks.RABBET.setup_s + 4 * tasks.RABBET.each_s


@pytest.mark.parametrize("name", pieces.ALL)
def test_the_sheet_is_the_same_each_time(name: str) -> None:
    made = [tables.order(planned(pieces.ALL[name]())) for _ in range(2)]
    assert made[0] == made[1]
