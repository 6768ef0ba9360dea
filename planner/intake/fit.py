"""What doesn't fit together across the tables of a project file.

Looks at the raw file, so that these faults are reported in one go with those of form; what has the wrong form is
passed over here.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, TypeAlias

from planner.domain.marks import BOX_MARK, drawer_mark
from planner.intake.nearest import advice
from planner.intake.refusal import Fault, Path, path_text, quote
from planner.intake.values import GREATEST_COUNT, GREATEST_DRAWERS
from planner.lengths import Grid, Unit

Raw: TypeAlias = Mapping[str, Any]
_Placed: TypeAlias = tuple[Path, Raw]
_Marked: TypeAlias = tuple[Path, str]


def faults_of_fit(raw: Raw) -> Iterator[Fault]:
    """Everything that is wrong between tables, in no particular order."""
    yield from _nothing_to_make(raw)
    yield from _shown_in_other_unit(raw)
    yield from _no_sled_named(raw)
    yield from _marks_too_long(raw)
    yield from _marks_given_twice(raw)
    for carcase, marks in zip(_tables(raw, "carcase"), _drawer_marks(raw), strict=True):
        yield from _parts_missing(carcase)
        yield from _exceptions(carcase, [mark for _, mark in marks])


def count_rings(raw: Raw) -> int:
    """How many boxes, carcases and drawers the file asks for, as far as its numbers can be read."""
    carcases = _tables(raw, "carcase")
    columns = [column for _, carcase in carcases for _, column in _tables(carcase, "column")]
    boxes = sum(_number(box, "count", GREATEST_COUNT) or 1 for _, box in _tables(raw, "box"))
    return boxes + len(carcases) + sum(_number(column, "drawers", GREATEST_DRAWERS) or 0 for column in columns)


def _tables(table: Raw, key: str, at: Path = ()) -> list[_Placed]:
    listed = table.get(key)
    if not isinstance(listed, list):
        return []
    return [((*at, key, place), each) for place, each in enumerate(listed) if isinstance(each, dict)]


def _table(table: Raw, key: str) -> Raw:
    found = table.get(key)
    return found if isinstance(found, dict) else {}


def _number(table: Raw, key: str, greatest: int) -> int | None:
    said = table.get(key)
    return said if isinstance(said, int) and not isinstance(said, bool) and 1 <= said <= greatest else None


# --- the project --------------------------------------------------------------------------------------------


def _nothing_to_make(raw: Raw) -> Iterator[Fault]:
    if not raw.get("box") and not raw.get("carcase"):
        yield Fault(path=(), what="there is nothing to make.", remedy="Add a [[box]] or a [[carcase]].")


def _shown_in_other_unit(raw: Raw) -> Iterator[Fault]:
    project = _table(raw, "project")
    show, units = project.get("show"), project.get("units")
    if show in list(Grid) and units in list(Unit) and Grid(show).unit is not Unit(units):
        fitting = " or ".join(repr(grid.value) for grid in Grid if grid.unit == units)
        yield Fault(
            path=("project", "show"),
            what=f"{quote(show)} doesn't go with units = {quote(units)}.",
            remedy=f"Write {fitting}, or leave it out.",
        )


def _no_sled_named(raw: Raw) -> Iterator[Fault]:
    sleds, project = _table(raw, "sled"), _table(raw, "project")
    if len(sleds) < 2 or not project or "sled" in project:  # noqa: PLR2004 - of one sled there is no doubt
        return
    carcases = _tables(raw, "carcase")
    drawers = [((*path, "drawer"), carcase["drawer"]) for path, carcase in carcases if _table(carcase, "drawer")]
    for path, table in [*_tables(raw, "box"), *carcases, *drawers]:
        if "sled" not in table:
            yield Fault(
                path=(*path, "sled"),
                what=f"is missing: of {len(sleds)} sleds, none is named for everything.",
                remedy="Name one here, or one for everything as sled under [project].",
            )


# --- marks --------------------------------------------------------------------------------------------------


def _marks_too_long(raw: Raw) -> Iterator[Fault]:
    for path, box in _tables(raw, "box"):
        mark, count = box.get("mark"), _number(box, "count", GREATEST_COUNT)
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
    for path, box in _tables(raw, "box"):
        mark, count = box.get("mark"), _number(box, "count", GREATEST_COUNT) or 1
        place = (*path, "mark")
        if isinstance(mark, str):
            yield place, mark
            if count > 1:
                yield from ((place, f"{mark}{number}") for number in range(1, count + 1))


def _carcase_marks(raw: Raw) -> Iterator[_Marked]:
    for path, carcase in _tables(raw, "carcase"):
        if isinstance(carcase.get("mark"), str):
            yield (*path, "mark"), carcase["mark"]


def _drawer_marks(raw: Raw) -> list[list[_Marked]]:
    """Marks of the drawers of each carcase: those listed, else the usual ones, with columns counted throughout."""
    carcases = [_tables(carcase, "column", path) for path, carcase in _tables(raw, "carcase")]
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
    for tier in range(1, (_number(column, "drawers", GREATEST_DRAWERS) or 0) + 1):
        yield (*path, "drawers"), drawer_mark(number, tier, only_column=only_column)


# --- carcases -----------------------------------------------------------------------------------------------


def _parts_missing(carcase: _Placed) -> Iterator[Fault]:
    path, table = carcase
    columns = _tables(table, "column")
    if "partitions" not in table and len(columns) > 1:
        yield Fault(
            path=(*path, "partitions"),
            what=f"is missing: {len(columns)} columns need a partition between them.",
            remedy="Add [carcase.partitions]; it may be empty, for partitions like the carcase.",
        )
    if "rails" not in table and any((_number(column, "drawers", GREATEST_DRAWERS) or 1) > 1 for _, column in columns):
        yield Fault(
            path=(*path, "rails"),
            what="is missing: drawers above each other need a rail between them.",
            remedy="Add [carcase.rails] with thickness and width.",
        )


def _exceptions(carcase: _Placed, marks: list[str]) -> Iterator[Fault]:
    path, table = carcase
    shared_bottom = "bottom" in _table(table, "drawer")
    for mark, changes in _table(table, "except").items():
        place = (*path, "except", mark)
        if marks and mark not in marks:
            yield Fault(
                path=place, what=f"no drawer of this carcase is marked {quote(mark)}.", remedy=advice(mark, marks)
            )
        bottom = changes.get("bottom") if isinstance(changes, dict) else None
        if isinstance(bottom, dict) and not shared_bottom:
            for key in sorted({"material", "thickness"} - bottom.keys()):
                yield Fault(
                    path=(*place, "bottom", key),
                    what="is missing: the other drawers have no bottom to take it from.",
                    remedy="Give the material and the thickness of this bottom.",
                )
