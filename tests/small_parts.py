"""Hypothesis strategies for the small parts of a project: lengths, names, materials, sleds, spacings, stuff.

Valid by construction: nothing is filtered. Whole projects are in ``tests/strategies.py``.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction
from functools import cache
from itertools import accumulate

from hypothesis import strategies as st

from planner.domain.bottom import BottomPanel
from planner.domain.panelled import Made, Panelled, Slab
from planner.domain.rates import Rates
from planner.domain.ring import Ring, Stuff
from planner.domain.sled import Sled
from planner.domain.spacing import Spacing
from planner.domain.words import EdgeName, Spread
from planner.lengths import Grid, Nm, Span

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
        kept=st.booleans(),
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


@cache
def panelled(shop: Shop) -> st.SearchStrategy[Panelled]:
    """Frames whose tenons fill the groove and end in the stile."""

    def frame(stile: Nm, groove: Nm, deeper: Nm, stuff: Stuff, panel: Stuff, counts: tuple[int, int]) -> Panelled:
        return Panelled(
            stuff=stuff,
            stile_nm=stile,
            rail_nm=Nm(stile + deeper),
            groove_nm=groove,
            tenon_nm=min(Nm(groove + deeper), Nm(stile - 1)),
            panel=panel,
            play_nm=deeper,
            wide=counts[0],
            high=counts[1],
        )

    counts = st.just((1, 1)) | st.tuples(st.integers(1, 20), st.integers(1, 20))
    stiles = lengths(30 * MM, 90 * MM) | st.sampled_from([Nm(50_800_000), Nm(50 * MM)])
    return st.builds(
        frame,
        stiles,
        lengths(4 * MM, 12 * MM),
        allowances(20 * MM),
        stuffs(shop),
        stuffs(shop, 3 * MM, 12 * MM),
        counts,
    )


@cache
def made(shop: Shop) -> st.SearchStrategy[Made]:
    """Slabs, and frames with panels."""
    return st.builds(Slab, stuff=stuffs(shop)) | panelled(shop)
