"""Plinths, bracket feet and stands, worked out by hand and set up in space."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.derive.assembly import Assembly, assembly
from planner.derive.bases import base
from planner.derive.cuts import features
from planner.derive.joints import joints
from planner.derive.parts import Item, Maker
from planner.derive.spaces import outside_of
from planner.domain.carcase import Plinth, Stand
from planner.domain.plan import BoardSize, Feature
from planner.domain.solid import DOWN
from planner.domain.words import FeatureKind, Role, Surface
from planner.errors import PlanError
from planner.lengths import Nm
from tests.derive.metric import CARCASE, block, clashes, cut_in, empty_seats, mm, oak, placed, project, upright_ring
from tests.oracle.wood import volume, wood

PLINTH = Plinth(
    ring=upright_ring("CP", 18),
    height_nm=mm(100),
    front_nm=mm(20),
    sides_nm=mm(10),
    back_nm=mm(0),
    foot_nm=None,
    rise_nm=mm(60),
)
FEET = replace(PLINTH, foot_nm=mm(120))
STAND = Stand(
    leg=oak(45),
    apron=oak(18),
    height_nm=mm(400),
    apron_nm=mm(100),
    tenon_nm=mm(20),
    front_nm=mm(5),
    sides_nm=mm(5),
    back_nm=mm(5),
    setback_nm=mm(3),
)


def on(how: Plinth | Stand) -> list[Item]:
    """What is below the carcase that stands on this."""
    carcase = replace(CARCASE, base=how)
    return list(base(project(), Maker("C", "C"), carcase, outside_of(carcase)))


def whole(how: Plinth | Stand) -> tuple[Assembly, tuple[Feature, ...]]:
    """The whole piece and all its cuts."""
    said = project(carcases=(replace(CARCASE, base=how),))
    made = assembly(said)
    corners = {joint.mark: joint for joint in joints(said, made.boards)}
    return made, features(said, made, corners)


def everything(made: Assembly) -> Sequence[Item]:
    return [*made.boards.values(), *made.let_in, *made.shapes]


def refused(how: Plinth | Stand) -> str:
    with pytest.raises(PlanError) as refusal:
        on(how)
    return str(refusal.value)


# --- plinths -------------------------------------------------------------------------------------------------


def test_a_plinth_stands_below_the_carcase_set_back_in_front_and_at_the_sides() -> None:
    """Carcase 800 × 400; 20 back in front, 10 at each side, 0 at the back; 100 high, of 18 mm stuff.

    So it fills 10 to 790, 20 to 400, −100 to 0: the front is 780 long and 0.4 proud at both ends, the sides 380.
    """
    items = on(PLINTH)
    assert placed(items) == {
        "CP-front": block((10, 790), (20, 38), (-100, 0)),
        "CP-right": block((772, 790), (20, 400), (-100, 0)),
        "CP-back": block((10, 790), (382, 400), (-100, 0)),
        "CP-left": block((10, 28), (20, 400), (-100, 0)),
    }
    boards = {item.mark: item for item in items if isinstance(item, BoardSize)}
    assert boards["CP-front"].length_nm == mm(780.8)
    assert boards["CP-right"].length_nm == mm(380.8)
    assert {(board.box, board.piece) for board in boards.values()} == {("CP", "C")}


def test_a_plinth_may_stand_out() -> None:
    out = replace(PLINTH, front_nm=mm(-10), sides_nm=mm(-5), back_nm=mm(-2))
    assert placed(on(out))["CP-front"] == block((-5, 805), (-10, 8), (-100, 0))
    assert placed(on(out))["CP-back"] == block((-5, 805), (384, 402), (-100, 0))


def test_feet_stay_where_all_four_boards_are_cut_away_between_them() -> None:
    """Feet 120, rise 60. From its cut end a front of 780.8 keeps 0.4 + 120, so the notch goes from 120.4 to 660.4.

    A side of 380.8 is cut away from 120.4 to 260.4. On the ground stand 4 feet: of each board 2 · 120 · 18 mm²
    less a corner of 18 · 18 that is counted twice.
    """
    made, cuts = whole(FEET)
    for mark, x in (("front", (120.4, 660.4)), ("back", (120.4, 660.4)), ("right", (120.4, 260.4))):
        cut = cut_in(cuts, f"CP-{mark}")
        assert cut.kind is FeatureKind.NOTCH
        assert (cut.x, cut.u, cut.y) == ((mm(x[0]), mm(x[1])), (mm(0), mm(60)), (mm(0), mm(18)))
    left, right = cut_in(cuts, "CP-left"), cut_in(cuts, "CP-right")
    assert (left.x, left.u, left.y) == (right.x, right.u, right.y)
    solids = wood(everything(made))
    standing = [b for mark, blocks in solids.items() for b in blocks if mark.startswith("CP") and b[2][0] == mm(-100)]
    by_hand = 4 * 2 * 120 * 18 * mm(1) ** 2
    assert sum((b[0][1] - b[0][0]) * (b[1][1] - b[1][0]) for b in standing) == by_hand
    assert clashes(everything(made)) == []


def test_a_whole_plinth_has_no_notches() -> None:
    _, cuts = whole(PLINTH)
    assert [cut for cut in cuts if cut.kind is FeatureKind.NOTCH] == []


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        (
            {"foot_nm": mm(190)},
            (
                "feet 190.0 mm long leave nothing between them on a board 380.0 mm long. "
                "Make them shorter than 190.0 mm."
            ),
        ),
        (
            {"foot_nm": mm(18)},
            ("feet 18.0 mm long end within the corner joints, which take 18.0 mm. Make them longer than 18.0 mm."),
        ),
        (
            {"rise_nm": mm(100)},
            ("is cut away 100.0 mm between its feet, and is only 100.0 mm high. Cut away less than 100.0 mm."),
        ),
        (
            {"front_nm": mm(-18)},
            (
                "stands out 18.0 mm at the front and is 18.0 mm thick there: the carcase does not rest "
                "on it. Let it stand out less than 18.0 mm."
            ),
        ),
        ({"sides_nm": mm(-30)}, "stands out 30.0 mm at the left"),
    ],
)
def test_feet_that_there_is_no_room_for_are_refused(changes: dict[str, Nm], said: str) -> None:
    facts: dict[str, Any] = dict(changes)
    assert f"CP: {said}" in refused(replace(FEET, **facts))


def test_the_longest_feet_and_the_highest_rise_are_not_refused() -> None:
    assert clashes(on(replace(FEET, foot_nm=mm(189.9), rise_nm=mm(99.9), front_nm=mm(-17.9)))) == []
    assert clashes(on(replace(FEET, foot_nm=mm(18.1)))) == []


def test_a_plinth_that_its_own_boards_fill_is_refused() -> None:
    with pytest.raises(PlanError, match="CP: has no inside"):
        assembly(project(carcases=(replace(CARCASE, base=replace(PLINTH, front_nm=mm(364))),)))


# --- stands --------------------------------------------------------------------------------------------------


def test_legs_stand_at_the_corners_and_aprons_between_them() -> None:
    """Carcase 800 × 400, the legs set back 5 all round: they fill 5 to 795, 5 to 395 and −400 to 0, 45 square.

    Front apron: between the legs 50 to 750, 20 of tenon at each end: 30 to 770, so 740 long. Its outside face is 5
    + 3 back, its inside face 18 more; 100 wide, flush with the tops of the legs. The right one: 5 + 45 − 20 = 30
    to 370.
    """
    assert placed(on(STAND)) == {
        "C-leg1": block((5, 50), (5, 50), (-400, 0)),
        "C-leg2": block((750, 795), (5, 50), (-400, 0)),
        "C-leg3": block((750, 795), (350, 395), (-400, 0)),
        "C-leg4": block((5, 50), (350, 395), (-400, 0)),
        "C-apron-front": block((30, 770), (8, 26), (-100, 0)),
        "C-apron-right": block((774, 792), (30, 370), (-100, 0)),
        "C-apron-back": block((30, 770), (374, 392), (-100, 0)),
        "C-apron-left": block((8, 26), (30, 370), (-100, 0)),
    }


def test_all_legs_are_alike_and_stand_on_end_b() -> None:
    """From its top a leg has a mortise at 25 to 87.5: a quarter of 100 below the top, and an eighth is left below.

    The tenon is 18/3 = 6 thick and 6 behind the apron's outside face, which is 3 behind the leg's: 9 to 15. It
    goes 20 deep: on the far edge from 25 to 45, and on the inside face from 25 to 45.
    """
    made, cuts = whole(STAND)
    for leg in ("C-leg1", "C-leg2", "C-leg3", "C-leg4"):
        assert made.boards[leg].lie.along == DOWN
        mortises = {cut.face: (cut.x, cut.u, cut.y) for cut in cuts if cut.board == leg}
        x, near, deep = (mm(25), mm(87.5)), (mm(9), mm(15)), (mm(25), mm(45))
        assert mortises == {Surface.FAR_EDGE: (x, deep, near), Surface.INSIDE: (x, near, deep)}
        assert {cut.kind for cut in cuts if cut.board == leg} == {FeatureKind.MORTISE}


def test_an_apron_has_a_tenon_at_each_end() -> None:
    """At each end 20 of the 740 stay, from 12.5 to 75 of the apron's width and from 6 to 12 of its thickness."""
    made, cuts = whole(STAND)
    for role in (Role.FRONT, Role.BACK):
        tenons = [cut for cut in cuts if cut.board == f"C-apron-{role}"]
        assert [cut.kind for cut in tenons] == [FeatureKind.TENON] * 2
        assert [(cut.u, cut.y) for cut in tenons] == [((mm(12.5), mm(75)), (mm(6), mm(12)))] * 2
        assert sorted(cut.x for cut in tenons) == [(mm(0), mm(20)), (mm(720), mm(740))]
        assert {cut.face for cut in tenons} == {Surface.END_A, Surface.END_B}
    assert made.boards["C-apron-front"].length_nm == mm(740)


