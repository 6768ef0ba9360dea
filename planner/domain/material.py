"""What boards are made of."""

from __future__ import annotations

from dataclasses import dataclass

from planner.domain.words import Hardness, MaterialKind, Sawn


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """A timber or a sheet good, by the maker's own name for it.

    Attributes:
        species: name of the timber it is, whose published values count; None when it isn't named.
        sawn: how its boards were sawn from the log; None when that isn't known.
    """

    name: str
    kind: MaterialKind = MaterialKind.SOLID
    hardness: Hardness = Hardness.HARD
    species: str | None = None
    sawn: Sawn | None = None
