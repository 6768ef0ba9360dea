"""What to buy: from the answers of the saw, or from the timber's usual sizes where no wood is known."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from planner.domain.project import Project
from planner.domain.rack import HUNDREDTHS, Lot
from planner.errors import InputError, Problem
from planner.lengths import Nm
from planner.plan.rough import RoughPart, allowances_of
from planner.plan.staves import in_staves
from planner.plan.stock_jobs import Aim, Choice, LeftOut, Share, StockJob, Stuff, worth
from planner.stock.pieces import Answer, CuttingPlan, Kind
from planner.wood.lumber import SoldSize, UsualSize, usual_size
from planner.wood.measure import amount, cents_of, least_cents

_PERCENT = 100


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """Boards of one size, taken from the rack or bought.

    Attributes:
        amount: of all of them, in what such wood is usually sold by.
        cents: to pay for all of them; nothing for what is on the rack.
    """

    choice: Choice
    count: int
    amount: Fraction
    cents: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Estimate:
    """What to ask for where no wood is known that gives it.

    Attributes:
        parts: for which it is.
        size: the boards or sheets that are reckoned with.
        net: wood in the rough parts, in what such wood is sold by.
        waste_hundredths: what is added for waste, in hundredths of a percent.
        gross: both together.
        boards: so many of that size hold as much.
        too_large: marks of the parts that no such board gives.
    """

    parts: tuple[RoughPart, ...]
    size: UsualSize
    net: Fraction
    waste_hundredths: int
    gross: Fraction
    boards: int
    too_large: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Cutting:
    """One timber in one thickness, cut from known wood.

    Attributes:
        found: what was asked.
        answer: the best plan, and what is proven.
        taken: the boards that it takes.
        extra: by lot, what the yard's least order adds to its price, in cents.
    """

    found: StockJob
    answer: Answer
    taken: tuple[Taken, ...]
    extra: Mapping[str, int]

    @property
    def cents(self) -> int:
        """To pay."""
        return sum(each.cents for each in self.taken) + sum(self.extra.values())

    @property
    def used(self) -> Fraction:
        """How much of the boards taken becomes parts or offcuts worth keeping, as a share of their area."""
        leaves = [p for each in self.answer.plan.layouts for p in each.whole.within() if p.kind is not Kind.DIVIDED]
        good = sum(p.length_nm * p.width_nm for p in leaves if p.kind is not Kind.WASTE)
        whole = sum(each.whole.length_nm * each.whole.width_nm for each in self.answer.plan.layouts)
        return Fraction(good, whole) if whole else Fraction(1)


@dataclass(frozen=True, slots=True, kw_only=True)
class Need:
    """What one timber in one thickness takes.

    Attributes:
        cutting: from known wood; None where there is none.
        to_find: what that wood doesn't give, or all of it; None where it gives everything.
    """

    stuff: Stuff
    cutting: Cutting | None
    to_find: Estimate | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Purchase:
    """All that is to be bought, or taken from the rack, for one project.

    Attributes:
        currency: the word for the money; empty where nothing has a price, or it has no word.
        left_out: wood of the right name that isn't used, and why.
    """

    aim: Aim
    needs: tuple[Need, ...]
    currency: str
    left_out: tuple[LeftOut, ...]

    @property
    def cents(self) -> int:
        """To pay, for all that is found."""
        return sum(need.cutting.cents for need in self.needs if need.cutting)


def cutting_of(found: StockJob, answer: Answer) -> Cutting:
    """What an answer takes, and what it costs, least orders included."""
    taken = _taken(found, answer.plan)
    return Cutting(found=found, answer=answer, taken=taken, extra=_extra(taken))


def _taken(found: StockJob, plan: CuttingPlan) -> tuple[Taken, ...]:
    counts = Counter(layout.board for layout in plan.layouts)
    return tuple(
        Taken(
            choice=each,
            count=counts[mark],
            amount=counts[mark]
            * amount(found.per, each.length_nm, each.width_nm, each.lot.counted_nm or each.lot.thickness_nm),
            cents=0 if each.lot.on_hand else counts[mark] * cents_of(each.lot, each.length_nm, each.width_nm),
        )
        for mark, each in found.choices.items()
        if counts[mark]
    )


def _extra(taken: Iterable[Taken]) -> dict[str, int]:
    """By lot, what is paid for nothing because less is wanted than the yard sells."""
    paid: Counter[str] = Counter()
    lots: dict[str, Lot] = {}
    for each in taken:
        lots[each.choice.lot.mark] = each.choice.lot
        paid[each.choice.lot.mark] += each.cents
    short = {mark: least_cents(lot) - paid[mark] for mark, lot in lots.items()}
    return {mark: cents for mark, cents in short.items() if cents > 0}


def better(first: Cutting, second: Cutting) -> Cutting:
    """The one with fewer parts missing, then the one that is cheaper with least orders; else the first."""

    def key(each: Cutting) -> tuple[int, int]:
        return len(each.answer.plan.missing), each.answer.plan.cost + sum(each.extra.values())

    return second if key(second) < key(first) else first


def need_of(project: Project, share: Share, cutting: Cutting | None) -> Need:
    """What one stuff takes, with an estimate of all that the wood doesn't give."""
    stuff, parts = share.stuff, share.parts
    if cutting:
        missing = set(cutting.answer.plan.missing)
        parts = tuple(part for part in cutting.found.parts if part.mark in missing)
    return Need(stuff=stuff, cutting=cutting, to_find=estimate(project, stuff, parts) if parts else None)


