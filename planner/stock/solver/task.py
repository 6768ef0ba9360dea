"""The job in the solver's own numbers: demand by size, kinds of boards, sizes on a grid with the kerf added.

n parts in a row need n - 1 cuts, so with the kerf added to every part and to the board, ``sum(part) <= board`` is
exact. Where the grid that all sizes lie on is too fine to work with, a coarser one is used: parts are rounded up and
boards down for plans, the other way round for the bound, so that plans can be made and the bound holds.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import gcd

import numpy as np
import numpy.typing as npt

from planner.domain.stock import SawWay
from planner.stock.clearing import Rest, clearings
from planner.stock.pieces import Board, Job

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.int64]

FINEST = 16_000
"""Steps of the grid that a board may have in each direction: 1/64 in up to six metres, 0.1 mm up to 1.6 m."""
_FINE_ACROSS = 24_000
"""Steps along the longest board that the steps across, where they are coarse, need not be finer than."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Size:
    """Parts that are alike to the saw.

    Attributes:
        marks: of all of them.
    """

    length_nm: int
    width_nm: int
    may_turn: bool
    marks: tuple[str, ...]

    @property
    def area(self) -> int:
        """Square nanometres."""
        return self.length_nm * self.width_nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Sort:
    """Boards that are alike to the saw and the purse.

    Attributes:
        board: any of them.
        numbers: mark and number of each, as many as could ever be used.
        limit: how many there are; None for no limit.
        ways: how it can be cleared; the rectangles of each way are numbered through in ``Task.rects``.
        rects: for each way, the numbers of its rectangles.
    """

    board: Board
    numbers: tuple[tuple[str, int], ...]
    limit: int | None
    ways: tuple[Rest, ...]
    rects: tuple[tuple[int, ...], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Lying:
    """A size as it lies in a strip: ``along`` the strip and ``across`` it, on the grid, kerf included."""

    row: int
    along: int
    across: int
    turned: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Grid:
    """Sizes on a grid, one step for each direction of the board."""

    step_along: int
    step_across: int
    exact: bool


class Task:
    """Everything the solver needs to know, worked out once."""

    def __init__(self, job: Job) -> None:
        self.job = job
        every = _sizes(job)
        self.clear = _cleared(job)
        self.sizes = tuple(size for size in every if self._fits_somewhere(size))
        self.unfit = tuple(sorted(mark for size in every if size not in self.sizes for mark in size.marks))
        self.demand: Ints = np.array([len(size.marks) for size in self.sizes], dtype=np.int64)
        self.area: Floats = np.array([size.area for size in self.sizes], dtype=np.float64)
        self.rects: list[tuple[int, int]] = []
        self.sorts = self._sorts()
        self.cost: Floats = np.array([sort.board.cost for sort in self.sorts], dtype=np.float64)
        self.limit: Ints = np.array([len(sort.numbers) for sort in self.sorts], dtype=np.int64)
        self.grid = self._grid()

    def _fits_somewhere(self, size: Size) -> bool:
        return any(
            _fits(size, rest)
            for board, ways in self.clear
            if board.count != 0
            for way in ways
            for rest in way.clear_pieces()
        )

    def _sorts(self) -> tuple[Sort, ...]:
        alike: dict[Board, list[Board]] = defaultdict(list)
        ways_of = {}
        for board, ways in self.clear:
            useful = tuple(way for way in ways if any(_fits(s, r) for s in self.sizes for r in way.clear_pieces()))
            if board.count != 0 and useful:
                key = _nameless(board)
                alike[key].append(board)
                ways_of[key] = useful
        return tuple(self._sort(boards, ways_of[key]) for key, boards in alike.items())

    def _sort(self, boards: Sequence[Board], ways: tuple[Rest, ...]) -> Sort:
        most = int(self.demand.sum())
        endless = any(board.count is None for board in boards)
        numbers = tuple(
            (board.mark, number)
            for board in boards
            for number in range(1, (most if board.count is None else min(board.count, most)) + 1)
        )
        return Sort(
            board=boards[0],
            numbers=numbers[:most],
            limit=None if endless else len(numbers[:most]),
            ways=ways,
            rects=tuple(tuple(map(self._rect, way.clear_pieces())) for way in ways),
        )

    def _rect(self, rest: Rest) -> int:
        size = (rest.along[1] - rest.along[0], rest.across[1] - rest.across[0])
        if size not in self.rects:
            self.rects.append(size)
        return self.rects.index(size)

    def _grid(self) -> Grid:
        saw = self.job.saw
        turning = any(size.may_turn for size in self.sizes)
        along = {size.length_nm for size in self.sizes} | {size.width_nm for size in self.sizes if turning}
        across = {size.width_nm for size in self.sizes} | {size.length_nm for size in self.sizes if turning}
        longest = max((length for length, _ in self.rects), default=1) + saw.crosscut_nm
        widest = max((width for _, width in self.rects), default=1) + saw.rip_nm
        step_along = _step(along, saw.crosscut_nm, longest, -(-longest // FINEST))
        step_across = _step(across, saw.rip_nm, widest, max(-(-widest // FINEST), -(-longest // _FINE_ACROSS)))
        return Grid(step_along=step_along[0], step_across=step_across[0], exact=step_along[1] and step_across[1])

    def lying(self, strips: SawWay, *, hopeful: bool = False) -> tuple[Lying, ...]:
        """All sizes as they can lie in strips that are made by this way of cutting, narrowest first.

        Args:
            strips: rip for strips along the board, crosscut for strips across it.
            hopeful: round in favour of fitting, for the bound.
        """
        found = []
        for row, size in enumerate(self.sizes):
            square = size.length_nm == size.width_nm
            for turned in (False, True) if size.may_turn and not square else (False,):
                length, width = (size.width_nm, size.length_nm) if turned else (size.length_nm, size.width_nm)
                along, across = self._on_grid((length, width), up=not hopeful)
                if strips is SawWay.CROSSCUT:
                    along, across = across, along
                found.append(Lying(row=row, along=along, across=across, turned=turned))
        return tuple(sorted(found, key=lambda each: (each.across, each.along, each.row)))

    def rectangles(self, strips: SawWay, *, hopeful: bool = False) -> list[tuple[int, int]]:
        """Sizes of all clear rectangles, along and across the strips."""
        sizes = [self._on_grid(rect, up=hopeful) for rect in self.rects]
        return sizes if strips is SawWay.RIP else [(across, along) for along, across in sizes]

    def _on_grid(self, size: tuple[int, int], *, up: bool) -> tuple[int, int]:
        saw, grid = self.job.saw, self.grid
        length, width = size[0] + saw.crosscut_nm, size[1] + saw.rip_nm
        if up:
            return -(-length // grid.step_along), -(-width // grid.step_across)
        return length // grid.step_along, width // grid.step_across


def _sizes(job: Job) -> tuple[Size, ...]:
    """Parts of one size together; turned ones too, where turning is allowed."""
    marks: dict[tuple[int, int, bool], list[str]] = defaultdict(list)
    for part in job.parts:
        size: tuple[int, int] = (part.length_nm, part.width_nm)
        marks[(*size, part.may_turn)].extend(part.marks)
    return tuple(
        Size(length_nm=length, width_nm=width, may_turn=may_turn, marks=tuple(named))
        for (length, width, may_turn), named in marks.items()
    )


def _cleared(job: Job) -> tuple[tuple[Board, tuple[Rest, ...]], ...]:
    return tuple((board, clearings(board, job.saw)) for board in job.boards)


def _nameless(board: Board) -> Board:
    return Board(
        mark="",
        length_nm=board.length_nm,
        width_nm=board.width_nm,
        cost=board.cost,
        count=1,
        defects=board.defects,
        end_trim_nm=board.end_trim_nm,
        edge_trim_nm=board.edge_trim_nm,
    )


def _fits(size: Size, rest: Rest) -> bool:
    room = (rest.along[1] - rest.along[0], rest.across[1] - rest.across[0])
    lies = [(size.length_nm, size.width_nm), *([(size.width_nm, size.length_nm)] if size.may_turn else [])]
    return any(length <= room[0] and width <= room[1] for length, width in lies)


def _step(parts: Iterable[int], kerf: int, most: int, coarse: int) -> tuple[int, bool]:
    """Step of the grid, and whether every size of a part lies on it.

    Boards may lie between the steps without harm: they are rounded down, and no sum of parts is lost.

    Args:
        parts: sizes in one direction.
        kerf: of the cuts that divide it.
        most: the largest board, kerf included.
        coarse: the step to use if the parts' own is too fine.
    """
    step = gcd(*(size + kerf for size in parts)) or 1
    return (step, True) if most // step <= FINEST else (coarse, False)
