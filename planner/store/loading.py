"""From the rows of one project to the frozen project; a store with a gap in it is refused, never half read."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from operator import attrgetter
from typing import TYPE_CHECKING, TypeVar

from planner.domain.box import BottomPanel, Box
from planner.domain.carcase import AppliedFront, Carcase, Column, Drawer
from planner.domain.project import Project
from planner.domain.ring import Board, Corner, Ring
from planner.domain.spacing import Spacing
from planner.errors import Problem, StoreError
from planner.store import mapping, parts
from planner.store.kinds import BoxKind
from planner.store.part_tables import (
    AppliedFrontRow,
    BackPanelRow,
    BottomPanelRow,
    CarcaseRow,
    ColumnRow,
    DrawerRow,
    OpeningRow,
    PartitionsRow,
    PlainBoxRow,
    RailsRow,
)
from planner.store.tables import (
    BoardRow,
    BoxRow,
    CornerJointRow,
    MaterialRow,
    PartRow,
    PinPlaceRow,
    ProjectRow,
    SledRow,
    SpacingRow,
)

if TYPE_CHECKING:
    from sqlmodel import Session

RESTORE = "The store is damaged: put a backup in its place, or read the project file again."

_Row = TypeVar("_Row", bound=PartRow)
_Part = TypeVar("_Part", Board, Corner)
_RING = 4


def assemble(session: Session, row: ProjectRow) -> Project:
    """The project of this row with all its parts, by one query per table.

    Raises:
        StoreError: rows are missing or hold what no project can; the problems name them.
    """
    rows = _rows_of(session, row.id)
    try:
        project = mapping.project_from_row(
            row,
            materials=tuple(map(mapping.material_from_row, rows.materials.values())),
            sleds=tuple(map(mapping.sled_from_row, rows.sleds.values())),
            boxes=tuple(_plain_box(rows, box) for box in rows.boxes.values() if box.kind == BoxKind.PLAIN),
            carcases=tuple(_carcase(rows, box) for box in rows.boxes.values() if box.kind == BoxKind.CARCASE),
        )
    except ValueError as error:  # a word that the CHECKs should have kept out
        raise StoreError([Problem(where=f"project {row.name!r}", what=f"{error}.", remedy=RESTORE)]) from error
    _refuse_strays(project, rows)
    return project


@dataclass(frozen=True, slots=True, kw_only=True)
class _Rows:
    """All rows of a project, each under the id by which it is looked up, in the maker's order."""

    materials: dict[int, MaterialRow]
    sleds: dict[int, SledRow]
    boxes: dict[int, BoxRow]
    boards: dict[int, list[BoardRow]]
    joint_at_b: dict[int, CornerJointRow]
    spacings: dict[int, SpacingRow]
    own_spacings: dict[int, SpacingRow]
    places: dict[int, list[PinPlaceRow]]
    plain_boxes: dict[int, PlainBoxRow]
    carcases: dict[int, CarcaseRow]
    columns: dict[int, list[ColumnRow]]
    openings: dict[int, list[OpeningRow]]
    drawer_in: dict[int, DrawerRow]
    bottoms: dict[int, BottomPanelRow]
    applied_fronts: dict[int, AppliedFrontRow]
    rails: dict[int, RailsRow]
    partitions: dict[int, PartitionsRow]
    backs: dict[int, BackPanelRow]


def _rows_of(session: Session, project_id: int) -> _Rows:
    from sqlmodel import col, select

    def every(table: type[_Row]) -> Iterable[_Row]:
        return session.exec(select(table).where(col(table.project_id) == project_id))

    def in_order(table: type[_Row]) -> list[_Row]:
        return sorted(every(table), key=attrgetter("position"))

    spacings = list(every(SpacingRow))
    return _Rows(
        materials={row.id: row for row in in_order(MaterialRow)},
        sleds={row.id: row for row in in_order(SledRow)},
        boxes={row.id: row for row in in_order(BoxRow)},
        boards=_grouped((row.box_id, row) for row in in_order(BoardRow)),
        joint_at_b={row.board_at_b_id: row for row in every(CornerJointRow)},
        spacings={row.box_id: row for row in spacings if row.joint_id is None},
        own_spacings={row.joint_id: row for row in spacings if row.joint_id is not None},
        places=_grouped((row.spacing_id, row) for row in in_order(PinPlaceRow)),
        plain_boxes={row.box_id: row for row in every(PlainBoxRow)},
        carcases={row.box_id: row for row in every(CarcaseRow)},
        columns=_grouped((row.carcase_id, row) for row in in_order(ColumnRow)),
        openings=_grouped((row.column_id, row) for row in in_order(OpeningRow)),
        drawer_in={row.opening_id: row for row in every(DrawerRow)},
        bottoms={row.box_id: row for row in every(BottomPanelRow)},
        applied_fronts={row.box_id: row for row in every(AppliedFrontRow)},
        rails={row.carcase_id: row for row in every(RailsRow)},
        partitions={row.carcase_id: row for row in every(PartitionsRow)},
        backs={row.carcase_id: row for row in every(BackPanelRow)},
    )


def _grouped(pairs: Iterable[tuple[int, _Row]]) -> dict[int, list[_Row]]:
    groups: dict[int, list[_Row]] = {}
    for key, row in pairs:
        groups.setdefault(key, []).append(row)
    return groups


