"""Hypothesis strategies for what is said of rough wood, and for wood on the rack: valid by construction."""

from __future__ import annotations

from collections.abc import Sequence

from hypothesis import strategies as st

from planner.domain.rack import Flaw, Lot, Per, Price, Surfaced
from planner.domain.stock import Keep, MaterialStock, SawWay, SoldAs, Stock
from planner.lengths import Nm
from tests.small_parts import MM, allowances, lengths, names

_WASTE = st.integers(0, 20_000)


def _material(name: str) -> st.SearchStrategy[MaterialStock]:
    more = st.none() | allowances(60 * MM)
    return st.builds(
        MaterialStock,
        material=st.just(name),
        sold_as=st.none() | st.sampled_from(SoldAs),
        length_nm=more,
        width_nm=more,
        thickness_nm=more,
        end_trim_nm=more,
        edge_trim_nm=more,
        greatest_stave_nm=st.none() | lengths(150 * MM, 600 * MM),
        waste_hundredths=st.none() | _WASTE,
        grain=st.none() | st.booleans(),
    )


def stocks(materials: Sequence[str]) -> st.SearchStrategy[Stock]:
    """What a project says of stock; never all that is usual, since no waste is."""
    more, sizes = allowances(60 * MM), lengths(40 * MM, 600 * MM)
    said = [st.none() | _material(name) for name in materials]
    return st.builds(
        Stock,
        length_nm=more,
        width_nm=more,
        thickness_nm=st.none() | more,
        sheet_nm=more,
        end_trim_nm=more,
        edge_trim_nm=more,
        rip_kerf_nm=more,
        crosscut_kerf_nm=more,
        joint_nm=more,
        least_stave_nm=lengths(40 * MM, 150 * MM),
        greatest_stave_nm=st.none() | lengths(150 * MM, 600 * MM),
        spares=st.integers(0, 10),
        spare_length_nm=sizes,
        spare_width_nm=sizes,
        practice=st.booleans(),
        waste_hundredths=_WASTE.filter(lambda share: share != 2500),
        stages=st.sampled_from([2, 3]),
        first_cut=st.none() | st.sampled_from(SawWay),
        keep=st.builds(Keep, length_nm=sizes, width_nm=sizes, credit_pct=st.integers(0, 100)),
        materials=st.tuples(*said).map(lambda each: tuple(one for one in each if one)),
    )


_PRICES = st.builds(
    Price, cents=st.integers(0, 10**6), per=st.sampled_from(Per), currency=st.just("") | st.sampled_from(["USD", "EUR"])
)
_MARKS = st.from_regex(r"[A-Z][A-Z0-9-]{0,5}", fullmatch=True)


@st.composite
def lots(draw: st.DrawFn) -> Lot:
    """Wood of any kind: on the rack, or on offer."""
    yard = draw(st.none() | names())
    sizes = [sorted((draw(lengths(100 * MM, 4000 * MM)), draw(lengths(100 * MM, 4000 * MM)))) for _ in "lw"]
    (shortest, longest), (narrowest, widest) = sizes if yard else [(each[0], each[0]) for each in sizes]
    random = shortest < longest or narrowest < widest
    flaws: tuple[Flaw, ...] = ()
    if not random:
        flaws = tuple(draw(st.lists(_flaws(shortest, narrowest), max_size=3)))
    return Lot(
        mark=draw(_MARKS),
        yard=yard,
        material=draw(names()),
        shortest_nm=shortest,
        longest_nm=longest,
        narrowest_nm=narrowest,
        widest_nm=widest,
        thickness_nm=draw(lengths(3 * MM, 100 * MM)),
        surfaced=draw(st.sampled_from(Surfaced)),
        counted_nm=draw(st.none() | lengths(3 * MM, 100 * MM)),
        count=None if random or (yard and draw(st.booleans())) else draw(st.integers(0, 50)),
        price=draw(_PRICES if yard else st.none() | _PRICES),
        least_hundredths=draw(st.none() | st.integers(1, 10**5)) if yard else None,
        flaws=flaws,
        remark=draw(st.just("") | names()),
    )


@st.composite
def _flaws(draw: st.DrawFn, length: Nm, width: Nm) -> Flaw:
    spans = []
    for size in (length, width):
        start = draw(st.integers(0, size - 1))
        spans.append((Nm(start), Nm(draw(st.integers(start + 1, size)))))
    return Flaw(along=spans[0], across=spans[1])
