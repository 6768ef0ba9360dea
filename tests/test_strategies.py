"""The projects that other tests are fed with are what their strategies promise."""

from __future__ import annotations

from hypothesis import given

from planner.domain.project import Project, problems
from planner.pipeline import plan
from tests.buildable import buildable_projects
from tests.strategies import projects


@given(projects())
def test_projects_fit_together_and_can_be_hashed(project: Project) -> None:
    assert problems(project) == []
    assert hash(project) == hash(project)


@given(buildable_projects())
def test_a_plan_can_be_made_of_buildable_projects(project: Project) -> None:
    assert problems(project) == []
    made = plan(project)
    assert len(made.joints) == 4 * len(list(project.rings()))
