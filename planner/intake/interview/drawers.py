"""How the drawers of a case are made."""

from __future__ import annotations

from dataclasses import dataclass

from planner.intake.interview.asking import Asking
from planner.intake.interview.beginning import Stock
from planner.intake.interview.boards_inside import Boards, usual_side
from planner.intake.interview.question import Script
from planner.intake.interview.sums import down, either
from planner.intake.sharing import Table
from planner.intake.usual import usual_length
from planner.lengths import Nm, write_length

_HALF_BLIND, _APPLIED = "half-blind", "applied"
_HOLES = {"knob": 1, "pull": 2}
_ALL_ROUND, _SLID_IN = "all round", "slid in"


def drawers(asking: Asking, stock: Stock, boards: Boards, widest: Nm) -> Script[Table]:
    """Ask how drawers are made; ``widest`` is about the clear width of the widest."""
    front = yield from asking.choice("front", "through")
    parts = _Parts(asking=asking, stock=stock, boards=boards, front=front, widest=widest)
    return (yield from asking.as_listed("drawers_as_listed", parts.all_of_them))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Parts:
    """The parts of a drawer."""

    asking: Asking
    stock: Stock
    boards: Boards
    front: str
    widest: Nm

    def all_of_them(self) -> Script[Table]:
        asking, stock = self.asking, self.stock
        material = yield from asking.choice("drawer_material", stock.second, stock.solid)
        side = yield from asking.length("side", usual_side(stock.thickness, asking))
        back = yield from asking.length("drawer_back", side)
        fronts = yield from self._front(side)
        bottom = yield from self._bottom()
        handles = yield from self._handles()
        room = self.boards.slide_room
        return {
            "material": material,
            "side_thickness": self._written(side),
            "back_thickness": self._written(back),
            **fronts,
            **({} if room is None else {"side_clearance": self._written(room)}),
            "bottom": bottom,
            **handles,
        }

    def _written(self, length: Nm) -> str:
        return write_length(length, self.asking.unit)

    def _front(self, side: Nm) -> Script[Table]:
        """The front; with an applied one, the drawer's own is like its sides."""
        asking = self.asking
        material = yield from asking.choice("front_material", self.stock.timber, self.stock.solid)
        thickness = yield from asking.length("front_thickness", self.stock.thickness)
        if self.front == _APPLIED:
            own = {"material": material, "thickness": self._written(thickness)}
            return {"front_thickness": self._written(side), "applied_front": own}
        table: Table = {"front_material": material, "front_thickness": self._written(thickness)}
        if self.front == _HALF_BLIND:
            usual = min(usual_length("lap", asking.unit), down(thickness // 3, asking.unit))
            lap = yield from asking.length("lap", usual)
            table |= {"front_joint": _HALF_BLIND, "lap": self._written(lap)}
        return table

    def _bottom(self) -> Script[Table]:
        asking, stock = self.asking, self.stock
        material = yield from asking.choice("drawer_bottom", stock.sheet or stock.second, stock.everything)
        is_sheet = material == stock.sheet
        usual = either(asking.unit, "1/4 in", "6 mm") if is_sheet else either(asking.unit, "3/8 in", "9 mm")
        thickness = yield from asking.length("drawer_bottom_thickness", usual)
        goes = yield from asking.choice("goes", _ALL_ROUND if is_sheet else _SLID_IN)
        return {"material": material, "thickness": self._written(thickness), "goes": goes}

    def _handles(self) -> Script[Table]:
        kind = yield from self.asking.choice("handles", "none")
        if kind not in _HOLES:
            return {}
        pair = self.widest > either(self.asking.unit, "20 in", "500 mm")
        count = yield from self.asking.count("handle_count", 2 if pair else 1, 2)
        return {"handles": {"count": count, "holes": _HOLES[kind]}}
