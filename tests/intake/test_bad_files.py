"""Every mistake is refused with its place, what was found, and what would be right."""

from __future__ import annotations

import re
from functools import cache

import pytest

from planner.errors import InputError, Problem
from planner.intake.project_file import read_project
from planner.lengths import Unit
from tests.intake.bad_files import BAD_FILES, GOOD, BadFile
from tests.intake.furniture import BAD_FURNITURE, FURNITURE

JARGON = re.compile(r"pydantic|https?:|input should|validation error|traceback|NoneType", re.IGNORECASE)

ALL = (*BAD_FILES, *BAD_FURNITURE)
each_bad_file = pytest.mark.parametrize("bad", [pytest.param(bad, id=bad.name) for bad in ALL])


@cache
def problems_of(text: str) -> tuple[Problem, ...]:
    with pytest.raises(InputError) as refused:
        read_project(text, "bad.toml")
    return refused.value.problems


def test_the_sound_files_are_read() -> None:
    project = read_project(GOOD, "good.toml")
    assert project.unit is Unit.INCH
    assert [box.ring.mark for box in project.boxes] == ["T1", "T2", "T3"]
    furniture = read_project(FURNITURE, "furniture.toml")
    assert [box.ring.mark for box in furniture.boxes] == ["L", "N1", "N2", "N3", "N4"]


def test_no_two_bad_files_are_alike() -> None:
    assert len({bad.name for bad in ALL}) == len({bad.text for bad in ALL}) == len(ALL)


@each_bad_file
def test_one_mistake_gives_one_problem_with_place_finding_and_remedy(bad: BadFile) -> None:
    (problem,) = problems_of(bad.text)
    assert problem.where.startswith("bad.toml")
    assert problem.where.endswith(bad.where)
    assert bad.what in problem.what
    assert bad.remedy in f"{problem.what} {problem.remedy}"
    assert problem.remedy


@each_bad_file
def test_messages_are_plain_and_printable(bad: BadFile) -> None:
    for problem in problems_of(bad.text):
        assert not JARGON.search(str(problem))
        assert not re.search(r"\b(dict|int|str|float|Decimal|None)\b", str(problem))
        assert str(problem).isprintable()
        assert len(str(problem)) < 500


@each_bad_file
def test_the_line_named_is_the_line_of_the_value_or_of_the_table_that_lacks_it(bad: BadFile) -> None:
    """The samples and the sound file hold one key a line, so the last key of the path must stand on that line."""
    for problem in problems_of(bad.text):
        placed = re.fullmatch(r"bad\.toml, line (?P<line>\d+): (?P<path>.+)", problem.where)
        if placed is None:
            continue
        line = bad.text.splitlines()[int(placed["line"]) - 1]
        keys = re.findall(r"[A-Za-z_0-9]+(?=$|\.|\[|')", placed["path"])
        if "missing" in problem.what or "need a step" in problem.what:
            assert line.startswith("[")
            assert keys[-2] in line or keys[-1] in line
        else:
            assert keys[-1] in line
