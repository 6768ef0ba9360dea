"""What every check is given."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from planner.domain.plan import BoardSize, Feature, Joint, OpeningSize, SledPlan
from planner.domain.project import Project
from planner.domain.timber import Timber
from planner.domain.weights import Weights
from planner.lengths import show_length


@dataclass(frozen=True, slots=True)
class Facts:
    """A project and what was derived from it.

    Attributes:
        timbers: by the names of the project's materials, those of which the maker named the timber.
        weights: what is known of all weights.
    """

    project: Project
    boards: Mapping[str, BoardSize]
    joints: Mapping[str, Joint]
    features: tuple[Feature, ...]
    openings: tuple[OpeningSize, ...]
    sled: SledPlan
    timbers: Mapping[str, Timber]
    weights: Weights

    def show(self, length: int) -> str:
        """A length as the project shows settings and places, with its unit."""
        return show_length(length, self.project.grid.fine, with_unit=True)
