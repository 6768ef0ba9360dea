"""The sled to build: a floor, one slot, two fences at opposite angles, from the boards that it shall take.

Seen from above, slot upright on the page::

        far end: the operator of the LEFT fence stands here
      +-----------------------------------------------------+
      |  ~~.._                                              |   g   guard behind the fence
      |       ~~.._   RIGHT fence ggg                       |   :   slot
      |  board     ~~.._          ggg                       |   o   the bit before each pass,
      |  its outside    ~~.._     ggg                       |       over the middle line
      |  face down here      ~~.._gg                        |
      |                           ~~.._                     |
      |                            :   ~~.._                |
      |                            :        ~~.._           |
      |- - - - - middle line - - - o - - - - - - - - - - - -|
      |                            :        __..--          |
      |                            :   __..-                |
      |                           __..-                     |
      |  face up here        __..-gg                        |
      |  its outside    __..-     ggg                       |
      |  board     __..-          ggg                       |
      |       __..-    LEFT fence ggg                       |
      |  __..-                                              |
      +-----------------------------------------------------+
        near end: the operator of the RIGHT fence stands here

The operator looks across the middle at the board's outside face; its inside face is against the fence, which backs the
cut. Drawing the sled towards the operator sends the bit away from him: in at the outside face, out through the fence,
into the guard. The right fence's right end comes towards its operator by 1 in n, so the board is turned, and seen along
the board the slot leans left going away. At the left fence it is the mirror. A fence keeps its hand whichever end it is
looked at from: turning the sled end for end never makes a right fence of a left one.

By hand, in mm: 1:8 (√65 = 8.06226, cos 0.992278, sin 0.124035), boards to 230 × 20 × 600, bit 12 standing 20.4 high,
fences 18 thick, clamps 50 beside, 60 before and behind. Reach: 230 + 50 = 280, more than (150 + 100)/cos. Height:
600/3 = 200. Face from middle: start 36/cos = 36.3; clamp before the other fence 280·sin + 80·63/(16·8.06226) = 73.80,
so 73.9; sight 50 + 10/cos = 60.1. Stop: 73.9 + (18 + 6 + 10)/cos = 108.16, so 108.2. End: clamps behind, 73.9 + 280·sin
+ 78·cos = 186.03, so 186.1, more than 108.2 + 6 + 40. Left: 280·cos + 80·sin = 287.76, so 287.8; right: 280·cos +
78·sin = 287.51, so 287.6. Guard: 108.2 − 73.9 + 6 + 20 − 18/cos = 42.16, so 42.2.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from math import atan, ceil, degrees

from planner.derive import sled_practice as practice
from planner.derive.sled_case import SledCase
from planner.derive.sled_doubts import findings, problems
from planner.derive.sled_words import how_to_set, keep_clear
from planner.domain.plan import BoardSize, Joint
from planner.domain.sled import Sled
from planner.domain.sled_to_build import (
    ExitGuard,
    FenceAngle,
    FloorEnd,
    SledFence,
    SledFloor,
    SledRunner,
    SledToBuild,
    SledWish,
    UprightBoard,
)
from planner.domain.words import Side
from planner.errors import PlanError, Problem
from planner.lengths import Nm


def boards_of(joints: Iterable[Joint], sizes: Mapping[str, BoardSize]) -> tuple[UprightBoard, ...]:
    """The pin ends of a plan as boards that the sled has to take, one for each joint.

    Args:
        joints: those that this sled shall cut.
        sizes: finished sizes by mark of the board.
    """
    return tuple(
        UprightBoard(
            mark=joint.pin_board,
            width_nm=joint.width_nm,
            thickness_nm=joint.pin_thickness_nm,
            length_nm=sizes[joint.pin_board].length_nm,
            bit_height_nm=joint.bit_height_nm,
            narrowest_socket_nm=Nm(min(b - a for a, b in joint.tails)),
        )
        for joint in joints
    )


def sled_to_build(wish: SledWish, boards: Sequence[UprightBoard]) -> SledToBuild:
    """The least sled on the wish's grid that takes all the boards.

    Raises:
        PlanError: no board, or a bit, mitre slot or table that can't serve; every reason is named with its figures.
    """
    if not boards:
        raise PlanError(
            [Problem(where=wish.name, what="No board for this sled.", remedy="Give it a joint to cut, or leave it.")]
        )
    case = SledCase.of(wish, boards)
    fence = _fence(case)
    floor = _floor(case, fence)
    guard = _guard(case, fence, floor)
    runner = _runner(case, floor)
    table_needed = Nm(floor.middle_to_stop_nm + case.rule(practice.BEARING))
    if wrong := problems(case, runner, table_needed):
        raise PlanError(wrong)
    left = _mirrored(fence)
    angle = _angle(case)
    return SledToBuild(
        sled=_limits(case, fence, guard),
        greatest_thickness_nm=case.thickness_nm,
        cutting_length_needed_nm=case.stands_nm,
        table_each_way_needed_nm=table_needed,
        hands_clear_nm=case.rule(practice.HANDS),
        floor=floor,
        right_fence=fence,
        left_fence=left,
        angle=angle,
        guard=guard,
        runner=runner,
        how_to_set=how_to_set(case, floor, (fence, left), angle),
        keep_clear=keep_clear(case, floor),
        findings=tuple(findings(case, fence)),
    )


# --- sizes -------------------------------------------------------------------------------------------------


def _fence(case: SledCase) -> SledFence:
    """The right fence.

    A socket may be near either edge, so a board reaches up to its whole width to either side of the slot, measured
    along the fence from the slot's centre line, for the pass stays within the board. It reaches also far enough to be
    held at its ends, since the operator draws the sled by the fence that is not in use.

    Its face stands far enough from the middle that the bit, over the middle, is clear of the thickest board; that a
    clamp before the board is clear of the other fence where they come closest; and that the board's foot is seen over
    the other fence.
    """
    clamps = case.wish.clamps
    reach = max(
        case.up(case.width_nm + clamps.beside_nm),
        case.up(0, case.per_cos(case.rule(practice.HANDS) + case.rule(practice.HOLD))),
    )
    upright = min(Fraction(case.length_nm, practice.UPRIGHT_PER_FENCE), Fraction(case.rule(practice.TALLEST_FENCE)))
    height = max(case.up(upright), case.up(case.bit_height_nm + case.rule(practice.ABOVE_CUT)))
    before = Fraction(case.thickness_nm + clamps.before_nm)
    face = max(
        case.up(0, case.per_cos(case.thickness_nm + case.half_bit + case.rule(practice.CLEAR))),
        case.up(0, case.sin(reach) + case.between_fences(before) / 2),
        case.up(Fraction(height, 2 * practice.SIGHT_PER_FENCE), case.per_cos(Fraction(case.thickness_nm, 2))),
    )
    return SledFence(
        side=Side.RIGHT,
        stands_at=FloorEnd.FAR,
        operator_at=FloorEnd.NEAR,
        end_towards=Side.RIGHT,
        face_from_middle_nm=face,
        reach_nm=reach,
        height_nm=height,
        thickness_nm=case.wish.fence_thickness_nm,
    )


def _mirrored(right: SledFence) -> SledFence:
    """The left fence: the right one mirrored in the middle line, its operator at the other end."""
    return SledFence(
        side=Side.LEFT,
        stands_at=FloorEnd.NEAR,
        operator_at=FloorEnd.FAR,
        end_towards=Side.LEFT,
        face_from_middle_nm=right.face_from_middle_nm,
        reach_nm=right.reach_nm,
        height_nm=right.height_nm,
        thickness_nm=right.thickness_nm,
    )


def _floor(case: SledCase, fence: SledFence) -> SledFloor:
    """The floor under fences, boards and clamps, so that nothing sticks out to knock against table or operator.

    Clamps before the boards reach furthest on the side where the fences part (the near operator's left), clamps behind
    the fences on the other. The floor also reaches over the whole runner. The bit stops when it is wholly through
    board and fence; a bridge of floor is left beyond the slot.
    """
    clamps, mitre = case.wish.clamps, case.wish.mitre
    before = case.thickness_nm + clamps.before_nm
    behind = fence.thickness_nm + clamps.behind_nm
    stop = case.up(
        fence.face_from_middle_nm,
        case.per_cos(fence.thickness_nm + case.half_bit + case.rule(practice.CLEAR)),
    )
    end = max(
        case.up(stop + case.half_bit + case.rule(practice.BRIDGE)),
        case.up(fence.face_from_middle_nm, case.sin(fence.reach_nm) + case.cos(behind)),
    )
    wide = {
        Side.LEFT: case.up(0, case.cos(fence.reach_nm) + case.sin(before)),
        Side.RIGHT: case.up(0, case.cos(fence.reach_nm) + case.sin(behind)),
    }
    wide[mitre.side] = max(wide[mitre.side], case.up(mitre.from_bit_nm + Fraction(mitre.width_nm, 2)))
    return SledFloor(
        thickness_nm=case.wish.floor_thickness_nm,
        middle_to_end_nm=end,
        left_nm=wide[Side.LEFT],
        right_nm=wide[Side.RIGHT],
        middle_to_stop_nm=stop,
    )


def _guard(case: SledCase, fence: SledFence, floor: SledFloor) -> ExitGuard:
    """A block round the bit where it stops: a wall before it, on both sides and above."""
    wall = case.rule(practice.GUARD_WALL)
    beyond_face = floor.middle_to_stop_nm - fence.face_from_middle_nm + case.half_bit + wall
    return ExitGuard(
        length_nm=case.up(beyond_face, -case.per_cos(fence.thickness_nm)),
        width_nm=case.up(case.wish.bit.diameter_nm + 2 * wall),
        height_nm=case.up(case.bit_height_nm + wall),
    )


def _runner(case: SledCase, floor: SledFloor) -> SledRunner:
    """The runner; its height is rounded down to the finest step, so that it never lifts the floor off the table."""
    mitre, step = case.wish.mitre, case.wish.grid.fine.step_nm
    return SledRunner(
        width_nm=mitre.width_nm,
        height_nm=Nm((mitre.depth_nm - case.rule(practice.RUNNER_PLAY)) // step * step),
        length_nm=floor.length_nm,
        centre_from_slot_nm=mitre.from_bit_nm,
        side=mitre.side,
    )


def _angle(case: SledCase) -> FenceAngle:
    """The fence's angle as rise over a handy run, and what rounding the rise does to it.

    A pin gains ``T/n`` on each side going in; set at rise over run it gains ``T·rise/run``. The tails are traced from
    the pins, so the joint closes all the same; but too steep a fence cuts into pins laid out for 1:n.
    """
    run, step = case.rule(practice.HANDY_RUN), case.wish.grid.fine.step_nm
    rise = Nm(round(run / case.slope / step) * step)
    set_to = Fraction(rise, run)
    true = degrees(atan(1 / case.slope))
    return FenceAngle(
        degrees=true,
        run_nm=run,
        rise_nm=rise,
        error_degrees=degrees(atan(set_to)) - true,
        pin_error_nm=Nm(ceil(2 * case.thickness_nm * abs(set_to - 1 / case.slope))),
        lean_nm=Nm(round(case.thickness_nm / case.slope)),
    )


def _limits(case: SledCase, fence: SledFence, guard: ExitGuard) -> Sled:
    """What the sled takes once built; rounding may leave a little more than was asked for, never less."""
    wish = case.wish
    return Sled(
        name=wish.name,
        run_micro=wish.run_micro,
        bit_nm=wish.bit.diameter_nm,
        greatest_bit_height_nm=Nm(
            min(
                wish.bit.cutting_length_nm - wish.floor_thickness_nm,
                wish.bit.reach_nm - wish.floor_thickness_nm,
                fence.height_nm - case.rule(practice.ABOVE_CUT),
                guard.height_nm - case.rule(practice.GUARD_WALL),
            )
        ),
        greatest_width_nm=Nm(fence.reach_nm - wish.clamps.beside_nm),
        greatest_upright_nm=Nm(max(case.length_nm, practice.UPRIGHT_PER_FENCE * fence.height_nm)),
    )
