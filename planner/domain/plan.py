"""The finished plan: what the planner hands to the workbook, the screen and the paper.

Lengths and places are whole nanometres. Places along a joint (``u``) are on the outside face of the pin board, from
the reference edge.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from planner.domain.operation import Operation, Work
from planner.domain.project import Project
from planner.domain.tail import TailEnd, TailSetting
from planner.domain.words import End, FeatureKind, JointKind, Level, Role, Side, Surface
from planner.lengths import Nm, Span

NO_LAP = Nm(0)


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardSize:
    """A board to be cut, at its finished size, joint allowance included.

    Attributes:
        box: mark of the box, carcase or drawer it belongs to.
        length_nm: along the grain, from end A to end B.
        width_nm: from the reference edge to the far edge.
    """

    mark: str
    box: str
    role: Role
    length_nm: Nm
    width_nm: Nm
    thickness_nm: Nm
    material: str


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
    """A groove, rabbet or housing on the inside face of a board (``face`` says which face on a partition).

    The cut covers ``x`` from end A and ``u`` from the reference edge, and goes ``depth_nm`` into the face. A cut that
    reaches an end runs out there; one that stops short is stopped.
    """

    kind: FeatureKind
    board: str
    face: Surface
    x: Span
    u: Span
    depth_nm: Nm
    takes: str
    """Mark of the board that goes in."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Joint:
    """A corner joint, laid out.

    Attributes:
        width_nm: width of both boards along the corner.
        slope: n of 1:n.
        bit_height_nm: height of the pins: the tail board's thickness and what stands proud.
        tail_baseline_nm: length of the tails: the pin board's thickness and what stands proud, or less the lap.
        lap_nm: in a half-blind joint, the wood of the pin board that covers the tails; else 0.
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
    lap_nm: Nm = NO_LAP

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
    """The clear space that a drawer fills."""

    carcase: str
    column: int
    tier: int
    drawer: str
    width_nm: Nm
    height_nm: Nm
    depth_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """Something the maker should know before cutting.

    Attributes:
        code: stable name of the rule that found it.
        marks: boards, ends or joints concerned.
        text: what was found, with its figures in the project's unit.
        remedy: what to do about it.
    """

    code: str
    level: Level
    marks: tuple[str, ...]
    text: str
    remedy: str


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


@dataclass(frozen=True, slots=True, kw_only=True)
class SledBatch:
    """Several plans whose sled cuts are made together; ``sled`` takes the place of their own sled plans."""

    plans: tuple[Plan, ...]
    sled: SledPlan
