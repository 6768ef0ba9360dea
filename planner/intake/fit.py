"""What doesn't fit together across the tables of a project file.

Looks at the raw file, so that these faults are reported in one go with those of form; what has the wrong form is
passed over here.
"""

from __future__ import annotations

from collections.abc import Iterator

from planner.intake.fit_drawers import faults_of_drawers
from planner.intake.fit_marks import boxes_in, drawer_marks, faults_of_marks
from planner.intake.fit_spaces import base_has_ring, parts_missing, settled, spaces_in
from planner.intake.known import known_of
from planner.intake.raw import Placed, Raw, table_at, tables_at
from planner.intake.refusal import Fault, quote
from planner.lengths import Grid, Unit


def faults_of_fit(raw: Raw) -> Iterator[Fault]:
    """Everything that is wrong between tables, in no particular order."""
    yield from _nothing_to_make(raw)
    yield from _shown_in_other_unit(raw)
    yield from _no_sled_named(raw)
    yield from faults_of_marks(raw)
    for carcase, marks in zip(tables_at(raw, "carcase"), drawer_marks(raw), strict=True):
        yield from parts_missing(carcase, sum(mark is not None for _, mark in marks))
        yield from faults_of_drawers(carcase, settled(marks), known_of(raw).unit)


def count_rings(raw: Raw) -> int:
    """How many boxes, carcases, plinths and drawers the file asks for, as far as its numbers can be read."""
    carcases = [carcase for _, carcase in tables_at(raw, "carcase")]
    boxes = sum(boxes_in(box) for _, box in tables_at(raw, "box"))
    drawers = sum(map(len, drawer_marks(raw)))
    return boxes + len(carcases) + sum(map(base_has_ring, carcases)) + drawers


def count_spaces(raw: Raw) -> int:
    """How many undivided spaces its carcases have, likewise."""
    carcases = [carcase for _, carcase in tables_at(raw, "carcase")]
    return sum(spaces_in(column) for carcase in carcases for _, column in tables_at(carcase, "column"))


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
    for path, table in _dovetailed(raw):
        if "sled" not in table:
            yield Fault(
                path=(*path, "sled"),
                what=f"is missing: of {len(sleds)} sleds, none is named for everything.",
                remedy="Name one here, or one for everything as sled under [project].",
            )


def _dovetailed(raw: Raw) -> Iterator[Placed]:
    """The tables of all that is cut at a sled."""
    yield from tables_at(raw, "box")
    for path, carcase in tables_at(raw, "carcase"):
        if carcase.get("corners") != "rabbet":
            yield path, carcase
        if base_has_ring(carcase):
            yield (*path, "base"), carcase["base"]
        if table_at(carcase, "drawer"):
            yield (*path, "drawer"), carcase["drawer"]
