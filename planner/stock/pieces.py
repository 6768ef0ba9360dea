"""What is asked of the saw and what it answers: parts, boards, kerfs, wishes, and layouts as trees of cuts.

Places on a board are ``along`` it (with the grain, from one end) and ``across`` it (from one edge). Lengths are whole
nanometres. Costs are whole numbers of any one unit of money, or of anything else that is to be kept low.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from planner.domain.stock import Keep, SawWay
from planner.lengths import NO_LENGTH, Nm, Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """Equal parts to cut, with their rough sizes.

    Attributes:
        marks: the name of each of them; as many as are wanted.
        length_nm: along the grain.
        width_nm: across the grain.
        may_turn: whether it may lie across the board, as in a sheet without grain.
    """

    marks: tuple[str, ...]
    length_nm: Nm
    width_nm: Nm
    may_turn: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Zone:
    """A place on a board that no part may touch: a knot, a split, wane."""

    along: Span
    across: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Board:
    """Equal boards or sheets, on hand or on offer.

    Attributes:
        mark: the name of the kind.
        cost: of one of them; 0 for what costs nothing.
        count: how many there are; None for as many as wanted.
        defects: the same on each of them; boards with defects of their own are kinds of their own.
        end_trim_nm: lost at each end before anything is cut, the trimming cut included.
        edge_trim_nm: lost at each edge likewise.
    """

    mark: str
    length_nm: Nm
    width_nm: Nm
    cost: int
    count: int | None = None
    defects: tuple[Zone, ...] = ()
    end_trim_nm: Nm = NO_LENGTH
    edge_trim_nm: Nm = NO_LENGTH


@dataclass(frozen=True, slots=True, kw_only=True)
class Saw:
    """What a cut turns into sawdust."""

    rip_nm: Nm
    crosscut_nm: Nm

    def kerf(self, way: SawWay) -> Nm:
        """Width of a cut made this way."""
        return self.rip_nm if way is SawWay.RIP else self.crosscut_nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Wish:
    """How the maker wants to saw.

    Attributes:
        stages: rounds of cuts, 2 or 3; cuts of one round go the same way, the next round goes the other way. A last
            cut that trims a single part to size comes on top, and so do trimming the board and clearing it of defects.
        first: the way of the first round; None for whichever is better, board by board.
        keep: offcuts worth keeping, if any are.
    """

    stages: int = 2
    first: SawWay | None = None
    keep: Keep | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """Everything that is asked."""

    parts: tuple[Part, ...]
    boards: tuple[Board, ...]
    saw: Saw
    wish: Wish


class Kind(StrEnum):
    """What a piece of a board is in the end."""

    DIVIDED = "divided"
    """It is cut further."""
    PART = "part"
    OFFCUT = "offcut"
    """Worth keeping."""
    WASTE = "waste"


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """A rectangle of a board: the whole board, what a cut leaves of it, or what it ends as.

    Attributes:
        mark: the part's, of a part.
        turned: of a part, whether its length lies across the board.
        cut: of a divided piece, the way of the cuts that divide it, each of them right through it.
        stage: of a divided piece, the round of these cuts: 0 for trimming the board and clearing it of defects, then
            1 and up; one more than there are stages for trimming a part.
        pieces: of a divided piece, what it falls into, in their order, a kerf between neighbours. What is less than
            a kerf at either side goes into sawdust.
    """

    along: Span
    across: Span
    kind: Kind
    mark: str = ""
    turned: bool = False
    cut: SawWay | None = None
    stage: int = 0
    pieces: tuple[Piece, ...] = ()

    @property
    def length_nm(self) -> Nm:
        """Size along the board."""
        return Nm(self.along[1] - self.along[0])

    @property
    def width_nm(self) -> Nm:
        """Size across the board."""
        return Nm(self.across[1] - self.across[0])

    def within(self) -> Iterator[Piece]:
        """This piece and all that come of it, in the order of sawing one branch after the other."""
        yield self
        for piece in self.pieces:
            yield from piece.within()


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """How one board is cut.

    Attributes:
        board: the mark of its kind.
        number: which of that kind, from 1.
        whole: the board, as a tree of cuts.
    """

    board: str
    number: int
    whole: Piece


@dataclass(frozen=True, slots=True, kw_only=True)
class CuttingPlan:
    """Boards to take and how to cut each.

    Attributes:
        missing: marks of the parts that this stock doesn't give in this plan.
        credit: for offcuts worth keeping.
        cost: of the boards, less the credit.
        settings: different rip widths and stop lengths at the saw.
    """

    layouts: tuple[Layout, ...]
    missing: tuple[str, ...]
    credit: int
    cost: int
    settings: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """The best plan so far, and what is proven.

    Attributes:
        bound: no plan that cuts every part from this stock, in the stages wished for and with defects sawn out
            first, costs less.
        impossible: it is proven that this stock can't give every part.
        unfit: marks of the parts that fit on no board at all.
    """

    plan: CuttingPlan
    bound: int
    impossible: bool = False
    unfit: tuple[str, ...] = ()

    @property
    def proven(self) -> bool:
        """Whether every part is cut and no plan costs less."""
        return not self.plan.missing and self.plan.cost <= self.bound

    @property
    def gap(self) -> Fraction | None:
        """By how much of its cost the plan could still be beaten, at most; None while parts are missing."""
        if self.plan.missing:
            return None
        return Fraction(self.plan.cost - self.bound, self.plan.cost) if self.plan.cost else Fraction(0)
