"""The order of operations: one row for each visit to a setting, with the cautions of its machine."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import groupby

from planner.domain.operation import Operation, Setting, Work
from planner.domain.plan import Plan
from planner.lengths import Grid
from planner.present.table import Cell, Column, Group, Kind, Table, setting

RUN = 3
"""So many numbers in a row are written as one."""


def order(plan: Plan) -> Table:
    """All work in shop order; consecutive work at one machine stands together."""
    operations = {operation.mark: operation for operation in plan.operations}
    numbers = {mark: work.number for work in plan.order for mark in work.operations}

    def row(work: Work) -> tuple[Cell, ...]:
        return (
            None,
            work.number,
            work.task,
            setting_items(work.setting, plan.project.grid),
            tuple(operations[mark].subject for mark in work.operations),
            tuple(runs_of(_after(work, operations, numbers))),
        )

    return Table(
        title="Order of operations",
        grid=plan.project.grid,
        columns=(
            Column(heading="Done", kind=Kind.TICK),
            Column(heading="No.", kind=Kind.COUNT),
            Column(heading="Task"),
            Column(heading=f"Setting, {plan.project.unit}", kind=Kind.MARKS),
            Column(heading="On", kind=Kind.TICKS),
            Column(heading="After No.", kind=Kind.MARKS),
        ),
        groups=tuple(
            Group(
                heading=machine.capitalize(),
                cautions=tuple(dict.fromkeys(caution for work in visits for caution in work.cautions)),
                rows=tuple(row(work) for work in visits),
            )
            for machine, visits in _by_machine(plan.order)
        ),
        notes=("Each number is one setting: do everything in it before you change the setting.",),
    )


def _by_machine(order_of_work: tuple[Work, ...]) -> Iterator[tuple[str, list[Work]]]:
    for machine, works in groupby(order_of_work, key=lambda work: work.machine):
        yield machine.value, list(works)


def _after(work: Work, operations: Mapping[str, Operation], numbers: Mapping[str, int]) -> list[int]:
    """Numbers of the work that must be finished before."""
    before = {numbers[mark] for done in work.operations for mark in operations[done].after}
    return sorted(before - {work.number})


def runs_of(numbers: list[int]) -> Iterator[str]:
    """Ascending numbers in words, many in a row as one: ``4``, ``7 to 10``."""
    for _, group in groupby(enumerate(numbers), key=lambda pair: pair[1] - pair[0]):
        run = [number for _, number in group]
        yield from (f"{run[0]} to {run[-1]}",) if len(run) >= RUN else map(str, run)


def setting_items(at: Setting, grid: Grid) -> tuple[str, ...]:
    """A setting in words, one item for each thing to set."""
    lengths = tuple(f"{name} {setting(length, grid)}" for name, length in at.lengths)
    return (*at.words.split(", "), *lengths) if at.words else lengths
