"""How a door, a lid or a back is made: one slab, or a frame with panels in it."""

from __future__ import annotations

from dataclasses import dataclass

from planner.domain.ring import Stuff
from planner.lengths import Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Slab:
    """One flat piece: a glued-up board or a sheet."""

    stuff: Stuff


@dataclass(frozen=True, slots=True, kw_only=True)
class Panelled:
    """A frame of stiles and rails with panels in its grooves.

    The stiles run through from end to end; the rails stand between them with tenons in the stiles' groove, made deeper
    to a mortise where ``tenon_nm`` is more than the groove.

    Attributes:
        stuff: material and thickness of the frame.
        stile_nm: width of the stiles.
        rail_nm: width of top and bottom rail, and of rails and muntins between panels.
        groove_nm: depth of the groove for the panels, all round on the inner edges.
        tenon_nm: length of the tenons, at least the groove's depth.
        panel: material and thickness of the panels, which is the width of the groove.
        play_nm: how much smaller a panel is than the room for it, in each direction.
        wide: panels side by side.
        high: panels above each other.
    """

    stuff: Stuff
    stile_nm: Nm
    rail_nm: Nm
    groove_nm: Nm
    tenon_nm: Nm
    panel: Stuff
    play_nm: Nm
    wide: int = 1
    high: int = 1


Made = Slab | Panelled


def thickness(made: Made) -> Nm:
    """Thickness of the whole."""
    return made.stuff.thickness_nm
