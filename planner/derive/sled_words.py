"""How a sled is built, set and used, in plain words.

Common practice, no source, but for the sides and figures, which follow from the geometry.
"""

from __future__ import annotations

from planner.derive import sled_practice as practice
from planner.derive.sled_case import SledCase
from planner.domain.sled_to_build import FenceAngle, SledFence, SledFloor
from planner.lengths import Nm


def how_to_set(
    case: SledCase, floor: SledFloor, fences: tuple[SledFence, SledFence], angle: FenceAngle
) -> tuple[str, ...]:
    """Building and setting, in order."""
    right, left = fences
    return (
        _runner(case),
        f"Draw the middle line across, square to the runner, {case.show(floor.middle_to_end_nm)} from each end.",
        _slot(case, floor),
        _place(case, right, angle),
        _place(case, left, angle),
        _square(case, angle),
        _guards(),
        _test_cut(case, angle),
    )


def _runner(case: SledCase) -> str:
    mitre = case.wish.mitre
    return (
        "Near end is where you stand for the right fence. Plane the runner until it slides in the mitre slot without "
        f"play, and fix it under the floor, along it, its centre line {case.show(mitre.from_bit_nm)} to the "
        f"{mitre.side} of where the slot will come, seen from the near end."
    )


def _slot(case: SledCase, floor: SledFloor) -> str:
    return (
        f"Stop the travel at both ends where the bit's centre is {case.show(floor.middle_to_stop_nm)} from the middle "
        "line. Cut the slot from stop to stop, from a bored hole on the middle line, raising the bit a little at a "
        "time. Everything across the sled is measured from this slot."
    )


def _place(case: SledCase, fence: SledFence, angle: FenceAngle) -> str:
    return (
        f"{fence.side.capitalize()} fence, by the {fence.stands_at} end: its face looks to the middle and crosses the "
        f"centre of the slot {case.show(fence.face_from_middle_nm)} from the middle line. It reaches "
        f"{case.show(fence.reach_nm)} to each side. Seen from the {fence.operator_at} end, its {fence.end_towards} end "
        f"comes towards you {case.show(angle.rise_nm)} over {case.show(angle.run_nm)}, {angle.degrees:.2f}° off square."
    )


def _square(case: SledCase, angle: FenceAngle) -> str:
    return (
        "Check each fence with a straight strip that fits the slot, a square against it and a straightedge along the "
        f"fence: over {case.show(angle.run_nm)} along the square the fence comes {case.show(angle.rise_nm)} towards "
        "its operator. Fix one end, swing the other, then fix that too; no screw in the bit's way."
    )


def _guards() -> str:
    return (
        "Fix a guard over the slot behind each fence, its end cut to the fence. Then cut from the middle line through "
        "each fence and into its guard, up to the stop, raising the bit a little at a time."
    )


def _test_cut(case: SledCase, angle: FenceAngle) -> str:
    lean = case.show(angle.lean_nm)
    return (
        f"Test: clamp an offcut {case.show(case.thickness_nm)} thick to each fence, outside face to you, and cut one "
        f"slot. Seen from the outside face, at the right fence the slot must lie {lean} further left on the inside "
        f"face, at the left fence {lean} further right. If it leans too much, the fence stands too far off square; if "
        "too little, not far enough."
    )


def keep_clear(case: SledCase, floor: SledFloor) -> tuple[str, ...]:
    """What the operator keeps clear of; the machines' manuals come first."""
    return (
        "Follow the manuals of router, table and bit; they come before anything here. Wear eye and hearing protection.",
        "Take the table's own fence off. Line up and clamp with the router switched off.",
        "Clamp the board to the fence above the cut and set a stop block beside it: the bit pushes it sideways.",
        _draw(case),
        _zone(case, floor),
        "At the stop the bit is inside the guard: switch off there, and loosen the clamps when it stands still.",
        "Bring the sled back to the middle line with the router off.",
        _climb(),
        "Never turn, lift or shift a board against the running bit, and never trap it between bit and fence.",
        "Cut a tall slot in several depths if the bit labours.",
    )


def _draw(case: SledCase) -> str:
    return (
        "Begin with the bit over the middle line, clear of all wood. Hold the fence nearest you, each hand at least "
        f"{case.show(case.rule(practice.HANDS))} from the slot, stand beside the slot's line, and draw the sled "
        "towards you: the bit goes in at the outside face and comes out through the fence into the guard."
    )


def _zone(case: SledCase, floor: SledFloor) -> str:
    return (
        f"Keep everyone and everything {case.show(case.rule(practice.HANDS))} away from the slot's line behind the "
        "fence in use, on the sled and beyond its end: there the bit comes out. Keep "
        f"{case.show(Nm(floor.middle_to_stop_nm + floor.middle_to_end_nm))} of room from the bit to either end: so far "
        "the sled comes out."
    )


def _climb() -> str:
    return (
        "A router bit in a table turns anticlockwise seen from above. Where only its left side cuts, as you stand, it "
        "drags the sled towards you: hold it back, and take thin cuts."
    )
