"""What a carcase has to bear, and how it stands in its room."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class LoadKind(StrEnum):
    """What lies on a board, by its common name, or the maker's own figure."""

    BOOKS = "books"
    CLOTHES = "clothes"
    TOOLS = "tools"
    CABINET_CLASS = "cabinet class"
    """The load of the published test for kitchen cabinets."""
    OWN = "own"


class LoadUnit(StrEnum):
    """What the maker's own figure counts: weight on each length of a board, on each area, or in each volume."""

    LB_FT = "lb/ft"
    LB_FT2 = "lb/ft2"
    LB_FT3 = "lb/ft3"
    KG_M = "kg/m"
    KG_M2 = "kg/m2"
    KG_M3 = "kg/m3"


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """A load that stays.

    Attributes:
        thousandths: of the maker's own figure, in its unit; None where it has a name.
    """

    kind: LoadKind
    thousandths: int | None = None
    unit: LoadUnit | None = None


class FixedTo(StrEnum):
    """What keeps a piece from tipping beside its own weight."""

    NOTHING = "nothing"
    WALL = "wall"


class Floor(StrEnum):
    """What a piece stands on."""

    CARPET = "carpet"
    HARD = "hard"


class Borne(StrEnum):
    """The boards of a carcase for which a load may be named."""

    SHELVES = "shelves"
    DRAWERS = "drawers"
    TOP = "top"


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """How a carcase is used.

    Attributes:
        fixed_to: whether it is fixed to the wall.
        floor: carpet lets it lean forward.
        open_at_once: how many drawers can be open at once, where something keeps the others shut; None for all.
        shelves: load on each shelf.
        drawers: load in each drawer.
        top: load on the top.
        sag: of how many parts of its span a board may sag one; None for the usual limit.
    """

    fixed_to: FixedTo = FixedTo.NOTHING
    floor: Floor = Floor.CARPET
    open_at_once: int | None = None
    shelves: Load | None = None
    drawers: Load | None = None
    top: Load | None = None
    sag: int | None = None

    def load(self, on: Borne) -> Load | None:
        """What is said of the load on one kind of board."""
        said: Load | None = getattr(self, on.value)
        return said


UNSAID = Use()
"""Nothing is said: free-standing on carpet, its drawers free, no loads."""
