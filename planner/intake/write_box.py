"""A box, or a batch of boxes, as a table of a file."""

from __future__ import annotations

from collections.abc import Sequence

from planner.domain.box import Box, HingedLid, SawnLid, Till
from planner.domain.ring import Stuff
from planner.domain.words import SizesOver
from planner.intake.said import Said
from planner.intake.sharing import Table
from planner.intake.usual import usual_length
from planner.intake.write_made import SLAB, bottom_table, made_table
from planner.lengths import Nm


def batch_table(boxes: Sequence[Box], said: Said) -> Table:
    """The boxes of one batch, which are alike."""
    box = boxes[0]
    stuff = box.ring.boards[0].stuff
    return {
        "mark": box.batch,
        **({"title": box.title} if box.title else {}),
        **({"count": len(boxes)} if len(boxes) > 1 else {}),
        **({} if box.sizes_over is SizesOver.OUTSIDE else {"sizes": str(box.sizes_over)}),
        "length": said.length(box.length_nm),
        "width": said.length(box.width_nm),
        "height": said.length(box.height_nm),
        "material": stuff.material,
        "thickness": said.length(stuff.thickness_nm),
        **said.ring(box.ring),
        **({"bottom": bottom_table(box.bottom, "up", stuff.thickness_nm, said)} if box.bottom else {}),
        **({"lid": _lid(box.lid, stuff, said)} if box.lid else {}),
        **({"till": _till(box.till, stuff, said)} if box.till else {}),
    }


def _lid(lid: HingedLid | SawnLid, box: Stuff, said: Said) -> Table:
    if isinstance(lid, SawnLid):
        return {
            "kind": "sawn",
            "height": said.length(lid.height_nm),
            **said.unusual("kerf", lid.kerf_nm),
            "top": bottom_table(lid.top, "down", box.thickness_nm, said),
        }
    return {
        "kind": "hinged",
        **made_table(lid.made, box, SLAB, said),
        **said.unusual("front", lid.front_nm, "lid_over"),
        **said.unusual("sides", lid.sides_nm, "lid_over"),
        **said.but("back", lid.back_nm, Nm(0)),
    }


def _till(till: Till, box: Stuff, said: Said) -> Table:
    usual = Stuff(material=box.material, thickness_nm=usual_length("till", said.unit))
    return {
        "width": said.length(till.width_nm),
        "depth": said.length(till.depth_nm),
        **said.stuff(till.stuff, usual),
        **said.unusual_depth("housing_depth", till.housing_depth_nm, box.thickness_nm),
        **({} if till.lid is None else {"lid": said.stuff(till.lid, till.stuff)}),
    }
