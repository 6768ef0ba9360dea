"""The small parts of a finished carcase: put where the maker's word says, and looked at as a maker would.

Stops of drawers and doors, the rail that a cabinet hangs on, holes for shelf pins, slots for the screws of bottoms.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from planner.domain.carcase import Carcase
from planner.domain.drawer import Drawer
from planner.domain.marks import board_mark
from planner.domain.space import Division, LooseShelves
from planner.domain.words import FeatureKind, Role, RunnerKind, Side, Stands
from tests.oracle.assembly_glue import Finding
from tests.oracle.assembly_rooms import Opening
from tests.oracle.assembly_space import (
    BACK,
    RIGHT,
    UP,
    WAYS,
    Block,
    Way,
    grown,
    less_all,
    meet,
    moved,
    size,
    slab,
    spanned,
)
from tests.oracle.assembly_stand import Piece

FAR = 10**11


def put_small_parts(piece: Piece, carcase: Carcase, top: int) -> None:
    """Put every stop and hanging rail where it should be; ``top`` is the underside of the carcase's top."""
    for opening in piece.openings:
        held, doors = opening.space.holds, opening.space.doors
        if isinstance(held, Drawer) and stopped(piece, held):
            _drawer_stops(piece, opening, held)
        if doors and doors.stops and doors.stands is Stands.INSET:
            for mark, wanted, _ in door_strips(opening):
                _fill(piece, mark, wanted)
        if carcase.hanging_rail and not isinstance(held, Division) and opening.block[UP][1] == top:
            owner = held.ring.mark if isinstance(held, Drawer) else opening.mark
            across, (_, back), (_, high) = opening.block
            rail = carcase.hanging_rail
            wanted = (across, (back - rail.stuff.thickness_nm, back), (high - rail.width_nm, high))
            _fill(piece, board_mark(owner, Role.HANGING_RAIL), wanted)


def _fill(piece: Piece, mark: str, wanted: Block) -> None:
    group = next((each for each in piece.glued.groups if each.marks == [mark]), None)
    if group is None:
        piece.findings.append(Finding("missing", (mark,), f"{mark} is not on the bench"))
    else:
        piece.fill(mark, group, wanted)


def stopped(piece: Piece, drawer: Drawer) -> bool:
    """Whether a drawer shuts against stops: it stands on wood, and its front is within the opening."""
    over = drawer.applied_front is not None and drawer.applied_front.stands is Stands.OVERLAY
    return drawer.stops is not None and not over and piece.runs_on in {None, RunnerKind.WOOD}


def _drawer_stops(piece: Piece, opening: Opening, drawer: Drawer) -> None:
    """Against the front's back; two a quarter way in from the sides, or one in the middle of a narrow drawer."""
    how = drawer.stops
    assert how is not None
    front, left, right = (piece.block(drawer.ring.board(role).mark) for role in (Role.FRONT, Role.LEFT, Role.RIGHT))
    low, high = left[RIGHT][1], right[RIGHT][0]
    if drawer.bottom and drawer.bottom.slips:
        low, high = low + drawer.bottom.slips.stuff.thickness_nm, high - drawer.bottom.slips.stuff.thickness_nm
    quarters = (1, 3) if high - low >= 4 * how.length_nm else (2,)
    floor = opening.block[UP][0]
    for number, quarter in enumerate(quarters, 1):
        start = low + (high - low) * quarter // 4 - how.length_nm // 2
        wanted = (
            (start, start + how.length_nm),
            (front[BACK][1], front[BACK][1] + how.width_nm),
            (floor, floor + how.stuff.thickness_nm),
        )
        _fill(piece, board_mark(drawer.ring.mark, Role.DRAWER_STOP, number), wanted)


