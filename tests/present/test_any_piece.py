"""The samples, and pieces nobody thought of: all can be shown, written and told as JSON."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from planner.domain.plan import Plan
from planner.domain.project import Project
from planner.intake.project_file import read_project
from planner.pipeline import plan
from planner.present import tables
from planner.present.json_out import plan_json
from planner.present.text import render
from planner.present.workbook import workbook
from tests.buildable import buildable_projects
from tests.present.books import OURS, formulas, loaded, rows_by_heading

SAMPLES = sorted((Path(__file__).parents[2] / "sample_projects").glob("*.toml"))


def check(made: Plan) -> None:
    """Everything that any plan's outputs must hold to."""
    for view in (*tables.SHEETS, tables.checks):
        table = view(made)
        for width in (40, 80, 200):
            assert max(map(len, render([table], width=width, colour=False).splitlines())) <= width
    assert json.loads(json.dumps(plan_json(made), allow_nan=False)) == plan_json(made)
    book = workbook(made)
    assert all(OURS.fullmatch(formula) for formula in formulas(book))
    boards = [row["Board"] for row in rows_by_heading(book, "Boards") if row["Role"] is not None]
    assert sorted(boards) == sorted(board.mark for board in made.boards)
    assert all(len(sheet.title) <= 31 for sheet in loaded(book).worksheets)


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_every_sample_can_be_presented(path: Path) -> None:
    check(plan(read_project(path.read_text(encoding="utf-8"), path.name)))


def test_there_are_samples() -> None:
    assert len(SAMPLES) >= 3


@given(buildable_projects())
@settings(max_examples=10, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@pytest.mark.slow
def test_any_piece_that_can_be_planned_can_be_presented(project: Project) -> None:
    check(plan(project))
