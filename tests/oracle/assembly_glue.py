"""Put boards together as a puzzle: rings by their baselines, then every guest where the cuts of all its hosts say.

What hangs together is put together by itself; ``assembly_stand`` then says where in the piece it goes.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from planner.domain.plan import Joint
from planner.domain.words import End, FeatureKind, RingKind, Role
from tests.oracle.assembly_bench import Bench, Chunk, DovetailEnd, dovetail_ends, wood
from tests.oracle.assembly_corners import bound_by_joint, in_order, open_corner
from tests.oracle.assembly_fit import Conflict, Puzzle, Room, linked
from tests.oracle.assembly_seats import Seat, bound_by, bound_together, leading_end, normal, seats
from tests.oracle.assembly_space import (
    AXIS_NAMES,
    WAYS,
    Block,
    Place,
    Way,
    hull,
    less,
    moved,
    reach,
    slab,
    spanned,
    turned,
)
from tests.oracle.assembly_word import TIGHT, Play, bound_by_trade, plays


@dataclass(frozen=True, slots=True)
class Finding:
    """Something that is not as it should be.

    Attributes:
        code: which rule was broken.
        marks: the boards that it concerns.
        text: what was found.
        block: where in the piece, if it is at one place.
    """

    code: str
    marks: tuple[str, ...]
    text: str
    block: Block | None = None


@dataclass(slots=True)
class Group:
    """Boards that hang together.

    Attributes:
        begins: where each turned blank begins, counted from the first board's.
        wood: what each is made of, likewise; planed flush.
    """

    marks: list[str]
    begins: dict[str, list[int]]
    wood: dict[str, list[Chunk]]
    at: Place | None = None

    def block(self) -> Block:
        """The hull of the whole group, from where its first board begins."""
        return hull(chunk for chunks in self.wood.values() for chunk, _ in chunks)


@dataclass(slots=True)
class Glued:
    """All groups, and what didn't fit.

    Attributes:
        rooms: from where to where each board may be, axis by axis, from its group's first board.
    """

    bench: Bench
    seats: list[Seat]
    plays: dict[str, Play]
    groups: list[Group] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)
    rooms: dict[str, list[Room]] = field(default_factory=dict)

    def group_of(self, mark: str) -> Group:
        """The group that a board is in."""
        return next(group for group in self.groups if mark in group.begins)


def glue(bench: Bench) -> Glued:
    """Put together all that hangs together."""
    ends = defaultdict[str, dict[End, DovetailEnd]](dict)
    for mark, end, cut in dovetail_ends(bench):
        ends[mark][end] = cut
    woods = {mark: wood(plank, ends[mark]) for mark, plank in bench.planks.items()}
    found = seats(bench, woods)
    glued = Glued(bench, found, plays(bench))
    puzzles = (Puzzle(), Puzzle(), Puzzle())
    for joint in bench.joints:
        wrong = [*_corner(bench, joint), *bound_by_joint(bench, joint, puzzles)]
        glued.findings += [Finding("corner", (joint.pin_board, joint.tail_board), text) for text in wrong]
    _strangers(glued)
    _labelled(glued)
    _faced(glued)
    for seat in found:
        if seat.part is not None:
            bound_by(seat, puzzles, woods)
    bound_by_trade(bench, found, puzzles)
    pairs = [(bound.start, bound.to) for puzzle in puzzles for bound in puzzle.bounds]
    for marks in linked(pairs, bench.planks):
        group = _fitted(glued, puzzles, marks, woods)
        if group:
            glued.groups.append(group)
    for group in glued.groups:
        _plane(glued, group)
    return glued


def _corner(bench: Bench, joint: Joint) -> Iterator[str]:
    if not in_order(joint):
        yield f"{joint.mark}: pins are not in order from edge to edge"
    yield from open_corner(bench, joint)


def _strangers(glued: Glued) -> None:
    for plank in glued.bench.planks.values():
        for cut in plank.cuts:
            if cut.takes and cut.takes not in glued.bench.planks:
                text = f"{cut.kind} in {plank.mark} is for {cut.takes}, which is not there"
                glued.findings.append(Finding("stranger", (plank.mark,), text))


def _faced(glued: Glued) -> None:
    """A cut must come out of its board through the face that it is cut from."""
    for plank in glued.bench.planks.values():
        for cut in plank.cuts:
            way = normal(plank, cut.face)
            if reach(plank.in_piece((cut.x, cut.u, cut.y)), way) != reach(plank.blank(), way):
                text = f"{cut.kind} in {plank.mark} for {cut.takes} does not reach its {cut.face} face"
                glued.findings.append(Finding("face", (plank.mark,), text))


def _labelled(glued: Glued) -> None:
    """An end that goes into a housing or mortise must say so on its label, and no other end may."""
    for seat in glued.seats:
        end = leading_end(seat)
        if seat.cut.kind not in {FeatureKind.HOUSING, FeatureKind.MORTISE} or end is None:
            continue
        said = [each for each, hosts in seat.guest.goes_into.items() if seat.host.mark in hosts]
        if said != [end]:
            text = f"end {end} of {seat.guest.mark} goes into {seat.host.mark}, labels say ends {[*said]}"
            glued.findings.append(Finding("label", (seat.guest.mark, seat.host.mark), text))


def _fitted(
    glued: Glued, puzzles: Sequence[Puzzle], marks: list[str], woods: Mapping[str, list[Chunk]]
) -> Group | None:
    """Solve the puzzle of some boards along all three axes."""
    rooms = _all_rooms(glued, puzzles, marks)
    if rooms is None:
        return None
    glued.rooms |= {mark: [rooms[axis][mark] for axis in range(3)] for mark in marks}
    for mark in marks[1:]:
        _slack(glued, mark)
    begins: dict[str, list[int]] = {mark: [] for mark in marks}
    for puzzle in puzzles:
        settled = puzzle.settled(marks[0], marks)
        assert not isinstance(settled, Conflict)
        for mark, place in settled.items():
            begins[mark].append(place)
    placed = {mark: [(moved(block, begins[mark]), shared) for block, shared in woods[mark]] for mark in marks}
    return Group(marks, begins, placed)


def _all_rooms(glued: Glued, puzzles: Sequence[Puzzle], marks: list[str]) -> list[dict[str, Room]] | None:
    mine = set(marks)
    while True:
        rooms: list[dict[str, Room]] = []
        for axis, puzzle in enumerate(puzzles):
            found = puzzle.rooms(marks[0], marks)
            if isinstance(found, Conflict):
                text = f"hosts disagree {AXIS_NAMES[axis]} by {found.short_by} nm: {found.why}"
                glued.findings.append(Finding("disagree", found.marks, text))
                return None
            rooms.append(found)
        exact = {
            mark: [low if low == high else None for low, high in (rooms[axis][mark] for axis in range(3))]
            for mark in marks
        }
        seats_here = [seat for seat in glued.seats if seat.guest.mark in mine]
        if not bound_together(seats_here, puzzles, exact):
            return rooms


def _slack(glued: Glued, mark: str) -> None:
    """A part must have the play asked for in its cuts, no more and no less; else it fits tightly."""
    asked = glued.plays.get(mark, TIGHT)
    for axis, (low, high) in enumerate(glued.rooms[mark]):
        name = AXIS_NAMES[axis]
        if low is None or high is None:
            glued.findings.append(Finding("loose", (mark,), f"nothing says where {mark} is, {name}"))
        elif high - low != asked[axis]:
            text = f"{mark} has {high - low} nm of play in its cuts, {name}; asked for {asked[axis]}"
            glued.findings.append(Finding("play", (mark,), text))


def _plane(glued: Glued, group: Group) -> None:
    """Plane off what through tenons stand out; it must be as much as the maker lets joints stand proud."""
    flats: dict[tuple[str, Way], tuple[int, str]] = {}
    for seat in glued.seats:
        if seat.guest.mark in group.begins and seat.cut.kind is FeatureKind.MORTISE and not seat.floor:
            face = reach(moved(seat.host.blank(), group.begins[seat.host.mark]), seat.way)
            flats[seat.guest.mark, seat.way] = (face, seat.host.mark)
    for (mark, way), (face, host) in flats.items():
        whole = hull(chunk for chunk, _ in group.wood[mark])
        stands_out = (reach(whole, way) - face) * way[1]
        if stands_out != glued.bench.project.proud_nm:
            text = f"{mark} stands out of {host} by {stands_out} nm, not {glued.bench.project.proud_nm}"
            glued.findings.append(Finding("proud", (mark, host), text))
        waste = slab(spanned(whole, way[0], (face, face)), way, max(stands_out, 0))
        group.wood[mark] = [(part, shared) for chunk, shared in group.wood[mark] for part in less(chunk, waste)]


_LOOKS = {
    Role.FRONT: "front", Role.BACK: "back", Role.RIGHT: "right", Role.LEFT: "left", Role.TOP: "up", Role.BOTTOM: "down",
}  # fmt: skip
_REFERENCE = {RingKind.UPRIGHT: "down", RingKind.CARCASE: "front"}


def ring_faults(bench: Bench) -> Iterator[Finding]:
    """Rings labelled or joined otherwise than by the one rule for every ring.

    Outside faces look out, all reference edges one way, and each corner joins end B of a board to end A of the next.
    """
    joined = {
        joint.mark: {(joint.pin_board, joint.pin_end), (joint.tail_board, joint.tail_end)} for joint in bench.joints
    }
    for ring in bench.project.rings():
        for board in ring.boards:
            want = turned(WAYS[_LOOKS[board.role]], WAYS[_REFERENCE[ring.kind]])
            if bench.planks[board.mark].turn != want:
                yield Finding("ring", (board.mark,), f"the labels of {board.mark} don't stand as its ring does")
        for place, corner in enumerate(ring.corners):
            one, other = ring.boards[place].mark, ring.boards[(place + 1) % 4].mark
            if joined.get(corner.mark, {(one, End.B), (other, End.A)}) != {(one, End.B), (other, End.A)}:
                text = f"{corner.mark} does not join end B of {one} to end A of {other}"
                yield Finding("ring", (one, other), text)


def proud_ends(bench: Bench) -> Iterator[Finding]:
    """Dovetailed ends that stand out otherwise than the maker lets them; half-blind tails end at the lap asked for."""
    laps = {corner.mark: corner.lap_nm or 0 for ring in bench.project.rings() for corner in ring.corners}
    for mark, end, cut in dovetail_ends(bench):
        joint = cut.shared.joint
        asked = 0 if joint.lap_nm and not cut.shared.pins else bench.project.proud_nm
        if cut.planed != asked:
            yield Finding("proud", (mark,), f"end {end} of {mark} stands out {cut.planed} nm, not {asked}")
        if joint.lap_nm != laps[joint.mark]:
            yield Finding("lap", (mark,), f"the lap of {joint.mark} is {joint.lap_nm} nm, not {laps[joint.mark]}")
