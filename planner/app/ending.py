"""The end of an interview: where to put what came of it, and putting it there, all or nothing."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, replace
from pathlib import Path

from planner.app.file_names import safe_stem
from planner.app.outputs import placed
from planner.app.plans import WORKBOOK, must_be_workbook
from planner.app.projects import Change, keep
from planner.app.store_place import StorePlace
from planner.domain.plan import Plan
from planner.errors import InputError, Problem
from planner.intake.interview.asking import Asking
from planner.intake.interview.beginning import Shop
from planner.intake.interview.piece import Piece
from planner.intake.interview.question import Script

SECTION = "To finish"
NO = "no"
PROJECT_FILE = ".toml"
_LONGEST = 200


@dataclass(frozen=True, slots=True, kw_only=True)
class Ending:
    """Where to put it.

    Attributes:
        keep: whether to store it.
        file: where to write a project file, if anywhere.
        workbook: where to write a workbook, if anywhere.
    """

    keep: bool
    file: Path | None
    workbook: Path | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Finished:
    """What was done.

    Attributes:
        change: in the store; None when it was not stored.
    """

    plan: Plan
    change: Change | None
    file: Path | None
    workbook: Path | None


def ending(piece: Piece, shop: Shop, *, can_keep: bool) -> Script[Ending]:
    """Ask where to put it; what is there already is not offered to be replaced as usual."""
    asking = Asking(unit=piece.unit, start={}, section=SECTION, heard={})
    key = "replace" if piece.name in shop.projects else "keep"
    kept = can_keep and (yield from asking.yes(key, usual=key == "keep"))
    stem = safe_stem(piece.name)
    file = yield from asking.text("file", NO if kept else f"{stem}{PROJECT_FILE}", _LONGEST)
    workbook = yield from asking.text("workbook", f"{stem}{WORKBOOK}", _LONGEST)
    return Ending(keep=kept, file=_path(file), workbook=_path(workbook))


def _path(said: str) -> Path | None:
    return None if said.casefold() in {NO, "n", "none"} else Path(said)


@contextmanager
def _nowhere_else() -> Iterator[None]:
    """What is there already is never overwritten here, so that way out is not offered."""
    try:
        yield
    except InputError as error:
        remedy = "Give another name."
        raise InputError(
            replace(each, remedy=remedy) if each.remedy.startswith(remedy[:-1]) else each for each in error.problems
        ) from error


def finish(plan: Plan, wanted: Ending, store: StorePlace) -> Finished:
    """Store the project and write the files that are wanted: all of it, or nothing.

    Raises:
        InputError: a place is taken or is no place for such a file; where it says so is the file.
        StoreError: the store can't be written.
    """
    from planner.intake.write_file import write_project
    from planner.present.workbook import workbook

    files: dict[Path, bytes] = {}
    if wanted.file is not None:
        files[wanted.file] = write_project(plan.project).encode()
    if wanted.workbook is not None:
        must_be_workbook(wanted.workbook)
        if wanted.workbook == wanted.file:
            what, remedy = "is to be the project file, too.", "Give them different names."
            raise InputError([Problem(where=str(wanted.workbook), what=what, remedy=remedy)])
        files[wanted.workbook] = workbook(plan)
    with _nowhere_else(), placed(files, force=False):
        change = keep(plan.project, store, why="answers to questions") if wanted.keep else None
    return Finished(plan=plan, change=change, file=wanted.file, workbook=wanted.workbook)
