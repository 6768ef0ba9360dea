"""Every operation of a build, and the order in which to do them.

What there is to do is gathered by those who know: boards, corner joints, cuts, glue-ups and what is put in, fitting.
None of them says what comes before what; that is one rule, in ``bench``, and one list of tasks, in ``tasks``.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from planner.domain.operation import Chapter, Operation, Work
from planner.plan.bench import in_turn
from planner.plan.build import Build, Facts
from planner.plan.cautions import cautions
from planner.plan.cutting_safety import LOUD
from planner.plan.cutting_safety import Run as Heeded
from planner.plan.ops_assembly import assembly
from planner.plan.ops_boards import boards
from planner.plan.ops_cuts import cuts
from planner.plan.ops_fitting import fitting
from planner.plan.ops_joints import joints
from planner.plan.order import Run, in_order
from planner.plan.tasks import BY_NAME, CROSSCUT, PINS, PLANE, RIP, SAW, STAGE, TAKEN_UP_WITH

__all__ = ["Facts", "operations", "order_of_work", "shop_order"]

_LARGEST_FIRST = frozenset({PLANE.does, RIP.does, CROSSCUT.does})

_BY_SHEET = frozenset({PINS.does, SAW.does})
"""Tasks that have a sheet of their own, whose order they follow within a setting."""


def operations(facts: Facts) -> tuple[Operation, ...]:
    """All operations of a project."""
    build = Build.of(facts)
    gathered = [job for gather in (boards, joints, cuts, assembly, fitting) for job in gather(build)]
    return tuple(in_turn(gathered))


def shop_order(found: Sequence[Operation]) -> list[Run]:
    """The operations in the order to do them, by visits to a setting."""
    return list(in_order(found, _usual_place(found)))


def order_of_work(found: Sequence[Operation], facts: Facts) -> tuple[Work, ...]:
    """The operations in shop order, one run of work for each visit to a setting."""
    runs = shop_order(found)
    loud = next((number for number, run in enumerate(runs) if run.operations[0].machine in LOUD), None)
    return tuple(
        _work(number + 1, run, cautions(Heeded(run.operations, facts), first_noise=number == loud))
        for number, run in enumerate(runs)
    )


def _usual_place(found: Sequence[Operation]) -> Callable[[Operation], tuple[Any, ...]]:
    """Where a maker would do an operation where nothing else decides: box by box, or as its own sheet says."""
    place = {operation.mark: number for number, operation in enumerate(found)}
    box = {mark: number for number, mark in enumerate(dict.fromkeys(operation.box for operation in found))}
    chapters = list(Chapter)

    def usual(operation: Operation) -> tuple[Any, ...]:
        return (
            chapters.index(operation.chapter),
            STAGE[TAKEN_UP_WITH.get(operation.task, operation.task)],
            _by_size(operation),
            STAGE[operation.task],
            0 if operation.task in _BY_SHEET else box[operation.box],
            place[operation.mark],
        )

    return usual


def _by_size(operation: Operation) -> tuple[str, list[tuple[str, int]]]:
    """Settings from the smallest, but sizes of boards from the largest: what is spoilt still makes a smaller one."""
    sign = -1 if operation.task in _LARGEST_FIRST else 1
    return operation.setting.words, [(name, sign * length) for name, length in operation.setting.lengths]


def _work(number: int, run: Run, heed: tuple[str, ...]) -> Work:
    first = run.operations[0]
    return Work(
        number=number,
        task=first.task,
        machine=first.machine,
        setting=first.setting,
        chapter=first.chapter,
        operations=tuple(operation.mark for operation in run.operations),
        cautions=heed,
        clamps=max(operation.clamps for operation in run.operations),
        hands=max(operation.hands for operation in run.operations),
        estimate_s=BY_NAME[first.task].setup_s + sum(operation.estimate_s for operation in run.operations),
    )
