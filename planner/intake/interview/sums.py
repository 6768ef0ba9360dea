"""Sizes worked out of other sizes, brought to a step that can be read off a rule."""

from __future__ import annotations

from fractions import Fraction

from planner.lengths import Nm, Unit, read_length

_STEPS = {"fine": ("1/16 in", "1 mm"), "even": ("1/16 in", "2 mm"), "coarse": ("1/4 in", "5 mm"),
          "reach": ("2 in", "50 mm")}  # fmt: skip
"""Step → in inches and in millimetres."""


def either(unit: Unit, inches: str, millimetres: str) -> Nm:
    """One of two lengths, by the unit of the project."""
    return read_length(millimetres if unit is Unit.MM else inches, unit)


def _step(unit: Unit, step: str) -> Nm:
    return either(unit, *_STEPS[step])


def down(size: Fraction | int, unit: Unit, step: str = "fine") -> Nm:
    """The size brought down to a step; at least one step."""
    each = _step(unit, step)
    return Nm(max(1, int(size // each)) * each)


def near(size: Fraction | int, unit: Unit, step: str = "fine") -> Nm:
    """The size brought to the nearest step; at least one step."""
    each = _step(unit, step)
    return Nm(max(1, round(Fraction(size) / each)) * each)


def up(size: Fraction | int, unit: Unit, step: str = "fine") -> Nm:
    """The size brought up to a step; at least one step."""
    each = _step(unit, step)
    return Nm(max(1, -int(-size // each)) * each)
