"""Read a project file: text in, frozen project out, or all that is wrong with it at once."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from planner.domain.project import Project, problems
from planner.errors import InputError, Problem
from planner.intake.build import build
from planner.intake.fit import count_rings, count_spaces, faults_of_fit
from planner.intake.fit_sizes import faults_of_sizes
from planner.intake.fit_spaces import deepest
from planner.intake.fit_wood import faults_of_wood
from planner.intake.form import read_form
from planner.intake.kept_sleds import KeptSleds, look_up, none_kept
from planner.intake.known import Known, known_of
from planner.intake.places import Lines
from planner.intake.refusal import Fault, Path, RefusalError, path_text, quote
from planner.intake.sharing import laid_over
from planner.intake.values import GREATEST_DEPTH, version

if TYPE_CHECKING:
    from planner.intake.file_drawer import DrawerTable

GREATEST_SIZE = 1_000_000
GREATEST_LINE = 2_000
GREATEST_RINGS = 1_000
"""More boxes, carcases, plinths and drawers than one workshop builds from one file; a slipped digit is likelier."""
GREATEST_SPACES = 1_000
"""The same of undivided spaces, whatever they hold."""


def read_project(text: str, source: str, kept_sleds: KeptSleds = none_kept) -> Project:
    """The project that a file describes.

    Args:
        text: the whole file.
        source: what to call the file in messages.
        kept_sleds: looks up the store's sleds, for a file that names one of them.

    Raises:
        InputError: with everything that is wrong with the file; each problem says where, by line and path.
    """
    text = text.removeprefix("\N{ZERO WIDTH NO-BREAK SPACE}")
    return _read(_toml(text, source), _Source(source, Lines(text), path_text), kept_sleds)


def read_tables(
    raw: Mapping[str, Any],
    source: str,
    named: Callable[[Path], str] = path_text,
    kept_sleds: KeptSleds = none_kept,
) -> Project:
    """The project that the tables of a file describe, where there is no text.

    Args:
        raw: as the reader of TOML gives them: lists, tables, texts, whole numbers, Decimals, true and false.
        source: what to call them in messages.
        named: how messages name a place in them.
        kept_sleds: as for a file.

    Raises:
        InputError: with everything that is wrong; each problem says where.
    """
    return _read(raw, _Source(source, Lines(""), named), kept_sleds)


@dataclass(frozen=True, slots=True)
class _Source:
    """What messages call a file and the places in it."""

    name: str
    lines: Lines
    named: Callable[[Path], str]


def _read(raw: Mapping[str, Any], source: _Source, kept_sleds: KeptSleds) -> Project:
    _refuse_at_once(raw, source.name)
    known = known_of(raw)
    file, faults = read_form(raw, known)
    faults += faults_of_fit(raw)
    if file and not faults:
        faults += [*faults_of_sizes(file), *faults_of_wood(file)]
    kept, faults_of_kept = look_up(raw, known, kept_sleds)
    faults += faults_of_kept
    if file is None or faults:
        raise InputError(_placed(faults, source))
    project = build(file, [_differing_drawers(carcase, known) for carcase in raw.get("carcase", [])], kept)
    left = problems(project)
    if left:
        raise InputError(Problem(where=f"{source.name}: {p.where}", what=p.what, remedy=p.remedy) for p in left)
    return project


# --- the text -----------------------------------------------------------------------------------------------


def _toml(text: str, source: str) -> dict[str, Any]:
    if len(text) > GREATEST_SIZE:
        raise _refused(source, "the file is over a million characters long.", "Is it a project file?")
    for number, line in enumerate(text.split("\n"), start=1):
        if len(line) > GREATEST_LINE:
            raise _refused(f"{source}, line {number}", "the line is very long.", f"Keep to {GREATEST_LINE} characters.")
    try:
        return tomllib.loads(text, parse_float=Decimal)
    except tomllib.TOMLDecodeError as error:
        raise _not_toml(str(error), text, source) from error
    except RecursionError as error:
        raise _refused(source, "brackets stand too deep in each other.", "Keep to the tables of the format.") from error
    except ValueError as error:
        raise _refused(source, "a number or a date can't be read.", "Write lengths like 3/4 in, in quotes.") from error


def _refused(where: str, what: str, remedy: str) -> InputError:
    return InputError([Problem(where=where, what=what, remedy=remedy)])


_PLACE = re.compile(r" \(at (?:line (?P<line>[0-9]+), column [0-9]+|end of document)\)$")
_TOML_REMEDIES = MappingProxyType(
    {
        "Cannot declare": "The same table is headed twice: put its keys under one heading ([[...]] adds one more).",
        "Cannot overwrite": "The same key is given twice: keep one.",
        "Cannot mutate": "A table is given twice, in two ways: keep one.",
        "Cannot redefine": "A table is given twice, in two ways: keep one.",
        "Duplicate": "The same key is given twice: keep one.",
        "Expected newline": 'One key = value on each line; put lengths in quotes: thickness = "3/4 in".',
        "Expected '='": "Write key = value; names with blanks go in quotes.",
        "Expected ']": "Close the heading: [project], [[box]].",
        "Invalid value": 'Put texts and lengths in quotes: thickness = "3/4 in".',
        "Invalid date": "Leave dates out, or put texts in quotes.",
        "Invalid initial": "Write key = value; names with signs or blanks go in quotes.",
        "Unclosed array": "Close the list with ].",
        "Unclosed inline": "Close the table with }.",
        "Unescaped": "A \\ in quotes must be doubled, or use '...' as quotes.",
        "Unterminated": "Close the quotes.",
        "Illegal character": "Close the quotes on the same line; leave out characters that can't be seen.",
    }
)
"""How the standard library's message starts → what would be right."""


