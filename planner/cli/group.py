"""How the program begins and ends: general options anywhere, and every refusal told by the console."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from itertools import islice
from typing import Any, NoReturn

from typer.core import TyperGroup

from planner.cli import console
from planner.cli.console import Exit
from planner.errors import InputError, PlannerError, Problem

_WIDEST_HELP = 80
_WITH_VALUE, _ALONE, _JSON = "--store", "--debug", "--json"


class Planner(TyperGroup):
    """The group of all commands."""

    def main(self, args: Sequence[str] | None = None, *how: Any, **settings: Any) -> NoReturn:  # noqa: ANN401
        """Run one command and leave with its exit code; the arguments are typer's own."""
        given = sys.argv[1:] if args is None else list(args)
        console.never_fail_to_print()
        fitted = {"terminal_width": min(console.width(sys.stdout), _WIDEST_HELP)}
        sys.exit(self._ended(given, *how, **settings | fitted | {"standalone_mode": False}))

    def _ended(self, given: list[str], *how: Any, **settings: Any) -> int:  # noqa: ANN401
        """Run one command, tell what went wrong, and return the exit code."""
        try:
            code = super().main(_general_first(given) or ["--help"], *how, **settings)
        except Exception as error:  # noqa: BLE001  (the one place where nothing may slip through)
            if _ALONE in given:
                console.trace(error)
            return _told(error, as_json=_JSON in given)
        if code == Exit.INTERRUPTED:
            console.tell("Interrupted.")
        return code or Exit.DONE


def _general_first(given: Sequence[str]) -> list[str]:
    """Arguments with the general options before the command; they may be written anywhere."""
    general: list[str] = []
    others: list[str] = []
    rest = iter(given)
    for arg in rest:
        if arg == "--":
            others += [arg, *rest]
        elif arg == _WITH_VALUE:
            value = list(islice(rest, 1))
            general += [arg, *value]
            if not value:
                return general  # nothing may stand where its value is missing
        elif arg == _ALONE or arg.startswith(f"{_WITH_VALUE}="):
            general.append(arg)
        else:
            others.append(arg)
    return general + others


def _told(error: Exception, *, as_json: bool) -> Exit:
    match error:
        case PlannerError():
            return console.refuse(error, as_json=as_json)
        case OSError():
            return console.refuse(_trouble(error), as_json=as_json)
        case _ if hasattr(error, "format_message"):  # all that typer raises has it, whatever its class in this version
            return console.refuse(_misuse(error), as_json=as_json)
        case _:
            return console.apologise(error)


def _misuse(error: Any) -> InputError:  # noqa: ANN401  (see above)
    """What typer refuses on the command line, as a problem."""
    context = getattr(error, "ctx", None)
    command = context.command_path if context else "planner"
    return InputError([Problem(where=command, what=error.format_message(), remedy=f"See {command} --help.")])


def _trouble(error: OSError) -> InputError:
    """What the system refuses, as a problem; where more is known of it, the app has said so already."""
    where = str(error.filename or "the system")
    return InputError(
        [Problem(where=where, what=f"{error.strerror or error}.", remedy="Put that right and try again.")]
    )
