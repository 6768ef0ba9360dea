"""Did you mean …? The nearest known word to a mistyped one."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches
from itertools import islice

from planner.intake.refusal import quote

_SHOWN = 16
_SEARCHED = 500
_LONGEST = 80


def nearest(word: str, known: Iterable[str]) -> str | None:
    """The known word most like ``word``, whatever the case; None when none is like it."""
    by_plain = {each[:_LONGEST].casefold(): each for each in islice(known, _SEARCHED)}
    found = get_close_matches(word[:_LONGEST].casefold(), by_plain, n=1)
    return by_plain[found[0]] if found else None


def advice(word: str, known: Iterable[str]) -> str:
    """Remedy for an unknown word: the nearest known one, else all of them.

    >>> advice("thicknes", ["length", "thickness"])
    'Did you mean thickness?'
    >>> advice("colour", ["length", "thickness"])
    'Known here: length, thickness.'
    """
    words = list(known)
    near = nearest(word, words)
    if near is not None:
        return f"Did you mean {_shown(near)}?"
    shown = ", ".join(map(_shown, words[:_SHOWN])) + (" …" if len(words) > _SHOWN else "")
    return f"Known here: {shown}." if words else "Nothing is known here."


def _shown(word: str) -> str:
    return word if word.isprintable() and len(word) <= _LONGEST else quote(word)
