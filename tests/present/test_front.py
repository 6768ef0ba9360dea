"""The front drawn in characters: lines that meet, every drawer once, proportions to half a character."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from planner.domain.carcase import Carcase, Dividers
from planner.domain.space import Division, Space
from planner.domain.words import DividerKind
from planner.intake.project_file import read_project
from planner.lengths import Grid
from planner.present.front import front
from tests.pieces import ash, columns, drawer, inches, six_drawers, tiers

SAMPLES = sorted((Path(__file__).parents[2] / "sample_projects").glob("*.toml"))
GOES = {
    "│": "ud", "─": "lr", "┌": "dr", "┐": "dl", "└": "ur", "┘": "ul",
    "├": "udr", "┤": "udl", "┬": "dlr", "┴": "ulr", "┼": "udlr",
}  # fmt: skip
STEPS = {"u": (-1, 0, "d"), "d": (1, 0, "u"), "l": (0, -1, "r"), "r": (0, 1, "l")}


def carcase(inside: Space) -> Carcase:
    """36 × 46 outside, 34 1/4 × 44 1/4 inside."""
    (chest,) = six_drawers().carcases
    dividers = Dividers(stuff=ash("3/4"), housing_depth_nm=inches("1/4"))
    return replace(chest, inside=inside, partitions=dividers)


def loose_ends(lines: tuple[str, ...]) -> list[tuple[int, int, str]]:
    """Places where a line goes on to a neighbour that does not come to meet it."""
    width = max(map(len, lines))
    padded = [line.ljust(width) for line in lines]
    return [
        (row, column, letter)
        for row, line in enumerate(padded)
        for column, letter in enumerate(line)
        for way in GOES.get(letter, "")
        for down, right, back in (STEPS[way],)
        if not (0 <= row + down < len(padded) and 0 <= column + right < width)
        or back not in GOES.get(padded[row + down][column + right], "")
    ]


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_lines_meet_and_every_drawer_of_a_sample_is_named_once(path: Path) -> None:
    project = read_project(path.read_text(encoding="utf-8"), path.name)
    for each in project.carcases:
        lines = front(each, project.grid)
        assert loose_ends(lines) == []
        assert max(map(len, lines)) <= 61
        assert len(lines) <= 25
        words = "".join(" " if letter in GOES else letter for letter in "\n".join(lines)).split()
        drawers = [drawer.ring.mark for drawer in each.drawers()]
        assert sorted(word for word in words if word.startswith("D")) == sorted(drawers)


def test_a_wide_column_is_drawn_as_wide_as_its_share() -> None:
    """Shares 3 and 1 of 34 1/4 − 3/4 = 33 1/2: 25 1/8 and 8 3/8; the partition's middle lies 7/8 + 25 1/8 + 3/8 in.

    36 × 46 is drawn 24 lines high and 48·36/46 = 37.6, so 38 characters wide: 26 3/8 of 36 is character 27.8, so 28.
    """
    shares = columns(
        Space(share=Fraction(3), holds=tiers(Space(holds=drawer("D1"))).holds),
        Space(share=Fraction(1), holds=tiers(Space(holds=drawer("D2"))).holds),
    )
    lines = front(carcase(shares), Grid.IN_32)
    assert len(lines) == 25
    assert {len(line) for line in lines} == {39}
    assert lines[0].index("┬") == lines[-1].index("┴") == 28


def test_tiers_that_nothing_divides_share_a_line() -> None:
    upper, lower = Space(holds=drawer("D1")), Space(holds=drawer("D2"))
    inside = columns(tiers(upper, lower, by=DividerKind.NOTHING))
    assert isinstance(inside.holds, Division)
    lines = front(carcase(inside), Grid.IN_32)
    assert sum(line.startswith("├") for line in lines) == 1
    assert lines[12].startswith("├")
    assert loose_ends(lines) == []
