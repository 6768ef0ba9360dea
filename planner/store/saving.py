"""From a frozen project to its rows, as a difference: a row whose name or mark is unchanged keeps its id.

What others may refer to (materials, sleds, rings, boards, joints) is settled row by row; what only belongs to a ring
(spacings, sizes, columns, openings, drawers, panels) is written anew each time.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, TypeVar

from planner.domain.box import BottomPanel, Box
from planner.domain.carcase import AppliedFront, Carcase, Column
from planner.domain.project import Project
from planner.domain.ring import Ring
from planner.domain.spacing import Spacing
from planner.store import mapping, parts
from planner.store.kinds import BoxKind, rings_by_kind
from planner.store.part_tables import AppliedFrontRow, BottomPanelRow, CarcaseRow, PlainBoxRow
from planner.store.tables import (
    BoardRow,
    BoxRow,
    CornerJointRow,
    KeptRow,
    MaterialRow,
    ProjectRow,
    SledRow,
    SpacingRow,
)

if TYPE_CHECKING:
    from sqlmodel import Session

_Kept = TypeVar("_Kept", bound=KeptRow)

_ANEW = (SpacingRow, PlainBoxRow, CarcaseRow, BottomPanelRow, AppliedFrontRow)
"""Tables that are cleared of a project first; what stands in a carcase goes with it, listed pins with their spacing."""

_ASIDE = 1_000_000
"""Positions are moved this far out of the way while a new order is written, since each is given only once."""


@dataclass(slots=True, kw_only=True)
class _Ids:
    """Ids of the rows written so far, by name or mark."""

    project: int
    materials: dict[str, int] = field(default_factory=dict)
    sleds: dict[str, int] = field(default_factory=dict)
    boxes: dict[str, int] = field(default_factory=dict)
    boards: dict[str, int] = field(default_factory=dict)
    joints: dict[str, int] = field(default_factory=dict)


def write_project(session: Session, project: Project) -> None:
    """Make the rows of this project what they should be; its version grows by one."""
    session.expunge_all()  # rows read earlier in this transaction may be about to go
    ids = _Ids(project=_write_own_row(session, project))
    _make_room(session, ids)
    unused = [*_write_materials(session, project, ids), *_write_sleds(session, project, ids)]
    _write_boxes(session, project, ids)
    _write_boards(session, project, ids)
    _write_corners(session, project, ids)
    _write_spacings(session, project, ids)
    for box in project.boxes:
        _write_box(session, box, ids)
    for carcase in project.carcases:
        _write_carcase(session, carcase, ids)
    _drop(session, unused)  # only now, when no board is made of them or cut on them any more


def _write_own_row(session: Session, project: Project) -> int:
    from sqlmodel import col, select

    old = session.exec(select(ProjectRow).where(col(ProjectRow.name) == project.name)).first()
    row = mapping.project_to_row(project, version=1 if old is None else old.version + 1)
    if old is not None:
        row.id = old.id
    kept = session.merge(row)
    session.flush()
    return kept.id


def _make_room(session: Session, ids: _Ids) -> None:
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


def _write_materials(session: Session, project: Project, ids: _Ids) -> list[MaterialRow]:
    rows = [
        mapping.material_to_row(material, project_id=ids.project, position=position)
        for position, material in enumerate(project.materials, start=1)
    ]
    unused = _settle(session, MaterialRow, rows, key=lambda row: row.name, drop=False)
    ids.materials = {row.name: row.id for row in rows}
    return unused


def _write_sleds(session: Session, project: Project, ids: _Ids) -> list[SledRow]:
    rows = [
        mapping.sled_to_row(sled, project_id=ids.project, position=position)
        for position, sled in enumerate(project.sleds, start=1)
    ]
    unused = _settle(session, SledRow, rows, key=lambda row: row.name, drop=False)
    ids.sleds = {row.name: row.id for row in rows}
    return unused


def _write_boxes(session: Session, project: Project, ids: _Ids) -> None:
    rows = [
        mapping.ring_to_row(ring, project_id=ids.project, position=position, kind=kind, sled_id=ids.sleds[ring.sled])
        for position, (kind, ring) in enumerate(rings_by_kind(project), start=1)
    ]
    _settle(session, BoxRow, rows, key=lambda row: row.mark, drop=True)
    ids.boxes = {row.mark: row.id for row in rows}


def _write_boards(session: Session, project: Project, ids: _Ids) -> None:
    rows = [
        mapping.board_to_row(
            board,
            project_id=ids.project,
            box_id=ids.boxes[ring.mark],
            position=position,
            material_id=ids.materials[board.stuff.material],
        )
        for ring in project.rings()
        for position, board in enumerate(ring.boards, start=1)
    ]
    _settle(session, BoardRow, rows, key=lambda row: (row.mark, row.box_id, row.position), drop=True)
    ids.boards = {row.mark: row.id for row in rows}


def _write_corners(session: Session, project: Project, ids: _Ids) -> None:
    rows = [
        mapping.corner_to_row(
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


def _write_spacings(session: Session, project: Project, ids: _Ids) -> None:
    """Spacings of rings, and of the joints that have one of their own; then all listed pins."""
    written = [
        (spacing, mapping.spacing_to_row(spacing, project_id=ids.project, box_id=ids.boxes[ring.mark], joint_id=joint))
        for ring in project.rings()
        for spacing, joint in _spacings(ring, ids)
    ]
    session.add_all(row for _, row in written)
    session.flush()
    session.add_all(
        mapping.place_to_row(place, project_id=ids.project, spacing_id=row.id, position=position)
        for spacing, row in written
        for position, place in enumerate(spacing.places, start=1)
    )
    session.flush()


def _spacings(ring: Ring, ids: _Ids) -> Iterator[tuple[Spacing, int | None]]:
    """The spacings of a ring, each with the id of the joint that it is for."""
    yield ring.spacing, None
    for corner in ring.corners:
        if corner.spacing is not None:
            yield corner.spacing, ids.joints[corner.mark]


def _write_box(session: Session, box: Box, ids: _Ids) -> None:
    box_id = ids.boxes[box.ring.mark]
    session.add(parts.box_to_row(box, project_id=ids.project, box_id=box_id))
    _add_bottom(session, box.bottom, BoxKind.PLAIN, box_id, ids)
    session.flush()


def _add_bottom(session: Session, bottom: BottomPanel | None, kind: BoxKind, box_id: int, ids: _Ids) -> None:
    if bottom is not None:
        material_id = ids.materials[bottom.stuff.material]
        session.add(
            parts.bottom_to_row(bottom, project_id=ids.project, box_id=box_id, kind=kind, material_id=material_id)
        )


def _write_carcase(session: Session, carcase: Carcase, ids: _Ids) -> None:
    at = {"project_id": ids.project, "carcase_id": ids.boxes[carcase.ring.mark]}
    session.add(parts.carcase_to_row(carcase, project_id=ids.project, box_id=at["carcase_id"]))
    session.flush()
    if carcase.rails is not None:
        session.add(parts.rails_to_row(carcase.rails, **at, material_id=ids.materials[carcase.rails.stuff.material]))
    if carcase.partitions is not None:
        material_id = ids.materials[carcase.partitions.stuff.material]
        session.add(parts.partitions_to_row(carcase.partitions, **at, material_id=material_id))
    if carcase.back is not None:
        session.add(parts.back_to_row(carcase.back, **at, material_id=ids.materials[carcase.back.stuff.material]))
    for position, column in enumerate(carcase.columns, start=1):
        row = parts.column_to_row(column, **at, position=position)
        session.add(row)
        session.flush()
        _write_openings(session, column, row.id, ids)


def _write_openings(session: Session, column: Column, column_id: int, ids: _Ids) -> None:
    rows = [
        parts.opening_to_row(opening, project_id=ids.project, column_id=column_id, position=position)
        for position, opening in enumerate(column.openings, start=1)
    ]
    session.add_all(rows)
    session.flush()
    for opening, row in zip(column.openings, rows, strict=True):
        drawer = opening.drawer
        box_id = ids.boxes[drawer.ring.mark]
        session.add(parts.drawer_to_row(drawer, project_id=ids.project, box_id=box_id, opening_id=row.id))
        _add_bottom(session, drawer.bottom, BoxKind.DRAWER, box_id, ids)
        _add_applied_front(session, drawer.applied_front, box_id, ids)
    session.flush()


def _add_applied_front(session: Session, front: AppliedFront | None, box_id: int, ids: _Ids) -> None:
    if front is not None:
        material_id = ids.materials[front.stuff.material]
        session.add(parts.applied_front_to_row(front, project_id=ids.project, box_id=box_id, material_id=material_id))
