"""What a carcase stands on: a plinth or a stand, below it, from its underside down to the floor.

Fixing the two together is work at the bench and takes no board.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from planner.derive.parts import Item, Maker
from planner.derive.plinths import plinth, plinth_problems
from planner.derive.stands import stand, stand_problems
from planner.domain.carcase import Carcase, Plinth, Stand
from planner.domain.project import Project
from planner.domain.solid import BACK, DOWN, FRONT, LEFT, RIGHT, Solid
from planner.domain.words import RingKind, Role
from planner.errors import PlanError, Problem
from planner.lengths import Grid, Nm, show_length


def base(project: Project, maker: Maker, carcase: Carcase, outside: Solid) -> Iterator[Item]:
    """The base of a carcase that fills ``outside``, if it has one.

    Raises:
        PlanError: feet, legs, aprons or tenons that there is no room for; all of them are named.
    """
    how, grid = carcase.base, project.grid
    if how is None:
        return
    block = base_block(how, outside)
    if isinstance(how, Plinth):
        thick = {board.role: board.stuff.thickness_nm for board in how.ring.boards}
        _refuse([*_not_below(how.ring.mark, how, thick, grid), *plinth_problems(how, block, grid)])
        yield from plinth(maker, how, block, project.proud_nm)
    else:
        thick = dict.fromkeys(RingKind.UPRIGHT.roles, how.leg.thickness_nm)
        where = f"{carcase.ring.mark} stand"
        _refuse([*_not_below(where, how, thick, grid), *stand_problems(where, how, block, grid)])
        yield from stand(maker, how, block, grid)


def base_block(how: Plinth | Stand, outside: Solid) -> Solid:
    """What a base fills below a carcase that fills ``outside``."""
    block = outside.beside(DOWN, 0, how.height_nm)
    return block.shrunk(how.front_nm, FRONT).shrunk(how.sides_nm, LEFT, RIGHT).shrunk(how.back_nm, BACK)


def _refuse(wrong: list[Problem]) -> None:
    if wrong:
        raise PlanError(wrong)


def _not_below(where: str, how: Plinth | Stand, thick: Mapping[Role, Nm], grid: Grid) -> Iterator[Problem]:
    """Sides at which the base stands out so far that the carcase does not rest on it."""
    stands_back = {
        Role.FRONT: how.front_nm,
        Role.RIGHT: how.sides_nm,
        Role.BACK: how.back_nm,
        Role.LEFT: how.sides_nm,
    }
    for role, back in stands_back.items():
        if -back >= thick[role]:
            deep, out = (show_length(length, grid, with_unit=True) for length in (thick[role], -back))
            yield Problem(
                where=where,
                what=f"stands out {out} at the {role} and is {deep} thick there: the carcase does not rest on it.",
                remedy=f"Let it stand out less than {deep}.",
            )
