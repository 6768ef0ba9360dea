"""Passes of one socket: where the sled must stand so that the bit clears the socket and enters no pin.

A socket is ``w_out`` wide on the outside face and narrows to ``w_in`` inside. At the right fence the slot leans with
the socket's right wall, at the left fence with its left wall; passes at one fence only shift sideways. With ``r``
passes at one fence and ``l`` at the other the strips reach ``a = min(r·k, w_in)`` and ``b = min(l·k, w_in)`` from their
walls, no further, or they would enter the opposite pin. The socket is clear when ``a + b ≥ w_out``, since it is widest
outside. If even ``2·w_in < w_out``, a wedge stays for the chisel: a triangle of area ``(w_out − a − b)²·n/4``.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import count

from planner.derive.slot import Slot
from planner.lengths import Nm, mm

NEGLIGIBLE_MM2 = 0.01
"""A wedge smaller than this is dust: it is reported, but nobody needs to pick up a chisel."""

SLIVER_NM = 1_000
"""A sliver thinner than a micrometre is not worth a pass."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SocketCut:
    """How a socket is cleared.

    Attributes:
        first: shifts from the wall into the socket, one for each pass at the fence that comes first; the first is 0.
        second: the same at the other fence, from the other wall.
        residue_mm2: area of end grain that stays.
    """

    first: tuple[Nm, ...]
    second: tuple[Nm, ...]
    residue_mm2: float


def clear_socket(wide_nm: Nm, thickness_nm: Nm, slot: Slot) -> SocketCut:
    """Fewest passes that leave the least: one at the first fence if that can be, the rest at the second.

    Passes overlap evenly, so that a hair's breadth in setting leaves no sliver between them.

    Args:
        wide_nm: width of the socket on the outside face.
        thickness_nm: thickness of the pin board.
        slot: the sled's slot; the socket must be at least ``slot.needs_nm`` wide inside.
    """
    narrow = wide_nm - 2 * slot.lean_nm(thickness_nm)
    wanted = min(wide_nm, 2 * narrow)
    k = slot.clears_nm

    def reach(passes: int) -> int:
        return min(passes * k, narrow)

    first, second = next(
        (first, passes - first)
        for passes in count(2)
        for first in range(1, passes)
        if reach(first) + reach(passes - first) >= wanted - SLIVER_NM
    )
    slack = max(0, reach(first) + reach(second) - wanted)
    overlap = slack // (first + second - 1)
    shifts_first = _shifts(first, overlap, narrow, slot)
    shifts_second = _shifts(second, overlap, narrow, slot)
    left_nm = wide_nm - shifts_first[-1] - shifts_second[-1]
    gap_mm = mm(left_nm) - 2 * slot.width_mm
    return SocketCut(
        first=shifts_first,
        second=shifts_second,
        residue_mm2=max(0.0, gap_mm) ** 2 * float(slot.slope) / 4,
    )


def _shifts(passes: int, overlap: int, narrow: int, slot: Slot) -> tuple[Nm, ...]:
    """Evenly spaced shifts of the passes at one fence, from 0 to the last that enters no pin."""
    if passes == 1:
        return (Nm(0),)
    last = min((passes - 1) * (slot.clears_nm - overlap), narrow - slot.needs_nm)
    return tuple(Nm(last * i // (passes - 1)) for i in range(passes))
