"""What parts and carries the tiers of a case: rails, frames, shelves, partitions, and what drawers run on."""

from __future__ import annotations

from dataclasses import dataclass

from planner.intake.interview.asking import Asking
from planner.intake.interview.beginning import Stock
from planner.intake.interview.inside import DRAWER, LOOSE, NOTHING, Inside
from planner.intake.interview.question import Script
from planner.intake.interview.sums import down, either
from planner.intake.sharing import Table
from planner.intake.usual import usual_length
from planner.lengths import Nm, write_length

RAILS, FRAMES, SHELVES = "rails", "web frames", "shelves"
DIVIDED_BY = {RAILS: "rail", FRAMES: "frame", SHELVES: "shelf", NOTHING: "nothing"}
_WOOD, _HUNG, _SLIDES, _BELOW = "wood on wood", "side-hung", "slides", "what is below"


@dataclass(frozen=True, slots=True, kw_only=True)
class Boards:
    """What was said of the boards inside.

    Attributes:
        between: what parts the tiers, as the file calls it.
        tables: the tables of the carcase that say how these boards are.
        slide_room: space at each side of a drawer on bought slides; None without them.
        is_hung: whether drawers run on strips in grooves of their sides.
        shelf: thickness of loose shelves, if there are any.
    """

    between: str
    tables: Table
    slide_room: Nm | None
    is_hung: bool
    shelf: Nm | None


def boards_inside(asking: Asking, stock: Stock, inside: Inside) -> Script[Boards]:
    """Ask what parts the tiers, what drawers run on, and how thick and wide all this is."""
    between = yield from _between(asking, inside)
    run = (yield from _run(asking, between)) if inside.has_drawers else ""
    room = None
    if run == _SLIDES:
        room = yield from asking.length("slide_room", usual_length("slides_clearance", asking.unit))
    parts = _Parts(asking=asking, stock=stock, inside=inside, between=between, run=run)
    tables, shelf = yield from parts.all_of_them()
    return Boards(between=DIVIDED_BY[between], tables=tables, slide_room=room, is_hung=run == _HUNG, shelf=shelf)


def _between(asking: Asking, inside: Inside) -> Script[str]:
    parted = [column for column in inside.all_columns() if len(column.tiers) > 1 and not column.is_fixed]
    if not parted:
        return NOTHING
    only_drawers = all(tier.holds == DRAWER for column in parted for tier in column.tiers)
    stands_on_it = inside.has_columns_in_tiers  # a partition needs a board of the full depth below and above it
    words = [
        *([] if stands_on_it else [RAILS]),
        FRAMES,
        SHELVES,
        *([NOTHING] if only_drawers and not stands_on_it else []),
    ]
    return (yield from asking.choice("between", words[0], words))


def _run(asking: Asking, between: str) -> Script[str]:
    first = {RAILS: [_WOOD], NOTHING: []}.get(between, [_BELOW])
    words = [*first, _HUNG, _SLIDES]
    return (yield from asking.choice("run", words[0], words))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Parts:
    """The boards inside, kind by kind."""

    asking: Asking
    stock: Stock
    inside: Inside
    between: str
    run: str

    def all_of_them(self) -> Script[tuple[Table, Nm | None]]:
        """The tables of all boards inside, and the thickness of loose shelves."""
        wanted = self.inside.has_partitions or self.between != NOTHING or self._has_fixed or self._has_loose
        if not (wanted or self.run in {_WOOD, _HUNG}):
            return ({"runners": {"kind": _SLIDES}} if self.run == _SLIDES else {}), None
        return (yield from self.asking.as_listed("within_as_listed", self._each))

    @property
    def _has_fixed(self) -> bool:
        return self.between == SHELVES or any(column.is_fixed for column in self.inside.all_columns())

    @property
    def _has_loose(self) -> bool:
        return any(tier.holds == LOOSE for tier in self.inside.tiers())

    def _each(self) -> Script[tuple[Table, Nm | None]]:
        tables: Table = {}
        if self.inside.has_partitions:
            tables["partitions"] = {"thickness": (yield from self._thickness("partition"))}
        if self.between == RAILS:
            tables["rails"] = yield from self._rails()
        if self.between == FRAMES:
            tables["frames"] = yield from self._frames()
        if self._has_fixed:
            tables["shelves"] = yield from self._fixed_shelves()
        if self.run in {_WOOD, _HUNG, _SLIDES}:
            tables["runners"] = yield from self._runners()
        shelf = None
        if self._has_loose:
            shelf = yield from self.asking.length("loose_shelf", self.stock.thickness)
        return tables, shelf

    def _thickness(self, key: str) -> Script[str]:
        return write_length((yield from self.asking.length(key, self.stock.thickness)), self.asking.unit)

    def _rails(self) -> Script[Table]:
        thickness = yield from self._thickness("rail")
        width = yield from self.asking.length("rail_width", either(self.asking.unit, "2 1/2 in", "60 mm"))
        return {"thickness": thickness, "width": write_length(width, self.asking.unit)}

    def _frames(self) -> Script[Table]:
        material = yield from self.asking.choice("frame_material", self.stock.second, self.stock.solid)
        third = down(self.stock.thickness // 3, self.asking.unit)
        tongue = write_length(min(usual_length("web_tenon", self.asking.unit), third), self.asking.unit)
        if self.stock.sheet is not None and (yield from self.asking.yes("dust_panels", usual=False)):
            return {"material": material, "dust_panel": {"material": self.stock.sheet, "thickness": tongue}}
        return {"material": material, "tenon": tongue}

    def _fixed_shelves(self) -> Script[Table]:
        thickness = yield from self._thickness("shelf")
        usual = "stopped housing" if self.between != SHELVES else "housing"
        return {"thickness": thickness, "joint": (yield from self.asking.choice("shelf_joint", usual))}

    def _runners(self) -> Script[Table]:
        """Strips for drawers.

        Hung ones are half as thick as the sides of drawers usually are, and low enough to clear the bottom of the
        lowest drawer.
        """
        if self.run == _SLIDES:
            return {"kind": self.run}
        material = yield from self.asking.choice("runner_material", self.stock.second, self.stock.solid)
        if self.run == _WOOD:
            return {"kind": self.run, "material": material}
        thickness = down(usual_side(self.stock.thickness, self.asking) // 2, self.asking.unit)
        lowest = min(tall for _, tall in self.inside.drawers())
        high = min(usual_length("side_runner_height", self.asking.unit), down(lowest // 5, self.asking.unit))
        return {
            "kind": self.run,
            "material": material,
            "thickness": write_length(thickness, self.asking.unit),
            "width": write_length(high, self.asking.unit),
        }


def usual_side(thickness: Nm, asking: Asking) -> Nm:
    """Usual thickness of drawers' sides in a case of boards so thick: two thirds. Common practice, no source."""
    least = either(asking.unit, "3/8 in", "8 mm")
    return max(least, down(thickness * 2 // 3, asking.unit, "even"))