def door_strips(opening: Opening) -> Iterator[tuple[str, Block, Way]]:
    """Mark, place and fixed side of each strip that the doors of a space shut against."""
    doors = opening.space.doors
    assert doors
    assert doors.stops
    plane = opening.before[BACK][0] + doors.made.stuff.thickness_nm
    behind = spanned(opening.before, BACK, (plane, plane + doors.stops.stuff.thickness_nm))
    wide = doors.stops.width_nm
    (left, right), _, (low, high) = behind
    if doors.leaves > 1:
        yield board_mark(opening.mark, Role.DOOR_STOP, 1), spanned(behind, UP, (high - wide, high)), WAYS["up"]
        yield board_mark(opening.mark, Role.DOOR_STOP, 2), spanned(behind, UP, (low, low + wide)), WAYS["down"]
    elif doors.hinged is Side.LEFT:
        yield board_mark(opening.mark, Role.DOOR_STOP), spanned(behind, RIGHT, (right - wide, right)), WAYS["right"]
    else:
        yield board_mark(opening.mark, Role.DOOR_STOP), spanned(behind, RIGHT, (left, left + wide)), WAYS["left"]


# --- what may be wrong with them ---------------------------------------------------------------------------


def small_faults(piece: Piece) -> Iterator[Finding]:
    """All that is wrong with the small parts of a piece."""
    for opening in piece.openings:
        yield from _in_opening(piece, opening)
    for mark in piece.wood:
        if piece.glued.bench.planks[mark].role is Role.HANGING_RAIL:
            for way in (WAYS["up"], WAYS["left"], WAYS["right"]):
                yield from _fixed(piece, mark, piece.block(mark), way)


def _in_opening(piece: Piece, opening: Opening) -> Iterator[Finding]:
    held, doors = opening.space.holds, opening.space.doors
    if isinstance(held, Drawer):
        yield from _stopped_drawer(piece, held)
        yield from _slots(piece, held)
    if doors and doors.stops and doors.stands is Stands.INSET:
        for mark, block, way in door_strips(opening):
            yield from _fixed(piece, mark, block, way)
    if isinstance(held, LooseShelves):
        yield from _pins(piece, opening, held)


def _fixed(piece: Piece, mark: str, block: Block, way: Way) -> Iterator[Finding]:
    """A part must lie on wood of the carcase all along one side."""
    planks = piece.glued.bench.planks
    fixed = [m for m in piece.wood if planks[m].box == piece.mark and m != mark]
    bare = less_all([slab(block, way, 1)], [chunk for m in fixed for chunk, _ in piece.wood[m]])
    if bare:
        yield Finding("fixed", (mark,), f"{mark} lies on nothing at {bare[0]}", bare[0])


def _stopped_drawer(piece: Piece, drawer: Drawer) -> Iterator[Finding]:
    """The stops lie on wood, the front stands against them, and nothing else of the drawer does as it comes out."""
    if not stopped(piece, drawer):
        return
    planks = piece.glued.bench.planks
    own = [mark for mark in piece.wood if planks[mark].box == drawer.ring.mark]
    front = drawer.ring.board(Role.FRONT).mark
    stops = [m for m in piece.wood if planks[m].role is Role.DRAWER_STOP and planks[m].owner == drawer.ring.mark]
    for stop in stops:
        block = piece.block(stop)
        yield from _fixed(piece, stop, block, WAYS["down"])
        if less_all([slab(block, WAYS["front"], 1)], [chunk for chunk, _ in piece.wood[front]]):
            yield Finding("stop", (stop, front), f"{front} does not stand against {stop}", block)
        for mark in own:
            for chunk, _ in piece.wood[mark]:
                if meet(spanned(chunk, BACK, (-FAR, chunk[BACK][1])), block):
                    yield Finding("stop", (stop, mark), f"{mark} can't come out over {stop}", block)


def _slots(piece: Piece, drawer: Drawer) -> Iterator[Finding]:
    """Slots go right through the bottom, as wide as asked for, below the whole thickness of the back."""
    if not (drawer.bottom and drawer.bottom.screw_slot_nm):
        return
    panel, back = (board_mark(drawer.ring.mark, role) for role in (Role.BOTTOM_PANEL, Role.BACK))
    behind, whole = piece.block(back)[BACK], piece.block(panel)
    found = _cuts(piece, panel, FeatureKind.NOTCH)
    wrong = [
        s for s in found if s[BACK] != behind or s[UP] != whole[UP] or size(s, RIGHT) != drawer.bottom.screw_slot_nm
    ]
    off = abs(sum(sum(slot[RIGHT]) for slot in found) - len(found) * sum(whole[RIGHT])) > 2 * len(found)
    if not found or wrong or off:
        yield Finding("slot", (panel, back), f"{panel} has other slots than asked for: {found}", whole)


