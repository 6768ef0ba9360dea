"""The store's own words: what a ring is the frame of, what a space holds, which of several ways a part is made."""

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
    PLINTH = "plinth"
    DRAWER = "drawer"

    @property
    def ring_kind(self) -> RingKind:
        """The way its ring stands."""
        return RingKind.CARCASE if self is BoxKind.CARCASE else RingKind.UPRIGHT


class Holds(StrEnum):
    """What is in a space."""

    DIVISION = "division"
    DRAWER = "drawer"
    LOOSE_SHELVES = "loose shelves"
    NOTHING = "nothing"


class MadeAs(StrEnum):
    """How a door, a lid or a back is made."""

    SLAB = "slab"
    PANELLED = "panelled"


class BackKind(StrEnum):
    """The backs of a carcase."""

    PANEL = "panel"
    BOARDS = "boards"
    PANELLED = "panelled"


class LidKind(StrEnum):
    """The lids of a box."""

    HINGED = "hinged"
    SAWN = "sawn"


def rings_by_kind(project: Project) -> Iterator[tuple[BoxKind, Ring]]:
    """All rings of a project in its own order, each with what it is the frame of."""
    yield from ((BoxKind.PLAIN, box.ring) for box in project.boxes)
    yield from ((BoxKind.CARCASE, carcase.ring) for carcase in project.carcases)
    yield from ((BoxKind.PLINTH, plinth.ring) for plinth in project.plinths())
    yield from ((BoxKind.DRAWER, drawer.ring) for drawer in project.drawers())
