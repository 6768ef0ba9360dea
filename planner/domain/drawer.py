"""A drawer: its ring, its bottom, its front, and what it runs on."""

from __future__ import annotations

from dataclasses import dataclass

from planner.domain.bottom import BottomPanel
from planner.domain.ring import Ring, Stuff
from planner.domain.words import Stands
from planner.lengths import NO_LENGTH, Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class AppliedFront:
    """A board fixed to the front of a drawer, which hides its through dovetails.

    Attributes:
        stands: within the opening, flush with the carcase, or over the front edges around it.
        gap_nm: space left all round between an inset front and the opening.
        overlay_nm: how far a front that stands over the edges covers them, on each side.
    """

    stuff: Stuff
    gap_nm: Nm
    stands: Stands = Stands.INSET
    overlay_nm: Nm = NO_LENGTH


@dataclass(frozen=True, slots=True, kw_only=True)
class Handles:
    """Holes for handles on a drawer's front, in one row half way up, even about the middle.

    Attributes:
        count: handles side by side: 1 or 2.
        holes: holes of each handle: 1 for a knob, 2 for a pull.
        apart_nm: between the two holes of a pull.
        hole_nm: diameter to drill.
    """

    count: int
    holes: int
    apart_nm: Nm
    hole_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawerStops:
    """Blocks glued to what a drawer stands on, against which its front comes to rest.

    Attributes:
        stuff: material, and how high the blocks are.
        length_nm: along the front, with their grain.
        width_nm: from front to back.
    """

    stuff: Stuff
    length_nm: Nm
    width_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawer:
    """A drawer that fills one opening, dovetailed, its front flush with the carcase.

    Attributes:
        ring: its four boards; their sizes follow from the opening.
        side_clearance_nm: space left at each side; with bought slides, what the slides need.
        top_clearance_nm: space left above.
        back_clearance_nm: space left behind.
        bottom: what it holds things on.
        applied_front: a board before the drawer's own front; None shows that front itself.
        back_lower_nm: how much lower than the sides the top edge of the back stands.
        handles: holes for handles.
        stops: blocks that it shuts against; only where it stands on wood, its front within the opening.
    """

    ring: Ring
    side_clearance_nm: Nm
    top_clearance_nm: Nm
    back_clearance_nm: Nm
    bottom: BottomPanel | None
    applied_front: AppliedFront | None = None
    back_lower_nm: Nm = NO_LENGTH
    handles: Handles | None = None
    stops: DrawerStops | None = None
