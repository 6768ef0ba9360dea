"""What doesn't fit together in the columns and tiers of a carcase, and how much a file asks for.

Looks at the raw file, as ``fit`` does.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import count
from typing import TypeAlias

from planner.domain.marks import BOX_MARK, drawer_mark
from planner.intake.raw import Placed, Raw, number_at, table_at, tables_at
from planner.intake.refusal import Fault, Path, path_text
from planner.intake.usual import usual_divider
from planner.intake.values import GREATEST_DRAWERS

MaybeMarked: TypeAlias = tuple[Path, str | None]
"""Place of a drawer's mark, and the mark; None where it can't be read."""


def deepest(raw: Raw) -> int:
    """How many columns stand in each other where most do, found without recursion: a file may nest without end."""
    found, left = (
        0,
        [(1, column) for carcase in tables_at(raw, "carcase") for column in tables_at(carcase[1], "column")],
    )
    while left:
        depth, (path, column) = left.pop()
        found = max(found, depth)
        left += [(depth + 1, each) for tier in tables_at(column, "tier", path) for each in tables_at(tier[1], "column")]
    return found


def spaces_in(column: Raw) -> int:
    """How many undivided spaces a column has, as far as its numbers can be read."""
    tiers = [tier for _, tier in tables_at(column, "tier")]
    within = sum(sum(spaces_in(each) for _, each in tables_at(tier, "column")) or 1 for tier in tiers)
    return within + (number_at(column, "drawers", GREATEST_DRAWERS) or 0)


def marks_in(column: Placed, number: int, *, only_column: bool) -> Iterator[MaybeMarked]:
    """The drawers of a column, in the order in which they are met, those of the columns in it included."""
    usual = (drawer_mark(number, tier, only_column=only_column) for tier in count(1))
    yield from _marks(column, usual)


def _marks(column: Placed, usual: Iterator[str]) -> Iterator[MaybeMarked]:
    path, table = column
    if "tier" in table:
        for tier in tables_at(table, "tier", path):
            yield from _marks_in_tier(tier, usual)
        return
    listed, drawers = table.get("marks"), number_at(table, "drawers", GREATEST_DRAWERS)
    if isinstance(listed, list):
        marks = [mark if isinstance(mark, str) else None for mark in listed]
        yield from (((*path, "marks", place), mark) for place, mark in enumerate(marks))
        for _ in range(drawers or 0):
            next(usual)
    else:
        yield from (((*path, "drawers"), next(usual)) for _ in range(drawers or 0))
    if drawers is None or (isinstance(listed, list) and len(listed) != drawers):
        yield (*path, "drawers"), None


def _marks_in_tier(tier: Placed, usual: Iterator[str]) -> Iterator[MaybeMarked]:
    path, table = tier
    if "column" in table:
        for column in tables_at(table, "column", path):
            yield from _marks(column, usual)
    elif table.get("holds", "drawer") == "drawer":
        mark, said = next(usual), table.get("mark")
        if said is None:
            yield path, mark
        else:
            yield (*path, "mark"), said if isinstance(said, str) else None


def settled(marks: list[MaybeMarked]) -> list[str] | None:
    """Marks of a carcase's drawers; None while something is wrong with them, so that it isn't told twice."""
    good = [mark for _, mark in marks if mark is not None and BOX_MARK.fullmatch(mark)]
    return good if len(set(good)) == len(marks) else None


# --- what divides -------------------------------------------------------------------------------------------


def parts_missing(carcase: Placed, drawers: int) -> Iterator[Fault]:
    """Dividers and drawers of which the carcase doesn't say what they are made of."""
    path, table = carcase
    yield from _no_partitions(carcase)
    told: set[str] = set()
    for place, column in _all_columns(carcase):
        kind = column.get("divided_by", _usual_divider(table))
        part = _PARTS.get(kind) if isinstance(kind, str) else None
        if part is None or part in told or part in table or _tiers(column) < 2:  # noqa: PLR2004 - of one there is none
            continue
        told.add(part)
        what = f"{path_text(place)} is divided by {part}." if "divided_by" in column else _ABOVE_EACH_OTHER
        yield Fault(path=(*path, part), what=f"is missing: {what}", remedy=_REMEDIES[part])
    if drawers and "drawer" not in table:
        yield Fault(
            path=(*path, "drawer"),
            what=f"is missing: there {'is a drawer' if drawers == 1 else f'are {drawers} drawers'} to make.",
            remedy='Add [carcase.drawer], which says how; or write holds = "shelves" or "nothing" for what has none.',
        )


_PARTS = {"rail": "rails", "frame": "frames", "shelf": "shelves"}
_ABOVE_EACH_OTHER = "drawers or other tiers above each other need a rail between them."
_REMEDIES = {
    "rails": "Add [carcase.rails] with thickness and width; or say otherwise what lies between: [carcase.shelves], "
    '[carcase.frames], or divided_by = "nothing".',
    "frames": "Add [carcase.frames]; it may be empty, for frames as is usual.",
    "shelves": "Add [carcase.shelves]; it may be empty, for shelves like the carcase.",
}


def _usual_divider(carcase: Raw) -> str:
    return usual_divider(carcase.get("rails"), carcase.get("frames"), carcase.get("shelves"))


def _tiers(column: Raw) -> int:
    return max(len(tables_at(column, "tier")), number_at(column, "drawers", GREATEST_DRAWERS) or 0)


def _all_columns(within: Placed) -> Iterator[Placed]:
    """All columns, outer before inner."""
    path, table = within
    for place, column in tables_at(table, "column", path):
        yield place, column
        for tier in tables_at(column, "tier", place):
            yield from _all_columns(tier)


def _no_partitions(carcase: Placed) -> Iterator[Fault]:
    path, table = carcase
    divided = [carcase, *(tier for place, column in _all_columns(carcase) for tier in tables_at(column, "tier", place))]
    columns = next((len(found) for _, each in divided if len(found := tables_at(each, "column")) > 1), 0)
    if columns and "partitions" not in table:
        yield Fault(
            path=(*path, "partitions"),
            what=f"is missing: {columns} columns need a partition between them.",
            remedy="Add [carcase.partitions]; it may be empty, for partitions like the carcase.",
        )


def base_has_ring(carcase: Raw) -> bool:
    """Whether a carcase stands on a dovetailed plinth."""
    return table_at(carcase, "base").get("kind") in ("plinth", "bracket feet")
