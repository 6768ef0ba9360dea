"""All rows of one project, taken one by one by the values that they become part of."""

from __future__ import annotations

from operator import attrgetter
from typing import TYPE_CHECKING, TypeVar, cast

from planner.errors import Problem, StoreError
from planner.store.carcase_tables import (
    BackRow,
    CarcaseRow,
    DividersRow,
    DoorsRow,
    FramesRow,
    LooseShelvesRow,
    MadeRow,
    PlinthRow,
    RailsRow,
    RunnersRow,
    SeparateTopRow,
    SpaceRow,
    StandRow,
)
from planner.store.columns import MaterialOf, value_from
from planner.store.part_tables import (
    AppliedFrontRow,
    BottomPanelRow,
    DrawerRow,
    HandlesRow,
    LidRow,
    PlainBoxRow,
    SlipsRow,
    TillRow,
)
from planner.store.stock_tables import MaterialStockRow, StockRow
from planner.store.stop_tables import DoorStopsRow, DrawerStopsRow, HangingRailRow, ShelfPinsRow
from planner.store.tables import (
    AcknowledgedRow,
    BoardRow,
    BoxRow,
    CornerJointRow,
    MaterialRow,
    PartRow,
    PinPlaceRow,
    Row,
    SledRow,
    SpacingRow,
)
from planner.store.use_tables import CarriedLoadRow, UseRow
from planner.store.wood_tables import ClimateRow, TimberRow

if TYPE_CHECKING:
    from sqlmodel import Session

RESTORE = "The store is damaged: put a backup in its place, or read the project file again."

_Row = TypeVar("_Row", bound=PartRow)
_Value = TypeVar("_Value")
_Key = tuple[object, ...]

_FOUND_BY: dict[type[PartRow], tuple[str, ...]] = {
    AcknowledgedRow: (),
    TimberRow: (),
    ClimateRow: ("state_of",),
    StockRow: (),
    MaterialStockRow: (),
    BoxRow: ("id",),
    BoardRow: ("box_id",),
    CornerJointRow: ("board_at_b_id",),
    SpacingRow: ("box_id", "joint_id"),
    PinPlaceRow: ("spacing_id",),
    PlainBoxRow: ("box_id",),
    LidRow: ("box_id",),
    TillRow: ("box_id",),
    DrawerRow: ("space_id",),
    BottomPanelRow: ("box_id", "role"),
    SlipsRow: ("box_id", "role"),
    AppliedFrontRow: ("box_id",),
    HandlesRow: ("box_id",),
    DrawerStopsRow: ("box_id",),
    CarcaseRow: ("box_id",),
    SpaceRow: ("carcase_id", "parent_id"),
    LooseShelvesRow: ("space_id",),
    ShelfPinsRow: ("space_id",),
    DoorsRow: ("space_id",),
    DoorStopsRow: ("space_id",),
    RailsRow: ("carcase_id",),
    DividersRow: ("carcase_id", "kind"),
    FramesRow: ("carcase_id",),
    RunnersRow: ("carcase_id",),
    BackRow: ("carcase_id",),
    PlinthRow: ("carcase_id",),
    StandRow: ("carcase_id",),
    SeparateTopRow: ("carcase_id",),
    HangingRailRow: ("carcase_id",),
    UseRow: ("carcase_id",),
    CarriedLoadRow: ("carcase_id", "borne_by"),
    MadeRow: ("space_id", "box_id", "carcase_id"),
}
"""By table, the columns by which the owner of its rows finds them. Materials and sleds are looked up by all."""


class Rows:
    """The rows of a project in a store, by one query per table.

    Attributes:
        materials: by id, in the maker's order.
        sleds: likewise.
        boxes: all rings, in the maker's order.
    """

    def __init__(self, session: Session, project_id: int) -> None:
        from sqlmodel import col, select

        def every(table: type[_Row]) -> list[_Row]:
            found = list(session.exec(select(table).where(col(table.project_id) == project_id)))
            return sorted(found, key=attrgetter("position")) if "position" in table.model_fields else found

        self.materials = {row.id: row for row in every(MaterialRow)}
        self.sleds = {row.id: row for row in every(SledRow)}
        self._left: dict[type[PartRow], dict[_Key, list[PartRow]]] = {}
        for table, columns in _FOUND_BY.items():
            groups = self._left[table] = {}
            for row in every(table):
                groups.setdefault(tuple(getattr(row, column) for column in columns), []).append(row)
        self.boxes = tuple(cast("BoxRow", row) for rows in self._left[BoxRow].values() for row in rows)

    def several(self, table: type[_Row], *key: object) -> list[_Row]:
        """Take all rows under a key, in their order."""
        return cast("list[_Row]", self._left[table].pop(key, []))

    def maybe(self, table: type[_Row], *key: object) -> _Row | None:
        """Take the row under a key, if there is one."""
        return next(iter(self.several(table, *key)), None)

    def one(self, table: type[_Row], *key: object, where: str, what: str) -> _Row:
        """Take the row under a key.

        Args:
            table: where it is.
            key: by which it is found.
            where: whose it is.
            what: what is missing where there is none.

        Raises:
            StoreError: there is none.
        """
        row = self.maybe(table, *key)
        if row is None:
            raise gap(where, f"its {what} (row {', '.join(str(each) for each in key if each is not None)}) is missing.")
        return row

    def value(self, kind: type[_Value], row: Row, where: str, /, **parts: object) -> _Value:
        """The value of a row whose fields are its columns; ``parts`` are those that have rows of their own.

        Raises:
            StoreError: its material is missing.
        """
        return value_from(kind, row, self._material_of(where), **parts)

    def _material_of(self, where: str) -> MaterialOf:
        def name_of(material_id: int) -> str:
            if material_id not in self.materials:
                raise gap(where, f"its material (row {material_id}) is missing.")
            return self.materials[material_id].name

        return name_of

    def refuse_strays(self) -> None:
        """Refuse rows that nobody took: they would be lost without a word. A ring's parts are not told of besides.

        Raises:
            StoreError: there are some; the problems name them.
        """
        left = [row for groups in self._left.values() for rows in groups.values() for row in rows]
        rings = [row for row in left if isinstance(row, BoxRow)]
        if rings:
            raise StoreError(_astray(f"box {row.mark!r} (row {row.id})") for row in rings)
        if left:
            raise StoreError(_astray(f"{row.__tablename__} row {_key_of(row)}") for row in left)


def gap(where: str, what: str) -> StoreError:
    """Refusal of a store in which something is missing."""
    return StoreError([Problem(where=where, what=what, remedy=RESTORE)])


def _astray(where: str) -> Problem:
    return Problem(where=where, what="belongs to nothing in its project.", remedy=RESTORE)


def _key_of(row: PartRow) -> str:
    key = row.metadata.tables[str(row.__tablename__)].primary_key
    return ", ".join(str(getattr(row, column.name)) for column in key)
