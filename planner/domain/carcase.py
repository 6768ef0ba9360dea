"""A carcase: the outer ring of a cabinet, its columns, and the drawers that fill their openings."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from planner.domain.box import BottomPanel
from planner.domain.ring import Ring, Stuff
from planner.domain.words import HeightRule
from planner.lengths import Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class AppliedFront:
    """A board fixed to the front of a drawer, which hides its through dovetails; flush with the carcase.

    Attributes:
        gap_nm: space left all round between it and the opening.
    """

    stuff: Stuff
    gap_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawer:
    """A drawer that fills one opening, dovetailed, its front flush with the carcase.

    Attributes:
        ring: its four boards; their sizes follow from the opening.
        side_clearance_nm: space left at each side.
        top_clearance_nm: space left above.
        back_clearance_nm: space left behind.
        applied_front: a board before the drawer's own front; None shows that front itself.
    """

    ring: Ring
    side_clearance_nm: Nm
    top_clearance_nm: Nm
    back_clearance_nm: Nm
    bottom: BottomPanel | None
    applied_front: AppliedFront | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """One opening of a column, from the top down.

    Attributes:
        height_nm: clear height when the maker listed it; None takes what is left.
        drawer: what fills it.
    """

    height_nm: Nm | None
    drawer: Drawer


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A column of openings, left to right.

    Attributes:
        width_nm: clear width; None shares what is left equally with the other such columns.
        heights: how the openings share the height.
        step_nm: for ``HeightRule.STEP``, how much taller each is than the one above.
        ratio: for ``HeightRule.RATIO``, the same as a factor (over 1 makes lower drawers taller).
    """

    width_nm: Nm | None
    heights: HeightRule
    step_nm: Nm | None
    ratio: Fraction | None
    openings: tuple[Opening, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Rails:
    """The rails between drawers, lying flat at the front in housings cut into the sides."""

    stuff: Stuff
    width_nm: Nm
    housing_depth_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Partitions:
    """The upright boards between columns, in housings cut into top and bottom."""

    stuff: Stuff
    housing_depth_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class BackPanel:
    """A back that lies in a rabbet on the inside of all four boards, as deep from behind as it is thick.

    Attributes:
        rabbet_depth_nm: how far the rabbet goes into the boards' thickness.
        play_nm: how much smaller the back is than the space between opposite rabbets.
    """

    stuff: Stuff
    rabbet_depth_nm: Nm
    play_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Carcase:
    """A cabinet: outside sizes, outer ring, and what stands in it."""

    title: str
    ring: Ring
    width_nm: Nm
    height_nm: Nm
    depth_nm: Nm
    columns: tuple[Column, ...]
    rails: Rails | None
    partitions: Partitions | None
    back: BackPanel | None
