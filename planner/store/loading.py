"""From the rows of one project to the frozen project; a store with a gap in it is refused, never half read."""

from __future__ import annotations

from typing import TYPE_CHECKING

from planner.domain.acknowledged import Acknowledged
from planner.domain.box import Box, HingedLid, SawnLid, Till
from planner.domain.climate import Climate, Room, Where
from planner.domain.material import Material
from planner.domain.project import Project
from planner.domain.rates import Rates
from planner.domain.sled import Sled
from planner.domain.timber import Timber
from planner.domain.words import Role
from planner.errors import Problem, StoreError
from planner.store.kinds import BoxKind, LidKind
from planner.store.loading_carcase import carcase
from planner.store.loading_parts import bottom, made, ring
from planner.store.loading_stock import stock
from planner.store.part_tables import LidRow, PlainBoxRow, TillRow
from planner.store.rows import RESTORE, Rows, gap
from planner.store.tables import AcknowledgedRow, BoxRow, ProjectRow
from planner.store.wood_tables import ClimateRow, TimberRow

if TYPE_CHECKING:
    from sqlmodel import Session


def assemble(session: Session, row: ProjectRow) -> Project:
    """The project of this row with all its parts, by one query per table.

    Raises:
        StoreError: rows are missing or hold what no project can; the problems name them.
    """
    where = f"project {row.name!r}"
    rows = Rows(session, row.id)
    try:
        project = rows.value(
            Project,
            row,
            where,
            materials=tuple(rows.value(Material, each, where) for each in rows.materials.values()),
            sleds=tuple(
                rows.value(Sled, each, where, kept=each.kept_sled_id is not None) for each in rows.sleds.values()
            ),
            boxes=tuple(_box(rows, each) for each in rows.boxes if each.kind == BoxKind.PLAIN),
            carcases=tuple(carcase(rows, each) for each in rows.boxes if each.kind == BoxKind.CARCASE),
            rates=rows.value(Rates, row, where),
            timbers=tuple(rows.value(Timber, each, where) for each in rows.several(TimberRow)),
            room=_room(rows, where),
            shop=_climate(rows, Where.SHOP),
            stock=stock(rows, where),
            acknowledged=tuple(
                rows.value(Acknowledged, each, where, marks=tuple(each.marks.split("\n")) if each.marks else ())
                for each in rows.several(AcknowledgedRow)
            ),
        )
    except (ValueError, ZeroDivisionError) as error:  # what the CHECKs should have kept out
        raise StoreError([Problem(where=where, what=f"{error}.", remedy=RESTORE)]) from error
    rows.refuse_strays()
    return project


def _room(rows: Rows, where: str) -> Room | None:
    dry, damp = _climate(rows, Where.DRY), _climate(rows, Where.DAMP)
    if dry is None and damp is None:
        return None
    if dry is None or damp is None:
        raise gap(where, "one of its room's two seasons is missing.")
    return Room(dry=dry, damp=damp)


def _climate(rows: Rows, state: Where) -> Climate | None:
    row = rows.maybe(ClimateRow, state.value)
    return rows.value(Climate, row, state.value) if row else None


def _box(rows: Rows, row: BoxRow) -> Box:
    where = f"box {row.mark!r}"
    own = rows.one(PlainBoxRow, row.id, where=where, what="sizes")
    till = rows.maybe(TillRow, row.id)
    return rows.value(
        Box,
        own,
        where,
        ring=ring(rows, row),
        bottom=bottom(rows, row, Role.BOTTOM_PANEL),
        lid=_lid(rows, row),
        till=till and rows.value(Till, till, f"till of {row.mark!r}"),
    )


def _lid(rows: Rows, box: BoxRow) -> HingedLid | SawnLid | None:
    where = f"lid of {box.mark!r}"
    row = rows.maybe(LidRow, box.id)
    if row is None:
        return None
    if LidKind(row.lid_kind) is LidKind.HINGED:
        return rows.value(HingedLid, row, where, made=made(rows, where, box_id=box.id))
    top = bottom(rows, box, Role.TOP_PANEL)
    if top is None:
        raise gap(where, "its top panel is missing.")
    return rows.value(SawnLid, row, where, top=top)
