"""Why a layout of pins can't be cut: the limit that it breaks, with its figures."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import pairwise

from planner.derive.offers import nearest_layouts
from planner.derive.pins import PinEnd, can_be_cut
from planner.derive.spacing import Places, places, tail_count
from planner.domain.spacing import Spacing
from planner.errors import Problem
from planner.lengths import Grid, show_length

Show = Callable[[int], str]


def layout_problem(end: PinEnd, spacing: Spacing, grid: Grid, *, where: str) -> Problem:
    """What is wrong with a layout that can't be cut, and the nearest that can."""

    def show(length: int) -> str:
        return show_length(length, grid.fine, with_unit=True)

    tails = tail_count(spacing) or 1
    at = places(end.width_nm, spacing, tails)
    broken = next(_broken(end, at, tails, show), "can't be cut.")
    offers = [offer.words(grid.fine) for offer in nearest_layouts(end, spacing)]
    remedy = f"This can be cut: {'; or '.join(offers)}." if offers else "Take a wider or thinner board, or a finer bit."
    return Problem(where=where, what=broken, remedy=remedy)


def _broken(end: PinEnd, at: Places, tails: int, show: Show) -> Iterator[str]:
    """Limits that are broken, the one that explains most first."""
    said = f"{tails} tail{'s' if tails > 1 else ''} on a board {show(end.width_nm)} wide"
    if any(b[0] < a[1] for a, b in pairwise(at.pins)) or any(a >= b for a, b in at.pins):
        yield f"{said}: the pins overlap on the outside face, or lie past the edges; there is no room between them."
    narrowest = round(min(at.sockets))
    inside = narrowest - 2 * end.slot.lean_nm(end.thickness_nm)
    if inside <= 0:
        yield (
            f"{said}: the pins overlap on the inside face. Sockets are {show(narrowest)} outside, and the slope takes "
            f"{show(narrowest - inside)} of that over the thickness of {show(end.thickness_nm)}."
        )
    if not can_be_cut(end, at):
        yield (
            f"{said}: the narrowest socket is {show(narrowest)} outside and {show(inside)} inside, "
            f"narrower than the slot of the bit, {show(end.slot.needs_nm)}."
        )
