"""Rows to frozen values and back for what a ring is the frame of: plain boxes, carcases, drawers."""

from __future__ import annotations

from fractions import Fraction

from planner.domain.box import BottomPanel, Box
from planner.domain.carcase import AppliedFront, BackPanel, Carcase, Column, Drawer, Opening, Partitions, Rails
from planner.domain.ring import Ring, Stuff
from planner.domain.words import HeightRule, SizesOver
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


def bottom_from_row(row: BottomPanelRow, *, material: str) -> BottomPanel:
    """The bottom of a box or a drawer."""
    return BottomPanel(
        stuff=Stuff(material=material, thickness_nm=row.thickness_nm),
        groove_depth_nm=row.groove_depth_nm,
        up_nm=row.up_nm,
        play_nm=row.play_nm,
    )


def bottom_to_row(
    bottom: BottomPanel, *, project_id: int, box_id: int, kind: BoxKind, material_id: int
) -> BottomPanelRow:
    """Its row."""
    return BottomPanelRow(
        project_id=project_id,
        box_id=box_id,
        kind=kind.value,
        material_id=material_id,
        thickness_nm=bottom.stuff.thickness_nm,
        groove_depth_nm=bottom.groove_depth_nm,
        up_nm=bottom.up_nm,
        play_nm=bottom.play_nm,
    )


def box_from_row(row: PlainBoxRow, *, ring: Ring, bottom: BottomPanel | None) -> Box:
    """A plain box."""
    return Box(
        title=row.title,
        batch=row.batch,
        ring=ring,
        length_nm=row.length_nm,
        width_nm=row.width_nm,
        height_nm=row.height_nm,
        sizes_over=SizesOver(row.sizes_over),
        bottom=bottom,
    )


def box_to_row(box: Box, *, project_id: int, box_id: int) -> PlainBoxRow:
    """Its row, without ring and bottom."""
    return PlainBoxRow(
        project_id=project_id,
        box_id=box_id,
        kind=BoxKind.PLAIN.value,
        title=box.title,
        batch=box.batch,
        length_nm=box.length_nm,
        width_nm=box.width_nm,
        height_nm=box.height_nm,
        sizes_over=box.sizes_over.value,
    )


def carcase_from_row(
    row: CarcaseRow,
    *,
    ring: Ring,
    columns: tuple[Column, ...],
    rails: Rails | None,
    partitions: Partitions | None,
    back: BackPanel | None,
) -> Carcase:
    """A carcase with what stands in it."""
    return Carcase(
        title=row.title,
        ring=ring,
        width_nm=row.width_nm,
        height_nm=row.height_nm,
        depth_nm=row.depth_nm,
        columns=columns,
        rails=rails,
        partitions=partitions,
        back=back,
    )


def carcase_to_row(carcase: Carcase, *, project_id: int, box_id: int) -> CarcaseRow:
    """Its row, without ring and contents."""
    return CarcaseRow(
        project_id=project_id,
        box_id=box_id,
        kind=BoxKind.CARCASE.value,
        title=carcase.title,
        width_nm=carcase.width_nm,
        height_nm=carcase.height_nm,
        depth_nm=carcase.depth_nm,
    )


def column_from_row(row: ColumnRow, *, openings: tuple[Opening, ...]) -> Column:
    """A column with its openings."""
    ratio = None if row.ratio_top is None or row.ratio_bottom is None else Fraction(row.ratio_top, row.ratio_bottom)
    return Column(
        width_nm=row.width_nm,
        heights=HeightRule(row.heights),
        step_nm=row.step_nm,
        ratio=ratio,
        openings=openings,
    )


def column_to_row(column: Column, *, project_id: int, carcase_id: int, position: int) -> ColumnRow:
    """Its row, without openings."""
    return ColumnRow(
        project_id=project_id,
        carcase_id=carcase_id,
        position=position,
        width_nm=column.width_nm,
        heights=column.heights.value,
        step_nm=column.step_nm,
        ratio_top=None if column.ratio is None else column.ratio.numerator,
        ratio_bottom=None if column.ratio is None else column.ratio.denominator,
    )


