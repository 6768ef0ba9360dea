"""Read the form of a file: each value by itself; every fault in our own words."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import TYPE_CHECKING, Any, TypeAlias

from planner.intake.nearest import advice
from planner.intake.refusal import Fault, Path, RefusalError, path_text, quote
from planner.intake.schema import node_at
from planner.intake.values import unseen

if TYPE_CHECKING:
    from pydantic_core import ErrorDetails

    from planner.intake.file_model import File
    from planner.intake.known import Known

MOST_FAULTS = 1_000
"""Told one by one; so many come from a file of another kind."""

_Words: TypeAlias = tuple[str, str]


def read_form(raw: Mapping[str, Any], known: Known) -> tuple[File | None, list[Fault]]:
    """The file as tables, or None and all that is wrong with its form."""
    from pydantic import ValidationError

    from planner.intake.file_model import File

    try:
        return File.model_validate(raw, context=known), []
    except ValidationError as error:
        found = error.errors(include_url=False)
    more = len(found) - MOST_FAULTS
    rest = [Fault(path=(), what=f"{more} more values are wrong.", remedy="Put these right first.")] if more > 0 else []
    return None, [_fault(each) for each in found[:MOST_FAULTS]] + rest


def _fault(error: ErrorDetails) -> Fault:
    from planner.intake.file_values import TAGS

    path = tuple(step for step in error["loc"] if step not in {"[key]", *TAGS})
    what, remedy = _WORDS.get(error["type"], _unforeseen)(error, path)
    return Fault(path=path, what=what, remedy=remedy)


# --- words for each kind of error of the library ------------------------------------------------------------


def _refused(error: ErrorDetails, path: Path) -> _Words:
    reason = error.get("ctx", {}).get("error")
    return (reason.what, reason.remedy) if isinstance(reason, RefusalError) else _unforeseen(error, path)


def _unforeseen(error: ErrorDetails, path: Path) -> _Words:
    return f"{quote(error['input'])} can't stand here.", _meaning(path)


def _missing(_: ErrorDetails, path: Path) -> _Words:
    return "is missing.", f"Add it. {_meaning(path)}".rstrip()


def _unknown_key(_: ErrorDetails, path: Path) -> _Words:
    key = str(path[-1])
    return f"the key {quote(key)} is not known here.", advice(key, node_at(path[:-1]).get("properties", {}))


def _unknown_word(error: ErrorDetails, _: Path) -> _Words:
    return f"{quote(error['input'])} is not known here.", f"Write {error['ctx']['expected']}."


def _no_unicode(error: ErrorDetails, _: Path) -> _Words:
    refusal = unseen(error["input"])
    return refusal.what, refusal.remedy


def _no_text(error: ErrorDetails, _: Path) -> _Words:
    return f"{quote(error['input'])} is not a text.", "Write a text in quotes."


def _too_long(error: ErrorDetails, _: Path) -> _Words:
    return f"{quote(error['input'])} is too long.", f"Use at most {error['ctx']['max_length']} characters."


def _no_character(*_: object) -> _Words:
    return "is empty.", "Write at least one character."


def _too_many(error: ErrorDetails, _: Path) -> _Words:
    most = error["ctx"]["max_length"]
    return f"{error['ctx']['actual_length']} are listed.", f"List at most {most}."


def _no_truth(error: ErrorDetails, _: Path) -> _Words:
    return f"{quote(error['input'])} is neither true nor false.", "Write true or false, without quotes."


def _empty(_: ErrorDetails, path: Path) -> _Words:
    return "is empty.", f"Give at least one. {_meaning(path)}".rstrip()


def _no_number(error: ErrorDetails, path: Path) -> _Words:
    node = node_at(path)
    return (
        f"{quote(error['input'])} can't be taken.",
        f"Write a whole number from {node['minimum']} to {node['maximum']}.",
    )


def _no_table(error: ErrorDetails, path: Path) -> _Words:
    return f"{quote(error['input'])} stands where a table is wanted.", f"Write {_heading(path)} and its keys below it."


def _no_named_tables(error: ErrorDetails, path: Path) -> _Words:
    return f"{quote(error['input'])} stands where tables are wanted.", f"Write {_heading((*path, 'NAME'))} for each."


def _no_list(error: ErrorDetails, path: Path) -> _Words:
    of_tables = "$ref" in node_at(path).get("items", {})
    right = f"{_heading((*path, 0))} in double brackets, one for each" if of_tables else "a list in brackets: [ ... ]"
    return f"{quote(error['input'])} stands where a list is wanted.", f"Write {right}."


_WORDS: Mapping[str, Callable[[ErrorDetails, Path], _Words]] = MappingProxyType(
    {
        "value_error": _refused,
        "missing": _missing,
        "extra_forbidden": _unknown_key,
        "literal_error": _unknown_word,
        "string_type": _no_text,
        "string_unicode": _no_unicode,
        "string_too_short": _no_character,
        "string_too_long": _too_long,
        "too_short": _empty,
        "too_long": _too_many,
        "bool_type": _no_truth,
        "int_type": _no_number,
        "greater_than_equal": _no_number,
        "less_than_equal": _no_number,
        "model_type": _no_table,
        "dict_type": _no_named_tables,
        "list_type": _no_list,
    }
)


def _meaning(path: Path) -> str:
    said: str = node_at(path).get("description", "")
    return said


def _heading(path: Path) -> str:
    """How the table at this place is headed: ``[carcase.drawer]`` or ``[[box]]``."""
    keys = path_text(tuple(step for step in path if isinstance(step, str)))
    return f"[[{keys}]]" if isinstance(path[-1], int) else f"[{keys}]"
