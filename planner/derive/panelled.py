"""Frame and panel: a door, a lid or a back made of stiles and rails, with panels that may move in their grooves.

The whole is seen as if it were one board: the stiles run along its grain from end A to end B, stile 1 at its reference
edge, stile 2 at its far edge. Rails stand across between them, the first at end A. Muntins stand between panels that
are side by side, along the stiles. The grain of muntins and panels runs along the stiles. Numbers run across first,
then along, so from the reference edge and end A.

One groove, as wide as the panels are thick, runs in the middle of the thickness along every inner edge. On the
stiles it is run through from end to end, in one pass; at both ends the tenons of the outer rails fill it. Tenons are
as thick as the groove is wide, and lose to the rail's own groove what that takes from its inner edge. Where they are
longer than the groove is deep, a mortise goes on below it. Then the outermost third of an outer rail's tenon, on the
grid, is cut back to a haunch as long as the groove is deep, so that the mortise keeps off the end of the stile.
Muntins have stub tenons in the rails' grooves. Panels are free everywhere.

Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from planner.derive.frame import in_piece
from planner.derive.parts import Item, LetIn, Maker, Shape
from planner.domain.marks import board_mark
from planner.domain.panelled import Made, Panelled
from planner.domain.plan import BoardSize
from planner.domain.ring import Stuff
from planner.domain.solid import Lie, Solid, opposite
from planner.domain.words import FeatureKind, Held, Role
from planner.errors import PlanError, Problem
from planner.lengths import Grid, Nm, on_grid, show_length


def made_of(maker: Maker, made: Made, whole: BoardSize, grid: Grid) -> Iterator[Item]:
    """A door, a lid or a back.

    Args:
        maker: of its boards.
        made: one slab, or a frame with panels.
        whole: what it would be as one board: its mark, the way it lies and what it fills.
        grid: step to which haunches are rounded and lengths are shown.

    Returns:
        The slab itself; or all boards of the frame, named after it, and their cuts.

    Raises:
        PlanError: the frame can't be made; all reasons are named.
    """
    if not isinstance(made, Panelled):
        yield whole
        return
    wrong = tuple(_wrong(made, whole, grid))
    if wrong:
        raise PlanError(wrong)
    frame = _Frame(maker, made, whole, on_grid((made.rail_nm - made.groove_nm) // 3, grid))
    yield from frame.stiles()
    yield from frame.rails()
    yield from frame.muntins()
    yield from frame.panels()


def _wrong(made: Panelled, whole: BoardSize, grid: Grid) -> Iterator[Problem]:
    """Why a frame can't be made."""

    def show(length: int) -> str:
        return show_length(length, grid, with_unit=True)

    rules = (*_no_room(made, whole, show), *_no_wood(made, show), *_no_hold(made, show))
    yield from (Problem(where=whole.mark, what=what, remedy=remedy) for broken, what, remedy in rules if broken)


_Rules = Iterator[tuple[bool, str, str]]
"""Whether a rule is broken, how, and what would be right."""


def _no_room(made: Panelled, whole: BoardSize, show: Callable[[int], str]) -> _Rules:
    across = 2 * made.stile_nm + (made.wide - 1) * made.rail_nm
    along = (made.high + 1) * made.rail_nm
    yield (
        across >= whole.width_nm,
        f"is {show(whole.width_nm)} across its stiles, stiles and muntins take {show(across)}: no panel is left.",
        "Take narrower stiles, fewer panels side by side, or make it wider.",
    )
    yield (
        along >= whole.length_nm,
        f"is {show(whole.length_nm)} along its stiles, rails take {show(along)}: no panel is left.",
        "Take narrower rails, fewer panels, or make it longer.",
    )


def _no_wood(made: Panelled, show: Callable[[int], str]) -> _Rules:
    thick, groove = made.stuff.thickness_nm, made.groove_nm
    both = max(made.wide, made.high) > 1
    where = " on both edges" if both else ""
    yield (
        made.panel.thickness_nm >= thick,
        f"a groove for panels {show(made.panel.thickness_nm)} thick leaves no wood in a frame {show(thick)} thick.",
        "Take thinner panels or a thicker frame; a third of its thickness is usual.",
    )
    yield (
        groove >= made.stile_nm,
        f"a groove {show(groove)} deep goes right through stiles {show(made.stile_nm)} wide.",
        "Take a shallower groove or wider stiles.",
    )
    yield (
        groove * (1 + both) >= made.rail_nm,
        f"grooves {show(groove)} deep{where} leave no wood in rails {show(made.rail_nm)} wide.",
        "Take shallower grooves or wider rails.",
    )


