"""How the maker wants the pins of a joint to be spaced."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from planner.domain.words import EdgeName, Spread
from planner.lengths import Nm, Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Spacing:
    """Spacing of pins between a half-pin at each edge; widths and places are on the outside face of the pin board.

    Attributes:
        half_pin_nm: width of each half-pin.
        pin_nm: width of each whole pin; listed pins have widths of their own.
        tails: how many tails; None leaves the choice to the planner. Listed pins say it themselves.
        tail_nm: the tail width that the maker would like best.
        greatest_tail_nm: widest tail to be chosen when the count is left to the planner.
        spread: how the tails share the width.
        ratio: widest tail to narrowest, where tails are graduated; over 1.
        places: the whole pins, where they are listed, in order from ``measured_from``.
        measured_from: the edge that listed places count from, and from which tails grow. The far edge gives the mirror
            image of the reference edge.
        alike: whether tails should come as near to the wished width as they can, whatever that costs in passes; so that
            drawers of different heights look like one family.
    """

    half_pin_nm: Nm
    pin_nm: Nm
    tails: int | None
    tail_nm: Nm
    greatest_tail_nm: Nm
    spread: Spread = Spread.EVEN
    ratio: Fraction | None = None
    places: tuple[Span, ...] = ()
    measured_from: EdgeName = EdgeName.REFERENCE
    alike: bool = False
