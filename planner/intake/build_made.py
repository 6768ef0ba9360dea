"""From the tables of a file to how things are made: slabs, frames with panels, bottoms."""

from __future__ import annotations

from typing import TYPE_CHECKING

from planner.domain.bottom import BottomPanel, Slips
from planner.domain.panelled import Made, Panelled, Slab
from planner.domain.ring import Stuff
from planner.intake.shared import Shared, stuff_of
from planner.intake.usual import usual_tenon

if TYPE_CHECKING:
    from planner.intake.file_drawer import DrawerBottomTable, SlipsTable
    from planner.intake.file_made import BottomTable, MadeTable, PanelTable, TopPanelTable
    from planner.lengths import Nm


def made_of(table: MadeTable, usual: Stuff, shared: Shared) -> Made:
    """A door or a lid as its table says; its stuff is usually that of what it belongs to."""
    if table.made == "frame and panel":
        return panelled_of(table, usual, shared)
    return Slab(stuff=stuff_of(table.material, table.thickness, usual))


def panelled_of(table: MadeTable, usual: Stuff, shared: Shared) -> Panelled:
    """A frame with panels as its table says."""
    stuff = stuff_of(table.material, table.thickness, usual)
    stile = shared.length(table.stile, "stile")
    groove = shared.length(table.groove_depth, "panel_groove")
    panel, play = _panel(table.panel, stuff, shared)
    return Panelled(
        stuff=stuff,
        stile_nm=stile,
        rail_nm=shared.length(table.rail, "stile"),
        groove_nm=groove,
        tenon_nm=usual_tenon(stile, groove, shared.unit) if table.tenon is None else table.tenon,
        panel=panel,
        play_nm=play,
        wide=table.wide or 1,
        high=table.high or 1,
    )


def _panel(table: PanelTable | None, frame: Stuff, shared: Shared) -> tuple[Stuff, Nm]:
    usual = Stuff(material=frame.material, thickness_nm=shared.length(None, "panel"))
    if table is None:
        return usual, shared.length(None, "play")
    return stuff_of(table.material, table.thickness, usual), shared.length(table.play, "play")


def bottom_of(
    table: BottomTable | DrawerBottomTable | TopPanelTable, up: Nm | None, thinnest: Nm, shared: Shared
) -> BottomPanel:
    """A bottom, or the panel at the top of a box, in grooves on all four sides."""
    return BottomPanel(
        stuff=Stuff(material=table.material, thickness_nm=table.thickness),
        groove_depth_nm=shared.depth(table.groove_depth, "groove_depth", thinnest),
        up_nm=up,
        play_nm=shared.length(table.play, "play"),
    )


def slips_of(table: SlipsTable | None, side: Stuff, shared: Shared) -> Slips | None:
    """Slips as their table says."""
    if table is None:
        return None
    usual = Stuff(material=side.material, thickness_nm=shared.length(None, "slip"))
    return Slips(
        stuff=stuff_of(table.material, table.thickness, usual), height_nm=shared.length(table.height, "slip_height")
    )
