"""Change one place of a project: to the tables of its file, there the change, and back through the one reader.

So a change is refused for just the reasons for which a file would be, and all that follows from what is said follows
anew. Places are those of the file that ``write_project`` gives, where what most rings share is said once for all.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from itertools import chain, pairwise
from typing import Any

from planner.domain.project import Project
from planner.domain.said import SaidOtherwise, SaidPlace
from planner.errors import InputError, Problem
from planner.intake.kept_sleds import KeptSleds, none_kept
from planner.intake.marked import DrawerTable, drawer_tables_in, drawers_by_carcase, free_marks, usual_marks_in
from planner.intake.place import Place, path_of, path_text_of, places_in, places_said, value_at, what_may_stand
from planner.intake.project_file import read_tables
from planner.intake.raw import table_at
from planner.intake.refusal import Path, RefusalError, quote
from planner.intake.schema import node_at
from planner.intake.sharing import Table
from planner.intake.typed import read_typed, typed
from planner.intake.write_file import project_tables


@dataclass(frozen=True, slots=True)
class _Before:
    """A table of drawers before any change: their marks, and what these would be if none were said."""

    table: Table
    marks: list[str]
    usual: list[str]


class Draft:
    """A project while it is being changed. Changes follow each other; what is wrong with them is told at the end."""

    def __init__(self, project: Project, kept_sleds: KeptSleds = none_kept) -> None:
        """Begin to change a project.

        Args:
            project: as it is.
            kept_sleds: looks up the store's sleds, for a change that names one of them.

        Raises:
            InputError: no file describes just this project, so it can't be changed in this way.
        """
        self.project = project
        self.tables = project_tables(project)
        self._kept_sleds = kept_sleds
        usual = usual_marks_in(self.tables)
        self._drawers = [
            _Before(each.table(self.tables), each.marks, usual[each.path]) for each in drawer_tables_in(self.tables)
        ]
        self._carcases = [(table, marks) for (_, table), marks in drawers_by_carcase(self.tables)]
        self._said: list[SaidOtherwise] = []
        self._wrong: list[Problem] = []

    # --- by places and texts, as a maker gives them ---

    def change(self, place: str, text: str) -> None:
        """Say something at a place; tables on the way to it that are not there yet are made."""
        with self.refusing(place):
            path = path_of(self.tables, place)
            value = read_typed(text, node_at(path))
            self._must_be_whole(path, value)
            self.put(path, value)

    def leave_out(self, place: str) -> None:
        """Say nothing any more at a place: what is usual counts there, or a part is not made at all."""
        with self.refusing(place):
            path = path_of(self.tables, place)
            if value_at(self.tables, path) is None:
                raise RefusalError("is not said, so it can't be left out.", "What is usual counts there already.")
            self.drop(path)

    @contextmanager
    def refusing(self, where: str) -> Iterator[None]:
        """Keep what is refused in the block, to tell it at the end as a problem of this place."""
        try:
            yield
        except RefusalError as refused:
            name = self.project.name
            self._wrong.append(Problem(where=f"{name}: {where}", what=refused.what, remedy=refused.remedy))

    # --- by paths and values ---

    def put(self, path: Path, value: Any) -> None:  # noqa: ANN401 - any value of a file
        """Put a value at a path."""
        before = value_at(self.tables, path)
        within: Any = self.tables
        for step, below in pairwise(path):
            empty: Any = [] if isinstance(below, int) else {}
            within = within[step] if isinstance(step, int) else within.setdefault(step, empty)
        last = path[-1]
        if isinstance(last, int) and last == len(within):
            within.append(value)
        else:
            within[last] = value
        self._note(path_text_of(self.tables, path), before, value)

    def insert(self, path: Path, value: Any) -> None:  # noqa: ANN401 - any value of a file
        """Put a value into a list; what stands there and after it moves on."""
        value_at(self.tables, path[:-1]).insert(path[-1], value)
        self._note(path_text_of(self.tables, path), None, value)

    def drop(self, path: Path) -> None:
        """Take out what stands at a path."""
        place, before = path_text_of(self.tables, path), value_at(self.tables, path)
        del value_at(self.tables, path[:-1])[path[-1]]
        self._note(place, before, None)

    def _note(self, place: str, before: object, after: object) -> None:
        texts = (None if value is None else typed(value) for value in (before, after))
        self._said.append(SaidOtherwise(place=place, before=next(texts), after=next(texts)))

    def _must_be_whole(self, path: Path, value: object) -> None:
        """A table or a list of tables can't be put right by a word."""
        here, node = value_at(self.tables, path), node_at(path)
        is_table = isinstance(here, dict) or node.get("type") == "object" or "$ref" in node.get("items", {})
        if is_table and not isinstance(value, dict | list):
            raise RefusalError(f"has keys of its own, so {quote(value)} can't stand there.", self._below(path))

    def _below(self, path: Path) -> str:
        return f"Name one of them. {what_may_stand(self.tables, path)}"

    # --- what came of it ---

    @property
    def said(self) -> tuple[SaidOtherwise, ...]:
        """What was said before and after, change by change; without those that changed nothing."""
        return tuple(each for each in self._said if each.before != each.after)

    def finished(self) -> Project:
        """The changed project.

        Raises:
            InputError: everything that is wrong, each problem with its place.
        """
        if self._wrong:
            raise InputError(self._wrong)
        self._keep_marks()
        self._drop_exceptions()
        name = self.project.name
        changed = read_tables(self.tables, name, lambda path: path_text_of(self.tables, path), self._kept_sleds)
        if changed.name != name:
            raise InputError([_other_name(name)])
        return changed

    def _keep_marks(self) -> None:
        """Say the marks of drawers that would be numbered anew only because others came or went.

        A new drawer whose usual mark is such a one takes the next that is free.
        """
        unsaid = [each for each in drawer_tables_in(self.tables) if not self._says_marks(each)]
        for each in unsaid:
            before = self._before(each)
            both = min(len(before.usual), len(each.marks))
            if each.marks[:both] != before.usual[:both]:
                self.put(*each.saying(before.marks[:both] + each.marks[both:]))
        for path in [each.path for each in unsaid]:
            self._rename_doubles(path)

    def _rename_doubles(self, path: Path) -> None:
        """Say other marks for new drawers of a table whose marks others bear."""
        drawers = drawer_tables_in(self.tables)
        borne = Counter(chain.from_iterable(each.marks for each in drawers))
        ours = next(each for each in drawers if each.path == path)
        old = len(self._before(ours).usual)
        doubled = [mark for mark in ours.marks[old:] if borne[mark] > 1]
        free = free_marks(self.tables, ours.outermost, new=len(doubled))
        marks = ours.marks[:old] + [next(free, mark) if mark in doubled else mark for mark in ours.marks[old:]]
        if marks != ours.marks:
            self.put(*ours.saying(marks))

    def _says_marks(self, drawers: DrawerTable) -> bool:
        (*_, key), _ = drawers.saying(drawers.marks)
        return key in drawers.table(self.tables)

    def _before(self, drawers: DrawerTable) -> _Before:
        """What was known of such a table before any change; nothing of a new one."""
        table = drawers.table(self.tables)
        return next((each for each in self._drawers if each.table is table), _Before(table, [], []))

    def _drop_exceptions(self) -> None:
        """Say no more what was different about drawers that are there no more; renamed ones are for the reader."""
        for (path, now), marks in drawers_by_carcase(self.tables):
            before = next((marked for table, marked in self._carcases if table is now), [])
            gone = [mark for mark in before if mark not in marks and mark in table_at(now, "except")]
            for mark in gone if len(marks) < len(before) else ():
                self.drop((*path, "except", mark))


