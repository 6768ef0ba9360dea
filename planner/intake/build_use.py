"""From the table of a file to the use of a carcase."""

from __future__ import annotations

from typing import TYPE_CHECKING

from planner.domain.use import UNSAID, FixedTo, Floor, Use

if TYPE_CHECKING:
    from planner.intake.file_use import UseTable


def use_of(table: UseTable | None) -> Use:
    """What a table says; nothing without one."""
    if table is None:
        return UNSAID
    return Use(
        fixed_to=FixedTo(table.fixed_to),
        floor=Floor(table.floor),
        open_at_once=table.open_at_once,
        shelves=table.shelves,
        drawers=table.drawers,
        top=table.top,
        sag=table.sag,
    )
