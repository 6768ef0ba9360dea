"""What to write on every surface of every board."""

from __future__ import annotations

from planner.derive.labels import SURFACE_WORDS
from planner.domain.plan import Plan
from planner.domain.words import Surface
from planner.present.table import Column, Group, Table
from planner.present.views.by_box import by_box


def labels(plan: Plan) -> Table:
    """One row for each surface, board by board."""
    return Table(
        title="Labels",
        grid=plan.project.grid,
        columns=(Column(heading="Board"), Column(heading="Surface"), Column(heading="Write on it")),
        groups=tuple(
            Group(
                heading=heading,
                rows=tuple(
                    (board.mark, SURFACE_WORDS[surface], plan.labels[board.mark].on(surface))
                    for board in found
                    for surface in Surface
                ),
            )
            for heading, found in by_box(plan, plan.boards)
        ),
        notes=(
            "Write each board's labels as soon as it is cut to size, before anything is done to its ends.",
            "The same joint mark stands on both mating ends. Trace tails only from the pins that bear their mark.",
        ),
    )
