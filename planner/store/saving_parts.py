"""From boxes and drawers to their rows, without their rings; and how doors, lids and backs are made."""

from __future__ import annotations

from collections.abc import Iterator

from planner.domain.bottom import BottomPanel
from planner.domain.box import Box, HingedLid, SawnLid
from planner.domain.drawer import Drawer
from planner.domain.panelled import Made, Slab
from planner.domain.words import Role
from planner.store.carcase_tables import MadeRow
from planner.store.columns import row_from
from planner.store.ids import Ids
from planner.store.kinds import BoxKind, LidKind, MadeAs
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
from planner.store.stop_tables import DrawerStopsRow
from planner.store.tables import PartRow


def rows_of_box(box: Box, ids: Ids) -> Iterator[PartRow]:
    """All of a plain box but its ring."""
    at = {"project_id": ids.project, "box_id": ids.boxes[box.ring.mark], "kind": BoxKind.PLAIN.value}
    yield row_from(PlainBoxRow, box, **at)
    yield from _rows_of_bottom(box.bottom, Role.BOTTOM_PANEL, at, ids)
    if isinstance(box.lid, HingedLid):
        yield row_from(LidRow, box.lid, lid_kind=LidKind.HINGED.value, **at)
        yield made_row(box.lid.made, ids, box_id=at["box_id"])
    if isinstance(box.lid, SawnLid):
        yield row_from(LidRow, box.lid, lid_kind=LidKind.SAWN.value, **at)
        yield from _rows_of_bottom(box.lid.top, Role.TOP_PANEL, at, ids)
    if box.till is not None:
        yield row_from(TillRow, box.till, ids.material, **at)


def rows_of_drawer(drawer: Drawer, space_id: int, ids: Ids) -> Iterator[PartRow]:
    """All of a drawer but its ring."""
    at = {"project_id": ids.project, "box_id": ids.boxes[drawer.ring.mark], "kind": BoxKind.DRAWER.value}
    yield row_from(DrawerRow, drawer, space_id=space_id, **at)
    yield from _rows_of_bottom(drawer.bottom, Role.BOTTOM_PANEL, at, ids)
    if drawer.applied_front is not None:
        yield row_from(AppliedFrontRow, drawer.applied_front, ids.material, **at)
    if drawer.handles is not None:
        yield row_from(HandlesRow, drawer.handles, **at)
    if drawer.stops is not None:
        yield row_from(DrawerStopsRow, drawer.stops, ids.material, **at)


def _rows_of_bottom(bottom: BottomPanel | None, role: Role, at: dict[str, object], ids: Ids) -> Iterator[PartRow]:
    if bottom is None:
        return
    yield row_from(BottomPanelRow, bottom, ids.material, role=role.value, **at)
    if bottom.slips is not None:
        here = {"project_id": at["project_id"], "box_id": at["box_id"], "role": role.value}
        yield row_from(SlipsRow, bottom.slips, ids.material, **here)


def made_row(
    made: Made, ids: Ids, *, space_id: object = None, box_id: object = None, carcase_id: object = None
) -> MadeRow:
    """How doors, a lid or a back are made."""
    kind = MadeAs.SLAB if isinstance(made, Slab) else MadeAs.PANELLED
    owner = {"space_id": space_id, "box_id": box_id, "carcase_id": carcase_id}
    return row_from(MadeRow, made, ids.material, project_id=ids.project, kind=kind.value, **owner)
