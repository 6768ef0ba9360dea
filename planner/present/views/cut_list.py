"""What to cut, grouped by thickness and material, and how much wood is in it.

A board foot is 144 cubic inches; stock under 1 in thick counts as 1 in (Noyes, *Handwork in Wood*, 1910, p. 48).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from planner.domain.marks import reading_order
from planner.domain.plan import BoardSize, Plan
from planner.domain.rack import Per
from planner.domain.words import MaterialKind
from planner.lengths import Nm, Unit, show_length
from planner.present.table import Cell, Column, Group, Kind, Table
from planner.wood.measure import amount


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """How wood is measured when it is bought.

    Attributes:
        per: what it is an amount of.
        formula: the same for a whole row of the cut list.
    """

    heading: str
    decimals: int
    per: Per
    formula: str
    note: str = ""


MEASURES = {
    (Unit.INCH, MaterialKind.SOLID): Measure(
        heading="Board feet",
        decimals=2,
        per=Per.BOARD_FOOT,
        formula="{Quantity}*{Length}*{Width}*MAX({Thickness},1)/144",
        note="A board foot is 144 cubic inches; a board under 1 in thick counts as 1 in.",
    ),
    (Unit.INCH, MaterialKind.SHEET): Measure(
        heading="Square feet",
        decimals=2,
        per=Per.SQUARE_FOOT,
        formula="{Quantity}*{Length}*{Width}/144",
    ),
    (Unit.MM, MaterialKind.SOLID): Measure(
        heading="Cubic metres",
        decimals=4,
        per=Per.CUBIC_METRE,
        formula="{Quantity}*{Length}*{Width}*{Thickness}/10^9",
    ),
    (Unit.MM, MaterialKind.SHEET): Measure(
        heading="Square metres",
        decimals=3,
        per=Per.SQUARE_METRE,
        formula="{Quantity}*{Length}*{Width}/10^6",
    ),
}
"""By the project's unit and the kind of material."""

FINISHED = "Sizes are finished sizes, what stands proud at the corners included. Waste is not included: buy more."
KIND_WORDS = {MaterialKind.SOLID: "solid timber", MaterialKind.SHEET: "sheet goods"}


@dataclass(frozen=True, slots=True)
class CutSize:
    """Boards alike in material and size."""

    kind: MaterialKind
    material: str
    thickness_nm: Nm
    width_nm: Nm
    length_nm: Nm
    marks: tuple[str, ...]

    @property
    def stuff(self) -> tuple[MaterialKind, str, Nm]:
        """What they are cut from."""
        return self.kind, self.material, self.thickness_nm

    def amount(self, unit: Unit) -> Fraction:
        """How much wood is in all of them, by the measure it is bought in."""
        one = amount(MEASURES[unit, self.kind].per, self.length_nm, self.width_nm, self.thickness_nm)
        return len(self.marks) * one


def cut_sizes(plan: Plan) -> tuple[CutSize, ...]:
    """All boards, those of one material and size together; solid timber first, thickest, widest and longest first."""
    kinds = {material.name: material.kind for material in plan.project.materials}
    alike: dict[tuple[str, Nm, Nm, Nm], list[BoardSize]] = {}
    for board in plan.boards:
        key = board.material, board.thickness_nm, board.width_nm, board.length_nm
        alike.setdefault(key, []).append(board)
    sizes = (
        CutSize(kinds[key[0]], *key, marks=tuple(sorted((b.mark for b in boards), key=reading_order)))
        for key, boards in alike.items()
    )
    kinds_in_order = tuple(MaterialKind)
    return tuple(
        sorted(
            sizes,
            key=lambda s: (kinds_in_order.index(s.kind), s.material, -s.thickness_nm, -s.width_nm, -s.length_nm),
        )
    )


def cut_list(plan: Plan) -> Table:
    """One row for each size to cut, with subtotals by thickness and material."""
    unit, sizes = plan.project.unit, cut_sizes(plan)
    measures = [MEASURES[unit, kind] for kind in MaterialKind if any(size.kind is kind for size in sizes)]
    return Table(
        title="Cut list",
        grid=plan.project.grid,
        columns=(
            Column(heading="Cut", kind=Kind.TICK),
            Column(heading="Quantity", kind=Kind.COUNT, summed=True),
            Column(heading="Length", kind=Kind.LENGTH),
            Column(heading="Width", kind=Kind.LENGTH),
            Column(heading="Thickness", kind=Kind.LENGTH, repeats=True),
            Column(heading="Material", repeats=True),
            Column(heading="Boards", kind=Kind.MARKS),
            *(
                Column(heading=m.heading, kind=Kind.AMOUNT, decimals=m.decimals, formula=m.formula, summed=True)
                for m in measures
            ),
        ),
        groups=tuple(_groups(plan, sizes, measures)),
        notes=(FINISHED, *(measure.note for measure in measures if measure.note)),
    )


def _groups(plan: Plan, sizes: Iterable[CutSize], measures: list[Measure]) -> Iterator[Group]:
    by_stuff: dict[tuple[MaterialKind, str, Nm], list[CutSize]] = {}
    for size in sizes:
        by_stuff.setdefault(size.stuff, []).append(size)
    for (kind, material, thickness), alike in by_stuff.items():
        thick = show_length(thickness, plan.project.grid, with_unit=True)
        yield Group(
            heading=f"{material}, {thick} thick, {KIND_WORDS[kind]}",
            rows=tuple(_row(size, plan.project.unit, measures) for size in alike),
        )


def _row(size: CutSize, unit: Unit, measures: list[Measure]) -> tuple[Cell, ...]:
    own = MEASURES[unit, size.kind]
    return (
        None,
        len(size.marks),
        size.length_nm,
        size.width_nm,
        size.thickness_nm,
        size.material,
        size.marks,
        *(size.amount(unit) if measure is own else None for measure in measures),
    )
