"""Projects to be changed, and what a change must have come to, found without the code that makes it."""

from __future__ import annotations

import tomllib
from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass, replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from planner.domain.project import Project
from planner.domain.ring import Stuff
from planner.domain.said import SaidOtherwise
from planner.errors import InputError, Problem
from planner.intake.edit import Draft
from planner.intake.project_file import read_project
from planner.intake.write_file import write_project

SAMPLES = Path(__file__).parents[2] / "sample_projects"
NAMES = sorted(path.stem for path in SAMPLES.glob("*.toml"))
CHEST, CABINET, BOXES = "six_drawer_chest", "bench_cabinet", "twelve_boxes"


@cache
def sample(name: str) -> Project:
    return read_project((SAMPLES / f"{name}.toml").read_text(encoding="utf-8"), name)


def changed(project: Project, *pairs: str, left_out: tuple[str, ...] = ()) -> Project:
    """The project with values put at places."""
    return changed_and_said(project, *pairs, left_out=left_out)[0]


def changed_and_said(
    project: Project, *pairs: str, left_out: tuple[str, ...] = ()
) -> tuple[Project, tuple[SaidOtherwise, ...]]:
    draft = Draft(project)
    for place, text in zip(pairs[::2], pairs[1::2], strict=True):
        draft.change(place, text)
    for place in left_out:
        draft.leave_out(place)
    return draft.finished(), draft.said


def refusals(project: Project, *pairs: str, left_out: tuple[str, ...] = ()) -> tuple[Problem, ...]:
    with pytest.raises(InputError) as refused:
        changed(project, *pairs, left_out=left_out)
    return refused.value.problems


def with_work(project: Project, work: Callable[[Draft], None]) -> Project:
    draft = Draft(project)
    work(draft)
    return draft.finished()


def refused_work(project: Project, work: Callable[[Draft], None]) -> str:
    """The only refusal of some work."""
    with pytest.raises(InputError) as refused:
        with_work(project, work)
    (problem,) = refused.value.problems
    return str(problem)


# --- independent of the code under test ---------------------------------------------------------------------


def said_in_file(project: Project) -> dict[str, Any]:
    """Every value of the written file by a place worked out here: marks for boxes and carcases, numbers for columns."""
    return dict(_flat(tomllib.loads(write_project(project)), ""))


def _flat(said: Any, place: str) -> Iterator[tuple[str, Any]]:
    if isinstance(said, dict) and said:
        for key, each in said.items():
            name = f"'{key}'" if " " in key else key
            yield from _flat(each, f"{place}.{name}" if place else name)
    elif isinstance(said, list) and isinstance(said[0], dict):
        for number, each in enumerate(said, start=1):
            yield from _flat(each, f"{place}.{each.get('mark', number)}")
    else:
        yield place, said


def of_other_material(thing: Any, old: str, new: str) -> Any:
    """Any part of a project, remade field by field with every stuff of one material of the other."""
    if isinstance(thing, Stuff):
        return replace(thing, material=new) if thing.material == old else thing
    if isinstance(thing, tuple):
        return tuple(of_other_material(each, old, new) for each in thing)
    if is_dataclass(thing) and not isinstance(thing, type):
        return replace(
            thing, **{field.name: of_other_material(getattr(thing, field.name), old, new) for field in fields(thing)}
        )
    return thing
