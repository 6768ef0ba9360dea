"""A lid sawn off its box: pins by hand, by brute force and as polygons; the panel and the saw line in space."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import box as rectangle
from shapely.ops import unary_union

from planner.derive.assembly import assembly
from planner.derive.cuts import features
from planner.derive.joints import joints
from planner.derive.parts import Item
from planner.derive.passes import clear_socket
from planner.derive.pins import MOST_TAILS, PinEnd, between, lay_out
from planner.derive.sawn_lids import sawn_sizes
from planner.derive.sawn_pins import SawnEnd
from planner.derive.slot import Slot
from planner.domain.bottom import BottomPanel
from planner.domain.box import Box, SawnLid
from planner.domain.plan import BoardSize, Feature, Joint
from planner.domain.ring import Corner, with_rabbets
from planner.domain.spacing import Spacing
from planner.domain.words import EdgeName, FeatureKind, Held, Spread, Surface
from planner.errors import PlanError
from planner.lengths import Grid, Nm, Span
from tests.derive import ends
from tests.derive.metric import (
    CHEST,
    SPACING,
    block,
    clashes,
    cut_in,
    empty_seats,
    mm,
    oak,
    placed,
    ply,
    project,
    with_spacing,
)
from tests.oracle.sled_polygons import EndGrain, what_stays

MM = 1_000_000

TOP = BottomPanel(stuff=ply(6), groove_depth_nm=mm(6), up_nm=None, play_nm=mm(1))
BOTTOM = BottomPanel(stuff=ply(6), groove_depth_nm=mm(6), up_nm=mm(9), play_nm=mm(1))
LID = SawnLid(top=TOP, height_nm=mm(60), kerf_nm=mm(3))
CASKET = replace(CHEST, title="casket", length_nm=mm(300), width_nm=mm(200), height_nm=mm(250), bottom=BOTTOM, lid=LID)
"""300 × 200 × 250 closed, of 18 mm stuff: sawn from 187 to 190 up, so the box is 187 high and the lid 60."""

BY_HAND = (
    (0, 6),
    (30.166667, 36.166667),
    (60.333333, 66.333333),
    (90.5, 96.5),
    (120.666667, 126.666667),
    (150.833333, 156.833333),
    (181, 196),
    (217, 223),
    (244, 250),
)
"""1:8, bit 8 mm, T 18: the slot takes 8·√(1 + 1/64) = 8.062, a pin gains 2.25 a side; least socket 12.562 outside.

