"""The whole way from the maker's word to the plan. Read this first."""

from __future__ import annotations

from planner.checks.all_checks import findings
from planner.checks.facts import Facts
from planner.derive.assembly import assembly
from planner.derive.cuts import features
from planner.derive.fits import must_fit
from planner.derive.joints import joints
from planner.derive.labels import labels
from planner.derive.sawn_lids import sawn_sizes
from planner.derive.tails import tail_end
from planner.derive.weights import weights
from planner.domain.plan import Plan
from planner.domain.project import Project
from planner.plan import operations as work
from planner.plan.hardware import hardware
from planner.plan.practice import practice_joints
from planner.plan.sled import sled_plan
from planner.plan.tails import tail_settings
from planner.wood.timbers import timbers_of


def plan(project: Project) -> Plan:
    """Everything that follows from a project: pure, and the same each time.

    Raises:
        PlanError: no plan can be built; every reason found is named.
    """
    made = assembly(project)
    boards = made.boards
    corners = {joint.mark: joint for joint in joints(project, boards)}
    cuts = features(project, made, corners)
    must_fit(project, boards, cuts)
    sled = sled_plan([(project, tuple(corners.values()))])
    tails = tail_settings([tail_end(joint) for joint in corners.values()])
    practice = practice_joints(project, corners.values(), sled)
    build = work.Facts(project, boards, tuple(corners.values()), cuts, made.openings, sled, tails, practice)
    operations = work.operations(build)
    timbers = timbers_of(project)
    heavy = weights(project, boards, (cuts, corners.values()), made.openings, timbers)
    facts = Facts(project, boards, corners, cuts, made.openings, sled, timbers, heavy)
    return Plan(
        project=project,
        boards=tuple(boards.values()),
        labels=labels(project, boards, cuts),
        joints=tuple(corners.values()),
        features=cuts,
        openings=made.openings,
        sled=sled,
        tails=tails,
        practice=practice,
        operations=operations,
        order=work.order_of_work(operations, build),
        findings=findings(facts),
        sawn=tuple(part for box in project.boxes for part in sawn_sizes(box, boards)),
        hardware=hardware(project, boards, cuts),
        weights=heavy,
    )
