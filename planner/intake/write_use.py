"""The use of a carcase as a table of a file."""

from __future__ import annotations

from planner.domain.use import UNSAID, Borne, Use
from planner.intake.load_said import write_load
from planner.intake.sharing import Table, if_any


def use_said(use: Use) -> Table:
    """The key and the table of a use; empty when nothing is said."""
    loads = {on.value: load for on in Borne if (load := use.load(on))}
    return if_any(
        "use",
        {
            **({} if use.fixed_to is UNSAID.fixed_to else {"fixed_to": str(use.fixed_to)}),
            **({} if use.floor is UNSAID.floor else {"floor": str(use.floor)}),
            **({} if use.open_at_once is None else {"open_at_once": use.open_at_once}),
            **{key: write_load(load) for key, load in loads.items()},
            **({} if use.sag is None else {"sag": use.sag}),
        },
    )
