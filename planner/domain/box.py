"""A plain box: a ring that stands by itself, with or without a bottom."""

from __future__ import annotations

from dataclasses import dataclass

from planner.domain.ring import Ring, Stuff
from planner.domain.words import SizesOver
from planner.lengths import Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class BottomPanel:
    """A bottom held in a groove on the inside of all four boards of an upright ring.

    Attributes:
        stuff: material and thickness; the groove is as wide as the bottom is thick.
        groove_depth_nm: how deep the groove is.
        up_nm: height of the groove's lower side above the reference edge; None puts it just clear of the
            half-pin, so that on the pin boards it runs out through the lowest socket.
        play_nm: how much smaller the bottom is than the space between opposite groove bottoms.
    """

    stuff: Stuff
    groove_depth_nm: Nm
    up_nm: Nm | None
    play_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """A plain box.

    Attributes:
        title: what the maker calls it.
        batch: mark of the batch it was made in (boxes of a batch are alike), or its own mark.
        length_nm: size along the front, over the outside or the inside as ``sizes_over`` says.
        width_nm: size from front to back, likewise.
        height_nm: height of the four boards.
    """

    title: str
    batch: str
    ring: Ring
    length_nm: Nm
    width_nm: Nm
    height_nm: Nm
    sizes_over: SizesOver
    bottom: BottomPanel | None
