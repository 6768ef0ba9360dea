"""What changed from one plan to another: boards, stock, sled settings, operations and findings."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Hashable, Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import TypeAlias, TypeVar

from planner.domain.changes import Changes, Compared, SettingChange, Shift, StockChange, Wood
from planner.domain.plan import BoardSize, Feature, Finding, Joint, Pass, Plan, SledSetting
from planner.domain.words import End, Level, MaterialKind, Side
from planner.lengths import Nm

T = TypeVar("T")
Key = TypeVar("Key", bound=Hashable)
_Rule: TypeAlias = tuple[str, Level, tuple[str, ...], int]
_Stuff: TypeAlias = tuple[MaterialKind, str, Nm]
_Figures: TypeAlias = tuple[str, Fraction, Nm, Nm, Side]
_Ends: TypeAlias = dict[tuple[str, End], tuple[Pass, ...]]


def what_changed(before: Plan, after: Plan) -> Changes:
    """Everything that differs; two plans of the same project differ in nothing."""
    return Changes(
        project=Shift(before=before.project, after=after.project),
        boards=_compared(_boards(before), _boards(after), _as_cut),
        joints_anew=tuple(_otherwise(_joints(before), _joints(after))),
        cuts_anew=tuple(_otherwise(_cuts(before), _cuts(after))),
        stock=tuple(_stock(before, after)),
        settings=tuple(_settings(before.sled.settings, after.sled.settings)),
        tally=Shift(before=before.sled.tally, after=after.sled.tally),
        operations=Shift(before=len(before.operations), after=len(after.operations)),
        findings=_compared(_findings(before), _findings(after), _itself),
    )


def _boards(plan: Plan) -> dict[str, BoardSize]:
    return {board.mark: board for board in plan.boards}


def _compared(before: Mapping[Key, T], after: Mapping[Key, T], told: Callable[[T], object]) -> Compared[T]:
    return Compared(
        new=tuple(each for key, each in after.items() if key not in before),
        gone=tuple(each for key, each in before.items() if key not in after),
        changed=tuple(Shift(before=before[key], after=after[key]) for key in _otherwise(before, after, told)),
    )


def _itself(thing: object) -> object:
    return thing


def _as_cut(board: BoardSize) -> object:
    """What a board is cut to and belongs to: one that only stands elsewhere in the piece is the same at the bench."""
    sizes = board.length_nm, board.width_nm, board.thickness_nm
    return board.box, board.role, board.material, sizes


def _otherwise(before: Mapping[Key, T], after: Mapping[Key, T], told: Callable[[T], object] = _itself) -> Iterator[Key]:
    """What stands in both and means something else."""
    return (key for key, meant in after.items() if key in before and told(before[key]) != told(meant))


def _joints(plan: Plan) -> dict[str, Joint]:
    """Joints by mark, whatever the sled they are cut on is called."""
    return {joint.mark: replace(joint, sled="") for joint in plan.joints}


def _cuts(plan: Plan) -> dict[str, frozenset[Feature]]:
    """Grooves, rabbets and housings by board, boards without any included."""
    cuts: dict[str, set[Feature]] = {board.mark: set() for board in plan.boards}
    for feature in plan.features:
        cuts[feature.board].add(feature)
    return {mark: frozenset(found) for mark, found in cuts.items()}


def _findings(plan: Plan) -> dict[_Rule, Finding]:
    """Findings by what they are about; where one rule finds several things about the same marks, they are counted."""
    times: Counter[tuple[str, Level, tuple[str, ...]]] = Counter()
    found: dict[_Rule, Finding] = {}
    for finding in plan.findings:
        about = finding.code, finding.level, finding.marks
        times[about] += 1
        found[*about, times[about]] = finding
    return found


# --- stock --------------------------------------------------------------------------------------------------


def _stock(before: Plan, after: Plan) -> Iterator[StockChange]:
    """Solid timber first, then by name, the thickest first."""
    was, now = _wood(before), _wood(after)
    for stuff in sorted(was.keys() | now.keys(), key=_in_order):
        kind, material, thickness = stuff
        one, other = was.get(stuff, Wood()), now.get(stuff, Wood())
        if one != other:
            yield StockChange(material=material, kind=kind, thickness_nm=thickness, before=one, after=other)


def _in_order(stuff: _Stuff) -> tuple[int, str, int]:
    kind, material, thickness = stuff
    return list(MaterialKind).index(kind), material, -thickness


def _wood(plan: Plan) -> dict[_Stuff, Wood]:
    kinds = {material.name: material.kind for material in plan.project.materials}
    found: dict[_Stuff, Wood] = {}
    for board in plan.boards:
        stuff = kinds[board.material], board.material, board.thickness_nm
        found[stuff] = _with(found.get(stuff, Wood()), board)
    return found


def _with(wood: Wood, board: BoardSize) -> Wood:
    area = board.length_nm * board.width_nm
    return Wood(
        boards=wood.boards + 1,
        length_nm=wood.length_nm + board.length_nm,
        area_nm2=wood.area_nm2 + area,
        volume_nm3=wood.volume_nm3 + area * board.thickness_nm,
    )


# --- sled settings ------------------------------------------------------------------------------------------


def _settings(before: Sequence[SledSetting], after: Sequence[SledSetting]) -> Iterator[SettingChange]:
    was, now = _ends(before), _ends(after)
    for figures in dict.fromkeys((*now, *was)):
        one, other = was.get(figures, {}), now.get(figures, {})
        if one != other:
            sled, slope, bit, height, fence = figures
            yield SettingChange(
                sled=sled,
                slope=slope,
                bit_nm=bit,
                bit_height_nm=height,
                fence=fence,
                before=len(one),
                after=len(other),
            )


def _ends(settings: Sequence[SledSetting]) -> dict[_Figures, _Ends]:
    """Board ends and their marks by the figures of the setting; one that is come back to is one."""
    found: dict[_Figures, _Ends] = {}
    for at in settings:
        ends = found.setdefault((at.sled, at.slope, at.bit_nm, at.bit_height_nm, at.fence), {})
        ends |= {(cut.board, cut.end): cut.passes for cut in at.cuts}
    return found
