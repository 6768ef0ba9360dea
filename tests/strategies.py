"""Hypothesis strategy for whole projects, valid by construction: nothing is filtered.

``projects()`` gives anything that file and store must be able to keep: both units, batches of boxes with lids and
tills, carcases with bases, tops, doors and backs of all kinds, columns and tiers within each other, every height rule,
drawers that differ from each other in some keys. Sizes are plausible one by one, but need not fit together: such a
chest may have drawers too small for their bottoms.

For pieces from which a plan can be made, see ``tests/buildable.py``.
"""

from __future__ import annotations

from hypothesis import strategies as st

from planner.domain.acknowledged import Acknowledged
from planner.domain.box import Box, HingedLid, SawnLid, Till
from planner.domain.project import Project
from planner.domain.ring import Stuff, make_ring
from planner.domain.words import DrawersCut, Level, PinPair, RingKind, SizesOver
from planner.lengths import Grid, Unit
from tests.drawn_carcases import carcases
from tests.drawn_spaces import marking
from tests.drawn_stock import stocks
from tests.drawn_wood import climates, materials, own_timbers, rooms
from tests.small_parts import (
    MM,
    Shop,
    allowances,
    bottoms,
    cut_depths,
    lengths,
    made,
    names,
    own_spacings,
    rates,
    sleds,
    spacings,
    stuffs,
    with_own,
)

# --- boxes --------------------------------------------------------------------------------------------------

_LOWEST = 40 * MM


@st.composite
def batches(draw: st.DrawFn, shop: Shop, mark: str) -> tuple[Box, ...]:
    """One box, or a batch of boxes that are alike but for their marks."""
    stuff = draw(stuffs(shop))
    pin_pair, spacing, sled = draw(st.sampled_from(PinPair)), draw(spacings()), draw(st.sampled_from(shop.sleds))
    own = draw(own_spacings(spacings()))
    lid = draw(st.none() | _hinged(shop, stuff) | _sawn(shop, stuff))
    facts = {
        "title": draw(st.just("") | names()),
        "length_nm": draw(lengths(60 * MM)),
        "width_nm": draw(lengths(60 * MM)),
        "height_nm": draw(lengths(_LOWEST, 500 * MM)),
        "sizes_over": draw(st.sampled_from(SizesOver)),
        "bottom": draw(st.none() | bottoms(shop, stuff.thickness_nm)),
        "lid": lid,
        "till": None if isinstance(lid, SawnLid) else draw(st.none() | _tills(shop, stuff)),
    }
    count = draw(st.just(1) | st.integers(2, 12))
    marks = [mark] if count == 1 else [f"{mark}{number}" for number in range(1, count + 1)]
    rings = [make_ring(each, RingKind.UPRIGHT, (stuff,) * 4, pin_pair, spacing, sled) for each in marks]
    return tuple(Box(batch=mark, ring=with_own(ring, own), **facts) for ring in rings)


def _hinged(shop: Shop, box: Stuff) -> st.SearchStrategy[HingedLid]:
    over = allowances(30 * MM)
    lids = made(shop) | made(Shop((box.material,), shop.sleds))
    return st.builds(HingedLid, made=lids, front_nm=over, sides_nm=over, back_nm=over)


def _sawn(shop: Shop, box: Stuff) -> st.SearchStrategy[SawnLid]:
    """Lids that leave something of the lowest box."""
    height, kerf = lengths(10 * MM, _LOWEST // 2), lengths(MM, 4 * MM)
    return st.builds(SawnLid, top=bottoms(shop, box.thickness_nm), height_nm=height, kerf_nm=kerf)


def _tills(shop: Shop, box: Stuff) -> st.SearchStrategy[Till]:
    return st.builds(
        Till,
        stuff=stuffs(shop, 4 * MM, 15 * MM),
        width_nm=lengths(40 * MM, 200 * MM),
        depth_nm=lengths(40 * MM, 150 * MM),
        housing_depth_nm=cut_depths(box.thickness_nm),
        lid=st.none() | stuffs(shop, 4 * MM, 15 * MM),
    )


# --- whole projects -----------------------------------------------------------------------------------------


def acknowledged() -> st.SearchStrategy[tuple[Acknowledged, ...]]:
    """Findings that somebody has answered for."""
    one = st.builds(
        Acknowledged,
        code=st.sampled_from(["cross-grain", "thin-pins", "a1"]),
        marks=st.lists(names(), max_size=3).map(tuple),
        level=st.sampled_from(Level),
        why=names(),
    )
    return st.lists(one, max_size=3, unique_by=lambda each: (each.code, each.marks)).map(tuple)


@st.composite
def projects(draw: st.DrawFn) -> Project:
    """Projects that file and store must keep exactly; no two rings share the first letter of their mark."""
    unit = draw(st.sampled_from(Unit))
    material_names = draw(st.lists(names(), min_size=1, max_size=3, unique=True))
    sled_names = draw(st.lists(names(), min_size=1, max_size=2, unique=True))
    shop = Shop(tuple(material_names), tuple(sled_names))
    timber_names = draw(st.lists(names() | st.just("Cherry, black"), max_size=2, unique=True))
    timbers = tuple(draw(own_timbers(name)) for name in timber_names)
    box_count = draw(st.integers(0, 3))
    carcase_count = draw(st.integers(0 if box_count else 1, 2))
    letters = draw(st.permutations("ABCEFGHKLMNPQRSTUWXYZ"))
    column_counts = [draw(st.integers(1, 3)) for _ in range(carcase_count)]
    columns = iter(range(1, sum(column_counts) + 1))
    return Project(
        name=draw(names()),
        unit=unit,
        grid=draw(st.sampled_from([grid for grid in Grid if grid.unit is unit])),
        proud_nm=draw(allowances(2 * MM)),
        drawers_cut=draw(st.sampled_from(DrawersCut)),
        height_tolerance_nm=draw(allowances(2 * MM)),
        materials=tuple(draw(materials(name, timbers)) for name in material_names),
        timbers=timbers,
        room=draw(st.none() | rooms()),
        shop=draw(st.none() | climates()),
        stock=draw(st.none() | stocks(material_names)),
        sleds=tuple(draw(sleds(name)) for name in sled_names),
        boxes=tuple(box for mark in letters[:box_count] for box in draw(batches(shop, mark))),
        carcases=tuple(
            draw(
                carcases(
                    shop,
                    unit,
                    mark,
                    [
                        marking(draw, number, letters[4 + number], only_column=sum(column_counts) == 1)
                        for number in [next(columns) for _ in range(count)]
                    ],
                )
            )
            for mark, count in zip(letters[3:5], column_counts, strict=False)
        ),
        rates=draw(rates()),
        acknowledged=draw(acknowledged()),
    )
