"""Boards made ready: glued up from staves where the maker wants that, planed, cut to size, labelled."""

from __future__ import annotations

from collections.abc import Iterator

from planner.domain.operation import Chapter, Setting
from planner.domain.plan import BoardSize
from planner.domain.words import MaterialKind
from planner.plan import tasks
from planner.plan.bench import Job
from planner.plan.build import Build
from planner.plan.effort import LONG_TO_CLOSE_NM, LONG_TO_GUIDE_NM, clamps_along, hands
from planner.plan.staves import staves_said
from planner.plan.tasks import Task


def boards(build: Build) -> Iterator[Job]:
    """The making of every board.

    All solid wood is planed at once, so that each thickness is set once. What is made to measure is ripped and cut to
    length when its opening has been measured.
    """
    for board in build.facts.boards.values():
        staves = len(staves_said(build.facts.project, board))
        if staves:
            yield _glue_up(board, staves)
        if build.facts.project.material(board.material).kind is MaterialKind.SOLID:
            yield _job(tasks.PLANE, board, Chapter.PLANNED, Setting("", (("thickness", board.thickness_nm),)))
        chapter = build.chapter(board.mark)
        waits = (opening(build.fills[board.mark]),) if chapter is Chapter.MEASURED else ()
        yield _job(tasks.RIP, board, chapter, Setting("", (("width", board.width_nm),)), waits)
        yield _job(tasks.CROSSCUT, board, chapter, Setting("", (("length", board.length_nm),)))
        yield _job(tasks.LABEL, board, chapter, Setting())


def _glue_up(board: BoardSize, staves: int) -> Job:
    """The glue-up of a panel, with clamps across it all along; each further joint takes its time."""
    return Job(
        task=tasks.GLUE_PANEL,
        subject=board.mark,
        box=board.box,
        boards=(board.mark,),
        count=staves - 1,
        clamps=clamps_along(board),
        hands=hands([board], LONG_TO_CLOSE_NM),
    )


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
