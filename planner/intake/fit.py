"""What doesn't fit together across the tables of a project file.

Looks at the raw file, so that these faults are reported in one go with those of form; what has the wrong form is
passed over here.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TypeAlias

from planner.domain.marks import BOX_MARK, drawer_mark
from planner.intake.fit_drawers import faults_of_drawers
from planner.intake.known import known_of
from planner.intake.raw import Placed, Raw, number_at, table_at, tables_at
from planner.intake.refusal import Fault, Path, path_text, quote
from planner.intake.values import GREATEST_COUNT, GREATEST_DRAWERS
from planner.lengths import Grid, Unit

_Marked: TypeAlias = tuple[Path, str]


def faults_of_fit(raw: Raw) -> Iterator[Fault]:
    """Everything that is wrong between tables, in no particular order."""
    yield from _nothing_to_make(raw)
    yield from _shown_in_other_unit(raw)
    yield from _no_sled_named(raw)
    yield from _marks_too_long(raw)
    yield from _marks_given_twice(raw)
    for carcase, marks in zip(tables_at(raw, "carcase"), _drawer_marks(raw), strict=True):
        yield from _parts_missing(carcase)
        yield from faults_of_drawers(carcase, _settled(carcase, marks), known_of(raw).unit)


def count_rings(raw: Raw) -> int:
    """How many boxes, carcases and drawers the file asks for, as far as its numbers can be read."""
    carcases = tables_at(raw, "carcase")
    columns = [column for _, carcase in carcases for _, column in tables_at(carcase, "column")]
    boxes = sum(number_at(box, "count", GREATEST_COUNT) or 1 for _, box in tables_at(raw, "box"))
    return boxes + len(carcases) + sum(number_at(column, "drawers", GREATEST_DRAWERS) or 0 for column in columns)


# --- the project --------------------------------------------------------------------------------------------


def _nothing_to_make(raw: Raw) -> Iterator[Fault]:
    if not raw.get("box") and not raw.get("carcase"):
        yield Fault(path=(), what="there is nothing to make.", remedy="Add a [[box]] or a [[carcase]].")


def _shown_in_other_unit(raw: Raw) -> Iterator[Fault]:
    project = table_at(raw, "project")
    show, units = project.get("show"), project.get("units")
    if show in list(Grid) and units in list(Unit) and Grid(show).unit is not Unit(units):
        fitting = " or ".join(repr(grid.value) for grid in Grid if grid.unit == units)
        yield Fault(
            path=("project", "show"),
            what=f"{quote(show)} doesn't go with units = {quote(units)}.",
            remedy=f"Write {fitting}, or leave it out.",
        )


def _no_sled_named(raw: Raw) -> Iterator[Fault]:
    sleds, project = table_at(raw, "sled"), table_at(raw, "project")
    if len(sleds) < 2 or not project or "sled" in project:  # noqa: PLR2004 - of one sled there is no doubt
        return
    carcases = tables_at(raw, "carcase")
    drawers = [((*path, "drawer"), carcase["drawer"]) for path, carcase in carcases if table_at(carcase, "drawer")]
    for path, table in [*tables_at(raw, "box"), *carcases, *drawers]:
        if "sled" not in table:
            yield Fault(
                path=(*path, "sled"),
                what=f"is missing: of {len(sleds)} sleds, none is named for everything.",
                remedy="Name one here, or one for everything as sled under [project].",
            )


# --- marks --------------------------------------------------------------------------------------------------


def _marks_too_long(raw: Raw) -> Iterator[Fault]:
    for path, box in tables_at(raw, "box"):
        mark, count = box.get("mark"), number_at(box, "count", GREATEST_COUNT)
        good = isinstance(mark, str) and BOX_MARK.fullmatch(mark)
        if good and count and count > 1 and not BOX_MARK.fullmatch(f"{mark}{count}"):
            yield Fault(
                path=(*path, "mark"),
                what=f"{quote(mark)} is too long to be numbered up to {count}.",
                remedy="With its number, a mark has at most 8 letters and digits.",
            )


def _marks_given_twice(raw: Raw) -> Iterator[Fault]:
    owners: dict[str, Path] = {}
    told: set[Path] = set()
    drawers = [marked for marks in _drawer_marks(raw) for marked in marks]
    for path, mark in [*_box_marks(raw), *_carcase_marks(raw), *drawers]:
        owner = owners.setdefault(mark, path)
        if owner is not path and path not in told:
            told.add(path)
            yield Fault(
                path=path,
                what=f"the mark {quote(mark)} is already taken, by {path_text(owner)}.",
                remedy="Give each its own; marks = [...] names the drawers of a column.",
            )


def _box_marks(raw: Raw) -> Iterator[_Marked]:
    """Marks of boxes; a batch takes its own mark and those of its boxes."""
    for path, box in tables_at(raw, "box"):
        mark, count = box.get("mark"), number_at(box, "count", GREATEST_COUNT) or 1
        place = (*path, "mark")
        if isinstance(mark, str):
            yield place, mark
            if count > 1:
                yield from ((place, f"{mark}{number}") for number in range(1, count + 1))


def _carcase_marks(raw: Raw) -> Iterator[_Marked]:
    for path, carcase in tables_at(raw, "carcase"):
        if isinstance(carcase.get("mark"), str):
            yield (*path, "mark"), carcase["mark"]


def _drawer_marks(raw: Raw) -> list[list[_Marked]]:
    """Marks of the drawers of each carcase: those listed, else the usual ones, with columns counted throughout."""
    carcases = [tables_at(carcase, "column", path) for path, carcase in tables_at(raw, "carcase")]
    only_column = sum(map(len, carcases)) == 1
    number = 0
    marks: list[list[_Marked]] = []
    for columns in carcases:
        marks.append([])
        for path, column in columns:
            number += 1
            marks[-1] += _marks_of_column(path, column, number, only_column=only_column)
    return marks


def _marks_of_column(path: Path, column: Raw, number: int, *, only_column: bool) -> Iterator[_Marked]:
    listed = column.get("marks")
    if isinstance(listed, list):
        yield from (((*path, "marks", place), mark) for place, mark in enumerate(listed) if isinstance(mark, str))
        return
    for tier in range(1, (number_at(column, "drawers", GREATEST_DRAWERS) or 0) + 1):
        yield (*path, "drawers"), drawer_mark(number, tier, only_column=only_column)


def _settled(carcase: Placed, marks: list[_Marked]) -> list[str]:
    """Marks of a carcase's drawers; none while something is wrong with them, so that it isn't told twice."""
    drawers = [number_at(column, "drawers", GREATEST_DRAWERS) or 0 for _, column in tables_at(carcase[1], "column")]
    good = [mark for _, mark in marks if BOX_MARK.fullmatch(mark)]
    return good if all(drawers) and len(set(good)) == sum(drawers) else []


# --- carcases -----------------------------------------------------------------------------------------------


def _parts_missing(carcase: Placed) -> Iterator[Fault]:
    path, table = carcase
    columns = tables_at(table, "column")
    if "partitions" not in table and len(columns) > 1:
        yield Fault(
            path=(*path, "partitions"),
            what=f"is missing: {len(columns)} columns need a partition between them.",
            remedy="Add [carcase.partitions]; it may be empty, for partitions like the carcase.",
        )
    if "rails" not in table and any((number_at(column, "drawers", GREATEST_DRAWERS) or 1) > 1 for _, column in columns):
        yield Fault(
            path=(*path, "rails"),
            what="is missing: drawers above each other need a rail between them.",
            remedy="Add [carcase.rails] with thickness and width.",
        )
