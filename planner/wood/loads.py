"""Loads that a maker names for shelves, drawers and tops, and limits of sag, each with its source.

SI: kilograms and metres.
"""

from __future__ import annotations

from dataclasses import dataclass

from planner.domain.use import Load, LoadKind, LoadUnit
from planner.lengths import Grid, metres
from planner.quantities import kilograms

_IN = metres(64 * Grid.IN_64.step_nm)
_FT = 12 * _IN
"""Metres in an inch and in a foot."""


@dataclass(frozen=True, slots=True)
class Spread:
    """A load as figures.

    Attributes:
        kg: on each metre of length, square metre, or cubic metre of the space above.
        dimensions: which of these, 1 to 3.
        source: where the figure comes from.
    """

    kg: float
    dimensions: int
    source: str

    def on(self, length: float, width: float, height: float) -> float:
        """Kilograms on a board of this length and width, below a clear height."""
        sizes = (length, width, height)
        total = self.kg
        for size in sizes[: self.dimensions]:
            total *= size
        return total


_THOUSANDTHS = 1000

_NAMED = {
    LoadKind.BOOKS: (
        25_000,
        LoadUnit.LB_FT,
        "25 lb on each foot of shelf, measured in California (read: seaintarchive.org 2000a msg00735)",
    ),
    LoadKind.CLOTHES: (
        8_500,
        LoadUnit.LB_FT3,
        "8.5 lb/ft³ of clothes: the rule of 2022 for clothing storage (read: cpsc.gov)",
    ),
    LoadKind.TOOLS: (
        50_000,
        LoadUnit.LB_FT2,
        "50 lb/ft²: the greater figure for woodwork shelves (from memory, unverified)",
    ),
    LoadKind.CABINET_CLASS: (
        15_000,
        LoadUnit.LB_FT2,
        "15 lb/ft² for 7 days: ANSI/KCMA A161.1 sec. 5.1 (read: timberpart.com KCMA structural tests)",
    ),
}
_STACKED_BOOKS = (40_000, LoadUnit.LB_FT3, "40 lb/ft³ of books (read: seaintarchive.org 2000a msg00735)")
"""Loads by name: thousandths, their unit, and the source."""

_DIMENSIONS = {
    LoadUnit.LB_FT: 1,
    LoadUnit.LB_FT2: 2,
    LoadUnit.LB_FT3: 3,
    LoadUnit.KG_M: 1,
    LoadUnit.KG_M2: 2,
    LoadUnit.KG_M3: 3,
}

_POUNDS = frozenset({LoadUnit.LB_FT, LoadUnit.LB_FT2, LoadUnit.LB_FT3})


def spread(load: Load, *, in_a_drawer: bool = False) -> Spread:
    """A load as figures; in a drawer books are stacked, so they count by volume."""
    if load.unit is not None and load.thousandths is not None:
        return _spread(load.thousandths, load.unit, "your own figure")
    stacked = in_a_drawer and load.kind is LoadKind.BOOKS
    return _spread(*(_STACKED_BOOKS if stacked else _NAMED[load.kind]))


def _spread(thousandths: int, unit: LoadUnit, source: str) -> Spread:
    figure, dimensions = thousandths / _THOUSANDTHS, _DIMENSIONS[unit]
    return Spread(kilograms(figure) / _FT**dimensions if unit in _POUNDS else figure, dimensions, source)


# --- how far a board may sag ------------------------------------------------------------------------------

CLASS_RATIO = 192
"""1/16 in on each foot of span: ANSI/KCMA A161.1 sec. 5.1 (read, as above)."""

CLASS_MOST = _IN / 4
"""And never more than 1/4 in."""

SEEN_RATIO = 384
"""1/32 in on each foot is about what the eye notices: common practice, no source."""


def class_limit(span: float) -> float:
    """Greatest sag of the published cabinet class."""
    return min(span / CLASS_RATIO, CLASS_MOST)
