"""Backs of a carcase: their boards and their one rabbet, worked out by hand and set up in space."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.derive.assembly import assembly
from planner.derive.backs import back
from planner.derive.cuts import features
from planner.derive.fits import must_fit
from planner.derive.joints import joints
from planner.derive.parts import Item, LetIn, Maker
from planner.derive.spaces import inside_of, outside_of
from planner.domain.carcase import Back, BackPanel, BoardedBack, Carcase, PanelledBack
from planner.domain.panelled import Panelled
from planner.domain.plan import Feature
from planner.domain.ring import Stuff, make_ring
from planner.domain.solid import BACK, DOWN
from planner.domain.space import Space
from planner.domain.words import FeatureKind, Held, PinPair, RingKind, Role, SizesOver, Surface
from planner.errors import PlanError
from planner.lengths import Grid, Nm
from tests.oracle.assembly_space import Block, less_all, meet
from tests.oracle.wood import all_of, block_of, boards_of, overlaps, volume, wood
from tests.pieces import SPACING, ash, inches, ply, project

BOARDED = BoardedBack(
    stuff=ash("1/2"),
    rabbet_depth_nm=inches("3/8"),
    play_nm=inches("1/8"),
    board_nm=inches("5"),
    lap_nm=inches("3/8"),
    gap_nm=inches("1/16"),
)
PANELLED = PanelledBack(
    made=Panelled(
        stuff=ash("3/4"),
        stile_nm=inches("3"),
        rail_nm=inches("3"),
        groove_nm=inches("3/8"),
        tenon_nm=inches("1 1/2"),
        panel=ply("1/4"),
        play_nm=inches("1/16"),
        wide=2,
    ),
    rabbet_depth_nm=inches("3/8"),
    play_nm=inches("1/8"),
)


def cabinet(how: Back | None) -> Carcase:
    """36 wide, 46 high and 20 deep over all, of 7/8 in boards."""
    return Carcase(
        title="cabinet",
        ring=make_ring("C", RingKind.CARCASE, (ash("7/8"),) * 4, PinPair.FIRST_AND_THIRD, SPACING, "main"),
        width_nm=inches("36"),
        height_nm=inches("46"),
        depth_nm=inches("20"),
        sizes_over=SizesOver.OUTSIDE,
        inside=Space(),
        back=how,
    )


def closed(how: Back | None) -> list[Item]:
    carcase = cabinet(how)
    return list(back(Maker("C", "C"), carcase, outside_of(carcase), inside_of(carcase), Grid.IN_32))


def cuts(how: Back) -> list[Feature]:
    made = project(carcases=(cabinet(how),))
    whole = assembly(made)
    corners = {joint.mark: joint for joint in joints(made, whole.boards)}
    found = features(made, whole, corners)
    must_fit(made, whole.boards, found)
    return list(found)


def rabbets(found: list[Feature]) -> dict[str, Feature]:
    """The rabbets in the boards of the carcase; one each."""
    carcase = [cut for cut in found if cut.board in {"C-top", "C-right", "C-bottom", "C-left"}]
    assert len(carcase) == 4
    return {cut.board: cut for cut in carcase}


def span(low: str, high: str) -> tuple[Nm, Nm]:
    return inches(low), inches(high)


def test_a_carcase_without_a_back_has_none() -> None:
    assert closed(None) == []


def test_a_panel_lies_in_one_rabbet_on_each_board() -> None:
    """Inside 34 1/4 × 44 1/4; with rabbets of 3/8 the room is 35 × 45, and 1/8 of play leaves 34 7/8 × 44 7/8."""
    how = BackPanel(stuff=ply("1/4"), rabbet_depth_nm=inches("3/8"), play_nm=inches("1/8"))
    (panel,) = boards_of(closed(how)).values()
    assert (panel.mark, panel.length_nm, panel.width_nm) == ("C-back", inches("34 7/8"), inches("44 7/8"))
    assert panel.place.back == span("19 3/4", "20")
    assert {cut.takes for cut in rabbets(cuts(how)).values()} == {"C-back"}


# --- boards -------------------------------------------------------------------------------------------------


def test_as_few_boards_as_their_greatest_width_allows() -> None:
    """The back is 34 7/8 wide. Seven boards that overlap by 3/8 would be (34 7/8 + 6 · 3/8)/7 = 5.30 wide: too wide.

    Eight are (34 7/8 + 7 · 3/8)/8 = 37.5/8 = 4 11/16 wide, and 46 − 2 · 7/8 + 2 · 3/8 − 1/8 = 44 7/8 long.
    """
    boards = boards_of(closed(BOARDED))
    assert list(boards) == [f"C-backboard{n}" for n in range(1, 9)]
    assert {(b.length_nm, b.width_nm, b.thickness_nm) for b in boards.values()} == {
        (inches("44 7/8"), inches("4 11/16"), inches("1/2"))
    }
    assert {(b.role, b.lie.out, b.lie.along) for b in boards.values()} == {(Role.BACK_BOARD, BACK, DOWN)}


def test_boards_are_counted_from_the_left_as_seen_from_behind_and_overlap() -> None:
    """The back reaches from 7/8 − 3/8 + 1/16 = 9/16 to 9/16 + 34 7/8 = 35 7/16, where board 1 is.

    Board 1 begins at 35 7/16 − 4 11/16 = 30 3/4, and board 2 ends 3/8 further, at 31 1/8.
    """
    boards = boards_of(closed(BOARDED))
    assert boards["C-backboard1"].place.right == span("30 3/4", "35 7/16")
    assert boards["C-backboard2"].place.right == span("26 7/16", "31 1/8")
    assert boards["C-backboard8"].place.right == span("9/16", "5 1/4")


def test_boards_are_rabbeted_from_opposite_faces_half_their_thickness_deep() -> None:
    """3/8 of lap and 1/16 of gap make 7/16. Board 2 has its reference edge beside board 1."""
    found = [cut for cut in cuts(BOARDED) if cut.board == "C-backboard2"]
    through = span("0", "44 7/8")
    assert {(cut.kind, cut.face, cut.x, cut.u, cut.y) for cut in found} == {
        (FeatureKind.RABBET, Surface.INSIDE, through, span("0", "7/16"), span("1/4", "1/2")),
        (FeatureKind.RABBET, Surface.OUTSIDE, through, span("4 1/4", "4 11/16"), span("0", "1/4")),
    }
    ends = {cut.board: cut.face for cut in cuts(BOARDED) if cut.board in {"C-backboard1", "C-backboard8"}}
    assert ends == {"C-backboard1": Surface.OUTSIDE, "C-backboard8": Surface.INSIDE}


def test_between_boards_a_gap_shows_on_both_faces_and_no_light() -> None:
    """Boards 1 and 2, by hand: tongues from 30 3/4 and to 31 1/8; shoulders 1/16 further on both faces."""
    solids = wood(closed(BOARDED))
    assert overlaps(solids) == []
    at_the_back: Block = (span("20", "32"), span("19 3/4", "20"), span("5", "6"))
    in_front: Block = (span("20", "32"), span("19 1/2", "19 3/4"), span("5", "6"))
    pair = [*solids["C-backboard1"], *solids["C-backboard2"], *solids["C-backboard3"]]
    (open_behind,) = [gap for gap in less_all([at_the_back], pair) if gap[0][0] > inches("30")]
    (open_in_front,) = [gap for gap in less_all([in_front], pair) if gap[0][0] > inches("30")]
    assert {open_behind[0], open_in_front[0]} == {span("30 11/16", "30 3/4"), span("31 1/8", "31 3/16")}
    assert open_behind[0][0] > open_in_front[0][1] or open_in_front[0][0] > open_behind[0][1]


def test_one_rabbet_of_the_carcase_takes_all_boards() -> None:
    """Each is 3/8 deep and 1/2 wide at the back edge, and named after the first board that lies in it."""
    found = rabbets(cuts(BOARDED))
    assert {mark: cut.takes for mark, cut in found.items()} == {
        "C-top": "C-backboard1",
        "C-right": "C-backboard1",
        "C-bottom": "C-backboard1",
        "C-left": "C-backboard8",
    }
    assert {(cut.kind, cut.held, cut.u, cut.depth_nm) for cut in found.values()} == {
        (FeatureKind.RABBET, Held.FREE, span("19 1/2", "20"), inches("3/8"))
    }


def test_a_back_narrower_than_a_board_is_one_board_without_rabbets() -> None:
    items = closed(replace(BOARDED, board_nm=inches("34 7/8")))
    assert list(boards_of(items)) == ["C-backboard1"]
    assert {type(item) for item in items if not isinstance(item, LetIn)} == {type(boards_of(items)["C-backboard1"])}


@given(
    board=st.integers(20, 400),
    lap=st.integers(0, 30),
    gap=st.integers(0, 9),
    thick=st.integers(2, 40),
    play=st.integers(0, 20),
)
def test_no_fewer_boards_would_do_and_none_overlaps(board: int, lap: int, gap: int, thick: int, play: int) -> None:
    """The least count, found by trying 1, 2, 3 …; seen from behind the boards cover all of the back.

    From face to face, what is missing of a solid back is one gap between every two boards.
    The carcase is as many nanometres as the cabinet is sixty-fourths of an inch.
    """
    how = BoardedBack(
        stuff=Stuff(material="ash", thickness_nm=Nm(thick)),
        rabbet_depth_nm=Nm(24),
        play_nm=Nm(play),
        board_nm=Nm(board),
        lap_nm=Nm(lap),
        gap_nm=Nm(gap),
    )
    ring = make_ring(
        "C", RingKind.CARCASE, (Stuff(material="ash", thickness_nm=Nm(56)),) * 4, PinPair.FIRST_AND_THIRD, SPACING, ""
    )
    small = replace(cabinet(how), ring=ring, width_nm=Nm(2304), height_nm=Nm(2944), depth_nm=Nm(1280))
    try:
        items = list(back(Maker("C", "C"), small, outside_of(small), inside_of(small), Grid.IN_32))
    except PlanError:
        assert board <= lap or 2 * (lap + gap) >= min(board, (board + lap) // 2)
        return
    boards, wide = boards_of(items), 2304 - 2 * 56 + 2 * 24 - play
    least = next(n for n in range(1, 3000) if wide + (n - 1) * lap <= n * board)
    assert len(boards) == least
    assert max(each.width_nm for each in boards.values()) <= board
    assert max(b.width_nm for b in boards.values()) - min(b.width_nm for b in boards.values()) <= 1
    solids = wood(items)
    assert overlaps(solids) == []
    high = 2944 - 2 * 56 + 2 * 24 - play
    assert volume(all_of(solids)) == (wide - (least - 1) * gap) * high * thick
    assert max(b.place.right[1] for b in boards.values()) - min(b.place.right[0] for b in boards.values()) == wide
    low = 56 - 24 + play // 2
    sheet: Block = ((low, low + wide), (1280 - thick, 1280), (1000, 1001))
    seen = [((b[0]), sheet[1], sheet[2]) for blocks in solids.values() for b in blocks if meet(b, sheet)]
    assert less_all([sheet], seen) == [] or gap > lap


@pytest.mark.parametrize(
    ("how", "what"),
    [
        (replace(BOARDED, lap_nm=inches("5")), "boards of the back 5 in wide overlap by 5 in, which is all of them."),
        (
            replace(BOARDED, board_nm=inches("1"), gap_nm=inches("1/4")),
            "with a lap of 3/8 in and a gap of 1/4 in, leave no whole wood between them.",
        ),
    ],
)
def test_boards_that_cannot_be_made_are_refused_with_their_figures(how: BoardedBack, what: str) -> None:
    with pytest.raises(PlanError) as refused:
        closed(how)
    (problem,) = refused.value.problems
    assert problem.where == "C-backboard1"
    assert what in problem.what


# --- frame and panel ----------------------------------------------------------------------------------------


def test_a_panelled_back_is_seen_from_behind() -> None:
    """34 7/8 × 44 7/8; stile 1 is at the left from behind, so at the right of the carcase: 35 7/16 − 3 = 32 7/16.

    Two panels beside each other: 34 7/8 − 3 · 3 = 25 7/8, half of it 12 15/16, + 3/4 − 1/16 = 13 5/8 wide; and
    44 7/8 − 2 · 3 + 3/4 − 1/16 = 39 9/16 long.
    """
    items = closed(PANELLED)
    boards = boards_of(items)
    assert boards["C-back-stile1"].place.right == span("32 7/16", "35 7/16")
    assert boards["C-back-stile1"].lie.out == BACK
    panel = boards["C-back-panel1"]
    assert (panel.width_nm, panel.length_nm, panel.lie.along) == (inches("13 5/8"), inches("39 9/16"), DOWN)
    assert panel.place.right[0] > boards["C-back-panel2"].place.right[0]
    assert overlaps(wood(items)) == []


def test_one_rabbet_of_the_carcase_takes_the_whole_frame() -> None:
    found = rabbets(cuts(PANELLED))
    assert {mark: cut.takes for mark, cut in found.items()} == {
        "C-top": "C-back-stile1",
        "C-right": "C-back-stile1",
        "C-bottom": "C-back-stile1",
        "C-left": "C-back-stile2",
    }
    assert {(cut.u, cut.depth_nm) for cut in found.values()} == {(span("19 1/4", "20"), inches("3/8"))}


@pytest.mark.parametrize("how", [BOARDED, PANELLED])
def test_every_guest_of_the_carcase_lies_in_its_rabbet_with_half_the_play(how: Back) -> None:
    items = closed(how)
    boards = boards_of(items)
    for item in items:
        if isinstance(item, LetIn) and item.host in {"C-top", "C-right", "C-bottom", "C-left"}:
            axis = 2 if item.host in {"C-top", "C-bottom"} else 0
            end = 1 if item.host in {"C-top", "C-right"} else 0
            room, guest = block_of(item.room), block_of(boards[item.guest].place)
            assert abs(room[axis][end] - guest[axis][end]) == inches("1/16")


def test_a_frame_that_cannot_be_made_is_refused() -> None:
    with pytest.raises(PlanError, match=r"C-back: tenons 4 in long come out through stiles 3 in wide"):
        closed(replace(PANELLED, made=replace(PANELLED.made, tenon_nm=inches("4"))))
