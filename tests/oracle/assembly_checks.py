"""What a maker would look for in a finished piece: wood in wood, holes in joints, parts that nothing holds."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from planner.domain.carcase import BoardedBack
from planner.domain.words import FeatureKind, Role
from tests.oracle.assembly_bench import Plank, dovetail_ends
from tests.oracle.assembly_corners import Corners
from tests.oracle.assembly_glue import Finding
from tests.oracle.assembly_seats import Seat
from tests.oracle.assembly_space import (
    BACK,
    RIGHT,
    UP,
    WAYS,
    Block,
    Way,
    grown,
    hull,
    less_all,
    meet,
    moved,
    reach,
    size,
    slab,
)
from tests.oracle.assembly_stand import Piece

_HOLLOW = frozenset({FeatureKind.GROOVE, FeatureKind.HOUSING, FeatureKind.RABBET, FeatureKind.MORTISE})


def corners_of(piece: Piece) -> Corners:
    """The dovetailed corners of a piece."""
    return Corners(piece.glued.bench, piece.begins)


def overlaps(piece: Piece) -> Iterator[Finding]:
    """Any wood of two boards at one place."""
    corners, hulls = corners_of(piece), {mark: hull(c for c, _ in chunks) for mark, chunks in piece.wood.items()}
    for one, other in _near(hulls):
        for chunk, near in ((a, b) for a in piece.wood[one] for b in piece.wood[other]):
            block = corners.clash(chunk, near)
            if block:
                yield Finding("overlap", (one, other), f"{one} and {other} are both at {block}", block)


def _near(hulls: dict[str, Block]) -> Iterator[tuple[str, str]]:
    order = sorted(hulls, key=lambda mark: hulls[mark][RIGHT][0])
    for at, one in enumerate(order):
        for other in order[at + 1 :]:
            if hulls[other][RIGHT][0] >= hulls[one][RIGHT][1]:
                break
            if meet(hulls[one], hulls[other]):
                yield one, other


@dataclass(frozen=True, slots=True)
class Hollows:
    """Looks for holes in the joints of a piece."""

    piece: Piece
    corners: Corners

    def all(self) -> Iterator[Finding]:
        """Cuts that their guests don't fill, but for the play asked for and run-outs that nobody sees."""
        by_cut = defaultdict[tuple[str, int], list[Seat]](list)
        for seat in self.piece.glued.seats:
            if seat.host.mark in self.piece.wood:
                by_cut[seat.host.mark, id(seat.cut)].append(seat)
        for seats in by_cut.values():
            yield from self._hollow(seats)
        yield from self._notches()

    def _hollow(self, seats: Sequence[Seat]) -> Iterator[Finding]:
        host, cut = seats[0].host, seats[0].cut
        block = moved(seats[0].block, self.piece.begins[host.mark])
        left = self._left_open(host, block)
        for seat in seats:
            left = less_all(less_all(left, self._with_play(seat)), self._cut_in(seat.guest))
        for hole in left:
            if not self._hidden(seats, hole):
                text = f"{cut.kind} in {host.mark} for {cut.takes} leaves a hole at {hole}"
                yield Finding("hole", (host.mark, cut.takes), text, hole)

    def _left_open(self, host: Plank, block: Block) -> list[Block]:
        """What of a cut no board fills, as far as its host had wood there."""
        left = list(self._own(host, block))
        for mark, chunks in self.piece.wood.items():
            if mark != host.mark and meet(hull(c for c, _ in chunks), block):
                left = less_all(left, [chunk for chunk, shared in chunks if shared is None])
        return left

    def _own(self, host: Plank, block: Block) -> Iterator[Block]:
        """A cut without what lies in the spaces between its host's own pins or tails, where the mate's wood is."""
        rest = [block]
        for mark, end, cut in dovetail_ends(self.piece.glued.bench):
            if mark != host.mark:
                continue
            begin, (_, u, y) = self.piece.begins[mark], host.spans()
            planed = moved(host.in_piece((host.from_end(end, 0, cut.planed), u, y)), begin)
            zone = moved(host.in_piece((host.from_end(end, cut.planed, cut.reach), cut.u, cut.y)), begin)
            rest = less_all(rest, [planed])
            for part in rest:
                both = meet(part, zone)
                if both and self.corners.has_wood(cut.shared, both):
                    yield both
            rest = less_all(rest, [zone])
        yield from rest

    def _cut_in(self, guest: Plank) -> list[Block]:
        """Cuts in a guest that take others: whether these are filled is asked of each by itself."""
        begin = self.piece.begins[guest.mark]
        mine = [cut for cut in guest.cuts if cut.takes and cut.kind in _HOLLOW]
        return [moved(guest.in_piece((cut.x, cut.u, cut.y)), begin) for cut in mine]

    def _with_play(self, seat: Seat) -> list[Block]:
        """What a guest may fill when it moves as far as it may."""
        found: list[Block] = []
        for mark, play in self.piece.glued.plays.items():
            if mark != seat.guest.mark and not (seat.guest.role is Role.STILE and self._in_frame_of(mark, seat.guest)):
                continue
            blocks = [chunk for chunk, _ in self.piece.wood[mark]]
            for axis, by in enumerate(play):
                blocks = [grown(block, axis, by, by) for block in blocks]
            found += blocks
        return found

    def _in_frame_of(self, mark: str, stile: Plank) -> bool:
        """A frame moves as a whole, named after its stile in the cut that takes it."""
        plank = self.piece.glued.bench.planks[mark]
        return plank.owner == stile.owner and plank.role in {Role.STILE, Role.FRAME_RAIL}

    def _hidden(self, seats: Sequence[Seat], hole: Block) -> bool:
        """Whether a hole is the rest of a groove or rabbet that runs out, and nobody sees it.

        All its sides must lie against wood, or against the room that the cut's guests may move in. In a web frame
        without a dust panel the groove is open; between boards of a back there is the gap asked for.
        """
        host, cut = seats[0].host, seats[0].cut
        if cut.kind not in {FeatureKind.GROOVE, FeatureKind.RABBET}:
            return False
        planks = self.piece.glued.bench.planks.values()
        if seats[0].guest.role is Role.BACK_BOARD:
            return size(hole, RIGHT) <= gap_of_back(self.piece)
        if host.role in {Role.RAIL, Role.BACK_RAIL}:
            return not any(p.role is Role.DUST_PANEL and p.owner == host.owner for p in planks)
        sides = [slab(hole, way, 1) for way in WAYS.values()]
        sides = less_all(sides, [moved(seats[0].block, self.piece.begins[host.mark])])
        for seat in seats:
            sides = less_all(sides, self._with_play(seat))
        near = grown(grown(grown(hole, RIGHT, 1, 1), BACK, 1, 1), UP, 1, 1)
        chunks = [chunk for all_of_them in self.piece.wood.values() for chunk, _ in all_of_them if meet(chunk, near)]
        return not less_all(sides, chunks)

    def _notches(self) -> Iterator[Finding]:
        """Notches at the ends of dividers take the host's wood before a stopped housing; that must fill them."""
        for plank in self.piece.glued.bench.planks.values():
            if plank.mark not in self.piece.wood or plank.role not in {Role.SHELF, Role.PARTITION}:
                continue
            for cut in plank.cuts:
                if cut.kind is FeatureKind.NOTCH:
                    block = moved(plank.in_piece((cut.x, cut.u, cut.y)), self.piece.begins[plank.mark])
                    for hole in self._left_open(plank, block):
                        yield Finding("hole", (plank.mark,), f"the notch in {plank.mark} leaves a hole at {hole}", hole)


