"""Grooves, rabbets, housings and the like: where each lies on its board, and whether it must stop before an end.

A cut is what a board and the room of its guest both fill. Along a ring board a groove or rabbet may also run on to
the end, which is easier, unless it would show on the finished corner: it does not where the wood it passes through
there is taken away by the joint. On a pin end that is a socket: the cut must lie within one where it is narrowest, on
the inside face, and be no deeper. On a tail end it is the space for a pin, narrowest at the very end. Some ends are
covered anyway: by the lap of a half-blind joint or a rabbet, and at a drawer's front by an applied front.
"""

from __future__ import annotations

from collections.abc import Mapping

from planner.derive.assembly import Assembly
from planner.derive.frame import in_board
from planner.derive.parts import LetIn, Shape
from planner.derive.slot import slot_of
from planner.domain.marks import end_mark
from planner.domain.plan import BoardSize, Feature, Joint
from planner.domain.project import Project
from planner.domain.ring import Corner, Ring
from planner.domain.solid import Solid, opposite
from planner.domain.words import Carries, End, FeatureKind, JointKind, Role, Surface
from planner.errors import PlanError, Problem
from planner.lengths import Nm, Span


def features(project: Project, made: Assembly, joints: Mapping[str, Joint]) -> tuple[Feature, ...]:
    """Every cut of the project that is no corner joint.

    Raises:
        PlanError: a cut would lie past an edge or an end of its board; all such are named.
    """
    past = [_past(each) for each in made.let_in if _lies_past(made.boards[each.host], each)]
    if past:
        raise PlanError(past)
    cutter = _Cutter(project, made.boards, joints)
    found = [cut for each in made.let_in if (cut := cutter.let_in(each)) is not None]
    found += [cut for each in made.shapes if (cut := cutter.shape(each)) is not None]
    return tuple(found)


def _lies_past(board: BoardSize, each: LetIn) -> bool:
    """Whether a groove lies past the board's edges, or a housing past its ends, in whole or in part."""
    direction = {FeatureKind.GROOVE: board.lie.across, FeatureKind.HOUSING: board.lie.along}.get(each.kind)
    if direction is None:
        return False
    (low, high), (start, stop) = board.place.along(direction), each.room.along(direction)
    return start < low or stop > high


def _past(each: LetIn) -> Problem:
    return Problem(
        where=each.host,
        what=f"the {each.kind} for {each.guest} is wider than the board, or lies past its edge.",
        remedy="Check its place and the sizes of both boards.",
    )


_ALONG = frozenset({FeatureKind.GROOVE, FeatureKind.RABBET})
"""Cuts that may run on to an end."""


class _Cutter:
    """Lays out cuts on the boards of one project."""

    def __init__(self, project: Project, boards: Mapping[str, BoardSize], joints: Mapping[str, Joint]) -> None:
        self.project, self.boards, self.joints = project, boards, joints
        self.rings = {board.mark: ring for ring in project.rings() for board in ring.boards}
        self.behind_fronts = _ends_behind_applied_fronts(project)

    def let_in(self, each: LetIn) -> Feature | None:
        """The cut that takes a guest; None when the host is not reached."""
        board = self.boards[each.host]
        block = each.room.meeting(board.place)
        if block is None:
            return None
        face = _comes_from(board, self.boards[each.guest]) or _opens(board, each.room, block)
        x, u, y = in_board(board, block)
        cut = Feature(kind=each.kind, board=each.host, face=face, x=x, u=u, y=y, takes=each.guest, held=each.held)
        ring = self.rings.get(each.host)
        if ring and each.kind in _ALONG and face in {Surface.INSIDE, Surface.OUTSIDE} and x[1] - x[0] > u[1] - u[0]:
            x = (self._start(ring, board, cut), self._stop(ring, board, cut))
        return Feature(kind=each.kind, board=each.host, face=face, x=x, u=u, y=y, takes=each.guest, held=each.held)

    def shape(self, each: Shape) -> Feature | None:
        """The cut of a shape; None when it lies beside its board."""
        board = self.boards[each.board]
        block = each.block.meeting(board.place)
        if block is None:
            return None
        x, u, y = in_board(board, block)
        face = _end_at(x) if each.kind is FeatureKind.TENON else _opens(board, each.block, block)
        return Feature(kind=each.kind, board=each.board, face=face, x=x, u=u, y=y, takes=each.takes, held=each.held)

    def _start(self, ring: Ring, board: BoardSize, cut: Feature) -> Nm:
        return Nm(0) if self._may_run_out(ring, board, End.A, cut) else cut.x[0]

    def _stop(self, ring: Ring, board: BoardSize, cut: Feature) -> Nm:
        return board.length_nm if self._may_run_out(ring, board, End.B, cut) else cut.x[1]

    def _may_run_out(self, ring: Ring, board: BoardSize, end: End, cut: Feature) -> bool:
        corner = ring.corner_at(board.mark, end)
        if end_mark(board.mark, end) in self.behind_fronts:
            return True
        if corner.kind is JointKind.RABBET:
            return corner.carries(board.mark) is Carries.END_RABBET and self._in_its_rabbet(board, corner, cut)
        joint = self.joints[corner.mark]
        carries = corner.carries(board.mark)
        if joint.lap_nm and carries is Carries.TAILS:
            return True
        return _runs_out_unseen(self.project, joint, carries, cut.u, cut.depth_nm)

    @staticmethod
    def _in_its_rabbet(board: BoardSize, corner: Corner, cut: Feature) -> bool:
        return cut.depth_nm <= board.thickness_nm - (corner.lap_nm or 0)


