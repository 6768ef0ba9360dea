"""The order of work: a plan at once, the values and the bound, a dive, then improvements while there is time."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import count

import numpy as np

from planner.stock.pieces import Answer, Job
from planner.stock.solver.board_sets import BoardSets
from planner.stock.solver.bounds import Bounds
from planner.stock.solver.diving import Left, dive
from planner.stock.solver.generating import Generator
from planner.stock.solver.greedy import greedy, variants, whole
from planner.stock.solver.highs import KeepGoing
from planner.stock.solver.incumbent import Incumbent
from planner.stock.solver.master import Relaxed
from planner.stock.solver.neighbours import Neighbours
from planner.stock.solver.pricing import Mode, Pricer
from planner.stock.solver.task import Floats, Task

_ROOT_ROUNDS = 400
_DIVE_ROUNDS = 10
_DIVES = (3, 10)
"""Rounds of column generation in later dives: quick ones and thorough ones."""
_DEEP_ROUNDS = 5
_SELECTION_EFFORT = 1000
_MANY = 5
_PICKED_FROM, _PICK_EFFORT, _EFFORT_OF_A_PICK = 250, 150, 200_000_000
"""Columns and HiGHS's effort for a plan from known columns, and what that counts for in the pricer's effort."""
_EFFORT_OF_A_TRY = 5_000_000
"""What a try counts for even if it works out no table."""
_NEAR, _ANEW, _SETS, _DEEP_ROOT, _PICK = 6, 2, 1, 1, 2
"""Shares of the effort: improving a few boards, beginning again, choosing boards first, the bound of three stages, and
a choice among known columns."""


def answers(job: Job, *, keep_going: KeepGoing, seed: int, rounds: int | None) -> Iterator[Answer]:
    """Ever better answers; the first comes at once.

    Args:
        job: that makes sense.
        keep_going: asked often; the search ends soon after it says no.
        seed: of all that is left to chance.
        rounds: of improvement, at most; None for as many as there is time for.
    """
    task = Task(job)
    if not task.sizes:
        yield Answer(plan=Incumbent(task).plan, bound=0, impossible=bool(task.unfit), unfit=task.unfit)
        return
    yield from _Search(task, keep_going, seed).run(rounds)


@dataclass(slots=True)
class _Try:
    """A way to improve, its share of the effort and what it has had of it."""

    share: int
    run: Callable[[], object]
    effort: int = 0


class _Search:
    def __init__(self, task: Task, keep_going: KeepGoing, seed: int) -> None:
        self.task = task
        self.keep_going = keep_going
        self.pricer = Pricer(task)
        self.bounds = Bounds(task, self.pricer)
        self.best = Incumbent(task)
        self.chance = np.random.default_rng(seed)

    def run(self, rounds: int | None) -> Iterator[Answer]:
        """An answer whenever the plan or the bound is better."""
        told = None
        for _ in self._steps(rounds):
            answer = Answer(
                plan=self.best.plan,
                bound=self.bounds.best,
                impossible=self.bounds.impossible or bool(self.task.unfit),
                unfit=self.task.unfit,
            )
            if answer != told:
                yield answer
                told = answer
            if answer.proven or not self.keep_going():
                return

    def _steps(self, rounds: int | None) -> Iterator[None]:
        """Work in pieces: after each of them there may be something to tell."""
        first, *others = variants(self.task)
        yield from self._greedy(self.pricer.quick, (first,), tried=1)
        yield from self._greedy(self.pricer.quick, others)
        generator = Generator(self.task, self.pricer, self.bounds, self.keep_going)
        generator.pool.add_all(self.best.columns)
        root = generator.root(self.pricer.plain, _ROOT_ROUNDS)
        yield
        self.bounds.choose_whole(effort=_SELECTION_EFFORT, keep_going=self.keep_going)
        yield
        yield from self._greedy(self.pricer.plain, (whole(root.values),))
        self._dive(generator, self.pricer.plain, _DIVE_ROUNDS)
        yield
        if self._many_of_a_kind():
            self._pick(generator)
            yield
        yield from self._improve(generator, root, rounds)

    def _improve(self, generator: Generator, root: Relaxed, rounds: int | None) -> Iterator[None]:
        """Try what has had the least effort for its share, again and again."""
        tries = self._tries(generator, root)
        for _ in count() if rounds is None else range(rounds):
            before = self.pricer.effort
            chosen = min(tries, key=lambda each: each.effort / each.share)
            chosen.run()
            chosen.effort += self.pricer.effort - before + _EFFORT_OF_A_TRY
            yield

    def _tries(self, generator: Generator, root: Relaxed) -> list[_Try]:
        plain, deep = self.pricer.plain, self.pricer.deep
        neighbours = Neighbours(generator, self.chance)

        def near(modes: Sequence[Mode]) -> None:
            self.best.offer(neighbours.try_one(self.best.columns, root, modes) or [])

        def anew(modes: Sequence[Mode]) -> None:
            self._dive(generator, modes, int(self.chance.choice(_DIVES)), self.chance)

        sets = BoardSets(generator, self.bounds, self.chance)

        def choose(modes: Sequence[Mode]) -> None:
            best = self.best.plan.cost if self.best.complete else np.inf
            self.best.offer(sets.try_one(modes, best) or [])

        tries = [
            _Try(share, partial(run, modes))
            for modes in (plain, deep)
            if modes
            for share, run in ((_NEAR, near), (_ANEW, anew), (_SETS, choose))
        ]
        if self._many_of_a_kind():
            tries.append(_Try(_PICK, lambda: self._pick(generator)))
        if deep:
            tries.append(_Try(_DEEP_ROOT, lambda: generator.root(deep, _DEEP_ROUNDS)))
        return tries

    def _many_of_a_kind(self) -> bool:
        """Whether the same patterns come so often that choosing among the known ones pays."""
        return float(self.task.demand.mean()) >= _MANY

    def _pick(self, generator: Generator) -> None:
        """Choose the best plan from the columns that are known."""
        task = self.task
        chosen = generator.master.promising(
            generator.solve(task.demand, task.limit), generator.usable(task.demand, task.limit), _PICKED_FROM
        )
        found = generator.master.whole(
            chosen, demand=task.demand, boards=task.limit, effort=_PICK_EFFORT, keep_going=self.keep_going
        )
        self.pricer.effort += _EFFORT_OF_A_PICK
        self.best.offer(found or [])

    def _greedy(self, modes: Sequence[Mode], variants: Sequence[Floats], tried: int = 3) -> Iterator[None]:
        for values in variants:
            self.best.offer(greedy(self.pricer, modes, values, tried=tried))
            yield

    def _dive(
        self, generator: Generator, modes: Sequence[Mode], rounds: int, chance: np.random.Generator | None = None
    ) -> None:
        found = dive(generator, modes, Left(self.task.demand, self.task.limit), rounds=rounds, chance=chance)
        if found is not None:
            self.best.offer(found)
