"""The finished plan: what the planner hands to the workbook, the screen and the paper.

Lengths and places are whole nanometres. Places along a joint (``u``) are on the outside face of the pin board, from
the reference edge.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from planner.domain.hardware import Hardware
from planner.domain.operation import Operation, Work
from planner.domain.project import Project
from planner.domain.sawn import SawnPart
from planner.domain.solid import BACK, RIGHT, UP, Lie, Solid
from planner.domain.space import Space
from planner.domain.tail import TailEnd, TailSetting
from planner.domain.weights import NO_WEIGHTS, Weights
from planner.domain.words import End, FeatureKind, Held, JointKind, Level, Role, Side, Surface
from planner.lengths import NO_LENGTH, Nm, Span


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardSize:
    """A board to be cut, at its finished size, joint allowance included, and where it is in the finished piece.

    Attributes:
        box: mark of the box, carcase or drawer it belongs to.
        piece: mark of the box or carcase that stands in the room, which a drawer is a part of.
        lie: the way it lies in the piece.
        place: what it fills in the piece, planed flush; at the corners of a ring both boards fill the corner, in
            housings, grooves and mortises it fills what was cut for it.
        proud_a_nm: how much longer it is cut at end A than it ends up, to be planed flush.
        proud_b_nm: the same at end B.
    """

    mark: str
    box: str
    piece: str
    role: Role
    material: str
    lie: Lie
    place: Solid
    proud_a_nm: Nm = NO_LENGTH
    proud_b_nm: Nm = NO_LENGTH

    @property
    def length_nm(self) -> Nm:
        """Along the grain, from end A to end B."""
        return Nm(self.place.size(self.lie.along) + self.proud_a_nm + self.proud_b_nm)

    @property
    def width_nm(self) -> Nm:
        """From the reference edge to the far edge."""
        return self.place.size(self.lie.across)

    @property
    def thickness_nm(self) -> Nm:
        """From the outside face to the inside face."""
        return self.place.size(self.lie.out)


@dataclass(frozen=True, slots=True, kw_only=True)
class Labels:
    """What to write on the six surfaces of a board."""

    outside: str
    inside: str
    reference_edge: str
    far_edge: str
    end_a: str
    end_b: str

    def on(self, surface: Surface) -> str:
        """Text for one surface."""
        text: str = getattr(self, surface.value)
        return text


@dataclass(frozen=True, slots=True, kw_only=True)
class Feature:
    """A cut in a board that is no corner joint: a block of wood taken away, or, of a tenon, the block that stays.

    The block covers ``x`` from end A, ``u`` from the reference edge and ``y`` from the outside face. It is cut from
    ``face``, which may be an edge or an end. A cut that reaches an end runs out there; else it is stopped.

    Attributes:
        takes: mark of the board that goes in; empty for a cut that takes none.
        held: how that board is held in it.
    """

    kind: FeatureKind
    board: str
    face: Surface
    x: Span
    u: Span
    y: Span
    takes: str
    held: Held = Held.GLUED

    @property
    def depth_nm(self) -> Nm:
        """How deep it goes in from its face."""
        low, high = self.into
        return Nm(high - low)

    @property
    def into(self) -> Span:
        """From where to where it goes, in the direction in which it is cut."""
        if self.face in {Surface.OUTSIDE, Surface.INSIDE}:
            return self.y
        return self.u if self.face in {Surface.REFERENCE_EDGE, Surface.FAR_EDGE} else self.x


@dataclass(frozen=True, slots=True, kw_only=True)
class Joint:
    """A corner joint, laid out.

    Attributes:
        width_nm: width of the pin board, along the corner.
        slope: n of 1:n.
        bit_height_nm: height of the pins: the tail board's thickness and what stands proud.
        tail_baseline_nm: length of the tails: the pin board's thickness and what stands proud, or less the lap.
        lap_nm: in a half-blind joint, the wood of the pin board that covers the tails; else 0.
        tail_from_nm: how far from the tail board's reference edge the joint begins, where the pin board is narrower.
        tail_beyond_nm: how far the tail board goes on beyond the joint, likewise.
        pins: outside-face places of pins, half-pins included, from the reference edge; in a half-blind joint, places
            where the sockets end at the lap.
        tails: outside-face places between them.
    """

    mark: str
    box: str
    kind: JointKind
    pin_board: str
    pin_end: End
    tail_board: str
    tail_end: End
    width_nm: Nm
    pin_thickness_nm: Nm
    tail_thickness_nm: Nm
    slope: Fraction
    sled: str
    bit_height_nm: Nm
    tail_baseline_nm: Nm
    pins: tuple[Span, ...]
    tails: tuple[Span, ...]
    lap_nm: Nm = NO_LENGTH
    tail_from_nm: Nm = NO_LENGTH
    tail_beyond_nm: Nm = NO_LENGTH

    @property
    def tail_width_nm(self) -> Nm:
        """Width of the tail board."""
        return Nm(self.tail_from_nm + self.width_nm + self.tail_beyond_nm)

    @property
    def socket_depth_nm(self) -> Nm:
        """How deep the sockets go into the pin board's thickness."""
        return Nm(self.pin_thickness_nm - self.lap_nm)


