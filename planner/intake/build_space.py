"""From the columns and tiers of a file to the tree of spaces within a carcase."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from planner.domain.drawer import Drawer
from planner.domain.marks import drawer_mark
from planner.domain.ring import Stuff
from planner.domain.space import Division, Doors, DoorStops, LooseShelves, ShelfPins, Space
from planner.domain.words import DividerKind, HeightRule, Side, Stands, Way
from planner.intake.build_made import made_of
from planner.intake.shared import Shared, stuff_of
from planner.lengths import Nm

if TYPE_CHECKING:
    from planner.intake.build_drawer import DrawerMaker
    from planner.intake.file_carcase import CarcaseTable
    from planner.intake.file_space import (
        ColumnTable,
        DividedTable,
        DoorsTable,
        DoorStopsTable,
        LooseShelvesTable,
        ShelfPinsTable,
        TierTable,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class SpaceMaker:
    """Makes the spaces of a carcase.

    Attributes:
        stuff: what the carcase is made of.
        divider: what usually lies between its tiers.
        drawers: makes its drawers; None when it has none.
    """

    stuff: Stuff
    divider: DividerKind
    drawers: DrawerMaker | None
    shared: Shared

    def root(self, carcase: CarcaseTable, first_number: int) -> Space:
        """The whole inside, whose first column has this number in the project."""
        columns = [
            self._column(table, _usual_marks(number, self.shared))
            for number, table in enumerate(carcase.column, first_number)
        ]
        return Space(holds=_columns(columns, carcase), doors=self.doors(carcase.doors))

    def _column(self, table: ColumnTable, marks: Iterator[str]) -> Space:
        spaces = self._drawers(table, marks) if table.tier is None else [self._tier(tier, marks) for tier in table.tier]
        graduated = table.heights == "graduated"
        rule = HeightRule.STEP if table.ratio is None else HeightRule.RATIO
        return Space(
            size_nm=table.width,
            share=table.share or Fraction(1),
            holds=Division(
                way=Way.TIERS,
                divider=self.divider if table.divided_by is None else DividerKind(table.divided_by),
                rule=rule if graduated else _own_sizes(spaces),
                step_nm=table.step,
                ratio=table.ratio,
                spaces=tuple(spaces),
            ),
            doors=self.doors(table.doors),
        )

    def _drawers(self, table: ColumnTable, marks: Iterator[str]) -> list[Space]:
        """The tiers of a column that holds drawers and nothing else."""
        count = table.drawers or 0
        heights = table.heights if isinstance(table.heights, list) else [None] * count
        usual = [next(marks) for _ in range(count)]
        return [
            Space(size_nm=height, holds=self._drawer(mark))
            for mark, height in zip(table.marks or usual, heights, strict=True)
        ]

    def _tier(self, table: TierTable, marks: Iterator[str]) -> Space:
        return Space(
            size_nm=table.height,
            share=table.share or Fraction(1),
            holds=self._held(table, marks),
            doors=self.doors(table.doors),
        )

    def _held(self, table: TierTable, marks: Iterator[str]) -> Division | Drawer | LooseShelves | None:
        if table.column is not None:
            return _columns([self._column(column, marks) for column in table.column], table)
        if table.holds == "nothing":
            return None
        if table.holds == "shelves":
            return self._loose_shelves(table.shelves)
        usual = next(marks)
        return self._drawer(table.mark or usual)

    def _drawer(self, mark: str) -> Drawer:
        if self.drawers is None:
            raise TypeError("a file whose drawers nothing tells of is refused before it is built")
        return self.drawers.drawer(mark)

    def _loose_shelves(self, table: LooseShelvesTable | None) -> LooseShelves:
        if table is None:
            count, stuff, play, setback, pins = 1, self.stuff, None, None, None
        else:
            count, play, setback, pins = table.count, table.play, table.setback, table.pins
            stuff = stuff_of(table.material, table.thickness, self.stuff)
        return LooseShelves(
            count=count,
            stuff=stuff,
            play_nm=self.shared.length(play, "shelf_play"),
            setback_nm=self.shared.length(setback, "shelf_setback"),
            pins=_pins(pins, self.shared),
        )

    def doors(self, table: DoorsTable | None) -> Doors | None:
        """What hangs before a space."""
        if table is None:
            return None
        overlay = table.stands == "overlay"
        return Doors(
            leaves=table.leaves,
            hinged=Side(table.hinged or "left"),
            stands=Stands(table.stands),
            gap_nm=self.shared.length(table.gap, "gap"),
            overlay_nm=self.shared.length(table.overlay, "overlay") if overlay else Nm(0),
            made=made_of(table, self.stuff, self.shared),
            stops=_stops(table.stops, self.stuff.material, self.shared),
        )


def _stops(table: DoorStopsTable | None, material: str, shared: Shared) -> DoorStops | None:
    if table is None:
        return None
    usual = Stuff(material=material, thickness_nm=shared.length(None, "door_stop"))
    return DoorStops(
        stuff=stuff_of(table.material, table.thickness, usual), width_nm=shared.length(table.width, "stop_width")
    )


def _pins(table: ShelfPinsTable | None, shared: Shared) -> ShelfPins | None:
    if table is None:
        return None
    return ShelfPins(
        holes=table.holes,
        hole_nm=shared.length(table.hole, "pin_hole"),
        depth_nm=shared.length(table.depth, "pin_depth"),
        apart_nm=shared.length(table.apart, "pins_apart"),
        front_nm=shared.length(table.front, "pins_in"),
        back_nm=shared.length(table.back, "pins_in"),
    )


def _columns(spaces: Sequence[Space], table: DividedTable) -> Division:
    graduated = HeightRule.RATIO if table.column_ratio is not None else HeightRule.STEP
    return Division(
        way=Way.COLUMNS,
        divider=DividerKind.PARTITION,
        rule=_own_sizes(spaces) if table.column_ratio is None and table.column_step is None else graduated,
        step_nm=table.column_step,
        ratio=table.column_ratio,
        spaces=tuple(spaces),
    )


def _own_sizes(spaces: Sequence[Space]) -> HeightRule:
    """The rule of spaces that are not graduated: whether any says something of its own."""
    own = any(space.size_nm is not None or space.share != 1 for space in spaces)
    return HeightRule.LISTED if own else HeightRule.EQUAL


def _usual_marks(column: int, shared: Shared) -> Iterator[str]:
    """Marks of the drawers of a column, as they are met; one that has a mark of its own is counted all the same."""
    number = 0
    while True:
        number += 1
        yield drawer_mark(column, number, only_column=shared.only_column)
