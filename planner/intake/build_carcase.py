"""From the tables of a file to a carcase."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING

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
from planner.domain.ring import Ring, Stuff, with_rabbets
from planner.domain.words import DividerJoint, PinPair, RingKind, RunnerKind, SizesOver
from planner.intake.build_base import base_of
from planner.intake.build_drawer import DrawerMaker
from planner.intake.build_made import panelled_of
from planner.intake.build_space import SpaceMaker
from planner.intake.build_use import use_of
from planner.intake.shared import Shared, pin_pair_of, stuff_of
from planner.intake.usual import TENONS, usual_divider, usual_runner
from planner.lengths import Nm

if TYPE_CHECKING:
    from planner.intake.file_carcase import (
        BackTable,
        CarcaseTable,
        DividersTable,
        FramesTable,
        HangingRailTable,
        RailsTable,
        RunnersTable,
        SeparateTopTable,
    )
    from planner.intake.file_drawer import DrawerTable


def carcases_of(
    tables: Sequence[CarcaseTable], differing: Sequence[Mapping[str, DrawerTable]], shared: Shared
) -> Iterator[Carcase]:
    """All carcases; their columns are numbered through the project.

    Args:
        tables: one for each.
        differing: for each, the drawers that differ from its others, by mark.
        shared: what they fall back on.
    """
    number = 1
    for table, drawers in zip(tables, differing, strict=True):
        yield _carcase(table, drawers, number, shared)
        number += len(table.column)


def _carcase(table: CarcaseTable, differing: Mapping[str, DrawerTable], number: int, shared: Shared) -> Carcase:
    stuff = Stuff(material=table.material, thickness_nm=table.thickness)
    runners = _runners(table.runners, table.rails, stuff, shared)
    spaces = SpaceMaker(
        stuff=stuff,
        divider=usual_divider(table.rails, table.frames, table.shelves),
        drawers=_drawers(table, differing, runners, shared),
        shared=shared,
    )
    return Carcase(
        title=table.title,
        ring=_ring(table, stuff, shared),
        width_nm=table.width,
        height_nm=table.height,
        depth_nm=table.depth,
        sizes_over=SizesOver(table.sizes),
        inside=spaces.root(table, number),
        rails=_rails(table.rails, stuff, shared),
        partitions=_dividers(table.partitions, stuff, shared),
        shelves=_dividers(table.shelves, stuff, shared),
        frames=_frames(table.frames, stuff, shared),
        runners=runners,
        back=_back(table.back, stuff, shared),
        base=_base(table, stuff, shared),
        top=_top(table.top, stuff, shared),
        hanging_rail=_hanging_rail(table.hanging_rail, stuff, shared),
        use=use_of(table.use),
    )


def _drawers(
    table: CarcaseTable, differing: Mapping[str, DrawerTable], runners: Runners | None, shared: Shared
) -> DrawerMaker | None:
    if table.drawer is None:
        return None
    return DrawerMaker(
        table=table.drawer,
        differing=differing,
        said=table.except_,
        runners=runners.kind if runners else None,
        shared=shared,
    )


def _ring(table: CarcaseTable, stuff: Stuff, shared: Shared) -> Ring:
    boards = (stuff, stuff, stuff, stuff)
    if table.corners == "dovetail":
        pin_pair = pin_pair_of(table.pins_on, RingKind.CARCASE, table.width, table.height)
        return shared.ring(table.mark, RingKind.CARCASE, boards, pin_pair, [table])
    plain = PinPair.SECOND_AND_FOURTH if table.rabbets_on == "top and bottom" else PinPair.FIRST_AND_THIRD
    lap = shared.depth(table.lap, "corner_lap", stuff.thickness_nm)
    return with_rabbets(shared.ring_without_pins(table.mark, RingKind.CARCASE, boards, plain), lap)


# --- what divides it ----------------------------------------------------------------------------------------


def _rails(table: RailsTable | None, stuff: Stuff, shared: Shared) -> Rails | None:
    if table is None:
        return None
    return Rails(
        stuff=stuff_of(table.material, table.thickness, stuff),
        width_nm=table.width,
        housing_depth_nm=shared.depth(table.housing_depth, "housing_depth", stuff.thickness_nm),
    )


def _dividers(table: DividersTable | None, stuff: Stuff, shared: Shared) -> Dividers | None:
    if table is None:
        return None
    joint = DividerJoint(table.joint)
    tenons = joint is DividerJoint.THROUGH_TENONS
    depth = shared.depth(table.housing_depth, "housing_depth", stuff.thickness_nm)
    return Dividers(
        stuff=stuff_of(table.material, table.thickness, stuff),
        housing_depth_nm=Nm(0) if tenons else depth,
        joint=joint,
        stop_nm=shared.length(table.stop, "stop") if joint is DividerJoint.STOPPED_HOUSING else Nm(0),
        tenons=(table.tenons or TENONS) if tenons else 0,
    )


def _frames(table: FramesTable | None, stuff: Stuff, shared: Shared) -> Frames | None:
    if table is None:
        return None
    dust = table.dust_panel
    return Frames(
        stuff=stuff_of(table.material, table.thickness, stuff),
        rail_nm=shared.length(table.rail, "web_rail"),
        runner_nm=shared.length(table.runner, "web_rail"),
        housing_depth_nm=shared.depth(table.housing_depth, "housing_depth", stuff.thickness_nm),
        groove_nm=shared.length(table.groove_depth, "web_groove"),
        tenon_nm=shared.length(table.tenon, "web_tenon"),
        dust_panel=None if dust is None else Stuff(material=dust.material, thickness_nm=dust.thickness),
        play_nm=shared.length(table.play, "play"),
    )


def _runners(table: RunnersTable | None, rails: RailsTable | None, stuff: Stuff, shared: Shared) -> Runners | None:
    if table is None:
        return None
    kind = RunnerKind(table.kind)
    if kind is RunnerKind.SLIDES:
        return Runners(kind=kind, stuff=None, width_nm=Nm(0), kickers=False)
    thickness, width = usual_runner(kind, rails.thickness if rails else stuff.thickness_nm, shared.unit)
    usual = Stuff(material=stuff.material, thickness_nm=thickness)
    return Runners(
        kind=kind,
        stuff=stuff_of(table.material, table.thickness, usual),
        width_nm=width if table.width is None else table.width,
        kickers=kind is RunnerKind.WOOD and table.kickers is not False,
    )


# --- what closes it -----------------------------------------------------------------------------------------


def _back(table: BackTable | None, carcase: Stuff, shared: Shared) -> Back | None:
    if table is None:
        return None
    stuff = Stuff(material=table.material, thickness_nm=table.thickness)
    rabbet = shared.depth(table.rabbet_depth, "rabbet_depth", carcase.thickness_nm)
    play = shared.length(table.play, "play")
    if table.made == "frame and panel":
        return PanelledBack(made=panelled_of(table, stuff, shared), rabbet_depth_nm=rabbet, play_nm=play)
    if table.made == "panel":
        return BackPanel(stuff=stuff, rabbet_depth_nm=rabbet, play_nm=play)
    return BoardedBack(
        stuff=stuff,
        rabbet_depth_nm=rabbet,
        play_nm=play,
        board_nm=shared.length(table.board, "board"),
        lap_nm=shared.length(table.lap, "board_lap"),
        gap_nm=shared.length(table.gap, "gap"),
    )


def _base(table: CarcaseTable, stuff: Stuff, shared: Shared) -> Plinth | Stand | None:
    if table.base is None:
        return None
    inside, back = table.sizes == "inside", table.back.thickness if table.back else 0
    width = table.width + (2 * table.thickness if inside else 0)
    depth = table.depth + (back if inside else 0)
    return base_of(table.base, table.mark, stuff, (Nm(width), Nm(depth)), shared)


def _top(table: SeparateTopTable | None, stuff: Stuff, shared: Shared) -> SeparateTop | None:
    if table is None:
        return None
    return SeparateTop(
        stuff=stuff_of(table.material, table.thickness, stuff),
        front_nm=shared.length(table.front, "top_over"),
        sides_nm=shared.length(table.sides, "top_over"),
        back_nm=table.back or Nm(0),
    )


def _hanging_rail(table: HangingRailTable | None, stuff: Stuff, shared: Shared) -> HangingRail | None:
    if table is None:
        return None
    return HangingRail(
        stuff=stuff_of(table.material, table.thickness, stuff), width_nm=shared.length(table.width, "hanging_rail")
    )
