"""Practice joints: one for each way of cutting that the sled sheet holds.

A way of cutting is a sled, a bit height, and the thicknesses of the two boards. The practice joint has two tails as
wide as those of the first real joint of its kind, so each fence, each wall and a whole pin are tried.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from planner.derive.pins import between
from planner.derive.tails import tail_end
from planner.domain.plan import Joint, PracticeJoint, SledPlan
from planner.domain.project import Project
from planner.domain.words import End, JointKind
from planner.lengths import Grid, Nm, Span, Unit
from planner.plan.sled import passes_at
from planner.plan.sled_ends import ends_to_cut

LEAST_LENGTH_NM = {Unit.INCH: Nm(Grid.IN_64.step_nm * 64 * 12), Unit.MM: Nm(Grid.MM_TENTH.step_nm * 3000)}
"""12 in, 300 mm: a shorter piece can't be clamped to the fence with hands clear. Common practice, no source."""


def practice_joints(project: Project, joints: Iterable[Joint], sled: SledPlan) -> tuple[PracticeJoint, ...]:
    """One practice joint for each way of cutting, in the order of the sled's settings."""
    heights = {cut.joint: (setting.number, setting) for setting in reversed(sled.settings) for cut in setting.cuts}
    alike: dict[tuple[int, Nm, Nm], list[Joint]] = {}
    for joint in joints:
        if joint.kind is JointKind.THROUGH_DOVETAIL:
            way = (heights[joint.mark][0], joint.pin_thickness_nm, joint.tail_thickness_nm)
            alike.setdefault(way, []).append(joint)
    return tuple(
        _practice(project, alike[way], heights[alike[way][0].mark][1].bit_height_nm, sled, way[0])
        for way in sorted(alike)
    )


def _practice(project: Project, joints: list[Joint], height: Nm, sled: SledPlan, setting: int) -> PracticeJoint:
    real, mark = joints[0], f"practice-{joints[0].mark}"
    pins = _two_tails(real)
    joint = replace(
        real,
        mark=mark,
        box=mark,
        pin_board=f"{mark}-pins",
        pin_end=End.B,
        tail_board=f"{mark}-tails",
        tail_end=End.A,
        width_nm=pins[-1][1],
        pins=pins,
        tails=between(pins),
    )
    first_fence = next(s.fence for s in sled.settings if s.number == setting)
    (end,) = ends_to_cut([(project, [joint])])
    return PracticeJoint(
        joint=joint,
        bit_height_nm=height,
        first_fence=first_fence,
        first=tuple(passes_at(end, first_fence, at_first=True)),
        second=tuple(passes_at(end, first_fence.other, at_first=False)),
        tails=tail_end(joint),
        length_nm=LEAST_LENGTH_NM[project.unit],
        stands_for=tuple(j.mark for j in joints),
    )


def _two_tails(joint: Joint) -> tuple[Span, ...]:
    """A half-pin, a tail, a pin, a tail and a half-pin, each as wide as the first of its kind in a real joint."""
    half, tail = joint.pins[0][1], Nm(joint.tails[0][1] - joint.tails[0][0])
    whole = joint.pins[1] if len(joint.pins) > 2 else joint.pins[0]  # noqa: PLR2004 - two half-pins
    pin = Nm(whole[1] - whole[0])
    return (
        (Nm(0), half),
        (Nm(half + tail), Nm(half + tail + pin)),
        (Nm(half + 2 * tail + pin), Nm(2 * half + 2 * tail + pin)),
    )
