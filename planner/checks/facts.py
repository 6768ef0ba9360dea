"""What every check is given."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from planner.domain.plan import BoardSize, Feature, Joint, OpeningSize, SledPlan
from planner.domain.project import Project
from planner.lengths import show_length


@dataclass(frozen=True, slots=True, kw_only=True)
class Facts:
    """A project and what was derived from it."""

    project: Project
    boards: Mapping[str, BoardSize]
    joints: Mapping[str, Joint]
    features: tuple[Feature, ...]
    openings: tuple[OpeningSize, ...]
    sled: SledPlan

    def show(self, length: int) -> str:
        """A length as the project shows settings and places, with its unit."""
        return show_length(length, self.project.grid.fine, with_unit=True)
