"""What doesn't fit together once all lengths are read."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from planner.intake.build import shared_of
from planner.intake.build_box import sizes_of
from planner.intake.refusal import Fault

if TYPE_CHECKING:
    from planner.intake.file_box import BoxTable
    from planner.intake.file_model import File
    from planner.intake.shared import Shared


def faults_of_sizes(file: File) -> Iterator[Fault]:
    """Everything that is wrong with the sizes of a file whose form is good."""
    shared = shared_of(file)
    for place, box in enumerate(file.box):
        number = _first_without_room(box, shared)
        if number:
            yield Fault(
                path=("box", place, "nest", "count"),
                what=f"box {number} of the nest would have no room inside.",
                remedy="Ask for fewer, or for smaller gaps, thinner boards, or a larger outermost box.",
            )


def _first_without_room(box: BoxTable, shared: Shared) -> int | None:
    if box.nest is None:
        return None
    boards = 2 * box.thickness if box.sizes == "outside" else 0
    closed = box.lid.height + shared.length(box.lid.kerf, "kerf") if box.lid and box.lid.height else 0
    sizes = enumerate(sizes_of(box, shared), start=1)
    return next(
        (number for number, size in sizes if min(size.length, size.width) <= boards or size.height <= closed), None
    )
