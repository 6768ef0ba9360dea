"""Somebody who types at a terminal: the program runs in a process of its own, behind a pseudo-terminal."""

from __future__ import annotations

import os
import select
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Self

PROMPT = b"> "
_AT_ITS_OWN_TERMINAL = """
import fcntl, os, sys, termios
fcntl.ioctl(0, termios.TIOCSCTTY, 0)
os.execv(sys.executable, [sys.executable, "-m", "planner", *sys.argv[1:]])
"""
"""Takes the terminal first, so that Ctrl-C there reaches the program and nobody else."""
_PATIENCE_S = 120
"""Longer than any answer takes; a program that says nothing for so long hangs."""


class Typist:
    """Runs ``planner`` with these arguments and types at it, a line at a time.

    Args:
        store: where the store is, or would be.
        folder: where the program runs.
        into: file for standard output, in place of the terminal.

    Attributes:
        seen: all that the terminal has shown, what was typed included.
        code: exit code, once the program has ended.
    """

    def __init__(self, *args: str, store: Path, folder: Path, into: Path | None = None) -> None:
        import pty

        self._terminal, ours = pty.openpty()
        settings = {"PLANNER_STORE": str(store), "TERM": "dumb", "COLUMNS": "80", "LINES": "24", "PYTHONUTF8": "1"}
        out = os.dup(ours) if into is None else os.open(into, os.O_WRONLY | os.O_CREAT)
        self._process = subprocess.Popen(
            [sys.executable, "-c", _AT_ITS_OWN_TERMINAL, *args],
            stdin=ours,
            stdout=out,
            stderr=ours,
            cwd=folder,
            env={**os.environ, **settings},
            start_new_session=True,
        )
        os.close(ours)
        os.close(out)
        self.seen = ""
        self.code: int | None = None
        self._wait()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        """Hang up, if the program still runs."""
        if self.code is None:
            self._process.kill()
            self._process.wait(_PATIENCE_S)
            os.close(self._terminal)

    @property
    def is_asked(self) -> bool:
        """Whether the program waits for an answer."""
        return self.code is None

    @property
    def question(self) -> str:
        """The last line but choices and the prompt: what is asked now."""
        return next(line for line in reversed(self.seen.splitlines()) if line.endswith(")") and line[:1].isalpha())

    def types(self, text: str) -> str:
        """Type a line; returns what is shown from then on until the next question, or the end."""
        return self.presses(text.encode() + b"\n")

    def presses(self, keys: bytes) -> str:
        """Press keys; returns what is shown from then on until the next question, or the end."""
        before = len(self.seen)
        os.write(self._terminal, keys)
        self._wait()
        return self.seen[before:]

    def enter_until(self, asked: Callable[[str], bool]) -> None:
        """Press Enter until such a question stands there."""
        while self.is_asked and not asked(self.question):
            self.types("")
        assert self.is_asked, self.seen

    def _wait(self) -> None:
        """Read until the next prompt, or to the end."""
        until = time.monotonic() + _PATIENCE_S
        read = b""
        while not read.rstrip(b"\r\n").endswith(PROMPT) or self._more_comes():
            assert time.monotonic() < until, self.seen + read.decode(errors="replace")
            if not select.select([self._terminal], [], [], 1)[0]:
                continue
            piece = self._piece()
            if not piece:
                self.code = self._process.wait(_PATIENCE_S)
                os.close(self._terminal)
                break
            read += piece
        self.seen += read.decode(errors="replace").replace("\r\n", "\n")

    def _more_comes(self) -> bool:
        return bool(select.select([self._terminal], [], [], 0.05)[0])

    def _piece(self) -> bytes:
        try:
            return os.read(self._terminal, 65_536)
        except OSError:  # so Linux says that nobody is left at the other end
            return b""
