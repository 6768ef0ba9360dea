"""Rows to frozen values and back: one pair of functions per type, a line per field.

Arguments that a row can't know by itself (the names behind its foreign keys, the parts that belong to it) are given
by the caller. Everything is passed by keyword, so a new field fails the type check on both sides. What a ring is the
frame of (box, carcase, drawer) stands in ``parts.py``.
"""

from __future__ import annotations

from fractions import Fraction

from planner.domain.box import Box
from planner.domain.carcase import Carcase
from planner.domain.material import Material
from planner.domain.project import Project
from planner.domain.rates import Rates
from planner.domain.ring import Board, Corner, Ring, Stuff
from planner.domain.sled import Sled
from planner.domain.spacing import Spacing
from planner.domain.words import EdgeName, End, Hardness, JointKind, MaterialKind, Role, Spread
from planner.lengths import Grid, Span, Unit
from planner.store.kinds import BoxKind
from planner.store.tables import (
    BoardRow,
    BoxRow,
    CornerJointRow,
    MaterialRow,
    PinPlaceRow,
    ProjectRow,
    SledRow,
    SpacingRow,
)


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
        rates=Rates(
            sled_change_s=row.sled_change_s,
            height_change_s=row.height_change_s,
            fence_swap_s=row.fence_swap_s,
            handling_s=row.handling_s,
            turning_s=row.turning_s,
            pass_s=row.pass_s,
        ),
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
        sled_change_s=project.rates.sled_change_s,
        height_change_s=project.rates.height_change_s,
        fence_swap_s=project.rates.fence_swap_s,
        handling_s=project.rates.handling_s,
        turning_s=project.rates.turning_s,
        pass_s=project.rates.pass_s,
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
        slot_nm=row.slot_nm,
        greatest_depth_soft_nm=row.greatest_depth_soft_nm,
        greatest_depth_hard_nm=row.greatest_depth_hard_nm,
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
        slot_nm=sled.slot_nm,
        greatest_depth_soft_nm=sled.greatest_depth_soft_nm,
        greatest_depth_hard_nm=sled.greatest_depth_hard_nm,
    )


def ring_from_row(
    row: BoxRow,
    *,
    boards: tuple[Board, Board, Board, Board],
    corners: tuple[Corner, Corner, Corner, Corner],
    spacing: Spacing,
    sled: str,
) -> Ring:
    """A ring with its boards, corners and spacing."""
    return Ring(
        mark=row.mark,
        kind=BoxKind(row.kind).ring_kind,
        boards=boards,
        corners=corners,
        spacing=spacing,
        sled=sled,
    )


def ring_to_row(ring: Ring, *, project_id: int, position: int, kind: BoxKind, sled_id: int) -> BoxRow:
    """Its row, without boards, corners and spacing."""
    return BoxRow(
        project_id=project_id,
        position=position,
        mark=ring.mark,
        kind=kind.value,
        sled_id=sled_id,
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


def corner_from_row(row: CornerJointRow, *, board_at_b: str, board_at_a: str, spacing: Spacing | None) -> Corner:
    """A corner joint; the boards are given by their marks."""
    return Corner(
        mark=row.mark,
        board_at_b=board_at_b,
        board_at_a=board_at_a,
        pins_on=End(row.pins_on),
        kind=JointKind(row.kind),
        lap_nm=row.lap_nm,
        spacing=spacing,
    )


def corner_to_row(
    corner: Corner, *, project_id: int, box_id: int, board_at_b_id: int, board_at_a_id: int
) -> CornerJointRow:
    """Its row, without a spacing of its own."""
    return CornerJointRow(
        project_id=project_id,
        box_id=box_id,
        mark=corner.mark,
        board_at_b_id=board_at_b_id,
        board_at_a_id=board_at_a_id,
        pins_on=corner.pins_on.value,
        kind=corner.kind.value,
        lap_nm=corner.lap_nm,
    )


def spacing_from_row(row: SpacingRow, *, places: tuple[Span, ...]) -> Spacing:
    """A spacing with its listed pins."""
    ratio = None if row.ratio_top is None or row.ratio_bottom is None else Fraction(row.ratio_top, row.ratio_bottom)
    return Spacing(
        half_pin_nm=row.half_pin_nm,
        pin_nm=row.pin_nm,
        tails=row.tails,
        tail_nm=row.tail_nm,
        greatest_tail_nm=row.greatest_tail_nm,
        spread=Spread(row.spread),
        ratio=ratio,
        places=places,
        measured_from=EdgeName(row.measured_from),
        alike=bool(row.alike),
    )


def spacing_to_row(spacing: Spacing, *, project_id: int, box_id: int, joint_id: int | None) -> SpacingRow:
    """Its row, without listed pins."""
    return SpacingRow(
        project_id=project_id,
        box_id=box_id,
        joint_id=joint_id,
        half_pin_nm=spacing.half_pin_nm,
        pin_nm=spacing.pin_nm,
        tails=spacing.tails,
        tail_nm=spacing.tail_nm,
        greatest_tail_nm=spacing.greatest_tail_nm,
        spread=spacing.spread.value,
        ratio_top=None if spacing.ratio is None else spacing.ratio.numerator,
        ratio_bottom=None if spacing.ratio is None else spacing.ratio.denominator,
        measured_from=spacing.measured_from.value,
        alike=int(spacing.alike),
    )


def place_from_row(row: PinPlaceRow) -> Span:
    """A listed pin."""
    return row.from_nm, row.to_nm


def place_to_row(place: Span, *, project_id: int, spacing_id: int, position: int) -> PinPlaceRow:
    """Its row."""
    start, end = place
    return PinPlaceRow(project_id=project_id, spacing_id=spacing_id, position=position, from_nm=start, to_nm=end)
