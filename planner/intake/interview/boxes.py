"""A box: its sizes, its bottom and lid, a till in it, or smaller boxes in it."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from planner.intake import values
from planner.intake.interview.around import FRAMED, framing
from planner.intake.interview.asking import Asking
from planner.intake.interview.beginning import NONE, Stock
from planner.intake.interview.question import Kind, Script
from planner.intake.interview.sums import down, either, near
from planner.intake.sharing import Table
from planner.intake.usual import usual_length
from planner.lengths import Nm, write_length

_FLAT, _SAWN = "flat", "sawn off"


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxSizes:
    """Sizes of a box, over its outside.

    Attributes:
        tables: what the file says of them.
    """

    length: Nm
    width: Nm
    height: Nm
    tables: Table


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxParts:
    """What was said of a box's parts.

    Attributes:
        tables: what the file says of them.
        is_nest: whether smaller boxes stand in it, so that the places of its grooves must be said.
    """

    tables: Table
    is_nest: bool


def box_sizes(asking: Asking, stock: Stock) -> Script[BoxSizes]:
    """Ask how large a box is."""
    unit = asking.unit
    over = yield from asking.choice("over", "outside")
    length = yield from asking.length("box_length", either(unit, "12 in", "300 mm"))
    width = yield from asking.length("box_width", near(length * 2 // 3, unit, "coarse"))
    height = yield from asking.length("box_height", near(width * 2 // 3, unit, "coarse"))
    tables = {
        "sizes": over,
        "length": write_length(length, unit),
        "width": write_length(width, unit),
        "height": write_length(height, unit),
    }
    boards = 2 * stock.thickness if over == "inside" else 0
    return BoxSizes(length=Nm(length + boards), width=Nm(width + boards), height=height, tables=tables)


def box_parts(asking: Asking, stock: Stock, sizes: BoxSizes) -> Script[BoxParts]:
    """Ask what a box has, then how that is made."""
    parts = _Parts(asking=asking, stock=stock, sizes=sizes)
    nest = yield from asking.count("nest", 1, values.GREATEST_NEST)
    count = 1 if nest > 1 else (yield from asking.count("count", 1, values.GREATEST_COUNT))
    bottom = yield from asking.choice("box_bottom", stock.sheet or stock.second, [*stock.everything, NONE])
    lid = yield from asking.choice("lid", NONE)
    till = False if nest > 1 or lid == _SAWN else (yield from asking.yes("till", usual=False))

    def each() -> Script[Table]:
        tables: Table = {}
        if nest > 1:
            gap = yield from asking.length("nest_gap", either(asking.unit, "1/8 in", "3 mm"))
            tables["nest"] = {"count": nest, "gap": write_length(gap, asking.unit)}
        if bottom != NONE:
            tables["bottom"] = yield from parts.bottom(bottom)
        if lid != NONE:
            tables["lid"] = yield from (parts.sawn() if lid == _SAWN else parts.hinged(lid))
        if till:
            tables["till"] = yield from parts.till()
        return tables

    tables = {}
    if nest > 1 or till or {bottom, lid} != {NONE}:
        tables = yield from asking.as_listed("box_as_listed", each)
    return BoxParts(tables={**({"count": count} if count > 1 else {}), **tables}, is_nest=nest > 1)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Parts:
    """The parts of a box."""

    asking: Asking
    stock: Stock
    sizes: BoxSizes

    def _written(self, length: Nm) -> str:
        return write_length(length, self.asking.unit)

    def _panel(self, material: str) -> Nm:
        """Usual thickness of a panel in a groove: half the boards', within reason; solid wood a little thicker."""
        unit = self.asking.unit
        most = either(unit, "1/4 in", "6 mm") if material == self.stock.sheet else either(unit, "1/2 in", "12 mm")
        return min(most, max(either(unit, "1/8 in", "3 mm"), down(self.stock.thickness // 2, unit)))

    def bottom(self, material: str) -> Script[Table]:
        thickness = yield from self.asking.length("box_bottom_thickness", self._panel(material))
        return {"material": material, "thickness": self._written(thickness)}

    def hinged(self, lid: str) -> Script[Table]:
        asking, stock = self.asking, self.stock
        thickness = yield from asking.length("lid_thickness", stock.thickness)
        over = yield from asking.length("lid_over", usual_length("lid_over", asking.unit), Kind.LENGTH_OR_NOTHING)
        framed: Table = {"made": "slab"}
        if lid == FRAMED:
            wide = max(1, round(self.sizes.length / either(asking.unit, "24 in", "600 mm")))
            frame = yield from framing(asking.inside("lid", "lid"), stock, thickness, self.sizes.width)
            framed = {"made": FRAMED, **frame, "wide": wide}
        written = self._written(over)
        return {
            "kind": "hinged",
            "material": stock.timber,
            "thickness": self._written(thickness),
            "front": written,
            "sides": written,
            **framed,
        }

    def sawn(self) -> Script[Table]:
        asking, stock = self.asking, self.stock
        height = yield from asking.length("lid_height", near(self.sizes.height * 3 // 10, asking.unit, "coarse"))
        material = yield from asking.choice("lid_top", stock.sheet or stock.second, stock.everything)
        thickness = yield from asking.length("lid_top_thickness", self._panel(material))
        kerf = yield from asking.length("kerf", usual_length("kerf", asking.unit))
        return {
            "kind": "sawn",
            "height": self._written(height),
            "kerf": self._written(kerf),
            "top": {"material": material, "thickness": self._written(thickness)},
        }

    def till(self) -> Script[Table]:
        asking, unit = self.asking, self.asking.unit
        material = yield from asking.choice("till_material", self.stock.second, self.stock.solid)
        thickness = yield from asking.length("till_thickness", usual_length("till", unit))
        width = yield from asking.length("till_width", near(Fraction(self.sizes.length, 6), unit, "coarse"))
        depth = yield from asking.length("till_depth", near(Fraction(self.sizes.height, 4), unit, "coarse"))
        lid = yield from asking.yes("till_lid", usual=False)
        return {
            "width": self._written(width),
            "depth": self._written(depth),
            "material": material,
            "thickness": self._written(thickness),
            **({"lid": {}} if lid else {}),
        }
