"""Grooves, rabbets and housings: where each lies on its board, and whether it must stop before an end.

A cut that ran out at an end would show on the finished corner, unless the wood it passes through there is taken away
by the joint. On a pin end that is a socket: the cut must lie within one where it is narrowest, on the inside face, and
be no deeper. On a tail end it is the space for a pin, narrowest at the very end. Some ends are covered anyway: tails by
the lap of a half-blind joint, and both sides' front ends by an applied front, whatever they carry. Where the cut can't
run out unseen it stops where the panel stops, inside the mate's thickness by the depth of the mate's cut.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from planner.derive.openings import column_widths, inside_depth, offsets, opening_heights
from planner.derive.sizes import rail_mark
from planner.derive.slot import slot_of
from planner.domain.box import BottomPanel
from planner.domain.carcase import Carcase, Column, Rails
from planner.domain.marks import board_mark, end_mark
from planner.domain.plan import BoardSize, Feature, Joint
from planner.domain.project import Project
from planner.domain.ring import Ring
from planner.domain.words import Carries, End, FeatureKind, Role, Surface
from planner.lengths import Nm, Span, on_grid


def features(project: Project, boards: Mapping[str, BoardSize], joints: Mapping[str, Joint]) -> tuple[Feature, ...]:
    """Every groove, rabbet and housing of the project."""
    found: list[Feature] = []
    for ring, bottom in project.bottoms():
        found += _bottom_grooves(project, ring, bottom, boards, joints)
    for carcase in project.carcases:
        found += _back_rabbets(project, carcase, boards, joints)
        found += _partition_housings(project, carcase)
        found += _rail_housings(project, carcase)
    return tuple(found)


def groove_height(project: Project, ring: Ring, bottom: BottomPanel, joints: Mapping[str, Joint]) -> Nm:
    """Height of a bottom's groove above the reference edge: as said, or just clear of all half-pins inside."""
    if bottom.up_nm is not None:
        return bottom.up_nm
    least = max(sockets_inside(project, joints[corner.mark])[0][0] for corner in ring.corners)
    up = on_grid(least, project.grid)
    return up if up >= least else Nm(up + project.grid.step_nm)


def _bottom_grooves(
    project: Project, ring: Ring, bottom: BottomPanel, boards: Mapping[str, BoardSize], joints: Mapping[str, Joint]
) -> Iterator[Feature]:
    up = groove_height(project, ring, bottom, joints)
    band = (up, Nm(up + bottom.stuff.thickness_nm))
    for board in ring.boards:
        yield Feature(
            kind=FeatureKind.GROOVE,
            board=board.mark,
            face=Surface.INSIDE,
            x=_run(project, ring, boards[board.mark], band, bottom.groove_depth_nm, joints),
            u=band,
            depth_nm=bottom.groove_depth_nm,
            takes=board_mark(ring.mark, Role.BOTTOM_PANEL),
        )


def _back_rabbets(
    project: Project, carcase: Carcase, boards: Mapping[str, BoardSize], joints: Mapping[str, Joint]
) -> Iterator[Feature]:
    back = carcase.back
    if back is None:
        return
    band = (Nm(carcase.depth_nm - back.stuff.thickness_nm), carcase.depth_nm)
    for board in carcase.ring.boards:
        yield Feature(
            kind=FeatureKind.RABBET,
            board=board.mark,
            face=Surface.INSIDE,
            x=_run(project, carcase.ring, boards[board.mark], band, back.rabbet_depth_nm, joints),
            u=band,
            depth_nm=back.rabbet_depth_nm,
            takes=board_mark(carcase.ring.mark, Role.BACK_PANEL),
        )


def _run(project: Project, ring: Ring, board: BoardSize, band: Span, depth: Nm, joints: Mapping[str, Joint]) -> Span:
    """From where to where, measured from end A, a cut along a ring board may run."""
    behind_fronts = _ends_behind_applied_fronts(project)

    def kept_at(end: End) -> int:
        corner = ring.corner_at(board.mark, end)
        joint = joints[corner.mark]
        carries = corner.carries(board.mark)
        covered = end_mark(board.mark, end) in behind_fronts or (joint.lap_nm and carries is Carries.TAILS)
        if covered or _runs_out_unseen(project, joint, carries, band, depth):
            return 0
        mate = joint.tail_thickness_nm if carries is Carries.PINS else joint.pin_thickness_nm
        return mate + project.proud_nm - depth

    return Nm(kept_at(End.A)), Nm(board.length_nm - kept_at(End.B))


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
        return any(start <= band[0] and band[1] <= stop for start, stop in joint.pins)
    inside = sockets_inside(project, joint)
    return depth <= joint.socket_depth_nm and any(a <= band[0] and band[1] <= b for a, b in inside)


