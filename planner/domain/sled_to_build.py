"""A dovetail sled that is still to be built: what the maker says, and the sizes to build it by.

Everything is named as seen from above by an operator who stands at the **near** end and looks along the slot to the
**far** end, with one exception: at the left fence the operator stands at the far end, and that fence's ``end_towards``
is named by *that* operator. Lengths are whole nanometres.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from planner.domain.plan import Finding
from planner.domain.sled import Sled
from planner.domain.words import Side
from planner.lengths import Grid, Nm


class FloorEnd(StrEnum):
    """An end of the sled's floor; the slot runs from one to the other."""

    NEAR = "near"
    FAR = "far"


# --- what the maker says -----------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True, kw_only=True)
class UprightBoard:
    """A pin board that the sled has to take, standing on the end to be cut.

    Attributes:
        mark: its name; may stand for several boards alike.
        bit_height_nm: its mate's thickness and what stands proud.
        narrowest_socket_nm: on the outside face; None while nothing is laid out.
    """

    mark: str
    width_nm: Nm
    thickness_nm: Nm
    length_nm: Nm
    bit_height_nm: Nm
    narrowest_socket_nm: Nm | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class StraightBit:
    """A straight bit as measured.

    Attributes:
        cutting_length_nm: length of its cutting edges.
        reach_nm: highest its tip can stand above the table, the shank gripped as the router's manual asks.
    """

    diameter_nm: Nm
    cutting_length_nm: Nm
    reach_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class MitreSlot:
    """The slot in the router table that guides the sled, as measured.

    Attributes:
        from_bit_nm: from the bit's centre to the slot's centre line, square to the slot.
        side: side of the bit on which it lies for the operator at the near end; which end of the table is the near one
            is the maker's choice.
    """

    width_nm: Nm
    depth_nm: Nm
    from_bit_nm: Nm
    side: Side


@dataclass(frozen=True, slots=True, kw_only=True)
class ClampRoom:
    """Room that the maker's clamps and stop blocks want.

    Attributes:
        beside_nm: along the fence, beyond the widest board on either side: a stop block clamped to the fence.
        before_nm: before the board's outside face: jaw or screw, and fingers.
        behind_nm: behind the fence: the other jaw.
    """

    beside_nm: Nm
    before_nm: Nm
    behind_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class SledWish:
    """One sled to be built: one slope, one bit, one router table.

    Attributes:
        name: the name it shall have.
        run_micro: n of the slope 1:n in millionths, as in ``domain.sled.Sled``.
        table_each_way_nm: from the bit's centre to the nearer end of the table, along the mitre slot.
        floor_thickness_nm: of the sheet at hand.
        fence_thickness_nm: of the stuff at hand; the fence is also the backing behind the board.
        grid: step to which sizes to build are rounded.
    """

    name: str
    run_micro: int
    bit: StraightBit
    mitre: MitreSlot
    table_each_way_nm: Nm
    floor_thickness_nm: Nm
    fence_thickness_nm: Nm
    clamps: ClampRoom
    grid: Grid


# --- what to build -----------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True, kw_only=True)
class SledFloor:
    """The floor: a sheet, square, alike on both sides of its middle line (the line across it, square to the slot).

    Attributes:
        middle_to_end_nm: from the middle line to each end, along the slot.
        left_nm: from the slot's centre line to the left edge.
        right_nm: from the slot's centre line to the right edge.
        middle_to_stop_nm: from the middle line to the bit's centre where the travel stops, at each end; the slot is
            half a bit longer than that at each end, and closed.
    """

    thickness_nm: Nm
    middle_to_end_nm: Nm
    left_nm: Nm
    right_nm: Nm
    middle_to_stop_nm: Nm

    @property
    def length_nm(self) -> Nm:
        """Along the feed."""
        return Nm(2 * self.middle_to_end_nm)

    @property
    def width_nm(self) -> Nm:
        """Across it."""
        return Nm(self.left_nm + self.right_nm)


@dataclass(frozen=True, slots=True, kw_only=True)
class SledFence:
    """A fence. Its face looks to the middle of the sled; the board's inside face stands against it.

    Attributes:
        side: the socket wall that it makes, hence its name.
        stands_at: the end of the floor by which it stands.
        operator_at: the end at which its operator stands, looking across the middle at the board's outside face.
        end_towards: the end of the fence, left or right *for its own operator*, that comes towards that operator.
        face_from_middle_nm: from the middle line to where its face crosses the slot's centre line.
        reach_nm: from there along the face to each end; the fence is twice as long.
    """

    side: Side
    stands_at: FloorEnd
    operator_at: FloorEnd
    end_towards: Side
    face_from_middle_nm: Nm
    reach_nm: Nm
    height_nm: Nm
    thickness_nm: Nm

    @property
    def length_nm(self) -> Nm:
        """From end to end."""
        return Nm(2 * self.reach_nm)


@dataclass(frozen=True, slots=True, kw_only=True)
class FenceAngle:
    """How far each fence stands off square to the slot.

    Attributes:
        degrees: the exact angle.
        run_nm: a handy run, square to the slot.
        rise_nm: what the face comes nearer to the operator over that run, to 1/64 in or 0.1 mm.
        error_degrees: by what the rounded rise is too steep (below zero: too flat).
        pin_error_nm: what that makes in the width of a pin on the inside of the thickest board (rounded up).
        lean_nm: sideways lean of a true test slot through the thickest board.
    """

    degrees: float
    run_nm: Nm
    rise_nm: Nm
    error_degrees: float
    pin_error_nm: Nm
    lean_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class ExitGuard:
    """The solid block behind each fence in which the bit ends its travel; one end is cut to the fence's angle.

    Attributes:
        length_nm: along the slot's centre line, from the back of the fence.
    """

    length_nm: Nm
    width_nm: Nm
    height_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class SledRunner:
    """The strip under the floor that slides in the mitre slot.

    Attributes:
        width_nm: the mitre slot's, as measured; plane it until it slides without play.
        height_nm: a little less than the mitre slot is deep, so that the floor lies on the table.
        length_nm: as long as the floor.
        centre_from_slot_nm: from the centre line of the sled's slot to the runner's.
        side: side of the sled's slot for the operator at the near end.
    """

    width_nm: Nm
    height_nm: Nm
    length_nm: Nm
    centre_from_slot_nm: Nm
    side: Side


@dataclass(frozen=True, slots=True, kw_only=True)
class SledToBuild:
    """A sled to be built, whole.

    Attributes:
        sled: its limits once built, as a project names them.
        greatest_thickness_nm: thickest pin board that it was made for.
        cutting_length_needed_nm: of the bit, through the floor and up to the greatest height asked for.
        table_each_way_needed_nm: of the table, from the bit's centre along the mitre slot.
        hands_clear_nm: keep hands at least this far from the slot.
        how_to_set: building and setting, step by step.
        keep_clear: cautions in plain words.
        findings: what the maker should think over first.
    """

    sled: Sled
    greatest_thickness_nm: Nm
    cutting_length_needed_nm: Nm
    table_each_way_needed_nm: Nm
    hands_clear_nm: Nm
    floor: SledFloor
    right_fence: SledFence
    left_fence: SledFence
    angle: FenceAngle
    guard: ExitGuard
    runner: SledRunner
    how_to_set: tuple[str, ...]
    keep_clear: tuple[str, ...]
    findings: tuple[Finding, ...]

    @property
    def fences(self) -> tuple[SledFence, SledFence]:
        """Both, the right one first."""
        return self.right_fence, self.left_fence
