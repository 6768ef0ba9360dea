"""How columns and tiers share the clear size, exact to the nanometre.

Shared sizes are rounded to the step that the project shows, so that they can be set out with a rule, and always add
up to the clear size: what the rounding leaves goes to the last part that takes a share, usually the bottom tier.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from planner.domain.space import Division, Space
from planner.domain.words import HeightRule
from planner.errors import PlanError, Problem
from planner.lengths import Grid, Nm, on_grid, show_length


def sizes(division: Division, clear: int, grid: Grid, *, where: str) -> tuple[Nm, ...]:
    """Clear size of each space of a division.

    Args:
        division: the division.
        clear: what they share; that of the dividers is already taken off.
        grid: step to which shares are rounded.
        where: what to call the division in a refusal.

    Raises:
        PlanError: what is said does not add up, or nothing is left for a share.
    """
    count = len(division.spaces)
    match division.rule:
        case HeightRule.EQUAL | HeightRule.LISTED:
            return shared(clear, division.spaces, grid, where=where)
        case HeightRule.STEP:
            step = division.step_nm or 0
            least = Fraction(clear, count) - Fraction(step * (count - 1), 2)
            return rounded([least + step * i for i in range(count)], grid, where=where)
        case HeightRule.RATIO:
            weights = [(division.ratio or Fraction(1)) ** i for i in range(count)]
            return rounded([clear * weight / sum(weights) for weight in weights], grid, where=where)


def shared(clear: int, spaces: Sequence[Space], grid: Grid, *, where: str) -> tuple[Nm, ...]:
    """Sizes that fill ``clear``: those said as said, the others by their shares, the last taking the remainder.

    Raises:
        PlanError: everything is said and does not add up, or nothing is left to share.
    """
    left = clear - sum(space.size_nm for space in spaces if space.size_nm is not None)
    shares = [space.share for space in spaces if space.size_nm is None]
    if not shares:
        if left:
            raise PlanError([_does_not_add_up(clear, left, grid, where)])
        return tuple(space.size_nm for space in spaces if space.size_nm is not None)
    if left <= 0:
        raise PlanError([_nothing_left(clear, left, grid, where)])
    taken = iter(rounded([left * share / sum(shares) for share in shares], grid, where=where))
    return tuple(next(taken) if space.size_nm is None else space.size_nm for space in spaces)


def rounded(ideal: Sequence[Fraction], grid: Grid, *, where: str) -> tuple[Nm, ...]:
    """Ideal sizes brought to the grid, the last taking what that leaves, so that the sum stays exact.

    Raises:
        PlanError: one of them comes to nothing.
    """
    if min(ideal) <= 0:
        clear = int(sum(ideal))
        raise PlanError([
            Problem(
                where=where,
                what=f"the smallest would be {show_length(round(min(ideal)), grid, with_unit=True)} "
                f"when {len(ideal)} share {show_length(clear, grid, with_unit=True)}.",
                remedy="Give a smaller step or ratio, fewer of them, or more room.",
            )
        ])  # fmt: skip
    found = [on_grid(round(size), grid) for size in ideal[:-1]]
    found.append(Nm(int(sum(ideal)) - sum(found)))
    if min(found) <= 0:
        raise PlanError([_nothing_left(int(sum(ideal)), min(found), grid, where)])
    return tuple(found)


def _does_not_add_up(clear: int, left: int, grid: Grid, where: str) -> Problem:
    return Problem(
        where=where,
        what=f"the sizes given are {show_length(abs(left), grid, with_unit=True)} "
        f"too {'small' if left > 0 else 'great'} for the clear {show_length(clear, grid, with_unit=True)}.",
        remedy='Let one of them take what is left (in a list of heights "rest"; else leave its size out), or change '
        "one by that much.",
    )


def _nothing_left(clear: int, left: int, grid: Grid, where: str) -> Problem:
    return Problem(
        where=where,
        what=f"of the clear {show_length(clear, grid, with_unit=True)}, {show_length(left, grid, with_unit=True)} "
        "would be left to share.",
        remedy="Give smaller sizes, thinner rails, fewer of them, or more room.",
    )