@dataclass(frozen=True, slots=True, kw_only=True)
class Pass:
    """One run past the bit.

    Attributes:
        socket: which socket, counted from the operator's left, from 1.
        mark_nm: place on the outside face, from the operator's left, to set at the slot's edge on the fence's side.
    """

    socket: int
    mark_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class EndCut:
    """What one pin end gets at one fence.

    Attributes:
        project: name of the project that the board belongs to; marks are unlike each other only within a project.
        reference_edge: on which side of the operator the reference edge is.
        residue_mm2: area of end grain left for the chisel once both fences are done, over all sockets.
    """

    project: str
    joint: str
    board: str
    end: End
    reference_edge: Side
    width_nm: Nm
    thickness_nm: Nm
    passes: tuple[Pass, ...]
    residue_mm2: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SledSetting:
    """One setting of a sled and all cuts made with it, board by board.

    Attributes:
        sled: its name; with the projects that use it where one name stands for sleds of different figures.
    """

    number: int
    sled: str
    slope: Fraction
    bit_nm: Nm
    bit_height_nm: Nm
    fence: Side
    cuts: tuple[EndCut, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SledTally:
    """What it takes to make all sled cuts in one order or another, once the first setting is set up.

    Attributes:
        settings: settings made one after the other; one that is come back to counts again.
        sled_changes: times that another sled is put on.
        height_changes: times that the bit height is set anew on a sled (a change of sled sets it anyway).
        fence_swaps: times that the operator walks round to the other fence.
        handlings: times that a board is taken up at a setting, set to its first mark, clamped, and put down.
        turnings: times that a board is turned end for end from one of its cuts to the next.
        passes: pushes through the bit.
        estimate_s: seconds for all of these together, at the maker's rates.
    """

    settings: int
    sled_changes: int
    height_changes: int
    fence_swaps: int
    handlings: int
    turnings: int
    passes: int
    estimate_s: int

    @property
    def changes(self) -> int:
        """Changes of all three kinds."""
        return self.sled_changes + self.height_changes + self.fence_swaps


@dataclass(frozen=True, slots=True, kw_only=True)
class SledPlan:
    """All sled cuts, in the order of the shop, and what the grouping saves.

    Attributes:
        projects: names of the projects whose cuts these are, in the order given.
        tally: what cutting in this order takes.
        joint_by_joint: what it would take to cut each joint by itself, in order of projects and boxes, even if every
            joint begins at the fence already in use.
    """

    projects: tuple[str, ...]
    settings: tuple[SledSetting, ...]
    tally: SledTally
    joint_by_joint: SledTally

    @property
    def sled_changes(self) -> int:
        """Times that another sled is put on."""
        return self.tally.sled_changes

    @property
    def height_changes(self) -> int:
        """Times that the bit height is set anew on a sled."""
        return self.tally.height_changes

    @property
    def fence_swaps(self) -> int:
        """Times that the operator walks round to the other fence."""
        return self.tally.fence_swaps

    @property
    def joint_by_joint_changes(self) -> int:
        """Changes of all three kinds when each joint is cut by itself."""
        return self.joint_by_joint.changes


@dataclass(frozen=True, slots=True, kw_only=True)
class PracticeJoint:
    """A joint of two tails on offcuts, made before the real boards: as thick, steep and high as those that follow.

    Attributes:
        joint: laid out as any other; its boards are the offcuts.
        first: passes at the fence that comes first, from the operator's left.
        second: passes at the other fence.
        tails: the tail end.
        length_nm: how long each offcut should be, to be held safely.
        stands_for: the real joints that are cut the same way.
    """

    joint: Joint
    bit_height_nm: Nm
    first_fence: Side
    first: tuple[Pass, ...]
    second: tuple[Pass, ...]
    tails: TailEnd
    length_nm: Nm
    stands_for: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningSize:
    """An undivided space of a carcase, clear of everything around it.

    Attributes:
        mark: its place in the carcase, such as ``C-2.1``.
        drawer: mark of the drawer that fills it; None when none does.
        space: what the maker said of it.
        place: the clear space, to the back; behind an inset door it begins behind the door.
        below: mark of the board that it stands on; None when nothing is there but another space.
        above: mark of the board over it, likewise.
        left: mark of the upright at its left.
        right: mark of the upright at its right.
    """

    mark: str
    carcase: str
    drawer: str | None
    space: Space
    place: Solid
    below: str | None
    above: str | None
    left: str
    right: str

    @property
    def width_nm(self) -> Nm:
        """Clear width."""
        return self.place.size(RIGHT)

    @property
    def height_nm(self) -> Nm:
        """Clear height."""
        return self.place.size(UP)

    @property
    def depth_nm(self) -> Nm:
        """Clear depth, from its front to the back."""
        return self.place.size(BACK)


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """Something the maker should know before cutting.

    Attributes:
        code: stable name of the rule that found it.
        marks: boards, ends or joints concerned.
        text: what was found, with its figures in the project's unit.
        remedy: what to do about it.
        source: where the rule or its number stands; empty for one that follows from the geometry alone.
        acknowledged: why the maker goes on all the same; empty while the finding is open.
    """

    code: str
    level: Level
    marks: tuple[str, ...]
    text: str
    remedy: str
    source: str = ""
    acknowledged: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """Everything derived from one project; the same project always gives the same plan."""

    project: Project
    boards: tuple[BoardSize, ...]
    labels: dict[str, Labels]
    joints: tuple[Joint, ...]
    features: tuple[Feature, ...]
    openings: tuple[OpeningSize, ...]
    sled: SledPlan
    tails: tuple[TailSetting, ...]
    practice: tuple[PracticeJoint, ...]
    operations: tuple[Operation, ...]
    order: tuple[Work, ...]
    findings: tuple[Finding, ...]
    sawn: tuple[SawnPart, ...] = ()
    """What boards become when a closed box is sawn open."""
    hardware: tuple[Hardware, ...] = ()
    """What is to be bought besides wood."""
    weights: Weights = NO_WEIGHTS


@dataclass(frozen=True, slots=True, kw_only=True)
class SledBatch:
    """Several plans whose sled cuts are made together; ``sled`` takes the place of their own sled plans."""

    plans: tuple[Plan, ...]
    sled: SledPlan
