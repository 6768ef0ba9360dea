"""Hypothesis strategies for cabinets of any division and for boxes, of sizes that fit together; nothing is filtered.

Spaces are divided from the outside in, with the room that is left in hand, so that each drawer keeps enough of it.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from hypothesis import strategies as st

from planner.domain.bottom import BottomPanel
from planner.domain.box import Box, HingedLid, SawnLid, Till
from planner.domain.carcase import (
    Carcase,
    SeparateTop,
)
from planner.domain.drawer import Drawer
from planner.domain.material import Material
from planner.domain.panelled import Slab
from planner.domain.project import Project
from planner.domain.ring import with_rabbets
from planner.domain.sled import MICRO, Sled
from planner.domain.space import Division, LooseShelves, Space
from planner.domain.words import (
    BottomGoes,
    DividerJoint,
    DividerKind,
    HeightRule,
    MaterialKind,
    RingKind,
    RunnerKind,
    SizesOver,
    Way,
)
from planner.lengths import Grid, Nm, Unit
from tests.oracle.assembly_random_parts import (
    LEAST_HIGH,
    LEAST_WIDE,
    MM,
    Shop,
    Ways,
    back_of,
    base_of,
    bottom_of,
    doors_of,
    drawer_of,
    panelled,
    pins_of,
    ways_of,
)


@dataclass(frozen=True, slots=True)
class _Limits:
    """What may still be in a space: divided how often, by uprights, behind a door, with fronts over its edges."""

    depth: int
    uprights: bool = True
    doors: bool = True
    overlays: bool = True


def _space(shop: Shop, ways: Ways, wide: int, high: int, may: _Limits) -> Space:
    """A space about so wide and high, without a size of its own."""
    doors = None
    if may.doors and shop.draw(st.integers(0, 3)) == 0:
        doors = doors_of(shop, wide, high)
        may = replace(may, doors=False, overlays=False)
    return Space(holds=_held(shop, ways, wide, high, may), doors=doors)


def _held(shop: Shop, ways: Ways, wide: int, high: int, may: _Limits) -> Division | Drawer | LooseShelves | None:
    if may.depth and shop.draw(st.integers(0, 4)):
        if may.uprights and _parts_both_ways(ways) and wide > 3 * LEAST_WIDE and shop.yes():
            return _columns(shop, ways, wide, high, may)
        if high > 3 * LEAST_HIGH:
            return _tiers(shop, ways, wide, high, may)
    match shop.draw(st.integers(0, 5)):
        case 0:
            return None
        case 1 if high > 2 * LEAST_HIGH:
            return LooseShelves(
                count=shop.draw(st.integers(1, 3)),
                stuff=shop.wood(12, 20),
                play_nm=shop.between(0, 3),
                setback_nm=shop.between(0, 30),
                pins=pins_of(shop, ways),
            )
        case _:
            hung = ways.runners.kind is RunnerKind.SIDE_HUNG
            return drawer_of(shop, hung=hung, overlays=may.overlays)


def _parts_both_ways(ways: Ways) -> bool:
    """Whether uprights may be parted by shelves: through tenons from both sides of a board would meet in it."""
    return ways.shelves.joint is not DividerJoint.THROUGH_TENONS


def _columns(shop: Shop, ways: Ways, wide: int, high: int, may: _Limits) -> Division:
    thick = ways.partitions.stuff.thickness_nm
    count = shop.draw(st.integers(2, min(4, (wide + thick) // (LEAST_WIDE * 5 // 4 + thick))))
    return _divided(shop, ways, (Way.COLUMNS, DividerKind.PARTITION, count), (wide, high), may)


def _tiers(shop: Shop, ways: Ways, wide: int, high: int, may: _Limits) -> Division:
    loose = ways.runners.kind is not RunnerKind.WOOD
    kinds = [DividerKind.RAIL, DividerKind.SHELF, DividerKind.FRAME, *([DividerKind.NOTHING] if loose else [])]
    kind = shop.draw(st.sampled_from(kinds))
    if kind in {DividerKind.RAIL, DividerKind.NOTHING} or ways.partitions.joint is DividerJoint.THROUGH_TENONS:
        may = replace(may, uprights=False)
    if kind is DividerKind.NOTHING:
        may = replace(may, doors=False, overlays=False, depth=1)
    thick = ways.thick(kind)
    count = shop.draw(st.integers(2, min(6, (high + thick) // (LEAST_HIGH * 5 // 4 + thick))))
    return _divided(shop, ways, (Way.TIERS, kind, count), (wide, high), may)


def _divided(
    shop: Shop, ways: Ways, how: tuple[Way, DividerKind, int], room: tuple[int, int], may: _Limits
) -> Division:
    """Parts that are fixed, shared out or graduated, none below the least size."""
    way, kind, count = how
    columns = way is Way.COLUMNS
    clear = (room[0] if columns else room[1]) - ways.thick(kind) * (count - 1)
    least = LEAST_WIDE if columns else LEAST_HIGH
    rules = [HeightRule.EQUAL, HeightRule.LISTED] if columns else list(HeightRule)
    rule = shop.draw(st.sampled_from(rules))
    spare = clear - count * least
    sizes: list[Nm | None] = [None] * count
    if rule is HeightRule.LISTED:
        for at in range(count - 1):
            if shop.yes():
                sizes[at] = shop.between(least / MM, (least + spare // (2 * count)) / MM)
    step = shop.between(0, max(0.0, 2 * spare / (MM * count * count))) if rule is HeightRule.STEP else None
    ratio = _ratio(shop, clear, least, count) if rule is HeightRule.RATIO else None
    inner = replace(may, depth=may.depth - 1)
    spaces = []
    for given in sizes:
        about = given or least
        wide, high = (about, room[1]) if columns else (room[0], about)
        inside = _space(shop, ways, wide, high, inner) if kind is not DividerKind.NOTHING else _with_drawer(shop, ways)
        share = Fraction(shop.draw(st.integers(4, 6)), 4) if rule is HeightRule.LISTED and not given else Fraction(1)
        spaces.append(replace(inside, size_nm=given, share=min(share, _most_share(spare, least, count))))
    return Division(way=way, divider=kind, rule=rule, step_nm=step, ratio=ratio, spaces=tuple(spaces))


def _with_drawer(shop: Shop, ways: Ways) -> Space:
    return Space(holds=drawer_of(shop, hung=ways.runners.kind is RunnerKind.SIDE_HUNG, overlays=False))


def _most_share(spare: int, least: int, count: int) -> Fraction:
    """So much more than 1 may a share be that a share of 1 still comes to the least size."""
    return max(Fraction(1), 1 + Fraction(spare, 2 * count * least))


def _ratio(shop: Shop, clear: int, least: int, count: int) -> Fraction:
    """A ratio that leaves the least part large enough."""
    found = Fraction(1)
    for hundredths in range(101, 101 + shop.draw(st.integers(0, 30))):
        ratio = Fraction(hundredths, 100)
        if clear / sum(ratio**n for n in range(count)) < least + MM:
            break
        found = ratio
    return found


@st.composite
def cabinets(draw: st.DrawFn) -> Project:
    """Projects of one cabinet, divided up to three times over."""
    unit = draw(st.sampled_from(Unit))
    shop = Shop(draw, draw(st.sampled_from([grid for grid in Grid if grid.unit is unit])))
    stuff = (shop.wood(15, 24), shop.wood(15, 24), shop.wood(15, 24), shop.wood(15, 24))
    thinnest = min(each.thickness_nm for each in stuff)
    ring = shop.ring("C", RingKind.CARCASE, stuff)
    if shop.draw(st.integers(0, 4)) == 0:
        ring = with_rabbets(ring, shop.between(5, 7))
    ways = ways_of(shop, thinnest)
    wide, high, deep = shop.between(400, 1500), shop.between(400, 1500), shop.between(300, 550)
    back = back_of(shop, shop.between(5, 7))
    over = shop.draw(st.sampled_from(SizesOver))
    inside = _space(shop, ways, wide - 2 * 25 * MM, high - 2 * 25 * MM, _Limits(depth=3))
    carcase = Carcase(
        title="cabinet",
        ring=ring,
        width_nm=wide,
        height_nm=high,
        depth_nm=deep,
        sizes_over=over,
        inside=inside,
        rails=ways.rails,
        partitions=ways.partitions,
        shelves=ways.shelves,
        frames=ways.frames,
        runners=ways.runners,
        back=back,
        base=base_of(shop),
        top=SeparateTop(
            stuff=shop.wood(18, 26), front_nm=shop.between(0, 20), sides_nm=shop.between(0, 20), back_nm=Nm(0)
        )
        if shop.yes()
        else None,
    )
    return _project(shop, carcases=(carcase,))


@st.composite
def chests(draw: st.DrawFn) -> Project:
    """Projects of one box: open, with a lid that lies on it or is sawn off, with a till."""
    unit = draw(st.sampled_from(Unit))
    shop = Shop(draw, draw(st.sampled_from([grid for grid in Grid if grid.unit is unit])))
    stuff = (shop.wood(12, 20), shop.wood(12, 20), shop.wood(12, 20), shop.wood(12, 20))
    ring = shop.ring("K", RingKind.UPRIGHT, stuff)
    sawn = shop.draw(st.integers(0, 2)) == 0
    if not sawn and shop.draw(st.integers(0, 3)) == 0:
        ring = with_rabbets(ring, shop.between(3, 5))
    panel = replace(bottom_of(shop, slips=False), goes=BottomGoes.ALL_ROUND, screw_slot_nm=None)
    lid: HingedLid | SawnLid | None = None
    if sawn:
        top = BottomPanel(
            stuff=shop.sheet(4, 8),
            groove_depth_nm=shop.between(3, 4),
            up_nm=shop.between(8, 12),
            play_nm=shop.between(0, 2),
        )
        lid = SawnLid(top=top, height_nm=shop.between(50, 90), kerf_nm=shop.between(1, 4))
    elif shop.yes():
        made = panelled(shop) if shop.yes() else Slab(stuff=shop.wood(14, 22))
        over = (shop.between(-5, 20), shop.between(-5, 20), shop.between(-5, 5))
        lid = HingedLid(made=made, front_nm=over[0], sides_nm=over[1], back_nm=over[2])
    till = Till(
        stuff=shop.wood(8, 12),
        width_nm=shop.between(60, 100),
        depth_nm=shop.between(40, 80),
        housing_depth_nm=shop.between(3, 5),
        lid=shop.wood(8, 12) if shop.yes() else None,
    )
    box = Box(
        title="chest",
        batch="K",
        ring=ring,
        length_nm=shop.between(300, 900),
        width_nm=shop.between(250, 500),
        height_nm=shop.between(200, 500),
        sizes_over=shop.draw(st.sampled_from(SizesOver)),
        bottom=panel if shop.draw(st.integers(0, 4)) else None,
        lid=lid,
        till=till if not sawn and shop.yes() else None,
    )
    return _project(shop, boxes=(box,))


def _project(shop: Shop, *, boxes: tuple[Box, ...] = (), carcases: tuple[Carcase, ...] = ()) -> Project:
    """A project for one sled with room to spare."""
    sled = Sled(
        name="bench",
        run_micro=shop.draw(st.integers(6 * MICRO, 9 * MICRO)),
        bit_nm=Nm(6 * MM),
        greatest_bit_height_nm=Nm(60 * MM),
        greatest_width_nm=Nm(2_000 * MM),
        greatest_upright_nm=Nm(2_500 * MM),
    )
    return Project(
        name="Hollin Shed",
        unit=shop.grid.unit,
        grid=shop.grid,
        proud_nm=shop.between(0, 1),
        height_tolerance_nm=Nm(MM // 10),
        materials=(Material(name="beech"), Material(name="ply", kind=MaterialKind.SHEET)),
        sleds=(sled,),
        boxes=boxes,
        carcases=carcases,
    )
