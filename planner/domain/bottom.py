"""A bottom held in grooves: shut in by all four boards, or slid in from the back under a raised back board."""

from __future__ import annotations

from dataclasses import dataclass

from planner.domain.ring import Stuff
from planner.domain.words import BottomGoes
from planner.lengths import Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Slips:
    """Grooved strips glued to the inside of a drawer's sides, where the sides are too thin for a groove.

    Attributes:
        stuff: material, and how far a slip stands in from the side.
        height_nm: height of a slip, from the drawer's bottom edge.
    """

    stuff: Stuff
    height_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class BottomPanel:
    """A bottom held in a groove on the inside of an upright ring.

    Attributes:
        stuff: material and thickness; the groove is as wide as the bottom is thick.
        groove_depth_nm: how deep the groove is.
        up_nm: height of the groove's lower side above the reference edge; None puts it just clear of the
            half-pin, so that on the pin boards it runs out through the lowest socket.
        play_nm: how much smaller the bottom is than the space between opposite groove bottoms.
        goes: shut in a groove on all four sides; or slid in from behind, under a back that is raised to the top of the
            groove, and held there by a screw in a slot.
        slips: grooved strips on the sides, which then have no groove themselves.
        screw_slot_nm: width of the slots in the back edge of a bottom that slides in, for the screws that hold it.
    """

    stuff: Stuff
    groove_depth_nm: Nm
    up_nm: Nm | None
    play_nm: Nm
    goes: BottomGoes = BottomGoes.ALL_ROUND
    slips: Slips | None = None
    screw_slot_nm: Nm | None = None
