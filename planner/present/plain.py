"""Text that other people wrote, made harmless: it is only ever shown, never obeyed."""

from __future__ import annotations

import re
import unicodedata

_FORMULA_STARTS = tuple("=+-@")


def visible(text: str) -> str:
    r"""Text with everything that doesn't print spelled out, so that nothing is hidden and no terminal is steered.

    >>> visible("D1\x1b[31m\tfront")
    'D1\\x1b[31m\\tfront'
    """
    if text.isprintable():
        return text
    return "".join(char if char.isprintable() else ascii(char)[1:-1] for char in text)


def no_formula(text: str) -> str:
    """Text that a spreadsheet can't take for a formula, not even when the cell is edited.

    A quote before it is the usual guard (OWASP, CSV injection); full-width signs count as the plain ones.

    >>> no_formula("=1+1"), no_formula("cherry")
    ("'=1+1", 'cherry')
    """
    starts = unicodedata.normalize("NFKC", text[:1])
    return f"'{text}" if starts.startswith(_FORMULA_STARTS) else text


_WITHIN_A_LENGTH = re.compile(r"(?<=[0-9]) (?=[0-9]+/[0-9]|in\b|mm\b)")
_HELD = "\N{NO-BREAK SPACE}"


def held_together(text: str) -> str:
    """The text with no-break blanks inside its lengths: broken after the whole inches, one reads as another length."""
    return _WITHIN_A_LENGTH.sub(_HELD, text)


def words(text: str) -> list[str]:
    """The words of a text, between any two of which a line may end; a length with its unit is one word.

    >>> words("stop 3 27/32 in from end A")
    ['stop', '3 27/32 in', 'from', 'end', 'A']
    """
    return [let_go(word) for word in held_together(text).split(" ")]


def let_go(text: str) -> str:
    """The text with plain blanks again."""
    return text.replace(_HELD, " ")
