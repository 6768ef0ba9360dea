"""An independent look at the sled: what its passes take away, as polygons in the plane of the end grain.

Written from the words on the sheet, not from the planner's formulas. The operator stands before the outside face; x is
measured from the operator's left, y from the outside face into the board. A pass at the right fence is the slot whose
right wall leans left going in; at the left fence, the mirror. Pins are drawn in the board's own frame, from the
reference edge, and only then laid before the operator by turning the board, as a person would.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import hypot
from typing import Any

from shapely import affinity
from shapely.geometry import Polygon, box
from shapely.ops import unary_union

FAR = 1_000.0


@dataclass(frozen=True)
class EndGrain:
    """A pin end: width, thickness, n of the slope 1:n, bit, outside-face pins from the reference edge; all in mm."""

    width: float
    thickness: float
    slope: float
    bit: float
    pins: Sequence[tuple[float, float]]

    def pin_polygons(self, end: str) -> list[Any]:
        """Pins as the operator sees them with this end down."""
        lean = self.thickness / self.slope
        whole = box(0, 0, self.width, self.thickness)
        drawn = [
            Polygon([(a, 0), (b, 0), (b + lean, self.thickness), (a - lean, self.thickness)]).intersection(whole)
            for a, b in self.pins
        ]
        # End A down: the reference edge comes to the right, so u grows to the left. End B: to the right.
        if end == "A":
            return [affinity.affine_transform(pin, [-1, 0, 0, 1, self.width, 0]) for pin in drawn]
        return drawn

    def taken_by(self, fence: str, mark: float) -> Any:
        """What one pass takes away, its slot edge on the fence's side set at ``mark``."""
        wide = self.bit * hypot(1.0, 1.0 / self.slope)
        away = self.thickness / self.slope
        if fence == "right":
            corners = [(mark - wide, 0), (mark, 0), (mark - away, self.thickness), (mark - wide - away, self.thickness)]
        else:
            corners = [(mark, 0), (mark + wide, 0), (mark + wide + away, self.thickness), (mark + away, self.thickness)]
        return Polygon(corners)


def what_stays(end_grain: EndGrain, end: str, passes: Iterable[tuple[str, float]]) -> tuple[float, float]:
    """Area cut out of pins, and area of waste left between them, both in mm²."""
    whole = box(0, 0, end_grain.width, end_grain.thickness)
    pins = unary_union(end_grain.pin_polygons(end))
    taken = unary_union([end_grain.taken_by(fence, mark) for fence, mark in passes])
    return taken.intersection(pins).area, whole.difference(pins).difference(taken).area
