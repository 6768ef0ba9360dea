"""Sled cuts as plain data for other programs; see ``json_out``."""

from __future__ import annotations

from typing import Any

from planner.domain.plan import EndCut, SledPlan, SledSetting, SledTally
from planner.lengths import mm

Json = dict[str, Any]


def sled_plan_json(sled: SledPlan) -> Json:
    """Sled cuts of one project or several in shop order.

    ``mark_mm`` is the place of the slot's edge on the outside face, from the operator's left; ``residue_mm2`` is what
    stays on the whole end once both fences are done; ``estimate_s`` are seconds at the rates of the first project.
    """
    return {
        "projects": list(sled.projects),
        **_tally(sled.tally),
        "joint_by_joint_changes": sled.joint_by_joint.changes,
        "joint_by_joint": _tally(sled.joint_by_joint),
        "settings": [_sled_setting(setting) for setting in sled.settings],
    }


def _tally(tally: SledTally) -> Json:
    """Everything counted, but the settings, which are listed."""
    return {
        "changes": tally.changes,
        "sled_changes": tally.sled_changes,
        "height_changes": tally.height_changes,
        "fence_swaps": tally.fence_swaps,
        "handlings": tally.handlings,
        "turnings": tally.turnings,
        "passes": tally.passes,
        "estimate_s": tally.estimate_s,
    }


def _sled_setting(setting: SledSetting) -> Json:
    return {
        "setting": setting.number,
        "sled": setting.sled,
        "slope": float(setting.slope),
        "bit_mm": mm(setting.bit_nm),
        "bit_height_mm": mm(setting.bit_height_nm),
        "fence": setting.fence.value,
        "cuts": [_cut(cut) for cut in setting.cuts],
    }


def _cut(cut: EndCut) -> Json:
    return {
        "project": cut.project,
        "joint": cut.joint,
        "board": cut.board,
        "end": cut.end.value,
        "reference_edge": cut.reference_edge.value,
        "width_mm": mm(cut.width_nm),
        "thickness_mm": mm(cut.thickness_nm),
        "passes": [{"socket": one.socket, "mark_mm": mm(one.mark_nm)} for one in cut.passes],
        "residue_mm2": cut.residue_mm2,
    }
