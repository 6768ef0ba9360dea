"""Frame and panel: sizes worked out by hand, and the parts set up in space."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise, product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.derive.assembly import Assembly
from planner.derive.cuts import features
from planner.derive.fits import must_fit
from planner.derive.panelled import made_of
from planner.derive.parts import Item, LetIn, Maker, Shape
from planner.domain.panelled import Panelled, Slab
from planner.domain.plan import BoardSize, Feature
from planner.domain.ring import Stuff
from planner.domain.solid import BACK, DOWN, FRONT, LEFT, RIGHT, UP, Lie, Solid, solid
from planner.domain.words import FeatureKind, Held, Role, Surface
from planner.errors import PlanError
from planner.lengths import Grid, Nm
from tests.oracle.assembly_space import Block, grown, less_all, size, spanned
from tests.oracle.wood import alike, all_of, block_of, boards_of, overlaps, volume, wood
from tests.pieces import ash, inches, project

DOOR = Panelled(
    stuff=ash("3/4"),
    stile_nm=inches("2"),
    rail_nm=inches("2 1/4"),
    groove_nm=inches("3/8"),
    tenon_nm=inches("1"),
    panel=ash("1/4"),
    play_nm=inches("1/16"),
    wide=2,
    high=2,
)
"""Four panels; the tenons are a third of the thickness, by the panels (common practice, no source)."""
TO_THE_FRONT = Lie(across=RIGHT, out=FRONT)
MAKER = Maker("C", "C")


def whole(lie: Lie, place: Solid) -> BoardSize:
    return MAKER.board("C-door", Role.DOOR, ash("3/4"), lie, place)


def door(made: Panelled = DOOR, wide: str = "16", high: str = "24") -> list[Item]:
    place = solid((0, inches(wide)), (0, made.stuff.thickness_nm), (0, inches(high)))
    return list(made_of(MAKER, made, whole(TO_THE_FRONT, place), Grid.IN_32))


def spans(board: BoardSize, *ways: tuple[int, int, int]) -> list[tuple[int, int]]:
    return [board.place.along(way) for way in ways]


def span(low: str, high: str) -> tuple[Nm, Nm]:
    return inches(low), inches(high)


def cuts(items: list[Item]) -> list[Feature]:
    made = Assembly(
        boards=boards_of(items),
        let_in=tuple(item for item in items if isinstance(item, LetIn)),
        shapes=tuple(item for item in items if isinstance(item, Shape)),
        openings=(),
    )
    found = features(project(), made, {})
    must_fit(project(), made.boards, found)
    return list(found)


def test_the_parts_of_a_door_of_four_panels() -> None:
    """A door 16 × 24, stiles 2, rails and muntins 2 1/4, grooves 3/8, tenons 1, play 1/16.

    Across: 16 − 2·2 − 2 1/4 = 9 3/4, so openings of 4 7/8. Along: 24 − 3·2 1/4 = 17 1/4, so openings of 8 5/8.
    Rails: 16 − 2·2 + 2·1 = 14 long. Muntins: 8 5/8 + 2·3/8 = 9 3/8 long.
    Panels: 8 5/8 + 3/4 − 1/16 = 9 5/16 long and 4 7/8 + 3/4 − 1/16 = 5 9/16 wide.
    """
    sizes = {mark: (board.length_nm, board.width_nm, board.thickness_nm) for mark, board in boards_of(door()).items()}
    frame = {
        **{f"stile{n}": ("24", "2", "3/4") for n in (1, 2)},
        **{f"crossrail{n}": ("14", "2 1/4", "3/4") for n in (1, 2, 3)},
        **{f"muntin{n}": ("9 3/8", "2 1/4", "3/4") for n in (1, 2)},
        **{f"panel{n}": ("9 5/16", "5 9/16", "1/4") for n in (1, 2, 3, 4)},
    }
    assert sizes == {f"C-door-{part}": tuple(map(inches, three)) for part, three in frame.items()}


def test_numbers_are_read_from_the_left_and_from_the_top() -> None:
    """Openings across: 2 to 6 7/8 and 9 1/8 to 14; up: 13 1/8 to 21 3/4 above 2 1/4 to 10 7/8.

    A panel stands 3/8 − 1/32 = 11/32 in its grooves all round.
    """
    boards = boards_of(door())
    assert spans(boards["C-door-stile2"], RIGHT, UP) == [span("14", "16"), span("0", "24")]
    assert [boards[f"C-door-crossrail{n}"].place.up for n in (1, 2, 3)] == [
        span("21 3/4", "24"), span("10 7/8", "13 1/8"), span("0", "2 1/4"),
    ]  # fmt: skip
    left, right = span("1 21/32", "7 7/32"), span("8 25/32", "14 11/32")
    upper, lower = span("12 25/32", "22 3/32"), span("1 29/32", "11 7/32")
    assert [spans(boards[f"C-door-panel{n}"], RIGHT, UP) for n in (1, 2, 3, 4)] == [
        [left, upper], [right, upper], [left, lower], [right, lower],
    ]  # fmt: skip
    assert {board.place.back for mark, board in boards.items() if "panel" in mark} == {span("1/4", "1/2")}


def test_grain_runs_up_and_down_but_in_the_rails() -> None:
    grain = {board.role: board.lie.along for board in boards_of(door()).values()}
    assert grain == {Role.STILE: DOWN, Role.FRAME_RAIL: RIGHT, Role.MUNTIN: DOWN, Role.PANEL: DOWN}


def test_the_parts_fill_the_door_and_nothing_overlaps() -> None:
    """What is not filled: before and behind the panels, and their play.

    16 · 24 · 3/4 = 288 cubic inches. The openings are 4 · 4 7/8 · 8 5/8 = 168.1875 square inches, and 1/2 in of the
    thickness is open: 84.09375. The rooms of the panels are 4 · 5 5/8 · 9 3/8 · 1/4 = 52.734375, the panels
    4 · 5 9/16 · 9 5/16 · 1/4 = 51.80078125. So 288 − 84.09375 − 0.93359375 = 202.97265625 are filled.
    """
    items = door()
    solids = wood(items)
    assert overlaps(solids) == []
    assert volume(all_of(solids)) * 10**8 == 202_97265625 * inches("1") ** 3
    rights, ups = (span("2", "6 7/8"), span("9 1/8", "14")), (span("2 1/4", "10 7/8"), span("13 1/8", "21 3/4"))
    block = (span("0", "16"), span("0", "3/4"), span("0", "24"))
    openings = [(right, block[1], up) for right, up in product(rights, ups)]
    assert alike(all_of(solids), filled(block, openings, DOOR, _panels(items)))


def _panels(items: list[Item]) -> list[Block]:
    return [block_of(board.place) for board in boards_of(items).values() if board.role is Role.PANEL]


def filled(block: Block, openings: Sequence[Block], made: Panelled, panels: list[Block], out: int = 1) -> list[Block]:
    """A block less what lies before and behind its panels, and less the play around them.

    Openings go through the whole thickness, along the axis ``out``; the rooms of the panels are larger by the grooves
    and as thick as the panels.
    """
    empty: list[Block] = []
    for opening in openings:
        room = opening
        for axis in range(3):
            more = made.groove_nm if axis != out else 0
            room = grown(room, axis, more, more)
        room = spanned(room, out, panels[0][out])
        empty += [*less_all([opening], [room]), *less_all([room], panels)]
    return less_all([block], empty)


def test_the_stiles_have_one_groove_right_through_and_a_mortise_for_each_rail() -> None:
    """From the top of stile 1; its inner edge is the far one, 2 from the reference edge.

    The tenon of an outer rail is 2 1/4 − 3/8 = 1 7/8 wide, a third of which is 5/8: so the mortises go from 5/8 to
    1 7/8, and from 24 − 1 7/8 to 24 − 5/8. The middle rail's tenon, from 10 7/8 + 3/8 to 13 1/8 − 3/8, has no haunch.
    """
    at = [cut for cut in cuts(door()) if cut.board == "C-door-stile1"]
    middle = span("1/4", "1/2")
    assert {(cut.kind, cut.takes, cut.held) for cut in at} == {
        (FeatureKind.GROOVE, "C-door-panel1", Held.FREE),
        *((FeatureKind.MORTISE, f"C-door-crossrail{n}", Held.GLUED) for n in (1, 2, 3)),
    }
    assert {cut.face for cut in at} == {Surface.FAR_EDGE}
    by_guest = {cut.takes: (cut.x, cut.u, cut.y) for cut in at}
    assert by_guest == {
        "C-door-panel1": (span("0", "24"), span("1 5/8", "2"), middle),
        "C-door-crossrail1": (span("5/8", "1 7/8"), span("1", "2"), middle),
        "C-door-crossrail2": (span("11 1/4", "12 3/4"), span("1", "2"), middle),
        "C-door-crossrail3": (span("22 1/8", "23 3/8"), span("1", "2"), middle),
    }


def test_every_panel_is_named_at_what_is_beside_it() -> None:
    """A groove that several panels share is named after the first: so each panel is named by its upright and rails."""
    grooves = {(cut.board, cut.takes) for cut in cuts(door()) if cut.kind is FeatureKind.GROOVE}
    assert {(board.removeprefix("C-door-"), panel.removeprefix("C-door-")) for board, panel in grooves} == {
        ("stile1", "panel1"), ("stile2", "panel2"),
        ("crossrail1", "panel1"), ("crossrail2", "panel1"), ("crossrail2", "panel3"), ("crossrail3", "panel3"),
        ("muntin1", "panel1"), ("muntin1", "panel2"), ("muntin2", "panel3"), ("muntin2", "panel4"),
    }  # fmt: skip


def test_the_top_rail_has_tenons_with_a_haunch_as_long_as_the_groove_is_deep() -> None:
    """14 long; from its lower, reference edge: groove to 3/8, tenon from there to 2 1/4, haunch in the last 5/8.

    The haunch stands 3/8 out of the shoulder, so 1 − 3/8 = 5/8 is cut away before it.
    """
    at = [cut for cut in cuts(door()) if cut.board == "C-door-crossrail1"]
    through, middle = span("0", "3/4"), span("1/4", "1/2")
    found = {(cut.kind, cut.x, cut.u, cut.y) for cut in at}
    assert found == {
        (FeatureKind.GROOVE, span("0", "14"), span("0", "3/8"), middle),
        (FeatureKind.TENON, span("0", "1"), span("3/8", "2 1/4"), middle),
        (FeatureKind.TENON, span("13", "14"), span("3/8", "2 1/4"), middle),
        (FeatureKind.NOTCH, span("0", "5/8"), span("1 5/8", "2 1/4"), through),
        (FeatureKind.NOTCH, span("13 3/8", "14"), span("1 5/8", "2 1/4"), through),
    }
    assert [cut.face for cut in at if cut.kind is FeatureKind.TENON] == [Surface.END_A, Surface.END_B]


def test_a_muntin_takes_a_panel_on_each_edge_and_has_stub_tenons() -> None:
    at = [cut for cut in cuts(door()) if cut.board == "C-door-muntin2"]
    through, middle = span("0", "9 3/8"), span("1/4", "1/2")
    assert {(cut.kind, cut.takes, cut.face, cut.x, cut.u, cut.y) for cut in at} == {
        (FeatureKind.GROOVE, "C-door-panel3", Surface.REFERENCE_EDGE, through, span("0", "3/8"), middle),
        (FeatureKind.GROOVE, "C-door-panel4", Surface.FAR_EDGE, through, span("1 7/8", "2 1/4"), middle),
        (FeatureKind.TENON, "", Surface.END_A, span("0", "3/8"), span("3/8", "1 7/8"), middle),
        (FeatureKind.TENON, "", Surface.END_B, span("9", "9 3/8"), span("3/8", "1 7/8"), middle),
    }


def test_tenons_no_longer_than_the_groove_need_no_mortise_and_no_haunch() -> None:
    items = door(replace(DOOR, tenon_nm=DOOR.groove_nm))
    assert {cut.kind for cut in cuts(items)} == {FeatureKind.GROOVE, FeatureKind.TENON}
    assert boards_of(items)["C-door-crossrail1"].length_nm == inches("12 3/4")
    assert overlaps(wood(items)) == []


def test_a_slab_stays_as_it_is() -> None:
    as_one = whole(TO_THE_FRONT, solid((0, inches("16")), (0, inches("3/4")), (0, inches("24"))))
    assert list(made_of(MAKER, Slab(stuff=ash("3/4")), as_one, Grid.IN_32)) == [as_one]


# --- over many frames ---------------------------------------------------------------------------------------

STAND = (
    TO_THE_FRONT,
    Lie(across=LEFT, out=BACK),
    Lie(across=BACK, out=UP),
)
"""Doors, backs, lids."""


@st.composite
def frames(draw: st.DrawFn) -> tuple[Panelled, BoardSize]:
    """A frame that can be made, of odd sizes, and the block that it fills."""
    thick = draw(st.integers(3, 40))
    groove = draw(st.integers(2, 12))
    made = Panelled(
        stuff=Stuff(material="ash", thickness_nm=Nm(thick)),
        stile_nm=Nm(groove + draw(st.integers(1, 60))),
        rail_nm=Nm(2 * groove + draw(st.integers(1, 60))),
        groove_nm=Nm(groove),
        tenon_nm=Nm(0),
        panel=Stuff(material="ply", thickness_nm=Nm(draw(st.integers(1, thick - 1)))),
        play_nm=Nm(draw(st.integers(0, groove - 1))),
        wide=draw(st.integers(1, 4)),
        high=draw(st.integers(1, 4)),
    )
    made = replace(made, tenon_nm=Nm(draw(st.integers(groove, made.stile_nm - 1))))
    lie = draw(st.sampled_from(STAND))
    across = 2 * made.stile_nm + (made.wide - 1) * made.rail_nm + draw(st.integers(made.wide, 300))
    along = (made.high + 1) * made.rail_nm + draw(st.integers(made.high, 300))
    at = solid((0, thick), (0, thick), (0, thick)).with_span(lie.across, (7, 7 + across))
    return made, whole(lie, at.with_span(lie.along, (-5, along - 5)))


@given(frames(), st.sampled_from(Grid))
def test_every_frame_closes(given_frame: tuple[Panelled, BoardSize], grid: Grid) -> None:
    """Nothing overlaps, and but for openings and play the whole is solid.

    Openings are measured here from stile to muntin and from rail to rail, as with a tape.
    """
    made, as_one = given_frame
    items = list(made_of(MAKER, made, as_one, grid))
    boards, solids, panels = boards_of(items), wood(items), _panels(items)
    out, across, along = (_axis(way) for way in (as_one.lie.out, as_one.lie.across, as_one.lie.along))
    openings = _measured(list(boards.values()), block_of(as_one.place), across, along)
    assert len(openings) == len(panels) == made.wide * made.high
    assert overlaps(solids) == []
    assert alike(all_of(solids), filled(block_of(as_one.place), openings, made, panels, out))
    for axis, count in ((across, made.wide), (along, made.high)):
        sizes = [size(panel, axis) for panel in panels]
        assert max(sizes) - min(sizes) <= 1
        clear = {opening[axis] for opening in openings}
        assert len(clear) == count
        play = 2 * made.groove_nm * count + sum(high - low for low, high in clear) - count * made.play_nm
        assert sum(high - low for low, high in {panel[axis] for panel in panels}) == play


def _axis(way: tuple[int, int, int]) -> int:
    return next(axis for axis in range(3) if way[axis])


def _measured(boards: list[BoardSize], block: Block, across: int, along: int) -> list[Block]:
    rails = sorted(block_of(board.place)[along] for board in boards if board.role is Role.FRAME_RAIL)
    uprights = [block_of(board.place) for board in boards if board.role in {Role.STILE, Role.MUNTIN}]
    found: list[Block] = []
    for (_, low), (high, _) in pairwise(rails):
        passing = sorted(each[across] for each in uprights if each[along][0] < high and each[along][1] > low)
        for (_, left), (right, _) in pairwise(passing):
            found.append(spanned(spanned(block, along, (low, high)), across, (left, right)))
    return found


# --- what can't be made -------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("made", "wide", "what"),
    [
        (DOOR, "6 1/4", "is 6 1/4 in across its stiles, stiles and muntins take 6 1/4 in: no panel is left."),
        (replace(DOOR, wide=1), "4", "is 4 in across its stiles, stiles and muntins take 4 in"),
        (replace(DOOR, high=10), "16", "is 24 in along its stiles, rails take 24 3/4 in"),
        (replace(DOOR, panel=ash("3/4")), "16", "panels 3/4 in thick leaves no wood in a frame 3/4 in thick."),
        (replace(DOOR, groove_nm=inches("2")), "16", "a groove 2 in deep goes right through stiles 2 in wide."),
        (replace(DOOR, rail_nm=inches("3/4")), "16", "grooves 3/8 in deep on both edges leave no wood in rails 3/4 in"),
        (replace(DOOR, wide=1, high=1, rail_nm=inches("3/8")), "16", "grooves 3/8 in deep leave no wood in rails 3/8"),
        (replace(DOOR, tenon_nm=inches("1/4")), "16", "tenons 1/4 in long don't fill a groove 3/8 in deep."),
        (replace(DOOR, tenon_nm=inches("2")), "16", "tenons 2 in long come out through stiles 2 in wide."),
        (
            replace(DOOR, play_nm=inches("3/8")),
            "16",
            "panels with 3/8 in of play can slip out of a groove 3/8 in deep.",
        ),
    ],
)
def test_a_frame_that_cannot_be_made_is_refused_with_its_figures(made: Panelled, wide: str, what: str) -> None:
    with pytest.raises(PlanError) as refused:
        door(made, wide)
    assert {problem.where for problem in refused.value.problems} == {"C-door"}
    assert any(what in problem.what for problem in refused.value.problems)
    assert all(problem.remedy for problem in refused.value.problems)


def test_all_that_is_wrong_with_a_frame_is_told_at_once() -> None:
    with pytest.raises(PlanError) as refused:
        door(replace(DOOR, panel=ash("3/4"), tenon_nm=inches("1/4"), play_nm=inches("1/2")), "6")
    assert len(refused.value.problems) == 4
