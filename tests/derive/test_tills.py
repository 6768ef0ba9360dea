"""A till, worked out by hand and set up in space."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import hypot
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.derive.assembly import Assembly, assembly, box_block
from planner.derive.cuts import features
from planner.derive.joints import joints
from planner.derive.parts import Item, LetIn, Maker, Shape
from planner.derive.tills import till
from planner.domain.bottom import BottomPanel
from planner.domain.box import Box, SawnLid, Till
from planner.domain.plan import Feature
from planner.domain.solid import BACK, DOWN, RIGHT, UP
from planner.domain.words import FeatureKind, Held, Surface
from planner.errors import PlanError
from tests.derive.metric import (
    CHEST,
    block,
    clashes,
    cut_in,
    empty_seats,
    mm,
    oak,
    placed,
    ply,
    project,
)
from tests.oracle.wood import wood

TILL = Till(stuff=oak(10), width_nm=mm(140), depth_nm=mm(110), housing_depth_nm=mm(6), lid=None)
LIDDED = replace(TILL, lid=oak(8))
BOTTOM = BottomPanel(stuff=ply(9), groove_depth_nm=mm(6), up_nm=mm(12), play_nm=mm(1))


def chest(how: Till, **changes: Any) -> Box:
    return replace(CHEST, till=how, **changes)


def till_of(box: Box) -> list[Item]:
    said = project(boxes=(box,))
    return list(till(said, Maker("K", "K"), box, box_block(box)))


def whole(box: Box) -> tuple[Assembly, Sequence[Item], tuple[Feature, ...]]:
    """The whole chest, all its parts, all its cuts."""
    said = project(boxes=(box,))
    made = assembly(said)
    corners = {joint.mark: joint for joint in joints(said, made.boards)}
    return made, [*made.boards.values(), *made.let_in, *made.shapes], features(said, made, corners)


def refused(box: Box) -> str:
    with pytest.raises(PlanError) as refusal:
        till_of(box)
    return str(refusal.value)


def test_a_till_by_hand() -> None:
    """Chest 900 × 450 × 400 of 18 mm stuff: clear from 18 to 882, 18 to 432, 0 to 400.

    The till: 140 clear from 18 to 158, its side to 168. 110 deep, so its bottom's upper face is at 290 and its
    underside at 280. Both go 6 into front and back: 12 to 438, so they are 426 long. The side stands on the bottom
    and ends with the chest, 110 high; the bottom goes below it to its outside, 150 wide.
    """
    made, _, _ = whole(chest(TILL))
    side, bottom = made.boards["K-tillside"], made.boards["K-tillbottom"]
    assert side.place == block((158, 168), (12, 438), (290, 400))
    assert bottom.place == block((18, 168), (12, 438), (280, 290))
    assert [(b.length_nm, b.width_nm, b.thickness_nm) for b in (side, bottom)] == [
        (mm(426), mm(110), mm(10)),
        (mm(426), mm(150), mm(10)),
    ]
    assert (side.lie.along, side.lie.across, side.lie.out) == (BACK, UP, RIGHT)
    assert (bottom.lie.along, bottom.lie.across, bottom.lie.out) == (BACK, RIGHT, DOWN)


def test_its_housings_meet_and_do_not_cross() -> None:
    """On the front, from its end A at the left and 0.4 proud: the side's at 158.4 to 168.4, 290 up to the edge.

    The bottom's begins at the left side's inside face, 18.4, and ends below the side's outside, 168.4; from 280 to
    290. On the back end A is at the right: 900 + 0.8 − 168.4 = 732.4 to 742.4, and 732.4 to 882.4. All are 6 deep.
    """
    _, _, cuts = whole(chest(TILL))
    at = {
        ("K-front", "K-tillside"): ((158.4, 168.4), (290, 400)),
        ("K-front", "K-tillbottom"): ((18.4, 168.4), (280, 290)),
        ("K-back", "K-tillside"): ((732.4, 742.4), (290, 400)),
        ("K-back", "K-tillbottom"): ((732.4, 882.4), (280, 290)),
    }
    for (board, takes), (x, u) in at.items():
        cut = cut_in(cuts, board, takes)
        assert (cut.kind, cut.face) == (FeatureKind.HOUSING, Surface.INSIDE)
        assert cut.x == (mm(x[0]), mm(x[1]))
        assert cut.u == (mm(u[0]), mm(u[1]))
        assert cut.y == (mm(12), mm(18))
    assert {cut.board for cut in cuts if cut.takes.startswith("K-till")} == {"K-front", "K-back"}


def test_a_solid_bottom_is_not_glued_in_and_a_sheet_is() -> None:
    for stuff, held in ((oak(10), Held.FREE), (ply(10), Held.GLUED)):
        lets = [item for item in till_of(chest(replace(TILL, stuff=stuff))) if isinstance(item, LetIn)]
        assert {each.held for each in lets if each.guest == "K-tillbottom"} == {held}
        assert {each.held for each in lets if each.guest == "K-tillside"} == {Held.GLUED}


@pytest.mark.parametrize("how", [TILL, LIDDED])
def test_a_till_closes_and_nothing_of_it_is_in_one_place_twice(how: Till) -> None:
    _, items, _ = whole(chest(how, bottom=BOTTOM))
    assert clashes(items) == []
    assert [each for each, _ in empty_seats(items) if each.guest != "K-bottom"] == []


def test_a_lid_lies_on_the_side_just_below_the_edge() -> None:
    """Play 1 mm. The lid is 8 thick, from 400 − 1 − 8 = 391 up; there the side ends.

    It reaches from 18 + 1 at the left to the side's outside at 168, and from 19 to 431 back.
    """
    made, items, _ = whole(chest(LIDDED))
    assert made.boards["K-tilllid"].place == block((19, 168), (19, 431), (391, 399))
    assert made.boards["K-tillside"].place.up == (mm(290), mm(391))
    assert made.boards["K-tilllid"].lie.along == BACK
    assert "K-tilllid" not in {each.guest for each in items if isinstance(each, LetIn)}


def test_the_lid_swings_on_two_pins() -> None:
    """Pins half of 8, so 4 thick; their middle 4 from the left edge and from both faces of the lid.

    Middle at 19 + 4 = 23 from the left, 395 up: holes from 21 to 25 and 393 to 397. In front and back 6 deep; on
    the front they count from the end that is 0.4 proud, on the back from 900 + 0.4 down. In the lid's ends 12
    deep; its reference edge is the right one, so they begin 168 − 25 = 143 from it.
    """
    _, _, cuts = whole(chest(LIDDED))
    front, back = cut_in(cuts, "K-front", "K-tilllid"), cut_in(cuts, "K-back", "K-tilllid")
    assert (front.kind, front.face, front.y) == (FeatureKind.HOLE, Surface.INSIDE, (mm(12), mm(18)))
    assert (front.x, front.u) == ((mm(21.4), mm(25.4)), (mm(393), mm(397)))
    assert (back.x, back.u) == ((mm(875.4), mm(879.4)), front.u)
    ends = [cut for cut in cuts if cut.board == "K-tilllid"]
    assert {(cut.face, cut.x) for cut in ends} == {
        (Surface.END_A, (mm(0), mm(12))),
        (Surface.END_B, (mm(400), mm(412))),
    }
    assert {(cut.u, cut.y) for cut in ends} == {((mm(143), mm(147)), (mm(2), mm(6)))}


def test_the_rounded_edge_of_a_lid_clears_the_chest_as_it_swings() -> None:
    """The edge is rounded about the pin: all of it is half the thickness, 4 mm, from the pin's middle.

    The pin's middle is 5 mm from the chest's left side. Left square, its corner would be 4·√2 = 5.66 mm away.
    """
    _, items, _ = whole(chest(LIDDED))
    hole = next(each.block for each in items if isinstance(each, Shape) and each.takes == "K-tilllid")
    half = placed(items)["K-tilllid"].size(UP) / 2
    middle = sum(hole.right) / 2
    assert middle - half > mm(18)
    assert middle - hypot(half, half) < mm(18)


@pytest.mark.parametrize(
    ("box", "said"),
    [
        (
            chest(replace(TILL, width_nm=mm(854))),
            ("with its side it would take 864.0 mm of the 864.0 mm within the chest. Make it narrower than 854.0 mm."),
        ),
        (
            chest(replace(TILL, depth_nm=mm(391))),
            (
                "391.0 mm deep, its bottom would lie below what is clear within the "
                "chest. Make it at most 390.0 mm deep."
            ),
        ),
        (chest(replace(TILL, depth_nm=mm(370)), bottom=BOTTOM), "Make it at most 369.0 mm deep."),
        (chest(replace(LIDDED, depth_nm=mm(8))), "a lid 8.0 mm thick fills the depth of 8.0 mm."),
        (chest(TILL, lid=SawnLid(top=BOTTOM, height_nm=mm(100), kerf_nm=mm(3))), "doesn't go with a lid that is sawn"),
    ],
)
def test_a_till_that_does_not_fit_is_refused(box: Box, said: str) -> None:
    assert said in refused(box)
    assert refused(box).startswith("K till: ")


def test_the_greatest_tills_by_hand() -> None:
    """Deepest over a bottom: 400 − 12 − 9 − 10 = 369; widest but for a hair: 864 − 10 = 854."""
    for box in (chest(replace(TILL, depth_nm=mm(369)), bottom=BOTTOM), chest(replace(TILL, width_nm=mm(853.9)))):
        _, items, _ = whole(box)
        assert clashes(items) == []


def test_a_box_without_a_till_gets_none() -> None:
    assert till_of(CHEST) == []


@given(
    width=st.integers(20, 900),
    depth=st.integers(5, 420),
    thick=st.integers(4, 30),
    housing=st.integers(1, 17),
    lid=st.none() | st.integers(3, 20),
    bottom=st.none() | st.just(BOTTOM),
)
def test_what_is_not_refused_closes(
    width: int, depth: int, thick: int, housing: int, lid: int | None, bottom: BottomPanel | None
) -> None:
    """Any till: either it is refused, or its housings are full and no two boards fill the same space."""
    how = Till(
        stuff=oak(thick),
        width_nm=mm(width),
        depth_nm=mm(depth),
        housing_depth_nm=mm(housing),
        lid=oak(lid) if lid else None,
    )
    box = chest(how, bottom=bottom)
    fits = width + thick < 864 and depth + thick + (21 if bottom else 0) <= 400 and (lid or -1) + 1 < depth
    try:
        made = assembly(project(boxes=(box,)))
    except PlanError:
        assert not fits
        return
    assert fits
    items: list[Item] = [*made.boards.values(), *made.let_in, *made.shapes]
    assert clashes(items) == []
    assert [each for each, _ in empty_seats(items) if each.guest.startswith("K-till")] == []
    assert wood(items)["K-tillside"]