def estimate(project: Project, stuff: Stuff, parts: Sequence[RoughPart]) -> Estimate:
    """What to ask for: the wood in the rough parts and the maker's waste on top, by the timber's usual sizes."""
    size, allowed = usual_size(project.unit, stuff.kind), allowances_of(project, stuff.material)
    longest = size.length_nm - 2 * allowed.end_trim_nm
    widest = Nm(size.width_nm - 2 * allowed.edge_trim_nm)
    glued = tuple(each for part in parts for each in in_staves(part, project, widest))
    thickness = paid_thickness(stuff)
    net = sum((amount(size.per, each.length_nm, each.width_nm, thickness) for each in glued), start=Fraction(0))
    gross = net * (1 + Fraction(allowed.waste_hundredths, HUNDREDTHS * _PERCENT))
    return Estimate(
        parts=glued,
        size=size,
        net=net,
        waste_hundredths=allowed.waste_hundredths,
        gross=gross,
        boards=-(-gross // amount(size.per, size.length_nm, size.width_nm, thickness)),
        too_large=tuple(each.mark for each in glued if each.length_nm > longest or each.width_nm > widest),
    )


def paid_thickness(stuff: Stuff) -> Nm:
    """Thickness by which such wood is paid for."""
    sold: SoldSize | None = stuff.sold
    return sold.rough_nm if sold else stuff.least_nm


def currency_of(lots: Iterable[Lot]) -> str:
    """The one word for the money in which all these are priced.

    Raises:
        InputError: there are several.
    """
    words: dict[str, list[str]] = {}
    for lot in lots:
        if lot.price:
            words.setdefault(lot.price.currency, []).append(lot.mark)
    if len(words) > 1:
        by = "; ".join(f"{word or 'no word'}: {', '.join(marks[:5])}" for word, marks in words.items())
        what = f"is priced in several kinds of money ({by})."
        raise InputError(
            [Problem(where="the wood", what=what, remedy="Give all prices in one, and read them in again.")]
        )
    return next(iter(words), "")


def counted_cents(cutting: Cutting) -> int:
    """What the plan's boards count for, wood on the rack included; to be compared with the bound."""
    return sum(each.count * worth(each.choice) for each in cutting.taken)
