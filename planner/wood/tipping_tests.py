"""What is known of the published stability tests of clothing storage, each fact with how surely it is known.

ASTM F2057-23, made law in the United States as 16 CFR part 1261. The standard itself was not read, only its scope and
what others quote of it. So this is for estimates; it is no certified test. Figures are SI.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from planner.domain.use import Load, LoadKind
from planner.lengths import Grid, Nm, metres
from planner.quantities import kilograms


class Known(StrEnum):
    """How surely a detail is known."""

    READ = "read"
    SECOND_HAND = "second-hand"
    MEMORY = "from memory, unverified"
    NOT_FOUND = "not found; the worse case is taken"


_IN = 64 * Grid.IN_64.step_nm

SCOPE_HEIGHT_NM = Nm(27 * _IN)
SCOPE_LB = 30
SCOPE_CUBIC_FT = 3.2
"""27 in, 30 lb and 3.2 ft³, all together: F2057-23 section 1.1 (read: cpsc.gov business guidance)."""

ALLOWANCE_NM = Nm(8 * Grid.IN_64.step_nm)
"""1/8 in off a drawer's clear height before its volume is reckoned (read: cpsc.gov business guidance)."""

FILL = Load(kind=LoadKind.CLOTHES)
"""8.5 lb/ft³ in every drawer (read for the rule of 2022; in F2057-23 from memory)."""

PULL_LBF = 10
GREATEST_PULL_UP_NM = Nm(56 * _IN)
"""10 lbf at the highest place a hand can hold, but not above 56 in (from memory)."""

CHILD_LB = 60
"""60 lb on the front of an open drawer (read: sn.astm.org/update)."""

BLOCK_NM = Nm(_IN * 43 // 100)
"""0.43 in under the rear supports, for carpet (second-hand)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Situation:
    """One test, as far as it is known.

    Attributes:
        name: stable name of our own.
        does: what is done, in a few words.
        fills: drawers empty (False), filled (True); both where it is not known.
        pull: whether it is pulled.
        child: whether a child's weight is on one of its drawers.
        carpet: whether it leans on a block under its rear supports.
        known: each detail, and how surely it is known.
    """

    name: str
    does: str
    fills: tuple[bool, ...]
    pull: bool = False
    child: bool = False
    carpet: bool = False
    known: tuple[tuple[str, Known], ...]


SITUATIONS = (
    Situation(
        name="clothing",
        does="all drawers open that can be, doors open, drawers filled",
        fills=(True,),
        known=(
            ("that this is tested", Known.READ),
            ("filled at 8.5 lb/ft³", Known.MEMORY),
            ("how far drawers are opened", Known.MEMORY),
        ),
    ),
    Situation(
        name="pull",
        does="pulled forward at the highest hand-hold",
        fills=(False, True),
        pull=True,
        known=(
            ("that this is tested", Known.READ),
            ("10 lbf, at most 56 in up", Known.MEMORY),
            ("which drawers are open, and whether they are filled", Known.NOT_FOUND),
        ),
    ),
    Situation(
        name="child on carpet",
        does="a child on the front of what is open",
        fills=(False, True),
        child=True,
        carpet=True,
        known=(
            ("60 lb", Known.READ),
            ("a block of 0.43 in under the rear supports, the weight at the front edge", Known.SECOND_HAND),
            ("which other drawers are open, and whether they are filled", Known.NOT_FOUND),
        ),
    ),
)
"""The three tests of F2057-23, by names read in a test laboratory's list of its steps."""


def drawer_volume(height: Nm, width: Nm, depth: Nm) -> float:
    """Volume of a drawer by the rule: its height is from the bottom to the lowest obstruction above it."""
    return max(0.0, metres(height - ALLOWANCE_NM)) * metres(width) * metres(depth)


def enclosed_volume(height: Nm, width: Nm, depth: Nm) -> float:
    """Volume of an enclosed space that does not draw out: half of it counts (read, as above)."""
    return metres(height) * metres(width) * metres(depth) / 2


def in_scope(height: Nm, kg: float, volume: float) -> bool:
    """Whether a piece with drawers or doors comes under the standard: all three limits together."""
    return height >= SCOPE_HEIGHT_NM and kg >= kilograms(SCOPE_LB) and volume >= SCOPE_CUBIC_FT * metres(12 * _IN) ** 3
