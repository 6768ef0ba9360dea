"""What would keep a project from being stored and read back as it is; asked before saving and after loading."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain, pairwise

from planner.domain.project import Project, problems
from planner.domain.ring import Ring
from planner.domain.spacing import Spacing
from planner.domain.words import Spread
from planner.errors import Problem


def faults(project: Project) -> list[Problem]:
    """All faults of a project, those of its listed pins included; empty when it is sound."""
    found = list(problems(project))
    for where, spacing in _spacings(project.rings()):
        if bool(spacing.places) is not (spacing.spread is Spread.LISTED):
            found.append(Problem(where=where, what="listed pins need their places, and others have none.", remedy=""))
        ends = list(chain.from_iterable(spacing.places))
        if any(before >= after for before, after in pairwise(ends)):
            found.append(
                Problem(where=where, what="its listed pins are not in order.", remedy="Each starts after the last.")
            )
    return found


def _spacings(rings: Iterator[Ring]) -> Iterator[tuple[str, Spacing]]:
    for ring in rings:
        yield ring.mark, ring.spacing
        yield from ((corner.mark, corner.spacing) for corner in ring.corners if corner.spacing is not None)
