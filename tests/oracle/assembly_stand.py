"""Where in the piece each glued-up group goes, by the maker's word: drawers into openings, lids on boxes, and so on.

Each group is brought to its place by two of its sides; the other two are then compared with what was asked for.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from planner.domain.box import Box, HingedLid, SawnLid
from planner.domain.carcase import Carcase, Plinth
from planner.domain.drawer import Drawer
from planner.domain.marks import board_mark
from planner.domain.space import Doors, LooseShelves
from planner.domain.words import Role, RunnerKind, SizesOver, Stands
from tests.oracle.assembly_bench import Chunk
from tests.oracle.assembly_glue import Finding, Glued, Group
from tests.oracle.assembly_rooms import Opening, survey
from tests.oracle.assembly_space import AXIS_NAMES, BACK, RIGHT, UP, Block, grown, hull, moved, size, spanned

WIDE, DEEP, HIGH = RIGHT, BACK, UP


@dataclass(slots=True)
class Piece:
    """A box or carcase with all that belongs to it, in its place.

    Attributes:
        wood: of every board, in the piece.
        ring: what the box or the carcase fills by itself.
        openings: the spaces of a carcase, as measured.
        runs_on: what its drawers run on where nothing is below them.
    """

    mark: str
    glued: Glued
    wood: dict[str, list[Chunk]] = field(default_factory=dict)
    begins: dict[str, tuple[int, int, int]] = field(default_factory=dict)
    ring: Block = ((0, 0), (0, 0), (0, 0))
    openings: list[Opening] = field(default_factory=list)
    runs_on: RunnerKind | None = None
    findings: list[Finding] = field(default_factory=list)

    @property
    def hangs(self) -> bool:
        """Whether its drawers hang on their sides."""
        return self.runs_on in {RunnerKind.SIDE_HUNG, RunnerKind.SLIDES}

    def block(self, mark: str) -> Block:
        """The hull of a board in the piece."""
        return hull(chunk for chunk, _ in self.wood[mark])

    def put(self, group: Group, block: Block, low: Sequence[int]) -> Block:
        """Put a group so that a block of it begins at ``low``; returns where that block is then."""
        by = [to - start for to, (start, _) in zip(low, block, strict=True)]
        for mark, chunks in group.wood.items():
            self.wood[mark] = [(moved(chunk, by), shared) for chunk, shared in chunks]
            begin = [at + step for at, step in zip(group.begins[mark], by, strict=True)]
            self.begins[mark] = (begin[0], begin[1], begin[2])
        return moved(block, by)

    def fill(self, what: str, group: Group, wanted: Block) -> None:
        """Put a group where it should be and compare its sizes with the space meant for it."""
        found = self.put(group, group.block(), [start for start, _ in wanted])
        self.compare(what, group.marks, found, wanted)

    def compare(self, what: str, marks: Sequence[str], found: Block, wanted: Block) -> None:
        """Name every axis along which something is not as large as it should be."""
        for axis in range(3):
            if found[axis] != wanted[axis]:
                text = f"{what} goes {AXIS_NAMES[axis]} from {found[axis]} instead of {wanted[axis]} nm"
                self.findings.append(Finding("size", tuple(marks[:4]), text, found))


def stand_up(glued: Glued) -> list[Piece]:
    """Every piece of the project, put together."""
    pieces: list[Piece] = []
    for box in glued.bench.project.boxes:
        piece = Piece(box.ring.mark, glued)
        _box(piece, box)
        pieces.append(piece)
    for carcase in glued.bench.project.carcases:
        piece = Piece(carcase.ring.mark, glued)
        _carcase(piece, carcase)
        pieces.append(piece)
    return pieces


def _ring(piece: Piece, marks: Sequence[str]) -> Group:
    """Put a ring with what is glued in it at the origin of the piece."""
    group = piece.glued.group_of(marks[0])
    block = hull(chunk for mark in marks for chunk, _ in group.wood[mark])
    piece.ring = piece.put(group, block, (0, 0, 0))
    return group


def _box(piece: Piece, box: Box) -> None:
    marks = [board.mark for board in box.ring.boards]
    _ring(piece, marks)
    asked = (box.length_nm, box.width_nm, box.height_nm)
    found: Block = piece.ring
    if box.sizes_over is SizesOver.INSIDE:
        front, right, back, left = (piece.block(mark) for mark in marks)
        found = ((left[WIDE][1], right[WIDE][0]), (front[DEEP][1], back[DEEP][0]), found[HIGH])
    _sizes(piece, f"box {box.ring.mark}", found, asked)
    if isinstance(box.lid, HingedLid):
        lid, over = piece.ring, box.lid
        wanted = grown(grown(lid, WIDE, over.sides_nm, over.sides_nm), DEEP, over.front_nm, over.back_nm)
        high = over.made.stuff.thickness_nm
        wanted = spanned(wanted, HIGH, (lid[HIGH][1], lid[HIGH][1] + high))
        _fill_by_mark(piece, board_mark(box.ring.mark, Role.LID), wanted)
    elif isinstance(box.lid, SawnLid):
        _sawn(piece, box, box.lid)


def _sawn(piece: Piece, box: Box, lid: SawnLid) -> None:
    """After sawing nothing is left in the kerf, all round; and each part keeps a half-pin or so at the cut."""
    high = piece.ring[HIGH][1] - lid.height_nm
    kerf = spanned(piece.ring, HIGH, (high - lid.kerf_nm, high))
    left = [mark for mark, chunks in piece.wood.items() for chunk, _ in chunks if _overlap(chunk, kerf)]
    if left:
        piece.findings.append(Finding("saw", tuple(dict.fromkeys(left)), "wood is left in the kerf of the lid", kerf))
    for joint in piece.glued.bench.joints:
        if joint.box == box.ring.mark and not any(a < kerf[HIGH][0] and kerf[HIGH][1] < b for a, b in joint.pins):
            text = f"the saw line is not within a pin of {joint.mark}"
            piece.findings.append(Finding("saw", (joint.pin_board,), text, kerf))


def _overlap(a: Block, b: Block) -> bool:
    return all(p[0] < q[1] and q[0] < p[1] for p, q in zip(a, b, strict=True))


def _sizes(piece: Piece, what: str, found: Block, asked: Sequence[int]) -> None:
    for axis, wanted in enumerate(asked):
        if size(found, axis) != wanted:
            text = f"{what} is {size(found, axis)} nm {AXIS_NAMES[axis]}, asked for {wanted}"
            piece.findings.append(Finding("asked", (piece.mark,), text, found))


def _fill_by_mark(piece: Piece, mark: str, wanted: Block) -> None:
    """Put a board, or the frame that is named after it, where it should be."""
    group = _group(piece, mark)
    if group is None:
        piece.findings.append(Finding("missing", (mark,), f"{mark} is not on the bench"))
    else:
        piece.fill(mark, group, wanted)


def _group(piece: Piece, mark: str) -> Group | None:
    """The group of a board, or of the frame that is named after it."""
    named = (group for group in piece.glued.groups if any(m == mark or m.startswith(f"{mark}-") for m in group.marks))
    return next(named, None)


def _carcase(piece: Piece, carcase: Carcase) -> None:
    marks = [board.mark for board in carcase.ring.boards]
    group = _ring(piece, marks)
    placed = Group(group.marks, {}, {mark: piece.wood[mark] for mark in group.marks})
    measured = survey(piece.glued.bench, carcase, placed)
    inside = measured.inside()
    found = inside if carcase.sizes_over is SizesOver.INSIDE else piece.ring
    _sizes(piece, f"carcase {piece.mark}", found, (carcase.width_nm, carcase.depth_nm, carcase.height_nm))
    piece.openings = list(measured.openings())
    piece.runs_on = carcase.runners.kind if carcase.runners else None
    piece.findings += measured.findings
    for opening in piece.openings:
        if isinstance(opening.space.holds, Drawer):
            _drawer(piece, opening, opening.space.holds)
        elif isinstance(opening.space.holds, LooseShelves):
            _loose(piece, opening, opening.space.holds)
        if opening.space.doors:
            _doors(piece, opening, opening.space.doors)
    _above_and_below(piece, carcase)


def _above_and_below(piece: Piece, carcase: Carcase) -> None:
    ring = piece.ring
    if carcase.top:
        over = carcase.top
        wanted = grown(grown(ring, WIDE, over.sides_nm, over.sides_nm), DEEP, over.front_nm, over.back_nm)
        wanted = spanned(wanted, HIGH, (ring[HIGH][1], ring[HIGH][1] + over.stuff.thickness_nm))
        _fill_by_mark(piece, board_mark(piece.mark, Role.SEPARATE_TOP), wanted)
    base = carcase.base
    if base:
        wanted = grown(grown(ring, WIDE, -base.sides_nm, -base.sides_nm), DEEP, -base.front_nm, -base.back_nm)
        wanted = spanned(wanted, HIGH, (-base.height_nm, 0))
        first = base.ring.boards[0].mark if isinstance(base, Plinth) else board_mark(piece.mark, Role.LEG, 1)
        piece.fill(f"base of {piece.mark}", piece.glued.group_of(first), wanted)


def _drawer(piece: Piece, opening: Opening, drawer: Drawer) -> None:
    """Put a drawer into its opening, with the clearances asked for, and its applied front before it."""
    front = drawer.applied_front
    before = front.stuff.thickness_nm if front and front.stands is Stands.INSET else 0
    wanted = grown(opening.block, WIDE, -drawer.side_clearance_nm, -drawer.side_clearance_nm)
    below = drawer.top_clearance_nm // 2 if piece.hangs else 0  # a drawer that hangs has half of its air below it
    wanted = grown(wanted, DEEP, -before, -drawer.back_clearance_nm)
    wanted = grown(wanted, HIGH, -below, below - drawer.top_clearance_nm)
    group = piece.glued.group_of(drawer.ring.boards[0].mark)
    block = hull(chunk for board in drawer.ring.boards for chunk, _ in group.wood[board.mark])
    found = piece.put(group, block, [start for start, _ in wanted])
    piece.compare(f"drawer {drawer.ring.mark} in {opening.mark}", group.marks, found, wanted)
    if front:
        around = front.gap_nm if front.stands is Stands.INSET else -front.overlay_nm
        _fill_by_mark(
            piece,
            board_mark(drawer.ring.mark, Role.APPLIED_FRONT),
            _before(opening.block, around, front.stuff.thickness_nm, inset=front.stands is Stands.INSET),
        )
    if piece.runs_on is RunnerKind.SIDE_HUNG:
        _hung(piece, opening, drawer)


def clear_below_and_above(piece: Piece, drawer: Drawer) -> tuple[int, int]:
    """A drawer stands on what is below it; one that hangs on strips or slides has half its clearance there."""
    whole = drawer.top_clearance_nm
    below = 0 if piece.runs_on in {RunnerKind.WOOD, None} else whole // 2
    return below, whole - below


def _before(block: Block, around: int, thick: int, *, inset: bool) -> Block:
    """What a front fills that leaves a gap all round, or covers the edges by less than none."""
    wanted = grown(grown(block, WIDE, -around, -around), HIGH, -around, -around)
    plane = block[DEEP][0]
    return spanned(wanted, DEEP, (plane, plane + thick) if inset else (plane - thick, plane))


def strip_mark(drawer: Drawer, role: Role) -> str:
    """Mark of the strip that a side of a drawer hangs on."""
    return f"{board_mark(drawer.ring.mark, Role.RUNNER)}-{role}"


def _hung(piece: Piece, opening: Opening, drawer: Drawer) -> None:
    """Strips on the uprights, each where the groove of its drawer's side lies: it hangs on their upper sides."""
    for role, side in ((Role.LEFT, 0), (Role.RIGHT, 1)):
        mark = strip_mark(drawer, role)
        group = _group(piece, mark)
        host = piece.glued.bench.planks[drawer.ring.board(role).mark]
        cuts = [cut for cut in host.cuts if cut.takes == mark]
        if group is None or len(cuts) != 1:
            piece.findings.append(Finding("hung", (host.mark,), f"{host.mark} has no groove for a strip {mark}"))
            continue
        groove = moved(host.in_piece((cuts[0].x, cuts[0].u, cuts[0].y)), piece.begins[host.mark])
        strip = group.block()
        upright = opening.block[WIDE][side]
        low = upright if side == 0 else upright - size(strip, WIDE)
        piece.put(group, strip, (low, groove[DEEP][0], groove[HIGH][1] - size(strip, HIGH)))


