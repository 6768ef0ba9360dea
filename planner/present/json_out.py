"""A plan as plain data for other programs: every list a person sees, keys in snake_case, lengths as millimetres.

The keys of boards, joints and sled are fixed, so that others can check them; more may be added beside them.
"""

from __future__ import annotations

from typing import Any

from planner.domain.operation import Operation, Work
from planner.domain.plan import (
    BoardSize,
    Feature,
    Finding,
    Joint,
    OpeningSize,
    Plan,
    PracticeJoint,
)
from planner.domain.tail import TailEnd, TailSetting
from planner.domain.words import Surface
from planner.lengths import Span, mm
from planner.present.json_sled import sled_plan_json
from planner.present.views.cut_list import MEASURES, cut_sizes

Json = dict[str, Any]


def boards_json(plan: Plan) -> list[Json]:
    """Every board at its finished size, with its labels."""
    return [_board(plan, board) for board in plan.boards]


def _board(plan: Plan, board: BoardSize) -> Json:
    return {
        "mark": board.mark,
        "box": board.box,
        "role": board.role.value,
        "length_mm": mm(board.length_nm),
        "width_mm": mm(board.width_nm),
        "thickness_mm": mm(board.thickness_nm),
        "material": board.material,
        "labels": _labels(plan, board.mark),
    }


def _labels(plan: Plan, board: str) -> dict[str, str]:
    return {surface.value: plan.labels[board].on(surface) for surface in Surface}


def labels_json(plan: Plan) -> list[Json]:
    """What to write on the six surfaces of every board."""
    return [{"mark": board.mark, "labels": _labels(plan, board.mark)} for board in plan.boards]


def cut_list_json(plan: Plan) -> list[Json]:
    """One entry for each size to cut; ``amount`` is in the measure that is named beside it, waste not included."""
    unit = plan.project.unit
    return [
        {
            "quantity": len(size.marks),
            "length_mm": mm(size.length_nm),
            "width_mm": mm(size.width_nm),
            "thickness_mm": mm(size.thickness_nm),
            "material": size.material,
            "kind": size.kind.value,
            "marks": list(size.marks),
            "amount": float(size.amount(unit)),
            "measure": MEASURES[unit, size.kind].heading.lower(),
        }
        for size in cut_sizes(plan)
    ]


def hardware_json(plan: Plan) -> list[Json]:
    """What is to be bought besides wood."""
    return [
        {
            "what": each.kind.value,
            "quantity": each.count,
            "sizes_mm": {name.replace(" ", "_"): mm(length) for name, length in each.sizes},
            "use": each.use,
            "for": list(each.marks),
        }
        for each in plan.hardware
    ]


def sawn_json(plan: Plan) -> list[Json]:
    """What boards become when a closed box is sawn open, planed flush and to the line."""
    return [
        {
            "mark": part.mark,
            "board": part.board,
            "of_lid": part.of_lid,
            "length_mm": mm(part.length_nm),
            "width_mm": mm(part.width_nm),
            "thickness_mm": mm(part.thickness_nm),
        }
        for part in plan.sawn
    ]


def joints_json(plan: Plan) -> list[Json]:
    """Every corner joint; places are on the outside face of the pin board, from the reference edge."""
    return [_joint(joint) for joint in plan.joints]


def _joint(joint: Joint) -> Json:
    return {
        "joint": joint.mark,
        "kind": joint.kind.value,
        "pin_board": joint.pin_board,
        "pin_end": joint.pin_end.value,
        "tail_board": joint.tail_board,
        "tail_end": joint.tail_end.value,
        "width_mm": mm(joint.width_nm),
        "pin_thickness_mm": mm(joint.pin_thickness_nm),
        "tail_thickness_mm": mm(joint.tail_thickness_nm),
        "slope": float(joint.slope),
        "bit_height_mm": mm(joint.bit_height_nm),
        "tail_baseline_mm": mm(joint.tail_baseline_nm),
        "lap_mm": mm(joint.lap_nm),
        "tail_from_mm": mm(joint.tail_from_nm),
        "tail_width_mm": mm(joint.tail_width_nm),
        "sled": joint.sled,
        "pins_mm": [_span(span) for span in joint.pins],
        "tails_mm": [_span(span) for span in joint.tails],
    }


def _span(span: Span) -> list[float]:
    return [mm(place) for place in span]


def sled_json(plan: Plan) -> Json:
    """Sled cuts in shop order, and what the grouping saves."""
    return sled_plan_json(plan.sled)


def tails_json(plan: Plan) -> list[Json]:
    """Set-ups of the bandsaw, and the ends sawn at each; places are from the left, inside face up and end away."""
    return [
        {
            "setting": at.number,
            "slope": float(at.slope),
            "thickness_mm": mm(at.thickness_nm),
            "leans": at.leans.value,
            "throat_mm": mm(at.throat_nm),
            "ends": [_tail_end(at, end) for end in at.ends],
        }
        for at in plan.tails
    ]


