"""Hypothesis strategy for pieces of every kind there is, for the order of operations.

Sizes are few and fit together by and large; what can't be built for want of room is left out by whoever plans it. How
things are held varies most: depths of housings and of the back's rabbet, stops, tenons, so that what can be put in
later in one piece is caught in the next.
"""

from __future__ import annotations

from dataclasses import replace

from hypothesis import strategies as st

from planner.domain.bottom import BottomPanel, Slips
from planner.domain.box import Box, HingedLid, SawnLid, Till
from planner.domain.carcase import Back, Carcase, Dividers, Runners
from planner.domain.drawer import Drawer
from planner.domain.panelled import Slab
from planner.domain.project import Project
from planner.domain.ring import make_ring, with_half_blind_front, with_rabbets
from planner.domain.space import LooseShelves, Space
from planner.domain.words import (
    BottomGoes,
    DividerJoint,
    DividerKind,
    PinPair,
    RingKind,
    RunnerKind,
    Stands,
)
from planner.lengths import NO_LENGTH
from tests.pieces import BOTTOM, SPACING, ash, columns, drawer, inches, ply, project, tiers
from tests.plan import pieces

_DEPTHS = st.sampled_from(["1/8", "1/4", "3/8"]).map(inches)
_RUNNERS = [pieces.WOOD, pieces.SIDE_HUNG, replace(pieces.WOOD, kickers=False), None]


@st.composite
def drawers(draw: st.DrawFn, mark: str) -> Drawer:
    """A drawer, its corners, its bottom, its front."""
    made = drawer(mark)
    made = draw(st.sampled_from([made, pieces.faced(made)]))
    corners = draw(st.sampled_from(["through", "half-blind", "rabbets"]))
    if corners == "half-blind" and made.applied_front is None:
        made = replace(made, ring=with_half_blind_front(made.ring, inches("1/4")))
    if corners == "rabbets":
        made = replace(made, ring=with_rabbets(made.ring, inches("1/4")))
    goes = draw(st.sampled_from(BottomGoes))
    bottom = BottomPanel(
        stuff=draw(st.sampled_from([ash("1/4"), ply("1/4")])),
        groove_depth_nm=inches("3/16"),
        up_nm=inches("5/16"),
        play_nm=inches("1/32"),
        goes=goes,
        slips=draw(st.sampled_from([None, Slips(stuff=ash("3/8"), height_nm=inches("9/16"))])),
    )
    return replace(made, bottom=draw(st.sampled_from([None, bottom])))


class _Inside:
    """Draws the inside of a carcase; gives out marks."""

    def __init__(self, draw: st.DrawFn, runners: Runners | None) -> None:
        self.draw, self.runners, self.number = draw, runners, 0

    def space(self, depth: int, *, behind_door: bool = False) -> Space:
        ways = ["drawer", "shelves", "nothing"] + ["columns", "tiers"] * 2 * (depth > 0)
        way = self.draw(st.sampled_from(ways))
        if way == "columns":
            space = columns(*self._parts(depth))
        elif way == "tiers":
            space = self._tiers(depth)
        else:
            space = Space(holds=self._held(way))
        if not behind_door and self.draw(st.integers(0, 4)) == 0:
            doors = pieces.door(self.draw(st.sampled_from(Stands)), self.draw(st.integers(1, 2)))
            return replace(space, doors=doors)
        return space

    def _parts(self, depth: int) -> list[Space]:
        count = self.draw(st.integers(2, 3))
        return [self.space(depth - 1, behind_door=True) for _ in range(count)]

    def _tiers(self, depth: int) -> Space:
        parts = self._parts(depth)
        kinds = [DividerKind.SHELF, DividerKind.FRAME]
        if not any(getattr(getattr(part.holds, "divider", None), "value", "") == "partition" for part in parts):
            kinds += [DividerKind.RAIL] * 3
            if self.runners and self.runners.kind is RunnerKind.SIDE_HUNG:
                kinds.append(DividerKind.NOTHING)
        return tiers(*parts, by=self.draw(st.sampled_from(kinds)))

    def _held(self, way: str) -> Drawer | LooseShelves | None:
        if way == "nothing":
            return None
        if way == "shelves":
            return LooseShelves(count=1, stuff=ash("3/4"), play_nm=inches("1/16"), setback_nm=inches("1/4"))
        self.number += 1
        return self.draw(drawers(f"D{self.number}"))


