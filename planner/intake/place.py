"""Places in the tables of a project file, as a maker names them: ``carcase.C.column.1.drawers``.

Keys stand one after the other. What is listed is picked by its mark where it has one, else by its number from 1. A
name with stops in it goes in quotes: ``material.'no. 2 ash'.kind``. What may stand where is taken from the schema, so
that a new key of the file is a new place by itself.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from planner.intake.nearest import advice, nearest
from planner.intake.refusal import Path, RefusalError, quote
from planner.intake.schema import node_at

_STEP = re.compile(
    r"\.(?:'(?P<single>(?:[^'\\]|\\.)*)'|\"(?P<double>(?:[^\"\\]|\\.)*)\"|(?P<bare>[^.'\"\[\]]+))|\[(?P<number>[0-9]+)\]"
)
_BARE = re.compile(r"[\w-]+")
_NAMED_BY_THE_MAKER = (("material",), ("sled",))
"""Tables whose keys are names; any others would be mistyped, so a new one is only made when it is given whole."""

_LONGEST_NUMBER = 4
"""Digits of a number in a list."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """A place where something is said, or may be.

    Attributes:
        path: the way to it.
        said: what stands there; None where nothing does, so that what is usual counts.
        meaning: the schema's description.
    """

    path: Path
    said: Any
    meaning: str


# --- from a text to a path ----------------------------------------------------------------------------------


def path_of(tables: Mapping[str, Any], text: str) -> Path:
    """The path that a maker means; what stands there, if anything, is another question.

    Raises:
        RefusalError: no such place; the nearest, or all that may stand there, are named.
    """
    words = _words(text)
    path: Path = ()
    for number, word in enumerate(words, start=1):
        path = (*path, _step(tables, path, word, last=number == len(words)))
    return path


def _words(text: str) -> list[str]:
    dotted = text if text.startswith("[") else f".{text}"
    words: list[str] = []
    at = 0
    while found := _STEP.match(dotted, at):
        quoted = found["single"] if found["single"] is not None else found["double"]
        words.append(found["bare"] or found["number"] or re.sub(r"\\(.)", r"\1", quoted or ""))
        at = found.end()
    if at != len(dotted) or not words:
        raise RefusalError(f"{quote(text)} is no place.", "Write keys with stops between them: carcase.C.height.")
    return words


def _step(tables: Mapping[str, Any], path: Path, word: str, *, last: bool) -> str | int:
    """The next step of a path."""
    here, node = value_at(tables, path), node_at(path)
    if isinstance(here, list) or (here is None and node.get("type") == "array"):
        return _member(here or [], path_text_of(tables, path), word, last=last)
    known = list(dict.fromkeys((*node.get("properties", {}), *(here or {})))) if _is_table(here, node) else []
    if word in known or (node.get("additionalProperties") and (path not in _NAMED_BY_THE_MAKER or last)):
        return word
    where = f"in {path_text_of(tables, path)}" if path else "in a project"
    raise RefusalError(f"{where}, {quote(word)} is not known.", _remedy(tables, path, word, known))


def _is_table(here: object, node: Mapping[str, Any]) -> bool:
    return isinstance(here, dict) or (here is None and ("properties" in node or "additionalProperties" in node))


def _remedy(tables: Mapping[str, Any], path: Path, word: str, known: list[str]) -> str:
    near = nearest(word, known)
    if near is not None:
        meaning = node_at((*path, near)).get("description", "")
        return f"Did you mean {path_text_of(tables, (*path, near))}? {meaning}".rstrip()
    if path in _NAMED_BY_THE_MAKER:
        return f"{advice(word, known)} A new one must be given whole."
    return what_may_stand(tables, path)


def _member(listed: list[Any], where: str, word: str, *, last: bool) -> int:
    """Place from 0 in a list; one more than there are is the place of a new one, which must be given whole."""
    if word.isascii() and word.isdecimal() and len(word) <= _LONGEST_NUMBER:
        number = int(word)
        if 1 <= number <= len(listed) + last:
            return number - 1
        raise RefusalError(f"{where} has no number {number}.", f"It has {len(listed)}, counted from 1.")
    marks = [each.get("mark") if isinstance(each, dict) else None for each in listed]
    if word in marks:
        return marks.index(word)
    named = [mark for mark in marks if isinstance(mark, str)]
    remedy = advice(word, named) if named else f"Write a number from 1 to {len(listed) or 1}."
    raise RefusalError(f"{where} has no {quote(word)}.", remedy)


# --- from a path to a text ----------------------------------------------------------------------------------


def path_text_of(tables: Mapping[str, Any], path: Path) -> str:
    """The path as ``path_of`` reads it."""
    return ".".join(_word(value_at(tables, path[:at]), step) for at, step in enumerate(path))


def _word(within: object, step: str | int) -> str:
    if isinstance(step, str):
        return step if _BARE.fullmatch(step) else "'{}'".format(re.sub(r"(['\\])", r"\\\1", step))
    marks = [each.get("mark") for each in within if isinstance(each, dict)] if isinstance(within, list) else []
    mark = marks[step] if step < len(marks) else None
    told_apart = isinstance(mark, str) and _BARE.fullmatch(mark) and not mark[0].isdecimal() and marks.count(mark) == 1
    return str(mark) if told_apart else str(step + 1)


def value_at(tables: Mapping[str, Any], path: Path) -> Any:  # noqa: ANN401 - any value of a file
    """What stands at a path; None when nothing does."""
    value: Any = tables
    for step in path:
        if isinstance(step, int):
            value = value[step] if isinstance(value, list) and step < len(value) else None
        else:
            value = value.get(step) if isinstance(value, dict) else None
    return value


# --- what there is ------------------------------------------------------------------------------------------


def places_in(tables: Mapping[str, Any], path: Path) -> Iterator[Place]:
    """What may stand in the table or list at a path, one step down: all keys, said or not, and all that is listed."""
    here, node = value_at(tables, path), node_at(path)
    if isinstance(here, list):
        steps: list[str | int] = list(range(len(here)))
    else:
        steps = list(dict.fromkeys((*node.get("properties", {}), *(here or {})))) if _is_table(here, node) else []
    for step in steps:
        below = (*path, step)
        yield Place(path=below, said=value_at(tables, below), meaning=node_at(below).get("description", ""))


def places_said(tables: Mapping[str, Any], path: Path = ()) -> Iterator[Place]:
    """Every value that is said in the table or list at a path, however deep; a list of plain values is one value."""
    for place in places_in(tables, path):
        if place.said is not None and not _holds_places(place.said):
            yield place
        yield from places_said(tables, place.path) if _holds_places(place.said) else ()


def _holds_places(said: object) -> bool:
    """Whether what stands there is told key by key: a table of which something is said, or a list of tables."""
    return bool(said) and (isinstance(said, dict) or (isinstance(said, list) and isinstance(said[0], dict)))


def what_may_stand(tables: Mapping[str, Any], path: Path) -> str:
    """What a maker may name at a path, with its meaning, in one paragraph."""
    found = list(places_in(tables, path))
    if not found:
        return "Nothing stands below it: leave that out."
    texts = (
        f"{_word(value_at(tables, path), p.path[-1])} ({p.meaning.partition('. ')[0].rstrip('.')})"
        if p.meaning
        else _word(value_at(tables, path), p.path[-1])
        for p in found
    )
    return f"Here may stand: {'; '.join(texts)}."
