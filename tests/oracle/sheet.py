"""Cut every pin end of a plan by following its sled sheet to the letter, and look at what is left."""

from __future__ import annotations

from collections import defaultdict
from math import hypot

import pytest

from planner.domain.plan import EndCut, Plan, SledSetting
from planner.domain.words import End
from tests.oracle.sled_polygons import EndGrain, what_stays

MM = 1_000_000


def cut_by_the_sheet(plan: Plan) -> int:
    """Assert that each end keeps its pins and is left with the residue reported; returns how many ends were cut."""
    visits: dict[tuple[str, End], list[tuple[SledSetting, EndCut]]] = defaultdict(list)
    for setting in plan.sled.settings:
        for cut in setting.cuts:
            visits[cut.board, cut.end].append((setting, cut))
    wanted = {(joint.pin_board, joint.pin_end): joint for joint in plan.joints}
    assert visits.keys() == wanted.keys()
    for (board, end), seen in visits.items():
        joint = wanted[board, end]
        grain = EndGrain(
            width=joint.width_nm / MM,
            thickness=joint.pin_thickness_nm / MM,
            slope=float(joint.slope),
            bit=seen[0][0].bit_nm / MM,
            pins=[(a / MM, b / MM) for a, b in joint.pins],
        )
        assert grain.bit * hypot(1, 1 / grain.slope) > grain.bit
        passes = [(setting.fence.value, p.mark_nm / MM) for setting, cut in seen for p in cut.passes]
        spoilt, left = what_stays(grain, end.value, passes)
        assert spoilt == pytest.approx(0, abs=1e-6), f"{board} end {end}: {spoilt} mm² of pins cut away"
        assert left == pytest.approx(seen[0][1].residue_mm2, abs=1e-6), f"{board} end {end}"
        # The reference edge is on the operator's right with end A down, on the left with end B down.
        assert {cut.reference_edge.value for _, cut in seen} == {"right" if end is End.A else "left"}
    return len(visits)
