"""A plain box: a ring that stands by itself, with or without a bottom, a lid, a till."""

from __future__ import annotations

from dataclasses import dataclass

from planner.domain.bottom import BottomPanel
from planner.domain.panelled import Made
from planner.domain.ring import Ring, Stuff
from planner.domain.words import SizesOver
from planner.lengths import Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class HingedLid:
    """A lid that lies on the box.

    Attributes:
        made: how it is made.
        front_nm: how far it stands over the front.
        sides_nm: how far it stands over each side.
        back_nm: how far it stands over the back.
    """

    made: Made
    front_nm: Nm
    sides_nm: Nm
    back_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class SawnLid:
    """A lid sawn off the closed box, through a pin at every corner.

    The box's height is that of the closed box before it is sawn. Above and below the saw line the pins are laid out
    as for two boxes, so that lid and box each keep a half-pin at the cut.

    Attributes:
        top: the panel that closes the box, in a groove near the far edges; its place counts from the far edge.
        height_nm: height of the lid.
        kerf_nm: what the saw takes, and what planing the sawn edges takes.
    """

    top: BottomPanel
    height_nm: Nm
    kerf_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Till:
    """A small tray at the left end of a chest: an upright board and a bottom, housed in the chest's front and back.

    Attributes:
        stuff: material and thickness of both.
        width_nm: clear width.
        depth_nm: clear depth, from the till's bottom to the chest's top edge.
        housing_depth_nm: depth of the housings in front and back.
        lid: a flat board on pivots; None leaves the till open.
    """

    stuff: Stuff
    width_nm: Nm
    depth_nm: Nm
    housing_depth_nm: Nm
    lid: Stuff | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """A plain box.

    Attributes:
        title: what the maker calls it.
        batch: mark of the batch it was made in (boxes of a batch are alike), or its own mark.
        length_nm: size along the front, over the outside or the inside as ``sizes_over`` says.
        width_nm: size from front to back, likewise.
        height_nm: height of the four boards.
        lid: what closes it.
        till: a tray in it.
    """

    title: str
    batch: str
    ring: Ring
    length_nm: Nm
    width_nm: Nm
    height_nm: Nm
    sizes_over: SizesOver
    bottom: BottomPanel | None
    lid: HingedLid | SawnLid | None = None
    till: Till | None = None
