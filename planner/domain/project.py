"""A project: everything the maker said about one piece, or one batch of pieces."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from planner.domain.acknowledged import Acknowledged
from planner.domain.bottom import BottomPanel
from planner.domain.box import Box, HingedLid, SawnLid
from planner.domain.carcase import BackPanel, BoardedBack, Carcase, PanelledBack, Plinth, Stand
from planner.domain.climate import Climate, Room, Where
from planner.domain.drawer import Drawer
from planner.domain.material import Material
from planner.domain.panelled import Made, Panelled
from planner.domain.rates import USUAL_RATES, Rates
from planner.domain.ring import Ring, Stuff
from planner.domain.sled import Sled
from planner.domain.space import LooseShelves, Space
from planner.domain.stock import MaterialStock, Stock, stock_problems
from planner.domain.timber import Timber
from planner.domain.words import DividerKind, DrawersCut, JointKind, RingKind
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
        acknowledged: findings that the maker has answered for.
        timbers: the maker's own, which win over those that are shipped.
        room: the air over the year where the piece will stand; None when nothing is said.
        shop: the wood on the day of cutting; None when nothing is said.
        drawers_cut: whether drawers and doors are cut with everything else, or once their openings can be measured.
        stock: how boards are cut out of rough wood; None goes by what is usual.
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
    drawers_cut: DrawersCut = DrawersCut.AT_ONCE
    acknowledged: tuple[Acknowledged, ...] = ()
    timbers: tuple[Timber, ...] = ()
    room: Room | None = None
    shop: Climate | None = None
    stock: Stock | None = None

    def drawers(self) -> Iterator[Drawer]:
        """All drawers, carcase by carcase, column by column, from the top down."""
        for carcase in self.carcases:
            yield from carcase.drawers()

    def rings(self) -> Iterator[Ring]:
        """All rings: boxes, carcases, plinths, then drawers, in the maker's order."""
        yield from (ring for ring, _ in self.rings_by_kind())

    def rings_by_kind(self) -> Iterator[tuple[Ring, RingKind]]:
        """All rings in the same order, each with the way it must stand."""
        yield from ((box.ring, RingKind.UPRIGHT) for box in self.boxes)
        yield from ((carcase.ring, RingKind.CARCASE) for carcase in self.carcases)
        yield from ((plinth.ring, RingKind.UPRIGHT) for plinth in self.plinths())
        yield from ((drawer.ring, RingKind.UPRIGHT) for drawer in self.drawers())

    def plinths(self) -> Iterator[Plinth]:
        """All plinths, in the order of their carcases."""
        for carcase in self.carcases:
            if isinstance(carcase.base, Plinth):
                yield carcase.base

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
    found += _doubles("timber", (timber.name for timber in project.timbers))
    found += _doubles("stock of material", (each.material for each in materials_of_stock(project)))
    found += stock_problems(project.stock) if project.stock else ()
    found += _half_said(project)
    found += _doubles("acknowledged", (" ".join((each.code, *each.marks)) for each in project.acknowledged))
    found += _doubles("mark", (ring.mark for ring in project.rings()))
    found += _strangers(project)
    found += [p for carcase in project.carcases for p in _missing_parts(carcase)]
    for ring, kind in project.rings_by_kind():
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


def materials_of_stock(project: Project) -> tuple[MaterialStock, ...]:
    """What is said of the stock of single materials."""
    return project.stock.materials if project.stock else ()


def climates(project: Project) -> Iterator[tuple[Where, Climate]]:
    """What the maker said of the air and of the wood in it."""
    if project.room:
        yield from ((Where.DRY, project.room.dry), (Where.DAMP, project.room.damp))
    if project.shop:
        yield Where.SHOP, project.shop


def _half_said(project: Project) -> list[Problem]:
    return [
        Problem(
            where=where.value,
            what="says too little.",
            remedy="Give humidity and temperature, or the moisture content of the wood.",
        )
        for where, climate in climates(project)
        if not climate.is_said()
    ]


def stuffs(project: Project) -> Iterator[tuple[str, Stuff]]:
    """Everything that boards are cut from, with the mark of what it is for."""
    for ring in project.rings():
        yield from ((board.mark, board.stuff) for board in ring.boards)
    for ring, bottom in project.bottoms():
        yield f"{ring.mark} bottom", bottom.stuff
        if bottom.slips:
            yield f"{ring.mark} slips", bottom.slips.stuff
    for drawer in project.drawers():
        small = (("applied front", drawer.applied_front), ("stops", drawer.stops))
        yield from ((f"{drawer.ring.mark} {what}", part.stuff) for what, part in small if part)
    for box in project.boxes:
        yield from _stuffs_of_box(box)
    for carcase in project.carcases:
        yield from _stuffs_of_carcase(carcase)


