"""A name that the store doesn't know: the nearest one it knows, and all of them."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches

from planner.errors import InputError, Problem

_LISTED = 12
"""So many names are given in a refusal; more are only counted."""


def in_order(names: Iterable[str]) -> list[str]:
    """Names as a person looks them up, whatever their case."""
    return sorted(names, key=lambda name: (name.casefold(), name))


def unknown(of: str, name: str, known: Iterable[str], *, what: str, if_none: str) -> InputError:
    """Refusal of a name.

    Args:
        of: what has names (``project``).
        name: the one asked for.
        known: those there are.
        what: what is wrong with it.
        if_none: what to do when there are none at all.
    """
    return InputError([Problem(where=f"{of} {name!r}", what=what, remedy=_remedy(name, in_order(known)) or if_none)])


def _remedy(name: str, known: list[str]) -> str:
    if not known:
        return ""
    near = get_close_matches(name.casefold(), {each.casefold(): each for each in known}, n=1)
    meant = next((each for each in known if near and each.casefold() == near[0]), None)
    question = f"Did you mean {meant!r}? " if meant else ""
    listed = ", ".join(map(repr, known[:_LISTED]))
    more = f" and {len(known) - _LISTED} more" if len(known) > _LISTED else ""
    return f"{question}In the store: {listed}{more}."
