"""An independent picture of a sled to be built, as polygons seen from above.

Drawn from the words in ``domain.sled_to_build`` and the plain sizes, with angles from the mathematics library; nothing
here uses the planner's own trigonometry. Millimetres; x to the right and y away from someone at the near end, the
origin where the slot's centre line crosses the middle line.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import atan, cos, hypot, sin
from typing import Any

from shapely.affinity import affine_transform
from shapely.geometry import LineString, Point, Polygon, box
from shapely.ops import unary_union

from planner.domain.sled_to_build import FloorEnd, SledFence, SledToBuild, SledWish, UprightBoard
from planner.domain.words import Side

MM = 1_000_000
HAIR = 1e-6


@dataclass(frozen=True)
class Operator:
    """Where an operator looks, and what is to his right."""

    ahead: tuple[float, float]
    right: tuple[float, float]


AT = {
    FloorEnd.NEAR: Operator(ahead=(0, 1), right=(1, 0)),
    FloorEnd.FAR: Operator(ahead=(0, -1), right=(-1, 0)),
}
"""Someone at the near end looks towards +y with +x at his right; at the far end he has turned right round."""


@dataclass(frozen=True)
class Standing:
    """A frame on the floor: ``along`` to the operator's right and ``away`` from him."""

    origin: tuple[float, float]
    along: tuple[float, float]
    away: tuple[float, float]

    def place(self, along: float, away: float) -> tuple[float, float]:
        """A place in this frame, on the floor."""
        return (
            self.origin[0] + along * self.along[0] + away * self.away[0],
            self.origin[1] + along * self.along[1] + away * self.away[1],
        )

    def patch(self, along: tuple[float, float], away: tuple[float, float]) -> Any:
        """A rectangle in this frame."""
        (a, b), (c, d) = along, away
        return Polygon([self.place(a, c), self.place(b, c), self.place(b, d), self.place(a, d)])


