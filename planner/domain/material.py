"""What boards are made of."""

from __future__ import annotations

from dataclasses import dataclass

from planner.domain.words import Hardness, MaterialKind


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """A timber or a sheet good, by the maker's own name for it."""

    name: str
    kind: MaterialKind = MaterialKind.SOLID
    hardness: Hardness = Hardness.HARD
