"""Passes at a fence in words, one item for each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from planner.domain.plan import Pass
from planner.lengths import Grid, show_length

AGAIN = (
    "One pass for each mark, in the order listed. (1) again: a further pass in socket (1). "
    "A mark that is no line of the layout is measured."
)


def pass_marks(passes: Sequence[Pass], grid: Grid) -> Iterator[str]:
    """Each socket with its mark, and once more for each further pass: ``(1) 1 5/32``, ``(1) again ~61/64``."""
    seen: set[int] = set()
    for one in passes:
        again = " again" if one.socket in seen else ""
        seen.add(one.socket)
        yield f"({one.socket}){again} {show_length(one.mark_nm, grid.fine)}"
