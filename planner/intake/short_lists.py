"""Lists on one line, as a person writes them; the TOML writer gives each entry a line of its own."""

from __future__ import annotations

import re

_LONGEST = 90

_LIST = re.compile(r"\[\n(?P<entries>(?:\ +[^\ \]\n][^\n]*(?<!\[),\n)+)\ *\]")
"""A list of entries that take one line each. Nothing else has a line end after ``[``, since texts take one line too."""


def with_short_lists(toml: str) -> str:
    r"""The written TOML with every list that fits on one line there, lists within lists first.

    >>> with_short_lists('marks = [\n    "D1",\n    "D2",\n]\n')
    'marks = ["D1", "D2"]\n'
    """
    return _LIST.sub(_on_one_line, _LIST.sub(_on_one_line, toml))


def _on_one_line(found: re.Match[str]) -> str:
    entries = [line.strip() for line in found["entries"].splitlines()]
    line = f"[{' '.join(entries).removesuffix(',')}]"
    return line if len(line) <= _LONGEST else found[0]
