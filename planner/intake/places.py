"""On which line of a file a value stands.

The TOML reader of the standard library doesn't tell, so it is asked: a value stands on the line after the longest
beginning of the file that can be read and doesn't hold it. That is slow for long files, so they get no lines.
"""

from __future__ import annotations

import tomllib
from typing import Any

from planner.intake.refusal import Path

_LONGEST_TEXT = 100_000
_MOST_READINGS = 400


class Lines:
    """Lines of one file that can be read as TOML."""

    def __init__(self, text: str) -> None:
        self._lines = text.replace("\r\n", "\n").split("\n")
        self._read: dict[int, dict[str, Any] | None] = {}
        self._left = _MOST_READINGS if len(text) <= _LONGEST_TEXT else 0

    def line(self, path: Path) -> int | None:
        """Line (from 1) where a value starts, or the table that lacks it; None where that can't be told."""
        whole = self._beginning(len(self._lines))
        while path and not _holds(whole, path):
            path = path[:-1]
        if not path:
            return None
        without, low, high = 0, 0, len(self._lines)
        while high - low > 1 and self._left > 0:
            middle = (low + high) // 2
            readable = next((end for end in range(middle, low, -1) if self._beginning(end) is not None), None)
            if readable is None:
                low = middle
            elif _holds(self._beginning(readable), path):
                high = readable
            else:
                without, low = readable, middle
        return without + 1 if self._left > 0 else None

    def _beginning(self, end: int) -> dict[str, Any] | None:
        if end not in self._read and self._left > 0:
            self._left -= 1
            self._read[end] = _toml("\n".join(self._lines[:end]))
        return self._read.get(end)


def _toml(text: str) -> dict[str, Any] | None:
    try:
        return tomllib.loads(text, parse_float=str)
    except (ValueError, RecursionError):
        return None


def _holds(value: Any, path: Path) -> bool:  # noqa: ANN401 - any TOML value
    for step in path:
        if isinstance(step, int):
            if not isinstance(value, list) or len(value) <= step:
                return False
        elif not isinstance(value, dict) or step not in value:
            return False
        value = value[step]
    return True
