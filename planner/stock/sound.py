"""Is the job one that makes sense? All that is wrong with it at once, before any sawing is thought of."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from planner.errors import InputError, Problem
from planner.lengths import NO_LENGTH, Grid, show_length
from planner.stock.pieces import Board, Job, Part, Zone

_STAGES = (2, 3)


def must_make_sense(job: Job) -> None:
    """Refuse a job that can't be meant.

    Raises:
        InputError: with every problem found.
    """
    problems = [*_part_problems(job), *_board_problems(job), *_wish_problems(job)]
    if problems:
        raise InputError(problems)


def _part_problems(job: Job) -> Iterator[Problem]:
    for mark, times in Counter(mark for part in job.parts for mark in part.marks).items():
        if times > 1:
            yield Problem(where=mark, what=f"wanted {times} times.", remedy="Give every part a mark of its own.")
    for part in job.parts:
        where = ", ".join(part.marks[:3]) or "a part"
        if not part.marks:
            yield Problem(where=where, what="has no mark.", remedy="Give a mark for each one that is wanted.")
        yield from _size_problems(where, part)


def _board_problems(job: Job) -> Iterator[Problem]:
    for mark, times in Counter(board.mark for board in job.boards).items():
        if times > 1:
            yield Problem(
                where=mark, what=f"listed {times} times.", remedy="Give every kind of board a mark of its own."
            )
    for board in job.boards:
        yield from _size_problems(board.mark, board)
        if board.cost < 0:
            yield Problem(where=board.mark, what=f"costs {board.cost}.", remedy="A cost is 0 or more.")
        if board.count is not None and board.count < 0:
            yield Problem(where=board.mark, what=f"there are {board.count}.", remedy="A count is 0 or more.")
        if min(board.end_trim_nm, board.edge_trim_nm) < NO_LENGTH:
            yield Problem(where=board.mark, what="has a negative trim.", remedy="A trim is 0 or more.")
        for zone in board.defects:
            yield from _zone_problems(board, zone)


def _size_problems(where: str, sized: Part | Board) -> Iterator[Problem]:
    for name, size in (("long", sized.length_nm), ("wide", sized.width_nm)):
        if size <= NO_LENGTH:
            shown = show_length(size, Grid.MM_TENTH, with_unit=True)
            yield Problem(where=where, what=f"is {shown} {name}.", remedy="It must be more than 0.")


def _zone_problems(board: Board, zone: Zone) -> Iterator[Problem]:
    spans = ((zone.along, board.length_nm), (zone.across, board.width_nm))
    if any(not 0 <= low < high <= size for (low, high), size in spans):
        yield Problem(
            where=board.mark,
            what="has a defect that lies outside it or has no size.",
            remedy="A defect runs from a lower place to a higher one on the board.",
        )


def _wish_problems(job: Job) -> Iterator[Problem]:
    if job.wish.stages not in _STAGES:
        yield Problem(where="stages", what=f"{job.wish.stages}.", remedy="Choose 2 or 3.")
    if min(job.saw.rip_nm, job.saw.crosscut_nm) < NO_LENGTH:
        yield Problem(where="kerf", what="is negative.", remedy="It is 0 or more.")
    keep = job.wish.keep
    if keep is not None and not (0 <= keep.credit_pct <= 100 and min(keep.length_nm, keep.width_nm) > NO_LENGTH):  # noqa: PLR2004
        yield Problem(
            where="offcuts",
            what=f"least {keep.length_nm} by {keep.width_nm} nm, credit {keep.credit_pct} percent.",
            remedy="Give a least size of more than 0 and a credit from 0 to 100 percent.",
        )
