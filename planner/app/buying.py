"""What to buy for a stored project, and how to cut it: the wood is looked up, the saw is asked as long as may be."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from planner.app.outputs import placed
from planner.app.plans import must_be_workbook, plan_of
from planner.app.rack import on_the_rack
from planner.app.store_place import StorePlace
from planner.domain.plan import Plan
from planner.domain.rack import Lot
from planner.plan.matched import matched
from planner.plan.purchase import Cutting, Purchase, better, currency_of, cutting_of, need_of
from planner.plan.rough import RoughPart
from planner.plan.stock_jobs import Aim, StockJob, Stuff, share_out, stock_job, without
from planner.stock.pieces import Answer

USUAL_ROUNDS = 3
"""Rounds of improvement for each timber and thickness where no time is said."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Effort:
    """How hard to look.

    Attributes:
        seconds: for all together; None looks a fixed number of rounds, which gives the same answer every time.
        rounds: that number.
    """

    seconds: float | None = None
    rounds: int = USUAL_ROUNDS


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """The best plan so far of one timber and thickness."""

    stuff: Stuff
    number: int
    of: int
    answer: Answer


Hear = Callable[[Progress], None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Bought:
    """What to buy for a project, with its plan."""

    plan: Plan
    purchase: Purchase


def buy(name: str | None, aim: Aim, effort: Effort, store: StorePlace, hear: Hear) -> Bought:
    """What to buy for a stored project.

    A cancel (KeyboardInterrupt) keeps the best plans so far.

    Args:
        name: of the project; None takes the only one.
        aim: what is kept lowest.
        effort: how hard to look.
        store: where project and rack are.
        hear: is told of each better plan.

    Raises:
        InputError: no such project, or prices in several kinds of money.
        PlanError: no plan can be built from it.
    """
    plan = plan_of(name, store)
    return Bought(plan=plan, purchase=_Buyer(effort, hear).purchase(plan, aim, on_the_rack(store)))


def write_workbook(path: Path, bought: Bought, *, force: bool) -> None:
    """Write buying list, rough sizes and saw cuts as a workbook.

    Raises:
        InputError: the place is taken or is no place for a workbook.
    """
    from planner.present.views.buying import buying
    from planner.present.views.rough import rough
    from planner.present.views.saw_cuts import saw_cuts
    from planner.present.workbook import workbook_of

    must_be_workbook(path)
    plan = bought.plan
    tables = (buying(plan, bought.purchase), rough(plan), saw_cuts(plan, bought.purchase))
    with placed({path: workbook_of(plan.project.name, tables)}, force=force):
        return


class _Buyer:
    """Asks the saw for one timber and thickness after the other, each with its share of the time."""

    def __init__(self, effort: Effort, hear: Hear) -> None:
        self.effort, self.hear = effort, hear
        self.ends = None if effort.seconds is None else time.monotonic() + effort.seconds
        self.cancelled = False

    def purchase(self, plan: Plan, aim: Aim, known: Iterable[Lot]) -> Purchase:
        lots = [lot for lot in known if lot.on_hand or aim is not Aim.ON_HAND]
        shares, left_out = share_out(plan, lots)
        currency = currency_of({lot.mark: lot for share in shares for lot in share.lots}.values())
        jobs = [stock_job(plan.project, share, aim) for share in shares if share.lots]
        cuttings = {
            found.stuff: self._cutting(found, number, len(jobs)) for number, found in enumerate(jobs) if found.choices
        }
        needs = tuple(need_of(plan.project, share, cuttings.get(share.stuff)) for share in shares)
        return Purchase(aim=aim, needs=needs, currency=currency, left_out=left_out)

    def _cutting(self, found: StockJob, number: int, of: int) -> Cutting:
        """The best plan; where a least order makes it dear, also one without that lot."""
        until = self._until(of - number)
        answer = self._answer(found, number, of, until)
        best = cutting_of(found, answer)
        if best.extra:
            rest = without(found, best.extra)
            if rest.choices:
                other = self._answer(rest, number, of, until)
                # what is proven holds for all the wood
                best = better(best, cutting_of(rest, replace(other, bound=min(answer.bound, other.bound))))
        return best

    def _until(self, jobs_left: int) -> float | None:
        if self.ends is None:
            return None
        now = time.monotonic()
        return now + max(0.0, self.ends - now) / jobs_left

    def _answer(self, found: StockJob, number: int, of: int, until: float | None) -> Answer:
        from planner.stock.cutting import cut

        def keep_going() -> bool:
            return not self.cancelled and (until is None or time.monotonic() < until)

        best: Answer | None = None
        rounds = self.effort.rounds if until is None else None
        answers = cut(found.job, keep_going=keep_going, rounds=rounds)
        while True:
            try:
                for best in answers:
                    self.hear(Progress(stuff=found.stuff, number=number + 1, of=of, answer=best))
                break
            except KeyboardInterrupt:
                self.cancelled = True
                if best is not None:
                    break
                answers = cut(found.job, keep_going=keep_going, rounds=rounds)
        if best is None:
            raise RuntimeError("the saw gave no answer")
        return replace(best, plan=matched(found.job, best.plan, _panels(found.parts)))


def _panels(parts: Sequence[RoughPart]) -> dict[str, str]:
    """By the mark of a stave, the mark of its panel."""
    return {part.mark: part.board for part in parts if part.mark != part.board and part.board}
