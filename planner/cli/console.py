"""The only place that writes to the terminal: data to standard output, everything else to standard error.

Colour, width and exit codes are settled here, and problems become text or JSON.
"""

from __future__ import annotations

import json
import os
import shutil
import sys
import textwrap
from collections.abc import Sequence
from contextlib import suppress
from enum import IntEnum
from types import MappingProxyType
from typing import IO

import typer

from planner.errors import InputError, PlanError, PlannerError, Problem, StoreError
from planner.present.table import Table


class Exit(IntEnum):
    """Exit codes."""

    DONE = 0
    NO_PLAN = 1
    INPUT = 2
    STORE = 3
    OUR_MISTAKE = 70
    """As EX_SOFTWARE of BSD's sysexits."""
    INTERRUPTED = 130
    """128 and the number of the signal, as shells have it; so is the next."""
    READER_GONE = 141


_REFUSALS = MappingProxyType(
    {
        InputError: (Exit.INPUT, "This can't be taken as it is:"),
        PlanError: (Exit.NO_PLAN, "No plan can be built from this:"),
        StoreError: (Exit.STORE, "The store can't be used:"),
    }
)

_PIPED = 100
"""Columns of a table that goes to a file or another program."""
_NARROWEST = 20
_ENDLESS = 10_000
_BOLD_RED, _BOLD, _PLAIN = "\x1b[1;31m", "\x1b[1m", "\x1b[0m"


# --- what the terminal can do -------------------------------------------------------------------------------


def colour(stream: IO[str]) -> bool:
    """Whether to send colours: ``NO_COLOR`` forbids them (no-color.org), ``FORCE_COLOR`` asks for them."""
    if os.environ.get("NO_COLOR"):
        return False
    if os.environ.get("FORCE_COLOR"):
        return True
    return stream.isatty() and os.environ.get("TERM") != "dumb"


def width(stream: IO[str], *, piped: int = _PIPED) -> int:
    """Columns to fit into: ``COLUMNS``, else the terminal's, else ``piped`` when there is no terminal."""
    usual = 80 if stream.isatty() else piped
    return max(shutil.get_terminal_size(fallback=(usual, 24)).columns, _NARROWEST)


def never_fail_to_print() -> None:
    """Spell out characters that the terminal's encoding lacks, instead of failing."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure:
            reconfigure(errors="backslashreplace")


# --- writing ------------------------------------------------------------------------------------------------


def out(text: str) -> None:
    """Data, to standard output.

    Raises:
        InputError: standard output can't be written to.
    """
    try:
        sys.stdout.write(text if text.endswith("\n") else f"{text}\n")
        sys.stdout.flush()
    except BrokenPipeError as error:
        _drop_the_rest()
        raise typer.Exit(Exit.READER_GONE) from error
    except OSError as error:
        _drop_the_rest()
        what = f"can't be written: {error.strerror}."
        raise InputError([Problem(where="standard output", what=what, remedy="Send it elsewhere.")]) from error


def _drop_the_rest() -> None:
    """Send what is left in the buffer nowhere, or the interpreter fails once more when it flushes at the end."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def out_json(data: object) -> None:
    """Data as JSON, to standard output."""
    out(json.dumps(data, indent=2))


def out_table(table: Table) -> None:
    """A table, to standard output, fitted to the terminal."""
    from planner.present.text import render

    out(render([table], width=width(sys.stdout), colour=colour(sys.stdout)))


def tell(text: str) -> None:
    """Anything but data, to standard error; if nobody listens there, so be it."""
    with suppress(OSError):
        sys.stderr.write(f"{text}\n")
        sys.stderr.flush()


def tell_passing(text: str) -> None:
    """A line on standard error that the next one is written over."""
    columns = width(sys.stderr) - 1
    with suppress(OSError):
        sys.stderr.write(f"\r{safe(text)[:columns].ljust(columns)}\r{safe(text)[:columns]}")
        sys.stderr.flush()


def bold(text: str) -> str:
    """Text for standard error that stands out, where that can be shown."""
    return f"{_BOLD}{text}{_PLAIN}" if colour(sys.stderr) else text


def safe(text: str) -> str:
    """Text that others wrote, so that it can't steer the terminal."""
    from planner.present.plain import visible

    return visible(text)


# --- refusals -----------------------------------------------------------------------------------------------


def refuse(refusal: PlannerError, *, as_json: bool) -> Exit:
    """Tell all problems of a refusal; returns the exit code that says of what kind it is."""
    code, heading = _REFUSALS[type(refusal)]
    tell(_as_json(refusal.problems) if as_json else _as_text(heading, refusal.problems))
    return code


def _as_json(problems: Sequence[Problem]) -> str:
    rows = [{"where": p.where, "what": p.what, "remedy": p.remedy} for p in problems]
    return json.dumps({"problems": rows}, indent=2)


def _as_text(heading: str, problems: Sequence[Problem]) -> str:
    first, second, plain = (_BOLD_RED, _BOLD, _PLAIN) if colour(sys.stderr) else ("", "", "")
    columns = width(sys.stderr, piped=_ENDLESS)
    lines = [f"{first}{heading}{plain}"]
    for problem in problems:
        lines.append(f"{second}{_folded(problem.where, columns, '')}{plain}")
        lines += [_folded(text, columns, "  ") for text in (problem.what, problem.remedy) if text]
    return "\n".join(lines)


def _folded(text: str, columns: int, indent: str) -> str:
    from planner.present.plain import held_together, let_go

    folding = textwrap.TextWrapper(
        columns, initial_indent=indent, subsequent_indent="  ", break_long_words=False, break_on_hyphens=False
    )
    return let_go(folding.fill(held_together(safe(text))))


def apologise(mistake: BaseException) -> Exit:
    """Own up to a mistake of the program's own, without a traceback."""
    what = safe(f"{type(mistake).__name__}: {mistake}")
    tell(f"The planner made a mistake of its own ({what}).\nNothing was half-written. To see more, add --debug.")
    return Exit.OUR_MISTAKE


def trace(error: BaseException) -> None:
    """The whole traceback, for those who asked for it."""
    import traceback

    tell("".join(traceback.format_exception(error)))
