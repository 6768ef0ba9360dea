"""What somebody types, line by line, or what stands in a file in place of them."""

from __future__ import annotations

import io
import sys
from contextlib import suppress

from planner.cli import console
from planner.errors import InputError, Problem

_LONGEST = 2_000


class Keyboard:
    """Standard input.

    Attributes:
        is_script: whether it is a file or another program, not somebody at a terminal.
    """

    def __init__(self) -> None:
        self.is_script = not sys.stdin.isatty()
        if not self.is_script:
            with suppress(ImportError):
                import readline  # noqa: F401 - arrow keys while typing
            if isinstance(sys.stdin, io.TextIOWrapper):
                sys.stdin.reconfigure(errors="surrogateescape")  # a slip of the hand is refused where it is read

    def line(self, prompt: str) -> str:
        """One line.

        Raises:
            EOFError: there are no more.
            InputError: a line of a file can't be taken for text.
        """
        if self.is_script:
            return _read()
        try:
            return _typed(prompt)
        except (EOFError, KeyboardInterrupt):
            console.tell("")  # what comes next stands on a line of its own
            raise


def _typed(prompt: str) -> str:
    if sys.stdout.isatty():
        return input(prompt)
    console.tell(prompt)
    return _line_of(sys.stdin.readline())


def _read() -> str:
    try:
        line = _line_of(sys.stdin.readline(_LONGEST + 1))
    except UnicodeDecodeError as error:
        remedy = "Save the file as UTF-8 text; editors offer that when saving."
        raise _refused("is not UTF-8 text.", remedy) from error
    if len(line) > _LONGEST:
        raise _refused("has a line that is very long.", f"Keep to {_LONGEST} characters.")
    return line


def _line_of(read: str) -> str:
    if not read:
        raise EOFError
    return read


def _refused(what: str, remedy: str) -> InputError:
    return InputError([Problem(where="standard input", what=what, remedy=remedy)])
