"""Timbers for tests, and the checks' facts of a project whose materials are these: nothing from the shipped data."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from planner.checks.facts import Facts
from planner.derive.weights import weights
from planner.domain.climate import Climate, Room
from planner.domain.project import Project
from planner.domain.timber import Timber
from planner.domain.words import Hardness, MaterialKind
from planner.pipeline import plan


def timber(gravity: float, gpa: float = 10.0, mpa: float = 80.0, kind: MaterialKind = MaterialKind.SOLID) -> Timber:
    """A timber of which only weight, stiffness and strength matter."""
    return Timber(
        name="any",
        kind=kind,
        tangential=0.0025,
        radial=0.0015,
        specific_gravity=gravity,
        stiffness_gpa=gpa,
        strength_mpa=mpa,
        hardness=Hardness.HARD,
        source="made up",
        how_strength="for a test",
    )


def at_twelve(project: Project) -> Project:
    """The same project with its wood at 12 % all the year, for which values are printed."""
    printed = Climate(moisture_hundredths=1200)
    return replace(project, room=Room(dry=printed, damp=printed))


def facts_with(project: Project, timbers: Mapping[str, Timber]) -> Facts:
    """What the checks are given, as if the maker had named these timbers."""
    project = at_twelve(project)
    made = plan(project)
    boards = {board.mark: board for board in made.boards}
    return Facts(
        project=project,
        boards=boards,
        joints={joint.mark: joint for joint in made.joints},
        features=made.features,
        openings=made.openings,
        sled=made.sled,
        timbers=timbers,
        weights=weights(project, boards, (made.features, made.joints), made.openings, timbers),
    )
