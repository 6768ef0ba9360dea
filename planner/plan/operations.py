"""Every operation of a build, and what each must wait for.

What must come before what is said once, here: a board is cut to size before it is labelled, labelled before anything is
done to one of its ends; a joint's tails wait for its pins; a groove waits for the joints of its board, since pins and
tails show where it must stop; nothing is glued before everything inside it is cut and tried; a drawer is fitted to its
opening only once the carcase stands.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from planner.derive.frame import DOWN, LIES, RIGHT, UP
from planner.derive.passes import NEGLIGIBLE_MM2
from planner.domain.carcase import Carcase
from planner.domain.marks import board_mark, end_mark, reading_order
from planner.domain.operation import Operation, Setting, Work
from planner.domain.plan import BoardSize, Feature, Joint, PracticeJoint, SledPlan
from planner.domain.project import Project
from planner.domain.ring import Ring
from planner.domain.tail import TailSetting
from planner.domain.words import FeatureKind, MaterialKind, RingKind, Role, Side
from planner.lengths import Nm
from planner.plan import tasks
from planner.plan.cautions import cautions
from planner.plan.order import in_order
from planner.plan.tasks import STAGE, TAKEN_UP_WITH, Task

_CUT_TASK = {FeatureKind.GROOVE: tasks.GROOVE, FeatureKind.RABBET: tasks.RABBET, FeatureKind.HOUSING: tasks.HOUSING}


@dataclass(frozen=True, slots=True)
class Facts:
    """What the operations are made from."""

    project: Project
    boards: Mapping[str, BoardSize]
    joints: Sequence[Joint]
    features: Sequence[Feature]
    sled: SledPlan
    tails: Sequence[TailSetting]
    practice: Sequence[PracticeJoint]


@dataclass(slots=True)
class _Bench:
    """Operations as they are gathered, and which of them each board, end or box has been through."""

    found: dict[str, Operation] = field(default_factory=dict)

    def add(self, task: Task, subject: str, after: Iterable[str], setting: Setting | None = None) -> str:
        operation = Operation(
            mark=f"{task.word} {subject}",
            task=task.does,
            machine=task.machine,
            setting=setting or Setting(),
            subject=subject,
            after=tuple(sorted(after)),
        )
        self.found[operation.mark] = operation
        return operation.mark


def operations(facts: Facts) -> tuple[Operation, ...]:
    """All operations of a project."""
    bench = _Bench()
    labelled = {board.mark: _cut_to_size(bench, facts.project, board) for board in facts.boards.values()}
    fitted = _joints(bench, facts, labelled)
    ready = _features(bench, facts, labelled, fitted)
    _assemble(bench, facts, ready)
    return tuple(bench.found.values())


def order_of_work(found: Sequence[Operation]) -> tuple[Work, ...]:
    """The operations in shop order, one run of work for each visit to a setting."""
    runs = in_order(found, _usual_place)
    return tuple(
        Work(
            number=number,
            task=run.key[2],
            machine=run.key[0],
            setting=run.key[1],
            operations=tuple(operation.mark for operation in run.operations),
            cautions=cautions(run.key[0]),
        )
        for number, run in enumerate(runs, 1)
    )


def _usual_place(operation: Operation) -> tuple[int, Setting, int, tuple[tuple[str, int], ...]]:
    stage = STAGE[TAKEN_UP_WITH.get(operation.task, operation.task)]
    return stage, operation.setting, STAGE[operation.task], reading_order(operation.subject)


def _cut_to_size(bench: _Bench, project: Project, board: BoardSize) -> str:
    solid = project.material(board.material).kind is MaterialKind.SOLID
    thickness = Setting("", (("thickness", board.thickness_nm),))
    planed = [bench.add(tasks.PLANE, board.mark, (), thickness)] if solid else []
    ripped = bench.add(tasks.RIP, board.mark, planed, Setting("", (("width", board.width_nm),)))
    cut = bench.add(tasks.CROSSCUT, board.mark, [ripped], Setting("", (("length", board.length_nm),)))
    return bench.add(tasks.LABEL, board.mark, [cut])


def _joints(bench: _Bench, facts: Facts, labelled: Mapping[str, str]) -> dict[str, list[str]]:
    """Operations of every joint; returns, for each board, those that finish its ends."""
    sled = _at_the_sled(facts.sled)
    tried = _practice(bench, facts.practice, sled)
    at_saw: dict[str, list[TailSetting]] = {}
    for setting in facts.tails:
        for end in setting.ends:
            at_saw.setdefault(end.joint, []).append(setting)
    fitted: dict[str, list[str]] = {}
    for joint in facts.joints:
        tail = end_mark(joint.tail_board, joint.tail_end)
        on_sled = sled.get(joint.mark)
        pins = (
            _blind_pins(bench, joint, labelled)
            if on_sled is None
            else _pins(bench, joint, on_sled, labelled, tried[joint.mark])
        )
        gauge = Setting("", (("gauge", joint.tail_baseline_nm),))
        gauged = bench.add(tasks.GAUGE, tail, [labelled[joint.tail_board]], gauge)
        traced = bench.add(tasks.TRACE, joint.mark, [*pins, gauged])
        sawn = [bench.add(tasks.SAW, f"{tail} {at.leans} lean", [traced], at.setting) for at in at_saw[joint.mark]]
        shouldered = bench.add(tasks.SHOULDERS, tail, sawn)
        done = bench.add(tasks.FIT, joint.mark, [shouldered])
        for board in (joint.pin_board, joint.tail_board):
            fitted.setdefault(board, []).append(done)
    return fitted


@dataclass(frozen=True, slots=True)
class _OnSled:
    """What a pin end meets at the sled: its visits by fence, the height set there, and what stays for the chisel."""

    visits: tuple[tuple[Side, Setting], ...]
    bit_height_nm: Nm
    residue_mm2: float


def _at_the_sled(plan: SledPlan) -> dict[str, _OnSled]:
    found: dict[str, _OnSled] = {}
    for s in plan.settings:
        setting = Setting(f"setting {s.number:02d}: sled {s.sled}, {s.fence} fence", (("bit height", s.bit_height_nm),))
        for cut in s.cuts:
            before = found[cut.joint].visits if cut.joint in found else ()
            found[cut.joint] = _OnSled((*before, (s.fence, setting)), s.bit_height_nm, cut.residue_mm2)
    return found


def _practice(bench: _Bench, practice: Iterable[PracticeJoint], sled: Mapping[str, _OnSled]) -> dict[str, str]:
    """The practice joints, made where their height is set first; returns, for each real joint, the one it waits for."""
    tried: dict[str, str] = {}
    for each in practice:
        _, setting = sled[each.stands_for[0]].visits[0]
        mark = bench.add(tasks.PRACTICE, each.joint.mark, (), setting)
        tried |= dict.fromkeys(each.stands_for, mark)
    return tried


def _pins(bench: _Bench, joint: Joint, on_sled: _OnSled, labelled: Mapping[str, str], tried: str) -> list[str]:
    """Pins of a through dovetail, cut on the sled; returns what finishes them."""
    end = end_mark(joint.pin_board, joint.pin_end)
    gauge = Setting("", (("gauge", on_sled.bit_height_nm),))
    gauged = bench.add(tasks.GAUGE, end, [labelled[joint.pin_board]], gauge)
    laid_out = bench.add(tasks.LAY_OUT, end, [gauged])
    ready = [laid_out, tried]
    pins = [bench.add(tasks.PINS, f"{end} {fence} fence", ready, setting) for fence, setting in on_sled.visits]
    return [bench.add(tasks.CHISEL, end, pins)] if on_sled.residue_mm2 > NEGLIGIBLE_MM2 else pins


def _blind_pins(bench: _Bench, joint: Joint, labelled: Mapping[str, str]) -> list[str]:
    """Pins of a half-blind dovetail, cut by hand; returns what finishes them."""
    end, label = end_mark(joint.pin_board, joint.pin_end), labelled[joint.pin_board]
    gauged = bench.add(tasks.GAUGE, end, [label], Setting("", (("gauge", joint.bit_height_nm),)))
    lap = bench.add(tasks.LAP, end, [label], Setting("", (("gauge", joint.socket_depth_nm),)))
    laid_out = bench.add(tasks.LAY_OUT_BLIND, end, [gauged, lap])
    return [bench.add(tasks.CHOP, end, [laid_out])]


def _features(
    bench: _Bench, facts: Facts, labelled: Mapping[str, str], fitted: Mapping[str, list[str]]
) -> dict[str, list[str]]:
    """Grooves, rabbets and housings; returns, for each board, all that must be done before it is put together."""
    ready = {mark: [label, *fitted.get(mark, [])] for mark, label in labelled.items()}
    cut: dict[str, list[str]] = {}
    for feature in facts.features:
        task = _CUT_TASK[feature.kind]
        setting = _cut_setting(feature, facts.boards[feature.board])
        mark = bench.add(task, f"{feature.board} for {feature.takes}", ready[feature.board], setting)
        cut.setdefault(feature.board, []).append(mark)
    return {mark: [*before, *cut.get(mark, [])] for mark, before in ready.items()}


def _cut_setting(feature: Feature, board: BoardSize) -> Setting:
    """Width and depth of a cut, and its place: a housing's from the top or left end, so that both sides share it."""
    width = feature.x if feature.kind is FeatureKind.HOUSING else feature.u
    place: tuple[tuple[str, Nm], ...] = ()
    if feature.kind is FeatureKind.GROOVE:
        place = (("fence to cut", feature.u[0]),)
    if feature.kind is FeatureKind.HOUSING:
        towards_b = LIES[RingKind.CARCASE][board.role].along
        from_a = towards_b in (DOWN, RIGHT)
        end = "top" if towards_b in (DOWN, UP) else "left"
        place = ((f"{end} end to cut", feature.x[0] if from_a else Nm(board.length_nm - feature.x[1])),)
    return Setting("", (("width of cut", Nm(width[1] - width[0])), ("depth", feature.depth_nm), *place))