def _no_hold(made: Panelled, show: Callable[[int], str]) -> _Rules:
    groove, tenon = made.groove_nm, made.tenon_nm
    yield (
        tenon < groove,
        f"tenons {show(tenon)} long don't fill a groove {show(groove)} deep.",
        "Make them at least as long as the groove is deep.",
    )
    yield (
        tenon >= made.stile_nm,
        f"tenons {show(tenon)} long come out through stiles {show(made.stile_nm)} wide.",
        "Make them shorter than the stiles are wide, or take wider stiles.",
    )
    yield (
        made.play_nm >= groove,
        f"panels with {show(made.play_nm)} of play can slip out of a groove {show(groove)} deep.",
        "Give them less play or take a deeper groove.",
    )


@dataclass(frozen=True, slots=True)
class _Frame:
    """A frame in the making.

    Places count as on the whole as one board: from end A, from the reference edge, from the outside face. ``haunch``
    is the width of the haunches.
    """

    maker: Maker
    made: Panelled
    whole: BoardSize
    haunch: int

    def stiles(self) -> Iterator[Item]:
        """Both stiles, each with its groove from end to end."""
        left, right = self._between
        through, groove = (0, self.whole.length_nm), self.made.groove_nm
        for number, edges, cut, column in (
            (1, (0, left), (left - groove, left), 0),
            (2, (right, self.whole.width_nm), (right, right + groove), self.made.wide - 1),
        ):
            yield self._board(Role.STILE, number, self.whole.lie, self._block(through, edges))
            yield self._groove(self._mark(Role.STILE, number), through, cut, self._panel(0, column))

    def rails(self) -> Iterator[Item]:
        """The rails with their tenons, from end A; the outer ones have one groove, those between have two."""
        rows, groove = self._rows, self.made.groove_nm
        left, right = self._between
        reach = (left - self.made.tenon_nm, right + self.made.tenon_nm)
        lie = Lie(across=opposite(self.whole.lie.along), out=self.whole.lie.out)
        starts, stops = (0, *(stop for _, stop in rows)), (*(start for start, _ in rows), self.whole.length_nm)
        for row, (start, stop) in enumerate(zip(starts, stops, strict=True)):
            mark = self._mark(Role.FRAME_RAIL, row + 1)
            yield self._board(Role.FRAME_RAIL, row + 1, lie, self._block((start, stop), reach))
            low, high = start, stop
            if row > 0:
                low += groove
                yield self._groove(mark, (start, low), reach, self._panel(row - 1, 0))
            if row < len(rows):
                high -= groove
                yield self._groove(mark, (high, stop), reach, self._panel(row, 0))
            yield from self._tenons(mark, (low, high), outer=row in {0, len(rows)})

    def _tenons(self, mark: str, edges: tuple[int, int], *, outer: bool) -> Iterator[Item]:
        """Both tenons of a rail, and what is more than the stile's groove takes: mortises, and haunches in front."""
        left, right = self._between
        groove, tenon = self.made.groove_nm, self.made.tenon_nm
        low, high = edges
        haunch = (low, low + self.haunch) if low == 0 else (high - self.haunch, high)
        deep = (low + self.haunch, high) if low == 0 else (low, high - self.haunch)
        for stile, reach, tip in (
            (1, (left - tenon, left), (left - tenon, left - groove)),
            (2, (right, right + tenon), (right + groove, right + tenon)),
        ):
            yield Shape(board=mark, block=self._block(edges, reach, self._middle), kind=FeatureKind.TENON)
            if tenon == groove:
                continue
            if outer:
                yield Shape(board=mark, block=self._block(haunch, tip), kind=FeatureKind.NOTCH)
            room = self._block(deep if outer else edges, reach, self._middle)
            yield LetIn(guest=mark, host=self._mark(Role.STILE, stile), room=room, kind=FeatureKind.MORTISE)

    def muntins(self) -> Iterator[Item]:
        """The muntins with their stub tenons, and the grooves for the panels at both sides."""
        groove, columns = self.made.groove_nm, self._columns
        for row, (start, stop) in enumerate(self._rows):
            for column in range(self.made.wide - 1):
                number = row * (self.made.wide - 1) + column + 1
                mark = self._mark(Role.MUNTIN, number)
                left, right = columns[column][1], columns[column + 1][0]
                reach = (start - groove, stop + groove)
                yield self._board(Role.MUNTIN, number, self.whole.lie, self._block(reach, (left, right)))
                for end in ((start - groove, start), (stop, stop + groove)):
                    stub = self._block(end, (left + groove, right - groove), self._middle)
                    yield Shape(board=mark, block=stub, kind=FeatureKind.TENON)
                for beside, cut in ((column, (left, left + groove)), (column + 1, (right - groove, right))):
                    yield LetIn(
                        guest=self._panel(row, beside),
                        host=mark,
                        room=self._block(reach, cut, self._middle),
                        kind=FeatureKind.GROOVE,
                        held=Held.FREE,
                    )

    def panels(self) -> Iterator[Item]:
        """The panels, smaller than their rooms by the play, half of it at each edge and end."""
        (half, rest), lie = _halves(self.made.play_nm), self.whole.lie
        ways = (lie.along, lie.across)
        for row in range(self.made.high):
            for column in range(self.made.wide):
                place = self._room(row, column)
                place = place.shrunk(half, *map(opposite, ways)).shrunk(rest, *ways)
                number = row * self.made.wide + column + 1
                yield self._board(Role.PANEL, number, lie, place, self.made.panel)

    @property
    def _rows(self) -> tuple[tuple[int, int], ...]:
        """Clear spaces between the rails."""
        return _shared(self.whole.length_nm, self.made.rail_nm, self.made.rail_nm, self.made.high)

    @property
    def _columns(self) -> tuple[tuple[int, int], ...]:
        """Clear spaces between stiles and muntins."""
        return _shared(self.whole.width_nm, self.made.stile_nm, self.made.rail_nm, self.made.wide)

    @property
    def _between(self) -> tuple[int, int]:
        """From the inner edge of stile 1 to that of stile 2."""
        return self.made.stile_nm, self.whole.width_nm - self.made.stile_nm

    @property
    def _middle(self) -> tuple[int, int]:
        """The middle of the thickness: the groove, and what fits it."""
        before = (self.made.stuff.thickness_nm - self.made.panel.thickness_nm) // 2
        return before, before + self.made.panel.thickness_nm

    def _mark(self, role: Role, number: int) -> str:
        return board_mark(self.whole.mark, role, number)

    def _panel(self, row: int, column: int) -> str:
        return self._mark(Role.PANEL, row * self.made.wide + column + 1)

    def _room(self, row: int, column: int) -> Solid:
        """What is cleared for a panel, grooves included."""
        (start, stop), (left, right), groove = self._rows[row], self._columns[column], self.made.groove_nm
        return self._block((start - groove, stop + groove), (left - groove, right + groove), self._middle)

    def _board(self, role: Role, number: int, lie: Lie, place: Solid, stuff: Stuff | None = None) -> BoardSize:
        return self.maker.board(self._mark(role, number), role, stuff or self.made.stuff, lie, place)

    def _groove(self, mark: str, x: tuple[int, int], u: tuple[int, int], takes: str) -> Shape:
        """A groove that tenons and, may be, several panels share; it is named after the first of these."""
        block = self._block(x, u, self._middle)
        return Shape(board=mark, block=block, kind=FeatureKind.GROOVE, takes=takes, held=Held.FREE)

    def _block(self, x: tuple[int, int], u: tuple[int, int], y: tuple[int, int] | None = None) -> Solid:
        """A block of the piece from places on the whole; without ``y`` as thick as the frame."""
        x_nm, u_nm, y_nm = ((Nm(low), Nm(high)) for low, high in (x, u, y or (0, self.made.stuff.thickness_nm)))
        return in_piece(self.whole, x_nm, u_nm, y_nm)


def _shared(size: int, edge: int, bar: int, count: int) -> tuple[tuple[int, int], ...]:
    """Spaces alike, to the nanometre, between two edges and the bars that part them."""
    left = size - 2 * edge - (count - 1) * bar
    return tuple((edge + bar * n + left * n // count, edge + bar * n + left * (n + 1) // count) for n in range(count))


def _halves(whole: int) -> tuple[int, int]:
    return whole // 2, whole - whole // 2