def _the(found: Mapping[int, _Row], key: int, *, where: str, what: str) -> _Row:
    """The row under this id, or a refusal that says whose it is and what is missing."""
    row = found.get(key)
    if row is None:
        raise StoreError([Problem(where=where, what=f"its {what} (row {key}) is missing.", remedy=RESTORE)])
    return row


def _material(rows: _Rows, material_id: int, where: str) -> str:
    return _the(rows.materials, material_id, where=where, what="material").name


def _ring(rows: _Rows, box: BoxRow) -> Ring:
    where = f"box {box.mark!r} (row {box.id})"
    round_it = rows.boards.get(box.id, [])
    if len(round_it) != _RING:
        what = f"has {len(round_it)} boards in the store; a ring has {_RING}."
        raise StoreError([Problem(where=where, what=what, remedy=RESTORE)])
    marks = {row.id: row.mark for row in round_it}
    joints = [_the(rows.joint_at_b, row.id, where=f"board {row.mark!r}", what="joint at end B") for row in round_it]
    return mapping.ring_from_row(
        box,
        boards=_four(
            mapping.board_from_row(row, material=_material(rows, row.material_id, f"board {row.mark!r}"))
            for row in round_it
        ),
        corners=_four(
            mapping.corner_from_row(
                joint,
                board_at_b=marks[joint.board_at_b_id],
                board_at_a=marks.get(joint.board_at_a_id, f"row {joint.board_at_a_id}"),
                spacing=_own_spacing(rows, joint),
            )
            for joint in joints
        ),
        spacing=_spacing(rows, _the(rows.spacings, box.id, where=where, what="spacing")),
        sled=_the(rows.sleds, box.sled_id, where=where, what="sled").name,
    )


def _spacing(rows: _Rows, row: SpacingRow) -> Spacing:
    places = rows.places.get(row.id, [])
    return mapping.spacing_from_row(row, places=tuple(map(mapping.place_from_row, places)))


def _own_spacing(rows: _Rows, joint: CornerJointRow) -> Spacing | None:
    row = rows.own_spacings.get(joint.id)
    return None if row is None else _spacing(rows, row)


def _four(parts_of_ring: Iterable[_Part]) -> tuple[_Part, _Part, _Part, _Part]:
    first, second, third, fourth = parts_of_ring
    return first, second, third, fourth


def _plain_box(rows: _Rows, box: BoxRow) -> Box:
    own = _the(rows.plain_boxes, box.id, where=f"box {box.mark!r}", what="sizes")
    return parts.box_from_row(own, ring=_ring(rows, box), bottom=_bottom(rows, box))


def _bottom(rows: _Rows, box: BoxRow) -> BottomPanel | None:
    row = rows.bottoms.get(box.id)
    if row is None:
        return None
    return parts.bottom_from_row(row, material=_material(rows, row.material_id, f"bottom of {box.mark!r}"))


def _carcase(rows: _Rows, box: BoxRow) -> Carcase:
    where = f"carcase {box.mark!r}"
    rails, partitions, back = rows.rails.get(box.id), rows.partitions.get(box.id), rows.backs.get(box.id)

    def material(row: RailsRow | PartitionsRow | BackPanelRow) -> str:
        return _material(rows, row.material_id, where)

    return parts.carcase_from_row(
        _the(rows.carcases, box.id, where=where, what="sizes"),
        ring=_ring(rows, box),
        columns=tuple(_column(rows, row) for row in rows.columns.get(box.id, [])),
        rails=None if rails is None else parts.rails_from_row(rails, material=material(rails)),
        partitions=None if partitions is None else parts.partitions_from_row(partitions, material=material(partitions)),
        back=None if back is None else parts.back_from_row(back, material=material(back)),
    )


def _column(rows: _Rows, row: ColumnRow) -> Column:
    openings = rows.openings.get(row.id, [])
    return parts.column_from_row(
        row, openings=tuple(parts.opening_from_row(opening, drawer=_drawer(rows, opening)) for opening in openings)
    )


def _drawer(rows: _Rows, opening: OpeningRow) -> Drawer:
    row = _the(rows.drawer_in, opening.id, where=f"opening {opening.position} of its column", what="drawer")
    box = _the(rows.boxes, row.box_id, where=f"drawer in opening {opening.id}", what="ring")
    return parts.drawer_from_row(
        row, ring=_ring(rows, box), bottom=_bottom(rows, box), applied_front=_applied_front(rows, box)
    )


def _applied_front(rows: _Rows, box: BoxRow) -> AppliedFront | None:
    row = rows.applied_fronts.get(box.id)
    if row is None:
        return None
    material = _material(rows, row.material_id, f"applied front of {box.mark!r}")
    return parts.applied_front_from_row(row, material=material)


def _refuse_strays(project: Project, rows: _Rows) -> None:
    """A ring that stands in the store but nowhere in the project would be lost without a word."""
    placed = {ring.mark for ring in project.rings()}
    strays = [box for box in rows.boxes.values() if box.mark not in placed]
    if strays:
        raise StoreError(
            Problem(where=f"box {box.mark!r} (row {box.id})", what="fills no opening.", remedy=RESTORE)
            for box in strays
        )
