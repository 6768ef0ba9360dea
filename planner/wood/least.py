"""The least change that clears a finding, searched on the same functions that made it."""

from __future__ import annotations

from collections.abc import Callable


def least(clears: Callable[[int], bool], step: int, most: int) -> int | None:
    """The least multiple of a step that clears something, by halving; None when the most does not.

    Args:
        clears: asked of a change; once it says yes, it must say so of every greater one.
        step: to which the change is rounded, upwards.
        most: no change is greater.
    """
    low, high = 0, most // step
    if not clears(high * step):
        return None
    while low < high:
        middle = (low + high) // 2
        low, high = (low, middle) if clears(middle * step) else (middle + 1, high)
    return low * step