def sockets_inside(project: Project, joint: Joint) -> tuple[Span, ...]:
    """Places of a joint's sockets on the inside face of its pin board, where they are narrowest."""
    lean = slot_of(project.sled(joint.sled)).lean_nm(joint.socket_depth_nm)
    return tuple((Nm(start + lean), Nm(stop - lean)) for start, stop in joint.tails)


# --- housings in a carcase ---------------------------------------------------------------------------------


def _partition_housings(project: Project, carcase: Carcase) -> Iterator[Feature]:
    partitions = carcase.partitions
    if partitions is None:
        return
    ring, thick = carcase.ring, partitions.stuff.thickness_nm
    widths = column_widths(carcase, project.grid)
    starts = offsets(widths, thick)
    for number in range(1, len(widths)):
        from_left = starts[number] - thick
        from_right = sum(widths) + thick * (len(widths) - 1) - from_left - thick
        for role, beside, clear in ((Role.TOP, Role.LEFT, from_left), (Role.BOTTOM, Role.RIGHT, from_right)):
            place = project.proud_nm + ring.board(beside).stuff.thickness_nm + clear
            yield Feature(
                kind=FeatureKind.HOUSING,
                board=ring.board(role).mark,
                face=Surface.INSIDE,
                x=(Nm(place), Nm(place + thick)),
                u=(Nm(0), inside_depth(carcase)),
                depth_nm=partitions.housing_depth_nm,
                takes=board_mark(ring.mark, Role.PARTITION, number),
            )


def _rail_housings(project: Project, carcase: Carcase) -> Iterator[Feature]:
    if carcase.rails is None:
        return
    for number, column in enumerate(carcase.columns, 1):
        yield from _column_rail_housings(project, carcase, column, number, carcase.rails)


def _column_rail_housings(
    project: Project, carcase: Carcase, column: Column, number: int, rails: Rails
) -> Iterator[Feature]:
    where = f"{carcase.ring.mark} column {number} heights"
    heights = opening_heights(carcase, column, project.grid, where=where)
    thick = rails.stuff.thickness_nm
    for opening, below, start in zip(column.openings, heights, offsets(heights, thick), strict=True):
        if opening is column.openings[-1]:
            return
        from_top = start + below
        from_bottom = sum(heights) + thick * (len(heights) - 1) - from_top - thick
        for board, face, place in _uprights_beside(project, carcase, number, from_top, from_bottom):
            yield Feature(
                kind=FeatureKind.HOUSING,
                board=board,
                face=face,
                x=(Nm(place), Nm(place + thick)),
                u=(Nm(0), rails.width_nm),
                depth_nm=rails.housing_depth_nm,
                takes=rail_mark(opening),
            )


def _uprights_beside(
    project: Project, carcase: Carcase, column: int, from_top: int, from_bottom: int
) -> Iterator[tuple[str, Surface, int]]:
    """The two uprights of a column, the face that looks into it, and a place on each, measured from its end A.

    A right side and a partition have end A at the top, a left side at the bottom. A partition's outside face looks
    right, so it is the outside face that looks into the column on its right.
    """
    ring = carcase.ring
    partition_depth = carcase.partitions.housing_depth_nm if carcase.partitions else 0
    below_end = project.proud_nm
    if column == 1:
        foot = below_end + ring.board(Role.BOTTOM).stuff.thickness_nm
        yield ring.board(Role.LEFT).mark, Surface.INSIDE, foot + from_bottom
    else:
        yield board_mark(ring.mark, Role.PARTITION, column - 1), Surface.OUTSIDE, partition_depth + from_top
    if column == len(carcase.columns):
        head = below_end + ring.board(Role.TOP).stuff.thickness_nm
        yield ring.board(Role.RIGHT).mark, Surface.INSIDE, head + from_top
    else:
        yield board_mark(ring.mark, Role.PARTITION, column), Surface.INSIDE, partition_depth + from_top
