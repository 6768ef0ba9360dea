"""Drawers in their openings: the clearances left, what they run on, and the holes for their handles."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from planner.domain.drawer import Drawer, Handles
from planner.domain.marks import board_mark
from planner.domain.words import FeatureKind, Role, RunnerKind
from planner.lengths import Unit, read_length
from tests.oracle.assembly_checks import gap
from tests.oracle.assembly_glue import Finding
from tests.oracle.assembly_rooms import Opening
from tests.oracle.assembly_space import BACK, RIGHT, UP, WAYS, Block, hull, meet, moved, size, slab
from tests.oracle.assembly_stand import Piece, clear_below_and_above, strip_mark

LEAST_TO_RAIL = read_length("1/16", Unit.INCH)
"""The least space between a drawer and a hanging rail behind it: common practice, no source."""

GROOVE_PLAY = read_length("1/32", Unit.INCH)
"""How much wider the groove of a hung drawer is than its strip, below it: common practice, no source."""


def drawer_faults(piece: Piece, opening: Opening, drawer: Drawer) -> Iterator[Finding]:
    """All that is wrong with one drawer as it stands in its opening."""
    mark = drawer.ring.mark
    own = [plank.mark for plank in piece.glued.bench.planks.values() if plank.box == mark]
    others = [each for each in piece.wood if each not in own]
    block = hull(chunk for board in drawer.ring.boards for chunk, _ in piece.wood[board.mark])
    strips = [strip_mark(drawer, role) for role in (Role.LEFT, Role.RIGHT)]
    hung = piece.runs_on is RunnerKind.SIDE_HUNG
    fixed = [each for each in others if piece.glued.bench.planks[each].box == piece.mark]
    rails = [each for each in fixed if piece.glued.bench.planks[each].role is Role.HANGING_RAIL]
    around = [each for each in fixed if not (hung and each in strips) and each not in rails]
    if (near := gap(piece, block, WAYS["back"], rails)) is not None and near < LEAST_TO_RAIL:
        yield Finding("clearance", (mark, *rails), f"{mark} has only {near} nm to the hanging rail", block)
    yield from _clearances(piece, drawer, (opening.block, block), around)
    if hung:
        yield from _lifts(piece, drawer)
    if piece.runs_on is not RunnerKind.SLIDES:
        ring = [board.mark for board in drawer.ring.boards]
        yield from carried(piece, ring, block, others)
    if drawer.handles:
        yield from _handles(piece, drawer, drawer.handles)


def _clearances(piece: Piece, drawer: Drawer, blocks: tuple[Block, Block], around: Sequence[str]) -> Iterator[Finding]:
    """From the drawer to the nearest wood of the carcase, wherever wood bounds its opening on that side."""
    opening, block = blocks
    below, above = clear_below_and_above(piece, drawer)
    wanted = {
        "right": drawer.side_clearance_nm,
        "left": drawer.side_clearance_nm,
        "back": drawer.back_clearance_nm,
        "up": above,
        "down": below,
    }
    for name, clearance in wanted.items():
        found = gap(piece, block, WAYS[name], around)
        if found != clearance and gap(piece, opening, WAYS[name], around) == 0:
            text = f"{drawer.ring.mark} has {found} nm to the nearest wood {name}, not {clearance}"
            yield Finding("clearance", (drawer.ring.mark,), text, block)


def _lifts(piece: Piece, drawer: Drawer) -> Iterator[Finding]:
    """A side-hung drawer hangs on its strips with 1/32 in to slide, and has its clearance at its sides."""
    left, right = (piece.block(strip_mark(drawer, role)) for role in (Role.LEFT, Role.RIGHT))
    if left[UP] != right[UP]:
        marks = (strip_mark(drawer, Role.LEFT), strip_mark(drawer, Role.RIGHT))
        yield Finding("hung", marks, f"the strips of {drawer.ring.mark} are at {left[UP]} and {right[UP]}", left)
    for role, inward in ((Role.LEFT, "right"), (Role.RIGHT, "left")):
        mark, host = strip_mark(drawer, role), drawer.ring.board(role).mark
        strip = piece.block(mark)
        wanted = {"up": 0, "down": 793_750, inward: drawer.side_clearance_nm}
        for name, clearance in wanted.items():
            found = gap(piece, strip, WAYS[name], [host])
            if found != clearance:
                text = f"{mark} has {found} nm {name} in its groove in {host}, not {clearance}"
                yield Finding("hung", (mark, host), text, strip)


def carried(piece: Piece, ring: Sequence[str], block: Block, others: Sequence[str]) -> Iterator[Finding]:
    """A drawer must lie on wood, or hang on strips, under both sides in front and behind; else it tips."""
    middle, wide = (block[BACK][0] + block[BACK][1]) // 2, size(block, RIGHT) // 8
    rests = [rest for mark in ring for chunk, _ in piece.wood[mark] for rest in _rests(piece, chunk, others)]
    sides = {"left": (block[RIGHT][0], 0), "right": (block[RIGHT][1], 1)}
    for side, (edge, end) in sides.items():
        mine = [rest for rest in rests if abs(rest[RIGHT][end] - edge) <= wide]
        for where, there in (
            ("in front", any(rest[BACK][0] < middle for rest in mine)),
            ("behind", any(rest[BACK][1] > middle for rest in mine)),
        ):
            if not there:
                yield Finding("carried", (ring[0],), f"nothing carries {ring[0]} at its {side} {where}", block)


def _rests(piece: Piece, chunk: Block, others: Sequence[str]) -> Iterator[Block]:
    """What of the underside of a chunk lies on wood."""
    under = slab(chunk, WAYS["down"], 1)
    for mark in others:
        for other, _ in piece.wood[mark]:
            both = meet(under, other)
            if both:
                yield both


def _handles(piece: Piece, drawer: Drawer, handles: Handles) -> Iterator[Finding]:
    """Holes go through all boards of the front, in one row half way up the one that shows, even about its middle."""
    face = board_mark(drawer.ring.mark, Role.APPLIED_FRONT)
    boards = [drawer.ring.boards[0].mark, *([face] if drawer.applied_front else [])]
    shows = piece.block(boards[-1])
    rows = {mark: sorted(_holes(piece, mark)) for mark in boards}
    for mark, row in rows.items():
        if any(hole[BACK] != piece.block(mark)[BACK] for hole in row):
            yield Finding("handles", (mark,), f"a hole in {mark} does not go through")
        if [hole[RIGHT] for hole in row] != [hole[RIGHT] for hole in rows[boards[-1]]]:
            yield Finding("handles", (mark, boards[-1]), f"holes in {mark} and {boards[-1]} are not in line")
        if len(row) != handles.count * handles.holes or any(
            size(hole, axis) != handles.hole_nm or _off(hole, shows, UP) > 1 for hole in row for axis in (RIGHT, UP)
        ):
            yield Finding("handles", (mark,), f"{mark} has other holes than asked for: {row}")
    row = rows[boards[-1]]
    if row and (_off(hull(row), shows, RIGHT) > 1 or not _apart(row, handles, size(shows, RIGHT))):
        yield Finding("handles", (boards[-1],), f"the holes in {boards[-1]} are not even about its middle: {row}")


def _holes(piece: Piece, mark: str) -> Iterator[Block]:
    plank = piece.glued.bench.planks[mark]
    for cut in plank.cuts:
        if cut.kind is FeatureKind.HOLE:
            yield moved(plank.in_piece((cut.x, cut.u, cut.y)), piece.begins[mark])


def _off(block: Block, other: Block, axis: int) -> float:
    """How far the middles of two blocks are from each other."""
    return abs(sum(block[axis]) - sum(other[axis])) / 2


def _apart(row: Sequence[Block], handles: Handles, wide: int) -> bool:
    """Holes of a pull are as far apart as it needs; a pair of handles has its middles half the width apart."""
    starts = [hole[RIGHT][0] for hole in row]
    pulls = [starts[at : at + handles.holes] for at in range(0, len(starts), handles.holes)]
    if handles.holes > 1 and any(pull[-1] - pull[0] != handles.apart_nm for pull in pulls):
        return False
    return handles.count == 1 or abs(2 * (pulls[1][0] - pulls[0][0]) - wide) <= 2