def _loose(piece: Piece, opening: Opening, shelves: LooseShelves) -> None:
    """Loose shelves lie equally far apart, with their play at the sides and set back in front."""
    whole = opening.block
    thick, count = shelves.stuff.thickness_nm, shelves.count
    free = size(whole, HIGH) - count * thick
    for number in range(1, count + 1):
        mark = board_mark(opening.mark, Role.LOOSE_SHELF, number)
        top = whole[HIGH][1] - free * number // (count + 1) - thick * (number - 1)
        half = shelves.play_nm // 2
        wanted = grown(grown(whole, WIDE, -half, half - shelves.play_nm), DEEP, -shelves.setback_nm, 0)
        _fill_by_mark(piece, mark, spanned(wanted, HIGH, (top - thick, top)))


def _doors(piece: Piece, opening: Opening, doors: Doors) -> None:
    """A door alone fills its space less the gap; a pair leaves one more gap between its leaves."""
    inset = doors.stands is Stands.INSET
    around = doors.gap_nm if inset else -doors.overlay_nm
    whole = _before(opening.before, around, doors.made.stuff.thickness_nm, inset=inset)
    for mark, wanted in _leaves(opening.mark, whole, doors):
        _fill_by_mark(piece, mark, wanted)


def _leaves(mark: str, whole: Block, doors: Doors) -> Iterator[tuple[str, Block]]:
    if doors.leaves == 1:
        yield board_mark(mark, Role.DOOR), whole
        return
    low, high = whole[WIDE]
    half = (high - low - doors.gap_nm) // 2
    yield board_mark(mark, Role.DOOR, 1), spanned(whole, WIDE, (low, low + half))
    yield board_mark(mark, Role.DOOR, 2), spanned(whole, WIDE, (low + half + doors.gap_nm, high))
