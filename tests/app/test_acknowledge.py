"""Findings that somebody answers for: kept with the project, open again when they get graver or are taken back.

The box stands on a sled of slope 1:2, far outside what the textbooks draw, so the check of slopes finds one caution.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from planner import pipeline
from planner.app.acknowledge import Wanted, acknowledge, open_again
from planner.app.history import history, undo
from planner.app.projects import read, stored
from planner.app.store_place import StorePlace
from planner.domain.plan import Finding
from planner.domain.project import Project
from planner.domain.words import Level
from planner.errors import InputError
from planner.intake.project_file import read_project
from planner.intake.write_file import write_project
from tests.app.texts import BOX, SAMPLES

SLOPE = Wanted(project="Salt box", code="slope", marks=())


@pytest.fixture
def steep(store: StorePlace, shop: Path) -> StorePlace:
    """A store with the box on a steep sled."""
    path = shop / "steep.toml"
    path.write_text(BOX.replace('"1:7"', '"1:2"'), encoding="utf-8")
    read(str(path), store)
    return store


def slopes(project: Project) -> list[Finding]:
    return [each for each in pipeline.plan(project).findings if each.code == "slope"]


def test_it_is_kept_with_its_reason(steep: StorePlace) -> None:
    (found,) = acknowledge(SLOPE, "an old sled, and it has always held", steep)
    (now,) = slopes(stored("Salt box", steep))
    assert found.acknowledged == ""
    assert now == replace(found, acknowledged="an old sled, and it has always held")
    assert history("Salt box", steep).states[-1].why == "acknowledged slope: an old sled, and it has always held"


def test_a_second_reason_takes_the_place_of_the_first(steep: StorePlace) -> None:
    acknowledge(SLOPE, "so be it", steep)
    acknowledge(SLOPE, "tried on scrap", steep)
    assert [each.why for each in stored("Salt box", steep).acknowledged] == ["tried on scrap"]


def test_it_can_be_opened_again_and_undone(steep: StorePlace) -> None:
    before = stored("Salt box", steep)
    acknowledge(SLOPE, "so be it", steep)
    (found,) = open_again(SLOPE, steep)
    assert found.acknowledged == "so be it"
    assert stored("Salt box", steep) == before
    undo("Salt box", steep)
    assert [each.acknowledged for each in slopes(stored("Salt box", steep))] == ["so be it"]


def test_what_has_become_graver_is_open_again(steep: StorePlace) -> None:
    acknowledge(SLOPE, "so be it", steep)
    project = stored("Salt box", steep)
    (answer,) = project.acknowledged
    assert answer.level is Level.CAUTION
    milder = replace(project, acknowledged=(replace(answer, level=Level.NOTE),))
    assert [each.acknowledged for each in slopes(milder)] == [""]
    graver = replace(project, acknowledged=(replace(answer, level=Level.STOP),))
    assert [each.acknowledged for each in slopes(graver)] == ["so be it"]


def test_it_stands_in_the_project_file(steep: StorePlace) -> None:
    acknowledge(SLOPE, "so be it", steep)
    project = stored("Salt box", steep)
    text = write_project(project)
    assert '[[acknowledged]]\ncode = "slope"' in text
    assert read_project(text, "again") == project


@pytest.mark.parametrize(
    ("code", "marks", "why", "what"),
    [
        ("slopes", (), "so be it", "not found by any check"),
        ("slope", ("K9",), "so be it", "not found by any check"),
        ("slope", (), "", "is no reason"),
        ("slope", (), "x" * 201, "is no reason"),
        ("slope", (), "bell\a", "can't be seen"),
        ("slope", (), " blank", "blanks at an end"),
    ],
)
def test_a_refusal_leaves_the_store_as_it_was(
    steep: StorePlace, code: str, marks: tuple[str, ...], why: str, what: str
) -> None:
    before = stored("Salt box", steep)
    with pytest.raises(InputError) as refused:
        acknowledge(Wanted(project="Salt box", code=code, marks=marks), why, steep)
    assert what in str(refused.value.problems[0])
    assert stored("Salt box", steep) == before


def test_two_findings_alike_are_answered_for_together(store: StorePlace) -> None:
    """In the letter box two grooves of the front would show: one rule, the same two ends, twice."""
    read(str(SAMPLES / "letter_box.toml"), store)
    wanted = Wanted(project="Letter box", code="stopped-cut", marks=("L-front-A",))
    assert len(acknowledge(wanted, "stopped with a chisel", store)) == 2
    project = stored("Letter box", store)
    assert [each.marks for each in project.acknowledged] == [("L-front-A", "L-front-B")]
    found = [each for each in pipeline.plan(project).findings if "L-front-A" in each.marks]
    assert [each.acknowledged for each in found] == ["stopped with a chisel"] * 2
    assert len(open_again(wanted, store)) == 2
    assert stored("Letter box", store).acknowledged == ()


def test_what_is_open_cannot_be_opened(steep: StorePlace) -> None:
    with pytest.raises(InputError, match="is open already"):
        open_again(SLOPE, steep)
