"""Try what an interview has come to: whether a plan can be built of it, and what its front looks like."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from planner import pipeline
from planner.domain.plan import Plan
from planner.domain.project import Project
from planner.domain.sled import Sled
from planner.errors import InputError, PlanError, Problem
from planner.intake.interview.piece import Piece

_SOURCE = "the answers"


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """What came of the answers.

    Attributes:
        plan: None when none can be built.
        drawing: lines of the front; none when it can't be drawn.
        problems: why no plan can be built.
    """

    plan: Plan | None
    drawing: tuple[str, ...]
    problems: tuple[Problem, ...]


def tried(piece: Piece, sleds: Sequence[Sled]) -> Trial:
    """A trial of the whole piece as the answers have it, with the sleds that the store keeps."""
    try:
        project = _project_of(piece, sleds)
    except InputError as error:
        return Trial(plan=None, drawing=(), problems=error.problems)
    try:
        return Trial(plan=pipeline.plan(project), drawing=_drawn(project), problems=())
    except PlanError as error:
        return Trial(plan=None, drawing=_drawn(project), problems=error.problems)


def _project_of(piece: Piece, sleds: Sequence[Sled]) -> Project:
    """The project that the answers describe, read as a file of it would be."""
    import tomli_w

    from planner.intake.project_file import read_project

    return read_project(tomli_w.dumps(piece.tables), _SOURCE, lambda: sleds)


def _drawn(project: Project) -> tuple[str, ...]:
    from planner.present.box_front import box_front
    from planner.present.front import front

    try:
        cases = [front(carcase, project.grid) for carcase in project.carcases[:1]]
    except PlanError:
        return ()
    return next(iter([*cases, *(box_front(box) for box in project.boxes[:1])]), ())
