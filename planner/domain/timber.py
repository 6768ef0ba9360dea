"""What a timber or a sheet good is like, with where each value comes from."""

from __future__ import annotations

from dataclasses import dataclass

from planner.domain.words import Hardness, MaterialKind

USUAL_INTERSECTION_PCT = 30.0
"""Moisture content below which most woods begin to shrink (Wood Handbook ch. 13, from memory)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Timber:
    """A species, or a kind of sheet: published averages, not promises.

    Attributes:
        name: as it is looked up.
        tangential: change of size along the growth rings for each percent of moisture content, as a part of the size;
            of a sheet, in its plane.
        radial: the same across the growth rings; of a sheet, in its plane too.
        intersection_pct: moisture content above which it moves no more.
        shrinkage_tangential_pct: from green to oven-dry; None where it isn't known.
        shrinkage_radial_pct: likewise.
        specific_gravity: oven-dry weight over volume at 12 % moisture content.
        stiffness_gpa: modulus of elasticity at 12 %, along the grain; of a sheet, along its face grain.
        strength_mpa: modulus of rupture at 12 %.
        hardness: how it is to cut.
        source: where the values stand.
        how_movement: how the coefficients were obtained: read, second-hand, or from memory; empty for the maker's own.
        how_shrinkage: the same of the shrinkage.
        how_strength: the same of specific gravity, stiffness and strength.
    """

    name: str
    kind: MaterialKind
    tangential: float
    radial: float
    intersection_pct: float = USUAL_INTERSECTION_PCT
    shrinkage_tangential_pct: float | None = None
    shrinkage_radial_pct: float | None = None
    specific_gravity: float
    stiffness_gpa: float
    strength_mpa: float
    hardness: Hardness
    source: str
    how_movement: str = ""
    how_shrinkage: str = ""
    how_strength: str = ""
