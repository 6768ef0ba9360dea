"""Look into a file that may be wrong in any way: what has the wrong form is passed over."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeAlias

from planner.intake.refusal import Path

Raw: TypeAlias = Mapping[str, Any]
Placed: TypeAlias = tuple[Path, Raw]


def tables_at(within: Raw, key: str, at: Path = ()) -> list[Placed]:
    """The tables of a list, each with its path; those of ``[[key]]``."""
    listed = within.get(key)
    if not isinstance(listed, list):
        return []
    return [((*at, key, place), each) for place, each in enumerate(listed) if isinstance(each, dict)]


def table_at(within: Raw, key: str) -> Raw:
    """The table under a key, or an empty one."""
    found = within.get(key)
    return found if isinstance(found, dict) else {}


def number_at(within: Raw, key: str, greatest: int) -> int | None:
    """The whole number under a key, from 1 to ``greatest``."""
    said = within.get(key)
    return said if isinstance(said, int) and not isinstance(said, bool) and 1 <= said <= greatest else None
