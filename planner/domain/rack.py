"""Wood that can be had: boards and sheets on the maker's rack, and what yards offer. It belongs to no one project."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from planner.errors import Problem
from planner.lengths import Nm, Span

LOT_MARK = re.compile(r"[A-Z][A-Z0-9-]{0,19}")
"""What is written on the end of a board, or beside an offer: R1, OAK-12."""

HUNDREDTHS = 100


class Per(StrEnum):
    """What a price is for."""

    PIECE = "piece"
    BOARD_FOOT = "board foot"
    CUBIC_METRE = "m3"
    SQUARE_METRE = "m2"
    SQUARE_FOOT = "ft2"


class Surfaced(StrEnum):
    """Whether wood has still to be planed."""

    ROUGH = "rough"
    DRESSED = "dressed"
    """Planed, or a sheet: it is used as thick as it is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Price:
    """Whole cents, or hundredths of whatever the money is called.

    Attributes:
        currency: the word for the money; may be empty.
    """

    cents: int
    per: Per
    currency: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Flaw:
    """A place that no part may touch, from one end of the board and from one edge: a knot, a split, wane."""

    along: Span
    across: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Lot:
    """Boards or sheets that are alike.

    Attributes:
        mark: its name, unlike any other.
        yard: who offers it; None for what is on the rack.
        material: name of the timber or sheet, as a project calls it or as its species is listed.
        shortest_nm: length; an offer may run from this …
        longest_nm: … to this.
        narrowest_nm: width; an offer may run from this …
        widest_nm: … to this.
        thickness_nm: as it lies there.
        counted_nm: thickness by which it is paid for, where that is another: 1 in for dressed 3/4.
        count: how many there are; None for an offer without limit.
        price: None for wood on the rack that costs nothing.
        least_hundredths: the least that the yard sells of it, in hundredths of what the price is for.
        flaws: the same on each board.
        remark: anything.
    """

    mark: str
    yard: str | None
    material: str
    shortest_nm: Nm
    longest_nm: Nm
    narrowest_nm: Nm
    widest_nm: Nm
    thickness_nm: Nm
    surfaced: Surfaced
    counted_nm: Nm | None = None
    count: int | None = None
    price: Price | None = None
    least_hundredths: int | None = None
    flaws: tuple[Flaw, ...] = ()
    remark: str = ""

    @property
    def on_hand(self) -> bool:
        """Whether it lies on the maker's rack."""
        return self.yard is None

    @property
    def random(self) -> bool:
        """Whether its boards differ in length or width."""
        return self.shortest_nm < self.longest_nm or self.narrowest_nm < self.widest_nm


def lot_problems(lot: Lot) -> Iterator[Problem]:
    """What is wrong with a lot as a whole; the column is the last word of where."""
    for column, wrong, what, remedy in (*_of_place(lot), *_of_sizes(lot)):
        if wrong:
            yield Problem(where=f"{lot.mark}, {column}", what=what, remedy=remedy)


_Rule = tuple[str, bool, str, str]
"""Column, whether it is broken, what is wrong then, what would be right."""


def _of_place(lot: Lot) -> tuple[_Rule, ...]:
    hand, uncounted, least = lot.on_hand, lot.count is None, lot.least_hundredths is not None
    return (
        (
            "mark",
            not LOT_MARK.fullmatch(lot.mark),
            "is no mark.",
            "A capital, then up to 19 capitals, digits, hyphens.",
        ),
        ("length", hand and lot.random, "runs over a range.", "A board on the rack has one length and one width."),
        ("count", hand and uncounted, "is missing.", "Say how many there are on the rack."),
        ("least", hand and least, "goes with a yard only.", "Leave it out for what is on the rack."),
        ("price", not hand and lot.price is None, "is missing.", "Say what the yard asks for it."),
    )


def _of_sizes(lot: Lot) -> tuple[_Rule, ...]:
    one_size = "goes with boards of one size only."
    turned = "runs from the larger to the smaller."
    outside = any(each.along[1] > lot.shortest_nm or each.across[1] > lot.narrowest_nm for each in lot.flaws)
    limited = not lot.on_hand and lot.random and lot.count is not None
    return (
        ("length", lot.shortest_nm > lot.longest_nm, turned, "Write the smaller one first."),
        ("width", lot.narrowest_nm > lot.widest_nm, turned, "Write the smaller one first."),
        ("count", limited, one_size, "List the boards one by one, or leave it out."),
        ("defects", bool(lot.flaws) and lot.random, one_size, "Leave them out, or give one length and width."),
        ("defects", outside, "lie outside the board.", "Measure them from one end and one edge."),
    )
