"""Pieces to put together, built by hand in the scenario of Hollin Shed: each shows one way of building."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from planner.domain.bottom import BottomPanel, Slips
from planner.domain.box import Box, HingedLid, SawnLid, Till
from planner.domain.carcase import (
    Back,
    BackPanel,
    BoardedBack,
    Carcase,
    Dividers,
    Frames,
    HangingRail,
    PanelledBack,
    Plinth,
    Rails,
    Runners,
    SeparateTop,
    Stand,
)
from planner.domain.drawer import AppliedFront, Drawer, DrawerStops, Handles
from planner.domain.marks import drawer_mark
from planner.domain.material import Material
from planner.domain.panelled import Made, Panelled, Slab
from planner.domain.project import Project
from planner.domain.ring import Ring, Stuff, make_ring, with_half_blind_front, with_rabbets
from planner.domain.sled import MICRO, Sled
from planner.domain.space import Division, Doors, DoorStops, LooseShelves, ShelfPins, Space
from planner.domain.spacing import Spacing
from planner.domain.words import (
    BottomGoes,
    DividerJoint,
    DividerKind,
    HeightRule,
    MaterialKind,
    PinPair,
    RingKind,
    RunnerKind,
    Side,
    SizesOver,
    Stands,
    Way,
)
from planner.lengths import Grid, Nm, Unit

MM = 1_000_000


def mm(number: float) -> Nm:
    """Millimetres."""
    return Nm(round(number * MM))


def beech(thick: float) -> Stuff:
    """Solid wood."""
    return Stuff(material="beech", thickness_nm=mm(thick))


def ply(thick: float) -> Stuff:
    """A sheet."""
    return Stuff(material="ply", thickness_nm=mm(thick))


SPACING = Spacing(half_pin_nm=mm(6), pin_nm=mm(6), tails=None, tail_nm=mm(28), greatest_tail_nm=mm(60))
SLED = Sled(
    name="wide",
    run_micro=7 * MICRO,
    bit_nm=mm(9.96),
    greatest_bit_height_nm=mm(60),
    greatest_width_nm=mm(2_000),
    greatest_upright_nm=mm(2_500),
)


def project(*, boxes: tuple[Box, ...] = (), carcases: tuple[Carcase, ...] = (), proud: float = 0.4) -> Project:
    """A project around what it holds."""
    return Project(
        name="Hollin Shed",
        unit=Unit.MM,
        grid=Grid.MM_TENTH,
        proud_nm=mm(proud),
        height_tolerance_nm=mm(0.1),
        materials=(Material(name="beech"), Material(name="ply", kind=MaterialKind.SHEET)),
        sleds=(SLED,),
        boxes=boxes,
        carcases=carcases,
    )


def bottom(thick: float = 6, *, goes: BottomGoes = BottomGoes.ALL_ROUND, slips: Slips | None = None) -> BottomPanel:
    """A bottom of ply in grooves 5 mm deep."""
    return BottomPanel(stuff=ply(thick), groove_depth_nm=mm(5), up_nm=None, play_nm=mm(1), goes=goes, slips=slips)


def upright(mark: str, thick: tuple[float, float, float, float], pins: PinPair = PinPair.FIRST_AND_THIRD) -> Ring:
    """A ring that stands upright, of beech."""
    front, right, back, left = (beech(each) for each in thick)
    return make_ring(mark, RingKind.UPRIGHT, (front, right, back, left), pins, SPACING, "wide")


def drawer(mark: str, *, wide: bool = False) -> Drawer:
    """A drawer of 18 in front, 12 at the sides, 10 behind; or with other clearances for slides."""
    return Drawer(
        ring=upright(mark, (18, 12, 10, 12)),
        side_clearance_nm=mm(12.7 if wide else 1.5),
        top_clearance_nm=mm(3),
        back_clearance_nm=mm(12),
        bottom=bottom(),
    )


HALF_BLIND = replace(drawer("X"), ring=with_half_blind_front(upright("X", (20, 12, 10, 12)), mm(6)))
INSET_FRONT = replace(drawer("X"), applied_front=AppliedFront(stuff=beech(20), gap_nm=mm(1.5)))
OVERLAY_FRONT = replace(
    drawer("X"),
    applied_front=AppliedFront(stuff=beech(20), gap_nm=mm(0), stands=Stands.OVERLAY, overlay_nm=mm(7)),
)
SLID_IN = replace(drawer("X"), bottom=bottom(goes=BottomGoes.SLID_IN), back_lower_nm=mm(8))
SLIPS = Slips(stuff=beech(8), height_nm=mm(24))
ON_SLIPS = replace(drawer("X"), bottom=bottom(slips=SLIPS))
SLID_IN_ON_SLIPS = replace(drawer("X"), bottom=bottom(goes=BottomGoes.SLID_IN, slips=SLIPS))
WITH_HANDLES = replace(drawer("X"), handles=Handles(count=2, holes=2, apart_nm=mm(96), hole_nm=mm(5)))
STOPS = DrawerStops(stuff=beech(6), length_nm=mm(40), width_nm=mm(20))
STOPPED_DRAWER = replace(SLID_IN, stops=STOPS)
STOPPED_ON_SLIPS = replace(SLID_IN_ON_SLIPS, stops=STOPS)
STOPPED_BEHIND_FRONT = replace(INSET_FRONT, bottom=SLID_IN.bottom, stops=replace(STOPS, width_nm=mm(15)))
SLOTTED = replace(SLID_IN, bottom=replace(bottom(goes=BottomGoes.SLID_IN), screw_slot_nm=mm(5)))
RABBETED = replace(drawer("X"), ring=with_rabbets(upright("X", (18, 12, 10, 12)), mm(4)))


def named(pattern: Drawer, mark: str) -> Drawer:
    """A drawer like another, with a mark of its own."""
    stuff = tuple(board.stuff for board in pattern.ring.boards)
    first, second, third, fourth = stuff
    ring = make_ring(mark, RingKind.UPRIGHT, (first, second, third, fourth), pattern.ring.pin_pair, SPACING, "wide")
    corners = tuple(
        replace(new, kind=old.kind, lap_nm=old.lap_nm)
        for new, old in zip(ring.corners, pattern.ring.corners, strict=True)
    )
    one, two, three, four = corners
    return replace(pattern, ring=replace(ring, corners=(one, two, three, four)))


def holding(
    what: Drawer | LooseShelves | Division | None = None, *, size: float | None = None, doors: Doors | None = None
) -> Space:
    """A space, with what it holds."""
    return Space(size_nm=None if size is None else mm(size), holds=what, doors=doors)


def tiers(divider: DividerKind, *spaces: Space, rule: HeightRule = HeightRule.EQUAL) -> Division:
    """Spaces above each other, from the top."""
    return Division(
        way=Way.TIERS,
        divider=divider,
        rule=rule,
        step_nm=mm(12) if rule is HeightRule.STEP else None,
        ratio=Fraction(6, 5) if rule is HeightRule.RATIO else None,
        spaces=spaces,
    )


def columns(*spaces: Space) -> Division:
    """Spaces side by side, from the left, with partitions between them."""
    return Division(
        way=Way.COLUMNS, divider=DividerKind.PARTITION, rule=HeightRule.LISTED, step_nm=None, ratio=None, spaces=spaces
    )


def drawers(pattern: Drawer, count: int, *, column: int = 1) -> tuple[Space, ...]:
    """So many drawers like a pattern."""
    return tuple(holding(named(pattern, drawer_mark(column, n, only_column=False))) for n in range(1, count + 1))


BACK = BackPanel(stuff=ply(6), rabbet_depth_nm=mm(10), play_nm=mm(1))
BOARDS = BoardedBack(
    stuff=beech(12), rabbet_depth_nm=mm(10), play_nm=mm(2), board_nm=mm(140), lap_nm=mm(8), gap_nm=mm(2)
)
PANELLED = Panelled(
    stuff=beech(20),
    stile_nm=mm(60),
    rail_nm=mm(70),
    groove_nm=mm(10),
    tenon_nm=mm(30),
    panel=ply(6),
    play_nm=mm(2),
    wide=2,
    high=2,
)
STUB = replace(PANELLED, tenon_nm=mm(10), wide=3, high=1)
FRAMED_BACK = PanelledBack(made=replace(PANELLED, stuff=beech(15)), rabbet_depth_nm=mm(10), play_nm=mm(1))
RAILS = Rails(stuff=beech(18), width_nm=mm(60), housing_depth_nm=mm(7))
PLAIN = Dividers(stuff=beech(18), housing_depth_nm=mm(7))
STOPPED = replace(PLAIN, joint=DividerJoint.STOPPED_HOUSING, stop_nm=mm(12))
TENONED = Dividers(stuff=beech(18), housing_depth_nm=mm(0), joint=DividerJoint.THROUGH_TENONS, tenons=3)
FRAMES = Frames(
    stuff=beech(20),
    rail_nm=mm(60),
    runner_nm=mm(50),
    housing_depth_nm=mm(7),
    groove_nm=mm(10),
    tenon_nm=mm(7),
    dust_panel=ply(6),
    play_nm=mm(1),
)
OPEN_FRAMES = replace(FRAMES, dust_panel=None)
WOOD = Runners(kind=RunnerKind.WOOD, stuff=beech(15), width_nm=mm(40), kickers=True)
HUNG = Runners(kind=RunnerKind.SIDE_HUNG, stuff=beech(6), width_nm=mm(15), kickers=False)
SLIDES = Runners(kind=RunnerKind.SLIDES, stuff=None, width_nm=mm(0), kickers=False)
LOOSE = LooseShelves(count=3, stuff=beech(18), play_nm=mm(2), setback_nm=mm(15))
PINS = ShelfPins(
    holes=5, hole_nm=mm(5), depth_nm=mm(8), apart_nm=mm(25), front_nm=mm(37), back_nm=mm(50)
)  # fmt: skip
ON_PINS = replace(LOOSE, pins=PINS)
HANGING = HangingRail(stuff=beech(18), width_nm=mm(75))
DOOR_STOPS = DoorStops(stuff=beech(12), width_nm=mm(20))
DOOR = Doors(leaves=1, hinged=Side.LEFT, stands=Stands.INSET, gap_nm=mm(2), overlay_nm=mm(0), made=PANELLED)
PAIR = replace(DOOR, leaves=2)
OVERLAY = replace(PAIR, stands=Stands.OVERLAY, overlay_nm=mm(8), made=Slab(stuff=beech(19)))
TOP = SeparateTop(stuff=beech(22), front_nm=mm(15), sides_nm=mm(20), back_nm=mm(5))
PLINTH = Plinth(
    ring=upright("CP", (20, 20, 20, 20)),
    height_nm=mm(90),
    front_nm=mm(10),
    sides_nm=mm(12),
    back_nm=mm(0),
    foot_nm=mm(120),
    rise_nm=mm(50),
)
STAND = Stand(
    leg=beech(50),
    apron=beech(22),
    height_nm=mm(400),
    apron_nm=mm(90),
    tenon_nm=mm(25),
    front_nm=mm(5),
    sides_nm=mm(5),
    back_nm=mm(0),
    setback_nm=mm(4),
)


def carcase(
    inside: Space,
    *,
    pins: PinPair = PinPair.SECOND_AND_FOURTH,
    over: SizesOver = SizesOver.OUTSIDE,
    back: Back | None = BACK,
    thick: tuple[float, float, float, float] = (20, 20, 20, 20),
) -> Carcase:
    """A carcase 900 wide, 800 high, 450 deep, with all that its divisions might need."""
    top, right, bottom_, left = (beech(each) for each in thick)
    return Carcase(
        title="cabinet",
        ring=make_ring("C", RingKind.CARCASE, (top, right, bottom_, left), pins, SPACING, "wide"),
        width_nm=mm(900),
        height_nm=mm(800),
        depth_nm=mm(450),
        sizes_over=over,
        inside=inside,
        rails=RAILS,
        partitions=PLAIN,
        shelves=PLAIN,
        frames=FRAMES,
        runners=WOOD,
        back=back,
    )


def box(lid: HingedLid | SawnLid | None = None, till: Till | None = None, over: SizesOver = SizesOver.OUTSIDE) -> Box:
    """A chest 800 long, 400 wide, 350 high."""
    return Box(
        title="chest",
        batch="K",
        ring=upright("K", (18, 18, 18, 18), PinPair.SECOND_AND_FOURTH),
        length_nm=mm(800),
        width_nm=mm(400),
        height_nm=mm(350),
        sizes_over=over,
        bottom=bottom(8),
        lid=lid,
        till=till,
    )


def hinged(made: Made) -> HingedLid:
    """A lid that stands over the front and the sides."""
    return HingedLid(made=made, front_nm=mm(15), sides_nm=mm(12), back_nm=mm(0))


SAWN = SawnLid(top=bottom(8), height_nm=mm(100), kerf_nm=mm(3))
TILL = Till(stuff=beech(10), width_nm=mm(150), depth_nm=mm(120), housing_depth_nm=mm(6), lid=beech(10))


def rabbeted(piece: Carcase) -> Carcase:
    """The same carcase with rabbeted corners."""
    return replace(piece, ring=with_rabbets(piece.ring, mm(8)))
