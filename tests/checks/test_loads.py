"""Sag, tipping and lifting: pieces whose figures are worked out beside the program."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from math import asin, cos, prod, sin

import pytest

from planner.checks.facts import Facts
from planner.checks.sag import sag
from planner.checks.tips import tips
from planner.checks.two_people import two_people
from planner.derive.spans import bearings
from planner.derive.standing import on_floor
from planner.domain.carcase import Carcase, Dividers, HangingRail, Plinth, SeparateTop
from planner.domain.plan import Finding
from planner.domain.project import Project
from planner.domain.ring import make_ring
from planner.domain.space import LooseShelves, Space
from planner.domain.timber import Timber
from planner.domain.use import FixedTo, Floor, Load, LoadKind, LoadUnit, Use
from planner.domain.weights import Part
from planner.domain.words import DividerKind, Level, MaterialKind, PinPair, RingKind, Role, SizesOver
from planner.lengths import Nm
from planner.pipeline import plan
from planner.wood.tipping import Push, worst
from tests.golden.hand import sample
from tests.pieces import SPACING, ash, columns, drawer, inches, project, six_drawers, tiers
from tests.timbers import facts_with, timber

IN, LB, G = 0.0254, 0.45359237, 9.80665
PSI = 6894.757293
CHERRY = timber(0.50, gpa=1.49e6 * PSI / 1e9, mpa=12_300 * PSI / 1e6)
"""Wood Handbook table 5-3b in pounds and inches: cherry 1.49 million psi and 12 300 psi."""

SHEET = timber(0.55, gpa=8.0, mpa=40.0, kind=MaterialKind.SHEET)
TIMBERS = {"ash": CHERRY, "ply": SHEET}


def own(figure: float, unit: LoadUnit) -> Load:
    return Load(kind=LoadKind.OWN, thousandths=round(figure * 1000), unit=unit)


def shelved(use: Use, inside: Space | None = None, **more: object) -> Project:
    """A case with 36 clear between its sides and 10 deep, and a fixed shelf of 3/4 halfway up."""
    fixed = columns(tiers(Space(), Space(), by=DividerKind.SHELF))
    carcase = Carcase(
        title="",
        ring=make_ring("C", RingKind.CARCASE, (ash("7/8"),) * 4, PinPair.FIRST_AND_THIRD, SPACING, "main"),
        width_nm=inches("37 3/4"),
        height_nm=inches("40"),
        depth_nm=inches("10"),
        sizes_over=SizesOver.OUTSIDE,
        inside=inside or fixed,
        shelves=Dividers(stuff=ash("3/4"), housing_depth_nm=inches("1/4")),
        use=use,
    )
    return project(carcases=(replace(carcase, **more),))  # type: ignore[arg-type]


def found(made: Project, timbers: dict[str, Timber] | None = None) -> list[Finding]:
    return list(sag(facts_with(made, timbers or TIMBERS)))


# --- shelves -----------------------------------------------------------------------------------------------


def test_the_published_shelf_with_books_and_what_would_help_it() -> None:
    """36 x 10 x 3/4 of cherry, 25 lb/ft: 0.08698 at once (beam-cherry-25plf), x 1.5 = 0.1305; the eye sees 36/384.

    0.08698 · 64 = 5.57, so ~3/32; 0.1305 · 64 = 8.35, so ~1/8; 0.09375 is 3/32. The limit 36/192 = 0.1875 holds.
    To come from 0.1305 to 0.09375, 1.3917 times as stiff: t³ = 0.5871, t = 0.837, so 7/8. A strip of 3/4 on edge:
    I = 0.4672 at 1 1/8 and 0.4943 at 1 3/16, of 0.4893 needed. Sag goes with L⁴, the limit with L: L = 36·0.7186^⅓ =
    32.245, so 32 3/16.
    """
    (finding,) = found(shelved(Use(shelves=Load(kind=LoadKind.BOOKS))))
    assert (finding.code, finding.level, finding.marks) == ("sag-seen", Level.NOTE, ("C-1.1-shelf",))
    assert "36 in of span" in finding.text
    assert "75 lb of books" in finding.text
    assert "~3/32 in at once and about ~1/8 in in the long run" in finding.text
    assert finding.text.endswith("from 3/32 in on the eye sees it.")
    assert finding.remedy == (
        "Make it 7/8 in thick; or glue a strip 3/4 in × 1 3/16 in on edge to its front; "
        "or let it span no more than 32 3/16 in."
    )
    assert "California" in finding.source


def test_a_shelf_that_sags_beyond_the_limit_is_a_caution() -> None:
    """60 lb/ft: 0.08698 · 60/25 = 0.20876 at once, 0.3131 later, over 0.1875.

    (0.3131/0.1875)^⅓ · 0.75 = 0.8898: 15/16. 36 · (0.1875/0.3131)^⅓ = 30.35: 30 5/16. A shelf with the handbook's
    strength of 12 300 psi bears it: 60 lb/ft is 432 psi (180 psi at 15 lb/ft², which is 12.5 lb/ft).
    """
    (finding,) = found(shelved(Use(shelves=own(60, LoadUnit.LB_FT))))
    assert (finding.code, finding.level) == ("sag", Level.CAUTION)
    assert "at most 3/16 in is wanted" in finding.text
    assert "make it 15/16 in thick" in finding.remedy.lower()
    assert "no more than 30 5/16 in" in finding.remedy


def test_a_limit_of_the_makers_own_rules() -> None:
    """0.1305 in the long run is 1 part in 275.9."""
    books = Load(kind=LoadKind.BOOKS)
    assert found(shelved(Use(shelves=books, sag=275))) == []
    (finding,) = found(shelved(Use(shelves=books, sag=276)))
    assert finding.code == "sag"


def test_a_load_that_would_break_the_shelf_stops_the_work() -> None:
    """Stress goes with the load: 180 psi at 12.5 lb/ft, so 14.4 for each lb/ft.

    Of 12 300 psi a quarter is reached at 213.5 lb/ft and half at 427.
    """
    codes = {
        figure: {(each.code, each.level) for each in found(shelved(Use(shelves=own(figure, LoadUnit.LB_FT), sag=100)))}
        for figure in (213, 214, 426, 428)
    }
    stress = [[level for code, level in each if code == "load-too-great"] for each in codes.values()]
    assert stress == [[], [Level.CAUTION], [Level.CAUTION], [Level.STOP]]


def test_a_partition_below_a_shelf_shortens_its_span() -> None:
    """Two columns of 17 9/16 under the shelf (36 − 7/8 over 2): the sag falls to (17.5625/36)⁴."""
    below = columns(Space(), Space())
    inside = columns(tiers(Space(), below, by=DividerKind.SHELF))
    made = shelved(
        Use(shelves=Load(kind=LoadKind.BOOKS)),
        inside,
        partitions=Dividers(stuff=ash("7/8"), housing_depth_nm=inches("1/4")),
    )
    facts = facts_with(made, TIMBERS)
    (shelf,) = (each for each in bearings(made, made.carcases[0], facts.boards, facts.openings) if each.what == "shelf")
    assert shelf.span_nm == inches("17 9/16")
    assert list(sag(facts)) == []


def test_a_loose_shelf_spans_its_own_length() -> None:
    loose = LooseShelves(count=1, stuff=ash("3/4"), play_nm=inches("1/8"), setback_nm=inches("0"))
    made = shelved(Use(shelves=Load(kind=LoadKind.BOOKS)), columns(tiers(Space(holds=loose))))
    (finding,) = found(made)
    assert "35 7/8 in of span" in finding.text


def test_shelves_of_which_the_same_is_to_be_said_share_a_finding() -> None:
    loose = LooseShelves(count=3, stuff=ash("3/4"), play_nm=inches("1/8"), setback_nm=inches("0"))
    made = shelved(Use(shelves=Load(kind=LoadKind.BOOKS)), columns(tiers(Space(holds=loose))))
    (finding,) = found(made)
    assert finding.marks == ("C-1.1-loose1", "C-1.1-loose2", "C-1.1-loose3")
    assert "C-1.1-loose1, C-1.1-loose2, C-1.1-loose3: 35 7/8 in of span" in finding.text


def test_without_a_load_only_what_misses_the_published_class_by_far_is_told() -> None:
    """15 lb/ft²: 0.04349 (beam-cherry-15psf) of 0.1875 allowed. At 3/8 thick eight times that, 0.348: under twice.

    At 11/32: 0.04349 · (0.75/0.34375)³ = 0.4517, over 0.375.
    """

    def shelf(thickness: str) -> list[Finding]:
        shelves = Dividers(stuff=ash(thickness), housing_depth_nm=inches("1/4"))
        return found(shelved(Use(), shelves=shelves))

    assert shelf("3/4") == shelf("3/8") == []
    (finding,) = shelf("11/32")
    assert (finding.code, finding.level) == ("sag-class", Level.NOTE)
    assert "[carcase.use]" in finding.remedy


def test_what_is_of_no_named_timber_is_not_judged() -> None:
    assert found(shelved(Use(shelves=own(500, LoadUnit.LB_FT))), {"ply": SHEET}) == []


def test_a_thicker_shelf_is_never_told_of_when_a_thinner_is_not() -> None:
    told = [
        len(found(shelved(Use(shelves=own(60, LoadUnit.LB_FT)), shelves=Dividers(
            stuff=ash(f"{sixteenths}/16"), housing_depth_nm=inches("1/4"))))) > 0
        for sixteenths in range(8, 24)
    ]  # fmt: skip
    assert told[0]
    assert not told[-1]
    assert all(before or not after for before, after in pairwise(told))


# --- tops, rails and bottoms -------------------------------------------------------------------------------


def test_a_separate_top_bears_with_the_top_below_it() -> None:
    """Both 7/8 of cherry; the upper 11 3/4 deep with 3/4 over front and 1 over the back, the lower 10.

    100 lb/ft on 36: 300 lb. EI = 1.49e6 · (10 + 11.75) · 0.875³/12 = 1.8092e6; 5/384 · 300 · 46 656/1.8092e6 = 0.10074.
    In the long run 0.1511: under 0.1875, over 0.09375.
    """
    top = SeparateTop(stuff=ash("7/8"), front_nm=inches("3/4"), sides_nm=inches("3/4"), back_nm=inches("1"))
    (finding,) = found(shelved(Use(top=own(100, LoadUnit.LB_FT)), top=top))
    assert (finding.code, finding.marks) == ("sag-seen", ("C-topboard",))
    assert "300 lb on it" in finding.text
    # 0.10074 · 64 = 6.45 and 0.1511 · 64 = 9.67
    assert "~3/32 in at once and about ~5/32 in in the long run" in finding.text


def chest(use: Use) -> Project:
    made = six_drawers()
    return replace(made, carcases=(replace(made.carcases[0], use=use),))


def test_a_rail_bears_its_drawer_on_the_drawers_sides() -> None:
    """Opening 34 1/4 wide, rail 3 x 3/4 of cherry; the sides stand 1/16 + 1/4 = 5/16 from its ends.

    W/2·a·(3·L² − 4·a²)/(24·E·I). Clothes on it are nothing; lead, of which 1000 lb/ft² are in the drawer, is.
    """
    assert found(chest(Use(drawers=Load(kind=LoadKind.CLOTHES)))) == []
    facts = facts_with(chest(Use(drawers=own(1000, LoadUnit.LB_FT2))), TIMBERS)
    whole = facts.weights.find("D1", Part.DRAWER)
    assert whole is not None
    pounds = whole.filled_kg / LB
    first = pounds / 2 * 0.3125 * (3 * 34.25**2 - 4 * 0.3125**2) / (24 * 1.49e6 * 3 * 0.75**3 / 12)
    assert 1.5 * first > 34.25 / 192
    (finding,) = (each for each in sag(facts) if "D1-rail" in each.marks and each.code == "sag")
    assert "34 1/4 in of span" in finding.text
    assert f"with {pounds:.0f} lb on it" in finding.text
    assert f"~{Fraction(round(first * 64), 64)} in at once" in finding.text


@pytest.mark.parametrize(("kind", "along"), [("solid", "width"), ("sheet", "shorter")])
def test_a_bottom_counts_as_strips_along_its_grain_or_the_shorter_way(kind: str, along: str) -> None:
    solid = kind == "solid"
    made = chest(Use(drawers=own(20, LoadUnit.LB_FT2)))
    if solid:
        bottoms = [
            replace(each, bottom=replace(each.bottom, stuff=ash("1/4"))) for each in made.drawers() if each.bottom
        ]
        made = replace(made, carcases=(replace(made.carcases[0], inside=columns(tiers(*(
            Space(holds=each) for each in bottoms)))),))  # fmt: skip
    facts = facts_with(made, TIMBERS)
    bottom = next(
        each for each in bearings(made, made.carcases[0], facts.boards, facts.openings) if each.mark == "D1-bottom"
    )
    left, right, front, back = (facts.boards[f"D1-{side}"].place for side in ("left", "right", "front", "back"))
    width, depth = right.right[0] - left.right[1], back.back[0] - front.back[1]
    assert width > depth
    assert (bottom.span_nm, bottom.deep_nm) == ((width, depth) if along == "width" else (depth, width))
    told = [each for each in sag(facts) if "D1-bottom" in each.marks]
    timber_of = CHERRY if solid else SHEET
    span, wide = (size * 1e-9 for size in (bottom.span_nm, bottom.deep_nm))
    load = 20 * LB / (12 * IN) ** 2 * span * wide * G
    first = 5 / 384 * load * span**3 / (timber_of.stiffness_gpa * 1e9 * wide * (0.25 * IN) ** 3 / 12)
    assert bool(told) is (1.5 * first > min(span / 192, 0.25 * IN))


# --- tipping -----------------------------------------------------------------------------------------------

FREE = Use()


def by_boards(facts: Facts, *, front: float, floor: float, fill: float, lean: float = 0.0) -> float:
    """The balance of a chest with all drawers open by two thirds, added up board by board, in N·m."""
    total = 0.0
    drawers = {each.ring.mark: each for each in facts.project.drawers()}
    for mark, board in facts.boards.items():
        weight = facts.weights.find(mark, Part.BOARD)
        assert weight is not None
        back, up = weight.centre[1] * 1e-9 - front, weight.centre[2] * 1e-9 - floor
        if board.box in drawers:
            side = facts.boards[f"{board.box}-left"].place
            back -= (side.back[1] - side.back[0]) * 1e-9 * 2 / 3
        total += weight.kg * G * (back * cos(lean) - up * sin(lean))
    for opening in facts.openings if fill else ():
        sides = {side: facts.boards[f"{opening.drawer}-{side}"].place for side in ("front", "right", "back", "left")}
        bottom = facts.boards[f"{opening.drawer}-bottom"].place
        spans = (
            (sides["left"].right[1], sides["right"].right[0]),
            (sides["front"].back[1], sides["back"].back[0]),
            (bottom.up[1], opening.place.up[1]),
        )
        sizes = [(high - low) * 1e-9 for low, high in spans]
        kg = fill * prod([sizes[0], sizes[1], sizes[2] - 0.125 * IN])
        side = sides["left"]
        back = sum(spans[1]) / 2 * 1e-9 - front - (side.back[1] - side.back[0]) * 1e-9 * 2 / 3
        up = sum(spans[2]) / 2 * 1e-9 - floor
        total += kg * G * (back * cos(lean) - up * sin(lean))
    return total


def test_a_chest_all_open_is_balanced_board_by_board() -> None:
    made = six_drawers()
    facts = facts_with(made, TIMBERS)
    standing = on_floor(made.carcases[0], facts.boards, facts.openings, facts.weights)
    assert standing is not None
    assert standing.height_nm == inches("46")
    assert standing.standing.spacing == pytest.approx(20 * IN)
    for full, density in ((False, 0.0), (True, 136.15694)):
        margin = worst(standing.standing, Push(fills=(full,))).margin
        assert margin == pytest.approx(by_boards(facts, front=0, floor=0, fill=density), rel=1e-5)
    lean = asin(0.43 / 20)
    margin = worst(standing.standing, Push(fills=(True,), lean=lean)).margin
    assert margin == pytest.approx(by_boards(facts, front=0, floor=0, fill=136.15694, lean=lean), rel=1e-5)


def with_plinth(front: str, height: str = "4") -> Project:
    made = six_drawers()
    ring = make_ring("CP", RingKind.UPRIGHT, (ash("7/8"),) * 4, PinPair.SECOND_AND_FOURTH, SPACING, "main")
    nothing = Nm(0)
    plinth = Plinth(
        ring=ring, height_nm=inches(height), front_nm=inches(front), sides_nm=nothing, back_nm=nothing, foot_nm=None,
        rise_nm=nothing,
    )  # fmt: skip
    return replace(made, carcases=(replace(made.carcases[0], base=plinth),))


def test_a_plinth_set_back_brings_the_supports_back() -> None:
    made = with_plinth("3")
    facts = facts_with(made, TIMBERS)
    standing = on_floor(made.carcases[0], facts.boards, facts.openings, facts.weights)
    assert standing is not None
    assert standing.height_nm == inches("50")
    assert standing.standing.spacing == pytest.approx(17 * IN)
    margin = worst(standing.standing, Push()).margin
    assert margin == pytest.approx(by_boards(facts, front=3 * IN, floor=-4 * IN, fill=0), rel=1e-5)


def test_a_chest_comes_under_the_standard_and_would_tip() -> None:
    """46 in high; six drawers some 33 wide and 18 deep hold far more than 3.2 ft³; it weighs over 30 lb."""
    facts = facts_with(six_drawers(), TIMBERS)
    (finding,) = tips(facts)
    assert (finding.code, finding.level, finding.marks) == ("tips", Level.CAUTION, ("C",))
    assert "60 lb on D1" in finding.text  # the highest drawer leans furthest
    assert "come under the published standard" in finding.text
    for always in ("Anchor it to the wall", "estimate and no certified test", "Not verified", "where you live"):
        assert always in finding.remedy
    assert "not read" in finding.source


def test_the_ballast_and_the_fixing_that_are_told_bring_the_balance_to_nothing() -> None:
    """Every situation at its worst, by the brute sum; the greatest wants are what the remedy tells."""
    facts = facts_with(six_drawers(), TIMBERS)
    standing = on_floor(six_drawers().carcases[0], facts.boards, facts.openings, facts.weights)
    assert standing is not None
    lean = asin(0.43 / 20)
    on_child = 60 * LB * G * _edge(facts, lean)
    open_full = by_boards(facts, front=0, floor=0, fill=136.15694, lean=lean) + on_child
    open_bare = by_boards(facts, front=0, floor=0, fill=0, lean=lean) + on_child
    short = -min(open_full, open_bare)
    kg = short / G / (20 * IN * cos(lean) - 2 * IN * sin(lean))
    (finding,) = tips(facts)
    assert f"Ballast of {kg / LB:.0f} lb" in finding.remedy
    assert f"at least {short / (46 * IN) / (LB * G):.0f} lbf" in finding.remedy


def _edge(facts: Facts, lean: float) -> float:
    """Arm of a weight on the front of the open top drawer, at its upper edge."""
    places = [board.place for board in facts.boards.values() if board.box == "D1"]
    side = facts.boards["D1-left"].place
    back = min(place.back[0] for place in places) * 1e-9 - (side.back[1] - side.back[0]) * 1e-9 * 2 / 3
    return back * cos(lean) - max(place.up[1] for place in places) * 1e-9 * sin(lean)


def test_what_the_maker_says_of_its_standing_counts() -> None:
    facts = {use: facts_with(chest(use), TIMBERS) for use in (
        FREE, Use(floor=Floor.HARD), Use(open_at_once=1), Use(fixed_to=FixedTo.WALL),
    )}  # fmt: skip
    (free,), (hard,), (locked,), (fixed,) = (list(tips(each)) for each in facts.values())
    assert "leaning forward as on carpet" in free.text
    assert "leaning" not in hard.text
    assert "A lock that" in free.remedy
    assert "A lock that" not in locked.remedy
    assert (fixed.code, fixed.level) == ("anchor", Level.NOTE)
    assert "as you say" in fixed.remedy
    assert "Ballast" not in fixed.remedy


def test_a_cabinet_on_the_wall_and_one_without_drawers_say_nothing() -> None:
    assert list(tips(facts_with(shelved(FREE), TIMBERS))) == []
    made = six_drawers()
    rail = HangingRail(stuff=ash("3/4"), width_nm=inches("3"))
    hung = replace(made, carcases=(replace(made.carcases[0], hanging_rail=rail),))
    facts = facts_with(made, TIMBERS)
    assert list(tips(replace(facts, project=hung))) == []


def test_a_low_piece_is_outside_the_standard() -> None:
    made = six_drawers()
    low = columns(tiers(Space(holds=drawer("D1")), Space(holds=drawer("D2"))))
    short = replace(made, carcases=(replace(made.carcases[0], height_nm=inches("26"), inside=low),))
    (finding,) = tips(facts_with(short, TIMBERS))
    assert finding.level is Level.NOTE
    assert "does not come under" in finding.text


def test_a_door_swings_half_its_width_before_its_hinge() -> None:
    made = sample("sideboard.toml")
    timbers = {each.name: timber(0.6) for each in made.project.materials}
    facts = facts_with(made.project, timbers)
    standing = on_floor(made.project.carcases[0], facts.boards, facts.openings, facts.weights)
    assert standing is not None
    doors = {each.mark: each for each in standing.standing.opens if not each.limited}
    assert set(doors) == {"S-1.2-door", "S-3.2-door"}
    for mark, door in doors.items():
        places = [board.place for each, board in facts.boards.items() if each.startswith(f"{mark}-")]
        width = max(place.right[1] for place in places) - min(place.right[0] for place in places)
        assert door.travel == pytest.approx(width / 2 * 1e-9, abs=1e-6)  # its stiles are alike
        assert door.edge_back < -width * 0.9e-9


# --- lifting -----------------------------------------------------------------------------------------------


def test_a_heavy_piece_wants_two_people() -> None:
    """23 kg, the load constant of the NIOSH equation (from memory), is 50.7 lb."""
    facts = facts_with(six_drawers(), TIMBERS)
    whole = facts.weights.find("C", Part.PIECE)
    assert whole is not None
    (finding,) = two_people(facts)
    assert (finding.code, finding.level, finding.marks) == ("two-person-lift", Level.NOTE, ("C",))
    assert f"about {whole.kg / LB:.0f} lb, {whole.filled_kg / LB:.0f} lb with its drawers filled" in finding.text
    assert "51 lb at most" in finding.text


def test_light_wood_is_lifted_alone() -> None:
    whole = facts_with(six_drawers(), TIMBERS).weights.find("C", Part.PIECE)
    assert whole is not None
    light = timber(0.5 * 22.9 / whole.kg)
    assert whole.kg > 23
    assert [each.code for each in two_people(facts_with(six_drawers(), {"ash": light, "ply": light}))] == []


def test_drawers_full_of_books_are_told() -> None:
    """40 lb/ft³ in drawers 33 in wide, 18 deep and some 5 high is over 50 lb each."""
    (heavy,) = (
        each for each in two_people(facts_with(chest(Use(drawers=Load(kind=LoadKind.BOOKS))), TIMBERS))
        if each.code == "heavy-drawer"
    )  # fmt: skip
    assert "D6" in heavy.marks


def test_old_projects_without_named_timbers_say_none_of_it() -> None:
    codes = {finding.code for finding in plan(six_drawers()).findings}
    assert not codes & {"sag", "sag-seen", "sag-class", "load-too-great", "tips", "anchor", "two-person-lift"}
    assert Role.SHELF not in {board.role for board in plan(six_drawers()).boards}
