"""Pieces and filled drawers that are too heavy for one person to lift.

23 kg (51 lb) is the load constant of the NIOSH lifting equation, the most that its authors let one person lift in the
best posture (from memory, unverified). Furniture is no good posture.
"""

from __future__ import annotations

from collections.abc import Iterator

from planner.checks.facts import Facts
from planner.domain.plan import Finding
from planner.domain.weights import Part, Weight
from planner.domain.words import Level
from planner.quantities import show_mass

LIFTED_ALONE_KG = 23.0

_SOURCE = "load constant of the NIOSH lifting equation, from memory"


def two_people(facts: Facts) -> Iterator[Finding]:
    """A note for each piece that is too heavy, and one for all drawers that are so when filled."""
    unit = facts.project.unit
    for weight in facts.weights.of:
        if weight.part is Part.PIECE and weight.kg > LIFTED_ALONE_KG:
            filled = f", {show_mass(weight.filled_kg, unit)} with its drawers filled" if _holds(weight) else ""
            yield Finding(
                code="two-person-lift",
                level=Level.NOTE,
                marks=(weight.mark,),
                text=f"{weight.mark} will weigh about {show_mass(weight.kg, unit)}{filled}; one person lifts "
                f"{show_mass(LIFTED_ALONE_KG, unit)} at most.",
                remedy="Lift it with two or more. Take out drawers, shelves and doors before it is carried.",
                source=_SOURCE,
            )
    heavy = [each for each in facts.weights.of if each.part is Part.DRAWER and each.filled_kg > LIFTED_ALONE_KG]
    if heavy:
        yield Finding(
            code="heavy-drawer",
            level=Level.NOTE,
            marks=tuple(each.mark for each in heavy),
            text=f"Filled, the heaviest of these drawers weighs "
            f"{show_mass(max(each.filled_kg for each in heavy), unit)}; one person lifts "
            f"{show_mass(LIFTED_ALONE_KG, unit)} at most.",
            remedy="Empty them before they are lifted out, and stop them from coming out by themselves.",
            source=_SOURCE,
        )


def _holds(weight: Weight) -> bool:
    return weight.filled_kg > weight.kg
