"""How things are made, as tables of a file: slabs, frames with panels, bottoms."""

from __future__ import annotations

from planner.domain.bottom import BottomPanel
from planner.domain.panelled import Made, Panelled
from planner.domain.ring import Stuff
from planner.intake.said import Said
from planner.intake.sharing import Table, if_any
from planner.intake.usual import usual_length, usual_tenon
from planner.lengths import Nm

SLAB, FRAME = "slab", "frame and panel"


def made_table(made: Made, usual: Stuff, usually: str, said: Said) -> Table:
    """A door or a lid, which is usually made in the way told and of the stuff told."""
    word = FRAME if isinstance(made, Panelled) else SLAB
    return {
        **({} if word == usually else {"made": word}),
        **said.stuff(made.stuff, usual),
        **(frame_table(made, said) if isinstance(made, Panelled) else {}),
    }


def frame_table(made: Panelled, said: Said) -> Table:
    """What a frame with panels has over and above its stuff."""
    usual_panel = Stuff(material=made.stuff.material, thickness_nm=usual_length("panel", said.unit))
    panel = {**said.stuff(made.panel, usual_panel), **said.unusual("play", made.play_nm)}
    return {
        **said.unusual("stile", made.stile_nm),
        **said.unusual("rail", made.rail_nm, "stile"),
        **said.unusual("groove_depth", made.groove_nm, "panel_groove"),
        **said.but("tenon", made.tenon_nm, usual_tenon(made.stile_nm, made.groove_nm, said.unit)),
        **({} if made.wide == 1 else {"wide": made.wide}),
        **({} if made.high == 1 else {"high": made.high}),
        **if_any("panel", panel),
    }


def bottom_table(bottom: BottomPanel, up: str, thinnest: Nm, said: Said) -> Table:
    """A bottom, or the panel at the top of a box; ``up`` is what its place is called."""
    return {
        **said.stuff(bottom.stuff),
        **said.unusual_depth("groove_depth", bottom.groove_depth_nm, thinnest),
        **said.but(up, bottom.up_nm, None),
        **said.unusual("play", bottom.play_nm),
    }
