"""The places along one direction that sums of sizes can reach; between them nothing can begin or end."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from planner.stock.solver.task import Ints


class Places:
    """Reachable places in ascending order.

    Index 0 stands for "before the board": tables hold minus infinity there. Index 1 is the place 0.
    """

    def __init__(self, sizes: Iterable[tuple[int, int]], longest: int) -> None:
        """Reach places with so many pieces of each size, up to the longest board.

        Args:
            sizes: size and how often it may occur.
            longest: nothing beyond this matters.
        """
        self.at: Ints = np.concatenate(([-1], _reachable(sizes, longest)))
        self._back: dict[int, Ints] = {}

    def __len__(self) -> int:
        return len(self.at)

    def index(self, size: int) -> int:
        """Index of the last place at or before a size."""
        return int(np.searchsorted(self.at, size, side="right")) - 1

    def back(self, size: int) -> Ints:
        """For every place, the index of the last place at least this much before it."""
        if size not in self._back:
            back = np.searchsorted(self.at, self.at - size, side="right") - 1
            back[self.at < size] = 0
            self._back[size] = back.astype(np.int64)
        return self._back[size]

    def runs(self, least: int) -> list[tuple[int, int]]:
        """Stretches of indexes, from the first place after 0.

        What is at least this much before a place of a stretch lies in an earlier one, so a whole stretch can be worked
        out at once.
        """
        found = []
        start = 2
        while start < len(self.at):
            end = int(np.searchsorted(self.at, self.at[start] + least, side="left"))
            found.append((start, end))
            start = end
        return found


def _reachable(sizes: Iterable[tuple[int, int]], longest: int) -> Ints:
    bits = 1
    mask = (1 << (longest + 1)) - 1
    for size, count in sizes:
        for times in doublings(min(count, longest // size)):
            bits |= (bits << (size * times)) & mask
    raw = np.frombuffer(bits.to_bytes(longest // 8 + 1, "little"), dtype=np.uint8)
    return np.flatnonzero(np.unpackbits(raw, bitorder="little")).astype(np.int64)


def doublings(count: int) -> list[int]:
    """Numbers whose sums are exactly 0 to count: 1, 2, 4, … and a rest."""
    chunks = []
    take = 1
    while count > 0:
        chunks.append(min(take, count))
        count -= take
        take *= 2
    return chunks
