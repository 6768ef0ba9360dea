"""A small sound file, to be added to or changed."""

from __future__ import annotations

import pytest

from planner.domain.drawer import Drawer
from planner.domain.project import Project
from planner.domain.ring import Ring
from planner.errors import InputError
from planner.intake.project_file import read_project

CHEST = """\
format = 1
[project]
name = "Chest"
units = "in"
[material.oak]
[sled.bench]
slope = "1:8"
bit = "1/2 in"
greatest_bit_height = "1 in"
greatest_width = "12 in"
greatest_upright = "24 in"
[[carcase]]
mark = "C"
width = "20 in"
height = "30 in"
depth = "15 in"
material = "oak"
thickness = "7/8 in"
rails = { thickness = "3/4 in", width = "2 in" }
drawer.material = "oak"
drawer.front_thickness = "3/4 in"
drawer.side_thickness = "1/2 in"
drawer.back_thickness = "1/2 in"
column = [{ drawers = 3 }]
"""
"""Lines that are added say more of the carcase."""


def chest(*lines: str, units: str = "in") -> Project:
    """The chest with lines added."""
    return read_project("\n".join([CHEST.replace('units = "in"', f'units = "{units}"'), *lines]), "chest.toml")


def drawers(*lines: str, units: str = "in") -> dict[str, Drawer]:
    """Drawers of the chest, by mark."""
    return {drawer.ring.mark: drawer for drawer in chest(*lines, units=units).drawers()}


def rings(*lines: str) -> dict[str, Ring]:
    """Rings of the chest, by mark."""
    return {ring.mark: ring for ring in chest(*lines).rings()}


def refusals(*lines: str) -> list[str]:
    """What is said against the chest with these lines, without file and line."""
    with pytest.raises(InputError) as refused:
        chest(*lines)
    return [str(problem).partition(": ")[2] for problem in refused.value.problems]