def _end_at(x: Span) -> Surface:
    """The end at which a tenon stays."""
    return Surface.END_A if x[0] == 0 else Surface.END_B


def _comes_from(host: BoardSize, guest: BoardSize) -> Surface | None:
    """The surface through which a guest enters: beyond it lies the guest's middle, best where its end points in.

    None where the guest's middle lies within the host.
    """
    beyond = [surface for surface in Surface if _middle_is_beyond(host, guest, surface)]
    ends = (guest.lie.along, opposite(guest.lie.along))
    endwise = [surface for surface in beyond if host.lie.normal(surface) in ends]
    if endwise:
        return endwise[0]
    return beyond[0] if len(beyond) == 1 else None


def _middle_is_beyond(host: BoardSize, guest: BoardSize, surface: Surface) -> bool:
    direction = host.lie.normal(surface)
    forward = sum(direction) > 0
    middle, edge = sum(guest.place.along(direction)), 2 * host.place.along(direction)[forward]
    return middle > edge if forward else middle < edge


def _opens(board: BoardSize, room: Solid, block: Solid) -> Surface:
    """The surface that a cut is made from: the one through which most of what is cleared stands out of the board.

    A direction in which the cut goes right through the board does not count, unless it does so in all. What is cut in a
    board alone is made from the first surface it reaches: outside, inside, edges, ends.
    """
    stands_out = {surface: _stands_out(board, room, surface) for surface in Surface}
    blind = [each for each in Surface if block.size(board.lie.normal(each)) < board.place.size(board.lie.normal(each))]
    for surfaces in (blind, list(Surface)):
        most = max(surfaces, key=stands_out.__getitem__, default=Surface.OUTSIDE)
        if stands_out[most] > 0:
            return most
    return next((each for each in Surface if stands_out[each] == 0), Surface.OUTSIDE)


def _stands_out(board: BoardSize, room: Solid, surface: Surface) -> int:
    """How far what is cleared reaches beyond a surface of the board; less than nothing when it stays within."""
    direction = board.lie.normal(surface)
    forward = sum(direction) > 0
    beyond = room.along(direction)[forward] - board.place.along(direction)[forward]
    return beyond if forward else -beyond


def _ends_behind_applied_fronts(project: Project) -> frozenset[str]:
    """Board ends that come out at a drawer's front and are hidden there by another: A of the right, B of the left."""
    return frozenset(
        end_mark(drawer.ring.board(role).mark, end)
        for drawer in project.drawers()
        if drawer.applied_front
        for role, end in ((Role.RIGHT, End.A), (Role.LEFT, End.B))
    )


def _runs_out_unseen(project: Project, joint: Joint, carries: Carries, band: Span, depth: Nm) -> bool:
    if carries is Carries.TAILS:
        at = joint.tail_from_nm
        beside = band[1] <= at or band[0] >= at + joint.width_nm
        return beside or any(start + at <= band[0] and band[1] <= stop + at for start, stop in joint.pins)
    inside = sockets_inside(project, joint)
    return depth <= joint.socket_depth_nm and any(a <= band[0] and band[1] <= b for a, b in inside)


def sockets_inside(project: Project, joint: Joint) -> tuple[Span, ...]:
    """Places of a joint's sockets on the inside face of its pin board, where they are narrowest."""
    lean = slot_of(project.sled(joint.sled)).lean_nm(joint.socket_depth_nm)
    return tuple((Nm(start + lean), Nm(stop - lean)) for start, stop in joint.tails)
