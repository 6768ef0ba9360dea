"""Draws the parts of a cabinet for ``assembly_random``: drawers, doors, dividers, backs, bases."""

from __future__ import annotations

from dataclasses import dataclass

from hypothesis import strategies as st

from planner.domain.bottom import BottomPanel, Slips
from planner.domain.carcase import (
    Back,
    BackPanel,
    BoardedBack,
    Dividers,
    Frames,
    PanelledBack,
    Plinth,
    Rails,
    Runners,
    Stand,
)
from planner.domain.drawer import AppliedFront, Drawer, DrawerStops, Handles
from planner.domain.panelled import Panelled, Slab
from planner.domain.ring import Ring, Stuff, make_ring, with_half_blind_front, with_rabbets
from planner.domain.space import Doors, ShelfPins
from planner.domain.spacing import Spacing
from planner.domain.words import (
    BottomGoes,
    DividerJoint,
    DividerKind,
    JointKind,
    PinPair,
    RingKind,
    RunnerKind,
    Side,
    Stands,
)
from planner.lengths import Grid, Nm

MM = 1_000_000
LEAST_WIDE, LEAST_HIGH = 170 * MM, 120 * MM
"""Least clear sizes of a space that a drawer may be in."""

SPACING = Spacing(
    half_pin_nm=Nm(5 * MM), pin_nm=Nm(5 * MM), tails=None, tail_nm=Nm(25 * MM), greatest_tail_nm=Nm(70 * MM)
)


