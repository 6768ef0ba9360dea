"""Cut every pin end by following the sled sheet to the letter, and look at what is left."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from math import hypot

import pytest

from planner.domain.plan import EndCut, Joint, Plan, SledPlan, SledSetting
from planner.domain.words import End, JointKind
from tests.oracle.sled_polygons import EndGrain, what_stays

MM = 1_000_000
LAID_BY_END = {"right": "A", "left": "B"}
"""How ``what_stays`` calls a board whose reference edge is at this side of the operator."""


def cut_by_the_sheet(plan: Plan) -> int:
    """Assert that each end keeps its pins and is left with the residue reported; returns how many ends were cut."""
    return cut_all_by_the_sheet(plan.sled, {plan.project.name: plan.joints})


def cut_all_by_the_sheet(sled: SledPlan, joints: Mapping[str, Sequence[Joint]]) -> int:
    """The same for the joints of several projects, by name."""
    visits: dict[tuple[str, str, End], list[tuple[SledSetting, EndCut]]] = defaultdict(list)
    for setting in sled.settings:
        for cut in setting.cuts:
            visits[cut.project, cut.board, cut.end].append((setting, cut))
    wanted = {
        (project, joint.pin_board, joint.pin_end): joint
        for project, its_joints in joints.items()
        for joint in its_joints
        if joint.kind is JointKind.THROUGH_DOVETAIL
    }
    assert visits.keys() == wanted.keys()
    for end, seen in visits.items():
        _cut_end(wanted[end], seen)
    return len(visits)


def _cut_end(joint: Joint, seen: Sequence[tuple[SledSetting, EndCut]]) -> None:
    where = f"{joint.pin_board} end {joint.pin_end}"
    grain = EndGrain(
        width=joint.width_nm / MM,
        thickness=joint.pin_thickness_nm / MM,
        slope=float(joint.slope),
        bit=seen[0][0].bit_nm / MM,
        pins=[(a / MM, b / MM) for a, b in joint.pins],
    )
    assert grain.bit * hypot(1, 1 / grain.slope) > grain.bit
    assert {setting.fence.value for setting, _ in seen} == {"left", "right"}
    sides = {cut.reference_edge.value for _, cut in seen}
    assert sides == {side_of_the_reference_edge(joint.pin_end)}, where
    passes = [(setting.fence.value, p.mark_nm / MM) for setting, cut in seen for p in cut.passes]
    spoilt, left = what_stays(grain, LAID_BY_END[sides.pop()], passes)
    assert spoilt == pytest.approx(0, abs=1e-6), f"{where}: {spoilt} mm² of pins cut away"
    assert left == pytest.approx(seen[0][1].residue_mm2, abs=1e-6), where


def side_of_the_reference_edge(end_down: End) -> str:
    """Where the reference edge comes when a board stands on this end, outside face to the operator.

    In the board's own axes (along from A to B, across from the reference edge, out of the outside face), which are
    right-handed, upwards is along when end A is down. Someone who looks at the outside face has to his right what
    upwards × out gives.
    """
    upwards = (1 if end_down is End.A else -1, 0, 0)
    out = (0, 0, 1)
    across_to_the_right = upwards[2] * out[0] - upwards[0] * out[2]
    return "left" if across_to_the_right > 0 else "right"
