"""How far the boards of a plan move over the year; what the checks of movement have in common."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from math import ceil

from planner.checks.facts import Facts
from planner.domain.plan import BoardSize
from planner.domain.solid import BACK, RIGHT, UP, Direction
from planner.domain.words import MaterialKind
from planner.lengths import Grid, Nm, on_grid, show_length
from planner.wood.moisture import Seasons, seasons
from planner.wood.movement import SOURCE, across_width, along_grain, strain, through_thickness

RUNS_NM = Nm(Grid.IN_64.step_nm)
"""1/64 in, about 0.4 mm: less than that around a part that runs or swings is too tight. Common practice, no source."""

AXES = (RIGHT, BACK, UP)


@dataclass(frozen=True, slots=True)
class Growth:
    """How much larger something is in the driest and the dampest season than today, as parts of its size or in nm."""

    dry: float
    damp: float

    @property
    def most(self) -> float:
        """Growth in the season in which it is largest; nothing if that is today."""
        return max(self.dry, self.damp, 0.0)

    @property
    def least(self) -> float:
        """Growth in the season in which it is smallest, which is less than nothing; nothing if that is today."""
        return min(self.dry, self.damp, 0.0)

    def times(self, size: float) -> Growth:
        """That of a size."""
        return Growth(self.dry * size, self.damp * size)

    def plus(self, other: Growth) -> Growth:
        """That of two that lie one behind the other."""
        return Growth(self.dry + other.dry, self.damp + other.damp)


STILL = Growth(0.0, 0.0)
"""Nothing moves."""


@dataclass(frozen=True)
class Moving:
    """The boards of a plan over the year. Of a board whose timber isn't named nothing is known."""

    facts: Facts

    @cached_property
    def seasons(self) -> Seasons:
        """Moisture contents that are reckoned with."""
        return seasons(self.facts.project)

    def is_known(self, board: BoardSize) -> bool:
        """Whether it can be told how a board moves."""
        return board.material in self.facts.timbers

    def is_solid(self, board: BoardSize) -> bool:
        """Whether a board is of solid wood."""
        return self.facts.project.material(board.material).kind is MaterialKind.SOLID

    def parts(self, board: BoardSize, axis: Direction) -> Growth:
        """Growth of a board along an axis of the piece, as parts of its size; of an unknown one, none."""
        if not self.is_known(board):
            return STILL
        timber = self.facts.timbers[board.material]
        sawn = self.facts.project.material(board.material).sawn
        if axis == axis_of(board.lie.along):
            coefficient = along_grain(timber)
        elif axis == axis_of(board.lie.across):
            coefficient = across_width(timber, sawn)
        else:
            coefficient = through_thickness(timber, sawn)
        today, dry, damp = self.seasons.today, self.seasons.dry, self.seasons.damp
        return Growth(
            strain(coefficient, timber.intersection_pct, today, dry),
            strain(coefficient, timber.intersection_pct, today, damp),
        )

    def growth(self, board: BoardSize, axis: Direction) -> Growth:
        """The same in nanometres."""
        return self.parts(board, axis).times(board.place.size(axis))

    # --- in words ------------------------------------------------------------------------------------------

    def show(self, length: float) -> str:
        """A length that is reckoned: to the nearest step of the finest grid."""
        fine = self.facts.project.grid.fine
        return show_length(on_grid(round(length), fine), fine, with_unit=True)

    def show_up(self, length: float) -> str:
        """A length to be made at least: to the next step of the finest grid."""
        return self.show(self.stepped_up(length))

    def stepped_up(self, length: float) -> int:
        """The next step of the finest grid that is no less."""
        return ceil(length / self.step) * self.step

    @property
    def step(self) -> int:
        """Step of the finest grid, to which remedies are told."""
        return self.facts.project.grid.fine.step_nm

    def source(self, *boards: BoardSize) -> str:
        """Where the rule and the figures of these boards' timbers stand."""
        timbers = {board.material: self.facts.timbers[board.material] for board in boards if self.is_known(board)}
        figures = dict.fromkeys(
            f"{timber.name}: {timber.source}" + (f" ({timber.how_movement})" if timber.how_movement else "")
            for timber in timbers.values()
        )
        return "; ".join((SOURCE, *figures))


def axis_of(direction: Direction) -> Direction:
    """The axis along which a direction points, either way."""
    return next(axis for axis in AXES if any(a and b for a, b in zip(axis, direction, strict=True)))
