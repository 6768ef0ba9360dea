"""What the tests of the samples share: a sample's plan, its sizes and cuts, and lengths as a maker writes them.

Nothing here works a figure out. The figures are in the tests, found on paper from the sample's file and README.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

from planner.domain.plan import Feature, Plan
from planner.domain.words import FeatureKind
from planner.intake.project_file import read_project
from planner.lengths import Unit, read_length
from planner.pipeline import plan

SAMPLES = Path(__file__).parents[2] / "sample_projects"
NAMES = sorted(path.name for path in SAMPLES.glob("*.toml"))

Size = tuple[int, ...]
"""Nanometres: length (with the grain), width, thickness; or a pair of places."""


@cache
def sample(name: str) -> Plan:
    """The plan of a sample."""
    return plan(read_project((SAMPLES / name).read_text(encoding="utf-8"), name))


def sizes(name: str) -> dict[str, Size]:
    """Length, width and thickness of each board of a sample."""
    return {b.mark: (b.length_nm, b.width_nm, b.thickness_nm) for b in sample(name).boards}


def openings(name: str) -> dict[str, Size]:
    """Clear width, height and depth of each opening: of a drawer by its mark, else by the opening's own."""
    return {o.drawer or o.mark: (o.width_nm, o.height_nm, o.depth_nm) for o in sample(name).openings}


def cuts(name: str, kind: FeatureKind, board: str, takes: str) -> list[Feature]:
    """The cuts of a kind that one board has for another (none: ``""``), along the board."""
    found = [c for c in sample(name).features if (c.kind, c.board, c.takes) == (kind, board, takes)]
    return sorted(found, key=lambda c: (c.x, c.u))


def cut(name: str, kind: FeatureKind, board: str, takes: str) -> Feature:
    """The only cut of a kind that one board has for another."""
    (found,) = cuts(name, kind, board, takes)
    return found


def inch(*texts: str) -> Size:
    """Lengths as written on a cut list, in inches."""
    return tuple(read_length(text, Unit.INCH) for text in texts)


def mm(*numbers: float) -> Size:
    """Lengths in millimetres."""
    return tuple(round(number * 1_000_000) for number in numbers)


def settings(name: str) -> list[tuple[str, int]]:
    """Sled and bit height of each setting, in order."""
    return [(s.sled, s.bit_height_nm) for s in sample(name).sled.settings]
