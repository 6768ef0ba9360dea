"""What must be known of a file before the rest of it can be read: its unit, and the names it gives."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from planner.lengths import Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """Context of every value in a file.

    Attributes:
        unit: unit of bare numbers.
        materials: names that a ``material`` may have; None when the file's materials can't be read at all.
        sleds: the same for ``sled``.
        timbers: names of the file's own timbers.
    """

    unit: Unit
    materials: tuple[str, ...] | None
    sleds: tuple[str, ...] | None
    timbers: tuple[str, ...] = ()


def known_of(raw: Mapping[str, Any]) -> Known:
    """Context of a file as far as it can be made out, whatever else is wrong with the file."""
    project = raw.get("project")
    said = project.get("units") if isinstance(project, dict) else None
    return Known(
        unit=Unit.INCH if said == Unit.INCH else Unit.MM,
        materials=_names(raw.get("material")),
        sleds=_names(raw.get("sled")),
        timbers=_names(raw.get("timber")) or (),
    )


def _names(table: object) -> tuple[str, ...] | None:
    return tuple(table) if isinstance(table, dict) and table else None
