"""Hypothesis strategies for drawers, valid by construction."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, Any

from hypothesis import strategies as st

from planner.domain.bottom import BottomPanel, Slips
from planner.domain.drawer import AppliedFront, Drawer, DrawerStops, Handles
from planner.domain.ring import Stuff, make_ring, with_half_blind_front
from planner.domain.words import BottomGoes, PinPair, RingKind, Stands
from planner.lengths import Nm
from tests.small_parts import (
    MM,
    Shop,
    allowances,
    cut_depths,
    lengths,
    own_spacings,
    spacings,
    stuffs,
    with_own,
)

if TYPE_CHECKING:
    from collections.abc import Mapping

_THINNEST_FRONT = 7 * MM


@cache
def laps() -> st.SearchStrategy[Nm]:
    """Laps thinner than any front."""
    return lengths(2 * MM, _THINNEST_FRONT - 1) | st.sampled_from([Nm(6_350_000), Nm(6 * MM)])


@cache
def applied_fronts(shop: Shop) -> st.SearchStrategy[AppliedFront]:
    """Inset with a gap, or over the edges without one."""
    inset = st.builds(AppliedFront, stuff=stuffs(shop), gap_nm=allowances(3 * MM))
    over = lengths(4 * MM, 15 * MM)
    overlay = st.builds(
        AppliedFront, stuff=stuffs(shop), gap_nm=st.just(Nm(0)), stands=st.just(Stands.OVERLAY), overlay_nm=over
    )
    return inset | overlay


@cache
def drawer_bottoms(shop: Shop) -> st.SearchStrategy[BottomPanel]:
    """Bottoms shut in or slid in, with slips and without; those that slide in may have slots for their screws."""
    return _bottoms_that_go(shop, BottomGoes.ALL_ROUND, st.none()) | _bottoms_that_go(
        shop, BottomGoes.SLID_IN, st.none() | lengths(3 * MM, 8 * MM)
    )


def _bottoms_that_go(
    shop: Shop, goes: BottomGoes, slots: st.SearchStrategy[Nm | None]
) -> st.SearchStrategy[BottomPanel]:
    slips = st.builds(Slips, stuff=stuffs(shop, 6 * MM, 12 * MM), height_nm=lengths(12 * MM, 25 * MM))
    return st.builds(
        BottomPanel,
        stuff=stuffs(shop, 3 * MM, 12 * MM),
        groove_depth_nm=cut_depths(6 * MM),
        up_nm=st.none() | lengths(3 * MM, 20 * MM),
        play_nm=allowances(3 * MM),
        goes=st.just(goes),
        slips=st.none() | slips,
        screw_slot_nm=slots,
    )


@cache
def handles() -> st.SearchStrategy[Handles]:
    """Knobs and pulls."""
    hole = lengths(3 * MM, 8 * MM)
    knobs = st.builds(Handles, count=st.integers(1, 2), holes=st.just(1), apart_nm=st.just(Nm(0)), hole_nm=hole)
    apart = lengths(40 * MM, 160 * MM)
    return knobs | st.builds(Handles, count=st.integers(1, 2), holes=st.just(2), apart_nm=apart, hole_nm=hole)


@cache
def drawer_stops(shop: Shop) -> st.SearchStrategy[DrawerStops]:
    """Blocks to shut against."""
    return st.builds(
        DrawerStops,
        stuff=stuffs(shop, 3 * MM, 12 * MM),
        length_nm=lengths(15 * MM, 60 * MM),
        width_nm=lengths(10 * MM, 40 * MM),
    )


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
        "side_clearance_nm": draw(lengths(greatest=4 * MM) | st.just(Nm(12_700_000))),
        "top_clearance_nm": draw(lengths(greatest=8 * MM)),
        "back_clearance_nm": draw(allowances()),
        "back_lower_nm": draw(st.just(Nm(0)) | allowances()),
        "bottom": draw(st.none() | drawer_bottoms(shop)),
        "handles": draw(st.none() | handles()),
        "stops": draw(st.none() | drawer_stops(shop)),
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
    kept = ("side_clearance_nm", "top_clearance_nm", "back_clearance_nm", "back_lower_nm", "bottom", "handles", "stops")
    return Drawer(
        ring=with_half_blind_front(ring, Nm(hidden_by)) if half_blind else ring,
        applied_front=None if half_blind else hidden_by,
        **{key: facts[key] for key in kept if key in facts},
    )
