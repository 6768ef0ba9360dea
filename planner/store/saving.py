"""From a frozen project to its rows, as a difference: a row whose name or mark is unchanged keeps its id.

What others may refer to (materials, sleds, rings, boards, joints) is settled row by row; what only belongs to a ring
(spacings, sizes, spaces, drawers, panels) is written anew each time; of all but the spacings, the rows are made in
``saving_parts.py`` and ``saving_carcase.py``.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Iterator, Sequence
from typing import TYPE_CHECKING, TypeVar

from planner.domain.project import Project, climates
from planner.domain.ring import Ring
from planner.domain.spacing import Spacing
from planner.store import sleds
from planner.store.carcase_tables import CarcaseRow
from planner.store.columns import columns_of, row_from
from planner.store.ids import Ids
from planner.store.kinds import rings_by_kind
from planner.store.part_tables import (
    AppliedFrontRow,
    BottomPanelRow,
    HandlesRow,
    LidRow,
    PlainBoxRow,
    TillRow,
)
from planner.store.saving_carcase import carcase_row, rows_in_carcase, write_spaces
from planner.store.saving_parts import rows_of_box
from planner.store.saving_stock import stock_rows
from planner.store.stock_tables import StockRow
from planner.store.stop_tables import DrawerStopsRow
from planner.store.tables import (
    AcknowledgedRow,
    BoardRow,
    BoxRow,
    CornerJointRow,
    KeptRow,
    MaterialRow,
    PartRow,
    PinPlaceRow,
    ProjectRow,
    Row,
    SledRow,
    SpacingRow,
)
from planner.store.wood_tables import ClimateRow, TimberRow

if TYPE_CHECKING:
    from sqlmodel import Session

_Kept = TypeVar("_Kept", bound=KeptRow)

_ANEW = (
    StockRow, AcknowledgedRow, TimberRow, ClimateRow, SpacingRow, PlainBoxRow, LidRow, TillRow, CarcaseRow,
    BottomPanelRow, AppliedFrontRow, HandlesRow, DrawerStopsRow,
)  # fmt: skip
"""Tables that are cleared of a project first; what stands in a carcase goes with it, listed pins with their spacing,
how a lid is made with the lid."""

_ASIDE = 1_000_000
"""Positions are moved this far out of the way while a new order is written, since each is given only once."""


def write_project(session: Session, project: Project) -> None:
    """Make the rows of this project what they should be; its version grows by one."""
    session.expunge_all()  # rows read earlier in this transaction may be about to go
    ids = Ids(project=_write_own_row(session, project))
    _make_room(session, ids)
    _take_in_sleds(session, project)
    unused = [*_write_materials(session, project, ids), *_write_sleds(session, project, ids)]
    _write_boxes(session, project, ids)
    _write_boards(session, project, ids)
    _write_corners(session, project, ids)
    _write_spacings(session, project, ids)
    _write_parts(session, project, ids)
    _drop(session, unused)  # only now, when no board is made of them or cut on them any more


def _write_own_row(session: Session, project: Project) -> int:
    from sqlmodel import col, select

    old = session.exec(select(ProjectRow).where(col(ProjectRow.name) == project.name)).first()
    rates = columns_of(project.rates)
    row = row_from(ProjectRow, project, version=1 if old is None else old.version + 1, **rates)
    if old is not None:
        row.id = old.id
    kept = session.merge(row)
    session.flush()
    return kept.id


def _make_room(session: Session, ids: Ids) -> None:
    """Clear what is written anew, and set aside the positions of what is kept."""
    from sqlmodel import col, delete, update

    connection = session.connection()
    for anew in _ANEW:
        connection.execute(delete(anew).where(col(anew.project_id) == ids.project))
    for kept in (MaterialRow, SledRow, BoxRow):
        aside = update(kept).where(col(kept.project_id) == ids.project).values(position=col(kept.position) + _ASIDE)
        connection.execute(aside)


# --- rows that keep their ids ------------------------------------------------------------------------------


def _settle(
    session: Session, table: type[_Kept], wanted: Sequence[_Kept], *, key: Callable[[_Kept], Hashable], drop: bool
) -> list[_Kept]:
    """Write the wanted rows of a project, each over the stored row that has its key.

    Args:
        session: the caller's transaction.
        table: where the rows belong.
        wanted: all rows of the project in this table, in order; they get their ids.
        key: the columns that tell rows apart, positions left out.
        drop: whether to delete the stored rows that are left over before anything is written.

    Returns:
        The stored rows left over.
    """
    from sqlmodel import col, select

    project_id = wanted[0].project_id
    stored = {key(row): row for row in session.exec(select(table).where(col(table.project_id) == project_id))}
    over = [(row, stored.pop(key(row), None)) for row in wanted]
    left = list(stored.values())
    if drop:
        _drop(session, left)
    with session.no_autoflush:
        for row, old in over:
            if old is None:
                session.add(row)
            else:
                row.id = old.id
                session.merge(row)
    session.flush()
    return left


def _drop(session: Session, rows: Iterable[KeptRow]) -> None:
    for row in rows:
        session.delete(row)
    session.flush()


def _write_materials(session: Session, project: Project, ids: Ids) -> list[MaterialRow]:
    rows = [
        row_from(MaterialRow, material, project_id=ids.project, position=position)
        for position, material in enumerate(project.materials, start=1)
    ]
    unused = _settle(session, MaterialRow, rows, key=lambda row: row.name, drop=False)
    ids.materials = {row.name: row.id for row in rows}
    return unused


def _take_in_sleds(session: Session, project: Project) -> None:
    """Sleds to be kept that the store has not yet."""
    known = sleds.ids(session)
    sleds.take_in(session, [sled for sled in project.sleds if sled.kept and sled.name not in known])


def _write_sleds(session: Session, project: Project, ids: Ids) -> list[SledRow]:
    kept = sleds.ids(session)
    rows = [
        row_from(
            SledRow,
            sled,
            project_id=ids.project,
            position=position,
            kept_sled_id=kept[sled.name] if sled.kept else None,
        )
        for position, sled in enumerate(project.sleds, start=1)
    ]
    unused = _settle(session, SledRow, rows, key=lambda row: row.name, drop=False)
    ids.sleds = {row.name: row.id for row in rows}
    return unused


def _write_boxes(session: Session, project: Project, ids: Ids) -> None:
    rows = [
        row_from(
            BoxRow,
            ring,
            project_id=ids.project,
            position=position,
            kind=kind.value,
            sled_id=ids.sleds[ring.sled],
        )
        for position, (kind, ring) in enumerate(rings_by_kind(project), start=1)
    ]
    _settle(session, BoxRow, rows, key=lambda row: row.mark, drop=True)
    ids.boxes = {row.mark: row.id for row in rows}


def _write_boards(session: Session, project: Project, ids: Ids) -> None:
    rows = [
        row_from(BoardRow, board, ids.material, project_id=ids.project, box_id=ids.boxes[ring.mark], position=position)
        for ring in project.rings()
        for position, board in enumerate(ring.boards, start=1)
    ]
    _settle(session, BoardRow, rows, key=lambda row: (row.mark, row.box_id, row.position), drop=True)
    ids.boards = {row.mark: row.id for row in rows}


def _write_corners(session: Session, project: Project, ids: Ids) -> None:
    rows = [
        row_from(
            CornerJointRow,
            corner,
            project_id=ids.project,
            box_id=ids.boxes[ring.mark],
            board_at_b_id=ids.boards[corner.board_at_b],
            board_at_a_id=ids.boards[corner.board_at_a],
        )
        for ring in project.rings()
        for corner in ring.corners
    ]
    _settle(session, CornerJointRow, rows, key=lambda row: (row.mark, row.board_at_b_id, row.board_at_a_id), drop=True)
    ids.joints = {row.mark: row.id for row in rows}


# --- what is written anew ----------------------------------------------------------------------------------


def _write_spacings(session: Session, project: Project, ids: Ids) -> None:
    """Spacings of rings, and of the joints that have one of their own; then all listed pins."""
    written = [
        (
            spacing,
            row_from(SpacingRow, spacing, project_id=ids.project, box_id=ids.boxes[ring.mark], joint_id=joint),
        )
        for ring in project.rings()
        for spacing, joint in _spacings(ring, ids)
    ]
    session.add_all(row for _, row in written)
    session.flush()
    session.add_all(
        PinPlaceRow(project_id=ids.project, spacing_id=row.id, position=position, from_nm=start, to_nm=end)
        for spacing, row in written
        for position, (start, end) in enumerate(spacing.places, start=1)
    )
    session.flush()


def _spacings(ring: Ring, ids: Ids) -> Iterator[tuple[Spacing, int | None]]:
    """The spacings of a ring, each with the id of the joint that it is for."""
    yield ring.spacing, None
    for corner in ring.corners:
        if corner.spacing is not None:
            yield corner.spacing, ids.joints[corner.mark]


def _write_parts(session: Session, project: Project, ids: Ids) -> None:
    """All the rest: carcases and their spaces first, then what refers to these, table by table."""
    rows: dict[str, list[PartRow]] = {}
    for part in _parts(session, project, ids):
        rows.setdefault(str(part.__tablename__), []).append(part)
    for table in Row.metadata.sorted_tables:  # what is referred to comes before what refers to it
        session.add_all(rows.get(table.name, []))
        session.flush()


def _parts(session: Session, project: Project, ids: Ids) -> Iterator[PartRow]:
    for position, each in enumerate(project.acknowledged, start=1):
        marks = "\n".join(each.marks)
        yield row_from(AcknowledgedRow, each, project_id=ids.project, position=position, marks=marks)
    for position, timber in enumerate(project.timbers, start=1):
        yield row_from(TimberRow, timber, project_id=ids.project, position=position)
    for state, climate in climates(project):
        yield row_from(ClimateRow, climate, project_id=ids.project, state_of=state.value)
    yield from stock_rows(project, ids)
    for box in project.boxes:
        yield from rows_of_box(box, ids)
    for carcase in project.carcases:
        session.add(carcase_row(carcase, ids))
        session.flush()
        yield from rows_in_carcase(carcase, write_spaces(session, carcase, ids), ids)
