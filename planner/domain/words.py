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

    @property
    def words(self) -> str:
        """As it is read aloud: ``inside face``, ``far edge``, ``end A``."""
        name, _, end = self.value.partition("_")
        return f"{name} {end.upper() if name == 'end' else end or 'face'}"


class Carries(StrEnum):
    """What a board end carries in a corner joint."""

    PINS = "pins"
    TAILS = "tails"
    PLAIN_END = "a plain end"
    END_RABBET = "a rabbet"


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
    RABBET = "rabbet"
    """The end of one board lies in a rabbet across the end of the other, glued and nailed or screwed."""


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
    SHELF = "shelf"
    LOOSE_SHELF = "loose shelf"
    RUNNER = "runner"
    KICKER = "kicker"
    SLIP = "slip"
    BACK_RAIL = "back rail"
    DUST_PANEL = "dust panel"
    BACK_BOARD = "back board"
    SEPARATE_TOP = "separate top"
    LEG = "leg"
    APRON = "apron"
    DOOR = "door"
    LID = "lid"
    STILE = "stile"
    FRAME_RAIL = "frame rail"
    MUNTIN = "muntin"
    PANEL = "panel"
    TOP_PANEL = "top panel"
    TILL_SIDE = "till side"
    TILL_BOTTOM = "till bottom"
    TILL_LID = "till lid"
    DRAWER_STOP = "drawer stop"
    DOOR_STOP = "door stop"
    HANGING_RAIL = "hanging rail"


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


class Sawn(StrEnum):
    """How boards were sawn from the log."""

    FLAT = "flat"
    """The growth rings lie along the width."""
    QUARTER = "quarter"
    """They stand across the thickness."""
    RIFT = "rift"
    """They stand at about half a right angle."""


class HeightRule(StrEnum):
    """How the openings of a column share its height."""

    EQUAL = "equal"
    STEP = "step"
    """Each opening is taller than the one above it by a fixed step."""
    RATIO = "ratio"
    """Each opening is taller than the one above it by a fixed ratio."""
    LISTED = "listed"


class Way(StrEnum):
    """How a space is divided."""

    COLUMNS = "columns"
    """Side by side, from the left."""
    TIERS = "tiers"
    """Above each other, from the top."""


class DividerKind(StrEnum):
    """What stands between two columns or lies between two tiers."""

    PARTITION = "partition"
    RAIL = "rail"
    SHELF = "shelf"
    FRAME = "frame"
    NOTHING = "nothing"


class DividerJoint(StrEnum):
    """How the ends of a full-depth divider are held."""

    HOUSING = "housing"
    STOPPED_HOUSING = "stopped housing"
    """It stops short of the front edge, and the divider is notched there."""
    THROUGH_TENONS = "through tenons"


class RunnerKind(StrEnum):
    """What a drawer runs on where no board is below it."""

    WOOD = "wood on wood"
    """Strips level with the rails."""
    SIDE_HUNG = "side-hung"
    """Strips on the uprights, in grooves of the drawer's sides."""
    SLIDES = "slides"
    """Bought slides, with clearances of their own."""


class Stands(StrEnum):
    """How a front or a door stands to the carcase."""

    INSET = "inset"
    OVERLAY = "overlay"


class DrawersCut(StrEnum):
    """When the boards of drawers and doors are cut."""

    AT_ONCE = "at once"
    """With everything else, so that each setting is made once."""
    TO_MEASURE = "to measure"
    """Once the carcase stands and their openings can be measured."""


class BottomGoes(StrEnum):
    """How a bottom goes into its ring."""

    ALL_ROUND = "all round"
    """Shut in a groove on all four sides at glue-up."""
    SLID_IN = "slid in"
    """Slid in from behind, below a raised back."""


class Held(StrEnum):
    """How a part is held in the cut that takes it."""

    GLUED = "glued"
    FREE = "free"
    """It may move."""
    GLUED_IN_FRONT = "glued in front"
    """Glued at its front end only, free or screwed in a slot behind."""


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
    MORTISE = "mortise"
    """A hole for a tenon; it may go right through."""
    TENON = "tenon"
    """What stays of a board's end."""
    NOTCH = "notch"
    """A corner or an edge cut away through the whole thickness."""
    HOLE = "hole"
    """Drilled; its diameter is its width."""
    SAW_LINE = "saw line"
    """Where a closed box is sawn open."""


class Level(StrEnum):
    """How much a finding matters."""

    STOP = "stop"
    CAUTION = "caution"
    NOTE = "note"