def test_a_stand_closes_and_nothing_of_it_is_in_one_place_twice() -> None:
    items = on(STAND)
    assert clashes(items) == []
    assert list(empty_seats(items)) == []
    # An apron of 740 × 100 × 18 whose ends lose all but 20 × 62.5 × 6: 700 · 100 · 18 + 2 · 7 500 mm³.
    assert volume(wood(items)["C-apron-front"]) == 1_275_000 * mm(1) ** 3


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        (
            {"tenon_nm": mm(30.1)},
            ("tenons 30.1 mm long would meet in legs 45.0 mm thick. Make them at most 30.0 mm long."),
        ),
        (
            {"leg": oak(20)},
            (
                "legs 20.0 mm thick are too thin for aprons 18.0 mm thick that stand back 3.0 mm. "
                "Make the legs at least 21.0 mm thick."
            ),
        ),
        (
            {"apron_nm": mm(400)},
            (
                "aprons 400.0 mm wide reach the floor: the stand is 400.0 mm high. "
                "Make the aprons narrower than 400.0 mm."
            ),
        ),
        ({"leg": oak(195)}, "two legs 195.0 mm thick leave nothing between them in 390.0 mm."),
        ({"back_nm": mm(-45)}, "stands out 45.0 mm at the back and is 45.0 mm thick there"),
    ],
)
def test_a_stand_that_cannot_be_put_together_is_refused(changes: dict[str, Any], said: str) -> None:
    assert f"C stand: {said}" in refused(replace(STAND, **changes))


