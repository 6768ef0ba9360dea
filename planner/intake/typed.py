"""Values as a maker types them at a command, where a project file would have quotes and brackets.

What may be a text is taken as it is typed. A count, true or false, and a table are typed as in the file. A list may be
typed like that, or with nothing but commas: ``90, 120, rest``.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator, Mapping
from decimal import Decimal
from typing import Any

from planner.intake.schema import resolved

_TEXTS, _LISTS = frozenset({"string"}), frozenset({"array"})
_MORE_THAN_TEXTS = frozenset({"array", "object", "integer", "boolean"})


def read_typed(text: str, node: Mapping[str, Any]) -> Any:  # noqa: ANN401 - any value of a file
    """The value meant, for a place of which the schema says ``node``; whether it can be taken is for the reader."""
    kinds = frozenset(_kinds(node))
    if kinds >= _TEXTS and not kinds & _MORE_THAN_TEXTS:
        return text
    value = _as_in_a_file(text)
    if value is not None:
        return value
    if kinds >= _LISTS and ("," in text or not kinds & _TEXTS):
        return [entry.strip() for entry in text.split(",")]
    return text


def _as_in_a_file(text: str) -> Any:  # noqa: ANN401 - any value of a file
    """The value of a key that is written so; None when it can't be read as one value."""
    try:
        read = tomllib.loads(f"value = {text}", parse_float=Decimal)
    except (ValueError, RecursionError):
        return None
    return read["value"] if read.keys() == {"value"} else None


def _kinds(node: Mapping[str, Any]) -> Iterator[str]:
    """All types of JSON that the schema lets stand there."""
    said = node.get("type", ())
    yield from (said,) if isinstance(said, str) else said
    if isinstance(node.get("const"), str):
        yield "string"
    for either in (*node.get("anyOf", ()), *node.get("oneOf", ())):
        yield from _kinds(resolved(either))


def typed(value: Any) -> str:  # noqa: ANN401 - any value of a file
    """A value of a file as a maker would type it; reading that gives the value again.

    >>> typed(["90 mm", "120 mm", "rest"]), typed(True), typed("ash")
    ('90 mm, 120 mm, rest', 'true', 'ash')
    """
    if isinstance(value, str):
        return value
    if isinstance(value, list) and len(value) > 1 and all(map(_goes_bare, value)):
        return ", ".join(value)
    return _written(value)


def _goes_bare(entry: object) -> bool:
    return isinstance(entry, str) and bool(entry) and entry == entry.strip() and not set(entry) & set(",[]")


def _written(value: Any) -> str:  # noqa: ANN401 - any value of a file
    """A value as it stands in a file, on one line."""
    match value:
        case bool():
            return "true" if value else "false"
        case str():
            return f'"{value.translate(_ESCAPES)}"'
        case list():
            return f"[{', '.join(map(_written, value))}]"
        case dict():
            keys = ", ".join(f"{_key(key)} = {_written(each)}" for key, each in value.items())
            return f"{{ {keys} }}" if keys else "{}"
        case _:
            return str(value)


def _key(key: str) -> str:
    return key if _BARE.fullmatch(key) else _written(key)


_BARE = re.compile("[A-Za-z0-9_-]+")
_ESCAPES = str.maketrans({"\\": "\\\\", '"': '\\"'})