def opening_from_row(row: OpeningRow, *, drawer: Drawer) -> Opening:
    """An opening and its drawer."""
    return Opening(height_nm=row.height_nm, drawer=drawer)


def opening_to_row(opening: Opening, *, project_id: int, column_id: int, position: int) -> OpeningRow:
    """Its row, without the drawer."""
    return OpeningRow(project_id=project_id, column_id=column_id, position=position, height_nm=opening.height_nm)


def drawer_from_row(
    row: DrawerRow, *, ring: Ring, bottom: BottomPanel | None, applied_front: AppliedFront | None
) -> Drawer:
    """A drawer."""
    return Drawer(
        ring=ring,
        side_clearance_nm=row.side_clearance_nm,
        top_clearance_nm=row.top_clearance_nm,
        back_clearance_nm=row.back_clearance_nm,
        bottom=bottom,
        applied_front=applied_front,
    )


def drawer_to_row(drawer: Drawer, *, project_id: int, box_id: int, opening_id: int) -> DrawerRow:
    """Its row, without ring, bottom and applied front."""
    return DrawerRow(
        project_id=project_id,
        box_id=box_id,
        kind=BoxKind.DRAWER.value,
        opening_id=opening_id,
        side_clearance_nm=drawer.side_clearance_nm,
        top_clearance_nm=drawer.top_clearance_nm,
        back_clearance_nm=drawer.back_clearance_nm,
    )


def applied_front_from_row(row: AppliedFrontRow, *, material: str) -> AppliedFront:
    """The applied front of a drawer."""
    return AppliedFront(stuff=Stuff(material=material, thickness_nm=row.thickness_nm), gap_nm=row.gap_nm)


def applied_front_to_row(front: AppliedFront, *, project_id: int, box_id: int, material_id: int) -> AppliedFrontRow:
    """Its row."""
    return AppliedFrontRow(
        project_id=project_id,
        box_id=box_id,
        kind=BoxKind.DRAWER.value,
        material_id=material_id,
        thickness_nm=front.stuff.thickness_nm,
        gap_nm=front.gap_nm,
    )


def rails_from_row(row: RailsRow, *, material: str) -> Rails:
    """The rails of a carcase."""
    return Rails(
        stuff=Stuff(material=material, thickness_nm=row.thickness_nm),
        width_nm=row.width_nm,
        housing_depth_nm=row.housing_depth_nm,
    )


def rails_to_row(rails: Rails, *, project_id: int, carcase_id: int, material_id: int) -> RailsRow:
    """Their row."""
    return RailsRow(
        project_id=project_id,
        carcase_id=carcase_id,
        material_id=material_id,
        thickness_nm=rails.stuff.thickness_nm,
        width_nm=rails.width_nm,
        housing_depth_nm=rails.housing_depth_nm,
    )


def partitions_from_row(row: PartitionsRow, *, material: str) -> Partitions:
    """The partitions of a carcase."""
    return Partitions(
        stuff=Stuff(material=material, thickness_nm=row.thickness_nm),
        housing_depth_nm=row.housing_depth_nm,
    )


def partitions_to_row(partitions: Partitions, *, project_id: int, carcase_id: int, material_id: int) -> PartitionsRow:
    """Their row."""
    return PartitionsRow(
        project_id=project_id,
        carcase_id=carcase_id,
        material_id=material_id,
        thickness_nm=partitions.stuff.thickness_nm,
        housing_depth_nm=partitions.housing_depth_nm,
    )


def back_from_row(row: BackPanelRow, *, material: str) -> BackPanel:
    """The back of a carcase."""
    return BackPanel(
        stuff=Stuff(material=material, thickness_nm=row.thickness_nm),
        rabbet_depth_nm=row.rabbet_depth_nm,
        play_nm=row.play_nm,
    )


def back_to_row(back: BackPanel, *, project_id: int, carcase_id: int, material_id: int) -> BackPanelRow:
    """Its row."""
    return BackPanelRow(
        project_id=project_id,
        carcase_id=carcase_id,
        material_id=material_id,
        thickness_nm=back.stuff.thickness_nm,
        rabbet_depth_nm=back.rabbet_depth_nm,
        play_nm=back.play_nm,
    )
