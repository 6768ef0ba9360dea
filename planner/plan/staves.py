"""Panels: boards wider than the wood, glued up from staves.

Staves of a panel are equally wide and as few as can be. Each edge that is glued loses a little to the jointer. One
panel should come from as few different boards as possible, so that its colour is even: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from planner.domain.plan import BoardSize
from planner.domain.project import Project
from planner.domain.words import MaterialKind
from planner.lengths import Nm
from planner.plan.rough import RoughPart, Use, allowances_of, rough_board, stock_of, up_to_step

MOST_STAVES = 100
"""A panel of more is a slip of the pen in the greatest stave."""


def in_staves(part: RoughPart, project: Project, widest: Nm | None) -> tuple[RoughPart, ...]:
    """The part itself, or the staves that it is glued up from.

    Args:
        part: as it comes from ``rough``.
        project: whose part it is.
        widest: the widest stave that the wood gives; None where no wood is known.
    """
    said = allowances_of(project, part.material).greatest_stave_nm
    greatest = min((each for each in (said, widest) if each is not None), default=None)
    if part.kind is MaterialKind.SHEET or greatest is None or part.width_nm <= greatest:
        return (part,)
    stock = stock_of(project)
    widths = stave_widths(part.width_nm, stock.joint_nm, (stock.least_stave_nm, greatest))
    if widths is None:
        return (part,)
    return tuple(
        replace(part, mark=f"{part.mark}/{number}", use=Use.STAVE, width_nm=up_to_step_within(width, greatest, project))
        for number, width in enumerate(widths, start=1)
    )


def up_to_step_within(width: Nm, greatest: Nm, project: Project) -> Nm:
    """The width on a whole step, if that is not more than may be."""
    return min(up_to_step(width, project.unit), greatest)


def stave_widths(panel: Nm, joint: Nm, limits: tuple[Nm, Nm]) -> tuple[Nm, ...] | None:
    """Rough widths of the staves of a panel; None where the jointer eats them, or nobody glues up so many.

    The fewest staves that give the panel: n of them lose 2·(n − 1) edges. None is narrower than the least, whatever
    the panel gains by that.

    Args:
        panel: rough width that is wanted of the glued-up panel.
        joint: what each glued edge loses.
        limits: the least and the greatest rough width of a stave.
    """
    least, greatest = limits
    if greatest <= 2 * joint:
        return None
    # n·greatest − 2·(n − 1)·joint ≥ panel
    count = max(1, -(-(panel - 2 * joint) // (greatest - 2 * joint)))
    if count > MOST_STAVES:
        return None
    each = -(-(panel + 2 * (count - 1) * joint) // count)
    return (Nm(min(max(each, least), greatest)),) * count


def staves_said(project: Project, board: BoardSize) -> tuple[RoughPart, ...]:
    """The staves of a board that is wider than the maker's greatest stave; else nothing."""
    parts = in_staves(rough_board(project, board), project, None)
    return parts if len(parts) > 1 else ()
