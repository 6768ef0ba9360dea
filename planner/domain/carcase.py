"""A carcase: the outer ring of a cabinet, what divides it, what closes it behind, above and below."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from planner.domain.drawer import Drawer
from planner.domain.panelled import Panelled
from planner.domain.ring import Ring, Stuff
from planner.domain.space import Space
from planner.domain.use import UNSAID, Use
from planner.domain.words import DividerJoint, RunnerKind, SizesOver
from planner.lengths import NO_LENGTH, Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Rails:
    """The rails between tiers, lying flat at the front in housings cut into the uprights."""

    stuff: Stuff
    width_nm: Nm
    housing_depth_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Dividers:
    """Full-depth boards that divide: partitions between columns, or fixed shelves between tiers.

    Attributes:
        joint: how they are held at their ends.
        housing_depth_nm: depth of the housings; with through tenons, of none at all.
        stop_nm: with stopped housings, how far from the front edge they stop; the board is notched there.
        tenons: with through tenons, how many at each end.
    """

    stuff: Stuff
    housing_depth_nm: Nm
    joint: DividerJoint = DividerJoint.HOUSING
    stop_nm: Nm = NO_LENGTH
    tenons: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Frames:
    """Web frames between tiers: a rail in front and one behind, and runners between them with short tenons.

    Attributes:
        rail_nm: width of both rails.
        runner_nm: width of the runners.
        housing_depth_nm: depth of the housings in the uprights, which take the whole frame.
        groove_nm: depth of the groove in the rails' inner edges, and length of the runners' tenons.
        dust_panel: a thin panel in the frame, as thick as the groove is wide; None leaves it open.
        tenon_nm: thickness of the tenons where there is no dust panel.
        play_nm: how much smaller the dust panel is than the room for it.
    """

    stuff: Stuff
    rail_nm: Nm
    runner_nm: Nm
    housing_depth_nm: Nm
    groove_nm: Nm
    tenon_nm: Nm
    dust_panel: Stuff | None
    play_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Runners:
    """What drawers run on where nothing else carries them.

    Attributes:
        kind: strips level with the rails, one at each side, in the line of the rails' housings; strips on the uprights
            in a groove of the drawers' sides; or bought slides, of which only the clearances count.
        stuff: material and thickness (of slides, nothing).
        width_nm: how far a strip stands in from the upright (side-hung: how high it is).
        kickers: whether strips are put above drawers that nothing keeps from tipping.
    """

    kind: RunnerKind
    stuff: Stuff | None
    width_nm: Nm
    kickers: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class BackPanel:
    """A back of one piece that lies in a rabbet on the inside of all four boards, as deep from behind as it is thick.

    Attributes:
        rabbet_depth_nm: how far the rabbet goes into the boards' thickness.
        play_nm: how much smaller the back is than the space between opposite rabbets.
    """

    stuff: Stuff
    rabbet_depth_nm: Nm
    play_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardedBack:
    """A back of upright boards that overlap each other by rabbets on their edges, in the rabbet of a back panel.

    Attributes:
        board_nm: greatest width of a board; the boards are as few as may be, and equal.
        lap_nm: how far neighbours overlap.
        gap_nm: space between neighbours, to swell into.
    """

    stuff: Stuff
    rabbet_depth_nm: Nm
    play_nm: Nm
    board_nm: Nm
    lap_nm: Nm
    gap_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelledBack:
    """A back of a frame with panels, in the rabbet of a back panel."""

    made: Panelled
    rabbet_depth_nm: Nm
    play_nm: Nm

    @property
    def stuff(self) -> Stuff:
        """What the frame is made of; its thickness is the rabbet's."""
        return self.made.stuff


Back = BackPanel | BoardedBack | PanelledBack


@dataclass(frozen=True, slots=True, kw_only=True)
class Plinth:
    """A dovetailed ring below the carcase, its boards cut away to feet if wished.

    Attributes:
        ring: front, right, back, left.
        height_nm: from the floor to the carcase.
        front_nm: how far it stands back from the carcase's front; less than nothing stands out.
        sides_nm: the same at each side.
        back_nm: the same at the back.
        foot_nm: length of the feet at each end of its boards; None leaves the boards whole.
        rise_nm: how high the boards are cut away between the feet.
    """

    ring: Ring
    height_nm: Nm
    front_nm: Nm
    sides_nm: Nm
    back_nm: Nm
    foot_nm: Nm | None
    rise_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Stand:
    """Four square legs below the carcase, with aprons tenoned into them.

    Attributes:
        leg: material, and thickness of the legs both ways.
        apron: material and thickness of the aprons.
        height_nm: from the floor to the carcase.
        apron_nm: width of the aprons.
        tenon_nm: length of the aprons' tenons.
        front_nm: how far the legs stand back from the carcase's front; less than nothing stands out.
        sides_nm: the same at each side.
        back_nm: the same at the back.
        setback_nm: how far the aprons stand back from the legs' outside faces.
    """

    leg: Stuff
    apron: Stuff
    height_nm: Nm
    apron_nm: Nm
    tenon_nm: Nm
    front_nm: Nm
    sides_nm: Nm
    back_nm: Nm
    setback_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class SeparateTop:
    """A board laid on the carcase and fixed from below by screws in slots.

    Attributes:
        front_nm: how far it stands over the carcase's front.
        sides_nm: the same at each side.
        back_nm: the same at the back.
    """

    stuff: Stuff
    front_nm: Nm
    sides_nm: Nm
    back_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class HangingRail:
    """Boards below the top, in front of the back, through which a cabinet is screwed to the wall.

    Attributes:
        width_nm: how far they come down from the top.
    """

    stuff: Stuff
    width_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Carcase:
    """A cabinet: its outer ring, what stands in it, behind it, below and above it.

    Attributes:
        width_nm: width over the outside or the inside of the ring, as ``sizes_over`` says.
        height_nm: height of the ring alone, without base and separate top, likewise.
        depth_nm: from front edge to back edge; inside, to the back.
        use: what it has to bear, and how it stands in its room.
    """

    title: str
    ring: Ring
    width_nm: Nm
    height_nm: Nm
    depth_nm: Nm
    sizes_over: SizesOver
    inside: Space
    rails: Rails | None = None
    partitions: Dividers | None = None
    shelves: Dividers | None = None
    frames: Frames | None = None
    runners: Runners | None = None
    back: Back | None = None
    base: Plinth | Stand | None = None
    top: SeparateTop | None = None
    hanging_rail: HangingRail | None = None
    use: Use = UNSAID

    def drawers(self) -> Iterator[Drawer]:
        """All drawers, in the order their spaces are written."""
        for space in self.inside.leaves():
            if isinstance(space.holds, Drawer):
                yield space.holds
