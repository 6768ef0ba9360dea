"""What a ring of four boards is the frame of, as the store tells them apart."""

from __future__ import annotations

from collections.abc import Iterator
from enum import StrEnum

from planner.domain.project import Project
from planner.domain.ring import Ring
from planner.domain.words import RingKind


class BoxKind(StrEnum):
    """A ring is the frame of one of these."""

    PLAIN = "plain box"
    CARCASE = "carcase"
    DRAWER = "drawer"

    @property
    def ring_kind(self) -> RingKind:
        """The way its ring stands."""
        return RingKind.CARCASE if self is BoxKind.CARCASE else RingKind.UPRIGHT


def rings_by_kind(project: Project) -> Iterator[tuple[BoxKind, Ring]]:
    """All rings of a project in its own order, each with what it is the frame of."""
    yield from ((BoxKind.PLAIN, box.ring) for box in project.boxes)
    yield from ((BoxKind.CARCASE, carcase.ring) for carcase in project.carcases)
    yield from ((BoxKind.DRAWER, drawer.ring) for drawer in project.drawers())
