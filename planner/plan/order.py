"""The order of operations: what must come before what is kept, and settings are changed as seldom as can be.

Each setting must be visited at least once, so the number of settings is a floor that no order can go below. A setting
whose every remaining operation is ready may be finished at once: any order can be rearranged to do so without a further
visit. Only when no setting can be finished is there a choice; then all ways on are tried, within a bound that only an
artificial project exceeds.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from planner.domain.operation import Machine, Operation, Setting
from planner.errors import PlanError, Problem

Key = tuple[Machine, Setting, str]
"""Machine, setting and task: what the operations of one run have in common."""

MOST_TRIES = 5_000


@dataclass(frozen=True, slots=True)
class Run:
    """Operations done one after the other at one setting."""

    key: Key
    operations: tuple[Operation, ...]


def key_of(operation: Operation) -> Key:
    """What must be alike for two operations to need no change between them."""
    return operation.machine, operation.setting, operation.task


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
        self.tries = 0
        self.known: dict[frozenset[str], _Runs] = {}

    def least(self, done: frozenset[str]) -> _Runs:
        """Fewest runs that finish everything from here."""
        if done in self.known:
            return self.known[done]
        start = done
        runs: list[tuple[Key, tuple[str, ...]]] = []
        while len(done) < len(self.by_mark):
            ready = self._ready(done)
            whole = next((key for key, (marks, left) in ready.items() if len(marks) == left), None)
            if whole is None:
                runs += self._branch(done, {key: marks for key, (marks, _) in ready.items() if marks})
                break
            runs.append((whole, ready[whole][0]))
            done = done.union(ready[whole][0])
        self.known[start] = tuple(runs)
        return self.known[start]

    def _branch(self, done: frozenset[str], ways: Mapping[Key, tuple[str, ...]]) -> _Runs:
        if not ways:
            raise PlanError([_stuck(sorted(set(self.by_mark) - done))])
        best: _Runs | None = None
        for key, marks in ways.items():
            if best is not None and self.tries >= MOST_TRIES:
                break
            self.tries += 1
            found = ((key, marks), *self.least(done.union(marks)))
            if best is None or len(found) < len(best):
                best = found
        return best or ()

    def _ready(self, done: frozenset[str]) -> dict[Key, tuple[tuple[str, ...], int]]:
        """For each setting, what can be done there now, one after the other, and how many operations it has left."""
        left: dict[Key, list[Operation]] = {}
        for operation in self.sorted:
            if operation.mark not in done:
                left.setdefault(key_of(operation), []).append(operation)
        return {key: (_doable(waiting, done), len(waiting)) for key, waiting in left.items()}


def _doable(waiting: Sequence[Operation], done: frozenset[str]) -> tuple[str, ...]:
    doable: dict[str, None] = {}
    grew = True
    while grew:
        grew = False
        for operation in waiting:
            if operation.mark not in doable and all(b in done or b in doable for b in operation.after):
                doable[operation.mark] = None
                grew = True
    return tuple(doable)


def _stuck(marks: Sequence[str]) -> Problem:
    return Problem(
        where="order of operations",
        what=f"these wait for something that never comes: {', '.join(marks[:5])}.",
        remedy="This is a fault of the planner; please report it with the project file.",
    )
