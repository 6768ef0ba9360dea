"""The list of checks; adding one is a module and a line here."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace

from planner.checks.boarded_backs import boarded_backs
from planner.checks.chisel import chisel
from planner.checks.cross_grain import cross_grain
from planner.checks.door_gaps import door_gaps
from planner.checks.drawers_run import drawers_run
from planner.checks.facts import Facts
from planner.checks.hung_drawers import hung_drawers
from planner.checks.not_planned import not_planned
from planner.checks.panels_move import panels_move
from planner.checks.pin_boards import pin_boards
from planner.checks.room import room
from planner.checks.sag import sag
from planner.checks.slope import slope
from planner.checks.slot import slot
from planner.checks.stopped_cuts import stopped_cuts
from planner.checks.thin_pins import thin_pins
from planner.checks.tips import tips
from planner.checks.two_people import two_people
from planner.checks.unlike_timber import unlike_timber
from planner.checks.unnamed_timber import unnamed_timber
from planner.domain.acknowledged import Acknowledged
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
    drawers_run,
    door_gaps,
    panels_move,
    boarded_backs,
    unlike_timber,
    hung_drawers,
    sag,
    tips,
    two_people,
    unnamed_timber,
)

_GRAVEST_FIRST = tuple(Level)


def findings(facts: Facts) -> tuple[Finding, ...]:
    """Findings of all checks, the gravest first; those that the maker has answered for with the reason given."""
    answered = {(each.code, each.marks): each for each in facts.project.acknowledged}
    found = [
        _with_answer(finding, answered.get((finding.code, finding.marks)))
        for check in CHECKS
        for finding in check(facts)
    ]
    return tuple(sorted(found, key=lambda finding: _GRAVEST_FIRST.index(finding.level)))


def _with_answer(finding: Finding, answer: Acknowledged | None) -> Finding:
    """The finding, answered for unless it has become graver since."""
    if answer is None or _GRAVEST_FIRST.index(finding.level) < _GRAVEST_FIRST.index(answer.level):
        return finding
    return replace(finding, acknowledged=answer.why)