@dataclass(frozen=True)
class Picture:
    """A sled to be built, drawn."""

    built: SledToBuild
    wish: SledWish

    @property
    def bit(self) -> float:
        """Diameter."""
        return self.wish.bit.diameter_nm / MM

    def stand(self, fence: SledFence) -> Standing:
        """The fence's frame, as the words say: origin where its face crosses the slot, one end towards its operator."""
        operator = AT[fence.operator_at]
        theta = atan(1_000_000 / self.wish.run_micro)
        # Going to the operator's right along the face, it comes nearer if the right end comes towards him.
        nearer = sin(theta) if fence.end_towards is Side.RIGHT else -sin(theta)
        along = tuple(cos(theta) * r - nearer * a for r, a in zip(operator.right, operator.ahead, strict=True))
        away = tuple(cos(theta) * a + nearer * r for r, a in zip(operator.right, operator.ahead, strict=True))
        up = 1 if fence.stands_at is FloorEnd.FAR else -1
        return Standing((0.0, up * fence.face_from_middle_nm / MM), (along[0], along[1]), (away[0], away[1]))

    def fence(self, fence: SledFence) -> Any:
        """The fence's foot."""
        reach = fence.reach_nm / MM
        return self.stand(fence).patch((-reach, reach), (0, fence.thickness_nm / MM))

    def swept(self, fence: SledFence) -> Any:
        """What the bit sweeps of the sled, from over the middle line to its stop behind this fence."""
        up = 1 if fence.stands_at is FloorEnd.FAR else -1
        stop = up * self.built.floor.middle_to_stop_nm / MM
        return LineString([(0, 0), (0, stop)]).buffer(self.bit / 2, quad_segs=90)

    def board_before_operator(self, fence: SledFence, thickness: float, mark: float) -> Standing:
        """The frame of a board lined up at a fence: origin at the left edge of its outside face.

        Its inside face is against the fence. Its mark, on the outside face from the operator's left, is at the slot's
        edge on the fence's side: the right edge for the right fence, as the operator sees the slot in the floor.
        """
        stand, operator = self.stand(fence), AT[fence.operator_at]
        edge = self.bit / 2 if fence.side is Side.RIGHT else -self.bit / 2
        at_x = edge * operator.right[0]
        start = stand.place(0, -thickness)  # somewhere on the outside face
        to_edge = (at_x - start[0]) / stand.along[0]
        left = to_edge - mark
        return Standing(stand.place(left, -thickness), stand.along, stand.away)

    def taken(self, fence: SledFence, board: tuple[float, float], mark: float) -> Any:
        """What one pass takes of a board (width, thickness), in the board's frame before the operator."""
        width, thickness = board
        frame = self.board_before_operator(fence, thickness, mark)
        wood = frame.patch((0, width), (0, thickness))
        (ox, oy), (ax, ay), (bx, by) = frame.origin, frame.along, frame.away
        back = [ax, ay, bx, by, -(ox * ax + oy * ay), -(ox * bx + oy * by)]
        return affine_transform(wood.intersection(self.swept(fence)), back)

    def unmet(self, boards: Sequence[UprightBoard]) -> set[str]:
        """Names of the requirements that the sizes don't meet; none for a sled that is right."""
        floor = self.built.floor
        sheet = box(-floor.left_nm / MM, -floor.middle_to_end_nm / MM, floor.right_nm / MM, floor.middle_to_end_nm / MM)
        parts = {
            "fences on the floor": unary_union([self.fence(f) for f in self.built.fences]),
            "clamps over the floor": unary_union([self._clamps(f, boards) for f in self.built.fences]),
            "runner under the floor": self._runner(),
            "bridge": box(
                -self.bit / 2, 0, self.bit / 2, floor.middle_to_stop_nm / MM + self.bit / 2 + self._in(1.5, 40)
            ),
        }
        found = {name for name, part in parts.items() if not sheet.buffer(HAIR, join_style="mitre").covers(part)}
        for fence in self.built.fences:
            found |= self._unmet_at(fence, boards)
        return found | self._unmet_guard(boards) | self._unmet_limits(boards)

    def _in(self, inches: float, millimetres: float) -> float:
        """The figure of a rule of the shop in the unit of the grid."""
        return millimetres if self.wish.grid.value.endswith("mm") else inches * 25.4

    def _clamps(self, fence: SledFence, boards: Sequence[UprightBoard]) -> Any:
        thickest = max(board.thickness_nm for board in boards) / MM
        clamps, reach = self.wish.clamps, fence.reach_nm / MM
        before, behind = thickest + clamps.before_nm / MM, (fence.thickness_nm + clamps.behind_nm) / MM
        return self.stand(fence).patch((-reach, reach), (-before, behind))

    def _runner(self) -> Any:
        runner = self.built.runner
        centre = runner.centre_from_slot_nm / MM * (1 if runner.side is Side.RIGHT else -1)
        half, length = runner.width_nm / MM / 2, runner.length_nm / MM / 2
        return box(centre - half, -length, centre + half, length)

    def _unmet_at(self, fence: SledFence, boards: Sequence[UprightBoard]) -> set[str]:
        (other,) = (f for f in self.built.fences if f is not fence)
        stand = self.stand(fence)
        widest, thickest, tallest = (
            max(values) / MM
            for values in zip(*((b.width_nm, b.thickness_nm, b.length_nm) for b in boards), strict=True)
        )
        reach, height = fence.reach_nm / MM, fence.height_nm / MM
        wood = stand.patch((-widest, widest), (-thickest, 0))
        stop = self.built.floor.middle_to_stop_nm / MM * (1 if fence.stands_at is FloorEnd.FAR else -1)
        foot = stand.patch((-1e4, 1e4), (-thickest, 0)).intersection(LineString([(0, -1e4), (0, 1e4)]))
        sight = foot.distance(Point(self.stand(other).origin))
        before = stand.patch((-reach, reach), (-thickest - self.wish.clamps.before_nm / MM, 0))
        wants = {
            "stop block": reach >= widest + self.wish.clamps.beside_nm / MM - HAIR,
            "hold": min(abs(stand.place(s, 0)[0]) for s in (-reach, reach)) >= self._in(10, 250) - HAIR,
            "start clear": Point(0, 0).distance(wood) >= self.bit / 2 + self._in(0.375, 10) - HAIR,
            "clamp clear of the other fence": before.buffer(-HAIR).disjoint(self.fence(other)),
            "sight": sight >= height / 2 - HAIR,
            "wholly through": Point(0, stop).distance(self.fence(fence)) >= self.bit / 2 + self._in(0.375, 10) - HAIR,
            "upright": height >= min(tallest / 3, self._in(12, 300)) - HAIR,
            "above the cut": height >= max(b.bit_height_nm for b in boards) / MM + self._in(2, 50) - HAIR,
        }
        return {name for name, met in wants.items() if not met}

    def _unmet_guard(self, boards: Sequence[UprightBoard]) -> set[str]:
        guard, fence, wall = self.built.guard, self.built.right_fence, self._in(0.75, 20)
        back = self.fence(fence).intersection(LineString([(0, 0), (0, 1e4)])).bounds[3]
        block = box(-guard.width_nm / MM / 2, back, guard.width_nm / MM / 2, back + guard.length_nm / MM)
        stop = self.built.floor.middle_to_stop_nm / MM
        bit = Point(0, stop).buffer(self.bit / 2, quad_segs=90)
        walled = box(-self.bit / 2 - wall, stop, self.bit / 2 + wall, stop + self.bit / 2 + wall)
        wants = {
            "guard round the bit": block.buffer(HAIR, join_style="mitre").covers(unary_union([bit, walled])),
            "guard high": guard.height_nm / MM >= max(b.bit_height_nm for b in boards) / MM + wall - HAIR,
        }
        return {name for name, met in wants.items() if not met}

    def _unmet_limits(self, boards: Sequence[UprightBoard]) -> set[str]:
        sled, table = self.built.sled, self.built.table_each_way_needed_nm
        wants = {
            "bit height": all(board.bit_height_nm <= sled.greatest_bit_height_nm for board in boards),
            "width": all(board.width_nm <= sled.greatest_width_nm for board in boards),
            "length": all(board.length_nm <= sled.greatest_upright_nm for board in boards),
            "table": table / MM >= self.built.floor.middle_to_stop_nm / MM + self._in(2, 50) - HAIR,
        }
        return {name for name, met in wants.items() if not met}


def parallelogram(side: Side, slope: float, bit: float, thickness: float, mark: float) -> Any:
    """DESIGN §6: a right-fence pass at mark x takes [x − k − y/n, x − y/n] at depth y; a left-fence pass mirrored."""
    k, lean = bit * hypot(1, 1 / slope), thickness / slope
    if side is Side.RIGHT:
        return Polygon([(mark - k, 0), (mark, 0), (mark - lean, thickness), (mark - k - lean, thickness)])
    return Polygon([(mark, 0), (mark + k, 0), (mark + k + lean, thickness), (mark + lean, thickness)])
