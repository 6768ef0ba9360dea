"""Grooves and rabbets that must stop before an end, or they would show as holes in the finished corner."""

from __future__ import annotations

from collections.abc import Iterator

from planner.checks.facts import Facts
from planner.derive.cuts import sockets_inside
from planner.domain.marks import end_mark
from planner.domain.plan import Feature, Finding, Joint
from planner.domain.words import End, FeatureKind, Level

STOP_IT = "Clamp stop blocks, or stop by eye at a pencil line and square the end with a chisel."


def stopped_cuts(facts: Facts) -> Iterator[Finding]:
    """Every cut along a ring board that stops short, with where to stop it."""
    ring_boards = {board.mark for ring in facts.project.rings() for board in ring.boards}
    for feature in facts.features:
        if feature.kind not in _RUN_ALONG or feature.board not in ring_boards or _is_short(feature):
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
                remedy=" ".join((STOP_IT, *_move(facts, feature))),
            )


_RUN_ALONG = frozenset({FeatureKind.GROOVE, FeatureKind.RABBET})


def _is_short(feature: Feature) -> bool:
    """Whether a cut lies across an end rather than along the board."""
    return feature.x[1] - feature.x[0] <= feature.u[1] - feature.u[0]


def _move(facts: Facts, feature: Feature) -> Iterator[str]:
    """Where a groove that is stopped in a pin board would leave through sockets instead; the nearest such place."""
    joints = [joint for joint in facts.joints.values() if feature.board in (joint.pin_board, joint.tail_board)]
    if feature.kind is not FeatureKind.GROOVE or not any(joint.pin_board == feature.board for joint in joints):
        return
    wide = feature.u[1] - feature.u[0]
    rooms = [_rooms(facts, joint, wide) for joint in joints if joint.pin_board == feature.board]
    meeting = [
        (max(a[0], b[0]), min(a[1], b[1])) for a in rooms[0] for b in rooms[-1] if max(a[0], b[0]) <= min(a[1], b[1])
    ]
    places = [min(max(feature.u[0], low), high) for low, high in meeting]
    if places:
        nearest = min(places, key=lambda place: (abs(place - feature.u[0]), place))
        yield (
            f"Or move it: {facts.show(nearest)} from the reference edge it leaves this board through a socket, unseen."
        )


def _rooms(facts: Facts, joint: Joint, wide: int) -> list[tuple[int, int]]:
    """From where to where a groove may begin so that it leaves a pin end through one socket."""
    return [(a, b - wide) for a, b in sockets_inside(facts.project, joint) if a <= b - wide]


def _stops(facts: Facts, feature: Feature) -> Iterator[tuple[End, int]]:
    length = facts.boards[feature.board].length_nm
    if feature.x[0] > 0:
        yield End.A, feature.x[0]
    if feature.x[1] < length:
        yield End.B, length - feature.x[1]
