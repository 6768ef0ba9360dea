"""A drawer as a table of a file, all keys that are not usual; what drawers share is found out later."""

from __future__ import annotations

from planner.domain.bottom import BottomPanel, Slips
from planner.domain.drawer import AppliedFront, Drawer, DrawerStops, Handles
from planner.domain.ring import Ring, Stuff
from planner.domain.words import BottomGoes, JointKind, Role, RunnerKind, Stands
from planner.intake.said import Said
from planner.intake.sharing import Table
from planner.intake.usual import grooved, usual_length, usual_side_clearance
from planner.intake.write_made import bottom_table
from planner.lengths import Nm


def drawer_table(drawer: Drawer, runners: RunnerKind | None, said: Said) -> Table:
    """All that is to be said of a drawer that runs on these."""
    ring = drawer.ring
    front, side, back = (ring.board(role).stuff for role in (Role.FRONT, Role.RIGHT, Role.BACK))
    clearance = usual_side_clearance(runners, said.unit)
    return {
        "material": side.material,
        **({} if front.material == side.material else {"front_material": front.material}),
        "front_thickness": said.length(front.thickness_nm),
        "side_thickness": said.length(side.thickness_nm),
        "back_thickness": said.length(back.thickness_nm),
        **said.but("side_clearance", drawer.side_clearance_nm, clearance),
        **said.unusual("top_clearance", drawer.top_clearance_nm),
        **said.unusual("back_clearance", drawer.back_clearance_nm),
        **said.but("back_lower", drawer.back_lower_nm, Nm(0)),
        **said.ring(ring),
        **_half_blind(ring, said),
        **({"bottom": _bottom(drawer.bottom, ring, said)} if drawer.bottom else {}),
        **({"applied_front": _applied_front(drawer.applied_front, said)} if drawer.applied_front else {}),
        **({"handles": _handles(drawer.handles, said)} if drawer.handles else {}),
        **({"stops": _stops(drawer.stops, side, said)} if drawer.stops else {}),
    }


def _half_blind(ring: Ring, said: Said) -> Table:
    front, lap = ring.corners[0].kind, ring.corners[0].lap_nm
    if front is not JointKind.HALF_BLIND or lap is None:
        return {}
    return {"front_joint": "half-blind", **said.unusual("lap", lap)}


def _bottom(bottom: BottomPanel, ring: Ring, said: Said) -> Table:
    slips = bottom.slips
    front, side, back = (ring.board(role).stuff for role in (Role.FRONT, Role.RIGHT, Role.BACK))
    thinnest = grooved(
        front.thickness_nm,
        side.thickness_nm,
        back.thickness_nm,
        bottom.goes,
        slips.stuff.thickness_nm if slips else None,
    )
    return {
        **bottom_table(bottom, "up", thinnest, said),
        **({} if bottom.goes is BottomGoes.ALL_ROUND else {"goes": str(bottom.goes)}),
        **said.but("screw_slot", bottom.screw_slot_nm, None),
        **({"slips": _slips(slips, side, said)} if slips else {}),
    }


def _slips(slips: Slips, side: Stuff, said: Said) -> Table:
    """Height and thickness always stand here, so that drawers that all have usual slips have something to share."""
    return {
        **({} if slips.stuff.material == side.material else {"material": slips.stuff.material}),
        "thickness": said.length(slips.stuff.thickness_nm),
        "height": said.length(slips.height_nm),
    }


def _applied_front(front: AppliedFront, said: Said) -> Table:
    overlay = front.stands is Stands.OVERLAY
    return {
        **said.stuff(front.stuff),
        **({"stands": str(front.stands)} if overlay else {}),
        **said.but("gap", front.gap_nm, Nm(0) if overlay else usual_length("gap", said.unit)),
        **said.but("overlay", front.overlay_nm, usual_length("overlay", said.unit) if overlay else Nm(0)),
    }


def _handles(handles: Handles, said: Said) -> Table:
    """Counts always stand here, for the same reason."""
    pull = handles.holes > 1
    return {
        "count": handles.count,
        "holes": handles.holes,
        **said.but("apart", handles.apart_nm, usual_length("apart", said.unit) if pull else Nm(0)),
        **said.unusual("hole", handles.hole_nm),
    }


def _stops(stops: DrawerStops, side: Stuff, said: Said) -> Table:
    """Sizes always stand here, for the same reason."""
    return {
        **({} if stops.stuff.material == side.material else {"material": stops.stuff.material}),
        "thickness": said.length(stops.stuff.thickness_nm),
        "length": said.length(stops.length_nm),
        "width": said.length(stops.width_nm),
    }
