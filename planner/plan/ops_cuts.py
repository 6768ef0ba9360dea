"""Grooves, rabbets, housings, mortises, tenons, notches and holes: which are cut together, and when.

Cuts are made in the single board, before anything is glued. But a cut that runs straight on from one board into
another is made in both at once, when they are together: the housing across a frame, the groove for a strip through a
drawer's side and back, the holes through both fronts.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from planner.domain.marks import end_mark
from planner.domain.operation import Chapter
from planner.domain.plan import BoardSize, Feature
from planner.domain.solid import BACK, RIGHT, UP, Direction, Solid
from planner.domain.words import End, FeatureKind
from planner.plan import tasks
from planner.plan.bench import Job, both_ends
from planner.plan.build import Build
from planner.plan.cut_settings import cut_setting
from planner.plan.ways_in import place_in_piece, touch


def cuts(build: Build) -> Iterator[Job]:
    """The making of every cut that is no corner joint, each once; like cuts of one name are one job."""
    alike: dict[Job, list[int]] = {}
    in_one = {number: run for run in _straight_on(build) for number in run}
    for number, feature in enumerate(build.facts.features):
        run = in_one.get(number, (number,))
        if number == run[0] and feature.kind is not FeatureKind.SAW_LINE:
            cut = [build.facts.features[each] for each in run]
            alike.setdefault(_through(build, cut) if len(run) > 1 else _in_board(build, feature), []).extend(run)
    times: Counter[str] = Counter()
    for job, made in alike.items():
        times[job.mark] += 1
        again = f", {times[job.mark]}" if times[job.mark] > 1 else ""
        yield replace(job, subject=f"{job.subject}{again}", cuts=tuple(made), count=len(made))


def _words(feature: Feature, board: BoardSize) -> str:
    """What a cut is called: by what goes in, else by the end that it is at."""
    if feature.takes:
        return f"{feature.board} for {feature.takes}"
    ends = {End.A: feature.x[0] == 0, End.B: feature.x[1] == board.length_nm}
    at = [end for end, reached in ends.items() if reached]
    return end_mark(feature.board, at[0]) if len(at) == 1 else feature.board


def _in_board(build: Build, feature: Feature) -> Job:
    """A cut in one board; a tenon is fitted to its mortise, so it waits for that."""
    board = build.facts.boards[feature.board]
    task = tasks.CUTS[feature.kind]
    if feature.kind is FeatureKind.TENON and feature.y == (0, board.thickness_nm):
        task = tasks.TENONS_SAWN
    tenoned_into = (
        [host for each, host in build.tenons if each == board.mark] if feature.kind is FeatureKind.TENON else []
    )
    return Job(
        task=task,
        subject=_words(feature, board),
        box=board.box,
        chapter=build.chapter(board.mark),
        setting=cut_setting(feature, board),
        boards=(board.mark,),
        touches=both_ends(tenoned_into),
    )


# --- cuts through several boards ---------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Seen:
    """A cut that may run on: its number among the features, its board, and the block that it takes away."""

    number: int
    board: str
    block: Solid


def _straight_on(build: Build) -> Iterator[tuple[int, ...]]:
    """Numbers of the cuts that make one, for each such cut."""
    seen: dict[tuple[str, Direction, Solid], list[_Seen]] = {}
    for number, feature in enumerate(build.facts.features):
        if feature.kind in {FeatureKind.TENON, FeatureKind.SAW_LINE} or _caught(build, feature):
            continue
        block = place_in_piece(build.facts.boards[feature.board], feature)
        for way in (RIGHT, BACK, UP):
            flat = block.with_span(way, (0, 0))
            seen.setdefault((feature.takes, way, flat), []).append(_Seen(number, feature.board, block))
    for (_, way, _), found in seen.items():
        if len({each.board for each in found}) > 1:
            yield from _runs(build, sorted(found, key=lambda each: (each.block.along(way), each.number)))


def _caught(build: Build, feature: Feature) -> bool:
    """Whether a cut takes what is caught at the glue-up of its own board, so that it can't be made after that."""
    body = build.filled.get(build.part_of[feature.board].mark)
    return body is not None and build.part_of.get(feature.takes) in body.caught


def _runs(build: Build, found: Sequence[_Seen]) -> Iterator[tuple[int, ...]]:
    """Cuts in one line, parted where one doesn't reach the next; those of a single board are no run."""
    run = [found[0]]
    for before, each in pairwise(found):
        if not touch(before.block, each.block):
            yield from _whole(build, run)
            run = []
        run.append(each)
    yield from _whole(build, run)


def _whole(build: Build, run: Sequence[_Seen]) -> Iterator[tuple[int, ...]]:
    boards = dict.fromkeys(each.board for each in run)
    kinds = {build.facts.features[each.number].kind for each in run}
    if len(boards) > 1 and (_made_up(build, boards) or kinds == {FeatureKind.HOLE}):
        yield tuple(each.number for each in run)


def _made_up(build: Build, boards: Iterable[str]) -> bool:
    """Whether boards are glued up together before anything is put into them."""
    parts = {build.part_of[board].mark: build.part_of[board] for board in boards}
    return len(parts) == 1 and all(part.glued_up for part in parts.values())


def _through(build: Build, run: Sequence[Feature]) -> Job:
    """One cut through several boards, set by the one across the grain, else by the longest."""
    led_by = max(run, key=lambda each: (each.kind is FeatureKind.HOUSING, each.x[1] - each.x[0]))
    board = build.facts.boards[led_by.board]
    boards = tuple(dict.fromkeys(each.board for each in run))
    fronts = not _made_up(build, boards)
    task = tasks.DRILL_FRONTS if fronts else _AFTER_GLUE_UP[build.part_of[board.mark].role is None]
    return Job(
        task=task,
        subject=_words(led_by, board),
        box=board.box,
        chapter=Chapter.LAST if fronts else build.chapter(board.mark),
        setting=cut_setting(led_by, board),
        boards=boards,
    )


_AFTER_GLUE_UP = {True: tasks.GROOVE_RING, False: tasks.HOUSE_FRAME}
"""How a cut through several boards is made, by whether these are a ring."""
