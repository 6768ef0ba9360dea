"""Cuts that leave too little wood, and boards that come out larger than what holds them."""

from __future__ import annotations

from collections.abc import Iterator

from planner.checks.facts import Facts
from planner.domain.plan import Finding
from planner.domain.words import FeatureKind, Level, Surface

THIN = 3
"""A cut deeper than two thirds of a board's thickness leaves less than a third: common practice, no source."""


_LEAVES_WOOD = frozenset({FeatureKind.GROOVE, FeatureKind.HOUSING, FeatureKind.RABBET})


def room(facts: Facts) -> Iterator[Finding]:
    """Cuts that leave less than a third of the thickness."""
    for feature in facts.features:
        if feature.kind not in _LEAVES_WOOD or feature.face not in {Surface.OUTSIDE, Surface.INSIDE}:
            continue
        board = facts.boards[feature.board]
        left = board.thickness_nm - feature.depth_nm
        if left * THIN < board.thickness_nm:
            yield Finding(
                code="thin-behind-cut",
                level=Level.CAUTION,
                marks=(feature.board,),
                text=f"The {feature.kind} for {feature.takes} leaves {facts.show(left)} "
                f"of {facts.show(board.thickness_nm)}.",
                remedy="Cut it shallower or take a thicker board.",
            )
