"""The order of operations: one heading for each visit to a setting, its work box by box, cautions where they begin."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import groupby

from planner.domain.operation import Chapter, Machine, Operation, Setting, Work
from planner.domain.plan import Plan
from planner.lengths import Grid
from planner.present.table import Cell, Column, Group, Kind, Table, setting

RUN = 3
"""So many numbers in a row are written as one."""

FEW = 8
"""So many boards of a ring are named where it is put together; more are said in one word."""

_MINUTE, _HOUR = 60, 3600

_PARTS = {
    Chapter.PLANNED: "made to the plan's sizes",
    Chapter.MEASURED: "made to the openings as measured",
    Chapter.LAST: "fitted and finished",
}


def order(plan: Plan) -> Table:
    """All work in shop order."""
    return Table(
        title="Order of operations",
        grid=plan.project.grid,
        columns=(
            Column(heading="In", kind=Kind.TICKS),
            Column(heading="On", kind=Kind.MARKS),
        ),
        groups=tuple(_groups(plan)),
        notes=(
            f"Each number is one setting, lengths in {plan.project.unit}. Do all of it before you change the setting.",
            f"Work in hours, roughly, without time to dry: {_hours(plan)}.",
        ),
        steps=True,
    )


def _hours(plan: Plan) -> str:
    total = sum(work.estimate_s for work in plan.order)
    parts = [
        f"{round(sum(work.estimate_s for work in plan.order if work.chapter is chapter) / _HOUR)} {words}"
        for chapter, words in _PARTS.items()
        if any(work.chapter is chapter for work in plan.order)
    ]
    return f"{round(total / _HOUR)} in all, {', '.join(parts)}"


def _groups(plan: Plan) -> Iterator[Group]:
    operations = {operation.mark: operation for operation in plan.operations}
    numbers = {mark: work.number for work in plan.order for mark in work.operations}
    before: Work | None = None
    for work in plan.order:
        items = setting_items(work.setting, plan.project.grid)
        said = before.cautions if before and before.machine is work.machine else ()
        yield Group(
            heading=f"{work.number}. {work.task}" + (f": {', '.join(items)}" if items else ""),
            notes=tuple(_notes(work, before, _after(work, operations, numbers))),
            cautions=tuple(caution for caution in work.cautions if caution not in said),
            rows=tuple(_rows([operations[mark] for mark in work.operations])),
        )
        before = work


def _notes(work: Work, before: Work | None, after: list[int]) -> Iterator[str]:
    """Where, how long, how many hands and clamps, after what; and where a new part of the build begins."""
    if before and before.chapter is not work.chapter:
        yield f"From here on: {_PARTS[work.chapter]}."
    where = [] if work.machine is Machine.BENCH else [work.machine.value.capitalize()]
    said = [*where, f"about {max(1, round(work.estimate_s / _MINUTE))} min"]
    if work.clamps:
        said.append(
            f"{work.clamps} {'clamp' if work.clamps == 1 else 'clamps'}{' each' if len(work.operations) > 1 else ''}"
        )
    if work.hands > 1:
        said.append("two people")
    if after:
        said.append(f"after {', '.join(runs_of(after))}")
    yield f"{'; '.join(said)}."


def _rows(done: list[Operation]) -> Iterator[tuple[Cell, ...]]:
    """One row for each box, or for several that follow each other and get the same."""
    by_box = [(box, tuple(_on(each) for each in own)) for box, own in groupby(done, key=lambda each: each.box)]
    for what, boxes in groupby(by_box, key=lambda pair: pair[1]):
        yield tuple(box for box, _ in boxes), what


def _on(operation: Operation) -> str:
    """What an operation is done to, without the mark of the box, which stands beside it."""
    box = f"{operation.box}-"
    if operation.subject != operation.box:
        return operation.subject.replace(box, "")
    if 0 < len(operation.boards) <= FEW:
        return " ".join(board.removeprefix(box) for board in operation.boards)
    return "all" if operation.boards else "opening"


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
