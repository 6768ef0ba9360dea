"""A separate top: a board laid on the carcase, its grain from side to side.

It is fixed from below by screws in slots, so that it may move across its grain; that is work at the bench and no
cut in these boards. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from planner.derive.frame import FLAT
from planner.derive.parts import Item, Maker
from planner.domain.carcase import Carcase
from planner.domain.marks import board_mark
from planner.domain.solid import BACK, FRONT, LEFT, RIGHT, UP, Solid
from planner.domain.words import Role


def separate_top(maker: Maker, carcase: Carcase, outside: Solid) -> Iterator[Item]:
    """The top of a carcase that fills ``outside``, if it has one; it lies on it and stands over it."""
    top = carcase.top
    if top is None:
        return
    place = outside.beside(UP, 0, top.stuff.thickness_nm)
    place = place.grown(FRONT, top.front_nm).grown(BACK, top.back_nm).shrunk(-top.sides_nm, LEFT, RIGHT)
    yield maker.board(board_mark(carcase.ring.mark, Role.SEPARATE_TOP), Role.SEPARATE_TOP, top.stuff, FLAT, place)
