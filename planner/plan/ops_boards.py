"""Boards made ready: planed, cut to size, labelled."""

from __future__ import annotations

from collections.abc import Iterator

from planner.domain.operation import Chapter, Setting
from planner.domain.plan import BoardSize
from planner.domain.words import MaterialKind
from planner.plan import tasks
from planner.plan.bench import Job
from planner.plan.build import Build
from planner.plan.effort import LONG_TO_GUIDE_NM, hands
from planner.plan.tasks import Task


def boards(build: Build) -> Iterator[Job]:
    """The making of every board.

    All solid wood is planed at once, so that each thickness is set once. What is made to measure is ripped and cut to
    length when its opening has been measured.
    """
    for board in build.facts.boards.values():
        if build.facts.project.material(board.material).kind is MaterialKind.SOLID:
            yield _job(tasks.PLANE, board, Chapter.PLANNED, Setting("", (("thickness", board.thickness_nm),)))
        chapter = build.chapter(board.mark)
        waits = (opening(build.fills[board.mark]),) if chapter is Chapter.MEASURED else ()
        yield _job(tasks.RIP, board, chapter, Setting("", (("width", board.width_nm),)), waits)
        yield _job(tasks.CROSSCUT, board, chapter, Setting("", (("length", board.length_nm),)))
        yield _job(tasks.LABEL, board, chapter, Setting())


def opening(mark: str) -> str:
    """What measuring an opening and the first cut for what fills it have in common."""
    return f"opening of {mark}"


def _job(task: Task, board: BoardSize, chapter: Chapter, setting: Setting, touches: tuple[str, ...] = ()) -> Job:
    return Job(
        task=task,
        subject=board.mark,
        box=board.box,
        chapter=chapter,
        setting=setting,
        boards=(board.mark,),
        touches=touches,
        hands=1 if task is tasks.LABEL else hands([board], LONG_TO_GUIDE_NM),
    )
