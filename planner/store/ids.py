"""Ids of the rows of a project as they are written, by what the project calls them."""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(slots=True, kw_only=True)
class Ids:
    """Ids of the rows written so far, by name or mark; ``project`` is the project's own."""

    project: int
    materials: dict[str, int] = field(default_factory=dict)
    sleds: dict[str, int] = field(default_factory=dict)
    boxes: dict[str, int] = field(default_factory=dict)
    boards: dict[str, int] = field(default_factory=dict)
    joints: dict[str, int] = field(default_factory=dict)

    def material(self, name: str) -> int:
        """Id of a material."""
        return self.materials[name]
