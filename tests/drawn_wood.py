"""Hypothesis strategies for timbers, materials and air: valid by construction, as in ``small_parts``."""

from __future__ import annotations

from hypothesis import strategies as st

from planner.domain.climate import Climate, Room
from planner.domain.material import Material
from planner.domain.timber import Timber
from planner.domain.words import Hardness, MaterialKind, Sawn
from planner.wood.moisture import moisture
from planner.wood.timbers import shipped
from tests.small_parts import names


def _figures(places: int, most: int) -> st.SearchStrategy[float]:
    """Figures over nothing with so many decimals; the most is in units of the last of them."""
    return st.integers(1, most).map(lambda steps: steps / 10**places)


def own_timbers(name: str) -> st.SearchStrategy[Timber]:
    """A timber of the maker's own."""
    return st.builds(
        Timber,
        name=st.just(name),
        kind=st.sampled_from(MaterialKind),
        tangential=_figures(6, 5000),
        radial=_figures(6, 5000),
        shrinkage_tangential_pct=st.none() | _figures(2, 3000),
        shrinkage_radial_pct=st.none() | _figures(2, 3000),
        specific_gravity=_figures(3, 1500),
        stiffness_gpa=_figures(3, 40_000),
        strength_mpa=_figures(2, 40_000),
        hardness=st.sampled_from(Hardness),
        source=st.just("the maker's own figures") | names(),
    )


@st.composite
def materials(draw: st.DrawFn, name: str, own: tuple[Timber, ...] = ()) -> Material:
    """A material, of a species or not; if so, it is of that species' kind."""
    species = draw(st.none() | st.sampled_from([*own, *shipped().values()]))
    if species and species.name in shipped():  # a timber of the maker's own hides a shipped one
        species = next((each for each in own if each.name == species.name), species)
    return Material(
        name=name,
        kind=species.kind if species else draw(st.sampled_from(MaterialKind)),
        hardness=draw(st.sampled_from(Hardness)),
        species=species.name if species else None,
        sawn=draw(st.none() | st.sampled_from(Sawn)),
    )


@st.composite
def climates(draw: st.DrawFn) -> Climate:
    """Air, a meter reading, or both."""
    air = draw(st.booleans())
    metered = not air or draw(st.booleans())
    return Climate(
        moisture_hundredths=draw(st.integers(0, 4000)) if metered else None,
        humidity_hundredths=draw(st.integers(0, 10_000)) if air else None,
        temperature_milli_c=draw(st.integers(-20_000, 60_000)) if air else None,
    )


def rooms() -> st.SearchStrategy[Room]:
    """Rooms whose dry season is the drier one."""
    pairs = st.tuples(climates(), climates()).map(lambda pair: sorted(pair, key=moisture))
    return pairs.map(lambda pair: Room(dry=pair[0], damp=pair[1]))