def _tail_end(at: TailSetting, end: TailEnd) -> Json:
    return {
        "board": end.board,
        "end": end.end.value,
        "joint": end.joint,
        "trace_from": end.trace_from,
        "trace_from_end": end.trace_from_end.value,
        "baseline_mm": mm(end.baseline_nm),
        "reference_edge": end.reference_edge.value,
        "straight_cuts": end.straight_cuts,
        "square_cuts_mm": [mm(place) for place in end.square_cuts_nm],
        "throat_mm": mm(end.throat_nm),
        "cuts": [
            {"at_end_mm": mm(cut.at_end_nm), "at_baseline_mm": mm(cut.at_baseline_nm), "waste": cut.waste.value}
            for cut in at.cuts(end)
        ],
    }


def practice_json(plan: Plan) -> list[Json]:
    """Practice joints, in the order of the sled's settings; pins on end B, marks from the operator's left."""
    return [_practice(each) for each in plan.practice]


def _practice(each: PracticeJoint) -> Json:
    return {
        **_joint(each.joint),
        "bit_height_mm": mm(each.bit_height_nm),
        "length_mm": mm(each.length_nm),
        "stands_for": list(each.stands_for),
        "passes": [
            {"fence": fence.value, "socket": one.socket, "mark_mm": mm(one.mark_nm)}
            for fence, passes in ((each.first_fence, each.first), (each.first_fence.other, each.second))
            for one in passes
        ],
    }


def order_json(plan: Plan) -> list[Json]:
    """The order of operations.

    ``after`` names the operations that must be finished before, ``cuts`` the places in the list of cuts, from 0, of
    those that are made.
    """
    operations = {operation.mark: operation for operation in plan.operations}
    return [_work(work, operations) for work in plan.order]


def _work(work: Work, operations: dict[str, Operation]) -> Json:
    return {
        "number": work.number,
        "machine": work.machine.value,
        "task": work.task,
        "setting": work.setting.words,
        "lengths_mm": {name.lower().replace(" ", "_"): mm(length) for name, length in work.setting.lengths},
        "chapter": work.chapter.value,
        "clamps": work.clamps,
        "hands": work.hands,
        "estimate_s": work.estimate_s,
        "operations": [_operation(operations[mark]) for mark in work.operations],
        "cautions": list(work.cautions),
    }


def _operation(operation: Operation) -> Json:
    return {
        "mark": operation.mark,
        "subject": operation.subject,
        "box": operation.box,
        "boards": list(operation.boards),
        "cuts": list(operation.cuts),
        "after": list(operation.after),
    }


def cuts_json(plan: Plan) -> list[Json]:
    """Grooves, rabbets and housings: along the board from end A, across it from the reference edge."""
    return [_feature(feature) for feature in plan.features]


def _feature(feature: Feature) -> Json:
    return {
        "board": feature.board,
        "kind": feature.kind.value,
        "face": feature.face.value,
        "from_end_a_mm": _span(feature.x),
        "from_reference_edge_mm": _span(feature.u),
        "from_outside_face_mm": _span(feature.y),
        "depth_mm": mm(feature.depth_nm),
        "takes": feature.takes,
        "held": feature.held.value,
    }


def openings_json(plan: Plan) -> list[Json]:
    """The clear openings of every carcase, and the drawer in each."""
    return [_opening(opening) for opening in plan.openings]


def _opening(opening: OpeningSize) -> Json:
    return {
        "carcase": opening.carcase,
        "opening": opening.mark,
        "drawer": opening.drawer,
        "width_mm": mm(opening.width_nm),
        "height_mm": mm(opening.height_nm),
        "depth_mm": mm(opening.depth_nm),
    }


def weights_json(plan: Plan) -> list[Json]:
    """What each part of known weight weighs, and where it balances."""
    return [
        {
            "mark": each.mark,
            "part": each.part.value,
            "piece": each.piece,
            "kg": round(each.kg, 3),
            "filled_kg": round(each.filled_kg, 3),
            "centre_mm": [mm(place) for place in each.centre],
        }
        for each in plan.weights.of
    ]


def checks_json(plan: Plan) -> list[Json]:
    """What the checks found, the gravest first."""
    return [finding_json(finding) for finding in plan.findings]


def finding_json(finding: Finding) -> Json:
    """One finding."""
    return {
        "code": finding.code,
        "level": finding.level.value,
        "marks": list(finding.marks),
        "text": finding.text,
        "remedy": finding.remedy,
        "source": finding.source,
        "acknowledged": finding.acknowledged,
    }


def plan_json(plan: Plan) -> Json:
    """The whole plan."""
    return {
        "project": _project(plan),
        "cut_list": cut_list_json(plan),
        "hardware": hardware_json(plan),
        "boards": boards_json(plan),
        "sawn": sawn_json(plan),
        "openings": openings_json(plan),
        "joints": joints_json(plan),
        "practice": practice_json(plan),
        "sled": sled_json(plan),
        "tails": tails_json(plan),
        "cuts": cuts_json(plan),
        "order": order_json(plan),
        "weights": weights_json(plan),
        "checks": checks_json(plan),
    }


def _project(plan: Plan) -> Json:
    project = plan.project
    return {
        "name": project.name,
        "units": project.unit.value,
        "show": project.grid.value,
        "proud_mm": mm(project.proud_nm),
        "height_tolerance_mm": mm(project.height_tolerance_nm),
    }
