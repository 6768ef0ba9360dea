"""Hypothesis strategy for pieces whose sizes fit together, so that a plan can be made; nothing is filtered."""

from __future__ import annotations

from fractions import Fraction
from functools import cache

from hypothesis import strategies as st

from planner.domain.bottom import BottomPanel
from planner.domain.box import Box
from planner.domain.carcase import BackPanel, Carcase, Dividers, Rails
from planner.domain.drawer import Drawer
from planner.domain.marks import drawer_mark
from planner.domain.material import Material
from planner.domain.project import Project
from planner.domain.ring import Stuff, make_ring
from planner.domain.sled import Sled
from planner.domain.space import Division, Space
from planner.domain.spacing import Spacing
from planner.domain.words import (
    DividerKind,
    EdgeName,
    HeightRule,
    MaterialKind,
    PinPair,
    RingKind,
    SizesOver,
    Spread,
    Way,
)
from planner.lengths import Grid, Nm, Span, Unit
from tests.drawn_drawers import drawer_of
from tests.small_parts import MM, allowances, lengths, own_spacings, ratios, with_own

_LEAST_OPENING = 150 * MM
"""Mean height of an opening; with the steps and ratios below, none gets under 80 mm."""


@cache
def _sound_spacings() -> st.SearchStrategy[Spacing]:
    """Narrow pins and wide tails: on a board 60 mm wide or wider there is a count of tails that the bit can cut.

    The widest bit at the steepest slope needs a socket of 20 mm in a box's boards; between the widest half-pin and the
    middle of the narrowest board there is as much, so one pin listed there leaves room on both sides.
    """
    graduated = {"spread": st.sampled_from([Spread.MIDDLE, Spread.EDGE]), "ratio": ratios()}
    listed = {"spread": st.just(Spread.LISTED), "places": _pin_near_the_middle()}
    return st.one_of(
        [
            st.builds(
                Spacing,
                half_pin_nm=lengths(4 * MM, 8 * MM),
                pin_nm=lengths(3 * MM, 8 * MM),
                tails=st.none(),
                tail_nm=lengths(15 * MM, 40 * MM),
                greatest_tail_nm=lengths(55 * MM, 75 * MM),
                measured_from=st.sampled_from(EdgeName),
                alike=st.booleans(),
                **shared_out,
            )
            for shared_out in ({}, graduated, listed)
        ]
    )


def _pin_near_the_middle() -> st.SearchStrategy[tuple[Span]]:
    return st.tuples(st.tuples(lengths(28 * MM, 29 * MM), lengths(30 * MM, 32 * MM)))


def _wood(least: int, greatest: int) -> st.SearchStrategy[Stuff]:
    return st.builds(Stuff, material=st.just("ash"), thickness_nm=lengths(least, greatest))


def _sheet() -> st.SearchStrategy[Stuff]:
    return st.builds(Stuff, material=st.just("plywood"), thickness_nm=lengths(3 * MM, 8 * MM))


