"""Pieces built by hand that hold one of everything, for the order of operations."""

from __future__ import annotations

from dataclasses import replace

from planner.domain.bottom import BottomPanel, Slips
from planner.domain.box import Box, HingedLid, SawnLid, Till
from planner.domain.carcase import (
    BackPanel,
    BoardedBack,
    Carcase,
    Dividers,
    Frames,
    PanelledBack,
    Plinth,
    Rails,
    Runners,
    SeparateTop,
    Stand,
)
from planner.domain.drawer import AppliedFront, Drawer, Handles
from planner.domain.panelled import Panelled, Slab
from planner.domain.project import Project
from planner.domain.ring import make_ring, with_half_blind_front
from planner.domain.space import Doors, LooseShelves, Space
from planner.domain.words import (
    BottomGoes,
    DividerJoint,
    DividerKind,
    PinPair,
    RingKind,
    RunnerKind,
    Side,
    SizesOver,
    Stands,
)
from planner.lengths import NO_LENGTH
from tests.pieces import BOTTOM, SPACING, ash, columns, drawer, inches, ply, project, tiers

RAILS = Rails(stuff=ash("3/4"), width_nm=inches("3"), housing_depth_nm=inches("1/4"))
PARTITIONS = Dividers(stuff=ash("3/4"), housing_depth_nm=inches("1/4"))
STOPPED = Dividers(
    stuff=ash("3/4"),
    housing_depth_nm=inches("1/4"),
    joint=DividerJoint.STOPPED_HOUSING,
    stop_nm=inches("1/2"),
)
TENONED = Dividers(stuff=ash("3/4"), housing_depth_nm=inches("1/4"), joint=DividerJoint.THROUGH_TENONS, tenons=3)
FRAMES = Frames(
    stuff=ash("3/4"),
    rail_nm=inches("2 1/2"),
    runner_nm=inches("2"),
    housing_depth_nm=inches("1/4"),
    groove_nm=inches("3/8"),
    tenon_nm=inches("1/4"),
    dust_panel=ply("1/4"),
    play_nm=inches("1/16"),
)
WOOD = Runners(kind=RunnerKind.WOOD, stuff=ash("3/4"), width_nm=inches("1"), kickers=True)
SIDE_HUNG = Runners(kind=RunnerKind.SIDE_HUNG, stuff=ash("1/4"), width_nm=inches("3/4"), kickers=False)
BACK = BackPanel(stuff=ply("1/4"), rabbet_depth_nm=inches("3/8"), play_nm=inches("1/32"))
PANELLED = Panelled(
    stuff=ash("3/4"),
    stile_nm=inches("2"),
    rail_nm=inches("2"),
    groove_nm=inches("3/8"),
    tenon_nm=inches("1"),
    panel=ash("1/4"),
    play_nm=inches("1/8"),
)
BOARDED = BoardedBack(
    stuff=ash("1/2"),
    rabbet_depth_nm=inches("3/8"),
    play_nm=inches("1/16"),
    board_nm=inches("6"),
    lap_nm=inches("3/8"),
    gap_nm=inches("1/16"),
)
PANELLED_BACK = PanelledBack(
    made=replace(PANELLED, stuff=ash("5/8"), wide=2), rabbet_depth_nm=inches("3/8"), play_nm=inches("1/16")
)
TOP = SeparateTop(stuff=ash("1"), front_nm=inches("1"), sides_nm=inches("1"), back_nm=NO_LENGTH)


def carcase(mark: str, inside: Space, **others: object) -> Carcase:
    """A carcase 40 wide, 40 high, 20 deep of 7/8 in stuff, with a back in rabbets deeper than its housings."""
    facts = {
        "title": "cabinet",
        "ring": make_ring(mark, RingKind.CARCASE, (ash("7/8"),) * 4, PinPair.FIRST_AND_THIRD, SPACING, "main"),
        "width_nm": inches("40"),
        "height_nm": inches("40"),
        "depth_nm": inches("20"),
        "sizes_over": SizesOver.OUTSIDE,
        "inside": inside,
        "rails": RAILS,
        "partitions": PARTITIONS,
        "shelves": STOPPED,
        "frames": FRAMES,
        "runners": WOOD,
        "back": BACK,
    }
    return Carcase(**(facts | others))  # type: ignore[arg-type]


def slid_in(made: Drawer) -> Drawer:
    """The drawer with half-blind front, slips, a bottom of solid wood that slides in, and a lower back."""
    bottom = BottomPanel(
        stuff=ash("1/4"),
        groove_depth_nm=inches("1/4"),
        up_nm=None,
        play_nm=inches("1/32"),
        goes=BottomGoes.SLID_IN,
        slips=Slips(stuff=ash("1/2"), height_nm=inches("9/16")),
    )
    ring = with_half_blind_front(made.ring, inches("1/4"))
    return replace(made, ring=ring, bottom=bottom, back_lower_nm=inches("1/4"))


def faced(made: Drawer) -> Drawer:
    """The drawer with an applied front, and holes for two pulls through both fronts."""
    handles = Handles(count=2, holes=2, apart_nm=inches("3"), hole_nm=inches("3/16"))
    return replace(made, applied_front=AppliedFront(stuff=ash("3/4"), gap_nm=inches("1/16")), handles=handles)