def _cuts(piece: Piece, mark: str, kind: FeatureKind) -> list[Block]:
    plank = piece.glued.bench.planks[mark]
    cuts = [cut for cut in plank.cuts if cut.kind is kind and not cut.takes]
    return sorted(moved(plank.in_piece((cut.x, cut.u, cut.y)), piece.begins[mark]) for cut in cuts)


WOOD = 1_587_500
"""1/16 in, the least wood around a hole for a pin: common practice, no source."""


def _pins(piece: Piece, opening: Opening, shelves: LooseShelves) -> Iterator[Finding]:
    """Each shelf lies on four pins, in four rows of holes that are level, clear of each other and of other cuts."""
    pins = shelves.pins
    if pins is None:
        return
    left, right = opening.block[RIGHT]
    for number in range(1, shelves.count + 1):
        mark = board_mark(opening.mark, Role.LOOSE_SHELF, number)
        shelf = piece.block(mark)
        rows = []
        for wall, inward in ((left, -1), (right, 1)):
            for middle in (shelf[BACK][0] + pins.front_nm, shelf[BACK][1] - pins.back_nm):
                across = (wall - pins.depth_nm, wall) if inward < 0 else (wall, wall + pins.depth_nm)
                deep = (middle - pins.hole_nm // 2, middle - pins.hole_nm // 2 + pins.hole_nm)
                rows.append(_row(piece, across, deep, opening.block[UP]))
        tops = [sorted(hole[UP][1] for _, hole in row) for row in rows]
        if any(each != tops[0] for each in tops) or shelf[UP][0] not in tops[0]:
            yield Finding("pins", (mark,), f"the holes for {mark} are at {tops}, not level below {shelf[UP]}", shelf)
        mine = [top for top in tops[0] if abs(top - shelf[UP][0]) <= pins.holes // 2 * pins.apart_nm]
        if len(mine) > pins.holes * shelves.count or not mine:
            yield Finding("pins", (mark,), f"{mark} has {len(mine)} holes in a row", shelf)
        for row in rows:
            yield from _clear(piece, row)


def _row(piece: Piece, across: tuple[int, int], deep: tuple[int, int], up: tuple[int, int]) -> list[tuple[str, Block]]:
    """Blind holes of this depth at this place, within a space, with the boards that they are in."""
    holes = ((mark, hole) for mark in piece.wood for hole in _cuts(piece, mark, FeatureKind.HOLE))
    return [
        (mark, hole)
        for mark, hole in holes
        if hole[RIGHT] == across and hole[BACK] == deep and up[0] <= hole[UP][0] and hole[UP][1] <= up[1]
    ]


def _clear(piece: Piece, row: Sequence[tuple[str, Block]]) -> Iterator[Finding]:
    """All round a hole there must be wood of its board, but for where it is drilled in from."""
    for mark, hole in row:
        plank = piece.glued.bench.planks[mark]
        around = grown(grown(grown(hole, RIGHT, WOOD, WOOD), BACK, WOOD, WOOD), UP, WOOD, WOOD)
        body = moved(plank.blank(), piece.begins[mark])
        around = meet(around, spanned(body, UP, (-FAR, FAR))) or around
        holes = [hole]
        cuts = [moved(plank.in_piece((c.x, c.u, c.y)), piece.begins[mark]) for c in plank.cuts]
        near = [cut for cut in cuts if cut not in holes and meet(cut, around)]
        if near or size(around, RIGHT) != size(hole, RIGHT) + WOOD:
            yield Finding(
                "pins", (mark,), f"a hole in {mark} at {hole} is too near to {near or 'its other face'}", hole
            )