def _stuffs_of_box(box: Box) -> Iterator[tuple[str, Stuff]]:
    where = box.ring.mark
    if isinstance(box.lid, HingedLid):
        yield from _stuffs_of_made(f"{where} lid", box.lid.made)
    if isinstance(box.lid, SawnLid):
        yield f"{where} lid's top", box.lid.top.stuff
    if box.till:
        yield f"{where} till", box.till.stuff
        if box.till.lid:
            yield f"{where} till lid", box.till.lid


def _stuffs_of_carcase(carcase: Carcase) -> Iterator[tuple[str, Stuff]]:
    where = carcase.ring.mark
    whole = (
        ("rails", carcase.rails), ("partitions", carcase.partitions), ("shelves", carcase.shelves),
        ("frames", carcase.frames), ("separate top", carcase.top), ("hanging rail", carcase.hanging_rail),
    )  # fmt: skip
    yield from ((f"{where} {what}", part.stuff) for what, part in whole if part)
    if carcase.frames and carcase.frames.dust_panel:
        yield f"{where} dust panels", carcase.frames.dust_panel
    if carcase.runners and carcase.runners.stuff:
        yield f"{where} runners", carcase.runners.stuff
    if carcase.back:
        made = carcase.back.made if isinstance(carcase.back, PanelledBack) else carcase.back
        yield from _stuffs_of_made(f"{where} back", made)
    if isinstance(carcase.base, Stand):
        yield from ((f"{where} legs", carcase.base.leg), (f"{where} aprons", carcase.base.apron))
    for space in carcase.inside.everywhere():
        yield from _stuffs_of_space(where, space)


def _stuffs_of_space(where: str, space: Space) -> Iterator[tuple[str, Stuff]]:
    if isinstance(space.holds, LooseShelves):
        yield f"{where} loose shelves", space.holds.stuff
    if space.doors:
        yield from _stuffs_of_made(f"{where} doors", space.doors.made)
        if space.doors.stops:
            yield f"{where} door stops", space.doors.stops.stuff


def _stuffs_of_made(what: str, made: Made | BackPanel | BoardedBack) -> Iterator[tuple[str, Stuff]]:
    yield what, made.stuff
    if isinstance(made, Panelled):
        yield f"{what} panels", made.panel


def _strangers(project: Project) -> list[Problem]:
    materials = {m.name for m in project.materials}
    sleds = {s.name for s in project.sleds}
    found = [
        Problem(where="stock", what=f"material {each.material!r} is not among the project's materials.", remedy="")
        for each in materials_of_stock(project)
        if each.material not in materials
    ]
    found += [
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
        lapped = {JointKind.HALF_BLIND: corner.pin_board, JointKind.RABBET: corner.tail_board}.get(corner.kind)
        if (lapped is None) is not (corner.lap_nm is None):
            found.append(Problem(where=corner.mark, what="a lap belongs to a half-blind joint or a rabbet.", remedy=""))
        elif lapped and corner.lap_nm is not None and corner.lap_nm >= boards[lapped].stuff.thickness_nm:
            found.append(
                Problem(
                    where=corner.mark,
                    what="the lap is as thick as the board, so no room is left for the mate.",
                    remedy="Take a thinner lap or a thicker board.",
                )
            )
    return found


def _missing_parts(carcase: Carcase) -> list[Problem]:
    """Dividers that stand in the carcase though nothing says what they are made of."""
    said = {
        DividerKind.PARTITION: carcase.partitions,
        DividerKind.RAIL: carcase.rails,
        DividerKind.SHELF: carcase.shelves,
        DividerKind.FRAME: carcase.frames,
    }
    needed = {each.divider for each in carcase.inside.divisions() if len(each.spaces) > 1}
    return [
        Problem(where=carcase.ring.mark, what=_NEEDS[kind], remedy="Say what they are made of.")
        for kind, part in said.items()
        if kind in needed and part is None
    ]


_NEEDS = {
    DividerKind.PARTITION: "several columns need partitions.",
    DividerKind.RAIL: "drawers above each other need rails.",
    DividerKind.SHELF: "tiers parted by shelves need shelves.",
    DividerKind.FRAME: "tiers parted by frames need frames.",
}
