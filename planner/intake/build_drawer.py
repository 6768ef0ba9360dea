"""From the tables of a file to a drawer."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from planner.domain.bottom import BottomPanel
from planner.domain.drawer import AppliedFront, Drawer, DrawerStops, Handles
from planner.domain.ring import Ring, Stuff, with_half_blind_front
from planner.domain.words import BottomGoes, PinPair, RingKind, Role, RunnerKind, Stands
from planner.intake.build_made import bottom_of, slips_of
from planner.intake.shared import Shared, stuff_of
from planner.intake.usual import grooved, usual_side_clearance
from planner.lengths import Nm

if TYPE_CHECKING:
    from planner.intake.file_drawer import (
        AppliedFrontTable,
        DrawerBottomTable,
        DrawerPart,
        DrawerStopsTable,
        DrawerTable,
        HandlesTable,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawerMaker:
    """Makes the drawers of a carcase.

    Attributes:
        table: how they are made.
        differing: the drawers that differ from the others, by mark.
        said: what is said of each of these alone.
        runners: what they run on, if the carcase says.
    """

    table: DrawerTable
    differing: Mapping[str, DrawerTable]
    said: Mapping[str, DrawerPart]
    runners: RunnerKind | None
    shared: Shared

    def drawer(self, mark: str) -> Drawer:
        """The drawer with this mark."""
        shared = self.shared
        table = self.differing.get(mark, self.table)
        ring = self._ring(mark, table)
        clearance = table.side_clearance
        return Drawer(
            ring=ring,
            side_clearance_nm=usual_side_clearance(self.runners, shared.unit) if clearance is None else clearance,
            top_clearance_nm=shared.length(table.top_clearance, "top_clearance"),
            back_clearance_nm=shared.length(table.back_clearance, "back_clearance"),
            back_lower_nm=table.back_lower or Nm(0),
            bottom=_bottom(table.bottom, ring, shared),
            applied_front=_applied_front(table.applied_front, shared),
            handles=_handles(table.handles, shared),
            stops=_stops(table.stops, table.material, shared),
        )

    def _ring(self, mark: str, table: DrawerTable) -> Ring:
        front = Stuff(material=table.front_material or table.material, thickness_nm=table.front_thickness)
        side = Stuff(material=table.material, thickness_nm=table.side_thickness)
        back = Stuff(material=table.material, thickness_nm=table.back_thickness)
        pin_pair = PinPair.SECOND_AND_FOURTH if table.pins_on == "sides" else PinPair.FIRST_AND_THIRD
        tables = [*([self.said[mark]] if mark in self.said else []), self.table]
        ring = self.shared.ring(mark, RingKind.UPRIGHT, (front, side, back, side), pin_pair, tables)
        if table.front_joint == "through":
            return ring
        return with_half_blind_front(ring, self.shared.length(table.lap, "lap"))


def _bottom(table: DrawerBottomTable | None, ring: Ring, shared: Shared) -> BottomPanel | None:
    if table is None:
        return None
    goes, slips = BottomGoes(table.goes), slips_of(table.slips, ring.board(Role.RIGHT).stuff, shared)
    front, side, back = (ring.board(role).stuff.thickness_nm for role in (Role.FRONT, Role.RIGHT, Role.BACK))
    thinnest = grooved(front, side, back, goes, slips.stuff.thickness_nm if slips else None)
    return replace(bottom_of(table, table.up, thinnest, shared), goes=goes, slips=slips, screw_slot_nm=table.screw_slot)


def _applied_front(table: AppliedFrontTable | None, shared: Shared) -> AppliedFront | None:
    if table is None:
        return None
    overlay = table.stands == "overlay"
    return AppliedFront(
        stuff=Stuff(material=table.material, thickness_nm=table.thickness),
        stands=Stands(table.stands),
        gap_nm=Nm(0) if overlay else shared.length(table.gap, "gap"),
        overlay_nm=shared.length(table.overlay, "overlay") if overlay else Nm(0),
    )


def _handles(table: HandlesTable | None, shared: Shared) -> Handles | None:
    if table is None:
        return None
    return Handles(
        count=table.count,
        holes=table.holes,
        apart_nm=shared.length(table.apart, "apart") if table.holes > 1 else Nm(0),
        hole_nm=shared.length(table.hole, "hole"),
    )


def _stops(table: DrawerStopsTable | None, material: str, shared: Shared) -> DrawerStops | None:
    if table is None:
        return None
    usual = Stuff(material=material, thickness_nm=shared.length(None, "stop_height"))
    return DrawerStops(
        stuff=stuff_of(table.material, table.thickness, usual),
        length_nm=shared.length(table.length, "stop_length"),
        width_nm=shared.length(table.width, "stop_width"),
    )