Box, 187: n tails are (175 − 6(n − 1))/n wide. Over 45 up to 3; 4: 39.25, 5 passes each, 20 in all; 5: 30.2, 20; 6:
24.17, 3 each, 18; 7: 21; 8: 24; 9: 14.1, 2 each, 18; 10 can't be cut. Of 6 and 9, 6 is nearer the wish of 25. Lid,
60: 1 tail is 48, over 45; 2 are 21; 3 are 12, which can't be cut. So 6 below and 2 above, and the pin at the saw
line is 6 + 3 + 6 wide.
"""


def put_together(box: Box) -> tuple[list[Item], dict[str, BoardSize]]:
    """All that a box is put together from."""
    made = assembly(project(boxes=(box,)))
    return [*made.boards.values(), *made.let_in, *made.shapes], made.boards


def corners_of(box: Box) -> tuple[Joint, ...]:
    return joints(project(boxes=(box,)), put_together(box)[1])


def cuts_of(box: Box) -> tuple[Feature, ...]:
    said = project(boxes=(box,))
    return features(said, assembly(said), {joint.mark: joint for joint in corners_of(box)})


def refused(box: Box) -> list[str]:
    with pytest.raises(PlanError) as refusal:
        corners_of(box)
    return [str(problem) for problem in refusal.value.problems]


def in_mm(spans: Sequence[Span]) -> list[Any]:
    return [pytest.approx((a / MM, b / MM), abs=2e-6) for a, b in spans]


# --- the pins ------------------------------------------------------------------------------------------------


def test_a_sawn_box_laid_out_by_hand() -> None:
    for joint in corners_of(CASKET):
        assert in_mm(joint.pins) == list(BY_HAND)
        assert joint.pins[6] == (mm(181), mm(196))


def test_the_same_box_without_a_saw_line_has_no_such_pin() -> None:
    items, boards = put_together(CASKET)
    assert items
    whole = joints(project(boxes=(replace(CASKET, lid=None),)), boards)
    assert all(not (a <= mm(181) and mm(196) <= b) for joint in whole for a, b in joint.pins)


def test_tails_that_are_counted_are_shared_so_that_they_are_nearly_as_wide() -> None:
    """Eight: 7 below and 1 above are 19.9 and 48 wide, 6 and 2 are 24.2 and 21: so 6 and 2.

    Six: 5 and 1 are 30.2 and 48, so 17.8 apart; 4 and 2 are 39.25 and 21, so 18.25 apart.
    """
    eight = with_spacing(CASKET, replace(SPACING, tails=8))
    assert in_mm(corners_of(eight)[0].pins) == list(BY_HAND)
    six = corners_of(with_spacing(CASKET, replace(SPACING, tails=6)))[0]
    assert [sum(a >= mm(190) for a, _ in six.tails), len(six.tails)] == [1, 6]


def test_graduated_tails_are_graduated_in_box_and_lid_by_themselves() -> None:
    """Seven tails: 5 + 2 are 30.2 and 21 on average. Five, 1 : 1.5 : 2 : 1.5 : 1 of 175 − 24 = 151; two, 21 each.

    Growing to one edge by 1 : 2, the five are 4 : 5 : 6 : 7 : 8 of 151; the two 14 and 28, from the saw line up.
    """
    seven = replace(SPACING, tails=7, ratio=Fraction(2))
    middle = corners_of(with_spacing(CASKET, replace(seven, spread=Spread.MIDDLE)))[0]
    by_hand = [151 / 7, 226.5 / 7, 302 / 7, 226.5 / 7, 151 / 7, 21, 21]
    assert [(b - a) / MM for a, b in middle.tails] == pytest.approx(by_hand, abs=2e-6)
    edge = corners_of(with_spacing(CASKET, replace(seven, spread=Spread.EDGE)))[0]
    by_hand = [151 * share / 30 for share in (4, 5, 6, 7, 8)] + [14, 28]
    assert [(b - a) / MM for a, b in edge.tails] == pytest.approx(by_hand, abs=2e-6)


LISTED = replace(
    SPACING,
    spread=Spread.LISTED,
    places=((mm(60), mm(66)), (mm(120), mm(126)), (mm(181), mm(196)), (mm(217), mm(223))),
)


def test_listed_pins_stay_where_they_are_listed_when_one_holds_the_saw_line() -> None:
    assert in_mm(corners_of(with_spacing(CASKET, LISTED))[0].pins) == [
        (0, 6),
        (60, 66),
        (120, 126),
        (181, 196),
        (217, 223),
        (244, 250),
    ]
    far = replace(LISTED, places=((mm(54), mm(69)),), measured_from=EdgeName.FAR)
    assert corners_of(with_spacing(CASKET, far))[0].pins[1] == (mm(181), mm(196))


@pytest.mark.parametrize(
    ("spacing", "said"),
    [
        (
            replace(LISTED, places=((mm(182), mm(196)),)),
            (
                "no listed pin holds the saw line, 187.0 to 190.0 mm from the reference edge, and a half-pin on each "
                "side of it. List a pin from 181.0 to 196.0 mm or wider, clear of its neighbours."
            ),
        ),
        (
            replace(LISTED, places=((mm(54), mm(68)),), measured_from=EdgeName.FAR),
            (
                "no listed pin holds the saw line, 60.0 to 63.0 mm from the far edge, and a half-pin on each side of "
                "it. List a pin from 54.0 to 69.0 mm or wider, clear of its neighbours."
            ),
        ),
        (
            replace(LISTED, places=((mm(100), mm(106)), (mm(110), mm(116)))),
            (
                "3 tails on a board 250.0 mm wide: the pins overlap on the inside face. Sockets are 4.0 mm outside, "
                "and the slope takes 4.5 mm of that over the thickness of 18.0 mm. List a pin from 181.0 to 196.0 mm"
            ),
        ),
        (
            replace(SPACING, tails=1),
            (
                "1 tail can't be shared out: the box takes 1 to 9 below the saw line, the lid 1 to 2 above it. "
                "Ask for 2 to 11 tails, or leave the number to the planner."
            ),
        ),
        (replace(SPACING, tails=12), "12 tails can't be shared out: the box takes 1 to 9"),
    ],
)
def test_pins_that_do_not_suit_the_saw_line_are_refused(spacing: Spacing, said: str) -> None:
    (told,) = refused(with_spacing(CASKET, spacing))
    assert told.startswith(f"K-J1, K-J2 and 2 more: {said}")


def test_the_count_that_is_offered_can_be_had() -> None:
    eleven = corners_of(with_spacing(CASKET, replace(SPACING, tails=11)))[0]
    assert len(eleven.tails) == 11


@pytest.mark.parametrize(
    ("lid", "said"),
    [
        (
            20,
            (
                "the lid can't be laid out, 20.0 mm high beside the saw line: 1 tail on a board 20.0 mm wide: the "
                "narrowest socket is 8.0 mm outside and 3.5 mm inside, narrower than the slot of the bit, ~8.1 mm. "
                "Make the lid at least 24.6 mm high, or take narrower half-pins or a finer bit."
            ),
        ),
        (230, "the box can't be laid out, 17.0 mm high beside the saw line"),
    ],
)
def test_the_part_that_cannot_be_laid_out_is_named(lid: float, said: str) -> None:
    """One tail between half-pins of 6 wants 12 + 12.562 = 24.562 mm, 24.6 to be on the safe side."""
    end = PinEnd(width_nm=mm(250), thickness_nm=mm(18), slot=Slot(slope=Fraction(8), bit_nm=mm(8)))
    kerf = (mm(250 - lid - 3), mm(250 - lid))
    sawn = SawnEnd(end, SPACING, kerf)
    assert sawn.lay_out() is None
    (problem,) = sawn.problems(Grid.MM_TENTH, where="K-J1")
    assert str(problem).startswith(f"K-J1: {said}")
    assert SawnEnd(end, SPACING, (mm(222.4), mm(225.4))).lay_out()
    assert SawnEnd(end, SPACING, (mm(222.5), mm(225.5))).lay_out() is None


def test_a_corner_with_pins_of_its_own_is_laid_out_for_the_saw_too() -> None:
    first, *others = CASKET.ring.corners
    own: tuple[Corner, ...] = (replace(first, spacing=replace(SPACING, tails=4)), *others)
    ring = replace(CASKET.ring, corners=own)  # type: ignore[arg-type]
    one, other = corners_of(replace(CASKET, ring=ring))[:2]
    assert len(one.tails) == 4
    assert len(other.tails) == 8
    assert (mm(181), mm(196)) in one.pins


# --- in space ------------------------------------------------------------------------------------------------


def test_the_saw_line_goes_round_all_four_boards() -> None:
    """300 and 200 long with 0.4 proud at both ends; right through the thickness of 18, from 187 to 190 up."""
    cuts = cuts_of(CASKET)
    for role, length in (("front", 300.8), ("right", 200.8), ("back", 300.8), ("left", 200.8)):
        line = cut_in(cuts, f"K-{role}")
        assert (line.kind, line.face) == (FeatureKind.SAW_LINE, Surface.OUTSIDE)
        assert (line.x, line.u, line.y) == ((mm(0), mm(length)), (mm(187), mm(190)), (mm(0), mm(18)))


def test_the_top_by_hand() -> None:
    """The half-pin of 6 gains 18/8 = 2.25 inside, so the groove is 8.3 down: 250 − 8.3 − 6 = 235.7 to 241.7.

    Room in the grooves 12 to 288 and 12 to 188; 1 of play: 275 × 175. On the sides, which carry the pins, the
    highest socket is 223 + 2.25 to 244 − 2.25 inside, so the groove runs out there. On front and back it stops 18
    + 0.4 − 6 from the ends.
    """
    _, boards = put_together(CASKET)
    top = boards["K-toppanel"]
    assert top.place == block((12.5, 287.5), (12.5, 187.5), (235.7, 241.7))
    assert (top.length_nm, top.width_nm) == (mm(275), mm(175))
    cuts = cuts_of(CASKET)
    side, front = cut_in(cuts, "K-right", "K-toppanel"), cut_in(cuts, "K-front", "K-toppanel")
    assert side.u == front.u == (mm(235.7), mm(241.7))
    assert side.x == (mm(0), mm(200.8))
    assert front.x == (mm(12.4), mm(288.4))
    assert {cut.held for cut in (side, front)} == {Held.GLUED}


def test_a_solid_top_may_move() -> None:
    solid = replace(CASKET, lid=replace(LID, top=replace(TOP, stuff=oak(6))))
    assert cut_in(cuts_of(solid), "K-left", "K-toppanel").held is Held.FREE


def test_a_closed_box_closes() -> None:
    """Without play top and bottom fill their grooves, and no two boards fill the same space."""
    tight = replace(CASKET, bottom=replace(BOTTOM, play_nm=mm(0)), lid=replace(LID, top=replace(TOP, play_nm=mm(0))))
    items, _ = put_together(tight)
    assert clashes(items) == []
    assert list(empty_seats(items)) == []


def test_rabbeted_corners_have_a_saw_line_and_no_pins() -> None:
    """The sides' plain ends are short by the lap of 6 in front and behind: 200 − 2 · 6 = 188. Nothing is proud."""
    ring = with_rabbets(CASKET.ring, mm(6))
    rabbeted = replace(CASKET, ring=ring)
    assert corners_of(rabbeted) == ()
    lines = {cut.board: cut for cut in cuts_of(rabbeted) if cut.kind is FeatureKind.SAW_LINE}
    assert {mark: (line.x, line.face) for mark, line in lines.items()} == {
        "K-front": ((0, mm(300)), Surface.OUTSIDE),
        "K-right": ((0, mm(188)), Surface.OUTSIDE),
        "K-back": ((0, mm(300)), Surface.OUTSIDE),
        "K-left": ((0, mm(188)), Surface.OUTSIDE),
    }


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        (
            {"lid": replace(LID, height_nm=mm(247))},
            (
                "a lid 247.0 mm high and a kerf of 3.0 mm leave nothing of a closed box 250.0 mm high. "
                "Make the lid lower than 247.0 mm, or the closed box higher."
            ),
        ),
        (
            {"bottom": replace(BOTTOM, up_nm=mm(181))},
            (
                "the bottom's groove, 181.0 mm to 187.0 mm up, meets the saw line, 187.0 mm to 190.0 mm up. "
                "Let it end below 187.0 mm, or make the lid lower."
            ),
        ),
        (
            {"lid": replace(LID, top=replace(TOP, up_nm=mm(54)))},
            (
                "the top's groove, 190.0 mm to 196.0 mm up, meets the saw line, 187.0 mm to 190.0 mm up. "
                "Let it begin less than 54.0 mm below the upper edge, or make the lid higher."
            ),
        ),
    ],
)
def test_a_box_that_cannot_be_sawn_is_refused(changes: dict[str, Any], said: str) -> None:
    with pytest.raises(PlanError) as refusal:
        put_together(replace(CASKET, **changes))
    assert [str(problem) for problem in refusal.value.problems] == [f"K: {said}"]


