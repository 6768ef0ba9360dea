"""The wood of boards in their places, once cut: blocks taken from blocks, and nothing of how they were derived."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import combinations
from math import prod

from planner.derive.parts import Item, LetIn, Shape
from planner.domain.plan import BoardSize
from planner.domain.solid import Solid
from planner.domain.words import FeatureKind
from tests.oracle.assembly_space import Block, less_all, meet, spanned


def block_of(solid: Solid) -> Block:
    """A solid as a block."""
    return (solid.right, solid.back, solid.up)


def boards_of(items: Iterable[Item]) -> dict[str, BoardSize]:
    """Boards by mark; no mark may come twice."""
    boards = [item for item in items if isinstance(item, BoardSize)]
    by_mark = {board.mark: board for board in boards}
    assert len(by_mark) == len(boards)
    return by_mark


def wood(items: Sequence[Item]) -> dict[str, list[Block]]:
    """What each board fills once cut; of an end with tenons nothing stays but these."""
    left: dict[str, list[Block]] = {}
    for mark, board in boards_of(items).items():
        whole = block_of(board.place)
        axis = next(axis for axis in range(3) if board.lie.along[axis])
        taken = [block_of(each.room) for each in items if isinstance(each, LetIn) and each.host == mark]
        tenons: dict[tuple[int, int], list[Block]] = {}
        for each in items:
            if isinstance(each, Shape) and each.board == mark:
                block = block_of(each.block)
                if each.kind is FeatureKind.TENON:
                    tenons.setdefault(block[axis], []).append(block)
                else:
                    taken.append(block)
        for end, stays in tenons.items():
            assert end[0] == whole[axis][0] or end[1] == whole[axis][1], "a tenon is at an end"
            taken += less_all([spanned(whole, axis, end)], stays)
        left[mark] = less_all([whole], taken)
    return left


def overlaps(solids: dict[str, list[Block]]) -> list[tuple[str, str]]:
    """Pairs of boards that fill the same space."""
    return [(a, b) for a, b in combinations(solids, 2) if any(meet(p, q) for p in solids[a] for q in solids[b])]


def volume(blocks: Iterable[Block]) -> int:
    """Volume of blocks that don't overlap, in cubic nanometres."""
    return sum(prod(high - low for low, high in block) for block in blocks)


def all_of(solids: dict[str, list[Block]]) -> list[Block]:
    """All blocks of all boards."""
    return [block for blocks in solids.values() for block in blocks]


def alike(one: Iterable[Block], other: Iterable[Block]) -> bool:
    """Whether two lots of blocks fill the same space."""
    ones, others = list(one), list(other)
    return not less_all(ones, others) and not less_all(others, ones)
