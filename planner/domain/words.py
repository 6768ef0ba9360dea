"""The trade's words, each once."""

from __future__ import annotations

from enum import StrEnum


class End(StrEnum):
    """An end of a board. Outside face towards you, reference edge at the bottom: A is left, B is right."""

    A = "A"
    B = "B"


class Surface(StrEnum):
    """The six surfaces of a board."""

    OUTSIDE = "outside"
    INSIDE = "inside"
    REFERENCE_EDGE = "reference_edge"
    FAR_EDGE = "far_edge"
    END_A = "end_a"
    END_B = "end_b"


class Carries(StrEnum):
    """What a board end carries in a corner joint."""

    PINS = "pins"
    TAILS = "tails"


class Side(StrEnum):
    """The operator's left or right: a fence of the sled, or where the reference edge is."""

    LEFT = "left"
    RIGHT = "right"

    @property
    def other(self) -> Side:
        """The opposite side."""
        return Side.RIGHT if self is Side.LEFT else Side.LEFT


class JointKind(StrEnum):
    """How a corner is joined."""

    THROUGH_DOVETAIL = "through dovetail"
    HALF_BLIND = "half-blind dovetail"
    """A lap of the pin board covers the ends of the tails; the sled can't cut it, so it is hand work."""


class Role(StrEnum):
    """What a board is in its box, carcase or drawer."""

    FRONT = "front"
    RIGHT = "right"
    BACK = "back"
    LEFT = "left"
    TOP = "top"
    BOTTOM = "bottom"
    BACK_PANEL = "back panel"
    BOTTOM_PANEL = "bottom panel"
    RAIL = "rail"
    PARTITION = "partition"
    APPLIED_FRONT = "applied front"


class RingKind(StrEnum):
    """The way a ring of four boards stands (the ring runs as seen from outside, end B to end A)."""

    UPRIGHT = "upright"
    """Box or drawer: front, right, back, left; the reference edge is the bottom edge."""
    CARCASE = "carcase"
    """Case of a cabinet: top, right, bottom, left seen from the front; the reference edge is the front edge."""

    @property
    def roles(self) -> tuple[Role, Role, Role, Role]:
        """Roles of the four boards in ring order."""
        return _RING_ROLES[self]


_RING_ROLES = {
    RingKind.UPRIGHT: (Role.FRONT, Role.RIGHT, Role.BACK, Role.LEFT),
    RingKind.CARCASE: (Role.TOP, Role.RIGHT, Role.BOTTOM, Role.LEFT),
}


class PinPair(StrEnum):
    """Which two facing boards of a ring carry the pins, by their place in the ring."""

    FIRST_AND_THIRD = "first and third"
    """Front and back of a box or drawer; top and bottom of a carcase."""
    SECOND_AND_FOURTH = "second and fourth"
    """The two sides."""


class SizesOver(StrEnum):
    """What the sizes of a box were measured over."""

    OUTSIDE = "outside"
    INSIDE = "inside"


class MaterialKind(StrEnum):
    """Solid timber moves across its grain; sheet goods don't."""

    SOLID = "solid"
    SHEET = "sheet"


class Hardness(StrEnum):
    """How a material cuts."""

    SOFT = "soft"
    HARD = "hard"


class HeightRule(StrEnum):
    """How the openings of a column share its height."""

    EQUAL = "equal"
    STEP = "step"
    """Each opening is taller than the one above it by a fixed step."""
    RATIO = "ratio"
    """Each opening is taller than the one above it by a fixed ratio."""
    LISTED = "listed"


class Spread(StrEnum):
    """How the tails of a joint share its width."""

    EVEN = "even"
    MIDDLE = "middle"
    """Widest in the middle."""
    EDGE = "edge"
    """Growing from one edge to the other."""
    LISTED = "listed"
    """As the maker lists the places of the pins."""


class EdgeName(StrEnum):
    """An edge of a board."""

    REFERENCE = "reference edge"
    FAR = "far edge"


class FeatureKind(StrEnum):
    """A long cut in a board that is no corner joint."""

    GROOVE = "groove"
    """Along the grain, away from the edges."""
    HOUSING = "housing"
    """Across the grain."""
    RABBET = "rabbet"
    """Along an edge."""


class Level(StrEnum):
    """How much a finding matters."""

    STOP = "stop"
    CAUTION = "caution"
    NOTE = "note"
