"""Grooves and rabbets that must stop before an end, or they would show as holes in the finished corner."""

from __future__ import annotations

from collections.abc import Iterator

from planner.checks.facts import Facts
from planner.domain.marks import end_mark
from planner.domain.plan import Feature, Finding
from planner.domain.words import End, FeatureKind, Level


def stopped_cuts(facts: Facts) -> Iterator[Finding]:
    """Every cut along a ring board that stops short, with where to stop it."""
    for feature in facts.features:
        if feature.kind is FeatureKind.HOUSING:
            continue
        stops = tuple(_stops(facts, feature))
        if stops:
            yield Finding(
                code="stopped-cut",
                level=Level.NOTE,
                marks=tuple(end_mark(feature.board, end) for end, _ in stops),
                text=f"The {feature.kind} for {feature.takes} in {feature.board} would show if it ran out: stop it "
                + " and ".join(f"{facts.show(short)} from end {end}" for end, short in stops)
                + ".",
                remedy="Clamp stop blocks, or stop by eye at a pencil line and square the end with a chisel.",
            )


def _stops(facts: Facts, feature: Feature) -> Iterator[tuple[End, int]]:
    length = facts.boards[feature.board].length_nm
    if feature.x[0] > 0:
        yield End.A, feature.x[0]
    if feature.x[1] < length:
        yield End.B, length - feature.x[1]
