"""Hypothesis strategies for lengths and whole projects, valid by construction: nothing is filtered.

``projects()`` gives anything that file and store must be able to keep: both units, batches of boxes, carcases with
several columns, every height rule, drawers that differ from each other in some keys. Sizes are plausible one by one,
but need not fit together: such a chest may have drawers too small for their bottoms.

For pieces from which a plan can be made, see ``tests/buildable.py``.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction
from functools import cache
from itertools import accumulate
from typing import TYPE_CHECKING, Any

from hypothesis import strategies as st

from planner.domain.box import BottomPanel, Box
from planner.domain.carcase import AppliedFront, BackPanel, Carcase, Column, Drawer, Opening, Partitions, Rails
from planner.domain.marks import drawer_mark
from planner.domain.material import Material
from planner.domain.project import Project
from planner.domain.rates import Rates
from planner.domain.ring import Ring, Stuff, make_ring, with_half_blind_front
from planner.domain.sled import Sled
from planner.domain.spacing import Spacing
from planner.domain.words import (
    EdgeName,
    Hardness,
    HeightRule,
    MaterialKind,
    PinPair,
    RingKind,
    SizesOver,
    Spread,
)
from planner.lengths import Grid, Nm, Span, Unit

if TYPE_CHECKING:
    from collections.abc import Mapping

MM = 1_000_000


@dataclass(frozen=True)
class Shop:
    """What the parts of one project may refer to."""

    materials: tuple[str, ...]
    sleds: tuple[str, ...]


# --- small parts --------------------------------------------------------------------------------------------


@cache
def lengths(least: int = 1 * MM, greatest: int = 2_000 * MM) -> st.SearchStrategy[Nm]:
    """Lengths on the shop's grids, and between them to the nanometre; both borders included as far as they fit."""

    def stepped(step: int) -> st.SearchStrategy[Nm]:
        return st.integers(-(-least // step), greatest // step).map(lambda steps: Nm(steps * step))

    return st.one_of([stepped(step) for step in (Grid.IN_16.step_nm, Grid.IN_64.step_nm, Grid.MM_TENTH.step_nm, 1)])


@cache
def allowances(greatest: int = 15 * MM) -> st.SearchStrategy[Nm]:
    """Lengths that may be nothing."""
    return st.just(Nm(0)) | lengths(greatest=greatest)


@cache
def names() -> st.SearchStrategy[str]:
    """Names of one to three words in any script, quotes and stops included."""
    word = st.text(st.characters(categories=("L", "N", "P", "S")), min_size=1, max_size=10)
    return st.lists(word, min_size=1, max_size=3).map(" ".join)


@cache
def materials(name: str) -> st.SearchStrategy[Material]:
    return st.builds(
        Material, name=st.just(name), kind=st.sampled_from(MaterialKind), hardness=st.sampled_from(Hardness)
    )


@cache
def sleds(name: str) -> st.SearchStrategy[Sled]:
    return st.builds(
        Sled,
        name=st.just(name),
        run_micro=st.integers(1_000_000, 20_000_000) | st.sampled_from([6_000_000, 7_500_000, 8_000_000]),
        bit_nm=lengths(3 * MM, 20 * MM),
        greatest_bit_height_nm=lengths(20 * MM, 60 * MM),
        greatest_width_nm=lengths(200 * MM, 900 * MM),
        greatest_upright_nm=lengths(300 * MM, 1_800 * MM),
        slot_nm=st.none() | lengths(3 * MM, 20 * MM),
        greatest_depth_soft_nm=st.none() | lengths(5 * MM, 60 * MM),
        greatest_depth_hard_nm=st.none() | lengths(5 * MM, 60 * MM),
    )


@cache
def rates() -> st.SearchStrategy[Rates]:
    seconds = st.integers(0, 86_400)
    return st.just(Rates()) | st.builds(Rates, sled_change_s=seconds, handling_s=seconds, pass_s=seconds)


@cache
def ratios() -> st.SearchStrategy[Fraction]:
    """Ratios over 1 and up to 4, as a maker writes them: with at most four decimals."""
    return st.integers(10_001, 40_000).map(lambda steps: Fraction(Decimal(steps).scaleb(-4)))


@cache
def pin_places() -> st.SearchStrategy[tuple[Span, ...]]:
    """Listed pins, one after the other with room between them."""

    def laid_out(steps: list[tuple[Nm, Nm]]) -> tuple[Span, ...]:
        ends = list(accumulate(sum(steps, ())))
        return tuple((Nm(a), Nm(b)) for a, b in zip(ends[::2], ends[1::2], strict=True))

    return st.lists(st.tuples(lengths(1 * MM, 60 * MM), lengths(2 * MM, 12 * MM)), min_size=1, max_size=6).map(laid_out)


@cache
def spacings() -> st.SearchStrategy[Spacing]:
    tails = st.none() | st.integers(1, 60)
    even = {"tails": tails}
    graduated = even | {"spread": st.sampled_from([Spread.MIDDLE, Spread.EDGE]), "ratio": ratios()}
    listed = {"tails": st.none(), "spread": st.just(Spread.LISTED), "places": pin_places()}
    return st.one_of(
        [
            st.builds(
                Spacing,
                half_pin_nm=lengths(3 * MM, 12 * MM) | st.sampled_from([Nm(6_350_000), Nm(6 * MM)]),
                pin_nm=lengths(2 * MM, 12 * MM) | st.sampled_from([Nm(6_350_000), Nm(6 * MM)]),
                tail_nm=lengths(10 * MM, 40 * MM),
                greatest_tail_nm=lengths(40 * MM, 80 * MM),
                measured_from=st.sampled_from(EdgeName),
                alike=st.booleans(),
                **shared_out,
            )
            for shared_out in (even, graduated, listed)
        ]
    )


Own = dict[int, Spacing | None]
"""Corners of a ring, from 0, that have a spacing of their own; None gives them one that is just like the ring's."""


@cache
def own_spacings(like: st.SearchStrategy[Spacing]) -> st.SearchStrategy[Own]:
    """For most rings none."""
    return st.just({}) | st.dictionaries(st.integers(0, 3), st.none() | like, max_size=2)


def with_own(ring: Ring, own: Own) -> Ring:
    """The ring with these spacings on its corners."""
    first, second, third, fourth = (
        replace(corner, spacing=own[at] or ring.spacing) if at in own else corner
        for at, corner in enumerate(ring.corners)
    )
    return replace(ring, corners=(first, second, third, fourth))


@cache
def stuffs(shop: Shop, least: int = 6 * MM, greatest: int = 40 * MM) -> st.SearchStrategy[Stuff]:
    return st.builds(Stuff, material=st.sampled_from(shop.materials), thickness_nm=lengths(least, greatest))


def cut_depths(thickness: int) -> st.SearchStrategy[Nm]:
    """How deep a groove, housing or rabbet may go into a board; halves and thirds, as they are usual, often."""
    shares = [
        Nm(thickness // part // step * step) for part in (2, 3) for step in (Grid.IN_64.step_nm, Grid.MM_TENTH.step_nm)
    ]
    return st.sampled_from(shares) | lengths(greatest=thickness - MM)


@cache
def bottoms(shop: Shop, thinnest: int) -> st.SearchStrategy[BottomPanel]:
    return st.builds(
        BottomPanel,
        stuff=stuffs(shop, 3 * MM, 12 * MM),
        groove_depth_nm=cut_depths(thinnest),
        up_nm=st.none() | lengths(3 * MM, 20 * MM),
        play_nm=allowances(3 * MM),
    )


# --- boxes --------------------------------------------------------------------------------------------------


@st.composite
def batches(draw: st.DrawFn, shop: Shop, mark: str) -> tuple[Box, ...]:
    """One box, or a batch of boxes that are alike but for their marks."""
    stuff = draw(stuffs(shop))
    pin_pair, spacing, sled = draw(st.sampled_from(PinPair)), draw(spacings()), draw(st.sampled_from(shop.sleds))
    own = draw(own_spacings(spacings()))
    facts = {
        "title": draw(st.just("") | names()),
        "length_nm": draw(lengths(60 * MM)),
        "width_nm": draw(lengths(60 * MM)),
        "height_nm": draw(lengths(40 * MM, 500 * MM)),
        "sizes_over": draw(st.sampled_from(SizesOver)),
        "bottom": draw(st.none() | bottoms(shop, stuff.thickness_nm)),
    }
    count = draw(st.just(1) | st.integers(2, 12))
    marks = [mark] if count == 1 else [f"{mark}{number}" for number in range(1, count + 1)]
    rings = [make_ring(each, RingKind.UPRIGHT, (stuff,) * 4, pin_pair, spacing, sled) for each in marks]
    return tuple(Box(batch=mark, ring=with_own(ring, own), **facts) for ring in rings)


# --- carcases and their drawers -----------------------------------------------------------------------------


_THINNEST_FRONT = 7 * MM


@cache
def laps() -> st.SearchStrategy[Nm]:
    """Laps thinner than any front."""
    return lengths(2 * MM, _THINNEST_FRONT - 1) | st.sampled_from([Nm(6_350_000), Nm(6 * MM)])


@cache
def applied_fronts(shop: Shop) -> st.SearchStrategy[AppliedFront]:
    return st.builds(AppliedFront, stuff=stuffs(shop), gap_nm=allowances(3 * MM))


@cache
@st.composite
def drawer_facts(draw: st.DrawFn, shop: Shop) -> dict[str, Any]:
    """How a drawer is made, whatever its mark.

    ``front``, ``side`` and ``back`` are its stuff; ``hidden_by`` is the lap of half-blind joints, or an applied front.
    """
    side = draw(stuffs(shop, _THINNEST_FRONT, 18 * MM))
    return {
        "front": draw(st.just(side) | stuffs(shop, _THINNEST_FRONT)),
        "side": side,
        "back": draw(st.just(side) | stuffs(shop)),
        "pin_pair": draw(st.sampled_from(PinPair)),
        "spacing": draw(spacings()),
        "own": draw(own_spacings(spacings())),
        "hidden_by": draw(st.none() | laps() | applied_fronts(shop)),
        "sled": draw(st.sampled_from(shop.sleds)),
        "side_clearance_nm": draw(lengths(greatest=4 * MM)),
        "top_clearance_nm": draw(lengths(greatest=8 * MM)),
        "back_clearance_nm": draw(allowances()),
        "bottom": draw(st.none() | bottoms(shop, 6 * MM)),
    }


def drawer_of(mark: str, facts: Mapping[str, Any]) -> Drawer:
    """A drawer made as ``drawer_facts`` says; half-blind joints want the pins on the front."""
    side, hidden_by = facts["side"], facts["hidden_by"]
    half_blind = isinstance(hidden_by, int)
    backs_material = Stuff(material=side.material, thickness_nm=facts["back"].thickness_nm)
    ring = make_ring(
        mark,
        RingKind.UPRIGHT,
        (facts["front"], side, backs_material, side),
        PinPair.FIRST_AND_THIRD if half_blind else facts["pin_pair"],
        facts["spacing"],
        facts["sled"],
    )
    ring = with_own(ring, facts["own"])
    kept = ("side_clearance_nm", "top_clearance_nm", "back_clearance_nm", "bottom")
    return Drawer(
        ring=with_half_blind_front(ring, Nm(hidden_by)) if half_blind else ring,
        applied_front=None if half_blind else hidden_by,
        **{key: facts[key] for key in kept},
    )


@st.composite
def columns(draw: st.DrawFn, shop: Shop, marks: list[str]) -> Column:
    """A column of drawers that are alike but for a few keys."""
    shared = draw(drawer_facts(shop))
    changed = st.sets(st.sampled_from(sorted(shared)), max_size=2)
    rule = draw(st.sampled_from(HeightRule))
    openings = []
    for mark in marks:
        fresh = draw(drawer_facts(shop)) if draw(st.integers(0, 3)) == 0 else shared
        facts = shared | {key: fresh[key] for key in (draw(changed) if fresh is not shared else ())}
        height = draw(st.none() | lengths(40 * MM, 400 * MM)) if rule is HeightRule.LISTED else None
        openings.append(Opening(height_nm=height, drawer=drawer_of(mark, facts)))
    return Column(
        width_nm=draw(st.none() | lengths(150 * MM, 900 * MM)),
        heights=rule,
        step_nm=draw(lengths(greatest=30 * MM)) if rule is HeightRule.STEP else None,
        ratio=draw(ratios()) if rule is HeightRule.RATIO else None,
        openings=tuple(openings),
    )


@st.composite
def carcases(draw: st.DrawFn, shop: Shop, mark: str, drawer_marks: list[list[str]]) -> Carcase:
    """A carcase whose columns hold drawers with the given marks."""
    stuff = draw(stuffs(shop, 10 * MM))
    thickness = stuff.thickness_nm
    ring = make_ring(
        mark,
        RingKind.CARCASE,
        (stuff,) * 4,
        draw(st.sampled_from(PinPair)),
        draw(spacings()),
        draw(st.sampled_from(shop.sleds)),
    )
    ring = with_own(ring, draw(own_spacings(spacings())))
    rails = st.builds(
        Rails,
        stuff=stuffs(shop) | stuffs(Shop((stuff.material,), shop.sleds)),
        width_nm=lengths(30 * MM, 100 * MM),
        housing_depth_nm=cut_depths(thickness),
    )
    partitions = st.builds(Partitions, stuff=st.just(stuff) | stuffs(shop), housing_depth_nm=cut_depths(thickness))
    back = st.builds(
        BackPanel,
        stuff=stuffs(shop, 3 * MM, 10 * MM),
        rabbet_depth_nm=cut_depths(thickness),
        play_nm=allowances(3 * MM),
    )
    needs_rails = any(len(marks) > 1 for marks in drawer_marks)
    return Carcase(
        title=draw(st.just("") | names()),
        ring=ring,
        width_nm=draw(lengths(300 * MM)),
        height_nm=draw(lengths(300 * MM)),
        depth_nm=draw(lengths(200 * MM, 700 * MM)),
        columns=tuple(draw(columns(shop, marks)) for marks in drawer_marks),
        rails=draw(rails if needs_rails else st.none() | rails),
        partitions=draw(partitions if len(drawer_marks) > 1 else st.none() | partitions),
        back=draw(st.none() | back),
    )


@st.composite
def marks_of_drawers(draw: st.DrawFn, carcase_count: int, letters: list[str]) -> list[list[list[str]]]:
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


# --- whole projects -----------------------------------------------------------------------------------------


@st.composite
def projects(draw: st.DrawFn) -> Project:
    """Projects that file and store must keep exactly; no two rings share the first letter of their mark."""
    unit = draw(st.sampled_from(Unit))
    material_names = draw(st.lists(names(), min_size=1, max_size=3, unique=True))
    sled_names = draw(st.lists(names(), min_size=1, max_size=2, unique=True))
    shop = Shop(tuple(material_names), tuple(sled_names))
    box_count = draw(st.integers(0, 3))
    carcase_count = draw(st.integers(0 if box_count else 1, 2))
    letters = draw(st.permutations("ABCEFGHKLMNPQRSTUWXYZ"))
    box_marks, carcase_marks, drawer_letters = letters[:3], letters[3:5], letters[5:]
    drawer_marks = draw(marks_of_drawers(carcase_count, drawer_letters))
    return Project(
        name=draw(names()),
        unit=unit,
        grid=draw(st.sampled_from([grid for grid in Grid if grid.unit is unit])),
        proud_nm=draw(allowances(2 * MM)),
        height_tolerance_nm=draw(allowances(2 * MM)),
        materials=tuple(draw(materials(name)) for name in material_names),
        sleds=tuple(draw(sleds(name)) for name in sled_names),
        boxes=tuple(box for mark in box_marks[:box_count] for box in draw(batches(shop, mark))),
        carcases=tuple(
            draw(carcases(shop, mark, marks)) for mark, marks in zip(carcase_marks, drawer_marks, strict=False)
        ),
        rates=draw(rates()),
    )
