"""Change one thing of a stored project, and see what follows from it for boards, stock and settings."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from planner import pipeline
from planner.app.projects import Change, keep, stored
from planner.app.sleds import kept
from planner.app.store_place import StorePlace
from planner.domain.changes import Changes
from planner.domain.plan import Plan
from planner.domain.project import Project
from planner.domain.said import SaidOtherwise, SaidPlace
from planner.errors import InputError, PlanError, Problem
from planner.plan.changes import what_changed

if TYPE_CHECKING:
    from planner.intake.edit import Draft


@dataclass(frozen=True, slots=True, kw_only=True)
class Changed:
    """What a change came to.

    Attributes:
        said: what the maker says otherwise, place by place.
        changes: what is different in the plan.
        stored: what it changed in the store; None when nothing was to be stored.
    """

    said: tuple[SaidOtherwise, ...]
    changes: Changes
    stored: Change | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Bench:
    """The project to work on, and whether the work is for good.

    Attributes:
        name: of a stored project.
        dry_fit: only look what would change; the store stays as it is.
    """

    name: str
    store: StorePlace
    dry_fit: bool


def places(name: str, within: str | None, store: StorePlace) -> tuple[SaidPlace, ...]:
    """Places of a stored project: all that is said in it, or all that may be said in one of its tables.

    Raises:
        InputError: no such project, or no such place.
    """
    from planner.intake.edit import places as places_of

    return places_of(stored(name, store), within)


def change(bench: Bench, pairs: Sequence[str], left_out: Sequence[str]) -> Changed:
    """Say other things at some places, and nothing at others.

    Args:
        bench: the project.
        pairs: a place, then what is said there; any number of times.
        left_out: places where nothing is to be said any more.

    Raises:
        InputError: no such project or place, or what can't stand there; every reason is named.
        PlanError: no plan can be built any more.
        StoreError: the store can't be written.
        In each case the store is as it was.
    """
    if len(pairs) % 2 or not (pairs or left_out):
        raise InputError([_not_in_pairs(bench.name, pairs)])

    def said(draft: Draft) -> None:
        for place, text in zip(pairs[::2], pairs[1::2], strict=True):
            draft.change(place, text)
        for place in left_out:
            draft.leave_out(place)

    return _worked(bench, said)


def add_drawer(bench: Bench, *, below: str | None, above: str | None, mark: str | None, height: str | None) -> Changed:
    """Add a drawer to a column; refusals as for ``change``.

    Args:
        bench: the project.
        below: mark of the drawer it goes below; or else
        above: mark of the drawer it goes above.
        mark: its own; None takes the next usual one that is free.
        height: of its opening, where heights are listed; None takes that of the drawer beside it.
    """
    from planner.intake.edit_drawers import NewDrawer
    from planner.intake.edit_drawers import add_drawer as added

    beside = below if above is None else above
    if beside is None or None not in (below, above):
        raise InputError([_no_neighbour(bench.name)])
    new = NewDrawer(beside=beside, above=above is not None, mark=mark, height=height)
    return _worked(bench, lambda draft: added(draft, new))


def remove_drawer(bench: Bench, mark: str) -> Changed:
    """Take a drawer out of its column; refusals as for ``change``."""
    from planner.intake.edit_drawers import remove_drawer as removed

    return _worked(bench, lambda draft: removed(draft, mark))


def swap_timber(bench: Bench, old: str, new: str, within: Sequence[str]) -> Changed:
    """Put one material in place of another, everywhere or in what has these marks; refusals as for ``change``."""
    from planner.intake.edit_timber import swap_timber as swapped

    return _worked(bench, lambda draft: swapped(draft, old, new, within))


def resize(bench: Bench, mark: str, sizes: Mapping[str, str]) -> Changed:
    """Give a box or a carcase other sizes; refusals as for ``change``."""
    from planner.intake.edit_sizes import resize as resized

    return _worked(bench, lambda draft: resized(draft, mark, sizes))


def _worked(bench: Bench, work: Callable[[Draft], None]) -> Changed:
    """The project with some work done on it, stored unless it was a dry fit."""
    from planner.intake.edit import Draft

    before = stored(bench.name, bench.store)
    draft = Draft(before, lambda: [each.sled for each in kept(bench.store)])
    work(draft)
    after = draft.finished()
    changes = what_changed(_plan_as_it_stands(before), pipeline.plan(after))
    done = None if bench.dry_fit else keep(after, bench.store, why=_why(draft.said))
    return Changed(said=draft.said, changes=changes, stored=done)


def _plan_as_it_stands(project: Project) -> Plan:
    try:
        return pipeline.plan(project)
    except PlanError as error:
        where = f"{project.name} as it stands in the store"
        raise PlanError(replace(each, where=f"{where}, {each.where}") for each in error.problems) from error


_WHYS = 3
"""So many places are named in the history; the rest is counted."""


def _why(said: Iterable[SaidOtherwise]) -> str:
    texts = [str(each) for each in said]
    more = len(texts) - _WHYS
    return "; ".join([*texts[:_WHYS], *([f"and {more} more"] if more > 0 else [])])


def _not_in_pairs(name: str, given: Sequence[str]) -> Problem:
    return Problem(
        where=given[-1] if given else name,
        what="stands without a value." if given else "no place is named.",
        remedy=f"Give a place and what to say there: carcase.C.height 38. All places: planner places {name!r}",
    )


def _no_neighbour(name: str) -> Problem:
    return Problem(
        where=name,
        what="where the new drawer goes must be said once.",
        remedy="Name the drawer above it or the one below it: --below D3, or --above D3.",
    )