def _sound_bottoms(thinnest: int) -> st.SearchStrategy[BottomPanel]:
    return st.builds(
        BottomPanel,
        stuff=_sheet(),
        groove_depth_nm=st.just(Nm(thinnest // 2)),
        up_nm=st.none() | lengths(8 * MM, 20 * MM),
        play_nm=allowances(2 * MM),
    )


@st.composite
def _sound_boxes(draw: st.DrawFn, mark: str) -> tuple[Box, ...]:
    stuff, spacing = draw(_wood(8 * MM, 20 * MM)), draw(_sound_spacings())
    pin_pair, own = draw(st.sampled_from(PinPair)), draw(own_spacings(_sound_spacings()))
    facts = {
        "title": "",
        "length_nm": draw(lengths(150 * MM, 600 * MM)),
        "width_nm": draw(lengths(150 * MM, 600 * MM)),
        "height_nm": draw(lengths(60 * MM, 300 * MM)),
        "sizes_over": draw(st.sampled_from(SizesOver)),
        "bottom": draw(st.none() | _sound_bottoms(stuff.thickness_nm)),
    }
    count = draw(st.integers(1, 4))
    marks = [mark] if count == 1 else [f"{mark}{number}" for number in range(1, count + 1)]
    rings = [make_ring(each, RingKind.UPRIGHT, (stuff,) * 4, pin_pair, spacing, "bench") for each in marks]
    return tuple(Box(batch=mark, ring=with_own(ring, own), **facts) for ring in rings)


@st.composite
def _sound_drawers(draw: st.DrawFn, marks: list[str]) -> list[Drawer]:
    front, side, back = draw(_wood(12 * MM, 20 * MM)), draw(_wood(8 * MM, 14 * MM)), draw(_wood(8 * MM, 14 * MM))
    thinnest = min(front.thickness_nm, side.thickness_nm, back.thickness_nm)
    facts = {
        "front": front,
        "side": side,
        "back": back,
        "pin_pair": draw(st.sampled_from(PinPair)),
        "spacing": draw(_sound_spacings()),
        "own": draw(own_spacings(_sound_spacings())),
        "hidden_by": None,
        "sled": "bench",
        "side_clearance_nm": draw(lengths(MM // 2, 3 * MM)),
        "top_clearance_nm": draw(lengths(1 * MM, 6 * MM)),
        "back_clearance_nm": draw(allowances()),
        "bottom": draw(st.none() | _sound_bottoms(thinnest)),
    }
    return [drawer_of(mark, facts) for mark in marks]


@st.composite
def _sound_columns(draw: st.DrawFn, marks: list[str], width: Nm | None) -> Space:
    rule = draw(st.sampled_from(HeightRule))
    listed = [draw(lengths(80 * MM, 120 * MM)) if rule is HeightRule.LISTED else None for _ in marks]
    drawers = draw(_sound_drawers(marks))
    tiers = Division(
        way=Way.TIERS,
        divider=DividerKind.RAIL,
        rule=rule if len(marks) > 1 or rule is not HeightRule.LISTED else HeightRule.EQUAL,
        step_nm=draw(lengths(1 * MM, 15 * MM)) if rule is HeightRule.STEP else None,
        ratio=draw(st.sampled_from([Fraction(21, 20), Fraction(6, 5)])) if rule is HeightRule.RATIO else None,
        spaces=tuple(
            Space(size_nm=height, holds=drawer) for height, drawer in zip([*listed[:-1], None], drawers, strict=True)
        ),
    )
    return Space(size_nm=width, holds=tiers)


@st.composite
def _sound_carcases(draw: st.DrawFn, mark: str, drawer_marks: list[list[str]]) -> Carcase:
    """A carcase that is as large as its columns ask for."""
    stuff = draw(_wood(12 * MM, 22 * MM))
    thickness, housing = stuff.thickness_nm, Nm(stuff.thickness_nm // 3)
    rails = Rails(
        stuff=draw(_wood(12 * MM, 22 * MM)), width_nm=draw(lengths(30 * MM, 80 * MM)), housing_depth_nm=housing
    )
    widths = [draw(lengths(180 * MM, 500 * MM)) for _ in drawer_marks]
    most = max(map(len, drawer_marks))
    inside = most * _LEAST_OPENING + (most - 1) * rails.stuff.thickness_nm + draw(allowances(200 * MM))
    back = st.builds(BackPanel, stuff=_sheet(), rabbet_depth_nm=st.just(Nm(thickness // 2)), play_nm=allowances(2 * MM))
    pin_pair, spacing = draw(st.sampled_from(PinPair)), draw(_sound_spacings())
    return Carcase(
        title="",
        ring=with_own(
            make_ring(mark, RingKind.CARCASE, (stuff,) * 4, pin_pair, spacing, "bench"),
            draw(own_spacings(_sound_spacings())),
        ),
        width_nm=Nm(sum(widths) + thickness * (len(widths) + 1)),
        height_nm=Nm(inside + 2 * thickness),
        depth_nm=draw(lengths(250 * MM, 500 * MM)),
        sizes_over=SizesOver.OUTSIDE,
        inside=Space(
            holds=Division(
                way=Way.COLUMNS,
                divider=DividerKind.PARTITION,
                rule=HeightRule.LISTED if len(widths) > 1 else HeightRule.EQUAL,
                step_nm=None,
                ratio=None,
                spaces=tuple(
                    draw(_sound_columns(marks, width))
                    for marks, width in zip(drawer_marks, [*widths[:-1], None], strict=True)
                ),
            )
        ),
        rails=rails if most > 1 else None,
        partitions=Dividers(stuff=stuff, housing_depth_nm=housing) if len(widths) > 1 else None,
        back=draw(st.none() | back),
    )


@st.composite
def _marks_of_drawers(draw: st.DrawFn, carcase_count: int, letters: list[str]) -> list[list[list[str]]]:
    """Marks by carcase and column: the usual ones, or others with a letter of their own."""
    tiers = draw(
        st.lists(st.lists(st.integers(1, 5), min_size=1, max_size=3), min_size=carcase_count, max_size=carcase_count)
    )
    only_column = sum(map(len, tiers)) == 1
    column = 0
    marks: list[list[list[str]]] = []
    for counts in tiers:
        marks.append([])
        for count in counts:
            column += 1
            usual = [drawer_mark(column, tier, only_column=only_column) for tier in range(1, count + 1)]
            own = [f"{letters[column]}{tier}" for tier in range(1, count + 1)]
            marks[-1].append(draw(st.sampled_from([usual, usual, own])))
    return marks


@st.composite
def buildable_projects(draw: st.DrawFn) -> Project:
    """Projects of sizes that fit together, for one sled with room to spare, so that a plan can be made."""
    unit = draw(st.sampled_from(Unit))
    bit = draw(lengths(5 * MM, Nm(12_700_000)))
    sled = Sled(
        name="bench",
        run_micro=draw(st.integers(6_000_000, 9_000_000) | st.sampled_from([6_000_000, 8_000_000])),
        bit_nm=bit,
        slot_nm=draw(st.none() | st.integers(bit, bit + MM // 10).map(Nm)),
        greatest_bit_height_nm=Nm(60 * MM),
        greatest_width_nm=Nm(2_000 * MM),
        greatest_upright_nm=Nm(2_500 * MM),
        greatest_depth_hard_nm=draw(st.none() | st.just(Nm(60 * MM))),
    )
    box_count = draw(st.integers(0, 2))
    carcase_count = draw(st.integers(0 if box_count else 1, 1))
    drawer_marks = draw(_marks_of_drawers(carcase_count, list("ABCEFGHKL")))
    return Project(
        name="Piece",
        unit=unit,
        grid=draw(st.sampled_from([grid for grid in Grid if grid.unit is unit])),
        proud_nm=draw(allowances(2 * MM)),
        height_tolerance_nm=draw(allowances(2 * MM)),
        materials=(Material(name="ash"), Material(name="plywood", kind=MaterialKind.SHEET)),
        sleds=(sled,),
        boxes=tuple(box for mark in "MN"[:box_count] for box in draw(_sound_boxes(mark))),
        carcases=tuple(draw(_sound_carcases("P", marks)) for marks in drawer_marks),
    )
