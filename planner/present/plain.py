"""Text that other people wrote, made harmless: it is only ever shown, never obeyed."""

from __future__ import annotations

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
