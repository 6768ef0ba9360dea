"""The nearest layouts that can be cut, when the one asked for can't.

Each offer changes one thing only and is tried before it is made: fewer tails, narrower pins or half-pins, a gentler
graduation, a finer bit. Pins are not offered narrower than 1/16 in, the narrowest of fine handwork (Griffith,
*Essentials of Woodworking*, 1908, sec. 100).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache

from planner.derive.pins import PinEnd, can_be_cut
from planner.derive.slot import Slot
from planner.derive.spacing import places, tail_count
from planner.domain.spacing import Spacing
from planner.domain.words import Spread
from planner.lengths import Grid, Nm, show_length

LEAST_PIN_NM = Grid.IN_64.step_nm * 4
"""1/16 in."""

_LIKE_ENDS = 512
"""Offers are kept for so many unlike ends; a project seldom has more."""

LEAST_BIT_NM = Grid.MM_TENTH.step_nm * 30
"""No straight bit for a sled is thinner than about 3 mm: common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Offer:
    """A layout that can be cut, and what was changed to get there."""

    end: PinEnd
    spacing: Spacing
    changed: str

    def words(self, grid: Grid) -> str:
        """The offer as a maker reads it."""

        def show(length: int) -> str:
            return show_length(length, grid, with_unit=True)

        return {
            "tails": f"{self.spacing.tails} tail{'' if self.spacing.tails == 1 else 's'}",
            "pin": f"pins {show(self.spacing.pin_nm)} wide",
            "half_pin": f"half-pins {show(self.spacing.half_pin_nm)} wide",
            "spread": "even tails",
            "bit": f"a bit of {show(self.end.slot.bit_nm)}",
        }[self.changed]


@lru_cache(maxsize=_LIKE_ENDS)
def nearest_layouts(end: PinEnd, spacing: Spacing) -> tuple[Offer, ...]:
    """All offers that can be cut, in the order: tails, pins, half-pins, spread, bit; found once for like ends."""
    makers = (_fewer_tails, _narrower_pins, _narrower_half_pins, _even, _finer_bit)
    return tuple(offer for make in makers for offer in make(end, spacing) if _fits(offer.end, offer.spacing))


def _fits(end: PinEnd, spacing: Spacing) -> bool:
    return can_be_cut(end, places(end.width_nm, spacing, tail_count(spacing) or 1))


def _fewer_tails(end: PinEnd, spacing: Spacing) -> Iterator[Offer]:
    asked = tail_count(spacing) or 1
    spread = Spread.EVEN if spacing.spread is Spread.LISTED else spacing.spread
    for tails in range(asked - 1, 0, -1):
        fewer = replace(spacing, tails=tails, spread=spread, places=())
        if _fits(end, fewer):
            yield Offer(end=end, spacing=fewer, changed="tails")
            return


def _narrower_pins(end: PinEnd, spacing: Spacing) -> Iterator[Offer]:
    if spacing.spread is not Spread.LISTED and (tail_count(spacing) or 1) > 1:
        pin = _widest(spacing.pin_nm, lambda width: _fits(end, replace(spacing, pin_nm=width)))
        if pin:
            yield Offer(end=end, spacing=replace(spacing, pin_nm=pin), changed="pin")


def _narrower_half_pins(end: PinEnd, spacing: Spacing) -> Iterator[Offer]:
    half = _widest(spacing.half_pin_nm, lambda width: _fits(end, replace(spacing, half_pin_nm=width)))
    if half:
        yield Offer(end=end, spacing=replace(spacing, half_pin_nm=half), changed="half_pin")


def _widest(asked: Nm, fits: Callable[[Nm], bool]) -> Nm | None:
    """Widest pin below the one asked for, by 64ths of an inch, that fits; a narrower pin always fits better."""
    step = Grid.IN_64.step_nm
    return next((Nm(w) for w in range((asked - 1) // step * step, LEAST_PIN_NM - 1, -step) if fits(Nm(w))), None)


def _even(end: PinEnd, spacing: Spacing) -> Iterator[Offer]:
    if spacing.spread is not Spread.EVEN:
        even = replace(spacing, spread=Spread.EVEN, ratio=None, places=(), tails=tail_count(spacing))
        yield Offer(end=end, spacing=even, changed="spread")


def _finer_bit(end: PinEnd, spacing: Spacing) -> Iterator[Offer]:
    """The thickest bit that fits, to a tenth of a millimetre."""
    at = places(end.width_nm, spacing, tail_count(spacing) or 1)
    inside = min(at.sockets) - 2 * end.slot.lean_nm(end.thickness_nm)
    widest = int(inside * end.slot.bit_nm / Fraction(end.slot.needs_nm))
    step = Grid.MM_TENTH.step_nm
    for bit in (widest // step * step, (widest // step - 1) * step):
        finer = replace(end, slot=Slot(slope=end.slot.slope, bit_nm=Nm(bit))) if bit > 0 else end
        if bit >= LEAST_BIT_NM and _fits(finer, spacing):
            yield Offer(end=finer, spacing=spacing, changed="bit")
            return
