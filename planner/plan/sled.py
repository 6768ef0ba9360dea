"""Sled cuts grouped by setting, of one project or of several that are batched, in the order that changes least."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import groupby

from planner.derive.frame import from_left, reference_edge_side
from planner.domain.plan import EndCut, Pass, SledPlan, SledSetting
from planner.domain.words import Side
from planner.lengths import Nm
from planner.plan.sled_ends import Batch, EndToCut, ends_to_cut, sled_names
from planner.plan.sled_order import Step, Visit, grouped, joint_by_joint
from planner.plan.sled_tally import tally


def sled_plan(batch: Batch) -> SledPlan:
    """All sled cuts of a batch in shop order, and what cutting joint by joint would take instead.

    Times are by the rates of the first project.
    """
    ends = ends_to_cut(batch)
    names = sled_names(ends)
    rates = batch[0][0].rates
    steps = tuple(grouped(ends))
    at_each = groupby(steps, key=lambda step: step.visit)
    return SledPlan(
        projects=tuple(project.name for project, _ in batch),
        settings=tuple(
            _setting(number, names[visit.sled], visit, there) for number, (visit, there) in enumerate(at_each, 1)
        ),
        tally=tally(steps, rates),
        joint_by_joint=tally(joint_by_joint(ends), rates),
    )


def _setting(number: int, name: str, visit: Visit, steps: Iterable[Step]) -> SledSetting:
    return SledSetting(
        number=number,
        sled=name,
        slope=visit.sled.slope,
        bit_nm=visit.sled.bit_nm,
        bit_height_nm=visit.height_nm,
        fence=visit.fence,
        cuts=tuple(_end_cut(step) for step in steps),
    )


def _end_cut(step: Step) -> EndCut:
    joint = step.end.joint
    return EndCut(
        project=step.end.project,
        joint=joint.mark,
        board=joint.pin_board,
        end=joint.pin_end,
        reference_edge=reference_edge_side(joint.pin_end),
        width_nm=joint.width_nm,
        thickness_nm=joint.pin_thickness_nm,
        passes=tuple(passes_at(step.end, step.visit.fence, at_first=step.at_first)),
        residue_mm2=sum(socket.residue_mm2 for socket in step.end.sockets),
    )


def passes_at(end: EndToCut, fence: Side, *, at_first: bool) -> Iterable[Pass]:
    """What one end gets at one fence; sockets are counted, and places measured, from the operator's left.

    The passes of a socket go from left to right. A bit in a table turns anticlockwise seen from above, and the sled is
    drawn towards the operator; so the bit's right side holds it back, its left side pulls it along. Going to the right,
    a further pass finds wood on its right side only.
    """
    joint = end.joint
    seen = sorted(
        (*sorted(from_left(place, joint.width_nm, joint.pin_end) for place in span), index)
        for index, span in enumerate(joint.tails)
    )
    for number, (left, right, index) in enumerate(seen, 1):
        socket = end.sockets[index]
        shifts = socket.first if at_first else socket.second
        marks = sorted(right - shift if fence is Side.RIGHT else left + shift for shift in shifts)
        yield from (Pass(socket=number, mark_nm=Nm(mark)) for mark in marks)
