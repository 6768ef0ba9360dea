"""The list of checks; adding one is a module and a line here."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from planner.checks.chisel import chisel
from planner.checks.cross_grain import cross_grain
from planner.checks.facts import Facts
from planner.checks.hung_drawers import hung_drawers
from planner.checks.not_planned import not_planned
from planner.checks.pin_boards import pin_boards
from planner.checks.room import room
from planner.checks.slope import slope
from planner.checks.slot import slot
from planner.checks.stopped_cuts import stopped_cuts
from planner.checks.thin_pins import thin_pins
from planner.domain.plan import Finding
from planner.domain.words import Level

CHECKS: tuple[Callable[[Facts], Iterable[Finding]], ...] = (
    slope,
    slot,
    room,
    chisel,
    thin_pins,
    not_planned,
    pin_boards,
    stopped_cuts,
    cross_grain,
    hung_drawers,
)

_GRAVEST_FIRST = tuple(Level)


def findings(facts: Facts) -> tuple[Finding, ...]:
    """Findings of all checks, the gravest first."""
    found = [finding for check in CHECKS for finding in check(facts)]
    return tuple(sorted(found, key=lambda finding: _GRAVEST_FIRST.index(finding.level)))
