"""Random pin ends and spacings: every slope, thickness and spread that a workshop may see."""

from __future__ import annotations

from fractions import Fraction
from math import radians, tan

from hypothesis import strategies as st

from planner.derive.pins import PinEnd
from planner.derive.slot import Slot
from planner.domain.spacing import Spacing
from planner.domain.words import EdgeName, Spread
from planner.lengths import Nm, Span

MM = 1_000_000
BITS_NM = (6_000_000, 6_350_000, 9_960_000, 12_620_000, 12_700_000)
"""6 mm, 1/4 in, a 10 mm bit that has lost 0.04, a re-ground and a new 1/2 in bit."""

slopes = st.one_of(
    st.fractions(4, 10, max_denominator=10),
    st.floats(6, 14).map(lambda degrees: Fraction(round(1_000_000 / tan(radians(degrees))), 1_000_000)),
)


@st.composite
def slots(draw: st.DrawFn) -> Slot:
    """A slope, as 1:4 to 1:10 or in degrees, and one of five bits."""
    return Slot(slope=draw(slopes), bit_nm=Nm(draw(st.sampled_from(BITS_NM))))


@st.composite
def pin_ends(draw: st.DrawFn) -> PinEnd:
    """A board 20 to 600 mm wide and 6 to 45 mm thick."""
    return PinEnd(
        width_nm=Nm(draw(st.integers(20 * MM, 600 * MM))),
        thickness_nm=Nm(draw(st.integers(6 * MM, 45 * MM))),
        slot=draw(slots()),
    )


@st.composite
def spacings(draw: st.DrawFn, end: PinEnd) -> Spacing:
    """Any spacing, buildable on this end or not."""
    spread = draw(st.sampled_from(Spread))
    half, pin = draw(st.integers(2 * MM, 12 * MM)), draw(st.integers(MM, 15 * MM))
    graduated = spread in (Spread.MIDDLE, Spread.EDGE)
    return Spacing(
        half_pin_nm=Nm(half),
        pin_nm=Nm(pin),
        tails=None if spread is Spread.LISTED else draw(st.none() | st.integers(1, 20)),
        tail_nm=Nm(draw(st.integers(8 * MM, 60 * MM))),
        greatest_tail_nm=Nm(draw(st.integers(20 * MM, 80 * MM))),
        spread=spread,
        ratio=Fraction(draw(st.integers(101, 300)), 100) if graduated else None,
        places=draw(listed(end)) if spread is Spread.LISTED else (),
        measured_from=draw(st.sampled_from(EdgeName)),
        alike=draw(st.booleans()),
    )


@st.composite
def listed(draw: st.DrawFn, end: PinEnd) -> tuple[Span, ...]:
    """Places of up to eight pins in order, close together or apart."""
    marks = sorted(draw(st.lists(st.integers(0, end.width_nm), min_size=2, max_size=16, unique=True)))
    return tuple((Nm(a), Nm(b)) for a, b in zip(marks[::2], marks[1::2], strict=False))


@st.composite
def cases(draw: st.DrawFn) -> tuple[PinEnd, Spacing]:
    """An end and a spacing for it."""
    end = draw(pin_ends())
    return end, draw(spacings(end))