def test_all_that_is_wrong_with_a_stand_is_told_at_once() -> None:
    told = refused(replace(STAND, apron_nm=mm(500), tenon_nm=mm(40), front_nm=mm(-50)))
    assert [word in told for word in ("reach the floor", "would meet", "does not rest")] == [True] * 3


def test_tenons_of_30_fit_by_hand() -> None:
    """45 − 3 − 6 − 6 = 30: the tenons' corners touch and take no wood of each other."""
    items = on(replace(STAND, tenon_nm=mm(30)))
    assert clashes(items) == []
    assert list(empty_seats(items)) == []


@given(
    leg=st.integers(10, 120),
    apron=st.integers(6, 60),
    width=st.integers(10, 420),
    tenon=st.integers(1, 120),
    setback=st.integers(0, 30),
    stands_back=st.tuples(*[st.integers(-60, 200)] * 3),
)
def test_what_is_not_refused_closes(
    leg: int, apron: int, width: int, tenon: int, setback: int, stands_back: tuple[int, int, int]
) -> None:
    """Any stand: either it is refused, or every mortise is full and no two boards fill the same space."""
    front, sides, back = stands_back
    how = Stand(
        leg=oak(leg),
        apron=oak(apron),
        height_nm=mm(400),
        apron_nm=mm(width),
        tenon_nm=mm(tenon),
        front_nm=mm(front),
        sides_nm=mm(sides),
        back_nm=mm(back),
        setback_nm=mm(setback),
    )
    thirds = apron * 10 // 3
    behind = (apron * 10 - thirds) / 2
    could_be = [
        10 * tenon <= 10 * (leg - setback) - behind - thirds,
        setback + apron <= leg,
        width < 400,
        min(800 - 2 * sides, 400 - front - back) > 2 * leg,
        max(-front, -sides, -back) < leg,
    ]
    try:
        items = on(how)
    except PlanError:
        assert not all(could_be)
        return
    assert all(could_be)
    assert clashes(items) == []
    assert list(empty_seats(items)) == []
