"""How a carcase is divided: columns, openings and rails, exact to the nanometre.

Shared sizes are rounded to the step that the project shows, so that they can be set out with a rule, and always add
up to the clear space: what the rounding leaves goes to the last part, which is the bottom drawer of a column.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from planner.domain.carcase import Carcase, Column
from planner.domain.plan import OpeningSize
from planner.domain.project import Project
from planner.domain.words import HeightRule, Role
from planner.errors import PlanError, Problem
from planner.lengths import Grid, Nm, on_grid, show_length, total


def inside_width(carcase: Carcase) -> Nm:
    """Clear width between the two sides."""
    ring = carcase.ring
    return Nm(carcase.width_nm - ring.board(Role.LEFT).stuff.thickness_nm - ring.board(Role.RIGHT).stuff.thickness_nm)


def inside_height(carcase: Carcase) -> Nm:
    """Clear height between top and bottom."""
    ring = carcase.ring
    return Nm(carcase.height_nm - ring.board(Role.TOP).stuff.thickness_nm - ring.board(Role.BOTTOM).stuff.thickness_nm)


def inside_depth(carcase: Carcase) -> Nm:
    """Clear depth from the front edge to the back panel, or to the back edge without one."""
    return Nm(carcase.depth_nm - (carcase.back.stuff.thickness_nm if carcase.back else 0))


def column_widths(carcase: Carcase, grid: Grid) -> tuple[Nm, ...]:
    """Clear width of each column, left to right; with the partitions they make up the inside width."""
    partition = carcase.partitions.stuff.thickness_nm if carcase.partitions else 0
    clear = inside_width(carcase) - partition * (len(carcase.columns) - 1)
    said = [column.width_nm for column in carcase.columns]
    return shared(clear, said, grid, where=f"{carcase.ring.mark} column widths")


def opening_heights(carcase: Carcase, column: Column, grid: Grid, *, where: str) -> tuple[Nm, ...]:
    """Clear height of each opening of a column, from the top down; with the rails they make up the inside height."""
    count = len(column.openings)
    rail = carcase.rails.stuff.thickness_nm if carcase.rails else 0
    clear = inside_height(carcase) - rail * (count - 1)
    match column.heights:
        case HeightRule.EQUAL | HeightRule.LISTED:
            return shared(clear, [opening.height_nm for opening in column.openings], grid, where=where)
        case HeightRule.STEP:
            step = column.step_nm or 0
            least = Fraction(clear, count) - Fraction(step * (count - 1), 2)
            return rounded([least + step * i for i in range(count)], grid, where=where)
        case HeightRule.RATIO:
            weights = [(column.ratio or Fraction(1)) ** i for i in range(count)]
            return rounded([clear * weight / sum(weights) for weight in weights], grid, where=where)


def shared(clear: int, said: Sequence[Nm | None], grid: Grid, *, where: str) -> tuple[Nm, ...]:
    """Sizes that fill ``clear``: those said as said, the others equal, the last of these taking the remainder.

    Raises:
        PlanError: everything is said and does not add up, or nothing is left to share.
    """
    left = clear - sum(size for size in said if size is not None)
    takers = sum(size is None for size in said)
    if not takers:
        if left:
            raise PlanError([_does_not_add_up(clear, left, grid, where)])
        return tuple(size for size in said if size is not None)
    if left <= 0:
        raise PlanError([_nothing_left(clear, left, grid, where)])
    equal = iter(rounded([Fraction(left, takers)] * takers, grid, where=where))
    return tuple(next(equal) if size is None else size for size in said)


def rounded(ideal: Sequence[Fraction], grid: Grid, *, where: str) -> tuple[Nm, ...]:
    """Ideal sizes brought to the grid, the last taking what that leaves, so that the sum stays exact.

    Raises:
        PlanError: one of them comes to nothing.
    """
    if ideal[0] <= 0:
        clear = int(sum(ideal))
        raise PlanError([
            Problem(
                where=where,
                what=f"the first would be {show_length(round(ideal[0]), grid, with_unit=True)} "
                f"when {len(ideal)} share {show_length(clear, grid, with_unit=True)}.",
                remedy="Give a smaller step or ratio, fewer of them, or more room.",
            )
        ])  # fmt: skip
    sizes = [on_grid(round(size), grid) for size in ideal[:-1]]
    sizes.append(Nm(int(sum(ideal)) - sum(sizes)))
    if min(sizes) <= 0:
        raise PlanError([_nothing_left(int(sum(ideal)), min(sizes), grid, where)])
    return tuple(sizes)


def _does_not_add_up(clear: int, left: int, grid: Grid, where: str) -> Problem:
    return Problem(
        where=where,
        what=f"the sizes given are {show_length(abs(left), grid, with_unit=True)} "
        f"too {'small' if left > 0 else 'great'} for the clear {show_length(clear, grid, with_unit=True)}.",
        remedy='Give one of them as "rest", or change one by that much.',
    )


def _nothing_left(clear: int, left: int, grid: Grid, where: str) -> Problem:
    return Problem(
        where=where,
        what=f"of the clear {show_length(clear, grid, with_unit=True)}, {show_length(left, grid, with_unit=True)} "
        "would be left to share.",
        remedy="Give smaller sizes, thinner rails, fewer drawers, or more room.",
    )


def openings(project: Project) -> tuple[OpeningSize, ...]:
    """Every opening of a project, in the maker's order."""
    found: list[OpeningSize] = []
    for carcase in project.carcases:
        mark, depth = carcase.ring.mark, inside_depth(carcase)
        if min(inside_width(carcase), inside_height(carcase), depth) <= 0:
            raise PlanError([
                Problem(where=mark, what="has no inside: its boards are thicker than it is large.",
                        remedy="Check the outside sizes and the thicknesses.")
            ])  # fmt: skip
        widths = column_widths(carcase, project.grid)
        for number, (column, width) in enumerate(zip(carcase.columns, widths, strict=True), 1):
            heights = opening_heights(carcase, column, project.grid, where=f"{mark} column {number} heights")
            found += [
                OpeningSize(
                    carcase=mark,
                    column=number,
                    tier=tier,
                    drawer=opening.drawer.ring.mark,
                    width_nm=width,
                    height_nm=height,
                    depth_nm=depth,
                )
                for tier, (opening, height) in enumerate(zip(column.openings, heights, strict=True), 1)
            ]
    return tuple(found)


def offsets(sizes: Sequence[Nm], between: Nm) -> tuple[Nm, ...]:
    """Where each of a run of clear sizes begins, with ``between`` between them."""
    return tuple(total([*sizes[:i], between * i]) for i in range(len(sizes)))