@dataclass(slots=True)
class Shop:
    """Draws lengths on one grid, or off it, and gives out marks."""

    draw: st.DrawFn
    grid: Grid
    drawers: int = 0

    def between(self, low: float, high: float) -> Nm:
        """A length between two numbers of millimetres, mostly on the grid."""
        step = self.grid.step_nm
        steps = self.draw(st.integers(-(-round(low * MM) // step), round(high * MM) // step))
        off = self.draw(st.sampled_from([0, 0, 0, 1, -1]))
        return Nm(max(round(low * MM), min(round(high * MM), steps * step + off)))

    def wood(self, low: float, high: float) -> Stuff:
        """Solid wood between two thicknesses."""
        return Stuff(material="beech", thickness_nm=self.between(low, high))

    def sheet(self, low: float, high: float) -> Stuff:
        """A sheet between two thicknesses."""
        return Stuff(material="ply", thickness_nm=self.between(low, high))

    def one_of(self, *choices: object) -> object:
        """One of some things."""
        return self.draw(st.sampled_from(choices))

    def yes(self) -> bool:
        """A toss."""
        return self.draw(st.booleans())

    def ring(self, mark: str, kind: RingKind, stuff: tuple[Stuff, Stuff, Stuff, Stuff], *, front: bool = False) -> Ring:
        """A ring; pins on front and back where it must be so."""
        pair = PinPair.FIRST_AND_THIRD if front else self.draw(st.sampled_from(PinPair))
        return make_ring(mark, kind, stuff, pair, SPACING, "bench")


@dataclass(frozen=True, slots=True)
class Ways:
    """How a carcase is built, as far as its spaces must know."""

    rails: Rails
    partitions: Dividers
    shelves: Dividers
    frames: Frames
    runners: Runners

    def thick(self, kind: DividerKind) -> Nm:
        """Thickness of a divider."""
        parts: dict[DividerKind, Rails | Dividers | Frames] = {
            DividerKind.PARTITION: self.partitions,
            DividerKind.RAIL: self.rails,
            DividerKind.SHELF: self.shelves,
            DividerKind.FRAME: self.frames,
        }
        return parts[kind].stuff.thickness_nm if kind in parts else Nm(0)


def ways_of(shop: Shop, thinnest: int) -> Ways:
    deepest = thinnest / MM / 3
    stop = shop.between(5, 15)

    def divider(*joints: DividerJoint) -> Dividers:
        joint = shop.draw(st.sampled_from(joints))
        through = joint is DividerJoint.THROUGH_TENONS
        return Dividers(
            stuff=shop.wood(14, 24),
            housing_depth_nm=Nm(0) if through else shop.between(3, min(deepest, 4.5)),
            joint=joint,
            stop_nm=stop if joint is DividerJoint.STOPPED_HOUSING else Nm(0),
            tenons=shop.draw(st.integers(1, 4)) if through else 0,
        )

    groove = shop.between(6, 12)
    kind = shop.draw(st.sampled_from(RunnerKind))
    return Ways(
        rails=Rails(stuff=shop.wood(14, 24), width_nm=shop.between(40, 80), housing_depth_nm=shop.between(3, 4.5)),
        partitions=divider(*DividerJoint),
        shelves=divider(*DividerJoint),
        frames=Frames(
            stuff=shop.wood(16, 24),
            rail_nm=shop.between(40, 70),
            runner_nm=shop.between(30, 50),
            housing_depth_nm=shop.between(3, 4.5),
            groove_nm=groove,
            tenon_nm=shop.between(5, 7),
            dust_panel=shop.sheet(4, 6) if shop.yes() else None,
            play_nm=shop.between(0, 2),
        ),
        runners=_runners(shop, kind),
    )


def _runners(shop: Shop, kind: RunnerKind) -> Runners:
    if kind is RunnerKind.SLIDES:
        return Runners(kind=kind, stuff=None, width_nm=Nm(0), kickers=False)
    if kind is RunnerKind.SIDE_HUNG:
        return Runners(kind=kind, stuff=shop.wood(5, 7), width_nm=shop.between(10, 20), kickers=False)
    return Runners(kind=kind, stuff=shop.wood(10, 14), width_nm=shop.between(20, 45), kickers=shop.yes())


def bottom_of(shop: Shop, *, slips: bool) -> BottomPanel:
    strip = Slips(stuff=shop.wood(7, 9), height_nm=shop.between(25, 30)) if slips and shop.yes() else None
    goes = shop.draw(st.sampled_from(BottomGoes))
    return BottomPanel(
        stuff=shop.sheet(3, 6),
        groove_depth_nm=shop.between(3, 4),
        up_nm=None if shop.yes() else shop.between(8, 14),
        play_nm=shop.between(0, 2),
        goes=goes,
        slips=strip,
        screw_slot_nm=shop.between(4, 6) if goes is BottomGoes.SLID_IN and shop.yes() else None,
    )


def stops_of(shop: Shop, ring: Ring, bottom: BottomPanel | None, applied: AppliedFront | None) -> DrawerStops | None:
    """Stops for a drawer that can pass over them, on rails of any width: its bottom high enough, its front thin."""
    dovetailed = ring.corners[0].kind is not JointKind.RABBET
    slid_in = bottom is not None and bottom.goes is BottomGoes.SLID_IN
    one_front = applied is None or applied.stands is Stands.OVERLAY
    if not (dovetailed and slid_in and one_front and shop.yes()):
        return None
    return DrawerStops(stuff=shop.sheet(3, 5), length_nm=shop.between(15, 40), width_nm=shop.between(6, 8))


def pins_of(shop: Shop, ways: Ways) -> ShelfPins | None:
    """Holes for pins, but beside mortises right through the uprights."""
    if ways.shelves.joint is DividerJoint.THROUGH_TENONS or shop.yes():
        return None
    return ShelfPins(
        holes=shop.draw(st.sampled_from([1, 3, 5])),
        hole_nm=shop.between(4, 8),
        depth_nm=shop.between(3, 5),
        apart_nm=shop.between(8, 40),
        front_nm=shop.between(20, 40),
        back_nm=shop.between(20, 40),
    )


def drawer_of(shop: Shop, *, hung: bool, overlays: bool) -> Drawer:
    shop.drawers += 1
    mark = f"D{shop.drawers}"
    side = shop.wood(11, 14)
    stuff = (shop.wood(14, 22), side, shop.wood(9, 14), side)
    ring = shop.ring(mark, RingKind.UPRIGHT, stuff, front=True)
    applied = None
    match shop.one_of("through", "half-blind", "rabbet", "inset", "overlay" if overlays else "inset"):
        case "half-blind":
            ring = with_half_blind_front(ring, shop.between(4, 6))
        case "rabbet" if not hung:
            ring = with_rabbets(ring, shop.between(3, 5))
        case "inset":
            applied = AppliedFront(stuff=shop.wood(14, 22), gap_nm=shop.between(1, 3))
        case "overlay":
            applied = AppliedFront(
                stuff=shop.wood(14, 22), gap_nm=Nm(0), stands=Stands.OVERLAY, overlay_nm=shop.between(2, 6)
            )
    bottom = bottom_of(shop, slips=not hung) if shop.draw(st.integers(0, 5)) else None
    pulls = Handles(count=1, holes=2, apart_nm=shop.between(60, 90), hole_nm=shop.between(4, 8))
    return Drawer(
        ring=ring,
        side_clearance_nm=shop.between(0.5, 2),
        top_clearance_nm=shop.between(1, 4),
        back_clearance_nm=shop.between(0, 20),
        bottom=bottom,
        applied_front=applied,
        back_lower_nm=shop.between(0, 8),
        handles=pulls if shop.yes() else None,
        stops=stops_of(shop, ring, bottom, applied),
    )


def panelled(shop: Shop) -> Panelled:
    groove = shop.between(6, 9)
    return Panelled(
        stuff=shop.wood(16, 22),
        stile_nm=shop.between(32, 40),
        rail_nm=shop.between(32, 40),
        groove_nm=groove,
        tenon_nm=groove if shop.yes() else shop.between(14, 24),
        panel=shop.sheet(4, 7),
        play_nm=shop.between(0, 3),
        wide=shop.draw(st.integers(1, 2)),
        high=shop.draw(st.integers(1, 2)),
    )


def doors_of(shop: Shop, wide: int, high: int) -> Doors:
    leaves = shop.draw(st.integers(1, 2)) if wide > 400 * MM else 1
    framed = wide // leaves > 220 * MM and high > 250 * MM and shop.yes()
    return Doors(
        leaves=leaves,
        hinged=shop.draw(st.sampled_from(Side)),
        stands=shop.draw(st.sampled_from(Stands)),
        gap_nm=shop.between(1, 3),
        overlay_nm=shop.between(1, 5),
        made=panelled(shop) if framed else Slab(stuff=shop.wood(16, 22)),
    )


def back_of(shop: Shop, rabbet: Nm) -> Back | None:
    play = shop.between(0, 2)
    match shop.one_of("none", "panel", "panel", "boards", "frame"):
        case "panel":
            return BackPanel(stuff=shop.sheet(4, 8), rabbet_depth_nm=rabbet, play_nm=play)
        case "boards":
            return BoardedBack(
                stuff=shop.wood(10, 14),
                rabbet_depth_nm=rabbet,
                play_nm=play,
                board_nm=shop.between(80, 160),
                lap_nm=shop.between(5, 9),
                gap_nm=shop.between(0, 3),
            )
        case "frame":
            return PanelledBack(made=panelled(shop), rabbet_depth_nm=rabbet, play_nm=play)
    return None


def base_of(shop: Shop) -> Plinth | Stand | None:
    match shop.one_of("none", "plinth", "stand"):
        case "plinth":
            stuff = (shop.wood(16, 22),) * 4
            return Plinth(
                ring=shop.ring("CP", RingKind.UPRIGHT, stuff),
                height_nm=shop.between(70, 120),
                front_nm=shop.between(-10, 15),
                sides_nm=shop.between(-10, 15),
                back_nm=shop.between(0, 10),
                foot_nm=shop.between(60, 90) if shop.yes() else None,
                rise_nm=shop.between(20, 40),
            )
        case "stand":
            return Stand(
                leg=shop.wood(45, 60),
                apron=shop.wood(18, 24),
                height_nm=shop.between(200, 500),
                apron_nm=shop.between(60, 100),
                tenon_nm=shop.between(12, 20),
                front_nm=shop.between(-10, 15),
                sides_nm=shop.between(-10, 15),
                back_nm=shop.between(0, 10),
                setback_nm=shop.between(0, 8),
            )
    return None
