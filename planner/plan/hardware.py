"""What is to be bought besides wood, as it follows from the parts of a plan.

How many hinges and screws a part needs goes by its length, as the tables below say. What is chosen by eye, or by the
sheet that comes with the hardware, such as the size of a hinge, is left open.

Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from planner.domain.box import Box, HingedLid
from planner.domain.carcase import Carcase
from planner.domain.drawer import Drawer
from planner.domain.hardware import Hardware, HardwareKind
from planner.domain.marks import board_mark, space_mark
from planner.domain.plan import BoardSize, Feature
from planner.domain.project import Project
from planner.domain.solid import BACK, RIGHT, UP
from planner.domain.space import Doors, LooseShelves
from planner.domain.words import BottomGoes, FeatureKind, MaterialKind, Role, RunnerKind
from planner.lengths import Grid, Nm


def _mm(number: int) -> Nm:
    return Nm(number * 10 * Grid.MM_TENTH.step_nm)


HINGES = ((_mm(900), 2), (_mm(1500), 3), (_mm(2000), 4))
"""Up to which height of a door, or length of a lid, so many hinges carry it."""

MOST_HINGES = 5
"""How many carry one that is longer."""

PINS_OF_A_SHELF = 4

SCREWS_APART = {
    Role.SEPARATE_TOP: _mm(300), Role.LEG: _mm(300), Role.BACK_PANEL: _mm(200), Role.HANGING_RAIL: _mm(400),
}  # fmt: skip
"""How far apart screws are, at most, along a separate top, a base, a back, a hanging rail."""

SCREWS = {Role.APPLIED_FRONT: 4, Role.BACK_BOARD: 4}
"""Screws in each part of a kind that needs so many whatever its size."""

STRIP_SCREWS = {RunnerKind.SIDE_HUNG: 3, RunnerKind.WOOD: 1}
"""Screws in each strip that drawers run on; level with the rails, it is glued in front."""


def hardware(project: Project, boards: Mapping[str, BoardSize], features: Sequence[Feature]) -> tuple[Hardware, ...]:
    """All that is to be bought, kind by kind; what is alike in kind, use and sizes is one entry."""
    alike: dict[tuple[object, ...], Hardware] = {}
    for each in _Needs(project, boards, features).all():
        key = (each.kind, each.use, each.sizes)
        before = alike.get(key)
        alike[key] = (
            replace(before, count=before.count + each.count, marks=(*before.marks, *each.marks)) if before else each
        )
    kinds = list(HardwareKind)
    return tuple(sorted(alike.values(), key=lambda each: kinds.index(each.kind)))


def hinges(length: int) -> int:
    """How many hinges carry a door of this height, or a lid of this length."""
    return next((count for longest, count in HINGES if length <= longest), MOST_HINGES)


def in_a_row(length: int, role: Role) -> int:
    """How many screws stand in a row along a part: one at each end, and none further from the next than is usual."""
    return 1 + max(1, -(-length // SCREWS_APART[role]))


Sizes = tuple[tuple[str, Nm], ...]


def _need(kind: HardwareKind, count: int, use: str, mark: str, sizes: Sizes = ()) -> Hardware:
    return Hardware(kind=kind, count=count, use=use, marks=(mark,), sizes=sizes)


@dataclass(frozen=True, slots=True)
class _Needs:
    """Gathers what the parts of a project need."""

    project: Project
    boards: Mapping[str, BoardSize]
    features: Sequence[Feature]

    def all(self) -> Iterator[Hardware]:
        """Everything, part by part."""
        for box in self.project.boxes:
            yield from self._lid(box)
        for carcase in self.project.carcases:
            for path, space in carcase.inside.by_path():
                mark = space_mark(carcase.ring.mark, path)
                if space.doors:
                    yield from self._doors(mark, space.doors)
                if isinstance(space.holds, LooseShelves):
                    yield from _shelves(mark, space.holds)
                if isinstance(space.holds, Drawer):
                    yield from self._drawer(space.holds, carcase)
            yield from self._carcase(carcase)

    def _lid(self, box: Box) -> Iterator[Hardware]:
        if box.lid:
            hinged = isinstance(box.lid, HingedLid)
            mark = board_mark(box.ring.mark, Role.LID) if hinged else box.ring.mark
            length = self._length(mark) if hinged else self.boards[box.ring.boards[0].mark].place.size(RIGHT)
            yield _need(HardwareKind.HINGE, hinges(length), "lid", mark)
            yield _need(HardwareKind.LID_STAY, 1, "lid", mark)

    def _length(self, mark: str) -> Nm:
        """Length of a door or a lid: of the slab, or of the stiles of its frame."""
        return self.boards[mark if mark in self.boards else board_mark(mark, Role.STILE, 1)].length_nm

    def _doors(self, space: str, doors: Doors) -> Iterator[Hardware]:
        sizes = (("door thickness", doors.made.stuff.thickness_nm),)
        for number in range(1, doors.leaves + 1):
            door = board_mark(space, Role.DOOR, number if doors.leaves > 1 else None)
            yield _need(HardwareKind.HINGE, hinges(self._length(door)), f"{doors.stands} door", door, sizes)
            yield _need(HardwareKind.CATCH, 1, "door", door)
            yield _need(HardwareKind.DOOR_KNOB, 1, "door", door)

    def _drawer(self, drawer: Drawer, carcase: Carcase) -> Iterator[Hardware]:
        mark, handles, bottom = drawer.ring.mark, drawer.handles, drawer.bottom
        if handles:
            kind = HardwareKind.PULL if handles.holes > 1 else HardwareKind.KNOB
            apart = (("holes apart", handles.apart_nm),) if handles.holes > 1 else ()
            yield _need(kind, handles.count, "drawer", mark, (*apart, ("hole", handles.hole_nm)))
        if carcase.runners and carcase.runners.kind is RunnerKind.SLIDES:
            deep = self.boards[drawer.ring.board(Role.LEFT).mark].place.size(BACK)
            yield _need(HardwareKind.SLIDES, 1, "drawer", mark, (("longest that fits", deep),))
        if drawer.applied_front:
            yield _need(HardwareKind.SCREW, SCREWS[Role.APPLIED_FRONT], "applied front", mark)
        if bottom and bottom.goes is BottomGoes.SLID_IN:
            panel = board_mark(mark, Role.BOTTOM_PANEL)
            slots = sum(each.board == panel and each.kind is FeatureKind.NOTCH for each in self.features)
            sizes = (("slot", bottom.screw_slot_nm),) if bottom.screw_slot_nm else ()
            yield _need(HardwareKind.SLOT_SCREW, max(1, slots), "drawer bottom", panel, sizes)

    def _carcase(self, carcase: Carcase) -> Iterator[Hardware]:
        mark = carcase.ring.mark
        if carcase.top:
            top = self.boards[board_mark(mark, Role.SEPARATE_TOP)]
            rows = 2 * in_a_row(top.length_nm, Role.SEPARATE_TOP)
            yield _need(HardwareKind.SLOT_SCREW, rows, "separate top", top.mark)
        if carcase.base:
            width = self.boards[carcase.ring.board(Role.BOTTOM).mark].place.size(RIGHT)
            yield _need(HardwareKind.SLOT_SCREW, 2 * in_a_row(width, Role.LEG), "base", mark)
        if carcase.back:
            yield from self._back(carcase)
        yield from self._strips(carcase)
        for board in self.boards.values():
            if board.role is Role.HANGING_RAIL and board.piece == mark:
                count = in_a_row(board.length_nm, Role.HANGING_RAIL)
                yield _need(HardwareKind.WALL_SCREW, count, "hanging rail", board.mark)

    def _back(self, carcase: Carcase) -> Iterator[Hardware]:
        """Round a back of one piece, at both ends of each of several boards; solid wood must stay free to move."""
        mark = board_mark(carcase.ring.mark, Role.BACK_PANEL)
        own = [board for board in self.boards.values() if board.box == carcase.ring.mark]
        solid = carcase.back and self.project.material(carcase.back.stuff.material).kind is MaterialKind.SOLID
        kind = HardwareKind.SLOT_SCREW if solid else HardwareKind.SCREW
        for board in own:
            if board.role is Role.BACK_BOARD:
                yield _need(kind, SCREWS[Role.BACK_BOARD], "back", board.mark)
        whole = [board.place for board in own if board.mark == mark or board.mark.startswith(f"{mark}-")]
        if whole:
            spans = [[place.along(way) for place in whole] for way in (RIGHT, UP)]
            sides = [max(stop for _, stop in row) - min(start for start, _ in row) for row in spans]
            count = 2 * sum(in_a_row(side, Role.BACK_PANEL) for side in sides) - 4  # a corner's screw is in two rows
            yield _need(kind, count, "back", mark)

    def _strips(self, carcase: Carcase) -> Iterator[Hardware]:
        """Strips that drawers run on; the runners of a frame are tenoned into it."""
        count = STRIP_SCREWS.get(carcase.runners.kind) if carcase.runners else None
        tenoned = {each.board for each in self.features if each.kind is FeatureKind.TENON}
        for board in self.boards.values():
            strip = board.role in {Role.RUNNER, Role.KICKER} and board.box == carcase.ring.mark
            if strip and count and board.mark not in tenoned:
                yield _need(HardwareKind.SLOT_SCREW, count, f"{board.role}s", board.mark)


def _shelves(space: str, shelves: LooseShelves) -> Iterator[Hardware]:
    sizes = (("diameter", shelves.pins.hole_nm),) if shelves.pins else ()
    for number in range(1, shelves.count + 1):
        mark = board_mark(space, Role.LOOSE_SHELF, number)
        yield _need(HardwareKind.SHELF_PIN, PINS_OF_A_SHELF, "loose shelf", mark, sizes)
