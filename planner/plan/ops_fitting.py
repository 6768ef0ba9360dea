"""Fitting and finishing: base and top, openings measured, drawers, fronts, doors, shelves, back, lid, finish."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from planner.domain.carcase import Carcase, Plinth
from planner.domain.marks import board_mark
from planner.domain.operation import Chapter
from planner.domain.solid import Solid
from planner.domain.space import LooseShelves
from planner.domain.words import DrawersCut, FeatureKind, Role
from planner.plan import tasks
from planner.plan.bench import Job, both_ends
from planner.plan.build import BACKS, Build
from planner.plan.effort import LONG_TO_CLOSE_NM, hands
from planner.plan.made_up import Part
from planner.plan.ops_boards import opening
from planner.plan.tasks import Task
from planner.plan.ways_in import touch

_FIXED: dict[Role | None, Task] = {
    Role.RUNNER: tasks.STRIPS,
    Role.LEG: tasks.BASE,
    Role.SEPARATE_TOP: tasks.TOP,
    Role.APPLIED_FRONT: tasks.FRONT,
    Role.LOOSE_SHELF: tasks.LOOSE,
    Role.DOOR: tasks.DOOR,
    Role.LID: tasks.LID,
    Role.HANGING_RAIL: tasks.HANGING_RAIL,
    Role.DRAWER_STOP: tasks.DRAWER_STOPS,
    Role.DOOR_STOP: tasks.DOOR_STOPS,
}
"""How parts are fixed that are let into nothing; what is not here is put in its place and glued."""

_BEFORE_FITTING = frozenset({tasks.STRIPS, tasks.HANGING_RAIL, tasks.BASE, tasks.TOP, tasks.PUT_IN})


def fitting(build: Build) -> Iterator[Job]:
    """All that is done once the rings stand and what is let into them is in."""
    for carcase in build.facts.project.carcases:
        yield from _carcase(build, carcase)
    for part in build.fixed_on:
        yield _fixed(build, part)
    for mark in dict.fromkeys(each.board for each in build.facts.features if each.kind is FeatureKind.SAW_LINE):
        ring = build.part_of[mark]
        if mark == ring.boards[0]:
            yield _on(build, tasks.LID, ring, ring.mark)
    for piece in dict.fromkeys(board.piece for board in build.facts.boards.values()):
        yield from _finished(build, piece)


def _fixed(build: Build, part: Part) -> Job:
    """A part that is let into nothing; a stop is fixed to what shuts against it, a shelf tried on its pins."""
    if part.role is Role.LOOSE_SHELF and part.mark in _on_pins(build):
        return _on(build, tasks.ON_PINS, part, part.box)
    job = _on(build, _FIXED.get(part.role, tasks.PUT_IN), part, part.box)
    if part.role not in {Role.DRAWER_STOP, Role.DOOR_STOP}:
        return job
    shut = build.touching(part.boards, (mark for mark in build.fills if mark not in job.boards))
    moving = {build.fills[mark] for mark in shut}
    boards = [mark for mark, fills in build.fills.items() if fills in moving]
    return replace(job, touches=(*job.touches, *both_ends(boards)))


def _on_pins(build: Build) -> frozenset[str]:
    """Marks of the loose shelves that lie on pins."""
    return frozenset(
        board_mark(each.mark, Role.LOOSE_SHELF, number)
        for each in build.facts.openings
        if isinstance(each.space.holds, LooseShelves) and each.space.holds.pins
        for number in range(1, each.space.holds.count + 1)
    )


def _on(build: Build, task: Task, part: Part, ring: str) -> Job:
    """A part fixed to a ring in which everything stands, or tried in it; onto a base, the ring is lifted."""
    boards, standing = build.whole(part), build.standing(ring)
    return Job(
        task=task,
        subject=part.mark,
        box=part.box,
        chapter=Chapter.PLANNED if task in _BEFORE_FITTING else Chapter.LAST,
        boards=boards,
        touches=both_ends(standing),
        hands=hands(build.boards(standing if task is tasks.BASE else boards), LONG_TO_CLOSE_NM),
    )


def _carcase(build: Build, carcase: Carcase) -> Iterator[Job]:
    """A carcase checked, put on its base, its openings measured, its drawers and its back fitted."""
    mark = carcase.ring.mark
    standing = build.standing(mark)
    yield Job(task=tasks.CHECK, subject=mark, box=mark, boards=standing)
    if isinstance(carcase.base, Plinth):
        yield _on(build, tasks.BASE, build.parts[carcase.base.ring.mark], mark)
    for each in build.facts.openings:
        if each.carcase == mark and each.drawer:
            around = _around(build, each.place, standing)
            yield from _measured(build, each.drawer, around)
            drawer = build.parts[each.drawer]
            yield Job(
                task=tasks.DRAWER,
                subject=drawer.mark,
                box=drawer.mark,
                chapter=Chapter.LAST,
                boards=build.standing(drawer.mark),
                touches=both_ends(around),
            )
    for part in build.parts.values():
        if part.role is Role.DOOR and part.box == mark:
            yield from _measured(build, part.mark, standing)
    backs: dict[str, str] = {}
    for put in build.filled[mark].later:
        if put.part.role in BACKS:
            job = _on(build, tasks.BACK, put.part, mark)
            backs[put.part.mark] = job.mark
            yield replace(job, after=tuple(backs[each] for each in put.after if each in backs))


def _around(build: Build, space: Solid, standing: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(mark for mark in standing if touch(space, build.facts.boards[mark].place))


def _measured(build: Build, fills: str, around: tuple[str, ...]) -> Iterator[Job]:
    """The opening of a drawer or a door measured, where these are made to measure."""
    if build.facts.project.drawers_cut is DrawersCut.TO_MEASURE:
        box = build.parts[fills].box
        yield Job(task=tasks.MEASURE, subject=fills, box=box, touches=(opening(fills), *both_ends(around)))


def _finished(build: Build, piece: str) -> Iterator[Job]:
    """The finish of a whole piece, and all that is hung or put back after it."""
    boards = tuple(mark for mark, board in build.facts.boards.items() if board.piece == piece)
    lifted = hands(build.boards(boards), LONG_TO_CLOSE_NM)
    job = Job(
        task=tasks.FINISH,
        subject=piece,
        box=piece,
        chapter=Chapter.LAST,
        boards=boards,
        count=len(boards),
        hands=lifted,
    )
    yield job
    parts = {build.part_of[mark].mark for mark in boards}
    drawers = {drawer.ring.mark for drawer in build.facts.project.drawers()}
    loose = parts & drawers | {
        mark for mark in parts if build.parts[mark].role in {Role.DOOR, Role.LID, Role.LOOSE_SHELF}
    }
    sawn = {feature.board for feature in build.facts.features if feature.kind is FeatureKind.SAW_LINE}
    if loose or sawn & set(boards):
        yield Job(
            task=tasks.HANG,
            subject=piece,
            box=piece,
            chapter=Chapter.LAST,
            boards=boards,
            count=max(1, len(loose)),
            hands=lifted,
        )
