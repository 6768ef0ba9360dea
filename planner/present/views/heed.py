"""What to heed at the machines of a sheet, so that it stands where the cuts are listed."""

from __future__ import annotations

from collections.abc import Iterable

from planner.domain.operation import Machine
from planner.domain.plan import Plan


def heed(plans: Iterable[Plan], *machines: Machine) -> tuple[str, ...]:
    """The cautions at these machines, each once, in the order of the work; none where they aren't used."""
    works = (work for plan in plans for work in plan.order if work.machine in machines)
    return tuple(dict.fromkeys(caution for work in works for caution in work.cautions))
