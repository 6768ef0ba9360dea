"""From rows to a carcase: the tree of spaces within, what fills and divides them, what closes and carries it."""

from __future__ import annotations

from types import MappingProxyType
from typing import TypeVar

from planner.domain.carcase import (
    Back,
    BackPanel,
    BoardedBack,
    Carcase,
    Dividers,
    Frames,
    HangingRail,
    PanelledBack,
    Plinth,
    Rails,
    Runners,
    SeparateTop,
    Stand,
)
from planner.domain.drawer import AppliedFront, Drawer, DrawerStops, Handles
from planner.domain.space import Division, Doors, DoorStops, LooseShelves, ShelfPins, Space
from planner.domain.use import UNSAID, Borne, Load, Use
from planner.domain.words import DividerKind, Role
from planner.store.carcase_tables import (
    BackRow,
    CarcaseRow,
    DividersRow,
    DoorsRow,
    FramesRow,
    LooseShelvesRow,
    PlinthRow,
    RailsRow,
    RunnersRow,
    SeparateTopRow,
    SpaceRow,
    StandRow,
)
from planner.store.kinds import BackKind, Holds
from planner.store.loading_parts import bottom, made, ring
from planner.store.part_tables import AppliedFrontRow, DrawerRow, HandlesRow
from planner.store.rows import Rows, gap
from planner.store.stop_tables import DoorStopsRow, DrawerStopsRow, HangingRailRow, ShelfPinsRow
from planner.store.tables import BoxRow, PartRow
from planner.store.use_tables import CarriedLoadRow, UseRow

_Value = TypeVar("_Value")

_BACKS: MappingProxyType[BackKind, type[BackPanel | BoardedBack]] = MappingProxyType(
    {BackKind.PANEL: BackPanel, BackKind.BOARDS: BoardedBack}
)


def carcase(rows: Rows, box: BoxRow) -> Carcase:
    """The carcase of a ring.

    Raises:
        StoreError: something of it is missing.
    """
    where = f"carcase {box.mark!r}"
    own = rows.one(CarcaseRow, box.id, where=where, what="sizes")

    def part(kind: type[_Value], table: type[PartRow], *key: object) -> _Value | None:
        row = rows.maybe(table, box.id, *key)
        return None if row is None else rows.value(kind, row, where)

    return rows.value(
        Carcase,
        own,
        where,
        ring=ring(rows, box),
        inside=_space(rows, rows.one(SpaceRow, box.id, None, where=where, what="inside")),
        rails=part(Rails, RailsRow),
        partitions=part(Dividers, DividersRow, DividerKind.PARTITION.value),
        shelves=part(Dividers, DividersRow, DividerKind.SHELF.value),
        frames=part(Frames, FramesRow),
        runners=part(Runners, RunnersRow),
        back=_back(rows, box, where),
        base=_plinth(rows, box) or part(Stand, StandRow),
        top=part(SeparateTop, SeparateTopRow),
        hanging_rail=part(HangingRail, HangingRailRow),
        use=_use(rows, box),
    )


def _back(rows: Rows, box: BoxRow, where: str) -> Back | None:
    row = rows.maybe(BackRow, box.id)
    if row is None:
        return None
    kind = BackKind(row.kind)
    if kind is BackKind.PANELLED:
        return rows.value(PanelledBack, row, where, made=made(rows, f"back of {box.mark!r}", carcase_id=box.id))
    return rows.value(_BACKS[kind], row, where)


def _use(rows: Rows, box: BoxRow) -> Use:
    row = rows.maybe(UseRow, box.id)
    if row is None:
        return UNSAID
    where = f"use of {box.mark!r}"

    def load(on: Borne) -> Load | None:
        borne = rows.maybe(CarriedLoadRow, box.id, on.value)
        return None if borne is None else rows.value(Load, borne, where)

    return rows.value(Use, row, where, shelves=load(Borne.SHELVES), drawers=load(Borne.DRAWERS), top=load(Borne.TOP))


def _plinth(rows: Rows, box: BoxRow) -> Plinth | None:
    row = rows.maybe(PlinthRow, box.id)
    if row is None:
        return None
    where = f"plinth of {box.mark!r}"
    return rows.value(Plinth, row, where, ring=ring(rows, rows.one(BoxRow, row.box_id, where=where, what="ring")))


# --- the spaces within -------------------------------------------------------------------------------------


def _space(rows: Rows, row: SpaceRow) -> Space:
    return rows.value(Space, row, _at(row), holds=_held(rows, row), doors=_doors(rows, row))


def _at(row: SpaceRow) -> str:
    return f"space {row.position} (row {row.id})"


def _held(rows: Rows, row: SpaceRow) -> Division | Drawer | LooseShelves | None:
    match Holds(row.holds):
        case Holds.DIVISION:
            spaces = rows.several(SpaceRow, row.carcase_id, row.id)
            if not spaces:
                raise gap(_at(row), "is divided, but the spaces in it are missing.")
            return rows.value(Division, row, _at(row), spaces=tuple(_space(rows, each) for each in spaces))
        case Holds.DRAWER:
            return _drawer(rows, row)
        case Holds.LOOSE_SHELVES:
            shelves = rows.one(LooseShelvesRow, row.id, where=_at(row), what="loose shelves")
            pins, where = rows.maybe(ShelfPinsRow, row.id), f"loose shelves in {_at(row)}"
            return rows.value(LooseShelves, shelves, where, pins=pins and rows.value(ShelfPins, pins, where))
        case Holds.NOTHING:
            return None


def _doors(rows: Rows, space: SpaceRow) -> Doors | None:
    row = rows.maybe(DoorsRow, space.id)
    if row is None:
        return None
    where = f"doors of {_at(space)}"
    stops = rows.maybe(DoorStopsRow, space.id)
    return rows.value(
        Doors,
        row,
        where,
        made=made(rows, where, space_id=space.id),
        stops=stops and rows.value(DoorStops, stops, where),
    )


def _drawer(rows: Rows, space: SpaceRow) -> Drawer:
    row = rows.one(DrawerRow, space.id, where=_at(space), what="drawer")
    box = rows.one(BoxRow, row.box_id, where=f"drawer in {_at(space)}", what="ring")
    where = f"drawer {box.mark!r}"
    front, handles = rows.maybe(AppliedFrontRow, box.id), rows.maybe(HandlesRow, box.id)
    stops = rows.maybe(DrawerStopsRow, box.id)
    return rows.value(
        Drawer,
        row,
        where,
        ring=ring(rows, box),
        bottom=bottom(rows, box, Role.BOTTOM_PANEL),
        applied_front=front and rows.value(AppliedFront, front, f"applied front of {box.mark!r}"),
        handles=handles and rows.value(Handles, handles, where),
        stops=stops and rows.value(DrawerStops, stops, where),
    )
