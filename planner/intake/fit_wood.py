"""What doesn't fit together of materials, their timbers and the air, once all values are read."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from planner.intake.build_wood import climate_of, timber_of
from planner.intake.refusal import Fault, quote
from planner.quantities import HUNDREDTHS, show_percent
from planner.wood.moisture import moisture
from planner.wood.timbers import timber_named

if TYPE_CHECKING:
    from planner.intake.file_model import File


def faults_of_wood(file: File) -> Iterator[Fault]:
    """Materials of another kind than their species, and dry seasons that are damper than the damp ones."""
    own = tuple(timber_of(name, table) for name, table in file.timber.items())
    for name, table in file.material.items():
        if table.species and table.kind and table.kind != timber_named(table.species, own).kind:
            kind = timber_named(table.species, own).kind
            yield Fault(
                path=("material", name, "kind"),
                what=f'is "{table.kind}", but {quote(table.species)} is "{kind}".',
                remedy="Leave it out, or name another species.",
            )
    if file.room:
        dry, damp = (moisture(climate_of(season)) for season in (file.room.dry, file.room.damp))
        if dry > damp:
            shown = [show_percent(round(content * HUNDREDTHS)) for content in (dry, damp)]
            yield Fault(
                path=("room", "dry"),
                what=f"brings wood to {shown[0]} moisture, and the damp season only to {shown[1]}.",
                remedy="Change dry and damp about, or put their figures right.",
            )