def _assemble(bench: _Bench, facts: Facts, ready: Mapping[str, list[str]]) -> None:
    project = facts.project
    for ring, bottom in ((box.ring, box.bottom) for box in project.boxes):
        inside = [board_mark(ring.mark, Role.BOTTOM_PANEL)] if bottom else []
        bench.add(tasks.FINISH, ring.mark, [_put_together(bench, ring, inside, ready)])
    for carcase in project.carcases:
        _assemble_carcase(bench, carcase, facts.boards, ready)


def _assemble_carcase(
    bench: _Bench, carcase: Carcase, boards: Mapping[str, BoardSize], ready: Mapping[str, list[str]]
) -> None:
    ring = carcase.ring
    inside = {role: [b.mark for b in boards.values() if b.box == ring.mark and b.role is role] for role in Role}
    stands = _put_together(bench, ring, inside[Role.PARTITION], ready)
    if inside[Role.RAIL]:
        stands = bench.add(tasks.RAILS, ring.mark, [stands, *_all_of(ready, inside[Role.RAIL])])
    hung = []
    for column in carcase.columns:
        for drawer in (opening.drawer for opening in column.openings):
            panel = [board_mark(drawer.ring.mark, Role.BOTTOM_PANEL)] if drawer.bottom else []
            made = _put_together(bench, drawer.ring, panel, ready)
            fitted = bench.add(tasks.HANG, drawer.ring.mark, [made, stands])
            if drawer.applied_front:
                before = ready[board_mark(drawer.ring.mark, Role.APPLIED_FRONT)]
                fitted = bench.add(tasks.FACE, drawer.ring.mark, [fitted, *before])
            hung.append(fitted)
    last = hung
    if inside[Role.BACK_PANEL]:
        last = [bench.add(tasks.BACK, ring.mark, [*hung, *_all_of(ready, inside[Role.BACK_PANEL])])]
    bench.add(tasks.FINISH, ring.mark, last)


def _put_together(bench: _Bench, ring: Ring, inside: Sequence[str], ready: Mapping[str, list[str]]) -> str:
    """Dry fit, sand, glue and flush one ring with what is caught in it; returns the last operation."""
    parts = [*(board.mark for board in ring.boards), *inside]
    dry = bench.add(tasks.DRY, ring.mark, _all_of(ready, parts))
    sanded = bench.add(tasks.SAND, ring.mark, [dry])
    glued = bench.add(tasks.GLUE, ring.mark, [sanded])
    return bench.add(tasks.FLUSH, ring.mark, [glued])


def _all_of(ready: Mapping[str, list[str]], boards: Iterable[str]) -> list[str]:
    return [before for board in boards for before in ready[board]]
