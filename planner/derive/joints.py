"""Every corner joint laid out, and whether its sled can cut it at all."""

from __future__ import annotations

from collections.abc import Mapping

from planner.derive.pins import PinEnd, between, lay_out
from planner.derive.slot import slot_of
from planner.domain.plan import BoardSize, Joint
from planner.domain.project import Project
from planner.domain.ring import Corner, Ring
from planner.domain.sled import Sled
from planner.errors import PlanError, Problem
from planner.lengths import Nm, show_length


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
        sled = project.sled(ring.sled)
        for corner in ring.corners:
            wrong += _sled_problems(project, boards, corner, sled)
            try:
                found.append(_joint(project, boards, ring, corner))
            except PlanError as error:
                wrong += error.problems
    if wrong:
        raise PlanError(wrong)
    return tuple(found)


def _joint(project: Project, boards: Mapping[str, BoardSize], ring: Ring, corner: Corner) -> Joint:
    pin, tail = boards[corner.pin_board], boards[corner.tail_board]
    sled = project.sled(ring.sled)
    end = PinEnd(width_nm=pin.width_nm, thickness_nm=pin.thickness_nm, slot=slot_of(sled))
    pins = lay_out(end, ring.spacing, project.grid, where=corner.mark)
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


def _sled_problems(project: Project, boards: Mapping[str, BoardSize], corner: Corner, sled: Sled) -> list[Problem]:
    pin, tail = boards[corner.pin_board], boards[corner.tail_board]
    limits = (
        ("bit would stand", tail.thickness_nm + project.proud_nm, "high", sled.greatest_bit_height_nm, "bit height"),
        ("pin board is", pin.width_nm, "wide", sled.greatest_width_nm, "board width"),
        ("pin board is", pin.length_nm, "long and stands upright", sled.greatest_upright_nm, "upright board"),
    )
    return [
        Problem(
            where=corner.mark,
            what=f"{what} {show_length(needed, project.grid, with_unit=True)} {how}; sled {sled.name!r} takes "
            f"{show_length(greatest, project.grid, with_unit=True)} as its greatest {limit}.",
            remedy="Take another sled, let the other pair carry the pins, or change the size.",
        )
        for what, needed, how, greatest, limit in limits
        if needed > greatest
    ]
