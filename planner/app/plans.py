"""Plans, and what is made of them: the workbook, and everything at once into a folder."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from planner import pipeline
from planner.app.file_names import safe_stem
from planner.app.outputs import made_folder, placed
from planner.app.projects import Kept, keep, plan_of_file, read_from, stored
from planner.app.store_place import StorePlace
from planner.domain.plan import Plan, SledBatch
from planner.domain.project import Project
from planner.errors import InputError, PlanError, Problem
from planner.plan.sled import sled_plan

WORKBOOK, PLAN_FILE = ".xlsx", ".json"


@dataclass(frozen=True, slots=True, kw_only=True)
class Prepared:
    """What came of a project file: kept in the store, with its workbook and its plan as JSON in a folder."""

    kept: Kept
    workbook: Path
    plan_file: Path


def plan_of(name: str | None, store: StorePlace) -> Plan:
    """Plan of a stored project; without a name, of the only one there is.

    Raises:
        InputError: no such project.
        PlanError: no plan can be built from it.
    """
    return pipeline.plan(stored(name, store))


def sled_batch(names: Sequence[str], store: StorePlace) -> SledBatch:
    """Sled cuts of stored projects, made together; without names, of the only one there is.

    Raises:
        InputError: no such project, or one named twice.
        PlanError: no plan can be built from one of them.
    """
    projects = _all_stored(names, store) if names else [stored(None, store)]
    plans = _all_planned(projects)
    return SledBatch(plans=plans, sled=sled_plan([(plan.project, plan.joints) for plan in plans]))


def _all_stored(names: Sequence[str], store: StorePlace) -> list[Project]:
    """The projects of these names; all that is wrong with the names is told at once."""
    found: list[Project] = []
    wrong = [
        Problem(where=f"project {name!r}", what=f"is named {times} times.", remedy="Name each project once.")
        for name, times in Counter(names).items()
        if times > 1
    ]
    for name in dict.fromkeys(names):
        try:
            found.append(stored(name, store))
        except InputError as error:
            wrong += error.problems
    if wrong:
        raise InputError(wrong)
    return found


def _all_planned(projects: Sequence[Project]) -> tuple[Plan, ...]:
    """A plan of each; what can't be planned is told with its project, since marks alone don't say which it is."""
    plans: list[Plan] = []
    wrong: list[Problem] = []
    for project in projects:
        try:
            plans.append(pipeline.plan(project))
        except PlanError as error:
            wrong += [replace(each, where=f"{project.name}, {each.where}") for each in error.problems]
    if wrong:
        raise PlanError(wrong)
    return tuple(plans)


def write_workbook(path: Path, name: str, store: StorePlace, *, force: bool) -> Plan:
    """Write the workbook of a stored project; returns the plan that is in it.

    Raises:
        InputError: no such project, or the place is taken or is no place for a workbook.
        PlanError: no plan can be built from it.
    """
    must_be_workbook(path)
    from planner.present.workbook import workbook

    made = plan_of(name, store)
    with placed({path: workbook(made)}, force=force):
        return made


def must_be_workbook(path: Path) -> None:
    """Refuse a name that is none for a workbook.

    Raises:
        InputError: it ends otherwise.
    """
    if path.suffix.lower() != WORKBOOK:
        remedy = f"The name of a workbook ends in {WORKBOOK}."
        raise InputError([Problem(where=str(path), what="is no name for a workbook.", remedy=remedy)])


def prepare(path: str, folder: Path, store: StorePlace, *, force: bool) -> Prepared:
    """All at once: read a project file into the store, write its workbook and its plan into a folder.

    Either the project is stored and both files are written, or nothing is.

    Raises:
        InputError: the file can't be taken, or a place is taken.
        PlanError: no plan can be built from it.
        StoreError: the store can't be written.
    """
    from planner.present.json_out import plan_json
    from planner.present.workbook import workbook

    made = plan_of_file(path, store)
    book, plan_file = (folder / f"{safe_stem(made.project.name)}{ending}" for ending in (WORKBOOK, PLAN_FILE))
    files = {book: workbook(made), plan_file: _json_file(plan_json(made))}
    with made_folder(folder), placed(files, force=force):
        change = keep(made.project, store, why=read_from(path))
    return Prepared(kept=Kept(plan=made, change=change), workbook=book, plan_file=plan_file)


def _json_file(data: object) -> bytes:
    import json

    return (json.dumps(data, indent=2, ensure_ascii=False) + "\n").encode()
