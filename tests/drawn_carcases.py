"""Hypothesis strategies for carcases, valid by construction."""

from __future__ import annotations

from functools import cache
from typing import TypeVar

from hypothesis import strategies as st

from planner.domain.carcase import (
    Back,
    BackPanel,
    BoardedBack,
    Carcase,
    Dividers,
    Frames,
    HangingRail,
    PanelledBack,
    Plinth,
    Rails,
    Runners,
    SeparateTop,
    Stand,
)
from planner.domain.ring import Ring, Stuff, make_ring, with_rabbets
from planner.domain.space import Space
from planner.domain.spacing import Spacing
from planner.domain.use import UNSAID, FixedTo, Floor, Load, LoadKind, LoadUnit, Use
from planner.domain.words import DividerJoint, DividerKind, PinPair, RingKind, RunnerKind, SizesOver
from planner.lengths import Nm, Unit
from tests.drawn_spaces import Marking, inside_of
from tests.small_parts import (
    MM,
    Shop,
    allowances,
    cut_depths,
    lengths,
    names,
    own_spacings,
    panelled,
    spacings,
    stuffs,
    with_own,
)

Part = TypeVar("Part")

_IN = 25_400_000
_USUAL_SPACINGS = {
    Unit.INCH: Spacing(
        half_pin_nm=Nm(_IN // 4), pin_nm=Nm(_IN // 4), tails=None, tail_nm=Nm(_IN), greatest_tail_nm=Nm(_IN * 7 // 4)
    ),
    Unit.MM: Spacing(
        half_pin_nm=Nm(6 * MM), pin_nm=Nm(6 * MM), tails=None, tail_nm=Nm(25 * MM), greatest_tail_nm=Nm(45 * MM)
    ),
}
"""What stands in a ring that has no pins: the usual spacing."""


@st.composite
def carcases(draw: st.DrawFn, shop: Shop, unit: Unit, mark: str, markings: list[Marking]) -> Carcase:
    """A carcase with a column for each of these markings."""
    stuff = draw(stuffs(shop, 10 * MM))
    spaces = inside_of(draw, shop, markings)
    needed = _dividers_in(spaces)

    def part(kind: DividerKind, strategy: st.SearchStrategy[Part]) -> Part | None:
        return draw(strategy if kind in needed else st.none() | strategy)

    return Carcase(
        title=draw(st.just("") | names()),
        ring=draw(_rings(shop, unit, mark, stuff)),
        width_nm=draw(lengths(300 * MM)),
        height_nm=draw(lengths(300 * MM)),
        depth_nm=draw(lengths(200 * MM, 700 * MM)),
        sizes_over=draw(st.sampled_from(SizesOver)),
        inside=spaces,
        rails=part(DividerKind.RAIL, _rails(shop, stuff)),
        partitions=part(DividerKind.PARTITION, _dividers(shop, stuff)),
        shelves=part(DividerKind.SHELF, _dividers(shop, stuff)),
        frames=part(DividerKind.FRAME, _frames(shop, stuff)),
        runners=draw(st.none() | _runners(shop)),
        back=draw(st.none() | _backs(shop, stuff.thickness_nm)),
        base=draw(st.none() | _plinths(shop, f"{mark}P") | _plinths(shop, f"{mark}9") | _stands(shop)),
        top=draw(st.none() | _tops(shop, stuff)),
        hanging_rail=draw(st.none() | _hanging_rails(shop, stuff)),
        use=draw(st.just(UNSAID) | _uses()),
    )


def _dividers_in(inside: Space) -> set[DividerKind]:
    return {division.divider for division in inside.divisions() if len(division.spaces) > 1}


@st.composite
def _rings(draw: st.DrawFn, shop: Shop, unit: Unit, mark: str, stuff: Stuff) -> Ring:
    pin_pair = draw(st.sampled_from(PinPair))
    if draw(st.integers(0, 3)) == 0:
        ring = make_ring(mark, RingKind.CARCASE, (stuff,) * 4, pin_pair, _USUAL_SPACINGS[unit], shop.sleds[0])
        return with_rabbets(ring, draw(cut_depths(stuff.thickness_nm)))
    spacing, sled = draw(spacings()), draw(st.sampled_from(shop.sleds))
    ring = make_ring(mark, RingKind.CARCASE, (stuff,) * 4, pin_pair, spacing, sled)
    return with_own(ring, draw(own_spacings(spacings())))


# --- what divides it ----------------------------------------------------------------------------------------


def _rails(shop: Shop, carcase: Stuff) -> st.SearchStrategy[Rails]:
    return st.builds(
        Rails,
        stuff=stuffs(shop) | stuffs(Shop((carcase.material,), shop.sleds)),
        width_nm=lengths(30 * MM, 100 * MM),
        housing_depth_nm=cut_depths(carcase.thickness_nm),
    )


def _dividers(shop: Shop, carcase: Stuff) -> st.SearchStrategy[Dividers]:
    stuff = st.just(carcase) | stuffs(shop)
    depth = cut_depths(carcase.thickness_nm)
    plain = st.builds(Dividers, stuff=stuff, housing_depth_nm=depth)
    stopped = st.builds(
        Dividers,
        stuff=stuff,
        housing_depth_nm=depth,
        joint=st.just(DividerJoint.STOPPED_HOUSING),
        stop_nm=lengths(5 * MM, 40 * MM) | st.sampled_from([Nm(12_700_000), Nm(12 * MM)]),
    )
    tenons = st.builds(
        Dividers,
        stuff=stuff,
        housing_depth_nm=st.just(Nm(0)),
        joint=st.just(DividerJoint.THROUGH_TENONS),
        tenons=st.integers(1, 20),
    )
    return plain | stopped | tenons


def _frames(shop: Shop, carcase: Stuff) -> st.SearchStrategy[Frames]:
    width = lengths(30 * MM, 90 * MM) | st.sampled_from([Nm(50_800_000), Nm(50 * MM)])
    return st.builds(
        Frames,
        stuff=st.just(carcase) | stuffs(shop),
        rail_nm=width,
        runner_nm=width,
        housing_depth_nm=cut_depths(carcase.thickness_nm),
        groove_nm=lengths(4 * MM, 15 * MM),
        tenon_nm=lengths(3 * MM, 8 * MM),
        dust_panel=st.none() | stuffs(shop, 3 * MM, 8 * MM),
        play_nm=allowances(3 * MM),
    )


@cache
def _runners(shop: Shop) -> st.SearchStrategy[Runners]:
    width = lengths(10 * MM, 40 * MM)
    wood = st.builds(Runners, kind=st.just(RunnerKind.WOOD), stuff=stuffs(shop), width_nm=width, kickers=st.booleans())
    hung = st.builds(
        Runners, kind=st.just(RunnerKind.SIDE_HUNG), stuff=stuffs(shop), width_nm=width, kickers=st.just(value=False)
    )
    slides = st.just(Runners(kind=RunnerKind.SLIDES, stuff=None, width_nm=Nm(0), kickers=False))
    return wood | hung | slides


# --- what closes it -----------------------------------------------------------------------------------------


def _backs(shop: Shop, thickness: int) -> st.SearchStrategy[Back]:
    shared = {"rabbet_depth_nm": cut_depths(thickness), "play_nm": allowances(3 * MM)}
    sheet = stuffs(shop, 3 * MM, 10 * MM)
    boarded = st.builds(
        BoardedBack,
        stuff=sheet,
        board_nm=lengths(31 * MM, 150 * MM),
        lap_nm=lengths(4 * MM, 15 * MM),
        gap_nm=allowances(3 * MM),
        **shared,
    )
    panel = st.builds(BackPanel, stuff=sheet, **shared)
    return panel | boarded | st.builds(PanelledBack, made=panelled(shop), **shared)


@cache
def _either_way() -> st.SearchStrategy[Nm]:
    return st.just(Nm(0)) | lengths(1, 60 * MM) | lengths(1, 60 * MM).map(lambda out: Nm(-out))


@cache
@st.composite
def _plinths(draw: st.DrawFn, shop: Shop, mark: str) -> Plinth:
    """A plinth, or bracket feet."""
    stuff, height = draw(stuffs(shop)), draw(lengths(60 * MM, 180 * MM))
    ring = make_ring(
        mark,
        RingKind.UPRIGHT,
        (stuff,) * 4,
        draw(st.sampled_from(PinPair)),
        draw(spacings()),
        draw(st.sampled_from(shop.sleds)),
    )
    feet = draw(st.booleans())
    return Plinth(
        ring=with_own(ring, draw(own_spacings(spacings()))),
        height_nm=height,
        front_nm=draw(_either_way()),
        sides_nm=draw(_either_way()),
        back_nm=draw(_either_way()),
        foot_nm=draw(lengths(40 * MM, 200 * MM)) if feet else None,
        rise_nm=draw(cut_depths(height)) if feet else Nm(0),
    )


@cache
@st.composite
def _stands(draw: st.DrawFn, shop: Shop) -> Stand:
    leg, apron = draw(stuffs(shop, 30 * MM, 80 * MM)), draw(stuffs(shop))
    return Stand(
        leg=draw(st.just(Stuff(material=apron.material, thickness_nm=leg.thickness_nm)) | st.just(leg)),
        apron=apron,
        height_nm=draw(lengths(200 * MM, 700 * MM)),
        apron_nm=draw(lengths(50 * MM, 150 * MM)),
        tenon_nm=draw(cut_depths(leg.thickness_nm)),
        front_nm=draw(_either_way()),
        sides_nm=draw(_either_way()),
        back_nm=draw(_either_way()),
        setback_nm=draw(lengths(1 * MM, 10 * MM)),
    )


def _tops(shop: Shop, carcase: Stuff) -> st.SearchStrategy[SeparateTop]:
    return st.builds(
        SeparateTop,
        stuff=st.just(carcase) | stuffs(shop),
        front_nm=allowances(40 * MM),
        sides_nm=allowances(40 * MM),
        back_nm=allowances(40 * MM),
    )


# --- how it is used -----------------------------------------------------------------------------------------


def _uses() -> st.SearchStrategy[Use]:
    loads = st.none() | _loads()
    return st.builds(
        Use,
        fixed_to=st.sampled_from(FixedTo),
        floor=st.sampled_from(Floor),
        open_at_once=st.none() | st.integers(1, 50),
        shelves=loads,
        drawers=loads,
        top=loads,
        sag=st.none() | st.integers(100, 2000),
    )


def _loads() -> st.SearchStrategy[Load]:
    own = st.builds(
        Load, kind=st.just(LoadKind.OWN), thousandths=st.integers(1, 9_999_999), unit=st.sampled_from(LoadUnit)
    )
    return own | st.builds(Load, kind=st.sampled_from([kind for kind in LoadKind if kind is not LoadKind.OWN]))


def _hanging_rails(shop: Shop, carcase: Stuff) -> st.SearchStrategy[HangingRail]:
    width = lengths(30 * MM, 120 * MM) | st.sampled_from([Nm(76_200_000), Nm(75 * MM)])
    return st.builds(HangingRail, stuff=st.just(carcase) | stuffs(shop), width_nm=width)
