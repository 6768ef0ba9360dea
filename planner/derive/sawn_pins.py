"""Pins of a closed box whose lid is sawn off: laid out as two joints, one below the saw line and one above.

Each part has a half-pin at each of its edges. The two that meet at the saw line are one pin, as wide as both and
the kerf between them, so that lid and box each keep a half-pin at the cut. How many tails a part has is chosen as
for a joint by itself. Where the maker says how many there are, the parts share them so that their tails are as
nearly as wide as can be. Listed pins stand where they are listed, and one of them must hold the saw line and both
half-pins.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from planner.derive.limits import layout_problem
from planner.derive.pins import PinEnd, choose_tails, counts_to_try, lay_out, least_socket
from planner.domain.box import Box, SawnLid
from planner.domain.project import Project
from planner.domain.ring import Ring
from planner.domain.spacing import Spacing
from planner.domain.words import EdgeName, Spread
from planner.errors import Problem
from planner.lengths import Grid, Nm, Span, show_length


def kerf_of(box: Box, lid: SawnLid) -> Span:
    """What the saw and planing take, from the reference edge: the lid is what lies above."""
    above = Nm(box.height_nm - lid.height_nm)
    return Nm(above - lid.kerf_nm), above


def saw_kerf(project: Project, ring: Ring) -> Span | None:
    """The same of the box that a ring belongs to; None when nothing is sawn off."""
    boxes = (box for box in project.boxes if box.ring.mark == ring.mark)
    return next((kerf_of(box, box.lid) for box in boxes if isinstance(box.lid, SawnLid)), None)


@dataclass(frozen=True, slots=True)
class SawnEnd:
    """A pin end that will be sawn in two.

    Attributes:
        end: the whole end.
        spacing: how its pins are spaced.
        kerf: what is lost, from the reference edge.
    """

    end: PinEnd
    spacing: Spacing
    kerf: Span

    @property
    def _box(self) -> PinEnd:
        return replace(self.end, width_nm=self.kerf[0])

    @property
    def _lid(self) -> PinEnd:
        return replace(self.end, width_nm=Nm(self.end.width_nm - self.kerf[1]))

    @property
    def _saw_pin(self) -> Span:
        """The least that a pin at the saw line must cover."""
        return Nm(self.kerf[0] - self.spacing.half_pin_nm), Nm(self.kerf[1] + self.spacing.half_pin_nm)

    def lay_out(self) -> tuple[Span, ...] | None:
        """Outside-face places of all pins from the reference edge, half-pins too; None when they can't be cut."""
        if self.spacing.spread is Spread.LISTED:
            pins = lay_out(self.end, self.spacing)
            low, high = self._saw_pin
            return pins if pins and any(a <= low and high <= b for a, b in pins) else None
        counts = self._counts()
        if counts is None:
            return None
        below, above = self._laid(self._box, counts[0]), self._laid(self._lid, counts[1])
        if below is None or above is None:
            return None
        up = self.kerf[1]
        raised = [(Nm(a + up), Nm(b + up)) for a, b in above]
        return (*below[:-1], (below[-1][0], raised[0][1]), *raised[1:])

    def _laid(self, part: PinEnd, tails: int) -> tuple[Span, ...] | None:
        return lay_out(part, replace(self.spacing, tails=tails))

    def _counts(self) -> tuple[int, int] | None:
        """Tails of the box and of the lid; None when there is no such pair."""
        asked = self.spacing.tails
        if asked is None:
            below, above = (choose_tails(part, self.spacing) for part in (self._box, self._lid))
            return None if below is None or above is None else (below, above)
        shares = sorted((self._unlike(asked - above, above), above) for above in range(1, asked))
        pairs = ((asked - above, above) for _, above in shares)
        return next((pair for pair in pairs if self._both(*pair)), None)

    def _both(self, below: int, above: int) -> bool:
        """Whether both parts can have so many tails."""
        return None not in (self._laid(self._box, below), self._laid(self._lid, above))

    def _unlike(self, below: int, above: int) -> Fraction:
        """How much the tails of the two parts differ in width, on average."""
        return abs(self._mean(self._box, below) - self._mean(self._lid, above))

    def _mean(self, part: PinEnd, tails: int) -> Fraction:
        pins = 2 * self.spacing.half_pin_nm + (tails - 1) * self.spacing.pin_nm
        return Fraction(part.width_nm - pins, tails)

    def problems(self, grid: Grid, *, where: str) -> Iterator[Problem]:
        """Why the end can't be laid out: the part that can't, or what is wrong with what was asked for."""
        if self.spacing.spread is Spread.LISTED:
            yield self._listed_problem(grid, where)
            return
        parts = {"box": self._box, "lid": self._lid}
        most = {name: self._most(part) for name, part in parts.items()}
        yield from (self._part_problem(name, parts[name], grid, where) for name in parts if not most[name])
        if all(most.values()):
            asked = f"{self.spacing.tails} tail{'' if self.spacing.tails == 1 else 's'}"
            yield Problem(
                where=where,
                what=f"{asked} can't be shared out: the box takes 1 to {most['box']} below the saw line, the lid 1 to "
                f"{most['lid']} above it.",
                remedy=f"Ask for 2 to {sum(most.values())} tails, or leave the number to the planner.",
            )

    def _most(self, part: PinEnd) -> int:
        """The most tails that a part can have; 0 when not even one can be cut."""
        return max((count for count in counts_to_try(part, self.spacing) if self._laid(part, count)), default=0)

    def _part_problem(self, name: str, part: PinEnd, grid: Grid, where: str) -> Problem:
        """Why a part can't have even one tail, and how high it must be for one."""
        one = replace(self.spacing, tails=1)
        least = _up(2 * self.spacing.half_pin_nm + least_socket(part), grid)
        high, needed = (show_length(length, grid.fine, with_unit=True) for length in (part.width_nm, least))
        return Problem(
            where=where,
            what=f"the {name} can't be laid out, {high} high beside the saw line: "
            f"{layout_problem(part, one, grid, where=where).what}",
            remedy=f"Make the {name} at least {needed} high, or take narrower half-pins or a finer bit.",
        )

    def _listed_problem(self, grid: Grid, where: str) -> Problem:
        """What the list lacks, in places from the edge that it is measured from."""
        far, wide = self.spacing.measured_from is EdgeName.FAR, self.end.width_nm
        (a, b), (c, d) = ((wide - high, wide - low) if far else (low, high) for low, high in (self.kerf, self._saw_pin))
        start, stop, low, high = (show_length(length, grid.fine) for length in (a, b, -_up(-c, grid), _up(d, grid)))
        what = (
            layout_problem(self.end, self.spacing, grid, where=where).what
            if lay_out(self.end, self.spacing) is None
            else f"no listed pin holds the saw line, {start} to {stop} {grid.unit} from the "
            f"{self.spacing.measured_from}, and a half-pin on each side of it."
        )
        return Problem(
            where=where,
            what=what,
            remedy=f"List a pin from {low} to {high} {grid.unit} or wider, clear of its neighbours.",
        )


def _up(length: int, grid: Grid) -> Nm:
    """A length rounded up to what can be set out."""
    step = grid.fine.step_nm
    return Nm(-(-length // step) * step)
