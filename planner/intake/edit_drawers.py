"""Add a drawer to a column or take one out; all other drawers keep their marks."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import chain

from planner.intake.edit import Draft
from planner.intake.marked import DrawerTable, drawer_tables_in, free_marks, usual_marks_in
from planner.intake.nearest import advice
from planner.intake.place import path_text_of, value_at
from planner.intake.refusal import Path, RefusalError, quote
from planner.intake.sharing import Table
from planner.lengths import Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class NewDrawer:
    """A drawer to be added.

    Attributes:
        beside: mark of the drawer it goes next to.
        above: whether it goes above that one, not below.
        mark: its own; None takes the next usual one that is free.
        height: of its opening, in a column whose heights are said one by one; None takes that of the drawer beside it.
    """

    beside: str
    above: bool = False
    mark: str | None = None
    height: str | None = None


def add_drawer(draft: Draft, new: NewDrawer) -> None:
    """Add a drawer, made as most drawers of its carcase are: to a column that counts them, or as another tier."""
    with draft.refusing(new.beside):
        beside = _drawers_with(draft.tables, new.beside)
        mark = new.mark or _next_mark(draft.tables, beside)
        if beside.is_tier:
            _add_tier(draft, beside, new, mark)
            return
        at = beside.marks.index(new.beside) + (not new.above)
        heights = _heights_with(draft, beside, new, at)
        _recount(draft, beside, [*beside.marks[:at], mark, *beside.marks[at:]], heights)


def remove_drawer(draft: Draft, mark: str) -> None:
    """Take a drawer out of its column, with its tier if it has one; what was different about it goes with it."""
    with draft.refusing(mark):
        drawers = _drawers_with(draft.tables, mark)
        if drawers.is_tier and len(value_at(draft.tables, drawers.path[:-1])) > 1:
            draft.drop(drawers.path)
            return
        if len(drawers.marks) == 1:
            raise _only_one(draft.tables, drawers)
        at = drawers.marks.index(mark)
        heights = drawers.table(draft.tables).get("heights")
        if isinstance(heights, list):
            heights = heights[:at] + heights[at + 1 :]
        _recount(draft, drawers, drawers.marks[:at] + drawers.marks[at + 1 :], heights)


def _drawers_with(tables: Table, drawer: str) -> DrawerTable:
    found = drawer_tables_in(tables)
    for drawers in found:
        if drawer in drawers.marks:
            return drawers
    known = list(chain.from_iterable(drawers.marks for drawers in found))
    raise RefusalError(f"no drawer is marked {quote(drawer)}.", advice(drawer, known))


def _next_mark(tables: Table, beside: DrawerTable) -> str:
    mark = next(free_marks(tables, beside.outermost), None)
    if mark is None:
        raise RefusalError("no usual mark is left for another drawer.", "Give it one: --mark")
    return mark


def _only_one(tables: Table, drawers: DrawerTable) -> RefusalError:
    """Refusal to take out the only drawer of a column: what could be said instead."""
    column = drawers.path[:-2] if drawers.is_tier else drawers.path
    ways = []
    if whole := _one_of_several(tables, column):
        ways.append(f"leave out the whole {whole[-2]}: --leave-out {path_text_of(tables, whole)}")
    text = path_text_of(tables, drawers.path)
    if drawers.is_tier:
        unmarked = f" --leave-out {text}.mark" if "mark" in drawers.table(tables) else ""
        ways.append(f"leave its space empty: planner change PROJECT {text}.holds nothing{unmarked}")
    elif not ways:
        ways.append(f"leave its space empty: planner change PROJECT {text} '{_EMPTY}'")
    remedy = "; or ".join(ways)
    return RefusalError(f"is the only drawer of {path_text_of(tables, column)}.", f"{remedy[0].upper()}{remedy[1:]}")


_EMPTY = '{ tier = [{ holds = "nothing" }] }'


def _one_of_several(tables: Table, path: Path) -> Path | None:
    """The innermost column or tier, from this one outwards, that has others beside it."""
    around = (path[:length] for length in range(len(path), len(("carcase", 0)), -2))
    return next((each for each in around if len(value_at(tables, each[:-1])) > 1), None)


# --- columns that count their drawers -----------------------------------------------------------------------


def _heights_with(draft: Draft, column: DrawerTable, new: NewDrawer, at: int) -> object:
    """What the column says of its heights once the drawer is there."""
    heights = column.table(draft.tables).get("heights", "equal")
    if isinstance(heights, list):
        beside = heights[column.marks.index(new.beside)]
        return [*heights[:at], beside if new.height is None else new.height, *heights[at:]]
    if new.height is not None:
        place = path_text_of(draft.tables, (*column.path, "heights"))
        some = "4, 5, rest" if draft.project.unit is Unit.INCH else "100, 120, rest"
        raise RefusalError(
            f"a height is given, but those of its column are {heights}.",
            f'Leave it out, or list all heights first: planner change PROJECT {place} "{some}"',
        )
    return heights


def _recount(draft: Draft, column: DrawerTable, marks: list[str], heights: object) -> None:
    """Say of a column how many drawers it has now, and what goes with that."""
    table = column.table(draft.tables)
    draft.put((*column.path, "drawers"), len(marks))
    if "heights" in table:
        draft.put((*column.path, "heights"), heights)
    if marks != usual_marks_in(draft.tables).get(column.path):
        draft.put((*column.path, "marks"), marks)
    elif "marks" in table:
        draft.drop((*column.path, "marks"))


# --- columns of tiers ---------------------------------------------------------------------------------------


def _add_tier(draft: Draft, beside: DrawerTable, new: NewDrawer, mark: str) -> None:
    """Put another tier beside the one that holds a drawer, as high as that or as is said."""
    *within, number = beside.path
    path = (*within, int(number) + (not new.above))
    tier = _sized(draft, beside, new)
    draft.insert(path, tier)
    if usual_marks_in(draft.tables).get(path) != [mark]:
        draft.put((*path, "mark"), mark)


def _sized(draft: Draft, beside: DrawerTable, new: NewDrawer) -> Table:
    if new.height is None:
        table = beside.table(draft.tables)
        return {key: table[key] for key in ("height", "share") if key in table}
    column = beside.path[:-2]
    table = value_at(draft.tables, column)
    if table.get("heights") == "graduated":
        keys = [key for key in ("heights", "step", "ratio") if key in table]
        left_out = " ".join(f"--leave-out {path_text_of(draft.tables, (*column, key))}" for key in keys)
        raise RefusalError(
            "a height is given, but those of its column are graduated.",
            f"Leave it out, or let each tier say its own: planner change PROJECT {left_out}",
        )
    return {"height": new.height}
