"""What bears which mark in the tables of a project file, and where it is said."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from copy import deepcopy
from dataclasses import dataclass
from itertools import chain
from typing import Any

from planner.domain.marks import drawer_mark
from planner.intake.fit_marks import drawer_marks
from planner.intake.nearest import advice
from planner.intake.place import value_at
from planner.intake.raw import Placed, Raw, number_at, tables_at
from planner.intake.refusal import Path, RefusalError, quote
from planner.intake.values import GREATEST_COUNT, GREATEST_DRAWERS

STANDING = ("box", "carcase")
"""Keys of what has sizes of its own."""


def standing(tables: Raw) -> dict[str, Path]:
    """Paths of all boxes and carcases by mark; a batch goes by its own."""
    return {table["mark"]: path for kind in STANDING for path, table in tables_at(tables, kind)}


def drawers_in(tables: Raw) -> dict[str, Path]:
    """Paths of the carcases of all drawers, by the drawers' marks."""
    return {mark: path for (path, _), marks in drawers_by_carcase(tables) for mark in marks}


@dataclass(frozen=True, slots=True)
class DrawerTable:
    """The table that some drawers stand in, a column that counts them or a tier; and their marks from the top."""

    path: Path
    marks: list[str]

    @property
    def is_tier(self) -> bool:
        """Whether it is one tier of a column, with one drawer."""
        return self.path[-2] == "tier"

    @property
    def outermost(self) -> Path:
        """The column of the carcase that it is or stands in; its drawers are counted through."""
        return self.path[:_OUTERMOST]

    def table(self, tables: Mapping[str, Any]) -> Any:  # noqa: ANN401 - a table that may be changed
        """The table itself."""
        return value_at(tables, self.path)

    def saying(self, marks: list[str]) -> tuple[Path, list[str] | str]:
        """Where the marks are said, and what stands there when they are these."""
        return ((*self.path, "mark"), marks[0]) if self.is_tier else ((*self.path, "marks"), marks)


_OUTERMOST = len(("carcase", 0, "column", 0))


def drawer_tables_in(tables: Raw) -> list[DrawerTable]:
    """All of them; the marks that the reader finds lead to the tables that say or count them."""
    found: dict[Path, list[str]] = {}
    for path, mark in chain.from_iterable(drawer_marks(tables)):
        if mark is not None:
            found.setdefault(_said_in(path), []).append(mark)
    return [DrawerTable(path, marks) for path, marks in found.items()]


def _said_in(path: Path) -> Path:
    """The table in which a mark is said, or is left to be the usual one."""
    if path[-2] == "tier":
        return path
    return path[:-2] if isinstance(path[-1], int) else path[:-1]


def usual_marks_in(tables: Raw) -> dict[Path, list[str]]:
    """What the drawers of each of these tables would be marked if none said a mark."""
    unmarked = deepcopy(dict(tables))
    for each in drawer_tables_in(unmarked):
        path, _ = each.saying(each.marks)
        each.table(unmarked).pop(path[-1], None)
    return {each.path: each.marks for each in drawer_tables_in(unmarked)}


def free_marks(tables: Raw, outermost: Path, new: int = 0) -> Iterator[str]:
    """Usual marks that another drawer of this column could have, from the one after those it has.

    Args:
        tables: of a project file.
        outermost: the column of a carcase.
        new: so many of its drawers have just come and aren't counted.
    """
    columns = [path for path, _ in _columns(tables)]
    ours = [each for each in drawer_tables_in(tables) if each.outermost == outermost]
    taken = set(chain.from_iterable(each.marks for each in drawer_tables_in(tables)))
    number, drawers = columns.index(outermost) + 1, sum(len(each.marks) for each in ours) - new
    usual = (
        drawer_mark(number, drawer, only_column=len(columns) == 1)
        for drawer in range(drawers + 1, GREATEST_DRAWERS + 1)
    )
    return (mark for mark in usual if mark not in taken)


def _columns(tables: Raw) -> list[Placed]:
    """The columns of all carcases, those within others left out."""
    return [column for path, carcase in tables_at(tables, "carcase") for column in tables_at(carcase, "column", path)]


def drawers_by_carcase(tables: Raw) -> list[tuple[Placed, list[str]]]:
    """Each carcase with the marks of its drawers."""
    marked = zip(tables_at(tables, "carcase"), drawer_marks(tables), strict=True)
    return [(carcase, [mark for _, mark in marks if mark is not None]) for carcase, marks in marked]


def no_such_mark(tables: Raw, mark: str, *, drawers: bool) -> RefusalError:
    """Refusal of a mark that no box or carcase bears, nor any drawer if those will do."""
    for _, box in tables_at(tables, "box"):
        batch, count = box["mark"], number_at(box, "count", GREATEST_COUNT) or 1
        if count > 1 and mark in (f"{batch}{number}" for number in range(1, count + 1)):
            return RefusalError(f"is one of the batch {batch}, whose boxes are all alike.", f"Name them all: {batch}.")
    known = chain(standing(tables), drawers_in(tables) if drawers else ())
    bearers = "box, carcase or drawer" if drawers else "box or carcase"
    return RefusalError(f"no {bearers} is marked {quote(mark)}.", advice(mark, known))
