"""Sleds in use whose slope lies outside what the textbooks draw; the range is in ``derive.slope_range``."""

from __future__ import annotations

from collections.abc import Iterator

from planner.checks.facts import Facts
from planner.derive.slope_range import slope_finding
from planner.domain.plan import Finding


def slope(facts: Facts) -> Iterator[Finding]:
    """One caution for each such sled."""
    used = {joint.sled for joint in facts.joints.values()}
    for sled in facts.project.sleds:
        found = slope_finding(sled.name, sled.slope) if sled.name in used else None
        if found:
            yield found
