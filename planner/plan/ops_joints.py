"""Corner joints: pins at the sled or by hand, tails traced from their own pins, each joint tried.

Cuts at the sled and at the bandsaw come in the order of their sheets.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from planner.derive.passes import NEGLIGIBLE_MM2
from planner.domain.marks import end_mark
from planner.domain.operation import Chapter, Setting
from planner.domain.plan import EndCut, Joint, SledSetting
from planner.domain.rates import Rates
from planner.domain.tail import TailSetting
from planner.lengths import Nm
from planner.plan import tasks
from planner.plan.bench import Job
from planner.plan.build import Build
from planner.plan.tasks import Task


def joints(build: Build) -> Iterator[Job]:
    """All work on corner joints."""
    corners = {joint.mark: _Corner(build, joint) for joint in build.facts.joints}
    tried = {joint: each.joint.mark for each in build.facts.practice for joint in each.stands_for}
    yield from _practice(build, corners)
    settings, rates = build.facts.sled.settings, build.facts.project.rates
    for before, at in zip((None, *settings), settings, strict=False):
        change_s = _change_s(before, at, rates)
        for cut in at.cuts:
            yield corners[cut.joint].at_the_sled(at, cut, tried[cut.joint], change_s)
            change_s = 0
    for tail_setting in build.facts.tails:
        for end in tail_setting.ends:
            yield corners[end.joint].at_the_bandsaw(tail_setting, len(tail_setting.cuts(end)))
    residue = {cut.joint: cut.residue_mm2 for at in build.facts.sled.settings for cut in at.cuts}
    heights = {cut.joint: at.bit_height_nm for at in build.facts.sled.settings for cut in at.cuts}
    shoulders = {end.joint: end for at in build.facts.tails for end in at.ends}
    for mark, corner in corners.items():
        yield from corner.pins_by_hand() if mark not in heights else corner.pins(heights[mark], residue[mark])
        end = shoulders[mark]
        yield from corner.tails(end.shoulder_cuts + len(end.square_cuts_nm))


def _practice(build: Build, corners: Mapping[str, _Corner]) -> Iterator[Job]:
    """The practice joints, each made where its height is set first."""
    for each in build.facts.practice:
        at = next(at for at in build.facts.sled.settings if any(cut.joint == each.stands_for[0] for cut in at.cuts))
        mark = each.joint.mark
        chapters = [corners[joint].chapter for joint in each.stands_for]
        yield Job(
            task=tasks.PRACTICE,
            subject=mark,
            box=corners[each.stands_for[0]].joint.box,
            chapter=min(chapters, key=list(Chapter).index),
            setting=_sled(at),
            touches=(mark,),
        )


def _sled(at: SledSetting) -> Setting:
    words = f"setting {at.number:02d}: sled {at.sled}, {at.fence} fence"
    return Setting(words, (("bit height", at.bit_height_nm),))


def _change_s(before: SledSetting | None, at: SledSetting, rates: Rates) -> int:
    """Seconds from one setting of the sled to the next; the first is set up anew."""
    if before is None or before.sled != at.sled:
        return rates.sled_change_s
    height = rates.height_change_s if before.bit_height_nm != at.bit_height_nm else 0
    return height + (rates.fence_swap_s if before.fence is not at.fence else 0)


@dataclass(frozen=True, slots=True)
class _Corner:
    """The work on one joint."""

    build: Build
    joint: Joint

    @property
    def chapter(self) -> Chapter:
        """When it is made."""
        return self.build.chapter(self.joint.pin_board)

    @property
    def pin(self) -> str:
        """Mark of the end with the pins."""
        return end_mark(self.joint.pin_board, self.joint.pin_end)

    @property
    def tail(self) -> str:
        """Mark of the end with the tails."""
        return end_mark(self.joint.tail_board, self.joint.tail_end)

    def job(self, task: Task, ends: tuple[str, ...], *, setting: Setting | None = None, count: int = 1) -> Job:
        """Work on one end, or on both, and then on the joint."""
        boards = {self.pin: self.joint.pin_board, self.tail: self.joint.tail_board}
        return Job(
            task=task,
            subject=ends[0] if len(ends) == 1 else self.joint.mark,
            box=self.joint.box,
            chapter=self.chapter,
            setting=setting or Setting(),
            boards=tuple(boards[end] for end in ends),
            touches=ends,
            whole=False,
            count=count,
        )

    def at_the_sled(self, at: SledSetting, cut: EndCut, practice: str, change_s: int) -> Job:
        """What the pin end gets at one fence, ``change_s`` seconds from the setting before included."""
        rates = self.build.facts.project.rates
        seconds = change_s + rates.handling_s + rates.pass_s * len(cut.passes)
        job = self.job(tasks.PINS, (self.pin,), setting=_sled(at), count=len(cut.passes))
        return replace(job, at=f"{at.fence} fence", touches=(self.pin, practice), estimate_s=seconds)

    def at_the_bandsaw(self, at: TailSetting, cuts: int) -> Job:
        """What the tail end gets at one set-up."""
        return replace(self.job(tasks.SAW, (self.tail,), setting=at.setting, count=cuts), at=f"{at.leans} lean")

    def pins(self, bit_height: Nm, residue_mm2: float) -> Iterator[Job]:
        """What the pin end of a through dovetail gets beside the sled's cuts."""
        yield self.job(tasks.GAUGE, (self.pin,), setting=_gauge(bit_height))
        yield self.job(tasks.LAY_OUT, (self.pin,), count=len(self.joint.pins))
        if residue_mm2 > NEGLIGIBLE_MM2:
            yield self.job(tasks.CHISEL, (self.pin,), count=len(self.joint.tails))

    def pins_by_hand(self) -> Iterator[Job]:
        """The pin end of a half-blind dovetail, which no sled can cut."""
        yield self.job(tasks.GAUGE, (self.pin,), setting=_gauge(self.joint.bit_height_nm))
        yield self.job(tasks.LAP, (self.pin,), setting=_gauge(self.joint.socket_depth_nm))
        yield self.job(tasks.LAY_OUT_BLIND, (self.pin,), count=len(self.joint.pins))
        yield self.job(tasks.CHOP, (self.pin,), count=len(self.joint.tails))

    def tails(self, shoulder_cuts: int) -> Iterator[Job]:
        """The tail end, traced from its own pins, and the joint tried."""
        both = (self.pin, self.tail)
        yield self.job(tasks.GAUGE, (self.tail,), setting=_gauge(self.joint.tail_baseline_nm))
        yield self.job(tasks.TRACE, both)
        yield self.job(tasks.SHOULDERS, (self.tail,), count=shoulder_cuts)
        yield self.job(tasks.FIT, both, count=len(self.joint.tails))


def _gauge(length: Nm) -> Setting:
    return Setting("", (("gauge", length),))
