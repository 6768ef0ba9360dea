"""What a piece and its parts weigh, and where they balance."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from planner.lengths import Nm


class Part(StrEnum):
    """What a weight is that of."""

    BOARD = "board"
    DRAWER = "drawer"
    DOOR = "door"
    REST = "rest of the piece"
    """All of a piece but its drawers and doors."""
    PIECE = "piece"


@dataclass(frozen=True, slots=True, kw_only=True)
class Weight:
    """The weight of a board, a drawer, a door or a piece.

    Attributes:
        mark: of the board, drawer, door, box or carcase.
        part: which of these it is.
        piece: mark of the box or carcase that it is a part of.
        kg: weight, empty.
        centre: where it balances in the piece: right, back and up from its outside front lower left corner.
        filled_kg: weight with its drawers filled; that of the empty part where it has none.
    """

    mark: str
    part: Part
    piece: str
    kg: float
    centre: tuple[Nm, Nm, Nm]
    filled_kg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Weights:
    """All weights that are known. Hardware is not in them.

    Attributes:
        of: board by board, then drawers, doors, and pieces.
        unknown: materials of which no timber is named, so that nothing made of them has a weight.
    """

    of: tuple[Weight, ...] = ()
    unknown: tuple[str, ...] = ()

    def find(self, mark: str, part: Part) -> Weight | None:
        """The weight of one part; None when it is not known."""
        return next((each for each in self.of if (each.mark, each.part) == (mark, part)), None)


NO_WEIGHTS = Weights()
"""Nothing is known."""