def gap_of_back(piece: Piece) -> int:
    """Space asked for between the boards of the back; nothing where it isn't of boards."""
    carcases = piece.glued.bench.project.carcases
    back = next((carcase.back for carcase in carcases if carcase.ring.mark == piece.mark), None)
    return back.gap_nm if isinstance(back, BoardedBack) else 0


def gaps_in_back(piece: Piece) -> Iterator[Finding]:
    """Boards of a back must leave the gap asked for between them, before and behind their lap."""
    boards = [mark for mark in piece.wood if piece.glued.bench.planks[mark].role is Role.BACK_BOARD]
    asked = gap_of_back(piece)
    for one, other in pairwise(sorted(boards, key=lambda mark: piece.block(mark)[RIGHT], reverse=True)):
        here, there = ([chunk for chunk, _ in piece.wood[mark]] for mark in (one, other))
        for low, high in pairwise(sorted({edge for chunk in (*here, *there) for edge in chunk[BACK]})):
            starts = [chunk[RIGHT][0] for chunk in here if chunk[BACK][0] <= low and high <= chunk[BACK][1]]
            ends = [chunk[RIGHT][1] for chunk in there if chunk[BACK][0] <= low and high <= chunk[BACK][1]]
            if starts and ends and min(starts) - max(ends) != asked:
                text = f"{min(starts) - max(ends)} nm between {one} and {other}, not {asked}"
                yield Finding("gap", (one, other), text, (here[0][RIGHT], (low, high), here[0][UP]))


