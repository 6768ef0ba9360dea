"""Loose shelves: boards that lie on pegs, at equal distances."""

from __future__ import annotations

from collections.abc import Iterator

from planner.derive.frame import FLAT
from planner.derive.parts import Item, Maker
from planner.domain.marks import board_mark
from planner.domain.plan import OpeningSize
from planner.domain.solid import FRONT, LEFT, RIGHT, UP
from planner.domain.space import LooseShelves
from planner.domain.words import Role
from planner.errors import PlanError, Problem


def loose_shelves(opening: OpeningSize, shelves: LooseShelves) -> Iterator[Item]:
    """The loose shelves of an opening, from the top down.

    Raises:
        PlanError: they fill it.
    """
    thick, half = shelves.stuff.thickness_nm, shelves.play_nm // 2
    left = opening.height_nm - shelves.count * thick
    if left <= 0:
        raise PlanError([
            Problem(where=opening.mark, what="its loose shelves fill it.", remedy="Take fewer, or thinner ones.")
        ])  # fmt: skip
    maker = Maker(opening.carcase, opening.carcase)
    flat = opening.place.shrunk(half, LEFT).shrunk(shelves.play_nm - half, RIGHT).shrunk(shelves.setback_nm, FRONT)
    for number in range(1, shelves.count + 1):
        top = opening.place.up[1] - left * number // (shelves.count + 1) - thick * (number - 1)
        mark = board_mark(opening.mark, Role.LOOSE_SHELF, number)
        yield maker.board(mark, Role.LOOSE_SHELF, shelves.stuff, FLAT, flat.with_span(UP, (top - thick, top)))
