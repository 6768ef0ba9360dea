"""The order of operations: what must come before what is kept, and settings are changed as seldom as can be.

Each setting must be visited at least once, so the number of settings is a floor that no order can go below. A setting
whose every remaining operation is ready may be finished at once: any order can be rearranged to do so without a further
visit. Only when no setting can be finished is there a choice; then at least one must be visited twice, and all ways on
are tried until one is found that does with that, within a bound that only an artificial project exceeds.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from heapq import heapify, heappop, heappush
from typing import Any

from planner.domain.operation import Chapter, Machine, Operation, Setting
from planner.errors import PlanError, Problem

Key = tuple[Machine, Setting, str, Chapter]
"""Machine, setting, task and chapter: what the operations of one run have in common."""

MOST_TRIES = 1_000


@dataclass(frozen=True, slots=True)
class Run:
    """Operations done one after the other at one setting."""

    key: Key
    operations: tuple[Operation, ...]


def key_of(operation: Operation) -> Key:
    """What must be alike for two operations to need no change between them."""
    return operation.machine, operation.setting, operation.task, operation.chapter


def in_order(operations: Sequence[Operation], rank: Callable[[Operation], Any]) -> tuple[Run, ...]:
    """Runs in which every operation comes after those it needs, with the fewest runs.

    Args:
        operations: with distinct marks.
        rank: which of several settings to visit first where that makes no difference, and in which order to do the
            operations of a run where nothing else decides.

    Raises:
        PlanError: operations that wait for each other, or for one that is not there.
    """
    by_mark = {operation.mark: operation for operation in operations}
    strangers = sorted({before for o in operations for before in o.after if before not in by_mark})
    if strangers:
        raise PlanError([_stuck(strangers)])
    search = _Search(by_mark, rank)
    runs = search.least(frozenset())
    return tuple(Run(key, tuple(by_mark[mark] for mark in marks)) for key, marks in runs)


_Runs = tuple[tuple[Key, tuple[str, ...]], ...]


class _Search:
    def __init__(self, by_mark: Mapping[str, Operation], rank: Callable[[Operation], Any]) -> None:
        self.by_mark = by_mark
        self.sorted = sorted(by_mark.values(), key=lambda o: (rank(o), o.mark))
        self.key = {operation.mark: key_of(operation) for operation in self.sorted}
        self.leads_to: dict[str, list[str]] = {mark: [] for mark in by_mark}
        for operation in self.sorted:
            for before in operation.after:
                self.leads_to[before].append(operation.mark)
        self.tries = 0
        self.known: dict[frozenset[str], _Runs] = {}

    def least(self, done: frozenset[str]) -> _Runs:
        """Fewest runs that finish everything from here."""
        if done not in self.known:
            rest = _Rest(self, done)
            runs = rest.finish_settings()
            if rest.left:
                runs += self._branch(rest)
            self.known[done] = tuple(runs)
        return self.known[done]

    def _branch(self, rest: _Rest) -> _Runs:
        done = rest.done()
        ways = {key: marks for key, waiting in rest.left.items() if (marks := _doable(waiting, done))}
        if not ways:
            raise PlanError([_stuck(sorted(set(self.by_mark) - done))])
        best: _Runs | None = None
        for key, marks in ways.items():
            if best is not None and (self.tries >= MOST_TRIES or len(best) == len(rest.left) + 1):
                break
            self.tries += 1
            found = ((key, marks), *self.least(done.union(marks)))
            if best is None or len(found) < len(best):
                best = found
        return best or ()


class _Rest:
    """What is left to do: by setting, in usual order, and how much each setting still waits for others."""

    def __init__(self, search: _Search, done: frozenset[str]) -> None:
        self.search = search
        self.left: dict[Key, list[Operation]] = {}
        self.waits: dict[Key, int] = {}
        self.place: dict[Key, int] = {}
        for place, operation in enumerate(search.sorted):
            if operation.mark not in done:
                key = search.key[operation.mark]
                self.left.setdefault(key, []).append(operation)
                self.place.setdefault(key, place)
                open_here = sum(search.key[each] != key for each in operation.after if each not in done)
                self.waits[key] = self.waits.get(key, 0) + open_here

    def done(self) -> frozenset[str]:
        """Marks of all operations that are finished."""
        return frozenset(self.search.by_mark).difference(o.mark for waiting in self.left.values() for o in waiting)

    def finish_settings(self) -> list[tuple[Key, tuple[str, ...]]]:
        """Finish settings as long as one can be finished, the usual one first."""
        runs: list[tuple[Key, tuple[str, ...]]] = []
        ready = [(place, key) for key, place in self.place.items() if not self.waits[key]]
        heapify(ready)
        while ready:
            _, key = heappop(ready)
            waiting = self.left[key]
            marks = _doable(waiting, None)
            if len(marks) < len(waiting):
                continue
            runs.append((key, marks))
            del self.left[key]
            for following in (self.search.key[each] for mark in marks for each in self.search.leads_to[mark]):
                if following != key:
                    self.waits[following] -= 1
                    if not self.waits[following]:
                        heappush(ready, (self.place[following], following))
        return runs


def _doable(waiting: Sequence[Operation], done: frozenset[str] | None) -> tuple[str, ...]:
    """What of a setting can be done now, one after the other; without ``done``, nothing else is waited for."""
    here = {operation.mark for operation in waiting}
    doable: dict[str, None] = {}
    grew = True
    while grew:
        grew = False
        for operation in waiting:
            if operation.mark not in doable and all(
                before in doable or (before not in here if done is None else before in done)
                for before in operation.after
            ):
                doable[operation.mark] = None
                grew = True
    return tuple(doable)


def _stuck(marks: Sequence[str]) -> Problem:
    return Problem(
        where="order of operations",
        what=f"these wait for something that never comes: {', '.join(marks[:5])}.",
        remedy="This is a fault of the planner; please report it with the project file.",
    )
