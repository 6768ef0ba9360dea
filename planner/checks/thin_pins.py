"""Pins that come to next to nothing on the outside face.

The narrowest edge of a pin in fine handwork is scarcely over 1/16 in (Griffith, *Essentials of Woodworking*, 1908, sec.
100); a thinner one breaks off at the first knock.
"""

from __future__ import annotations

from collections.abc import Iterator

from planner.checks.facts import Facts
from planner.derive.offers import LEAST_PIN_NM
from planner.domain.plan import Finding
from planner.domain.words import Level


def thin_pins(facts: Facts) -> Iterator[Finding]:
    """One caution for all joints whose narrowest pin is of the same width."""
    narrowest: dict[int, list[str]] = {}
    for joint in facts.joints.values():
        width = min(stop - start for start, stop in joint.pins)
        if width < LEAST_PIN_NM:
            narrowest.setdefault(width, []).append(joint.mark)
    for width, joints in narrowest.items():
        yield Finding(
            code="thin-pins",
            level=Level.CAUTION,
            marks=tuple(joints),
            text=f"The narrowest pin is {facts.show(width)} on the outside face; it breaks off easily.",
            remedy=f"Make half-pins and pins at least {facts.show(LEAST_PIN_NM)} wide.",
        )
