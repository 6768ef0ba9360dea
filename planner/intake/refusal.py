"""Refusals inside a project file: where in the file, what was found, what would be right."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TypeAlias

Path: TypeAlias = tuple[str | int, ...]
"""Way to a value in the file: keys, and places in lists from 0."""

_LONGEST = 40
_BARE = re.compile(r"[A-Za-z0-9_-]+")


class RefusalError(ValueError):
    """A value that can't be taken."""

    def __init__(self, what: str, remedy: str) -> None:
        super().__init__(what)
        self.what = what
        self.remedy = remedy


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """A refusal with its place in the file."""

    path: Path
    what: str
    remedy: str


def quote(said: object) -> str:
    """What was found in the file, short, on one line and free of control characters."""
    if isinstance(said, dict):
        return "a table"
    if isinstance(said, list):
        return "a list"
    if isinstance(said, bool):
        return "true" if said else "false"
    if isinstance(said, int) and abs(said) >= 10**_LONGEST:
        return f"a number of over {_LONGEST} digits"
    text = repr(said[: _LONGEST + 1]) if isinstance(said, str) else str(said)
    return text if len(text) <= _LONGEST + 2 else text[:_LONGEST] + "…"


def path_text(path: Path) -> str:
    """A path as a maker reads it, places in lists from 1: ``carcase[1].drawer.bottom.thickness``."""
    text = ""
    for step in path:
        if isinstance(step, int):
            text += f"[{step + 1}]"
        else:
            text += ("." if text else "") + (step if _BARE.fullmatch(step) and len(step) <= _LONGEST else quote(step))
    return text
