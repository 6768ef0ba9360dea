"""Write a project as a file that reads back to exactly the same project.

The file is as short as it can be: what is usual is left out, what most rings share is said once for all of them, and
what differs is said where it differs. A key can be said over, but not unsaid; so a key that some drawers leave out is
never said for all drawers of a carcase.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields
from decimal import Decimal
from itertools import accumulate, groupby
from typing import Any

from planner.domain.box import BottomPanel, Box
from planner.domain.carcase import AppliedFront, BackPanel, Carcase, Column, Drawer, Partitions, Rails
from planner.domain.marks import drawer_mark
from planner.domain.material import Material
from planner.domain.project import Project, problems
from planner.domain.rates import USUAL_RATES, Rates
from planner.domain.ring import Ring
from planner.domain.sled import Sled
from planner.domain.words import HeightRule, JointKind, PinPair, RingKind, Role, SizesOver
from planner.errors import InputError, Problem
from planner.intake.project_file import read_project
from planner.intake.sharing import Table, commonest, differences, if_any, shared_part
from planner.intake.short_lists import with_short_lists
from planner.intake.slope import write_slope
from planner.intake.spacing import joints_table, pins_table, spelled_out, usual_pins
from planner.intake.usual import GRIDS, usual_depth, usual_length
from planner.intake.values import FORMAT
from planner.lengths import Nm, Unit, write_length


def write_project(project: Project) -> str:
    """The project as the text of a project file.

    Raises:
        InputError: no file describes just this project, as when the boxes of a batch are not alike.
    """
    import tomli_w

    wrong = problems(project)
    if wrong:
        raise InputError(wrong)
    text = with_short_lists(tomli_w.dumps(spelled_out(_file(project))))
    got = read_project(text, project.name)
    if got != project:
        raise InputError([_unwritable(project, got)])
    return text


def _unwritable(wanted: Project, got: Project) -> Problem:
    pairs = zip(wanted.boxes + wanted.carcases, got.boxes + got.carcases, strict=False)
    return Problem(
        where=next((part.ring.mark for part, other in pairs if part != other), wanted.name),
        what="can't be described by a project file.",
        remedy="Boxes of a batch must be alike and numbered from 1; boards and corners must be marked as is usual; "
        "only the front of a drawer can be half-blind, at both ends and without an applied front.",
    )


# --- what is said once --------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Said:
    """What the file says for all rings, so that a ring need only say what is different about it."""

    unit: Unit
    sled: str
    pins: Mapping[str, Any]
    only_column: bool

    def length(self, length: Nm) -> str:
        return write_length(length, self.unit)

    def unusual(self, key: str, length: Nm) -> Table:
        """The key and its length, unless that is the usual one."""
        return {} if length == usual_length(key, self.unit) else {key: self.length(length)}

    def unusual_depth(self, key: str, depth: Nm, thickness: Nm) -> Table:
        """The same for the depth of a cut in a board of this thickness."""
        return {} if depth == usual_depth(key, thickness, self.unit) else {key: self.length(depth)}

    def ring(self, ring: Ring) -> Table:
        """Sled, pin boards and pins of a ring."""
        sides = ring.pin_pair is PinPair.SECOND_AND_FOURTH
        leading = "top and bottom" if ring.kind is RingKind.CARCASE else "front and back"
        return {
            **({} if ring.sled == self.sled else {"sled": ring.sled}),
            "pins_on": "sides" if sides else leading,
            **if_any("pins", differences(pins_table(ring.spacing, self.unit), self.pins)),
            **if_any("joint", joints_table(ring, self.unit)),
        }


def _said(project: Project) -> _Said:
    rings = list(project.rings())
    return _Said(
        unit=project.unit,
        sled=commonest(ring.sled for ring in rings),
        pins=usual_pins(project.unit) | shared_part([pins_table(ring.spacing, project.unit) for ring in rings]),
        only_column=sum(len(carcase.columns) for carcase in project.carcases) == 1,
    )


# --- tables of the file -------------------------------------------------------------------------------------


def _file(project: Project) -> Table:
    said = _said(project)
    columns_before = accumulate((len(carcase.columns) for carcase in project.carcases), initial=0)
    batches = [list(boxes) for _, boxes in groupby(project.boxes, key=lambda box: box.batch)]
    return {
        "format": FORMAT,
        "project": _project(project, said),
        "material": {material.name: _material(material) for material in project.materials},
        "sled": {sled.name: _sled(sled, said) for sled in project.sleds},
        **if_any("pins", differences(said.pins, usual_pins(said.unit))),
        **if_any("rates", differences(_rates(project.rates), _rates(USUAL_RATES))),
        **if_any("box", [_batch(boxes, said) for boxes in batches]),
        **if_any("carcase", [_carcase(*each, said) for each in zip(project.carcases, columns_before, strict=False)]),
    }


def _project(project: Project, said: _Said) -> Table:
    return {
        "name": project.name,
        "units": str(project.unit),
        **({} if project.grid is GRIDS[project.unit] else {"show": str(project.grid)}),
        **said.unusual("proud", project.proud_nm),
        **said.unusual("height_tolerance", project.height_tolerance_nm),
        **({"sled": said.sled} if len(project.sleds) > 1 else {}),
    }


def _material(material: Material) -> Table:
    usual = Material(name=material.name)
    said = {"kind": material.kind, "hardness": material.hardness}
    return {key: str(value) for key, value in said.items() if value != getattr(usual, key)}


def _sled(sled: Sled, said: _Said) -> Table:
    return {
        "slope": write_slope(sled.run_micro),
        "bit": said.length(sled.bit_nm),
        "greatest_bit_height": said.length(sled.greatest_bit_height_nm),
        "greatest_width": said.length(sled.greatest_width_nm),
        "greatest_upright": said.length(sled.greatest_upright_nm),
        **_if_said("slot", sled.slot_nm, said),
        **_if_said("greatest_depth_soft", sled.greatest_depth_soft_nm, said),
        **_if_said("greatest_depth_hard", sled.greatest_depth_hard_nm, said),
    }


def _if_said(key: str, length: Nm | None, said: _Said) -> Table:
    return {} if length is None else {key: said.length(length)}


def _rates(rates: Rates) -> Table:
    return {field.name.removesuffix("_s"): getattr(rates, field.name) for field in fields(rates)}


def _bottom(bottom: BottomPanel | None, ring: Ring, said: _Said) -> Table:
    if bottom is None:
        return {}
    thinnest = min(board.stuff.thickness_nm for board in ring.boards)
    table = {
        "material": bottom.stuff.material,
        "thickness": said.length(bottom.stuff.thickness_nm),
        **said.unusual_depth("groove_depth", bottom.groove_depth_nm, thinnest),
        **_if_said("up", bottom.up_nm, said),
        **said.unusual("play", bottom.play_nm),
    }
    return {"bottom": table}


def _batch(boxes: Sequence[Box], said: _Said) -> Table:
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
        **_bottom(box.bottom, box.ring, said),
    }


# --- carcases -----------------------------------------------------------------------------------------------


def _carcase(carcase: Carcase, columns_before: int, said: _Said) -> Table:
    stuff = carcase.ring.boards[0].stuff
    columns = enumerate(carcase.columns, start=columns_before + 1)
    drawers = {o.drawer.ring.mark: _drawer(o.drawer, said) for column in carcase.columns for o in column.openings}
    shared = shared_part(list(drawers.values()))
    differing = {mark: differences(drawer, shared) for mark, drawer in drawers.items()}
    return {
        "mark": carcase.ring.mark,
        **({"title": carcase.title} if carcase.title else {}),
        "width": said.length(carcase.width_nm),
        "height": said.length(carcase.height_nm),
        "depth": said.length(carcase.depth_nm),
        "material": stuff.material,
        "thickness": said.length(stuff.thickness_nm),
        **said.ring(carcase.ring),
        **({"back": _back(carcase.back, stuff.thickness_nm, said)} if carcase.back else {}),
        **({"rails": _rails(carcase.rails, carcase, said)} if carcase.rails else {}),
        **({"partitions": _partitions(carcase.partitions, carcase, said)} if carcase.partitions else {}),
        "column": [_column(column, number, said) for number, column in columns],
        "drawer": shared,
        **if_any("except", {mark: changes for mark, changes in differing.items() if changes}),
    }


def _back(back: BackPanel, carcase_thickness: Nm, said: _Said) -> Table:
    return {
        "material": back.stuff.material,
        "thickness": said.length(back.stuff.thickness_nm),
        **said.unusual_depth("rabbet_depth", back.rabbet_depth_nm, carcase_thickness),
        **said.unusual("play", back.play_nm),
    }


def _rails(rails: Rails, carcase: Carcase, said: _Said) -> Table:
    usual = carcase.ring.boards[0].stuff
    return {
        **({} if rails.stuff.material == usual.material else {"material": rails.stuff.material}),
        "thickness": said.length(rails.stuff.thickness_nm),
        "width": said.length(rails.width_nm),
        **said.unusual_depth("housing_depth", rails.housing_depth_nm, usual.thickness_nm),
    }


def _partitions(partitions: Partitions, carcase: Carcase, said: _Said) -> Table:
    stuff, usual = partitions.stuff, carcase.ring.boards[0].stuff
    return {
        **({} if stuff.material == usual.material else {"material": stuff.material}),
        **({} if stuff.thickness_nm == usual.thickness_nm else {"thickness": said.length(stuff.thickness_nm)}),
        **said.unusual_depth("housing_depth", partitions.housing_depth_nm, usual.thickness_nm),
    }


def _column(column: Column, number: int, said: _Said) -> Table:
    tiers = range(1, len(column.openings) + 1)
    usual_marks = [drawer_mark(number, tier, only_column=said.only_column) for tier in tiers]
    marks = [opening.drawer.ring.mark for opening in column.openings]
    return {
        "drawers": len(column.openings),
        **_if_said("width", column.width_nm, said),
        **_heights(column, said),
        **({} if marks == usual_marks else {"marks": marks}),
    }


def _heights(column: Column, said: _Said) -> Table:
    if column.heights is HeightRule.EQUAL:
        return {}
    if column.heights is HeightRule.LISTED:
        heights = [opening.height_nm for opening in column.openings]
        return {"heights": ["rest" if height is None else said.length(height) for height in heights]}
    ratio, step = column.ratio, column.step_nm
    return {
        "heights": "graduated",
        **({} if ratio is None else {"ratio": Decimal(ratio.numerator) / ratio.denominator}),
        **_if_said("step", step, said),
    }


def _drawer(drawer: Drawer, said: _Said) -> Table:
    ring = drawer.ring
    front, side, back = (ring.board(role).stuff for role in (Role.FRONT, Role.RIGHT, Role.BACK))
    return {
        "material": side.material,
        **({} if front.material == side.material else {"front_material": front.material}),
        "front_thickness": said.length(front.thickness_nm),
        "side_thickness": said.length(side.thickness_nm),
        "back_thickness": said.length(back.thickness_nm),
        **said.unusual("side_clearance", drawer.side_clearance_nm),
        **said.unusual("top_clearance", drawer.top_clearance_nm),
        **said.unusual("back_clearance", drawer.back_clearance_nm),
        **said.ring(ring),
        **_half_blind(ring, said),
        **_bottom(drawer.bottom, ring, said),
        **({"applied_front": _applied_front(drawer.applied_front, said)} if drawer.applied_front else {}),
    }


def _half_blind(ring: Ring, said: _Said) -> Table:
    front, lap = ring.corners[0].kind, ring.corners[0].lap_nm
    if front is not JointKind.HALF_BLIND or lap is None:
        return {}
    return {"front_joint": "half-blind", **said.unusual("lap", lap)}


def _applied_front(front: AppliedFront, said: _Said) -> Table:
    return {
        "material": front.stuff.material,
        "thickness": said.length(front.stuff.thickness_nm),
        **said.unusual("gap", front.gap_nm),
    }
