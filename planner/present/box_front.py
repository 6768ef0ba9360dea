"""The front of a box drawn in characters: how long it is to its height, and its lid."""

from __future__ import annotations

from planner.domain.box import Box, HingedLid, SawnLid

WIDEST, TALLEST = 48, 14
SQUARE = 2
"""A character is about twice as high as it is wide."""


def box_front(box: Box) -> tuple[str, ...]:
    """Lines of text that show the front, the top first."""
    columns = min(WIDEST, max(10, round(TALLEST * SQUARE * box.length_nm / box.height_nm)))
    rows = min(TALLEST, max(3, round(columns * box.height_nm / box.length_nm / SQUARE)))
    inner = columns - 2
    face = [f"│{' ' * inner}│"] * (rows - 1)
    if isinstance(box.lid, SawnLid):
        at = min(rows - 2, max(1, round(rows * box.lid.height_nm / box.height_nm)))
        face[at - 1] = f"├{'╌' * inner}┤"
    bottom = f"└{'─' * inner}┘"
    if isinstance(box.lid, HingedLid):
        lid = (f"┌{'─' * columns}┐", f"└┬{'─' * inner}┬┘")
        return (*lid, *(f" {line}" for line in (*face, bottom)))
    return (f"┌{'─' * inner}┐", *face, bottom)
