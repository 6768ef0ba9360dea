"""Rough sizes: how large each part is sawn out of rough wood, so that a board of the plan can be made of it.

A rough part is longer for trimming its ends, wider for jointing its edges, and cut from wood thick enough to be planed
on both faces. The usual allowances are common practice, no source; what planing leaves of a rough thickness stands in
``wood/lumber_sizes.csv``.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from planner.domain.plan import BoardSize, Plan, PracticeJoint
from planner.domain.project import Project
from planner.domain.stock import Allowances, Stock, allowances, usual_stock
from planner.domain.words import MaterialKind
from planner.lengths import Grid, Nm, Unit
from planner.wood.lumber import SoldSize, least_sold, planing

STEP_NM = {Unit.INCH: Grid.IN_16.step_nm, Unit.MM: Nm(Grid.MM_TENTH.step_nm * 10)}
"""Rough sizes are rounded up to a whole 1/16 in or 1 mm, so that parts nearly alike share a setting of the saw."""


class Use(StrEnum):
    """What a rough part is for."""

    BOARD = "board"
    STAVE = "stave"
    PRACTICE = "practice joint"
    SPARE = "set-up"


@dataclass(frozen=True, slots=True, kw_only=True)
class RoughPart:
    """One part to saw out.

    Attributes:
        mark: the board's, or one of its own.
        board: mark of the board that it is, or is a stave of; empty for a piece to try or set up with.
        finished: length, width and thickness of what it will be; of a stave, of the whole panel.
        sold: the size in which its timber is sold; None of a sheet, and of what is thicker than anything sold.
        least_nm: rough wood must be so thick at least, dressed wood as thick as finished.
        length_nm: rough.
        width_nm: rough.
        may_turn: whether it may lie across a sheet.
    """

    mark: str
    board: str
    use: Use
    material: str
    kind: MaterialKind
    finished: tuple[Nm, Nm, Nm]
    sold: SoldSize | None
    least_nm: Nm
    length_nm: Nm
    width_nm: Nm
    may_turn: bool


def stock_of(project: Project) -> Stock:
    """What the maker says of stock, or what is usual."""
    return project.stock or usual_stock(project.unit)


def rough_parts(plan: Plan) -> tuple[RoughPart, ...]:
    """Every part to saw out: the boards, then pieces for practice joints and for setting machines."""
    project = plan.project
    return (
        *(rough_board(project, board) for board in plan.boards),
        *(_practice_parts(plan) if stock_of(project).practice else ()),
        *_spares(plan),
    )


def rough_board(project: Project, board: BoardSize) -> RoughPart:
    """The part of which a board is made."""
    sizes = (board.length_nm, board.width_nm, board.thickness_nm)
    return _part(project, board.mark, Use.BOARD, board.material, sizes)


def allowances_of(project: Project, material: str) -> Allowances:
    """What holds for a material of a project."""
    return allowances(stock_of(project), project.material(material), project.unit)


def up_to_step(length: int, unit: Unit) -> Nm:
    """The next whole step."""
    step = STEP_NM[unit]
    return Nm(-(-length // step) * step)


def _part(project: Project, mark: str, use: Use, name: str, sizes: tuple[Nm, Nm, Nm]) -> RoughPart:
    length, width, thickness = sizes
    material, allowed = project.material(name), allowances_of(project, name)
    solid = material.kind is MaterialKind.SOLID
    to_plane = planing(allowed.sold_as, thickness) if allowed.thickness_nm is None else allowed.thickness_nm
    return RoughPart(
        mark=mark,
        board=mark if use is Use.BOARD else "",
        use=use,
        material=name,
        kind=material.kind,
        finished=sizes,
        sold=least_sold(thickness, allowed.sold_as, allowed.thickness_nm) if solid else None,
        least_nm=Nm(thickness + to_plane) if solid else thickness,
        length_nm=up_to_step(length + allowed.length_nm, project.unit),
        width_nm=up_to_step(width + allowed.width_nm, project.unit),
        may_turn=allowed.may_turn,
    )


def _practice_parts(plan: Plan) -> Iterator[RoughPart]:
    """Both boards of each practice joint, of the timbers of the first joint that it stands for."""
    joints = {joint.mark: joint for joint in plan.joints}
    materials = {board.mark: board.material for board in plan.boards}
    for each in plan.practice:
        real = joints[each.stands_for[0]]
        for mark, board, width, thickness in _two_boards(each):
            of = real.pin_board if board == each.joint.pin_board else real.tail_board
            yield _part(plan.project, mark, Use.PRACTICE, materials[of], (each.length_nm, width, thickness))


def _two_boards(each: PracticeJoint) -> Iterator[tuple[str, str, Nm, Nm]]:
    joint = each.joint
    yield joint.pin_board, joint.pin_board, joint.width_nm, joint.pin_thickness_nm
    yield joint.tail_board, joint.tail_board, joint.tail_width_nm, joint.tail_thickness_nm


def _spares(plan: Plan) -> Iterator[RoughPart]:
    """Boards to set machines with: of solid timber, as thick as the boards that they stand for."""
    stock = stock_of(plan.project)
    solid = {each.name for each in plan.project.materials if each.kind is MaterialKind.SOLID}
    stuffs = dict.fromkeys((b.material, b.thickness_nm) for b in plan.boards if b.material in solid)
    numbers = iter(range(1, len(stuffs) * stock.spares + 1))
    for material, thickness in stuffs:
        for _ in range(stock.spares):
            sizes = (stock.spare_length_nm, stock.spare_width_nm, thickness)
            yield _part(plan.project, f"set-up-{next(numbers)}", Use.SPARE, material, sizes)
