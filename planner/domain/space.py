"""The inside of a carcase: a tree of spaces, each divided further or holding something.

A space is divided into columns, side by side from the left, or into tiers, above each other from the top. Columns and
tiers may stand in each other to any depth. What is not divided holds a drawer, loose shelves, or nothing; a door may
stand before any space, divided or not.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from planner.domain.drawer import Drawer
from planner.domain.panelled import Made
from planner.domain.ring import Stuff
from planner.domain.words import DividerKind, HeightRule, Side, Stands, Way
from planner.lengths import Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class ShelfPins:
    """Rows of blind holes in the boards beside loose shelves, for the pins that these lie on.

    Attributes:
        holes: in each row for one shelf: an odd number, the middle one where the shelf is planned.
        hole_nm: diameter.
        depth_nm: how deep they are drilled.
        apart_nm: from hole to hole of a row, middle to middle.
        front_nm: from the shelf's front edge to the middle of the holes.
        back_nm: from its back edge likewise.
    """

    holes: int
    hole_nm: Nm
    depth_nm: Nm
    apart_nm: Nm
    front_nm: Nm
    back_nm: Nm


Path = tuple[int, ...]
"""The way from the inside of a carcase to a space in it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LooseShelves:
    """Shelves that lie on pegs, equally far apart.

    Attributes:
        count: how many.
        play_nm: how much shorter a shelf is than the clear width, so that it goes in.
        setback_nm: how far it stands back from the front of its space.
        pins: rows of holes for the pins; None leaves the pegs to the bench.
    """

    count: int
    stuff: Stuff
    play_nm: Nm
    setback_nm: Nm
    pins: ShelfPins | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class DoorStops:
    """Strips that an inset door shuts against: behind its closing edge, of a pair above and below.

    Attributes:
        stuff: material, and thickness from front to back.
        width_nm: how far a strip stands into the space.
    """

    stuff: Stuff
    width_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Doors:
    """One door or a pair before a space.

    Attributes:
        leaves: 1 or 2.
        hinged: the side on which a single door hangs.
        stands: within the space, flush with its front, or over the front edges around it.
        gap_nm: space around an inset door, and between two leaves.
        overlay_nm: how far a door that stands over the edges covers them, on each side.
        made: how the door is made.
        stops: strips that it shuts against, if it stands within the space.
    """

    leaves: int
    hinged: Side
    stands: Stands
    gap_nm: Nm
    overlay_nm: Nm
    made: Made
    stops: DoorStops | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Division:
    """A space divided into columns or tiers.

    Attributes:
        way: columns from the left, or tiers from the top.
        divider: what stands between them.
        rule: how they share the size; ``EQUAL`` and ``LISTED`` take what each space says of itself.
        step_nm: for ``HeightRule.STEP``, how much greater each is than the one before.
        ratio: for ``HeightRule.RATIO``, the same as a factor (over 1 makes lower tiers taller).
        spaces: at least one.
    """

    way: Way
    divider: DividerKind
    rule: HeightRule
    step_nm: Nm | None
    ratio: Fraction | None
    spaces: tuple[Space, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Space:
    """A space of a carcase.

    Attributes:
        size_nm: clear width of a column or clear height of a tier; None takes its share of what is left.
        share: weight among the spaces without a size; 1 for equal parts.
        holds: what is in it; None for nothing.
        doors: what stands before it.
    """

    size_nm: Nm | None = None
    share: Fraction = Fraction(1)
    holds: Division | Drawer | LooseShelves | None = None
    doors: Doors | None = None

    def leaves(self) -> Iterator[Space]:
        """The undivided spaces, in the order they are written: columns from the left, tiers from the top."""
        if isinstance(self.holds, Division):
            for space in self.holds.spaces:
                yield from space.leaves()
        else:
            yield self

    def divisions(self) -> Iterator[Division]:
        """All divisions, outer before inner."""
        if isinstance(self.holds, Division):
            yield self.holds
            for space in self.holds.spaces:
                yield from space.divisions()

    def everywhere(self) -> Iterator[Space]:
        """This space and all within it, outer before inner."""
        yield from (space for _, space in self.by_path())

    def by_path(self, path: Path = ()) -> Iterator[tuple[Path, Space]]:
        """The same, each with the way to it: which space of the division, and so on inwards, from 1."""
        yield path, self
        if isinstance(self.holds, Division):
            for number, space in enumerate(self.holds.spaces, 1):
                yield from space.by_path((*path, number))
