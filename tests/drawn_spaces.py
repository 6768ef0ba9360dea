"""Hypothesis strategies for the inside of a carcase: columns and tiers within each other, and what stands in them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from itertools import count

from hypothesis import strategies as st

from planner.domain.drawer import Drawer
from planner.domain.marks import drawer_mark
from planner.domain.space import Division, Doors, DoorStops, LooseShelves, ShelfPins, Space
from planner.domain.words import DividerKind, HeightRule, Side, Stands, Way
from planner.lengths import Nm
from tests.drawn_drawers import drawer_facts, drawer_of
from tests.small_parts import MM, Shop, allowances, lengths, made, ratios, stuffs

_DEEPEST = 3
"""Columns in each other. A file takes more, but trees grow fast."""


@dataclass(frozen=True)
class Marking:
    """How the drawers of one column of a carcase are marked: by the usual marks, by their own, or some each."""

    usual: Iterator[str]
    own: Iterator[str]
    ways: tuple[bool, ...]

    def mark(self, draw: st.DrawFn) -> str:
        """Mark of the next drawer."""
        usual, own = next(self.usual), next(self.own)
        return usual if draw(st.sampled_from(self.ways)) else own


def marking(draw: st.DrawFn, column: int, letter: str, *, only_column: bool) -> Marking:
    """Marks for the drawers of a column, whose own marks begin with a letter of their own."""
    return Marking(
        (drawer_mark(column, number, only_column=only_column) for number in count(1)),
        (f"{letter}{number}" for number in count(1)),
        draw(st.sampled_from([(True,), (True,), (False,), (True, False)])),
    )


@cache
def loose_shelves(shop: Shop) -> st.SearchStrategy[LooseShelves]:
    return st.builds(
        LooseShelves,
        count=st.integers(1, 6),
        stuff=stuffs(shop),
        play_nm=allowances(4 * MM),
        setback_nm=allowances(10 * MM),
        pins=st.none() | shelf_pins(),
    )


@cache
def shelf_pins() -> st.SearchStrategy[ShelfPins]:
    """Rows of an odd number of holes, the usual ones among them."""
    return st.just(
        ShelfPins(
            holes=3,
            hole_nm=Nm(5 * MM),
            depth_nm=Nm(8 * MM),
            apart_nm=Nm(32 * MM),
            front_nm=Nm(37 * MM),
            back_nm=Nm(37 * MM),
        )
    ) | st.builds(
        ShelfPins,
        holes=st.integers(0, 10).map(lambda pairs: 2 * pairs + 1),
        hole_nm=lengths(3 * MM, 10 * MM),
        depth_nm=lengths(4 * MM, 15 * MM),
        apart_nm=lengths(10 * MM, 60 * MM),
        front_nm=lengths(10 * MM, 80 * MM),
        back_nm=lengths(10 * MM, 80 * MM),
    )


@cache
def door_stops(shop: Shop) -> st.SearchStrategy[DoorStops]:
    """Strips, some as thick or as wide as is usual."""
    usual = st.sampled_from([Nm(12_700_000), Nm(12 * MM), Nm(19_050_000), Nm(20 * MM)])
    return st.builds(DoorStops, stuff=stuffs(shop, 6 * MM, 20 * MM), width_nm=lengths(6 * MM, 40 * MM) | usual)


@cache
@st.composite
def doors(draw: st.DrawFn, shop: Shop) -> Doors:
    """One door, hinged left or right, or a pair; within its space, or over the edges around it."""
    leaves, stands = draw(st.integers(1, 2)), draw(st.sampled_from(Stands))
    return Doors(
        leaves=leaves,
        hinged=Side.LEFT if leaves > 1 else draw(st.sampled_from(Side)),
        stands=stands,
        gap_nm=draw(allowances(3 * MM)),
        overlay_nm=draw(lengths(4 * MM, 15 * MM)) if stands is Stands.OVERLAY else Nm(0),
        made=draw(made(shop)),
        stops=draw(st.none() | door_stops(shop)) if stands is Stands.INSET else None,
    )


@cache
def shares() -> st.SearchStrategy[Fraction]:
    """Shares as a maker writes them."""
    return st.sampled_from([Fraction(2), Fraction(1, 2), Fraction(3, 2), Fraction(125, 100)]) | st.integers(
        1, 100_000_000
    ).map(lambda steps: Fraction(steps, 1_000_000))


def inside_of(draw: st.DrawFn, shop: Shop, markings: list[Marking]) -> Space:
    """The inside of a carcase with a column for each of these markings."""
    grower = _Grower(draw, shop)
    return Space(holds=_columns(draw, [grower.column(each, 1) for each in markings]), doors=grower.maybe_doors())


class _Grower:
    """Draws the tree of one carcase, whose drawers are alike but for a few keys."""

    def __init__(self, draw: st.DrawFn, shop: Shop) -> None:
        self._draw = draw
        self._shop = shop
        self._facts = draw(drawer_facts(shop))

    def column(self, marks: Marking, depth: int) -> Space:
        """A column, and all that is in it."""
        draw = self._draw
        rule = draw(st.sampled_from(HeightRule))
        only_drawers = draw(st.booleans())
        own_sizes = rule in {HeightRule.EQUAL, HeightRule.LISTED}
        tiers = [
            self._tier(marks, depth, only_drawers=only_drawers, own_size=own_sizes and rule is HeightRule.LISTED)
            for _ in range(draw(st.integers(1, 5 if only_drawers else 3)))
        ]
        size, share = self._size(shared=draw(st.booleans()))
        return Space(
            size_nm=size,
            share=share,
            holds=Division(
                way=Way.TIERS,
                divider=draw(st.sampled_from([kind for kind in DividerKind if kind is not DividerKind.PARTITION])),
                rule=_rule(tiers) if own_sizes else rule,
                step_nm=draw(lengths(greatest=30 * MM)) if rule is HeightRule.STEP else None,
                ratio=draw(ratios()) if rule is HeightRule.RATIO else None,
                spaces=tuple(tiers),
            ),
            doors=self.maybe_doors(),
        )

    def _tier(self, marks: Marking, depth: int, *, only_drawers: bool, own_size: bool) -> Space:
        draw = self._draw
        if only_drawers:
            size = draw(st.none() | lengths(40 * MM, 400 * MM)) if own_size else None
            return Space(size_nm=size, holds=self._drawer(marks))
        size, share = self._size(shared=not own_size)
        return Space(size_nm=size, share=share, holds=self._held(marks, depth), doors=self.maybe_doors())

    def _size(self, *, shared: bool) -> tuple[Nm | None, Fraction]:
        if shared:
            return None, Fraction(1)
        size = self._draw(st.none() | lengths(40 * MM, 900 * MM))
        return size, Fraction(1) if size is not None else self._draw(st.just(Fraction(1)) | shares())

    def _held(self, marks: Marking, depth: int) -> Division | Drawer | LooseShelves | None:
        draw = self._draw
        what = draw(st.sampled_from(["drawer", "drawer", "shelves", "nothing", *(["columns"] * (depth < _DEEPEST))]))
        match what:
            case "columns":
                return _columns(draw, [self.column(marks, depth + 1) for _ in range(draw(st.integers(1, 2)))])
            case "drawer":
                return self._drawer(marks)
            case "shelves":
                return draw(loose_shelves(self._shop))
            case _:
                return None

    def _drawer(self, marks: Marking) -> Drawer:
        draw, facts = self._draw, self._facts
        mark = marks.mark(draw)
        if draw(st.integers(0, 3)) == 0:
            changed = draw(st.sets(st.sampled_from(sorted(facts)), max_size=2))
            fresh = draw(drawer_facts(self._shop))
            facts = facts | {key: fresh[key] for key in changed}
        return drawer_of(mark, facts)

    def maybe_doors(self) -> Doors | None:
        """Mostly none."""
        return self._draw(doors(self._shop)) if self._draw(st.integers(0, 5)) == 0 else None


def _columns(draw: st.DrawFn, spaces: list[Space]) -> Division:
    rule = _rule(spaces)
    if rule is HeightRule.EQUAL:
        rule = draw(st.sampled_from([HeightRule.EQUAL, HeightRule.STEP, HeightRule.RATIO]))
    return Division(
        way=Way.COLUMNS,
        divider=DividerKind.PARTITION,
        rule=rule,
        step_nm=draw(lengths(greatest=30 * MM)) if rule is HeightRule.STEP else None,
        ratio=draw(ratios()) if rule is HeightRule.RATIO else None,
        spaces=tuple(spaces),
    )


def _rule(spaces: list[Space]) -> HeightRule:
    own = any(space.size_nm is not None or space.share != 1 for space in spaces)
    return HeightRule.LISTED if own else HeightRule.EQUAL
