"""Project files for the tests of app and command line."""

from __future__ import annotations

from pathlib import Path

SAMPLES = Path(__file__).parents[2] / "sample_projects"
CHEST = SAMPLES / "six_drawer_chest.toml"

BOX = """\
format = 1

[project]
name = "Salt box"
units = "mm"

[material.elm]

[sled.bench]
slope = "1:7"
bit = 8
greatest_bit_height = 30
greatest_width = 400
greatest_upright = 600

[[box]]
mark = "S"
length = 240
width = 180
height = 90
material = "elm"
thickness = 12
"""
"""The smallest thing there is to make: four boards, four corners."""


def named(name: str) -> str:
    """The same box in a project of another name, which is written as TOML wants it."""
    quoted = "".join(char if char.isalnum() else f"\\U{ord(char):08x}" for char in name)
    return BOX.replace('"Salt box"', f'"{quoted}"')


BAD = BOX.replace("length = 240", 'length = "240 furlongs"').replace("thickness = 12", "thickness = 12\ncastors = 3")
"""Two mistakes: a length that is none, and a key that nobody knows."""

IMPOSSIBLE = BOX + "\n[box.pins]\ntails = 60\n"
"""Sound, but sixty tails don't fit on 90 mm: the bit is wider than the sockets would be."""
