"""What is to be bought for a piece besides its wood."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from planner.lengths import Nm


class HardwareKind(StrEnum):
    """What it is, by the name under which it is asked for."""

    HINGE = "hinge"
    LID_STAY = "lid stay"
    CATCH = "catch"
    KNOB = "knob"
    PULL = "pull"
    DOOR_KNOB = "knob or pull for a door"
    SLIDES = "pair of drawer slides"
    SHELF_PIN = "shelf pin"
    SLOT_SCREW = "roundhead screw with washer"
    """It lets solid wood move: in a slot, not driven hard home."""
    SCREW = "countersunk screw"
    WALL_SCREW = "wall screw"


@dataclass(frozen=True, slots=True, kw_only=True)
class Hardware:
    """One thing to buy.

    Attributes:
        count: how many, of slides how many pairs.
        use: what it is for.
        marks: boards, drawers, doors or carcases that it is for.
        sizes: what is fixed about its size, named.
    """

    kind: HardwareKind
    count: int
    use: str
    marks: tuple[str, ...]
    sizes: tuple[tuple[str, Nm], ...] = ()
