"""Operations as they are gathered, and the one rule that says what each must wait for.

An operation waits for every operation of an earlier level on the board ends that it touches; what touches a whole board
touches both its ends. Only parts put in one after the other, which is work of one level, name what they wait for. So
operations can't wait for each other in a circle, and none can come too late for its board: both are faults here.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import groupby

from planner.domain.marks import end_mark
from planner.domain.operation import Chapter, Operation, Setting
from planner.domain.words import End
from planner.plan.tasks import LEVEL, Task

NO_SETTING = Setting()
"""Work for which nothing is set."""

_CHAPTERS = tuple(Chapter)


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """An operation before it is known what it waits for.

    Attributes:
        subject: mark of what it is done to; with the task's word, and with ``at``, it makes the operation's mark.
        box: mark of the box, carcase or drawer that the subject belongs to.
        boards: marks of the boards that it cuts, puts together or puts in.
        touches: marks of further board ends that must be ready for it, and of what is no board: a practice joint, an
            opening to be measured.
        at: where a task is done to one subject twice: ``right fence``.
        whole: whether it touches its boards from end to end; else only what ``touches`` names.
        after: marks of operations of its own level that come first.
        cuts: places of the cuts that it makes among all features.
        estimate_s: seconds; None reckons them by the task.
    """

    task: Task
    subject: str
    box: str
    chapter: Chapter = Chapter.PLANNED
    setting: Setting = NO_SETTING
    boards: tuple[str, ...] = ()
    touches: tuple[str, ...] = ()
    at: str = ""
    whole: bool = True
    after: tuple[str, ...] = ()
    cuts: tuple[int, ...] = ()
    count: int = 1
    clamps: int = 0
    hands: int = 1
    estimate_s: int | None = None

    @property
    def mark(self) -> str:
        """Mark of the operation."""
        return f"{self.task.word} {self.subject} {self.at}".rstrip()

    @property
    def rank(self) -> tuple[int, int]:
        """When it is its turn."""
        return _CHAPTERS.index(self.chapter), LEVEL[self.task]


def in_turn(jobs: Iterable[Job]) -> Iterator[Operation]:
    """The operations, each after what it waits for.

    Raises:
        ValueError: two of them have one mark, or one waits for what is not done before (a fault of the planner).
    """
    done: dict[str, Operation] = {}
    latest: dict[str, tuple[str, ...]] = {}
    for _, together in groupby(sorted(jobs, key=lambda job: job.rank), key=lambda job: job.rank):
        touched: dict[str, list[str]] = {}
        for job in together:
            if job.mark in done or not done.keys() >= set(job.after):
                raise ValueError(f"{job.mark}: there twice, or before {job.after}")
            parts = _parts(job)
            before = dict.fromkeys(mark for part in parts for mark in latest.get(part, ()))
            done[job.mark] = _operation(job, _needed([*before, *job.after], done))
            for part in parts:
                touched.setdefault(part, []).append(job.mark)
        latest.update((part, tuple(marks)) for part, marks in touched.items())
    yield from done.values()


def _parts(job: Job) -> tuple[str, ...]:
    """Board ends that a job touches."""
    boards = job.boards if job.whole else ()
    ends = (end_mark(board, end) for board in boards for end in End)
    return tuple(dict.fromkeys((*ends, *job.touches)))


def both_ends(boards: Iterable[str]) -> tuple[str, ...]:
    """The ends of boards, to touch these from end to end."""
    return tuple(end_mark(board, end) for board in boards for end in End)


def _needed(before: Iterable[str], done: Mapping[str, Operation]) -> tuple[str, ...]:
    """What must come before, less what another of these waits for anyway."""
    marks = set(before)
    anyway = {mark for each in marks for mark in done[each].after}
    return tuple(sorted(marks - anyway))


def _operation(job: Job, after: tuple[str, ...]) -> Operation:
    task = job.task
    return Operation(
        mark=job.mark,
        task=task.does,
        machine=task.machine,
        setting=job.setting,
        subject=job.subject,
        after=after,
        chapter=job.chapter,
        box=job.box,
        boards=job.boards,
        cuts=job.cuts,
        count=job.count,
        clamps=job.clamps,
        hands=job.hands,
        estimate_s=task.each_s * job.count if job.estimate_s is None else job.estimate_s,
    )