@st.composite
def _dividers(draw: st.DrawFn, joints: list[DividerJoint]) -> Dividers:
    return Dividers(
        stuff=ash("3/4"),
        housing_depth_nm=draw(_DEPTHS),
        joint=draw(st.sampled_from(joints)),
        stop_nm=inches("1/2"),
        tenons=draw(st.integers(1, 3)),
    )


@st.composite
def _backs(draw: st.DrawFn) -> Back | None:
    back = draw(st.sampled_from([pieces.BACK, pieces.BOARDED, pieces.PANELLED_BACK, None]))
    return replace(back, rabbet_depth_nm=draw(_DEPTHS)) if back else None


@st.composite
def carcases(draw: st.DrawFn) -> Carcase:
    """A carcase with anything in it; tenons go through only where nothing else can meet them."""
    runners = draw(st.sampled_from(_RUNNERS))
    depth = draw(st.integers(0, 2))
    joints = [DividerJoint.HOUSING, DividerJoint.STOPPED_HOUSING]
    ring = make_ring("C", RingKind.CARCASE, (ash("7/8"),) * 4, PinPair.FIRST_AND_THIRD, SPACING, "main")
    base = draw(st.sampled_from([None, "plinth", pieces.STAND]))
    return pieces.carcase(
        "C",
        _Inside(draw, runners).space(depth),
        ring=draw(st.sampled_from([ring, with_rabbets(ring, inches("3/8"))])),
        width_nm=inches("46"),
        height_nm=inches("46"),
        runners=runners,
        partitions=draw(_dividers([*joints, DividerJoint.THROUGH_TENONS] if depth == 1 else joints)),
        shelves=draw(_dividers([*joints, DividerJoint.THROUGH_TENONS] if depth == 1 else joints)),
        rails=replace(pieces.RAILS, housing_depth_nm=draw(_DEPTHS)),
        frames=replace(
            pieces.FRAMES, housing_depth_nm=draw(_DEPTHS), dust_panel=draw(st.sampled_from([ply("1/4"), None]))
        ),
        back=draw(_backs()),
        base=pieces.plinth("CP") if base == "plinth" else base,
        top=draw(st.sampled_from([None, pieces.TOP])),
    )


@st.composite
def boxes(draw: st.DrawFn) -> Box:
    """A box, with a lid or a till or neither."""
    made = pieces.box("K")
    flush = {"front_nm": NO_LENGTH, "sides_nm": NO_LENGTH, "back_nm": NO_LENGTH}
    slab, frame = HingedLid(made=Slab(stuff=ash("1/2")), **flush), HingedLid(made=pieces.PANELLED, **flush)
    sawn = SawnLid(top=BOTTOM, height_nm=inches("2"), kerf_nm=inches("1/8"))
    lid = draw(st.sampled_from([None, slab, frame, sawn]))
    till = Till(
        stuff=ash("3/8"),
        width_nm=inches("3"),
        depth_nm=inches("3"),
        housing_depth_nm=inches("1/4"),
        lid=draw(st.sampled_from([None, ash("3/8")])),
    )
    return replace(made, lid=lid, till=None if lid is sawn else draw(st.sampled_from([None, till])))


@st.composite
def any_projects(draw: st.DrawFn) -> Project:
    """A carcase, a box, or both."""
    what = draw(st.sampled_from(["carcase", "carcase", "box", "both"]))
    made = project(
        boxes=() if what == "carcase" else (draw(boxes()),),
        carcases=() if what == "box" else (draw(carcases()),),
    )
    (sled,) = made.sleds
    return replace(made, sleds=(replace(sled, greatest_width_nm=inches("60")),))
