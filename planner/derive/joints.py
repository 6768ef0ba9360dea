"""Every corner joint laid out: through dovetails for the sled, half-blind ones for hand tools."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from planner.derive.pin_ends import corner_pins, corner_problems
from planner.derive.pins import between
from planner.derive.sled_limits import sled_problems
from planner.domain.plan import BoardSize, Joint
from planner.domain.project import Project
from planner.domain.ring import Corner, Ring
from planner.domain.words import JointKind
from planner.errors import PlanError, Problem
from planner.lengths import Nm, Span


def joints(project: Project, boards: Mapping[str, BoardSize]) -> tuple[Joint, ...]:
    """All dovetailed joints, ring by ring, J1 to J4.

    Args:
        project: the maker's word.
        boards: finished sizes by mark.

    Raises:
        PlanError: pins that can't be cut or boards that the sled can't take; all of them are named, and what is wrong
            with several in the same way is told once.
    """
    found: list[Joint] = []
    wrong: list[Problem] = []
    for ring in project.rings():
        for corner in ring.corners:
            if corner.kind is JointKind.RABBET:
                continue
            pin, tail = boards[corner.pin_board], boards[corner.tail_board]
            if corner.kind is JointKind.THROUGH_DOVETAIL:
                wrong += sled_problems(project, project.sled(ring.sled), pin, tail, where=corner.mark)
            if pin.width_nm > tail.width_nm:
                wrong.append(_pins_on_the_wider(corner))
            pins = corner_pins(project, ring, corner, pin.width_nm, pin.thickness_nm)
            if pins is None:
                wrong += corner_problems(project, ring, corner, pin.width_nm, pin.thickness_nm)
            else:
                found.append(_joint(project, ring, corner, (pin, tail), pins))
    if wrong:
        raise PlanError(told_once(wrong))
    return tuple(found)


_NAMED = 3
"""So many joints are named in one refusal; of more, two are named and the rest is counted."""


def told_once(problems: Iterable[Problem]) -> list[Problem]:
    """Problems that say the same of several places as one that names these places: ``D1-J1, D1-J2 and 22 more``."""
    places: dict[tuple[str, str], list[str]] = {}
    for problem in problems:
        places.setdefault((problem.what, problem.remedy), []).append(problem.where)
    return [Problem(where=_together(at), what=what, remedy=remedy) for (what, remedy), at in places.items()]


def _together(places: Sequence[str]) -> str:
    if len(places) <= _NAMED:
        return ", ".join(places)
    return f"{places[0]}, {places[1]} and {len(places) - 2} more"


def _pins_on_the_wider(corner: Corner) -> Problem:
    return Problem(
        where=corner.mark,
        what=f"{corner.pin_board} carries the pins and is wider than {corner.tail_board}.",
        remedy="Let front and back carry the pins where the back is raised or lowered.",
    )


def _joint(
    project: Project, ring: Ring, corner: Corner, boards: tuple[BoardSize, BoardSize], pins: tuple[Span, ...]
) -> Joint:
    pin, tail = boards
    begins = _begins(pin, tail)
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
        tail_from_nm=begins,
        tail_beyond_nm=Nm(tail.width_nm - pin.width_nm - begins),
    )


def _begins(pin: BoardSize, tail: BoardSize) -> Nm:
    """How far from the tail board's reference edge the pin board begins."""
    across = tail.lie.across
    (pin_low, pin_high), (low, high) = pin.place.along(across), tail.place.along(across)
    return Nm(pin_low - low) if sum(across) > 0 else Nm(high - pin_high)
