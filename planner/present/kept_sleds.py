"""The store's sleds in words and as plain data, and what another measure of one does to a project."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from planner.domain.plan import SledTally
from planner.domain.sled import Sled
from planner.lengths import Nm, Unit, mm, write_length
from planner.present.views.joints import slope_words
from planner.present.views.sled_savings import hours

Json = dict[str, Any]


def sled_in_words(sled: Sled, unit: Unit) -> tuple[str, ...]:
    """All that was measured on a sled: what shapes the pins, then its limits."""

    def said(length: Nm) -> str:
        return write_length(length, unit)

    slot = "slot as wide as the bit" if sled.slot_nm is None else f"slot {said(sled.slot_nm)}"
    at_once = [
        f"{said(depth)} in {wood} wood"
        for wood, depth in (("soft", sled.greatest_depth_soft_nm), ("hard", sled.greatest_depth_hard_nm))
        if depth is not None
    ]
    boards = f"boards up to {said(sled.greatest_width_nm)} wide, {said(sled.greatest_upright_nm)} long on end"
    return (
        f"slope {slope_words(sled.slope)}, bit {said(sled.bit_nm)}, {slot}",
        f"bit up to {said(sled.greatest_bit_height_nm)} high; {boards}",
        *([f"at once up to {', '.join(at_once)}"] if at_once else []),
    )


def sled_json(sled: Sled, projects: Sequence[str]) -> Json:
    """A kept sled; null where nothing was said."""
    lengths = {
        "bit_mm": sled.bit_nm,
        "slot_mm": sled.slot_nm,
        "greatest_bit_height_mm": sled.greatest_bit_height_nm,
        "greatest_width_mm": sled.greatest_width_nm,
        "greatest_upright_mm": sled.greatest_upright_nm,
        "greatest_depth_soft_mm": sled.greatest_depth_soft_nm,
        "greatest_depth_hard_mm": sled.greatest_depth_hard_nm,
    }
    told = {key: None if length is None else mm(length) for key, length in lengths.items()}
    return {"name": sled.name, "slope": float(sled.slope), **told, "projects": list(projects)}


def effect_in_words(before: SledTally | None, after: SledTally | None, *, new_pins: int, new_marks: int) -> str:
    """What another measure does to a project, in a line."""
    if after is None:
        return "no plan could be built before, and none can now."
    if before is None:
        return "can be built now, and could not before."
    pins = f"; other pins at {_count(new_pins, 'joint')}" if new_pins else ""
    return f"{'; '.join(_pairs(before, after))}; new marks at {_count(new_marks, 'end')}{pins}."


def _pairs(before: SledTally, after: SledTally) -> Iterator[str]:
    counts = (
        ("settings", str(before.settings), str(after.settings)),
        ("changes", str(before.changes), str(after.changes)),
        ("passes", str(before.passes), str(after.passes)),
        ("about", hours(before.estimate_s), hours(after.estimate_s)),
    )
    yield from (f"{what} {now}" + ("" if was == now else f", before {was}") for what, was, now in counts)


def _count(number: int, what: str) -> str:
    return f"{number} {what}{'' if number == 1 else 's'}"
