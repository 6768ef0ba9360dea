"""What closes a case and what it stands on: doors, back, base and separate top."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from planner.intake.interview.asking import Asking
from planner.intake.interview.beginning import NONE, Stock
from planner.intake.interview.question import Kind, Script
from planner.intake.interview.sums import down, either, near
from planner.intake.sharing import Table
from planner.intake.usual import usual_length
from planner.lengths import Nm, write_length

FRAMED, _BOARDS, _PANEL = "frame and panel", "boards", "panel"
_STAND, _FEET = "stand", "bracket feet"


def doors(asking: Asking, stock: Stock, least: Nm) -> Script[Table]:
    """Ask how all doors are made, of which the smallest is about so wide or high."""

    def each() -> Script[Table]:
        made = yield from asking.choice("door_made", FRAMED)
        stands = yield from asking.choice("door_stands", "inset")
        thickness = yield from asking.length("door", stock.thickness)
        framed = (
            (yield from framing(asking.inside("doors", "doors"), stock, thickness, least)) if made == FRAMED else {}
        )
        return {"made": made, "stands": stands, "thickness": write_length(thickness, asking.unit), **framed}

    return (yield from asking.as_listed("doors_as_listed", each))


def framing(asking: Asking, stock: Stock, thickness: Nm, least: Nm) -> Script[Table]:
    """Ask for the stiles, rails and panels of a frame of this thickness, of which the smaller side is about so long."""
    unit = asking.unit
    narrowest = either(unit, "1 in", "25 mm")
    stile = yield from asking.length(
        "stile", min(either(unit, "2 1/4 in", "55 mm"), max(narrowest, down(least // 4, unit)))
    )
    material = yield from asking.choice("panel_material", stock.timber, stock.everything)
    third = down(thickness // 3, unit)
    panel = yield from asking.length("panel", max(third, min(either(unit, "1/4 in", "6 mm"), Nm(thickness // 2))))
    width = write_length(stile, unit)
    return {"stile": width, "rail": width, "panel": {"material": material, "thickness": write_length(panel, unit)}}


@dataclass(frozen=True, slots=True, kw_only=True)
class Outside:
    """Sizes of a case over its outside."""

    width: Nm
    height: Nm
    depth: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Around:
    """What was said of a case's back, base and top.

    Attributes:
        tables: the tables of the carcase that say how they are.
        is_dovetailed: whether it stands on a ring that is cut on the sled.
        base_height: how high its base is; 0 without one.
    """

    tables: Table
    is_dovetailed: bool
    base_height: Nm


def around(asking: Asking, stock: Stock, outside: Outside) -> Script[Around]:
    """Ask for back, base and separate top of a case."""
    back = yield from asking.choice("back", _PANEL if stock.sheet else _BOARDS)
    base = yield from asking.choice("base", NONE)
    top = yield from asking.yes("top", usual=False)
    parts = _Parts(asking=asking, stock=stock, outside=outside)

    def each() -> Script[tuple[Table, Nm]]:
        tables: Table = {}
        height = Nm(0)
        if back != NONE:
            tables["back"] = yield from parts.back(back)
        if base != NONE:
            height = yield from parts.base_height(base)
            tables["base"] = {"kind": base, **(yield from parts.base(base, height))}
        if top:
            tables["top"] = yield from parts.top()
        return tables, height

    tables: Table = {}
    height = Nm(0)
    if top or {back, base} != {NONE}:
        tables, height = yield from asking.as_listed("around_as_listed", each)
    return Around(tables=tables, is_dovetailed=base not in {NONE, _STAND}, base_height=height)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Parts:
    """Back, base and top of a case."""

    asking: Asking
    stock: Stock
    outside: Outside

    def _written(self, length: Nm) -> str:
        return write_length(length, self.asking.unit)

    def back(self, made: str) -> Script[Table]:
        asking, stock = self.asking, self.stock
        is_panel = made == _PANEL
        words = stock.everything if is_panel else stock.solid
        usual = (stock.sheet or stock.second) if is_panel else stock.second
        material = yield from asking.choice("back_material", usual, words)
        thin = is_panel and material == stock.sheet
        thickness = yield from asking.length(
            "back_thickness", either(asking.unit, "1/4 in", "6 mm") if thin else either(asking.unit, "1/2 in", "12 mm")
        )
        table = {"made": made, "material": material, "thickness": self._written(thickness)}
        if made != FRAMED:
            return table
        shorter = min(self.outside.width, self.outside.height)
        framed = yield from framing(asking.inside("back", "back"), stock, thickness, shorter)
        wide = max(1, round(self.outside.width / either(asking.unit, "18 in", "450 mm")))
        return table | framed | {"wide": wide}

    def base_height(self, kind: str) -> Script[Nm]:
        usual = (
            either(self.asking.unit, "14 in", "350 mm") if kind == _STAND else either(self.asking.unit, "3 in", "80 mm")
        )
        return (yield from self.asking.length("base_height", usual))

    def base(self, kind: str, height: Nm) -> Script[Table]:
        asking, unit = self.asking, self.asking.unit
        usual = {_STAND: Nm(0), _FEET: Nm(0)}.get(kind, either(unit, "1 in", "25 mm"))
        setback = yield from asking.length("setback", usual, Kind.EITHER_WAY)
        sign = "-" if setback < 0 else ""
        back = sign + self._written(Nm(abs(setback)))
        table: Table = {"height": self._written(height), "front": back, "sides": back}
        if kind == _FEET:
            longest = near(Fraction(min(self.outside.width, self.outside.depth) - 2 * setback, 4), unit, "coarse")
            foot = yield from asking.length("foot", min(usual_length("foot", unit), longest))
            return table | {"foot": self._written(foot)}
        if kind == _STAND:
            leg = yield from asking.length("leg", max(either(unit, "1 5/8 in", "40 mm"), Nm(2 * self.stock.thickness)))
            apron = yield from asking.length("apron", either(unit, "3 in", "80 mm"))
            tenon = down(leg * 2 // 5, unit)  # from two sides, they must not meet in the leg
            return table | {"leg": self._written(leg), "apron": self._written(apron), "tenon": self._written(tenon)}
        return table

    def top(self) -> Script[Table]:
        thickness = yield from self.asking.length("top_thickness", self.stock.thickness)
        over = yield from self.asking.length(
            "top_over", usual_length("top_over", self.asking.unit), Kind.LENGTH_OR_NOTHING
        )
        written = self._written(over)
        return {"thickness": self._written(thickness), "front": written, "sides": written}
