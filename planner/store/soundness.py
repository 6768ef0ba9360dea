"""What would keep a project from being stored and read back as it is; asked before saving and after loading."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields
from itertools import chain, pairwise

from planner.domain.project import Project, problems
from planner.domain.ring import Ring
from planner.domain.sled import Sled
from planner.domain.spacing import Spacing
from planner.domain.words import Spread
from planner.errors import Problem


def faults(project: Project, kept: Mapping[str, Sled]) -> list[Problem]:
    """All faults of a project, those of its listed pins included; empty when it is sound.

    Args:
        project: as it is to be stored, or was loaded.
        kept: the store's sleds by name; a kept sled of the project must be among them, the same to the nanometre.
    """
    found = list(problems(project))
    found += [_unlike(sled, kept) for sled in project.sleds if sled.kept and sled != kept.get(sled.name)]
    found += [
        Problem(
            where=carcase.ring.mark, what="a space is divided, but into nothing.", remedy="Give it a column or tier."
        )
        for carcase in project.carcases
        for division in carcase.inside.divisions()
        if not division.spaces
    ]
    for where, spacing in _spacings(project.rings()):
        if bool(spacing.places) is not (spacing.spread is Spread.LISTED):
            found.append(Problem(where=where, what="listed pins need their places, and others have none.", remedy=""))
        ends = list(chain.from_iterable(spacing.places))
        if any(before >= after for before, after in pairwise(ends)):
            found.append(
                Problem(where=where, what="its listed pins are not in order.", remedy="Each starts after the last.")
            )
    return found


def _unlike(copy: Sled, kept: Mapping[str, Sled]) -> Problem:
    where = f"sled {copy.name!r}"
    if copy.name not in kept:
        return Problem(where=where, what="is not among those that the store keeps.", remedy="")
    differing = [
        field.name for field in fields(Sled) if getattr(copy, field.name) != getattr(kept[copy.name], field.name)
    ]
    return Problem(
        where=where,
        what=f"is not like the sled of this name that the store keeps: {', '.join(differing)}.",
        remedy="Measure the store's sled anew, or give this one another name.",
    )


def _spacings(rings: Iterator[Ring]) -> Iterator[tuple[str, Spacing]]:
    for ring in rings:
        yield ring.mark, ring.spacing
        yield from ((corner.mark, corner.spacing) for corner in ring.corners if corner.spacing is not None)
