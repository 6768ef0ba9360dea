"""Putting together: frames and rings tried dry, sanded, glued and planed flush; then what is put in later."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from planner.domain.operation import Setting
from planner.domain.plan import BoardSize
from planner.domain.ring import Ring
from planner.domain.solid import Direction
from planner.domain.words import FeatureKind, Role
from planner.plan import tasks
from planner.plan.bench import Job, both_ends
from planner.plan.build import BACKS, Build
from planner.plan.cut_settings import cut_setting
from planner.plan.effort import LONG_TO_CLOSE_NM, clamps, clamps_along, hands
from planner.plan.made_up import Part
from planner.plan.put_in import PutIn
from planner.plan.tasks import Task
from planner.plan.ways_in import WAYS


def assembly(build: Build) -> Iterator[Job]:
    """All glue-ups, and all that is put in when they stand, but for what closes a carcase at the very end."""
    rings = {ring.mark: ring for ring in build.facts.project.rings()}
    for part in build.parts.values():
        if part.mark in rings:
            yield from _GlueUp(build, part).ring(rings[part.mark])
        elif part.glued_up:
            yield from _GlueUp(build, part).frame()
    for part in build.parts.values():
        if part.glued_up:
            yield from _put_in(build, part)


# --- glue-ups ----------------------------------------------------------------------------------------------


class _GlueUp:
    """The glue-up of one ring or frame, with what is caught in it."""

    def __init__(self, build: Build, part: Part) -> None:
        self.build, self.part = build, part
        self.members = build.whole(part)
        self.chapter = build.chapter(part.boards[0])
        self.tenoned = build.boards(dict.fromkeys(board for board, _ in build.tenons if board in part.boards))

    def job(
        self,
        task: Task,
        count: int = 1,
        *,
        pressed: Sequence[BoardSize] = (),
        members: tuple[str, ...] = (),
        subject: str = "",
    ) -> Job:
        """A task on the whole of it, or on some of its boards, whose ends are pressed home in clamps."""
        marks = members or self.members
        return Job(
            task=task,
            subject=subject or self.part.mark,
            box=self.part.box,
            chapter=self.chapter,
            boards=marks,
            count=count,
            clamps=clamps(pressed),
            hands=hands(self.build.boards(marks), LONG_TO_CLOSE_NM) if task in _WHOLE else 1,
        )

    def frame(self) -> Iterator[Job]:
        """A frame, or a stand, which is glued up in two stages: its tenons go in along two directions."""
        count = len(self.members)
        yield self.job(tasks.DRY_FRAME, count)
        yield self.job(tasks.SAND_FRAME, count)
        ends, last = self._stages()
        for end in ends:
            pressed = [board for board in self.tenoned if board.mark in end]
            yield self.job(tasks.ENDS, pressed=pressed, members=end, subject=pressed[0].mark)
        yield self.job(tasks.GLUE_STAND if ends else tasks.GLUE_FRAME, pressed=last)
        yield self.job(tasks.FLUSH_FRAME)

    def _stages(self) -> tuple[list[tuple[str, ...]], list[BoardSize]]:
        """Ends to be glued up first, if there are at least two, and the tenoned boards that join them."""
        axes: dict[Direction, list[BoardSize]] = {}
        for board in self.tenoned:
            axes.setdefault(_axis(board), []).append(board)
        for joining in sorted(axes.values(), key=lambda boards: -max(board.length_nm for board in boards)):
            ends = self._without({board.mark for board in joining})
            if len(ends) > 1:
                return ends, joining
        return [], self.tenoned

    def _without(self, joining: set[str]) -> list[tuple[str, ...]]:
        """What is together without some of the tenoned boards: everything of two boards or more."""
        groups = {mark: {mark} for mark in self.part.boards}
        for board, host in self.build.tenons:
            if board in groups and board not in joining:
                groups[board] |= groups[host]
                groups.update(dict.fromkeys(groups[board], groups[board]))
        apart = {frozenset(group) for group in groups.values() if len(group) > 1}
        ends = [tuple(mark for mark in self.part.boards if mark in group) for group in apart]
        return sorted(ends, key=lambda end: self.part.boards.index(end[0]))

    def ring(self, ring: Ring) -> Iterator[Job]:
        """A ring; of a closed box, until it is sawn open."""
        for part in self.build.filled[ring.mark].caught:
            if part.role is Role.SLIP:
                yield _slip(self.build, part, tasks.SLIPS_FIRST)
        pins = dict.fromkeys(corner.pin_board for corner in ring.corners)
        yield self.job(tasks.DRY, len(self.members))
        yield self.job(tasks.SAND, len(self.members))
        yield self.job(tasks.GLUE, pressed=[*self.build.boards(pins), *self.tenoned])
        yield self.job(tasks.FLUSH, len(ring.corners))
        yield from self._sawn_open()

    def _sawn_open(self) -> Iterator[Job]:
        features = enumerate(self.build.facts.features)
        lines = {
            at: each for at, each in features if each.kind is FeatureKind.SAW_LINE and each.board in self.part.boards
        }
        if lines:
            first = next(iter(lines.values()))
            setting = cut_setting(first, self.build.facts.boards[first.board])
            opened = self.job(tasks.OPEN, len(lines))
            yield replace(
                opened, setting=setting, boards=self.part.boards, touches=both_ends(self.members), cuts=tuple(lines)
            )
            yield self.job(tasks.EDGES, 2)


_WHOLE = frozenset(
    {tasks.DRY, tasks.GLUE, tasks.FLUSH, tasks.DRY_FRAME, tasks.GLUE_FRAME, tasks.GLUE_STAND, tasks.ENDS}
)
"""Tasks in which the whole must be held, lifted or turned."""


def _axis(board: BoardSize) -> Direction:
    along = board.lie.along
    return (abs(along[0]), abs(along[1]), abs(along[2]))


# --- what is put in later ----------------------------------------------------------------------------------

_PUT_IN = {
    Role.PARTITION: tasks.DIVIDE,
    Role.SHELF: tasks.DIVIDE,
    Role.RAIL: tasks.RAIL,
    Role.RUNNER: tasks.RUNNER,
    Role.KICKER: tasks.RUNNER,
    Role.BOTTOM_PANEL: tasks.BOTTOM,
    Role.TILL_SIDE: tasks.TILL,
    Role.TILL_BOTTOM: tasks.TILL,
    Role.TILL_LID: tasks.TILL,
}
"""How single boards are put in; what is not here is put in and glued like anything else."""


def _put_in(build: Build, body: Part) -> Iterator[Job]:
    """What goes into a ring or a frame once it stands: after what holds it, and before what would be in its way."""
    marks: dict[str, str] = {}
    for put in build.filled[body.mark].later:
        if put.part.role in BACKS:
            continue
        after = tuple(marks[mark] for mark in put.after if mark in marks)
        job = _slip(build, put.part, tasks.SLIPS) if put.part.role is Role.SLIP else _put(build, body, put, after)
        marks[put.part.mark] = job.mark
        yield job


def _put(build: Build, body: Part, put: PutIn, after: tuple[str, ...]) -> Job:
    part, boards = put.part, build.boards(put.part.boards)
    task = tasks.DIVIDE if part.glued_up else _PUT_IN.get(boards[0].role, tasks.PUT_IN)
    holding = [mark for host in put.hosts or (body.mark,) for mark in build.parts[host].boards]
    pressed = boards[:1] if task is not tasks.BOTTOM else []
    return Job(
        task=task,
        subject=part.mark,
        box=part.box,
        chapter=build.chapter(part.boards[0]),
        setting=Setting(WAYS[put.way] if put.way else ""),
        boards=build.whole(part),
        touches=both_ends(dict.fromkeys(holding)),
        after=after,
        clamps=clamps(pressed),
        hands=hands(boards, LONG_TO_CLOSE_NM),
    )


def _slip(build: Build, part: Part, task: Task) -> Job:
    """A slip, glued along its whole length to the side that it touches."""
    (board,) = build.boards(part.boards)
    return Job(
        task=task,
        subject=part.mark,
        box=part.box,
        chapter=build.chapter(board.mark),
        boards=part.boards,
        touches=both_ends(build.touching(part.boards, build.parts[part.box].boards)),
        clamps=clamps_along(board),
    )
