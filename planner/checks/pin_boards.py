"""Which boards carry the pins, and why: said for every ring, since a board cut the wrong way is lost.

A dovetail holds against a pull along its tail board and gives way along its pin board. So a drawer wants tails on its
sides; and a case that hangs wants them there too, or its load could draw the bottom off. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from planner.checks.facts import Facts
from planner.derive.rings import pair_words, why_these_carry_pins
from planner.domain.plan import Finding
from planner.domain.ring import Ring
from planner.domain.words import Level, PinPair, RingKind


def pin_boards(facts: Facts) -> Iterator[Finding]:
    """One note for all rings that have the same boards carry the pins for the same reason."""
    drawers = {drawer.ring.mark for drawer in facts.project.drawers()}
    alike: dict[tuple[str, str, str], list[str]] = {}
    for ring in facts.project.rings():
        first, second = (facts.boards[board.mark].length_nm for board in ring.boards[:2])
        reason = why_these_carry_pins(ring, drawers, first, second)
        alike.setdefault((pair_words(ring), reason, _remedy(ring)), []).append(ring.mark)
    for (pair, reason, remedy), marks in alike.items():
        yield Finding(
            code="pin-boards",
            level=Level.NOTE,
            marks=tuple(marks),
            text=f"{pair[0].upper()}{pair[1:]} carry the pins: {reason}.",
            remedy=remedy,
        )


def _remedy(ring: Ring) -> str:
    change = "To change it, say pins_on in the project file."
    if ring.kind is RingKind.CARCASE and ring.pin_pair is PinPair.SECOND_AND_FOURTH:
        return (
            f"If it is to hang on a wall, let top and bottom carry the pins: tails on the sides bear the load. {change}"
        )
    return change
