"""Lopsided ends cut by following the sheet to the letter: both ends, both fences, either fence first."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from hypothesis import assume, given
from hypothesis import strategies as st

from planner.derive.pins import PinEnd, between, lay_out, least_socket
from planner.derive.slot import slot_of
from planner.domain.plan import Joint
from planner.domain.sled import MICRO, Sled
from planner.domain.spacing import Spacing
from planner.domain.words import EdgeName, End, Side, Spread
from planner.lengths import Nm, Span
from planner.plan.sled import sled_plan
from tests.derive.ends import MM, pin_ends, slots, spacings
from tests.oracle.sheet import cut_all_by_the_sheet
from tests.pieces import SLED, SPACING
from tests.plan.sled_batches import bare_project, pin_end


@dataclass(frozen=True)
class Board:
    """A pin board with the same pins at both ends, and the height at which both are cut."""

    width: Nm
    thickness: Nm
    pins: tuple[Span, ...]
    height: Nm


@st.composite
def sleds(draw: st.DrawFn) -> Sled:
    slot = draw(slots())
    return replace(SLED, run_micro=round(slot.slope * MICRO), bit_nm=slot.bit_nm)


@st.composite
def listed(draw: st.DrawFn, sled: Sled, thickness: Nm) -> tuple[Nm, Spacing]:
    """A width, and sockets and pins of any widths that can be cut, counted from either edge."""
    least = least_socket(PinEnd(width_nm=Nm(1), thickness_nm=thickness, slot=slot_of(sled)))
    half = at = draw(st.integers(2 * MM, 12 * MM))
    places: list[Span] = []
    for _ in range(draw(st.integers(0, 4))):
        start = Nm(at + least + draw(st.integers(0, 50 * MM)))
        at = Nm(start + draw(st.integers(MM, 15 * MM)))
        places.append((start, Nm(at)))
    width = at + least + draw(st.integers(0, 50 * MM)) + half
    spacing = replace(SPACING, half_pin_nm=Nm(half), spread=Spread.LISTED, places=tuple(places))
    return Nm(width), replace(spacing, measured_from=draw(st.sampled_from(EdgeName)))


@st.composite
def growing(draw: st.DrawFn, sled: Sled, thickness: Nm) -> tuple[Nm, Spacing]:
    """Tails that grow from either edge: the narrowest of N is at least the Nth part of what N widest would share."""
    least = least_socket(PinEnd(width_nm=Nm(1), thickness_nm=thickness, slot=slot_of(sled)))
    tails, ratio = draw(st.integers(2, 6)), Fraction(draw(st.integers(101, 300)), 100)
    spacing = replace(
        SPACING,
        half_pin_nm=Nm(draw(st.integers(2 * MM, 12 * MM))),
        pin_nm=Nm(draw(st.integers(MM, 15 * MM))),
        tails=tails,
        spread=Spread.EDGE,
        ratio=ratio,
        measured_from=draw(st.sampled_from(EdgeName)),
    )
    pins = 2 * spacing.half_pin_nm + (tails - 1) * spacing.pin_nm
    return Nm(pins + round(least * tails * ratio) + 1 + draw(st.integers(0, 100 * MM))), spacing


@st.composite
def boards(draw: st.DrawFn, sled: Sled, height: Nm) -> Board:
    thickness = Nm(draw(st.integers(6 * MM, 45 * MM)))
    width, spacing = draw(listed(sled, thickness) | growing(sled, thickness))
    pins = lay_out(PinEnd(width_nm=width, thickness_nm=thickness, slot=slot_of(sled)), spacing)
    assert pins is not None
    return Board(width, thickness, pins, height)


def both_ends(name: str, board: Board, sled: Sled) -> tuple[Joint, ...]:
    return tuple(
        replace(
            pin_end(f"{name}-{end}", name, end, board.height, sled),
            width_nm=board.width,
            pin_thickness_nm=board.thickness,
            pins=board.pins,
            tails=between(board.pins),
        )
        for end in End
    )


@given(sleds().flatmap(lambda s: st.tuples(st.just(s), boards(s, Nm(10 * MM)), boards(s, Nm(20 * MM)))))
def test_lopsided_boards_cut_by_the_sheet_keep_their_pins(case: tuple[Sled, Board, Board]) -> None:
    """The first board begins at the right fence, the second, at the next height, at the left one."""
    sled, *pair = case
    joints = tuple(
        joint for name, board in zip(("K-b1", "K-b2"), pair, strict=True) for joint in both_ends(name, board, sled)
    )
    planned = sled_plan([(bare_project("P", sleds=[sled]), joints)])
    begun = [next(at for at in planned.settings if any(c.board == name for c in at.cuts)) for name in ("K-b1", "K-b2")]
    assert [at.fence for at in begun] == [Side.RIGHT, Side.LEFT]
    assert cut_all_by_the_sheet(planned, {"P": joints}) == 4
    for at in planned.settings:
        for cut in at.cuts:
            counted = [one.socket for one in cut.passes]
            assert counted == sorted(counted)
            assert set(counted) == set(range(1, len(pair[int(cut.board[-1]) - 1].pins)))


@given(st.data())
def test_any_spacing_that_can_be_cut_is_cut_so(data: st.DataObject) -> None:
    sled = data.draw(sleds())
    end = replace(data.draw(pin_ends()), slot=slot_of(sled))
    pins = lay_out(end, data.draw(spacings(end)))
    assume(pins is not None)
    assert pins is not None
    joints = both_ends("K-b1", Board(end.width_nm, end.thickness_nm, pins, Nm(10 * MM)), sled)
    planned = sled_plan([(bare_project("P", sleds=[sled]), joints)])
    assert cut_all_by_the_sheet(planned, {"P": joints}) == 2
