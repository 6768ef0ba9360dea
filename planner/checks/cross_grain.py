"""Wood that would be glued across the grain of its neighbour, so that the seasons split it or break the glue.

Solid wood swells and shrinks across its grain and hardly at all along it; sheet goods hardly move either way. Where two
parts touch and one of them moves along a direction in which the other does not, the glue holds them together only over
a short way. The rule is asked of every cut that takes a part, in both directions of its floor, so no joint needs a rule
of its own.

The way that glue can bear: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from planner.checks.facts import Facts
from planner.checks.moving import AXES, Moving, axis_of
from planner.derive.frame import in_piece
from planner.domain.plan import BoardSize, Feature, Finding, Joint
from planner.domain.solid import Direction
from planner.domain.words import FeatureKind, Held, Level, MaterialKind
from planner.lengths import Grid, Nm

BEARS_NM = Nm(64 * 4 * Grid.IN_64.step_nm)
"""4 in, about 100 mm: further across the grain a glued joint is not to be trusted. Common practice, no source."""

_GLUED_TIGHT = frozenset({FeatureKind.HOUSING, FeatureKind.MORTISE, FeatureKind.GROOVE, FeatureKind.RABBET})


def cross_grain(facts: Facts) -> Iterator[Finding]:
    """Every glued cut and corner that holds wood against its movement."""
    for feature in facts.features:
        if feature.takes in facts.boards and feature.held is Held.GLUED and feature.kind in _GLUED_TIGHT:
            yield from _glued(facts, feature, facts.boards[feature.board], facts.boards[feature.takes])
    for joint in facts.joints.values():
        yield from _corner(facts, joint)


def _glued(facts: Facts, feature: Feature, host: BoardSize, guest: BoardSize) -> Iterator[Finding]:
    block = in_piece(host, feature.x, feature.u, feature.y)
    held = axis_of(host.lie.normal(feature.face))
    for axis in AXES:
        if axis == held or _moves(facts, host, axis) is _moves(facts, guest, axis):
            continue
        size = block.size(axis)
        if size > BEARS_NM:
            moving, still = (host, guest) if _moves(facts, host, axis) else (guest, host)
            yield Finding(
                code="cross-grain",
                level=Level.CAUTION,
                marks=(host.mark, guest.mark),
                text=f"{guest.mark} is glued into {host.mark} over {facts.show(size)}, and there {moving.mark} moves "
                f"across its grain while {still.mark} does not.{_by(facts, moving, axis, size)}",
                remedy=f"Glue it at the front only, over no more than {facts.show(BEARS_NM)}, and leave the rest free; "
                "or make both of solid wood with the grain the same way.",
            )


def _by(facts: Facts, moving: BoardSize, axis: Direction, size: int) -> str:
    """How far the moving board moves over the year, where its timber is named."""
    over = Moving(facts)
    if not over.is_known(moving):
        return ""
    grows = over.parts(moving, axis)
    return f" Over the year it moves by {over.show((grows.most - grows.least) * size)}."


def _corner(facts: Facts, joint: Joint) -> Iterator[Finding]:
    """A corner of solid wood and sheet goods: the one moves along the joint, the other does not."""
    boards = (facts.boards[joint.pin_board], facts.boards[joint.tail_board])
    axis = axis_of(boards[0].lie.across)
    if _moves(facts, boards[0], axis) is not _moves(facts, boards[1], axis) and joint.width_nm > BEARS_NM:
        yield Finding(
            code="cross-grain",
            level=Level.CAUTION,
            marks=(joint.mark,),
            text=f"Corner {joint.mark} joins solid wood to sheet goods over {facts.show(joint.width_nm)}: "
            "only the solid board moves with the seasons.",
            remedy="Make all boards of this ring of the same kind.",
        )


def _moves(facts: Facts, board: BoardSize, axis: Direction) -> bool:
    """Whether a board swells and shrinks along an axis: solid wood does across its grain."""
    solid = facts.project.material(board.material).kind is MaterialKind.SOLID
    return solid and axis != axis_of(board.lie.along)
