"""Every corner joint laid out."""

from __future__ import annotations

from collections.abc import Mapping

from planner.derive.limits import layout_problem
from planner.derive.pins import PinEnd, between, lay_out
from planner.derive.sled_limits import sled_problems
from planner.derive.slot import slot_of
from planner.domain.plan import BoardSize, Joint
from planner.domain.project import Project
from planner.domain.ring import Corner, Ring
from planner.errors import PlanError, Problem
from planner.lengths import Nm, Span


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
            wrong += sled_problems(project, project.sled(ring.sled), pin, tail, where=corner.mark)
            end = PinEnd(
                width_nm=pin.width_nm,
                thickness_nm=pin.thickness_nm,
                slot=slot_of(project.sled(ring.sled)),
            )
            spacing = corner.spacing or ring.spacing
            pins = lay_out(end, spacing)
            if pins is None:
                wrong.append(layout_problem(end, spacing, project.grid, where=corner.mark))
            else:
                found.append(_joint(project, ring, corner, (pin, tail), pins))
    if wrong:
        raise PlanError(wrong)
    return tuple(found)


def _joint(
    project: Project, ring: Ring, corner: Corner, boards: tuple[BoardSize, BoardSize], pins: tuple[Span, ...]
) -> Joint:
    pin, tail = boards
    sled = project.sled(ring.sled)
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
        tail_baseline_nm=Nm(pin.thickness_nm + project.proud_nm),
        pins=pins,
        tails=between(pins),
    )
