"""Marks that are too long or given twice, in the raw file."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TypeAlias

from planner.domain.marks import BOX_MARK, plinth_mark
from planner.intake.fit_spaces import MaybeMarked, base_has_ring, marks_in
from planner.intake.raw import Raw, number_at, table_at, tables_at
from planner.intake.refusal import Fault, Path, path_text, quote
from planner.intake.values import GREATEST_COUNT, GREATEST_NEST

_Marked: TypeAlias = tuple[Path, str]


def faults_of_marks(raw: Raw) -> Iterator[Fault]:
    """All faults of the marks of a file."""
    yield from _too_long_to_be_numbered(raw)
    yield from _too_long_for_a_plinth(raw)
    yield from _given_twice(raw)


def boxes_in(box: Raw) -> int:
    """How many boxes a table asks for, as a batch or a nest, as far as that can be read."""
    batch = number_at(box, "count", GREATEST_COUNT) or 1
    return max(batch, number_at(table_at(box, "nest"), "count", GREATEST_NEST) or 1)


def _too_long_to_be_numbered(raw: Raw) -> Iterator[Fault]:
    for path, box in tables_at(raw, "box"):
        mark, count = box.get("mark"), boxes_in(box)
        good = isinstance(mark, str) and BOX_MARK.fullmatch(mark)
        if good and count > 1 and not BOX_MARK.fullmatch(f"{mark}{count}"):
            yield Fault(
                path=(*path, "mark"),
                what=f"{quote(mark)} is too long to be numbered up to {count}.",
                remedy="With its number, a mark has at most 8 letters and digits.",
            )


def _too_long_for_a_plinth(raw: Raw) -> Iterator[Fault]:
    for path, carcase in tables_at(raw, "carcase"):
        mark = carcase.get("mark")
        if not isinstance(mark, str) or not BOX_MARK.fullmatch(mark) or not base_has_ring(carcase):
            continue
        if "mark" not in carcase["base"] and not BOX_MARK.fullmatch(plinth_mark(mark)):
            yield Fault(
                path=(*path, "base", "mark"),
                what=f"is missing: {quote(mark)} is too long to have a P added for the plinth.",
                remedy="Give the base a mark of its own.",
            )


def _given_twice(raw: Raw) -> Iterator[Fault]:
    owners: dict[str, Path] = {}
    told: set[Path] = set()
    drawers = [(path, mark) for marks in drawer_marks(raw) for path, mark in marks if mark is not None]
    for path, mark in [*_box_marks(raw), *_carcase_marks(raw), *drawers]:
        owner = owners.setdefault(mark, path)
        if owner is not path and path not in told:
            told.add(path)
            yield Fault(
                path=path,
                what=f"the mark {quote(mark)} is already taken, by {path_text(owner)}.",
                remedy="Give each its own; marks = [...] names the drawers of a column, mark = ... that of a tier.",
            )


def _box_marks(raw: Raw) -> Iterator[_Marked]:
    """Marks of boxes; a batch or a nest takes its own mark and those of its boxes."""
    for path, box in tables_at(raw, "box"):
        mark, count = box.get("mark"), boxes_in(box)
        place = (*path, "mark")
        if isinstance(mark, str):
            yield place, mark
            if count > 1:
                yield from ((place, f"{mark}{number}") for number in range(1, count + 1))


def _carcase_marks(raw: Raw) -> Iterator[_Marked]:
    """Marks of carcases and their plinths."""
    for path, carcase in tables_at(raw, "carcase"):
        mark = carcase.get("mark")
        if isinstance(mark, str):
            yield (*path, "mark"), mark
        if base_has_ring(carcase):
            said = carcase["base"].get("mark")
            if isinstance(said, str):
                yield (*path, "base", "mark"), said
            elif isinstance(mark, str):
                yield (*path, "base"), plinth_mark(mark)


def drawer_marks(raw: Raw) -> list[list[MaybeMarked]]:
    """Marks of the drawers of each carcase: their own, else the usual ones, with columns counted throughout."""
    carcases = [tables_at(carcase, "column", path) for path, carcase in tables_at(raw, "carcase")]
    only_column = sum(map(len, carcases)) == 1
    number = 0
    marks: list[list[MaybeMarked]] = []
    for columns in carcases:
        marks.append([])
        for column in columns:
            number += 1
            marks[-1] += marks_in(column, number, only_column=only_column)
    return marks
