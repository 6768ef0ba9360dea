"""Every corner joint laid out: through dovetails for the sled, half-blind ones for hand tools."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from planner.derive.limits import layout_problem
from planner.derive.pins import PinEnd, between, lay_out
from planner.derive.sled_limits import sled_problems
from planner.derive.slot import slot_of
from planner.domain.plan import BoardSize, Joint
from planner.domain.project import Project
from planner.domain.ring import Corner, Ring
from planner.domain.spacing import Spacing
from planner.domain.words import JointKind
from planner.errors import PlanError, Problem
from planner.lengths import Grid, Nm, Span

NARROWEST_CHISEL_NM = Nm(8 * Grid.IN_64.step_nm)
"""1/8 in: a socket cut by hand must let in a chisel. Common practice, no source."""


def joints(project: Project, boards: Mapping[str, BoardSize]) -> tuple[Joint, ...]:
    """All joints, ring by ring, J1 to J4.

    Args:
        project: the maker's word.
        boards: finished sizes by mark.

    Raises:
        PlanError: pins that can't be cut or boards that the sled can't take; all of them are named.
    """
    found: list[Joint] = []
    wrong: list[Problem] = []
    for ring in project.rings():
        for corner in ring.corners:
            pin, tail = boards[corner.pin_board], boards[corner.tail_board]
            if corner.kind is JointKind.THROUGH_DOVETAIL:
                wrong += sled_problems(project, project.sled(ring.sled), pin, tail, where=corner.mark)
            end = _pin_end(project, ring, corner, pin)
            spacing = _spacing(ring, corner)
            pins = lay_out(end, spacing)
            if pins is None:
                wrong.append(layout_problem(end, spacing, project.grid, where=corner.mark))
            else:
                found.append(_joint(project, ring, corner, (pin, tail), pins))
    if wrong:
        raise PlanError(wrong)
    return tuple(found)


def _pin_end(project: Project, ring: Ring, corner: Corner, pin: BoardSize) -> PinEnd:
    """The end to lay out: for the sled's bit, or for a chisel as deep as the lap allows."""
    slot = slot_of(project.sled(ring.sled))
    if corner.kind is JointKind.HALF_BLIND:
        slot = replace(slot, bit_nm=NARROWEST_CHISEL_NM)
    return PinEnd(width_nm=pin.width_nm, thickness_nm=Nm(pin.thickness_nm - (corner.lap_nm or 0)), slot=slot)


def _spacing(ring: Ring, corner: Corner) -> Spacing:
    """The corner's own spacing or the ring's; by hand there are no passes to save, so the wished width decides."""
    spacing = corner.spacing or ring.spacing
    return replace(spacing, alike=True) if corner.kind is JointKind.HALF_BLIND else spacing


def _joint(
    project: Project, ring: Ring, corner: Corner, boards: tuple[BoardSize, BoardSize], pins: tuple[Span, ...]
) -> Joint:
    pin, tail = boards
    sled = project.sled(ring.sled)
    covered = corner.lap_nm is not None
    return Joint(
        mark=corner.mark,
        box=ring.mark,
        kind=corner.kind,
        pin_board=pin.mark,
        pin_end=corner.pin_end,
        tail_board=tail.mark,
        tail_end=corner.tail_end,
        width_nm=pin.width_nm,
        pin_thickness_nm=pin.thickness_nm,
        tail_thickness_nm=tail.thickness_nm,
        slope=sled.slope,
        sled=sled.name,
        bit_height_nm=Nm(tail.thickness_nm + project.proud_nm),
        tail_baseline_nm=Nm(pin.thickness_nm + (-(corner.lap_nm or 0) if covered else project.proud_nm)),
        pins=pins,
        tails=between(pins),
        lap_nm=corner.lap_nm or Nm(0),
    )
