"""Read the text of a project file from a path or from standard input."""

from __future__ import annotations

import sys
from codecs import BOM_UTF8, BOM_UTF16_BE, BOM_UTF16_LE
from dataclasses import dataclass
from pathlib import Path

from planner.errors import InputError, Problem

STANDARD_INPUT = "-"
"""What a maker writes in place of a file to mean standard input or standard output."""

GREATEST_BYTES = 1_000_000
"""A project file over a megabyte is another file, given by mistake."""

_SAVE_AS_UTF8 = "Save the file as UTF-8 text; editors offer that when saving."


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """Text of a project file, and the name under which problems in it are reported."""

    name: str
    text: str


def read_source(path: str) -> Source:
    """Text of the file at ``path``, or of standard input for ``-``; a byte order mark is dropped.

    Raises:
        InputError: no such file, a folder, not to be read, over a megabyte, or not UTF-8.
    """
    name = "standard input" if path == STANDARD_INPUT else path
    content = _bytes(path, name)
    if len(content) > GREATEST_BYTES:
        raise _refusal(name, f"is over {GREATEST_BYTES:,} bytes, too long for a project file.", "Is it the right file?")
    return Source(name=name, text=_text(content, name))


def _bytes(path: str, name: str) -> bytes:
    """Content, one byte more than the limit at most."""
    try:
        if path == STANDARD_INPUT:
            return sys.stdin.buffer.read(GREATEST_BYTES + 1)
        with Path(path).open("rb") as file:
            return file.read(GREATEST_BYTES + 1)
    except FileNotFoundError as error:
        raise _refusal(name, "there is no such file.", "Look at the spelling and at the folder you are in.") from error
    except IsADirectoryError as error:
        raise _refusal(name, "is a folder.", "Name the project file in it.") from error
    except OSError as error:
        raise _refusal(name, f"can't be read: {reason(error)}.", "Check the file's name and permissions.") from error


def _text(content: bytes, name: str) -> str:
    if content.startswith((BOM_UTF16_LE, BOM_UTF16_BE)):
        raise _refusal(name, "is UTF-16 text, not UTF-8.", _SAVE_AS_UTF8)
    try:
        return content.removeprefix(BOM_UTF8).decode("utf-8")
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        found = f"byte 0x{content[error.start]:02x} is not UTF-8."
        raise _refusal(f"{name}, line {line}", found, _SAVE_AS_UTF8) from error


def reason(error: OSError) -> str:
    """Why the system refused, in its own words."""
    return error.strerror or str(error)


def _refusal(where: str, what: str, remedy: str) -> InputError:
    return InputError([Problem(where=where, what=what, remedy=remedy)])
