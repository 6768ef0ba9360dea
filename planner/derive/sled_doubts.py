"""Why a sled can't be built as wished, and what the maker should think over before building it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from planner.derive import sled_practice as practice
from planner.derive.sled_case import SledCase
from planner.derive.slope_range import slope_finding
from planner.derive.slot import Slot
from planner.domain.marks import reading_order
from planner.domain.plan import Finding
from planner.domain.sled_to_build import SledFence, SledRunner, UprightBoard
from planner.domain.words import Level
from planner.errors import Problem
from planner.lengths import Nm


def problems(case: SledCase, runner: SledRunner, table_needed: Nm) -> list[Problem]:
    """All reasons for a refusal."""
    found = [*_bit(case), *_mitre_slot(case, runner), *_table(case, table_needed), *_sockets(case)]
    return list(dict.fromkeys(found))


def _bit(case: SledCase) -> Iterator[Problem]:
    """The bit cuts the slot through the floor and the sockets above it, so both must fit along its cutting edges."""
    bit, floor = case.wish.bit, case.wish.floor_thickness_nm
    highest = _marks(board for board in case.boards if board.bit_height_nm == case.bit_height_nm)[0]
    for has, length, other in (
        ("cuts along", bit.cutting_length_nm, "a longer bit"),
        ("stands out of the table at most", bit.reach_nm, "a bit with a longer shank"),
    ):
        if length < case.stands_nm:
            left = length - case.bit_height_nm
            yield Problem(
                where=case.wish.name,
                what=f"The bit {has} {case.show(length)}, but the floor is {case.show(floor)} thick and "
                f"{highest} wants {case.show(case.bit_height_nm)} above it, {case.show(case.stands_nm)} in all.",
                remedy=f"Take {other}, or a floor of at most {case.show(left)}."
                if left > 0
                else f"Take {other}; no floor is thin enough.",
            )


def _mitre_slot(case: SledCase, runner: SledRunner) -> Iterator[Problem]:
    """The runner must neither meet the bit nor be too low to guide."""
    mitre = case.wish.mitre
    between = mitre.from_bit_nm - Fraction(mitre.width_nm, 2) - case.half_bit
    if between < (least := case.rule(practice.RUNNER_FROM_SLOT)):
        yield Problem(
            where=case.wish.name,
            what=f"The mitre slot lies under the cutting line or too near it: its centre is "
            f"{case.show(mitre.from_bit_nm)} from the bit's, which leaves {case.show(max(0, int(between)))} "
            f"between runner and slot; at least {case.show(least)} is wanted.",
            remedy="Measure again from the bit's centre to the mitre slot's centre line, or use another mitre slot.",
        )
    if runner.height_nm < (low := case.rule(practice.LEAST_RUNNER)):
        yield Problem(
            where=case.wish.name,
            what=f"The mitre slot is {case.show(mitre.depth_nm)} deep, so its runner would be "
            f"{case.show(max(0, runner.height_nm))} high; under {case.show(low)} it does not guide.",
            remedy="Use a deeper mitre slot.",
        )


def _table(case: SledCase, needed: Nm) -> Iterator[Problem]:
    """The sled must still lie on the table where it hangs out furthest."""
    if (table := case.wish.table_each_way_nm) < needed:
        travel = needed - case.rule(practice.BEARING)
        yield Problem(
            where=case.wish.name,
            what=f"The table reaches {case.show(table)} from the bit's centre. The middle of the sled comes as far as "
            f"{case.show(travel)} from it, and must not tip off: {case.show(needed)} is wanted each way.",
            remedy="Extend the table, or give the widest, thickest or longest boards to another sled.",
        )


def _sockets(case: SledCase) -> Iterator[Problem]:
    """Sockets that were laid out before the sled must let its bit in."""
    slot = Slot(slope=case.slope, bit_nm=case.wish.bit.diameter_nm)
    for board in case.boards:
        if (socket := board.narrowest_socket_nm) is None:
            continue
        inside = socket - 2 * slot.lean_nm(board.thickness_nm)
        if inside < slot.needs_nm:
            yield Problem(
                where=board.mark,
                what=f"Its narrowest socket is {case.show(socket)} outside and {case.show(max(0, inside))} inside; "
                f"a bit of {case.show(slot.bit_nm)} cuts a slot of {case.show(slot.needs_nm)}.",
                remedy="Take a thinner bit, or lay out fewer tails.",
            )


# --- what to think over ------------------------------------------------------------------------------------


def findings(case: SledCase, fence: SledFence) -> Iterator[Finding]:
    """Doubts about a sled that can be built; but for the slope, all common practice, no source."""
    unusual = slope_finding(case.wish.name, case.slope)
    if unusual:
        yield unusual
    yield from _weak_parts(case, fence)
    yield from _boards_hard_to_hold(case, fence)


def _weak_parts(case: SledCase, fence: SledFence) -> Iterator[Finding]:
    bit = case.wish.bit.diameter_nm
    for code, what, has, least, remedy in (
        ("thin-floor", "The floor is", case.wish.floor_thickness_nm, practice.LEAST_FLOOR, "Take a thicker floor."),
        ("thin-fence", "The fences are", fence.thickness_nm, practice.LEAST_FENCE, "Take thicker fences."),
        ("thin-bit", "The bit is", bit, practice.LEAST_BIT, "Take a thicker bit, if the sockets allow it."),
    ):
        if has < (wanted := case.rule(least)):
            text = f"{what} {case.show(has)} thick; under {case.show(wanted)} it bends."
            yield _caution(case, code, text, remedy)
    if case.stands_nm > practice.BIT_STICKS_OUT * bit:
        yield _caution(
            case,
            "slender-bit",
            f"The bit stands {case.show(case.stands_nm)} out of the table, over {practice.BIT_STICKS_OUT} times its "
            f"{case.show(bit)}: it chatters and bends sideways.",
            "Take a thicker bit or a thinner floor, and cut in several depths.",
        )


def _boards_hard_to_hold(case: SledCase, fence: SledFence) -> Iterator[Finding]:
    held = practice.UPRIGHT_PER_FENCE * fence.height_nm
    if tall := _marks(board for board in case.boards if board.length_nm > held):
        yield _caution(
            case,
            "tall-board",
            f"A board {case.show(case.length_nm)} tall stands against a fence {case.show(fence.height_nm)} high, less "
            f"than 1/{practice.UPRIGHT_PER_FENCE} of that: a push at its top bears "
            f"{float(Fraction(case.length_nm, fence.height_nm)):.2f} times as hard on the clamps.",
            "Fix a post behind the fence and clamp the board to it high up, with a helper beside you; or let the other "
            "pair carry the pins.",
            tall,
        )
    grip = case.rule(practice.ABOVE_CUT)
    if short := [board for board in case.boards if board.length_nm < board.bit_height_nm + grip]:
        worst = min(short, key=lambda board: (board.length_nm - board.bit_height_nm, reading_order(board.mark)))
        yield _caution(
            case,
            "short-board",
            f"{worst.mark} is {case.show(worst.length_nm)} long; a clamp above the cut wants "
            f"{case.show(worst.bit_height_nm + grip)}.",
            "Cut such pins by hand, or let the other pair carry them.",
            _marks(short),
        )


def _marks(boards: Iterable[UprightBoard]) -> tuple[str, ...]:
    return tuple(sorted({board.mark for board in boards}, key=reading_order))


def _caution(case: SledCase, code: str, text: str, remedy: str, marks: tuple[str, ...] = ()) -> Finding:
    return Finding(code=code, level=Level.CAUTION, marks=marks or (case.wish.name,), text=text, remedy=remedy)
