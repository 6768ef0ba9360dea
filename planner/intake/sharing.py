"""What several tables have in common, and how each differs from that."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from typing import Any, TypeAlias, TypeVar

Table: TypeAlias = dict[str, Any]
Word = TypeVar("Word")


def commonest(values: Iterable[Word]) -> Word:
    """The value that is met most often; of several, the one met first."""
    return Counter(values).most_common(1)[0][0]


def shared_part(tables: Sequence[Table]) -> Table:
    """Key by key what most tables say, for keys that all of them have.

    >>> shared_part([{"side": 12, "up": 8}, {"side": 12}, {"side": 15}])
    {'side': 12}
    """
    shared: Table = {}
    for key in tables[0]:
        said = [table[key] for table in tables if key in table]
        if len(said) == len(tables):
            shared |= if_any(key, shared_part(said)) if isinstance(said[0], dict) else {key: commonest(said)}
    return shared


def differences(table: Mapping[str, Any], shared: Mapping[str, Any]) -> Table:
    """What a table says otherwise than the shared one, or over and above it.

    >>> differences({"side": 15, "bottom": {"play": 1}}, {"side": 12, "bottom": {"play": 1}})
    {'side': 15}
    """
    found: Table = {}
    for key, said in table.items():
        if isinstance(said, dict) and key in shared:
            found |= if_any(key, differences(said, shared[key]))
        elif key not in shared or said != shared[key]:
            found[key] = said
    return found


def laid_over(shared: Mapping[str, Any], changes: Mapping[str, Any]) -> Table:
    """Changes merged over what is shared, tables key by key: the way back from ``differences``.

    >>> laid_over({"side": 12, "bottom": {"play": 1}}, {"side": 15, "bottom": {"up": 8}})
    {'side': 15, 'bottom': {'play': 1, 'up': 8}}
    """
    merged = dict(shared)
    for key, said in changes.items():
        both_tables = isinstance(said, dict) and isinstance(merged.get(key), dict)
        merged[key] = laid_over(merged[key], said) if both_tables else said
    return merged


def if_any(key: str, content: Table | list[Table]) -> Table:
    """The key with its content, or nothing at all when that is empty."""
    return {key: content} if content else {}
