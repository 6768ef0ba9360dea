"""What to buy and how to cut it as plain JSON values; money in whole cents, lengths in millimetres."""

from __future__ import annotations

from typing import Any

from planner.domain.plan import Plan
from planner.domain.rack import HUNDREDTHS, Lot
from planner.lengths import Span, mm
from planner.plan.purchase import Cutting, Estimate, Need, Purchase
from planner.plan.rough import RoughPart
from planner.plan.saw_cuts import SawSetting, saw_settings
from planner.plan.staves import in_staves
from planner.plan.stock_jobs import Stuff, by_stuff
from planner.stock.pieces import Layout, Piece

Json = dict[str, Any]


def rack_json(lots: tuple[Lot, ...]) -> list[Json]:
    """All wood that is known of."""
    return [_lot(lot) for lot in lots]


def _lot(lot: Lot) -> Json:
    price = lot.price
    return {
        "mark": lot.mark,
        "yard": lot.yard,
        "material": lot.material,
        "length_mm": [mm(lot.shortest_nm), mm(lot.longest_nm)],
        "width_mm": [mm(lot.narrowest_nm), mm(lot.widest_nm)],
        "thickness_mm": mm(lot.thickness_nm),
        "counted_mm": None if lot.counted_nm is None else mm(lot.counted_nm),
        "surfaced": lot.surfaced.value,
        "count": lot.count,
        "price_cents": price and price.cents,
        "per": price and price.per.value,
        "currency": price and price.currency,
        "least": None if lot.least_hundredths is None else lot.least_hundredths / HUNDREDTHS,
        "defects_mm": [{"along": _span(each.along), "across": _span(each.across)} for each in lot.flaws],
        "remark": lot.remark,
    }


def _span(span: Span) -> list[float]:
    return [mm(place) for place in span]


def rough_json(plan: Plan) -> list[Json]:
    """Rough sizes, by timber and thickness."""
    return [
        _stuff(stuff) | {"parts": [_part(each) for part in parts for each in in_staves(part, plan.project, None)]}
        for stuff, parts in by_stuff(plan).items()
    ]


def _stuff(stuff: Stuff) -> Json:
    return {
        "material": stuff.material,
        "kind": stuff.kind.value,
        "sold": stuff.sold and stuff.sold.name,
        "finished_thickness_mm": mm(stuff.finished_nm),
        "least_rough_thickness_mm": mm(stuff.least_nm),
    }


def _part(part: RoughPart) -> Json:
    return {
        "mark": part.mark,
        "board": part.board,
        "use": part.use.value,
        "length_mm": mm(part.length_nm),
        "width_mm": mm(part.width_nm),
        "finished_mm": [mm(size) for size in part.finished],
        "may_turn": part.may_turn,
    }


def buying_json(purchase: Purchase) -> Json:
    """What to buy, with the cutting plan and its saw cuts."""
    return {
        "aim": purchase.aim.value,
        "currency": purchase.currency,
        "to_pay_cents": purchase.cents,
        "needs": [_need(need) for need in purchase.needs],
        "not_used": [{"mark": each.lot.mark, "why": each.why} for each in purchase.left_out],
    }


def _need(need: Need) -> Json:
    return _stuff(need.stuff) | {
        "cutting": need.cutting and _cutting(need.cutting),
        "to_find": need.to_find and _estimate(need.to_find),
    }


def _cutting(cutting: Cutting) -> Json:
    answer, plan = cutting.answer, cutting.answer.plan
    return {
        "boards": [
            {
                "mark": each.choice.mark,
                "lot": each.choice.lot.mark,
                "yard": each.choice.lot.yard,
                "quantity": each.count,
                "length_mm": mm(each.choice.length_nm),
                "width_mm": mm(each.choice.width_nm),
                "thickness_mm": mm(each.choice.lot.thickness_nm),
                "amount": float(each.amount),
                "measure": cutting.found.per.value,
                "cost_cents": each.cents,
            }
            for each in cutting.taken
        ],
        "least_order_cents": dict(cutting.extra),
        "counts": plan.cost,
        "bound": answer.bound,
        "gap": None if answer.gap is None else float(answer.gap),
        "proven": answer.proven and not cutting.extra,
        "waste": float(1 - cutting.used),
        "missing": sorted(plan.missing),
        "impossible": answer.impossible,
        "parts": [_part(part) for part in cutting.found.parts],
        "layouts": [_layout(layout) for layout in plan.layouts],
        "saw": [_setting(each) for each in saw_settings(plan)],
    }


def _layout(layout: Layout) -> Json:
    return {"board": layout.board, "number": layout.number, "whole": _piece(layout.whole)}


def _piece(piece: Piece) -> Json:
    return {
        "kind": piece.kind.value,
        "mark": piece.mark,
        "turned": piece.turned,
        "along_mm": _span(piece.along),
        "across_mm": _span(piece.across),
        "cut": piece.cut and piece.cut.value,
        "stage": piece.stage,
        "pieces": [_piece(each) for each in piece.pieces],
    }


def _setting(each: SawSetting) -> Json:
    return {
        "number": each.number,
        "stage": each.stage,
        "way": each.way.value,
        "size_mm": None if each.size_nm is None else mm(each.size_nm),
        "cuts": [
            {
                "from": cut.of,
                "begins_at_mm": mm(cut.place_nm),
                "gives": cut.gives,
                "kind": cut.kind.value,
                "length_mm": mm(cut.length_nm),
                "width_mm": mm(cut.width_nm),
                "turned": cut.turned,
            }
            for cut in each.cuts
        ],
    }


def _estimate(found: Estimate) -> Json:
    return {
        "assumed": found.size.said,
        "parts": [part.mark for part in found.parts],
        "net": float(found.net),
        "waste_percent": found.waste_hundredths / HUNDREDTHS,
        "amount": float(found.gross),
        "measure": found.size.per.value,
        "boards": found.boards,
        "length_mm": mm(found.size.length_nm),
        "width_mm": mm(found.size.width_nm),
        "too_large": list(found.too_large),
    }