def test_grooves_just_clear_of_the_saw_line_are_not_refused() -> None:
    clear = replace(LID, top=replace(TOP, up_nm=mm(53.9)))
    items, _ = put_together(replace(CASKET, bottom=replace(BOTTOM, up_nm=mm(180.9)), lid=clear))
    assert placed(items)["K-toppanel"].up == (mm(190.1), mm(196.1))


def test_what_the_saw_makes_of_the_boards() -> None:
    """Each board of 300 × 250 or 200 × 250, planed flush, becomes 187 and 60 high; 3 go in the kerf."""
    _, boards = put_together(CASKET)
    parts = {part.mark: part for part in sawn_sizes(CASKET, boards)}
    assert list(parts) == [
        "K-front", "K-right", "K-back", "K-left", "K-lid-front", "K-lid-right", "K-lid-back", "K-lid-left",
    ]  # fmt: skip
    box, lid = parts["K-right"], parts["K-lid-right"]
    assert (box.board, box.of_lid, box.length_nm, box.width_nm) == ("K-right", False, mm(200), mm(187))
    assert (lid.board, lid.of_lid, lid.length_nm, lid.width_nm) == ("K-right", True, mm(200), mm(60))
    assert {part.thickness_nm for part in parts.values()} == {mm(18)}
    assert sawn_sizes(replace(CASKET, lid=None), boards) == ()


