"""The buying list: what to take from the rack and what to buy, by timber and thickness."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from fractions import Fraction

from planner.domain.plan import Plan
from planner.domain.rack import HUNDREDTHS, Lot, Per
from planner.domain.words import MaterialKind
from planner.plan.purchase import Cutting, Estimate, Need, Purchase, Taken
from planner.plan.stock_jobs import Aim, Stuff
from planner.present.table import Cell, Column, Group, Kind, Table
from planner.present.views.cut_list import MEASURES
from planner.present.views.rough import stuff_words
from planner.quantities import show_money, show_percent
from planner.stock.pieces import Answer
from planner.wood.lumber import usual_size

PER_WORDS = {
    Per.PIECE: "piece",
    Per.BOARD_FOOT: "board foot",
    Per.CUBIC_METRE: "m³",
    Per.SQUARE_METRE: "m²",
    Per.SQUARE_FOOT: "ft²",
}
AMOUNTS = {measure.per: (measure.heading, measure.decimals) for measure in MEASURES.values()}
"""Heading and decimals of the amount of wood."""

PICK = (
    "Sizes of what a yard has in random sizes are the least to pick: a longer or wider board will do, and costs more."
)
NO_PRICE = "Wood on the rack without a price counts as one cent for each square decimetre, so that it isn't wasted."
MEASURE_IT = "Measure each board before you pay: thickness above all, and the width of the narrow end."
NO_RACK = "No wood is known of. List yours, and what your yard sells, and read it in: planner rack-in FILE"


def buying(plan: Plan, purchase: Purchase) -> Table:
    """A row for each kind of board to take or to buy."""
    measures = list(dict.fromkeys(usual_size(plan.project.unit, need.stuff.kind).per for need in purchase.needs))
    groups = [_group(plan, purchase, need, measures) for need in purchase.needs]
    total = show_money(purchase.cents, purchase.currency)
    cutting = any(need.cutting for need in purchase.needs)
    return Table(
        title="Buying list",
        grid=plan.project.grid,
        columns=(
            Column(heading="Got", kind=Kind.TICK),
            Column(heading="Boards", kind=Kind.COUNT, strong=True),
            Column(heading="Mark", strong=True),
            Column(heading="From"),
            Column(heading="Length", kind=Kind.LENGTH),
            Column(heading="Width", kind=Kind.LENGTH),
            Column(heading="Thickness", kind=Kind.LENGTH),
            *(
                Column(heading=AMOUNTS[per][0], kind=Kind.AMOUNT, decimals=AMOUNTS[per][1], summed=True)
                for per in measures
            ),
            Column(heading="Price"),
            Column(heading="Cost", kind=Kind.AMOUNT, decimals=2, summed=True),
        ),
        groups=tuple(groups),
        notes=(
            f"Aim: {purchase.aim}. " + (f"To pay: {total}." if cutting else NO_RACK),
            MEASURE_IT,
            *((PICK,) if _any(purchase, lambda lot: lot.random) else ()),
            *((NO_PRICE,) if _any(purchase, lambda lot: lot.price is None) else ()),
            *(f"Not used: {each.lot.mark}, {each.lot.material}. {each.why}" for each in purchase.left_out),
        ),
    )


def _any(purchase: Purchase, holds: Callable[[Lot], bool]) -> bool:
    """Whether this holds for a lot from which boards are taken."""
    return any(holds(each.choice.lot) for need in purchase.needs if need.cutting for each in need.cutting.taken)


def _group(plan: Plan, purchase: Purchase, need: Need, measures: list[Per]) -> Group:
    return Group(
        heading=stuff_words(plan, need.stuff),
        notes=tuple(_notes(purchase, need)),
        cautions=tuple(_cautions(need)),
        rows=tuple(_rows(plan, need, measures)),
    )


def _notes(purchase: Purchase, need: Need) -> Iterator[str]:
    if need.cutting:
        waste = show_percent(round((1 - need.cutting.used) * 100 * HUNDREDTHS))
        parts = _parts_word(len(need.cutting.found.parts))
        yield f"{parts}; {waste} of these boards is waste. {proven(purchase, need.cutting)}"
    if need.to_find:
        yield assumed(need.to_find)


def _parts_word(count: int) -> str:
    return f"{count} rough part{'' if count == 1 else 's'}"


def proven(purchase: Purchase, cutting: Cutting) -> str:
    """What is proven of a cutting plan, in words."""
    answer = cutting.answer
    if answer.plan.missing:
        return "This wood can't give every part." if answer.impossible else "No way was found to get every part."
    if purchase.aim is Aim.FEWEST:
        return f"{answer.plan.cost} boards; no plan takes fewer than {answer.bound}."
    cost = answer.plan.cost + sum(cutting.extra.values())
    if cost <= answer.bound:
        return "No plan is cheaper: proven."
    gap = show_percent(round(Fraction(cost - answer.bound, cost) * 100 * HUNDREDTHS))
    counts = show_money(cost, purchase.currency)
    least = show_money(answer.bound, purchase.currency)
    return f"It counts {counts}, and no plan less than {least}: at most {gap} could be saved."


def assumed(found: Estimate) -> str:
    """What an estimate rests on, in words."""
    waste = show_percent(found.waste_hundredths)
    return f"Reckoned for {found.size.said}: {_parts_word(len(found.parts))} and {waste} for waste, not a cutting plan."


def _cautions(need: Need) -> Iterator[str]:
    if need.cutting and need.cutting.answer.plan.missing:
        yield f"MISSING from this wood: {', '.join(sorted(need.cutting.answer.plan.missing))}."
    if need.cutting and need.cutting.answer.unfit:
        yield f"No board of it is large enough for: {', '.join(sorted(need.cutting.answer.unfit))}."
    if need.to_find and need.to_find.too_large:
        yield f"Ask for larger boards for: {', '.join(need.to_find.too_large)}."


def _rows(plan: Plan, need: Need, measures: list[Per]) -> Iterator[tuple[Cell, ...]]:
    own = usual_size(plan.project.unit, need.stuff.kind).per
    if need.cutting:
        for each in need.cutting.taken:
            lot = each.choice.lot
            amounts = (each.amount if per is own else None for per in measures)
            yield (
                None, each.count, each.choice.mark, lot.yard or "rack", each.choice.length_nm, each.choice.width_nm,
                lot.thickness_nm, *amounts, price_words(lot), _cost(each),
            )  # fmt: skip
        for mark, cents in need.cutting.extra.items():
            empty: tuple[Cell, ...] = (None,) * (3 + len(measures))
            yield None, None, mark, "least order", *empty, None, Fraction(cents, HUNDREDTHS)
    if need.to_find:
        found = need.to_find
        amounts = (found.gross if per is own else None for per in measures)
        thick = need.stuff.sold.rough_nm if need.stuff.sold else need.stuff.least_nm
        size = (found.size.length_nm, found.size.width_nm, thick)
        word = "sheets" if need.stuff.kind is MaterialKind.SHEET else "boards"
        yield None, found.boards, word, "to find", *size, *amounts, None, None


def _cost(each: Taken) -> Fraction | None:
    return None if each.choice.lot.on_hand else Fraction(each.cents, HUNDREDTHS)


def price_words(lot: Lot) -> str:
    """What is asked for it."""
    if lot.price is None:
        return ""
    return f"{show_money(lot.price.cents, lot.price.currency)} / {PER_WORDS[lot.price.per]}"


def progress_words(stuff: Stuff, turn: tuple[int, int], answer: Answer) -> str:
    """How far the saw has come with one timber and thickness, on a line."""
    number, of = turn
    of_stuff = f"{number} of {of}: {stuff.material} {stuff.sold.name if stuff.sold else ''}".rstrip()
    missing = f", {len(answer.plan.missing)} parts missing" if answer.plan.missing else ""
    gap = "" if answer.gap is None else f", at most {show_percent(round(answer.gap * 100 * HUNDREDTHS))} could be saved"
    return f"{of_stuff}: counts {answer.plan.cost}, no less than {answer.bound}{gap}{missing}"
