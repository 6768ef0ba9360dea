"""Rows to frozen values and back: one pair of functions per type, a line per field.

Arguments that a row can't know by itself (the names behind its foreign keys, the parts that belong to it) are given
by the caller. Everything is passed by keyword, so a new field fails the type check on both sides. What a ring is the
frame of (box, carcase, drawer) stands in ``parts.py``.
"""

from __future__ import annotations

from planner.domain.box import Box
from planner.domain.carcase import Carcase
from planner.domain.material import Material
from planner.domain.project import Project
from planner.domain.ring import Board, Corner, Ring, Spacing, Stuff
from planner.domain.sled import Sled
from planner.domain.words import End, Hardness, JointKind, MaterialKind, Role
from planner.lengths import Grid, Unit
from planner.store.kinds import BoxKind
from planner.store.tables import BoardRow, BoxRow, CornerJointRow, MaterialRow, ProjectRow, SledRow


def project_from_row(
    row: ProjectRow,
    *,
    materials: tuple[Material, ...],
    sleds: tuple[Sled, ...],
    boxes: tuple[Box, ...],
    carcases: tuple[Carcase, ...],
) -> Project:
    """A project and all that is in it."""
    return Project(
        name=row.name,
        unit=Unit(row.unit),
        grid=Grid(row.grid),
        proud_nm=row.proud_nm,
        height_tolerance_nm=row.height_tolerance_nm,
        materials=materials,
        sleds=sleds,
        boxes=boxes,
        carcases=carcases,
    )


def project_to_row(project: Project, *, version: int) -> ProjectRow:
    """The project's own row."""
    return ProjectRow(
        version=version,
        name=project.name,
        unit=project.unit.value,
        grid=project.grid.value,
        proud_nm=project.proud_nm,
        height_tolerance_nm=project.height_tolerance_nm,
    )


def material_from_row(row: MaterialRow) -> Material:
    """A material."""
    return Material(name=row.name, kind=MaterialKind(row.kind), hardness=Hardness(row.hardness))


def material_to_row(material: Material, *, project_id: int, position: int) -> MaterialRow:
    """Its row."""
    return MaterialRow(
        project_id=project_id,
        position=position,
        name=material.name,
        kind=material.kind.value,
        hardness=material.hardness.value,
    )


def sled_from_row(row: SledRow) -> Sled:
    """A sled."""
    return Sled(
        name=row.name,
        run_micro=row.run_micro,
        bit_nm=row.bit_nm,
        greatest_bit_height_nm=row.greatest_bit_height_nm,
        greatest_width_nm=row.greatest_width_nm,
        greatest_upright_nm=row.greatest_upright_nm,
    )


def sled_to_row(sled: Sled, *, project_id: int, position: int) -> SledRow:
    """Its row."""
    return SledRow(
        project_id=project_id,
        position=position,
        name=sled.name,
        run_micro=sled.run_micro,
        bit_nm=sled.bit_nm,
        greatest_bit_height_nm=sled.greatest_bit_height_nm,
        greatest_width_nm=sled.greatest_width_nm,
        greatest_upright_nm=sled.greatest_upright_nm,
    )


def ring_from_row(
    row: BoxRow,
    *,
    boards: tuple[Board, Board, Board, Board],
    corners: tuple[Corner, Corner, Corner, Corner],
    sled: str,
) -> Ring:
    """A ring with its boards and corners."""
    return Ring(
        mark=row.mark,
        kind=BoxKind(row.kind).ring_kind,
        boards=boards,
        corners=corners,
        spacing=Spacing(
            half_pin_nm=row.half_pin_nm,
            pin_nm=row.pin_nm,
            tails=row.tails,
            tail_nm=row.tail_nm,
            greatest_tail_nm=row.greatest_tail_nm,
        ),
        sled=sled,
    )


def ring_to_row(ring: Ring, *, project_id: int, position: int, kind: BoxKind, sled_id: int) -> BoxRow:
    """Its row, without boards and corners."""
    return BoxRow(
        project_id=project_id,
        position=position,
        mark=ring.mark,
        kind=kind.value,
        sled_id=sled_id,
        half_pin_nm=ring.spacing.half_pin_nm,
        pin_nm=ring.spacing.pin_nm,
        tails=ring.spacing.tails,
        tail_nm=ring.spacing.tail_nm,
        greatest_tail_nm=ring.spacing.greatest_tail_nm,
    )


def board_from_row(row: BoardRow, *, material: str) -> Board:
    """A board."""
    return Board(mark=row.mark, role=Role(row.role), stuff=Stuff(material=material, thickness_nm=row.thickness_nm))


def board_to_row(board: Board, *, project_id: int, box_id: int, position: int, material_id: int) -> BoardRow:
    """Its row."""
    return BoardRow(
        project_id=project_id,
        box_id=box_id,
        position=position,
        mark=board.mark,
        role=board.role.value,
        material_id=material_id,
        thickness_nm=board.stuff.thickness_nm,
    )


def corner_from_row(row: CornerJointRow, *, board_at_b: str, board_at_a: str) -> Corner:
    """A corner joint; the boards are given by their marks."""
    return Corner(
        mark=row.mark,
        board_at_b=board_at_b,
        board_at_a=board_at_a,
        pins_on=End(row.pins_on),
        kind=JointKind(row.kind),
    )


def corner_to_row(
    corner: Corner, *, project_id: int, box_id: int, board_at_b_id: int, board_at_a_id: int
) -> CornerJointRow:
    """Its row."""
    return CornerJointRow(
        project_id=project_id,
        box_id=box_id,
        mark=corner.mark,
        board_at_b_id=board_at_b_id,
        board_at_a_id=board_at_a_id,
        pins_on=corner.pins_on.value,
        kind=corner.kind.value,
    )
