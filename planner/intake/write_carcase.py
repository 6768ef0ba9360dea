"""A carcase as a table of a file."""

from __future__ import annotations

from planner.domain.carcase import (
    Back,
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
from planner.domain.marks import plinth_mark
from planner.domain.ring import Stuff
from planner.domain.words import DividerJoint, PinPair, RunnerKind, SizesOver
from planner.intake.said import Said, is_rabbeted
from planner.intake.sharing import Table, differences, if_any, shared_part
from planner.intake.usual import TENONS, usual_depth, usual_divider, usual_length, usual_runner
from planner.intake.write_drawer import drawer_table
from planner.intake.write_made import FRAME, frame_table
from planner.intake.write_space import SpaceWriter
from planner.intake.write_use import use_said
from planner.lengths import Nm


def carcase_table(carcase: Carcase, columns_before: int, said: Said) -> Table:
    """A carcase that stands after so many columns of others."""
    stuff = carcase.ring.boards[0].stuff
    spaces = SpaceWriter(stuff, usual_divider(carcase.rails, carcase.frames, carcase.shelves), said)
    return {
        "mark": carcase.ring.mark,
        **({"title": carcase.title} if carcase.title else {}),
        **({} if carcase.sizes_over is SizesOver.OUTSIDE else {"sizes": str(carcase.sizes_over)}),
        "width": said.length(carcase.width_nm),
        "height": said.length(carcase.height_nm),
        "depth": said.length(carcase.depth_nm),
        "material": stuff.material,
        "thickness": said.length(stuff.thickness_nm),
        **_corners(carcase, stuff, said),
        **({"back": _back(carcase.back, stuff, said)} if carcase.back else {}),
        **({"rails": _rails(carcase.rails, stuff, said)} if carcase.rails else {}),
        **({"partitions": _dividers(carcase.partitions, stuff, said)} if carcase.partitions else {}),
        **({"shelves": _dividers(carcase.shelves, stuff, said)} if carcase.shelves else {}),
        **({"frames": _frames(carcase.frames, stuff, said)} if carcase.frames else {}),
        **({"runners": _runners(carcase.runners, carcase.rails, stuff, said)} if carcase.runners else {}),
        **({"base": _base(carcase.base, carcase.ring.mark, stuff, said)} if carcase.base else {}),
        **({"top": _top(carcase.top, stuff, said)} if carcase.top else {}),
        **({"hanging_rail": _hanging_rail(carcase.hanging_rail, stuff, said)} if carcase.hanging_rail else {}),
        **use_said(carcase.use),
        **spaces.doors(carcase.inside.doors),
        **spaces.columns(carcase.inside, columns_before),
        **_drawers(carcase, said),
    }


def _corners(carcase: Carcase, stuff: Stuff, said: Said) -> Table:
    ring = carcase.ring
    lap = ring.corners[0].lap_nm
    if not is_rabbeted(ring) or lap is None:
        return said.ring(ring)
    on_sides = ring.pin_pair is PinPair.FIRST_AND_THIRD
    return {
        "corners": "rabbet",
        **said.unusual_depth("lap", lap, stuff.thickness_nm, "corner_lap"),
        **({} if on_sides else {"rabbets_on": "top and bottom"}),
    }


def _drawers(carcase: Carcase, said: Said) -> Table:
    runners = carcase.runners.kind if carcase.runners else None
    drawers = {drawer.ring.mark: drawer_table(drawer, runners, said) for drawer in carcase.drawers()}
    if not drawers:
        return {}
    shared = shared_part(list(drawers.values()))
    differing = {mark: differences(drawer, shared) for mark, drawer in drawers.items()}
    return {"drawer": shared, **if_any("except", {mark: changes for mark, changes in differing.items() if changes})}


# --- what divides it ----------------------------------------------------------------------------------------


def _rails(rails: Rails, usual: Stuff, said: Said) -> Table:
    return {
        **({} if rails.stuff.material == usual.material else {"material": rails.stuff.material}),
        "thickness": said.length(rails.stuff.thickness_nm),
        "width": said.length(rails.width_nm),
        **said.unusual_depth("housing_depth", rails.housing_depth_nm, usual.thickness_nm),
    }


def _dividers(dividers: Dividers, usual: Stuff, said: Said) -> Table:
    joint, unit = dividers.joint, said.unit
    tenons = joint is DividerJoint.THROUGH_TENONS
    stopped = joint is DividerJoint.STOPPED_HOUSING
    depth = Nm(0) if tenons else usual_depth("housing_depth", usual.thickness_nm, unit)
    return {
        **said.stuff(dividers.stuff, usual),
        **({} if joint is DividerJoint.HOUSING else {"joint": str(joint)}),
        **said.but("housing_depth", dividers.housing_depth_nm, depth),
        **said.but("stop", dividers.stop_nm, usual_length("stop", unit) if stopped else Nm(0)),
        **({} if dividers.tenons == (TENONS if tenons else 0) else {"tenons": dividers.tenons}),
    }


def _frames(frames: Frames, usual: Stuff, said: Said) -> Table:
    dust = frames.dust_panel
    return {
        **said.stuff(frames.stuff, usual),
        **said.unusual("rail", frames.rail_nm, "web_rail"),
        **said.unusual("runner", frames.runner_nm, "web_rail"),
        **said.unusual_depth("housing_depth", frames.housing_depth_nm, usual.thickness_nm),
        **said.unusual("groove_depth", frames.groove_nm, "web_groove"),
        **said.unusual("tenon", frames.tenon_nm, "web_tenon"),
        **said.unusual("play", frames.play_nm),
        **({} if dust is None else {"dust_panel": said.stuff(dust)}),
    }


def _runners(runners: Runners, rails: Rails | None, carcase: Stuff, said: Said) -> Table:
    kind = {} if runners.kind is RunnerKind.WOOD else {"kind": str(runners.kind)}
    if runners.stuff is None:
        return kind
    thick, width = usual_runner(runners.kind, (rails.stuff if rails else carcase).thickness_nm, said.unit)
    return {
        **kind,
        **said.stuff(runners.stuff, Stuff(material=carcase.material, thickness_nm=thick)),
        **said.but("width", runners.width_nm, width),
        **({} if runners.kickers is (runners.kind is RunnerKind.WOOD) else {"kickers": runners.kickers}),
    }


# --- what closes it -----------------------------------------------------------------------------------------


def _back(back: Back, carcase: Stuff, said: Said) -> Table:
    table = {
        **said.stuff(back.stuff),
        **said.unusual_depth("rabbet_depth", back.rabbet_depth_nm, carcase.thickness_nm),
        **said.unusual("play", back.play_nm),
    }
    if isinstance(back, PanelledBack):
        return {"made": FRAME, **table, **frame_table(back.made, said)}
    if isinstance(back, BoardedBack):
        return {
            "made": "boards",
            **table,
            **said.unusual("board", back.board_nm),
            **said.unusual("lap", back.lap_nm, "board_lap"),
            **said.unusual("gap", back.gap_nm),
        }
    return table


def _base(base: Plinth | Stand, carcase: str, stuff: Stuff, said: Said) -> Table:
    own = base.ring.boards[0].stuff if isinstance(base, Plinth) else base.apron
    return {
        "kind": "stand" if isinstance(base, Stand) else "plinth" if base.foot_nm is None else "bracket feet",
        "height": said.length(base.height_nm),
        **said.but("front", base.front_nm, Nm(0)),
        **said.but("sides", base.sides_nm, Nm(0)),
        **said.but("back", base.back_nm, Nm(0)),
        **said.stuff(own, stuff),
        **(_plinth(base, carcase, said) if isinstance(base, Plinth) else _stand(base, said)),
    }


def _plinth(plinth: Plinth, carcase: str, said: Said) -> Table:
    mark = plinth.ring.mark
    feet = {}
    if plinth.foot_nm is not None:
        feet = said.unusual("foot", plinth.foot_nm) | said.unusual_depth("rise", plinth.rise_nm, plinth.height_nm)
    return {**({} if mark == plinth_mark(carcase) else {"mark": mark}), **said.ring(plinth.ring), **feet}


def _stand(stand: Stand, said: Said) -> Table:
    leg = stand.leg
    return {
        **said.unusual("leg", leg.thickness_nm),
        **({} if leg.material == stand.apron.material else {"leg_material": leg.material}),
        **said.unusual("apron", stand.apron_nm),
        **said.unusual_depth("tenon", stand.tenon_nm, leg.thickness_nm),
        **said.unusual("setback", stand.setback_nm, "apron_setback"),
    }


def _top(top: SeparateTop, usual: Stuff, said: Said) -> Table:
    return {
        **said.stuff(top.stuff, usual),
        **said.unusual("front", top.front_nm, "top_over"),
        **said.unusual("sides", top.sides_nm, "top_over"),
        **said.but("back", top.back_nm, Nm(0)),
    }


def _hanging_rail(rail: HangingRail, usual: Stuff, said: Said) -> Table:
    return {**said.stuff(rail.stuff, usual), **said.unusual("width", rail.width_nm, "hanging_rail")}
