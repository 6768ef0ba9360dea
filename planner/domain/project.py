"""A project: everything the maker said about one piece, or one batch of pieces."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from planner.domain.box import BottomPanel, Box
from planner.domain.carcase import Carcase, Drawer
from planner.domain.material import Material
from planner.domain.rates import USUAL_RATES, Rates
from planner.domain.ring import Ring, Stuff
from planner.domain.sled import Sled
from planner.domain.words import JointKind, RingKind
from planner.errors import Problem
from planner.lengths import Grid, Nm, Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class Project:
    """The maker's word.

    Attributes:
        name: unique in a store.
        unit: unit of bare numbers and of the sizes shown.
        grid: step to which sizes are shown, and to which shared sizes (drawer heights) are rounded.
        proud_nm: how far pins and tails stand out at each corner, to be planed flush.
        height_tolerance_nm: bit heights no further apart than this share a setting.
        rates: how long things take, for the time estimate.
    """

    name: str
    unit: Unit
    grid: Grid
    proud_nm: Nm
    height_tolerance_nm: Nm
    materials: tuple[Material, ...]
    sleds: tuple[Sled, ...]
    boxes: tuple[Box, ...]
    carcases: tuple[Carcase, ...]
    rates: Rates = USUAL_RATES

    def drawers(self) -> Iterator[Drawer]:
        """All drawers, carcase by carcase, column by column, from the top down."""
        for carcase in self.carcases:
            for column in carcase.columns:
                for opening in column.openings:
                    yield opening.drawer

    def rings(self) -> Iterator[Ring]:
        """All rings: boxes, carcases, then drawers, in the maker's order."""
        yield from (box.ring for box in self.boxes)
        yield from (carcase.ring for carcase in self.carcases)
        yield from (drawer.ring for drawer in self.drawers())

    def bottoms(self) -> Iterator[tuple[Ring, BottomPanel]]:
        """All bottoms, each with the ring that holds it: boxes first, then drawers."""
        for box in self.boxes:
            if box.bottom:
                yield box.ring, box.bottom
        for drawer in self.drawers():
            if drawer.bottom:
                yield drawer.ring, drawer.bottom

    def sled(self, name: str) -> Sled:
        """The sled with this name."""
        return next(sled for sled in self.sleds if sled.name == name)

    def material(self, name: str) -> Material:
        """The material with this name."""
        return next(material for material in self.materials if material.name == name)


def problems(project: Project) -> list[Problem]:
    """What is wrong across the parts of a project; empty when it is sound.

    Intake and store both ask this, so that neither can hand on a project whose parts don't fit together.
    """
    found: list[Problem] = []
    found += _doubles("material", (m.name for m in project.materials))
    found += _doubles("sled", (s.name for s in project.sleds))
    found += _doubles("mark", (ring.mark for ring in project.rings()))
    found += _strangers(project)
    found += [p for carcase in project.carcases for p in _missing_parts(carcase)]
    for ring, kind in _rings_by_kind(project):
        found += _order(ring, kind) or _laps(ring)
    if not (project.boxes or project.carcases):
        found.append(Problem(where=project.name, what="nothing to make.", remedy="Give a box or a carcase."))
    return found


def _doubles(what: str, names: Iterable[str]) -> list[Problem]:
    return [
        Problem(where=f"{what} {name!r}", what=f"is given {times} times.", remedy="Each needs a name of its own.")
        for name, times in Counter(names).items()
        if times > 1
    ]


def stuffs(project: Project) -> Iterator[tuple[str, Stuff]]:
    """Everything that boards are cut from, with the mark of what it is for."""
    for ring in project.rings():
        yield from ((board.mark, board.stuff) for board in ring.boards)
    yield from ((f"{ring.mark} bottom", bottom.stuff) for ring, bottom in project.bottoms())
    for drawer in project.drawers():
        if drawer.applied_front:
            yield f"{drawer.ring.mark} applied front", drawer.applied_front.stuff
    for carcase in project.carcases:
        for what, part in (("rails", carcase.rails), ("partitions", carcase.partitions), ("back", carcase.back)):
            if part:
                yield f"{carcase.ring.mark} {what}", part.stuff


def _strangers(project: Project) -> list[Problem]:
    materials = {m.name for m in project.materials}
    sleds = {s.name for s in project.sleds}
    found = [
        Problem(where=mark, what=f"material {stuff.material!r} is not among the project's materials.", remedy="")
        for mark, stuff in stuffs(project)
        if stuff.material not in materials
    ]
    found += [
        Problem(where=ring.mark, what=f"sled {ring.sled!r} is not among the project's sleds.", remedy="")
        for ring in project.rings()
        if ring.sled not in sleds
    ]
    return found


def _rings_by_kind(project: Project) -> Iterator[tuple[Ring, RingKind]]:
    yield from ((box.ring, RingKind.UPRIGHT) for box in project.boxes)
    yield from ((carcase.ring, RingKind.CARCASE) for carcase in project.carcases)
    yield from ((drawer.ring, RingKind.UPRIGHT) for drawer in project.drawers())


def _order(ring: Ring, kind: RingKind) -> list[Problem]:
    found: list[Problem] = []
    if ring.kind is not kind or tuple(board.role for board in ring.boards) != kind.roles:
        order = ", ".join(kind.roles)
        found.append(
            Problem(where=ring.mark, what="its boards are not in ring order.", remedy=f"The order is {order}.")
        )
    for index, corner in enumerate(ring.corners):
        here, following = ring.boards[index].mark, ring.boards[(index + 1) % len(ring.boards)].mark
        if (corner.board_at_b, corner.board_at_a) != (here, following):
            found.append(
                Problem(
                    where=corner.mark,
                    what=f"joins {corner.board_at_b!r} to {corner.board_at_a!r}.",
                    remedy=f"It must join end B of {here!r} to end A of {following!r}.",
                )
            )
    return found


def _laps(ring: Ring) -> list[Problem]:
    boards = {board.mark: board for board in ring.boards}
    found: list[Problem] = []
    for corner in ring.corners:
        half_blind = corner.kind is JointKind.HALF_BLIND
        if half_blind is (corner.lap_nm is None):
            found.append(
                Problem(where=corner.mark, what="a lap belongs to a half-blind joint, and to no other.", remedy="")
            )
        elif corner.lap_nm is not None and corner.lap_nm >= boards[corner.pin_board].stuff.thickness_nm:
            found.append(
                Problem(
                    where=corner.mark,
                    what="the lap is as thick as the pin board, so no room is left for the tails.",
                    remedy="Take a thinner lap or a thicker board.",
                )
            )
    return found


def _missing_parts(carcase: Carcase) -> list[Problem]:
    where = carcase.ring.mark
    found: list[Problem] = []
    if len(carcase.columns) > 1 and carcase.partitions is None:
        found.append(Problem(where=where, what="several columns need partitions.", remedy="Say what they are made of."))
    if any(len(column.openings) > 1 for column in carcase.columns) and carcase.rails is None:
        found.append(
            Problem(where=where, what="drawers above each other need rails.", remedy="Say what they are made of.")
        )
    return found
