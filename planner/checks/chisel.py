"""Wedges that the bit can't reach.

Where a socket is wider outside than twice its width inside, no pass can reach the middle without entering a pin.
"""

from __future__ import annotations

from collections.abc import Iterator

from planner.checks.facts import Facts
from planner.derive.passes import NEGLIGIBLE_MM2
from planner.domain.marks import end_mark
from planner.domain.plan import Finding
from planner.domain.words import Level


def chisel(facts: Facts) -> Iterator[Finding]:
    """Pin ends on which a wedge stays."""
    left = {
        end_mark(cut.board, cut.end): cut.residue_mm2
        for setting in facts.sled.settings
        for cut in setting.cuts
        if cut.residue_mm2 > NEGLIGIBLE_MM2
    }
    if left:
        yield Finding(
            code="chisel",
            level=Level.NOTE,
            marks=tuple(left),
            text=f"The bit leaves wedges in sockets; the most on one end is {max(left.values()):.1f} mm² of end grain.",
            remedy="Chisel it out from both faces to the baseline, or use fewer, wider tails or a flatter slope.",
        )
