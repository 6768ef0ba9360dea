"""What a sled can take, and which other sled of the project could when it can't."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from planner.domain.plan import BoardSize
from planner.domain.project import Project
from planner.domain.sled import Sled
from planner.domain.words import Hardness
from planner.errors import Problem
from planner.lengths import show_length


@dataclass(frozen=True, slots=True, kw_only=True)
class Limit:
    """One limit of a sled: what a board needs of it, and what it gives; None sets no limit."""

    needs: str
    needed_nm: int
    limit: str
    given_nm: int | None

    @property
    def kept(self) -> bool:
        """Whether the sled gives what is needed."""
        return self.given_nm is None or self.needed_nm <= self.given_nm


def limits(project: Project, sled: Sled, pin: BoardSize, tail: BoardSize) -> Iterator[Limit]:
    """All limits of a sled for one pin end."""
    height = tail.thickness_nm + project.proud_nm
    hard = project.material(pin.material).hardness is Hardness.HARD
    depth = sled.greatest_depth_hard_nm if hard else sled.greatest_depth_soft_nm
    yield Limit(
        needs="the bit would stand {} high",
        needed_nm=height,
        limit="bit height",
        given_nm=sled.greatest_bit_height_nm,
    )
    yield Limit(
        needs="{} would be cut at once",
        needed_nm=height,
        limit=f"cut in {'hard' if hard else 'soft'} wood",
        given_nm=depth,
    )
    yield Limit(
        needs="the pin board is {} wide",
        needed_nm=pin.width_nm,
        limit="board width",
        given_nm=sled.greatest_width_nm,
    )
    yield Limit(
        needs="the pin board is {} long and stands upright",
        needed_nm=pin.length_nm,
        limit="upright board",
        given_nm=sled.greatest_upright_nm,
    )


def takes(project: Project, sled: Sled, pin: BoardSize, tail: BoardSize) -> bool:
    """Whether a sled can take this pin end."""
    return all(limit.kept for limit in limits(project, sled, pin, tail))


def sled_problems(project: Project, sled: Sled, pin: BoardSize, tail: BoardSize, *, where: str) -> list[Problem]:
    """Each limit of the sled that this pin end breaks, with what would keep it."""

    def show(length: int) -> str:
        return show_length(length, project.grid.fine, with_unit=True)

    return [
        Problem(
            where=where,
            what=f"{limit.needs.format(show(limit.needed_nm))}; sled {sled.name!r} takes {show(limit.given_nm or 0)} "
            f"as its greatest {limit.limit}.",
            remedy=_remedy(project, sled, pin, tail),
        )
        for limit in limits(project, sled, pin, tail)
        if not limit.kept
    ]


def _remedy(project: Project, sled: Sled, pin: BoardSize, tail: BoardSize) -> str:
    others = [other.name for other in project.sleds if other is not sled and takes(project, other, pin, tail)]
    ways = [f"take sled {name!r}" for name in others]
    if takes(project, sled, tail, pin):
        ways.append(f"let {tail.mark} carry the pins")
    ways.append("change the size" if ways else "Take another sled, or change the size")
    remedy = ", or ".join(ways)
    return f"{remedy[0].upper()}{remedy[1:]}."
