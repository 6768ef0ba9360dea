"""What a piece is put together from, before any cut is laid out: boards in their places, and what lies in what.

Every rule of construction yields these three things. Where a cut goes follows from the places (``cuts``): a board
that is let into another takes away what both fill. So no rule says a length and a cut apart, and they can't disagree.
"""

from __future__ import annotations

from dataclasses import dataclass

from planner.domain.plan import BoardSize
from planner.domain.ring import Stuff
from planner.domain.solid import Lie, Solid
from planner.domain.words import FeatureKind, Held, Role
from planner.lengths import Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class LetIn:
    """A board that lies in a cut of another.

    Attributes:
        guest: mark of the board that goes in.
        host: mark of the board that is cut.
        room: what is cleared for the guest; its play lies within. The cut is what of this the host fills.
        kind: what the cut is called.
        held: how the guest is held there.
    """

    guest: str
    host: str
    room: Solid
    kind: FeatureKind
    held: Held = Held.GLUED


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape:
    """A cut for the board's own sake: a tenon, a notch, a hole, a groove that several boards share.

    Attributes:
        board: mark of the board.
        block: the wood that is taken away; of a tenon, the wood that stays.
        takes: mark of a board that goes in; empty when none does.
    """

    board: str
    block: Solid
    kind: FeatureKind
    takes: str = ""
    held: Held = Held.GLUED


Item = BoardSize | LetIn | Shape


@dataclass(frozen=True, slots=True)
class Maker:
    """Makes the boards that belong to one box, carcase or drawer of one piece."""

    box: str
    piece: str

    def board(self, mark: str, role: Role, stuff: Stuff, lie: Lie, place: Solid, *, proud: int = 0) -> BoardSize:
        """A board; ``proud`` stands out at both its ends."""
        return BoardSize(
            mark=mark,
            box=self.box,
            piece=self.piece,
            role=role,
            material=stuff.material,
            lie=lie,
            place=place,
            proud_a_nm=Nm(proud),
            proud_b_nm=Nm(proud),
        )
