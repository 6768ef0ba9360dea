"""The cheapest plan of a tiny job by trying everything: every share of the parts among the boards, every way to cut.

It shares nothing with the planner but the question. Sizes are so small that every place on a board can be tried.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cache
from itertools import product
from math import inf

from planner.domain.stock import SawWay
from planner.stock.pieces import Board, Job, Part

Lying = tuple[tuple[int, int], ...]
"""Parts as they lie: their sizes along and across."""


def cheapest(job: Job) -> float:
    """Least cost of a plan that cuts every part; infinite if there is none. Without defects, trim or credit."""
    parts = tuple(part for part in job.parts for _ in part.marks)
    boards = tuple(board for board in job.boards for _ in range(len(parts) if board.count is None else board.count))
    everything = frozenset(range(len(parts)))

    @cache
    def rest(first: int, left: frozenset[int]) -> float:
        if not left:
            return 0
        if first == len(boards):
            return inf
        board = boards[first]
        costs = (
            (board.cost if chosen else 0) + rest(first + 1, left - chosen)
            for chosen in subsets(left)
            if not chosen or goes_on(job, board, tuple(parts[k] for k in sorted(chosen)))
        )
        return min(costs, default=inf)

    return rest(0, everything)


def subsets(items: frozenset[int]) -> Iterator[frozenset[int]]:
    """All of them, the empty one too."""
    listed = sorted(items)
    for bits in range(1 << len(listed)):
        yield frozenset(item for place, item in enumerate(listed) if bits >> place & 1)


def goes_on(job: Job, board: Board, parts: tuple[Part, ...]) -> bool:
    """Whether one board gives all these parts in the stages allowed."""
    firsts = [job.wish.first] if job.wish.first else list(SawWay)
    return any(
        needed(job, lying, first, job.wish.stages, _room(board, first.other)) <= _room(board, first)
        for lying in ways_to_lie(parts)
        for first in firsts
    )


def ways_to_lie(parts: tuple[Part, ...]) -> Iterator[Lying]:
    """Every choice of turned and unturned parts."""
    sizes = [(part.length_nm, part.width_nm) for part in parts]
    choices = [(size, size[::-1]) if part.may_turn else (size,) for part, size in zip(parts, sizes, strict=True)]
    return (tuple(sorted(chosen)) for chosen in product(*choices))


def _room(board: Board, cut: SawWay) -> int:
    """Size of a board in the direction that a cut divides."""
    return board.width_nm if cut is SawWay.RIP else board.length_nm


def needed(job: Job, lying: Lying, cut: SawWay, stages: int, room: int) -> float:
    """How much wood parts need in the direction that the first cuts divide, if so much is there in the other."""
    return _needed(lying, cut, stages, room, (job.saw.rip_nm, job.saw.crosscut_nm))


@cache
def _needed(lying: Lying, cut: SawWay, stages: int, room: int, kerfs: tuple[int, int]) -> float:
    kerf = kerfs[0] if cut is SawWay.RIP else kerfs[1]
    own = 1 if cut is SawWay.RIP else 0
    if stages == 1:
        fits = all(size[1 - own] <= room for size in lying)
        return sum(size[own] + kerf for size in lying) - kerf if fits else inf
    return min(
        sum(_slice(tuple(sorted(share)), cut, stages, room, kerfs) + kerf for share in shares) - kerf
        for shares in partitions(lying)
    )


def _slice(lying: Lying, cut: SawWay, stages: int, room: int, kerfs: tuple[int, int]) -> float:
    """The least size of a slice that gives these parts with one stage less."""
    own = 1 if cut is SawWay.RIP else 0
    least, most = max(size[own] for size in lying), sum(size[own] + kerfs[1 - own] for size in lying)
    return next((s for s in range(least, most + 1) if _needed(lying, cut.other, stages - 1, s, kerfs) <= room), inf)


def partitions(items: Lying) -> Iterator[list[Lying]]:
    """All ways to share items among heaps."""
    if not items:
        yield []
        return
    first, others = items[0], items[1:]
    for heaps in partitions(others):
        yield [(first,), *heaps]
        for number, heap in enumerate(heaps):
            yield [*heaps[:number], (first, *heap), *heaps[number + 1 :]]


def area(parts: Iterable[Part]) -> int:
    """Total area of parts."""
    return sum(part.length_nm * part.width_nm * len(part.marks) for part in parts)