def held(piece: Piece, panel: str, ways: Iterable[Way]) -> Iterator[Finding]:
    """Sides at which a panel is not in a cut of wood, nearly from end to end, or could slip out of it by its play.

    In a groove there must be wood before it and behind it.
    """
    block = piece.block(panel)
    flat = min(range(3), key=lambda axis: size(block, axis))
    mine = [seat for seat in piece.glued.seats if seat.guest.mark == panel and seat.way[0] != flat]
    for way in ways:
        run = 3 - flat - way[0]
        low, high = piece.glued.rooms[panel][way[0]]
        loose = 0 if low is None or high is None else high - low
        covered = 0
        for seat in (seat for seat in mine if seat.way == way):
            host = meet(block, moved(seat.host.blank(), piece.begins[seat.host.mark]))
            if host and size(host, way[0]) > loose - loose // 2 and _walled(piece, seat, flat):
                covered += size(host, run)
        if covered * 4 < size(block, run) * 3:
            text = f"{panel} is held along {covered} of {size(block, run)} nm at its side {_NAMES[way]}, play {loose}"
            yield Finding("held", (panel,), text, block)


_NAMES = {way: name for name, way in WAYS.items()}


def _walled(piece: Piece, seat: Seat, flat: int) -> bool:
    """Whether a cut has wood of its host before and behind the panel; a rabbet has it on one side only."""
    block = moved(seat.block, piece.begins[seat.host.mark])
    walls = [slab(block, (flat, sign), 1) for sign in (1, -1)]
    host = [chunk for chunk, _ in piece.wood[seat.host.mark]]
    found = sum(any(meet(wall, chunk) for chunk in host) for wall in walls)
    return found == 2 or (seat.cut.kind is FeatureKind.RABBET and found == 1)


def gap(piece: Piece, block: Block, way: Way, among: Iterable[str]) -> int | None:
    """How far it is from a side of a block to the nearest wood of some boards; None when there is none."""
    best: int | None = None
    for mark in among:
        for chunk, _ in piece.wood[mark]:
            beside = all(axis == way[0] or _overlap_on(chunk, block, axis) for axis in range(3))
            near = reach(chunk, (way[0], -way[1]))
            far = (near - reach(block, way)) * way[1]
            if beside and far >= 0 and (best is None or far < best):
                best = far
    return best


def _overlap_on(a: Block, b: Block, axis: int) -> bool:
    return a[axis][0] < b[axis][1] and b[axis][0] < a[axis][1]
