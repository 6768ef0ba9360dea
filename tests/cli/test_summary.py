"""The few lines after a command, for what no sample shows."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from planner.app.plans import Prepared
from planner.app.projects import Change, Kept
from planner.cli.summary import of_prepared
from planner.domain.plan import Finding
from planner.domain.words import Level
from planner.pipeline import plan
from tests.pieces import small_box


def test_what_forbids_cutting_is_said_in_full_and_cannot_steer_the_terminal() -> None:
    stop = Finding(code="x", level=Level.STOP, marks=("K",), text="Too short for \x1b[2J the jig.", remedy="Clamp it.")
    made = replace(plan(small_box()), findings=(stop, stop))
    kept = Kept(plan=made, change=Change.CHANGED)
    told = of_prepared(Prepared(kept=kept, workbook=Path("a\x07.xlsx"), plan_file=Path("plan.json")))
    assert "Checks: 2 stops, 0 cautions, 0 notes." in told
    assert told.count("STOP, don't cut yet: Too short for \\x1b[2J the jig. Clamp it.") == 2
    assert "Workbook: a\\x07.xlsx" in told
