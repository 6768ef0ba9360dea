"""Things of a plan, gathered under the box, carcase or drawer they belong to."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Protocol, TypeVar

from planner.domain.plan import Plan


class _InBox(Protocol):
    @property
    def box(self) -> str: ...


Thing = TypeVar("Thing", bound=_InBox)


def titles(plan: Plan) -> dict[str, str]:
    """What each box, carcase, plinth and drawer is called, by its mark."""
    named = {box.ring.mark: box.title or "box" for box in plan.project.boxes}
    named |= {carcase.ring.mark: carcase.title or "carcase" for carcase in plan.project.carcases}
    named |= {plinth.ring.mark: "plinth" for plinth in plan.project.plinths()}
    return named | {drawer.ring.mark: "drawer" for drawer in plan.project.drawers()}


def by_box(plan: Plan, things: Iterable[Thing]) -> Iterator[tuple[str, list[Thing]]]:
    """A heading for each box, in the maker's order, and what belongs to it; boxes without any are left out."""
    gathered: dict[str, list[Thing]] = {}
    for thing in things:
        gathered.setdefault(thing.box, []).append(thing)
    for mark, title in titles(plan).items():
        if mark in gathered:
            yield f"{mark}, {title}", gathered[mark]
