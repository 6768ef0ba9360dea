"""Fewest bit heights that serve all pin ends."""

from __future__ import annotations

from collections.abc import Iterable

from planner.lengths import Nm


def shared_heights(needed: Iterable[Nm], tolerance: Nm) -> dict[Nm, Nm]:
    """The height to set for each height needed.

    Heights no further apart than the tolerance share one setting, and the setting is the greatest of them, so that an
    end comes out proud and never short. Beginning at the least and taking in all that the tolerance allows gives the
    fewest settings: the least height must be served by some setting, and none that serves it reaches further.
    """
    groups: list[list[Nm]] = []
    for height in sorted(set(needed)):
        if groups and height - groups[-1][0] <= tolerance:
            groups[-1].append(height)
        else:
            groups.append([height])
    return {height: group[-1] for group in groups for height in group}