def _other_name(name: str) -> Problem:
    return Problem(
        where=f"{name}: project.name",
        what="can't be changed here, since projects are told apart by it.",
        remedy=f"Write it to a file, change the name there, and read that: planner write {name!r} FILE",
    )


def places(project: Project, within: str | None) -> tuple[SaidPlace, ...]:
    """Where a project can be changed: all that is said in it, or all that may be said in one of its tables.

    Raises:
        InputError: no such place.
    """
    tables = project_tables(project)
    if within is None:
        return tuple(_listed(tables, place) for place in places_said(tables))
    try:
        path = path_of(tables, within)
    except RefusalError as refused:
        where = f"{project.name}: {within}"
        raise InputError([Problem(where=where, what=refused.what, remedy=refused.remedy)]) from refused
    itself = Place(path=path, said=value_at(tables, path), meaning=node_at(path).get("description", ""))
    return tuple(_listed(tables, place) for place in list(places_in(tables, path)) or [itself])


def _listed(tables: Table, place: Place) -> SaidPlace:
    return SaidPlace(
        place=path_text_of(tables, place.path),
        said=None if place.said is None else _short(place.said),
        meaning=place.meaning,
    )


def _short(value: object) -> str:
    """What is said, where a whole table or a list of them would be too long."""
    if isinstance(value, dict):
        return "a table" if value else typed(value)
    if isinstance(value, list) and value and isinstance(value[0], dict):
        return f"{len(value)} tables"
    return typed(value)
