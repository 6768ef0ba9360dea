"""A safe file name from a project's name, which may hold anything that can be typed."""

from __future__ import annotations

import re
import unicodedata

_RESERVED = re.compile(r"(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])( *\..*)?", re.IGNORECASE)
"""Device names that one system takes for a device in any folder and with any suffix.

Source: Microsoft Learn, *Naming Files, Paths, and Namespaces*, "Naming conventions".
"""

_PUNCTUATION = frozenset(" -_.,()")
_GREATEST_BYTES = 100
"""File systems take 255 bytes; this leaves room for suffixes and can still be read."""

_USUAL = "project"


def safe_stem(name: str) -> str:
    """File name without suffix for a project of this name: no path, no device, nothing hidden, never empty.

    Letters and digits of any script stay; everything else becomes a hyphen.

    >>> safe_stem("../Anna's chest"), safe_stem("CON"), safe_stem("=x")
    ('Anna-s chest', 'project CON', 'x')
    """
    plain = "".join(map(_kept, unicodedata.normalize("NFC", name)))
    stem = _short(re.sub(r"[ -]*-[ -]*", "-", plain)).strip(" -.") or _USUAL
    return f"{_USUAL} {stem}" if _RESERVED.fullmatch(stem) else stem


def _kept(char: str) -> str:
    return char if char in _PUNCTUATION or unicodedata.category(char)[0] in "LMN" else "-"


def _short(text: str) -> str:
    """At most so many bytes, cut between characters."""
    return text.strip(" -.").encode()[:_GREATEST_BYTES].decode(errors="ignore")
