"""The clear spaces of a carcase, found between its boards as they stand, and held against what was asked for."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from planner.domain.carcase import Carcase
from planner.domain.drawer import Drawer
from planner.domain.marks import board_mark, space_mark
from planner.domain.space import Division, Space
from planner.domain.words import DividerKind, Role, Stands, Way
from tests.oracle.assembly_bench import Bench
from tests.oracle.assembly_glue import Finding, Group
from tests.oracle.assembly_space import AXIS_NAMES, BACK, RIGHT, UP, Block, Span, hull, size, spanned
from tests.oracle.assembly_word import shares

ROLES = {
    DividerKind.PARTITION: Role.PARTITION,
    DividerKind.RAIL: Role.RAIL,
    DividerKind.FRAME: Role.RAIL,
    DividerKind.SHELF: Role.SHELF,
}
"""What board one sees between two spaces from the front."""


@dataclass(frozen=True, slots=True)
class Opening:
    """A space of a carcase as one could measure it.

    Attributes:
        block: clear of everything around it; behind an inset door if there is one.
        before: the same, from the plane of the door.
    """

    mark: str
    space: Space
    block: Block
    before: Block


@dataclass(slots=True)
class Survey:
    """A carcase being measured."""

    bench: Bench
    carcase: Carcase
    boards: dict[str, Block]
    findings: list[Finding] = field(default_factory=list)

    def openings(self) -> Iterator[Opening]:
        """All spaces, divided or not."""
        yield from self._space(self.carcase.inside, self.inside(), ())

    def inside(self) -> Block:
        """Clear space between the ring's boards, to the back."""
        ring = {board.role: self.boards[board.mark] for board in self.carcase.ring.boards}
        across = (ring[Role.LEFT][RIGHT][1], ring[Role.RIGHT][RIGHT][0])
        height = (ring[Role.BOTTOM][UP][1], ring[Role.TOP][UP][0])
        back = [self.boards[m] for m in self._back_boards()]
        whole = hull(ring.values())
        behind = hull(back)[BACK][0] if back else whole[BACK][1]
        return (across, (whole[BACK][0], behind), height)

    def _back_boards(self) -> list[str]:
        whole = board_mark(self.carcase.ring.mark, Role.BACK_PANEL)
        kin = [plank for plank in self.bench.planks.values() if plank.mark in self.boards]
        return [p.mark for p in kin if p.role is Role.BACK_BOARD or p.mark == whole or p.mark.startswith(f"{whole}-")]

    def _space(self, space: Space, block: Block, path: tuple[int, ...]) -> Iterator[Opening]:
        mark, before = space_mark(self.carcase.ring.mark, path), block
        if space.doors and space.doors.stands is Stands.INSET:
            taken = space.doors.made.stuff.thickness_nm + space.doors.gap_nm
            block = spanned(block, BACK, (block[BACK][0] + taken, block[BACK][1]))
        yield Opening(mark, space, block, before)
        if isinstance(space.holds, Division):
            yield from self._division(space.holds, block, path)

    def _division(self, division: Division, block: Block, path: tuple[int, ...]) -> Iterator[Opening]:
        axis = RIGHT if division.way is Way.COLUMNS else UP
        if division.divider is DividerKind.NOTHING and len(division.spaces) > 1:
            parts = self._undivided(division, size(block, axis))
        else:
            parts = self._divided(division, block, axis, path)
        places = _in_line(block[axis], parts, downward=axis == UP)
        self._as_asked(division, [stop - start for start, stop in places], path)
        for count, (place, space) in enumerate(zip(places, division.spaces, strict=False), 1):
            yield from self._space(space, spanned(block, axis, place), (*path, count))

    def _undivided(self, division: Division, clear: int) -> list[tuple[int, int]]:
        """Spaces with nothing between them: as high as the drawers that fill them, or as the maker's rule says."""
        found: list[tuple[int, int]] = []
        for space, (asked, _) in zip(division.spaces, shares(division, clear, self.bench.project.grid), strict=True):
            found.append((asked, 0))
            if isinstance(space.holds, Drawer):
                side = self.bench.planks[space.holds.ring.board(Role.LEFT).mark]
                found[-1] = (side.sizes[1] + space.holds.top_clearance_nm, 0)
        return found

    def _divided(self, division: Division, block: Block, axis: int, path: tuple[int, ...]) -> list[tuple[int, int]]:
        """Size of each space and of the divider after it, as they stand."""
        seen = self._spanning(block, axis)
        own: list[Span] = []
        at = 0
        for space in division.spaces[:-1]:
            at += _spanning_within(space, division.way)
            if at < len(seen):
                own.append(self._divider(seen[at], division, block, axis))
            at += 1
        if at + _spanning_within(division.spaces[-1], division.way) != len(seen):
            mark = space_mark(self.carcase.ring.mark, path)
            text = f"{len(seen)} dividers stand across {mark}: {', '.join(seen)}"
            self.findings.append(Finding("dividers", tuple(seen), text, block))
        edges = [block[axis][0], *(edge for span in sorted(own) for edge in span), block[axis][1]]
        sizes = [stop - start for start, stop in zip(edges[::2], edges[1::2], strict=True)]
        thick = [span[1] - span[0] for span in sorted(own)]
        if axis == UP:
            sizes, thick = sizes[::-1], thick[::-1]
        return list(zip(sizes, [*thick, 0], strict=True))

    def _divider(self, mark: str, division: Division, block: Block, axis: int) -> Span:
        plank = self.bench.planks[mark]
        if plank.role is not ROLES[division.divider]:
            self.findings.append(Finding("dividers", (mark,), f"{mark} stands where a {division.divider} should"))
        front = self.boards[mark][BACK][0]
        if front != block[BACK][0]:
            text = f"the front of {mark} is {front - block[BACK][0]} nm behind that of its space"
            self.findings.append(Finding("flush", (mark,), text, self.boards[mark]))
        return self.boards[mark][axis]

    def _spanning(self, block: Block, axis: int) -> list[str]:
        """Boards that go right across a space, seen from the front, in its order."""
        across = UP if axis == RIGHT else RIGHT
        roles = {Role.PARTITION} if axis == RIGHT else {Role.RAIL, Role.SHELF}
        found = [
            mark
            for mark, board in self.boards.items()
            if self.bench.planks[mark].role in roles
            and board[across][0] <= block[across][0]
            and block[across][1] <= board[across][1]
            and block[axis][0] < board[axis][1]
            and board[axis][0] < block[axis][1]
        ]
        return sorted(found, key=lambda mark: self.boards[mark][axis][0], reverse=axis == UP)

    def _as_asked(self, division: Division, sizes: Sequence[int], path: tuple[int, ...]) -> None:
        clear = sum(sizes)
        asked = [size for size, _ in shares(division, clear, self.bench.project.grid)]
        for count, (found, wanted) in enumerate(zip(sizes, asked, strict=False), 1):
            if found != wanted:
                mark = space_mark(self.carcase.ring.mark, (*path, count))
                text = f"{mark} is {found} nm {AXIS_NAMES[RIGHT if division.way is Way.COLUMNS else UP]}, not {wanted}"
                self.findings.append(Finding("space", (mark,), text))


def survey(bench: Bench, carcase: Carcase, group: Group) -> Survey:
    """Look at a carcase whose group stands at its place in the piece."""
    return Survey(bench, carcase, {mark: hull(chunk for chunk, _ in wood) for mark, wood in group.wood.items()})


def _in_line(span: Span, parts: Sequence[tuple[int, int]], *, downward: bool) -> list[Span]:
    places: list[Span] = []
    at = span[1] if downward else span[0]
    for length, divider in parts:
        places.append((at - length, at) if downward else (at, at + length))
        at += -(length + divider) if downward else length + divider
    return places


def _spanning_within(space: Space, way: Way) -> int:
    """How many dividers inside a space go right across it, as seen by someone who divides the other way."""
    division = space.holds
    if not isinstance(division, Division):
        return 0
    if division.way is way or len(division.spaces) == 1:
        inner = sum(_spanning_within(each, way) for each in division.spaces)
        own = len(division.spaces) - 1 if division.divider is not DividerKind.NOTHING else 0
        return inner + own
    return 0
