"""Find cutting plans: the one way in. Each answer is proven sound before anybody sees it."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from planner.stock.pieces import Answer, Job
from planner.stock.proof import must_be_sound
from planner.stock.sound import must_make_sense


def cut(
    job: Job, *, keep_going: Callable[[], bool] = lambda: True, seed: int = 0, rounds: int | None = None
) -> Iterator[Answer]:
    """Ever better answers to a job: plan and bound. The first comes at once, the last is the best.

    Whoever asks may stop listening at any time. Without a limit of rounds the search goes on until the plan is proven
    to be the best, or ``keep_going`` says no.

    Args:
        job: what to cut, from what.
        keep_going: asked often, from inside the search; the clock and the cancel button are its business.
        seed: of all that is left to chance. The same seed and number of rounds give the same answers.
        rounds: of improvement after the first good plan, at most; None for as many as there is time for.

    Raises:
        InputError: the job makes no sense.
        UnsoundPlanError: a bug of ours; the plan is not handed out.
    """
    must_make_sense(job)
    # numpy and HiGHS take longer to load than most commands run.
    from planner.stock.solver.search import answers

    checked = None
    for answer in answers(job, keep_going=keep_going, seed=seed, rounds=rounds):
        if answer.plan != checked:
            must_be_sound(job, answer.plan)
            checked = answer.plan
        yield answer