def plinth(mark: str) -> Plinth:
    """A plinth with bracket feet."""
    return Plinth(
        ring=make_ring(mark, RingKind.UPRIGHT, (ash("3/4"),) * 4, PinPair.FIRST_AND_THIRD, SPACING, "main"),
        height_nm=inches("5"),
        front_nm=inches("1/4"),
        sides_nm=inches("1/4"),
        back_nm=NO_LENGTH,
        foot_nm=inches("5"),
        rise_nm=inches("2"),
    )


STAND = Stand(
    leg=ash("1 3/4"),
    apron=ash("7/8"),
    height_nm=inches("12"),
    apron_nm=inches("4"),
    tenon_nm=inches("3/4"),
    front_nm=NO_LENGTH,
    sides_nm=NO_LENGTH,
    back_nm=NO_LENGTH,
    setback_nm=inches("1/8"),
)


def door(stands: Stands, leaves: int = 1) -> Doors:
    """A panelled door."""
    return Doors(
        leaves=leaves,
        hinged=Side.LEFT,
        stands=stands,
        gap_nm=inches("1/16"),
        overlay_nm=inches("3/8"),
        made=PANELLED,
    )


def of_frames() -> Project:
    """Two columns above each other's frame: a frame, partitions on it and below it, drawers everywhere."""
    upper = columns(Space(holds=drawer("D1")), Space(holds=drawer("D2")))
    lower = columns(Space(holds=drawer("D3")), Space(holds=drawer("D4")), Space(holds=drawer("D5")))
    return project(carcases=(carcase("C", tiers(upper, lower, by=DividerKind.FRAME), base=STAND, top=TOP),))


def of_rails() -> Project:
    """Columns of drawers between rails with runners and kickers, slips and solid bottoms, on a plinth."""
    first = tiers(*(Space(holds=slid_in(drawer(f"D10{n}"))) for n in range(1, 5)))
    second = tiers(*(Space(holds=drawer(f"D20{n}")) for n in range(1, 4)))
    return project(carcases=(carcase("C", columns(first, second), base=plinth("CP"), back=BOARDED),))


def of_strips() -> Project:
    """Side-hung drawers with applied fronts beside an open space with loose shelves."""
    hung = tiers(*(Space(holds=faced(drawer(f"D{n}"))) for n in range(1, 4)), by=DividerKind.NOTHING)
    loose = Space(holds=LooseShelves(count=2, stuff=ash("3/4"), play_nm=inches("1/16"), setback_nm=inches("1/4")))
    return project(carcases=(carcase("C", columns(hung, loose), runners=SIDE_HUNG, back=PANELLED_BACK),))


def of_doors() -> Project:
    """A cupboard: inset doors before a shelf that stops, an overlay door beside a shelf through the uprights."""
    return project(
        carcases=(
            carcase(
                "C",
                columns(
                    replace(tiers(Space(), Space(), by=DividerKind.SHELF), doors=door(Stands.INSET, 2)),
                    replace(tiers(Space(), Space(), by=DividerKind.SHELF), doors=door(Stands.OVERLAY)),
                ),
                top=TOP,
            ),
        )
    )


def tenoned() -> Project:
    """A bookcase whose shelf and partition go through the boards around them."""
    inside = columns(tiers(Space(), Space(), by=DividerKind.SHELF), Space())
    return project(carcases=(carcase("C", inside, partitions=TENONED, shelves=TENONED, back=None),))


def blanket_chest() -> Project:
    """A chest with a till, its lid, and a panelled lid."""
    return project(
        boxes=(
            Box(
                title="chest",
                batch="K",
                ring=make_ring("K", RingKind.UPRIGHT, (ash("3/4"),) * 4, PinPair.FIRST_AND_THIRD, SPACING, "main"),
                length_nm=inches("40"),
                width_nm=inches("18"),
                height_nm=inches("18"),
                sizes_over=SizesOver.OUTSIDE,
                bottom=BOTTOM,
                lid=HingedLid(made=PANELLED, front_nm=inches("1/2"), sides_nm=inches("1/2"), back_nm=NO_LENGTH),
                till=Till(
                    stuff=ash("3/8"),
                    width_nm=inches("6"),
                    depth_nm=inches("5"),
                    housing_depth_nm=inches("1/4"),
                    lid=ash("1/2"),
                ),
            ),
            replace(
                box("Q"),
                lid=HingedLid(made=Slab(stuff=ash("1/2")), front_nm=NO_LENGTH, sides_nm=NO_LENGTH, back_nm=NO_LENGTH),
            ),
        )
    )


def sawn_box() -> Project:
    """A box closed at the top and sawn open."""
    lid = SawnLid(top=BOTTOM, height_nm=inches("2"), kerf_nm=inches("1/8"))
    return project(boxes=(replace(box("K"), lid=lid),))


def box(mark: str) -> Box:
    """A box with a bottom."""
    return Box(
        title="box",
        batch=mark,
        ring=make_ring(mark, RingKind.UPRIGHT, (ash("1/2"),) * 4, PinPair.SECOND_AND_FOURTH, SPACING, "main"),
        length_nm=inches("12"),
        width_nm=inches("8"),
        height_nm=inches("7"),
        sizes_over=SizesOver.INSIDE,
        bottom=BOTTOM,
    )


ALL = {each.__name__: each for each in (of_frames, of_rails, of_strips, of_doors, tenoned, blanket_chest, sawn_box)}
"""By name, so that tests can be named after them."""
