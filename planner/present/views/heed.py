"""What to heed at the machines of a sheet, so that it stands where the cuts are listed."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from planner.domain.operation import Machine
from planner.domain.plan import Plan
from planner.plan.tasks import Task


def heed(plans: Iterable[Plan], *machines: Machine) -> tuple[str, ...]:
    """The cautions at these machines, each once, in the order of the work; none where they aren't used."""
    return tuple(
        dict.fromkeys(
            caution for plan in plans for work in plan.order if work.machine in machines for caution in work.cautions
        )
    )


def heed_at(plans: Iterable[Plan], task: Task, subjects: Collection[str]) -> tuple[str, ...]:
    """The cautions of a task where it is done to any of these ends or joints, so that they name no others."""
    found: dict[str, None] = {}
    for plan in plans:
        done = {each.mark for each in plan.operations if each.task == task.does and each.subject in subjects}
        for work in plan.order:
            if not done.isdisjoint(work.operations):
                found.update(dict.fromkeys(work.cautions))
    return tuple(found)