def _not_toml(message: str, text: str, source: str) -> InputError:
    place = _PLACE.search(message)
    lines = text.split("\n")
    number = int(place["line"]) if place and place["line"] else len(lines)
    said = lines[number - 1].strip() or "the end of the file"
    remedy = next((told for start, told in _TOML_REMEDIES.items() if message.startswith(start)), "Write key = value.")
    return _refused(f"{source}, line {number}", f"{quote(said)} is not in order.", remedy)


# --- the tables ---------------------------------------------------------------------------------------------


def _refuse_at_once(raw: Mapping[str, Any], source: str) -> None:
    """Refuse what would make all other messages pointless: another version of the format, or far too much."""
    if "format" in raw:
        try:
            version(raw["format"])
        except RefusalError as error:
            raise _refused(f"{source}: format", error.what, error.remedy) from error
    if deepest(raw) > GREATEST_DEPTH:
        raise _refused(
            f"{source}: carcase",
            f"more than {GREATEST_DEPTH} columns stand in each other.",
            f"Columns may stand in the tiers of others up to {GREATEST_DEPTH} deep.",
        )
    for asked, greatest, what in (
        (count_rings(raw), GREATEST_RINGS, "boxes, carcases, plinths and drawers"),
        (count_spaces(raw), GREATEST_SPACES, "spaces for drawers and other things"),
    ):
        if asked > greatest:
            raise _refused(
                source,
                f"{asked} {what} are asked for.",
                f"One project has at most {greatest}; make several projects of it.",
            )


def _placed(faults: Iterable[Fault], source: _Source) -> list[Problem]:
    """Problems in the order of the file; those of the file as a whole come last."""
    placed = [(source.lines.line(fault.path) or 0, fault) for fault in faults]
    placed.sort(key=lambda each: (not each[1].path, each[0]))
    return [_problem(line, fault, source) for line, fault in placed]


def _problem(line: int, fault: Fault, source: _Source) -> Problem:
    file = f"{source.name}, line {line}" if line else source.name
    where = f"{file}: {source.named(fault.path)}" if fault.path else file
    return Problem(where=where, what=fault.what, remedy=fault.remedy)


def _differing_drawers(carcase: Mapping[str, Any], known: Known) -> dict[str, DrawerTable]:
    """The drawers with something different, by mark; their pins and joints are laid over each other in ``build``."""
    from planner.intake.file_drawer import DrawerTable

    def but_pins(table: Mapping[str, Any]) -> dict[str, Any]:
        return {key: said for key, said in table.items() if key not in {"pins", "joint"}}

    return {
        mark: DrawerTable.model_validate(laid_over(but_pins(carcase["drawer"]), but_pins(changes)), context=known)
        for mark, changes in carcase.get("except", {}).items()
    }
