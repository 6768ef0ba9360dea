"""Sled cuts grouped by setting, in the order that changes least.

All ends that share a sled and a bit height are cut at one fence, then all of them at the other. The next height begins
at the fence already in use, so H heights on one sled need H − 1 changes of height and H walks round to the other fence.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import pairwise

from planner.derive.frame import from_left, reference_edge_side
from planner.derive.passes import SocketCut, clear_socket
from planner.derive.slot import slot_of
from planner.domain.marks import reading_order
from planner.domain.plan import EndCut, Joint, Pass, SledPlan, SledSetting
from planner.domain.project import Project
from planner.domain.words import Side
from planner.lengths import Nm
from planner.plan.heights import shared_heights

FIRST_FENCE = Side.RIGHT

_Group = tuple[str, Nm]
"""A sled and the bit height to set on it."""


def sled_plan(project: Project, joints: Sequence[Joint]) -> SledPlan:
    """All sled cuts of a project in shop order."""
    height_to_set = _heights_to_set(joints, project.height_tolerance_nm)
    groups: dict[_Group, list[Joint]] = {}
    for joint in joints:
        groups.setdefault((joint.sled, height_to_set[joint.mark]), []).append(joint)
    sleds = {joint.sled: place for place, joint in reversed(list(enumerate(joints)))}
    visits = sorted(groups, key=lambda group: (sleds[group[0]], group[1]))

    settings: list[SledSetting] = []
    fence = FIRST_FENCE
    for group in visits:
        for at_first in (True, False):
            fence = fence if at_first else fence.other
            settings.append(_setting(project, len(settings) + 1, group, fence, groups[group], at_first=at_first))
    return SledPlan(
        settings=tuple(settings),
        sled_changes=sum(a[0] != b[0] for a, b in pairwise(visits)),
        height_changes=sum(a[0] == b[0] for a, b in pairwise(visits)),
        fence_swaps=len(visits),
        joint_by_joint_changes=joint_by_joint_changes([(joint.sled, height_to_set[joint.mark]) for joint in joints]),
    )


def joint_by_joint_changes(joints: Sequence[_Group]) -> int:
    """Changes of sled, height and fence when each joint is finished before the next.

    Counted kindly: every joint begins at the fence already in use, so it needs one walk round; a new sled comes with
    its height set. Heights that may share a setting count as equal here too.
    """
    return len(joints) + sum(a != b for a, b in pairwise(joints))


def _heights_to_set(joints: Iterable[Joint], tolerance: Nm) -> dict[str, Nm]:
    by_sled: dict[str, list[Joint]] = {}
    for joint in joints:
        by_sled.setdefault(joint.sled, []).append(joint)
    found: dict[str, Nm] = {}
    for on_sled in by_sled.values():
        shared = shared_heights((joint.bit_height_nm for joint in on_sled), tolerance)
        found |= {joint.mark: shared[joint.bit_height_nm] for joint in on_sled}
    return found


def _setting(
    project: Project, number: int, group: _Group, fence: Side, joints: Sequence[Joint], *, at_first: bool
) -> SledSetting:
    sled = project.sled(group[0])
    slot = slot_of(sled)
    known: dict[tuple[Nm, Nm], SocketCut] = {}

    def socket_cut(wide: Nm, thick: Nm) -> SocketCut:
        return known.setdefault((wide, thick), clear_socket(wide, thick, slot))

    return SledSetting(
        number=number,
        sled=sled.name,
        slope=sled.slope,
        bit_nm=sled.bit_nm,
        bit_height_nm=group[1],
        fence=fence,
        cuts=tuple(
            _end_cut(joint, fence, [socket_cut(Nm(b - a), joint.pin_thickness_nm) for a, b in joint.tails], at_first)
            for joint in sorted(joints, key=lambda j: (reading_order(j.pin_board), j.pin_end))
        ),
    )


def _end_cut(joint: Joint, fence: Side, sockets: Sequence[SocketCut], at_first: bool) -> EndCut:  # noqa: FBT001
    """What one end gets at one fence; sockets are counted, and places measured, from the operator's left."""
    seen = sorted(
        (*sorted(from_left(place, joint.width_nm, joint.pin_end) for place in span), index)
        for index, span in enumerate(joint.tails)
    )
    passes: list[Pass] = []
    for number, (left, right, index) in enumerate(seen, 1):
        shifts = sockets[index].first if at_first else sockets[index].second
        places = [right - shift for shift in shifts] if fence is Side.RIGHT else [left + shift for shift in shifts]
        passes += [Pass(socket=number, mark_nm=Nm(place)) for place in places]
    return EndCut(
        joint=joint.mark,
        board=joint.pin_board,
        end=joint.pin_end,
        reference_edge=reference_edge_side(joint.pin_end),
        width_nm=joint.width_nm,
        thickness_nm=joint.pin_thickness_nm,
        passes=tuple(passes),
        residue_mm2=sum(socket.residue_mm2 for socket in sockets),
    )


def ends_cut(plan: SledPlan) -> Mapping[str, tuple[int, ...]]:
    """Numbers of the settings that each joint's pin end goes through."""
    found: dict[str, tuple[int, ...]] = {}
    for setting in plan.settings:
        for cut in setting.cuts:
            found[cut.joint] = (*found.get(cut.joint, ()), setting.number)
    return found
