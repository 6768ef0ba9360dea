"""What is to be cut on sleds: the pin ends of all projects at hand, each with its sled and the bit height to set.

Sleds of different projects that have the same name and equal figures are one sled, kept or not. Bit heights share a
setting on each sled within the smallest tolerance of the projects that use it, so that no project gets more than its
maker allowed.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cache

from planner.derive.passes import SocketCut, clear_socket
from planner.derive.slot import slot_of
from planner.domain.plan import Joint
from planner.domain.project import Project
from planner.domain.sled import Sled
from planner.domain.words import JointKind
from planner.lengths import Nm
from planner.plan.heights import shared_heights

Batch = Sequence[tuple[Project, Sequence[Joint]]]
"""Projects with names unlike each other, at least one, and their joints."""

Board = tuple[str, str]
"""A project and the mark of one of its boards: marks are unlike each other only within a project."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EndToCut:
    """A pin end of a through dovetail.

    Attributes:
        project: name of its project.
        height_nm: bit height to set, which serves other ends as well.
        sockets: how each socket is cleared, from the reference edge.
    """

    project: str
    joint: Joint
    sled: Sled
    height_nm: Nm
    sockets: tuple[SocketCut, ...]

    @property
    def board(self) -> Board:
        """The board it is an end of."""
        return self.project, self.joint.pin_board

    def passes(self, *, at_first: bool) -> int:
        """Passes at the fence that comes first, or at the other."""
        return sum(len(socket.first if at_first else socket.second) for socket in self.sockets)


def ends_to_cut(batch: Batch) -> tuple[EndToCut, ...]:
    """Pin ends of all through dovetails, in order of projects and joints.

    Half-blind joints are left out: the bit goes right through a board, so the sled can't cut them.
    """

    @cache
    def socket_cut(wide: Nm, thick: Nm, sled: Sled) -> SocketCut:
        return clear_socket(wide, thick, slot_of(sled))

    through = [
        (project, joint, replace(project.sled(joint.sled), kept=False))
        for project, joints in batch
        for joint in joints
        if joint.kind is JointKind.THROUGH_DOVETAIL
    ]
    to_set = _heights_to_set(through)
    return tuple(
        EndToCut(
            project=project.name,
            joint=joint,
            sled=sled,
            height_nm=to_set[sled][joint.bit_height_nm],
            sockets=tuple(socket_cut(Nm(b - a), joint.pin_thickness_nm, sled) for a, b in joint.tails),
        )
        for project, joint, sled in through
    )


def _heights_to_set(through: Iterable[tuple[Project, Joint, Sled]]) -> dict[Sled, dict[Nm, Nm]]:
    """For each sled, the height to set for each height needed."""
    needed: dict[Sled, list[Nm]] = {}
    tolerance: dict[Sled, Nm] = {}
    for project, joint, sled in through:
        needed.setdefault(sled, []).append(joint.bit_height_nm)
        tolerance[sled] = min(tolerance.get(sled, project.height_tolerance_nm), project.height_tolerance_nm)
    return {sled: shared_heights(heights, tolerance[sled]) for sled, heights in needed.items()}


def sled_names(ends: Iterable[EndToCut]) -> dict[Sled, str]:
    """A name for each sled in use by which it can't be mistaken for another.

    Where one name stands for different figures, the projects are added: ``bench of Tea box``.
    """
    used_by: dict[Sled, dict[str, None]] = {}
    for end in ends:
        used_by.setdefault(end.sled, {})[end.project] = None
    times = Counter(sled.name for sled in used_by)
    return {
        sled: sled.name if times[sled.name] == 1 else f"{sled.name} of {' and '.join(projects)}"
        for sled, projects in used_by.items()
    }