# --- properties ----------------------------------------------------------------------------------------------


@st.composite
def sawn_ends(draw: st.DrawFn) -> SawnEnd:
    """Any end and spacing, sawn anywhere; most of them boxes that a maker might want.

    Half of the lists are made to hold the saw line.
    """
    if draw(st.integers(0, 3)):
        wide, thick = draw(st.integers(150 * MM, 600 * MM)), draw(st.integers(6 * MM, 20 * MM))
        end = PinEnd(width_nm=Nm(wide), thickness_nm=Nm(thick), slot=draw(ends.slots()))
        spacing = draw(ends.spacings(end))
        if spacing.tails:
            spacing = replace(spacing, tails=draw(st.integers(2, 8)))
        lost = draw(st.integers(MM // 2, 6 * MM))
        low = wide * draw(st.integers(25, 75)) // 100
    else:
        end, spacing = draw(ends.cases())
        lost = draw(st.integers(MM // 2, 6 * MM))
        low = draw(st.integers(1, end.width_nm - lost - 1))
    kerf = (Nm(low), Nm(low + lost))
    if spacing.spread is Spread.LISTED and draw(st.booleans()):
        spacing = replace(spacing, places=_with_a_saw_pin(end, spacing, kerf, draw(st.integers(0, 3 * MM))))
    return SawnEnd(end, spacing, kerf)


def _with_a_saw_pin(end: PinEnd, spacing: Spacing, kerf: Span, more: int) -> tuple[Span, ...]:
    low, high = kerf[0] - spacing.half_pin_nm - more, kerf[1] + spacing.half_pin_nm
    if spacing.measured_from is EdgeName.FAR:
        low, high = end.width_nm - high, end.width_nm - low
    apart = 25 * MM
    below = [place for place in spacing.places if apart < place[0] and place[1] < low - apart]
    above = [place for place in spacing.places if high + apart < place[0] and place[1] < end.width_nm - apart]
    return (*below[:1], (Nm(low), Nm(high)), *above[:1])


def inside_room_nm(end: PinEnd, spacing: Spacing, width: int, count: int) -> float:
    """Room for the slot in the narrowest socket of a part, inside, by plain arithmetic."""
    gain = float(spacing.ratio or 1) - 1
    if spacing.spread is Spread.EDGE:
        shares = [1 + gain * i / max(1, count - 1) for i in range(count)]
    elif spacing.spread is Spread.MIDDLE:
        rank = [min(i, count - 1 - i) for i in range(count)]
        shares = [1 + gain * r / max(1, *rank) for r in rank]
    else:
        shares = [1.0] * count
    clear = width - 2 * spacing.half_pin_nm - (count - 1) * spacing.pin_nm
    narrowest = clear * min(shares) / sum(shares)
    return narrowest - 2 * end.thickness_nm / float(end.slot.slope) - end.slot.width_mm * MM


def heights(sawn: SawnEnd) -> tuple[int, int]:
    return sawn.kerf[0], sawn.end.width_nm - sawn.kerf[1]


@given(sawn_ends())
def test_a_sawn_end_cut_by_its_passes_keeps_its_pins_and_both_parts_their_half_pins(sawn: SawnEnd) -> None:
    """As polygons: the passes take nothing of a pin, then the kerf is sawn out.

    Beside it on both sides, and at both edges, a strip as wide as a half-pin is wood through the whole thickness.
    """
    pins = sawn.lay_out()
    if pins is None:
        return
    end, half = sawn.end, sawn.spacing.half_pin_nm / MM
    grain = EndGrain(
        width=end.width_nm / MM,
        thickness=end.thickness_nm / MM,
        slope=float(end.slot.slope),
        bit=end.slot.bit_nm / MM,
        pins=[(a / MM, b / MM) for a, b in pins],
    )
    cuts = [(a, b, clear_socket(Nm(b - a), end.thickness_nm, end.slot)) for a, b in between(pins)]
    passes = [("right", (b - shift) / MM) for _, b, cut in cuts for shift in cut.first]
    passes += [("left", (a + shift) / MM) for a, _, cut in cuts for shift in cut.second]
    spoilt, left = what_stays(grain, "B", passes)
    assert spoilt == pytest.approx(0, abs=1e-6)
    assert left == pytest.approx(sum(cut.residue_mm2 for _, _, cut in cuts), abs=1e-6)
    kerf = [place / MM for place in sawn.kerf]
    wood = unary_union(grain.pin_polygons("B")).difference(rectangle(kerf[0], 0, kerf[1], grain.thickness))
    edges = [(0, half), (kerf[0] - half, kerf[0]), (kerf[1], kerf[1] + half), (grain.width - half, grain.width)]
    for a, b in edges:
        assert rectangle(a, 0, b, grain.thickness).difference(wood).area == pytest.approx(0, abs=1e-6)


@given(sawn_ends())
def test_pins_of_a_sawn_end_fill_the_board_and_are_as_wide_as_wished(sawn: SawnEnd) -> None:
    pins = sawn.lay_out()
    if pins is None:
        return
    spacing, (low, high) = sawn.spacing, sawn.kerf
    half = spacing.half_pin_nm
    assert pins[0] == (0, half)
    assert pins[-1] == (sawn.end.width_nm - half, sawn.end.width_nm)
    assert all(a[0] < a[1] < b[0] for a, b in pairwise(pins))
    (at_line,) = [pin for pin in pins if pin[0] <= low and high <= pin[1]]
    if spacing.spread is Spread.LISTED:
        assert at_line[0] <= low - half
        assert high + half <= at_line[1]
    else:
        assert at_line == (low - half, high + half)
        assert all(abs(b - a - spacing.pin_nm) <= 1 for a, b in pins[1:-1] if (a, b) != at_line)


def counted(sawn: SawnEnd, tails: int | None) -> SawnEnd:
    """The same end with a number of tails, or with the choice left to the planner."""
    spread = Spread.EVEN if sawn.spacing.spread is Spread.LISTED else sawn.spacing.spread
    return replace(sawn, spacing=replace(sawn.spacing, tails=tails, spread=spread, places=()))


@given(sawn_ends())
def test_each_part_is_laid_out_as_a_board_by_itself(drawn: SawnEnd) -> None:
    """Where the count is free, box and lid have the pins that a board as high as they are would have."""
    sawn = counted(drawn, None)
    pins = sawn.lay_out()
    alone = [lay_out(replace(sawn.end, width_nm=Nm(high)), sawn.spacing) for high in heights(sawn)]
    assert (pins is None) is (None in alone)
    if pins:
        low, high = sawn.kerf
        below = [(a, min(b, low)) for a, b in pins if a < low]
        above = [(max(a, high) - high, b - high) for a, b in pins if b > high]
        assert [tuple(below), tuple(above)] == alone


@given(sawn_ends(), st.integers(1, 20))
def test_no_other_sharing_out_brings_the_tails_nearer_to_each_other(drawn: SawnEnd, asked: int) -> None:
    """Every way to share a count that was asked for, by brute force."""
    sawn = counted(drawn, asked)
    spacing, (box, lid) = sawn.spacing, heights(sawn)
    ways = {}
    for above in range(1, asked):
        rooms = [inside_room_nm(sawn.end, spacing, box, asked - above), inside_room_nm(sawn.end, spacing, lid, above)]
        means = [
            (high - 2 * spacing.half_pin_nm - (n - 1) * spacing.pin_nm) / n
            for high, n in ((box, asked - above), (lid, above))
        ]
        ways[above] = (min(rooms), abs(means[0] - means[1]))
    pins = sawn.lay_out()
    if pins is None:
        assert all(room < 4 for room, _ in ways.values())
        return
    above = sum(a >= sawn.kerf[1] for a, _ in between(pins))
    assert len(pins) - 1 == asked
    assert ways[above][0] >= 0
    assert all(apart >= ways[above][1] - 1 for room, apart in ways.values() if room >= 4)


@given(sawn_ends())
def test_refusals_name_the_part_and_what_would_be_right(sawn: SawnEnd) -> None:
    """What is offered is tried: the height for one tail, the range of counts, the pin to list."""
    if sawn.lay_out() is not None:
        return
    told = [str(problem) for problem in sawn.problems(Grid.MM_TENTH, where="K-J1")]
    assert told
    if sawn.spacing.spread is Spread.LISTED:
        assert "List a pin from " in told[0]
        return
    cuttable = [
        [n for n in range(1, MOST_TAILS + 1) if inside_room_nm(sawn.end, sawn.spacing, high, n) >= 4]
        for high in heights(sawn)
    ]
    for name, counts in zip(("box", "lid"), cuttable, strict=True):
        assert any(f"the {name} can't be laid out" in line for line in told) or counts or _on_the_edge(sawn)
    if all(cuttable) and not _on_the_edge(sawn):
        (line,) = told
        assert f"Ask for 2 to {len(cuttable[0]) + len(cuttable[1])} tails" in line
        for tails in (2, len(cuttable[0]) + len(cuttable[1])):
            assert SawnEnd(sawn.end, replace(sawn.spacing, tails=tails), sawn.kerf).lay_out()


def _on_the_edge(sawn: SawnEnd) -> bool:
    """Whether some socket fits within rounding, so that floats can't tell."""
    rooms = (
        inside_room_nm(sawn.end, sawn.spacing, high, n) for high in heights(sawn) for n in range(1, MOST_TAILS + 1)
    )
    return any(abs(room) < 8 for room in rooms)
