"""The timbers and sheet goods that are shipped, by name; a maker's own come first.

The values stand in ``timbers.csv``, each with its source and the way it was obtained: read, second-hand or from memory.
Which woods are hard or soft to cut is common practice, no source.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Iterable, Mapping
from difflib import get_close_matches
from functools import cache
from importlib.resources import files

from planner.domain.project import Project
from planner.domain.timber import Timber
from planner.domain.words import Hardness, MaterialKind
from planner.errors import PlanError, Problem

_SUGGESTED = 4
_LONGEST = 80
_ALIKE = 0.75
"""Words as like each other as this count as the same, misspelt."""


class UnknownTimberError(LookupError):
    """No timber has this name.

    Attributes:
        near: names that come nearest.
    """

    def __init__(self, name: str, near: tuple[str, ...]) -> None:
        super().__init__(name)
        self.near = near


@cache
def shipped() -> Mapping[str, Timber]:
    """All timbers and sheet goods that are shipped, by name."""
    text = files("planner.wood").joinpath("timbers.csv").read_text(encoding="utf-8")
    return {row["name"]: _timber(row) for row in csv.DictReader(text.splitlines())}


def _timber(row: Mapping[str, str]) -> Timber:
    return Timber(
        name=row["name"],
        kind=MaterialKind(row["kind"]),
        tangential=float(row["tangential"]),
        radial=float(row["radial"]),
        intersection_pct=float(row["intersection_pct"]),
        shrinkage_tangential_pct=_maybe(row["shrinkage_tangential_pct"]),
        shrinkage_radial_pct=_maybe(row["shrinkage_radial_pct"]),
        specific_gravity=float(row["specific_gravity"]),
        stiffness_gpa=float(row["stiffness_gpa"]),
        strength_mpa=float(row["strength_mpa"]),
        hardness=Hardness(row["hardness"]),
        source=row["source"],
        how_movement=row["how_movement"],
        how_shrinkage=row["how_shrinkage"],
        how_strength=row["how_strength"],
    )


def _maybe(said: str) -> float | None:
    return float(said) if said else None


def timber_named(name: str, own: Iterable[Timber] = ()) -> Timber:
    """The timber of this name; its words may stand in any order, in capitals or not.

    Args:
        name: ``Cherry, black`` or ``black cherry``.
        own: the maker's, which come before shipped ones.

    Raises:
        UnknownTimberError: there is none; with the nearest names.

    >>> timber_named("black cherry").tangential
    0.00248
    """
    known = {each.name: each for each in own}
    found = full_name(name, known)
    return known.get(found) or shipped()[found]


def full_name(name: str, own: Iterable[str] = ()) -> str:
    """The name under which a timber is listed, the maker's own first.

    Raises:
        UnknownTimberError: there is none; with the nearest names.
    """
    own = tuple(own)
    for names in (own, shipped()):
        if name in names:
            return name
        found = next((each for each in names if _words(each) == _words(name)), None)
        if found is not None and _words(name):
            return found
    raise UnknownTimberError(name, nearest_timbers(name, (*own, *shipped())))


def timbers_of(project: Project) -> dict[str, Timber]:
    """The timbers of a project's materials, by the names of the materials; those that name none are left out.

    Raises:
        PlanError: a material is of a timber that nobody knows.
    """
    found: dict[str, Timber] = {}
    wrong: list[Problem] = []
    for material in project.materials:
        if material.species is None:
            continue
        try:
            found[material.name] = timber_named(material.species, project.timbers)
        except UnknownTimberError as error:
            where = f"material {material.name}"
            wrong.append(Problem(where=where, what=f"{material.species!r} is no known timber.", remedy=advice(error)))
    if wrong:
        raise PlanError(wrong)
    return found


def advice(unknown: UnknownTimberError) -> str:
    """What would be right instead of an unknown timber."""
    near = f"Did you mean {' or '.join(unknown.near)}? " if unknown.near else ""
    return f"{near}A timber that isn't listed can be described in a table of its own: [timber.NAME]."


def nearest_timbers(name: str, names: Iterable[str]) -> tuple[str, ...]:
    """Names that share most words with this one, misspelt or not; a few at most.

    >>> nearest_timbers("oak", shipped())
    ('Oak, northern red', 'Oak, white')
    """
    each_once = tuple(dict.fromkeys(names))
    asked = _words(name[:_LONGEST])
    known = {word for each in each_once for word in _words(each)}
    near = {found for word in asked for found in get_close_matches(word, sorted(known), n=_SUGGESTED, cutoff=_ALIKE)}
    shared = {each: len(near & set(_words(each))) for each in each_once}
    most_first = sorted((each for each in each_once if shared[each]), key=lambda each: -shared[each])
    return tuple(most_first[:_SUGGESTED])


def _words(name: str) -> list[str]:
    return sorted(re.findall(r"[^\W_]+", name.casefold()))
