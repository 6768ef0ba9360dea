"""How many clamps and how many people an operation takes: rough, to be ready for it.

Clamps: one for each 150 mm (6 in) of width of every board whose ends are pressed home, at least one. Common practice,
no source.

People: two, where what is lifted weighs more than 23 kg (51 lb), the load constant of the lifting equation in NIOSH
publication 94-110; where a board is longer than one can guide alone; and where a glue-up is longer than one can close
alone. The lengths are common practice, no source. Weight is reckoned at 700 kg/m³, a hardwood such as oak.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import prod

from planner.domain.plan import BoardSize
from planner.lengths import Grid, Nm, mm

_MM = Grid.MM_TENTH.step_nm * 10

CLAMP_EVERY_NM = Nm(150 * _MM)
MOST_KG = 23
LONG_TO_GUIDE_NM = Nm(2400 * _MM)
LONG_TO_CLOSE_NM = Nm(1200 * _MM)

_KG_PER_CUBIC_METRE = 700
_CUBIC_MM = 10**9
"""In a cubic metre."""


def clamps(pressed: Iterable[BoardSize]) -> int:
    """How many clamps press the ends of these boards home."""
    return sum(-(-board.width_nm // CLAMP_EVERY_NM) for board in pressed)


def clamps_along(board: BoardSize) -> int:
    """How many clamps press a board on along its length."""
    return -(-board.length_nm // CLAMP_EVERY_NM)


def hands(lifted: Sequence[BoardSize], longest_alone: Nm) -> int:
    """How many people it takes to lift these boards at once, and to manage the longest of them."""
    longest = max((board.length_nm for board in lifted), default=0)
    return 2 if longest > longest_alone or weight_kg(lifted) > MOST_KG else 1


def weight_kg(boards: Iterable[BoardSize]) -> float:
    """What boards weigh, roughly."""
    sizes = ((board.length_nm, board.width_nm, board.thickness_nm) for board in boards)
    return sum(prod(map(mm, size)) for size in sizes) / _CUBIC_MM * _KG_PER_CUBIC_METRE
