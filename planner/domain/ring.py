"""A ring of four boards and the corner joints that hold it together.

Walking round a ring from outside, each board's end B meets the next board's end A; outside faces point out; all
four reference edges lie in one plane. Every box, carcase and drawer is such a ring.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from planner.domain.marks import board_mark, joint_mark
from planner.domain.spacing import Spacing
from planner.domain.words import Carries, End, JointKind, PinPair, RingKind, Role
from planner.lengths import Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Stuff:
    """What a board is cut from: a material, planed to a thickness."""

    material: str
    thickness_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Board:
    """A board of a ring, as the maker wants it; its length and width follow from the ring's sizes."""

    mark: str
    role: Role
    stuff: Stuff


@dataclass(frozen=True, slots=True, kw_only=True)
class Corner:
    """A corner joint: end B of one board meets end A of the next.

    Attributes:
        mark: ``D3-J1``.
        board_at_b: mark of the board whose end B is in this corner.
        board_at_a: mark of the board whose end A is in this corner.
        pins_on: which of the two ends carries the pins; the other carries the tails.
        kind: how the corner is joined; in a rabbet, the board with the "pins" has the plain end.
        lap_nm: in a half-blind joint, the wood of the pin board that covers the ends of the tails; in a rabbet, the
            wood of the rabbeted board that covers the plain end.
        spacing: its own spacing of pins; None takes the ring's.
    """

    mark: str
    board_at_b: str
    board_at_a: str
    pins_on: End
    kind: JointKind = JointKind.THROUGH_DOVETAIL
    lap_nm: Nm | None = None
    spacing: Spacing | None = None

    @property
    def pin_board(self) -> str:
        """Mark of the board that carries the pins here."""
        return self.board_at_b if self.pins_on is End.B else self.board_at_a

    @property
    def pin_end(self) -> End:
        """End of the pin board that is in this corner."""
        return self.pins_on

    @property
    def tail_board(self) -> str:
        """Mark of the board that carries the tails here."""
        return self.board_at_a if self.pins_on is End.B else self.board_at_b

    @property
    def tail_end(self) -> End:
        """End of the tail board that is in this corner."""
        return End.A if self.pins_on is End.B else End.B

    def carries(self, board: str) -> Carries:
        """What ``board`` carries in this corner."""
        if self.kind is JointKind.RABBET:
            return Carries.PLAIN_END if board == self.pin_board else Carries.END_RABBET
        return Carries.PINS if board == self.pin_board else Carries.TAILS

    def mate(self, board: str) -> str:
        """The board that meets ``board`` in this corner."""
        return self.board_at_a if board == self.board_at_b else self.board_at_b


@dataclass(frozen=True, slots=True, kw_only=True)
class Ring:
    """Four boards in ring order, and the corners between them; corner i joins board i to board i + 1."""

    mark: str
    kind: RingKind
    boards: tuple[Board, Board, Board, Board]
    corners: tuple[Corner, Corner, Corner, Corner]
    spacing: Spacing
    sled: str

    def board(self, role: Role) -> Board:
        """The board with this role."""
        return self.boards[self.kind.roles.index(role)]

    def corner_at(self, board: str, end: End) -> Corner:
        """The corner in which this end of a board of the ring is joined."""
        at = next(i for i, b in enumerate(self.boards) if b.mark == board)
        return self.corners[at if end is End.B else at - 1]

    @property
    def pin_pair(self) -> PinPair:
        """Which two boards carry the pins."""
        first_has_pins = self.corners[0].pins_on is End.B
        return PinPair.FIRST_AND_THIRD if first_has_pins else PinPair.SECOND_AND_FOURTH


def make_ring(
    mark: str,
    kind: RingKind,
    stuff: tuple[Stuff, Stuff, Stuff, Stuff],
    pin_pair: PinPair,
    spacing: Spacing,
    sled: str,
) -> Ring:
    """Ring with the usual marks, through-dovetailed: boards by role, corners J1 to J4 from the first board's end B."""
    first, second, third, fourth = (
        Board(mark=board_mark(mark, role), role=role, stuff=cut_from)
        for role, cut_from in zip(kind.roles, stuff, strict=True)
    )
    boards = (first, second, third, fourth)
    pins_lead = pin_pair is PinPair.FIRST_AND_THIRD

    def corner(index: int) -> Corner:
        on_board_at_b = pins_lead == (index % 2 == 0)
        return Corner(
            mark=joint_mark(mark, index + 1),
            board_at_b=boards[index].mark,
            board_at_a=boards[(index + 1) % 4].mark,
            pins_on=End.B if on_board_at_b else End.A,
        )

    corners = (corner(0), corner(1), corner(2), corner(3))
    return Ring(mark=mark, kind=kind, boards=boards, corners=corners, spacing=spacing, sled=sled)


def with_rabbets(ring: Ring, lap: Nm) -> Ring:
    """The same ring with its four corners rabbeted."""
    first, second, third, fourth = (replace(corner, kind=JointKind.RABBET, lap_nm=lap) for corner in ring.corners)
    return replace(ring, corners=(first, second, third, fourth))


def with_half_blind_front(ring: Ring, lap: Nm) -> Ring:
    """The same ring with the two corners at its first board half-blind: J1 and J4 of a drawer's front."""
    first, second, third, fourth = ring.corners
    kind = JointKind.HALF_BLIND
    corners = (replace(first, kind=kind, lap_nm=lap), second, third, replace(fourth, kind=kind, lap_nm=lap))
    return replace(ring, corners=corners)
