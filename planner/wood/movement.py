"""How much wood moves as its moisture changes.

Wood Handbook (FPL-GTR-190, 2010) ch. 13. From 6 to 14 % moisture content: Eq. 13-2, ``change = size · C · points``,
with C_T for the width of flat-sawn boards and C_R for that of quarter-sawn ones (read). Over a wider range: Eq. 13-3,
which goes by the shrinkage S from green to oven-dry and ends at the intersection point F, 30 % for most woods (from
memory). By its slope at 10 % the one gives the other: ``C = S / (100·F − S·(F − 10))`` (own; it yields both printed
coefficients of 30 of the 35 species from their printed shrinkage). For mahogany, teak, green ash and the oak groups the
handbook's two tables disagree; here Table 13-5, the coefficients, counts throughout.

Boards are seldom quite flat-sawn or quarter-sawn, so the method tends to overstate how much the width changes (read).
Along the grain solid wood moves by a tenth of a percent or two from green to dry, which is left out.

Moisture contents are in percent. Sizes may be in any unit.
"""

from __future__ import annotations

from planner.domain.timber import USUAL_INTERSECTION_PCT, Timber
from planner.domain.words import MaterialKind, Sawn

SOURCE = "Wood Handbook FPL-GTR-190 (2010) Eq. 13-2 and 13-3"

LEAST_PCT, MOST_PCT = 6.0, 14.0
"""Eq. 13-2 is meant for moisture contents between these."""

GREATEST_COEFFICIENT = 0.005
"""Half a percent for each point: no wood moves more. A greater figure is a shrinkage from green to oven-dry."""

_TABLED_PCT = 10.0
_PARTS = 100.0


def change(size: float, coefficient: float, start: float, end: float) -> float:
    """Change of a size from one moisture content to another (Eq. 13-2); plus is swelling.

    >>> round(change(232.0, 0.00245, 8.0, 11.0), 3)
    1.705
    """
    return size * coefficient * (end - start)


def moisture_before(size: float, coefficient: float, end: float, changed: float) -> float:
    """Moisture content from which a size has changed by this much: Eq. 13-2 turned round."""
    return end - changed / (size * coefficient)


def change_wide(
    size: float, shrinkage_pct: float, start: float, end: float, intersection: float = USUAL_INTERSECTION_PCT
) -> float:
    """Change of a size over a wide range (Eq. 13-3); above the intersection point there is none."""
    start, end = min(start, intersection), min(end, intersection)
    return size * (end - start) / (_PARTS * intersection / shrinkage_pct - intersection + start)


def coefficient_from_shrinkage(shrinkage_pct: float, intersection: float = USUAL_INTERSECTION_PCT) -> float:
    """Coefficient of Eq. 13-2 that goes with a shrinkage from green to oven-dry."""
    return shrinkage_pct / (_PARTS * intersection - shrinkage_pct * (intersection - _TABLED_PCT))


def shrinkage_from_coefficient(coefficient: float, intersection: float = USUAL_INTERSECTION_PCT) -> float:
    """Shrinkage from green to oven-dry, in percent, that goes with a coefficient: the same turned round."""
    return _PARTS * intersection * coefficient / (1 + coefficient * (intersection - _TABLED_PCT))


def strain(coefficient: float, intersection: float, start: float, end: float) -> float:
    """Change of any size as a part of it: Eq. 13-2 as far as it reaches, beyond that the slope of Eq. 13-3 there."""
    return _swollen(coefficient, intersection, end) - _swollen(coefficient, intersection, start)


def _swollen(coefficient: float, intersection: float, moisture: float) -> float:
    """Size at a moisture content, as a part, less that at nothing by Eq. 13-2."""
    within = min(max(moisture, LEAST_PCT), MOST_PCT)
    shrinkage = shrinkage_from_coefficient(coefficient, intersection)
    beyond = change_wide(1.0, shrinkage, within, moisture, intersection) if coefficient else 0.0
    return coefficient * within + beyond


# --- of a timber -------------------------------------------------------------------------------------------


def across_width(timber: Timber, sawn: Sawn | None) -> float:
    """Coefficient for the width of a board; where nobody knows how it was sawn, the greater one.

    Halfway between flat and quarter a line across the rings stretches by the mean of both (how a plane strain turns).
    """
    if timber.kind is MaterialKind.SHEET:
        return timber.tangential
    greater = max(timber.tangential, timber.radial)
    by_saw = {
        Sawn.FLAT: timber.tangential,
        Sawn.QUARTER: timber.radial,
        Sawn.RIFT: (timber.tangential + timber.radial) / 2,
    }
    return greater if sawn is None else by_saw[sawn]


def along_grain(timber: Timber) -> float:
    """Coefficient for the length of a board: sheets move alike both ways, solid wood hardly at all."""
    return timber.radial if timber.kind is MaterialKind.SHEET else 0.0


def through_thickness(timber: Timber, sawn: Sawn | None) -> float:
    """Coefficient for the thickness of a board; that of sheets is left out."""
    if timber.kind is MaterialKind.SHEET:
        return 0.0
    other = {Sawn.FLAT: Sawn.QUARTER, Sawn.QUARTER: Sawn.FLAT}
    return across_width(timber, other.get(sawn, sawn) if sawn else None)
