"""From a carcase to its rows, without its ring: the tree of spaces within, and all that stands in and about it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

from planner.domain.carcase import BackPanel, BoardedBack, Carcase, PanelledBack, Plinth, Stand
from planner.domain.drawer import Drawer
from planner.domain.space import Division, LooseShelves, Space
from planner.domain.use import UNSAID, Borne, Use
from planner.domain.words import DividerKind
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
from planner.store.columns import columns_of, row_from
from planner.store.ids import Ids
from planner.store.kinds import BackKind, BoxKind, Holds
from planner.store.saving_parts import made_row, rows_of_drawer
from planner.store.stop_tables import DoorStopsRow, HangingRailRow, ShelfPinsRow
from planner.store.tables import PartRow
from planner.store.use_tables import CarriedLoadRow, UseRow

if TYPE_CHECKING:
    from sqlmodel import Session

Placed = tuple[Space, SpaceRow]
"""A space and its row, which is written, so that it has its id."""


def carcase_row(carcase: Carcase, ids: Ids) -> CarcaseRow:
    """What is said of a carcase itself."""
    at = {"project_id": ids.project, "box_id": ids.boxes[carcase.ring.mark]}
    return row_from(CarcaseRow, carcase, kind=BoxKind.CARCASE.value, **at)


def write_spaces(session: Session, carcase: Carcase, ids: Ids) -> list[Placed]:
    """Write the spaces of a carcase, level by level, since a row must know its parent's id; returns all of them."""
    written: list[Placed] = []
    level: list[Placed] = [(carcase.inside, _space_row(carcase.inside, carcase, None, 1, ids))]
    while level:
        session.add_all(row for _, row in level)
        session.flush()
        written += level
        level = [
            (each, _space_row(each, carcase, row.id, position, ids))
            for space, row in level
            if isinstance(space.holds, Division)
            for position, each in enumerate(space.holds.spaces, start=1)
        ]
    return written


_HOLDS = {Division: Holds.DIVISION, Drawer: Holds.DRAWER, LooseShelves: Holds.LOOSE_SHELVES, type(None): Holds.NOTHING}


def _space_row(space: Space, carcase: Carcase, parent_id: int | None, position: int, ids: Ids) -> SpaceRow:
    at = {"project_id": ids.project, "carcase_id": ids.boxes[carcase.ring.mark], "parent_id": parent_id}
    division = columns_of(space.holds) if isinstance(space.holds, Division) else {}
    return row_from(SpaceRow, space, position=position, holds=_HOLDS[type(space.holds)].value, **at, **division)


def rows_in_carcase(carcase: Carcase, spaces: Iterable[Placed], ids: Ids) -> Iterator[PartRow]:
    """What is in and about a carcase: in its spaces, between them, behind, below and above."""
    for space, row in spaces:
        yield from _rows_in_space(space, row.id, ids)
    at = {"project_id": ids.project, "carcase_id": ids.boxes[carcase.ring.mark]}
    yield from _rows_between(carcase, at, ids)
    yield from _rows_of_back(carcase, at, ids)
    if isinstance(carcase.base, Plinth):
        box_id = ids.boxes[carcase.base.ring.mark]
        yield row_from(PlinthRow, carcase.base, box_id=box_id, kind=BoxKind.PLINTH.value, **at)
    if isinstance(carcase.base, Stand):
        yield row_from(StandRow, carcase.base, ids.material, **at)
    if carcase.top is not None:
        yield row_from(SeparateTopRow, carcase.top, ids.material, **at)
    if carcase.hanging_rail is not None:
        yield row_from(HangingRailRow, carcase.hanging_rail, ids.material, **at)
    yield from _rows_of_use(carcase.use, at)


def _rows_of_use(use: Use, at: dict[str, int]) -> Iterator[PartRow]:
    if use == UNSAID:
        return
    yield row_from(UseRow, use, **at)
    loads = {on: use.load(on) for on in Borne}
    yield from (row_from(CarriedLoadRow, load, borne_by=on.value, **at) for on, load in loads.items() if load)


def _rows_in_space(space: Space, space_id: int, ids: Ids) -> Iterator[PartRow]:
    at = {"project_id": ids.project, "space_id": space_id}
    if isinstance(space.holds, Drawer):
        yield from rows_of_drawer(space.holds, space_id, ids)
    if isinstance(space.holds, LooseShelves):
        yield row_from(LooseShelvesRow, space.holds, ids.material, kind=Holds.LOOSE_SHELVES.value, **at)
        if space.holds.pins is not None:
            yield row_from(ShelfPinsRow, space.holds.pins, kind=Holds.LOOSE_SHELVES.value, **at)
    if space.doors is not None:
        yield row_from(DoorsRow, space.doors, **at)
        yield made_row(space.doors.made, ids, space_id=space_id)
        if space.doors.stops is not None:
            yield row_from(DoorStopsRow, space.doors.stops, ids.material, **at)


def _rows_between(carcase: Carcase, at: dict[str, int], ids: Ids) -> Iterator[PartRow]:
    """What divides the spaces, and what drawers run on."""
    for kind, dividers in ((DividerKind.PARTITION, carcase.partitions), (DividerKind.SHELF, carcase.shelves)):
        if dividers is not None:
            yield row_from(DividersRow, dividers, ids.material, kind=kind.value, **at)
    for table, part in ((RailsRow, carcase.rails), (FramesRow, carcase.frames), (RunnersRow, carcase.runners)):
        if part is not None:
            yield row_from(table, part, ids.material, **at)


_BACKS = {BackPanel: BackKind.PANEL, BoardedBack: BackKind.BOARDS, PanelledBack: BackKind.PANELLED}


def _rows_of_back(carcase: Carcase, at: dict[str, int], ids: Ids) -> Iterator[PartRow]:
    back = carcase.back
    if back is not None:
        yield row_from(BackRow, back, ids.material, kind=_BACKS[type(back)].value, **at)
    if isinstance(back, PanelledBack):
        yield made_row(back.made, ids, carcase_id=at["carcase_id"])
