"""The whole way from the maker's word to the plan. Read this first."""

from __future__ import annotations

from planner.checks.all_checks import findings
from planner.checks.facts import Facts
from planner.derive.cuts import features
from planner.derive.fits import must_fit
from planner.derive.joints import joints
from planner.derive.labels import labels
from planner.derive.openings import openings
from planner.derive.sizes import board_sizes, ring_sizes
from planner.derive.tails import tail_end
from planner.domain.plan import Plan
from planner.domain.project import Project
from planner.plan import operations as work
from planner.plan.practice import practice_joints
from planner.plan.sled import sled_plan
from planner.plan.tails import tail_settings


def plan(project: Project) -> Plan:
    """Everything that follows from a project: pure, and the same each time.

    Raises:
        PlanError: no plan can be built; every reason found is named.
    """
    clear = openings(project)
    boards = {board.mark: board for board in board_sizes(project, ring_sizes(project, clear), clear)}
    corners = {joint.mark: joint for joint in joints(project, boards)}
    cuts = features(project, boards, corners)
    must_fit(project, boards, cuts)
    sled = sled_plan([(project, tuple(corners.values()))])
    tails = tail_settings([tail_end(joint) for joint in corners.values()])
    practice = practice_joints(project, corners.values(), sled)
    operations = work.operations(work.Facts(project, boards, tuple(corners.values()), cuts, sled, tails, practice))
    facts = Facts(project=project, boards=boards, joints=corners, features=cuts, openings=clear, sled=sled)
    return Plan(
        project=project,
        boards=tuple(boards.values()),
        labels=labels(project, boards),
        joints=tuple(corners.values()),
        features=cuts,
        openings=clear,
        sled=sled,
        tails=tails,
        practice=practice,
        operations=operations,
        order=work.order_of_work(operations),
        findings=findings(facts),
    )
