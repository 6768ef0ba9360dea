"""The inside of a case as the columns and tiers of a project file."""

from __future__ import annotations

from decimal import Decimal

from planner.intake.interview.inside import DRAWER, EQUAL, LOOSE, NO_DOORS, SIDE_BY_SIDE, Column, Inside, Tier
from planner.intake.sharing import Table
from planner.lengths import Nm, Unit, write_length

_LEAVES: dict[str, Table] = {
    "left": {"leaves": 1, "hinged": "left"},
    "right": {"leaves": 1, "hinged": "right"},
    "pair": {"leaves": 2},
}
_HOLDS = {DRAWER: "drawer", LOOSE: "shelves"}


class InsideTables:
    """Writes the columns of a case.

    Attributes:
        between: what lies between tiers that no fixed shelves part, as the file calls it.
        made: how doors are made; each table of doors holds it.
        shelf: thickness of loose shelves.
    """

    def __init__(self, unit: Unit, between: str, made: Table, shelf: Nm | None) -> None:
        self.unit = unit
        self.between = between
        self.made = made
        self.shelf = shelf

    def case(self, inside: Inside) -> Table:
        """The keys of a carcase that say how it is divided."""
        return {**self._doors(inside.doors), "column": [self._column(column) for column in inside.columns]}

    def _column(self, column: Column) -> Table:
        table: Table = {"tier": [self._tier(tier) for tier in column.tiers]}
        if column.width is not None:
            table["width"] = write_length(column.width, self.unit)
        if len(column.tiers) > 1:
            table["divided_by"] = "shelf" if column.is_fixed else self.between
        if column.heights != EQUAL:
            table["heights"] = "graduated"
        if column.step is not None:
            table["step"] = write_length(column.step, self.unit)
        if column.ratio is not None:
            table["ratio"] = Decimal(column.ratio.numerator) / column.ratio.denominator
        return table

    def _tier(self, tier: Tier) -> Table:
        table = self._doors(tier.doors)
        if tier.height is not None:
            table["height"] = write_length(tier.height, self.unit)
        if tier.holds == SIDE_BY_SIDE:
            return table | {"column": [self._column(column) for column in tier.columns]}
        table["holds"] = _HOLDS.get(tier.holds, "nothing")
        if tier.holds == LOOSE:
            thickness = {} if self.shelf is None else {"thickness": write_length(self.shelf, self.unit)}
            table["shelves"] = {"count": tier.shelves, **thickness}
        return table

    def _doors(self, said: str) -> Table:
        return {} if said == NO_DOORS else {"doors": _LEAVES[said] | self.made}
