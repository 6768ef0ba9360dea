"""The apprentice's cabinet: wrong in seven ways, all of which are found, and nothing else.

By hand, of American beech (C_T 0.00431, E 11.9 GPa: Wood Handbook FPL-GTR-190, Tables 13-5 and 5-3a), at 8 % today and
11 % in the damp season:

- Drawers are 260 - 0.8 = 259.2 high and swell by 259.2 x 0.00431 x 3 = 3.35, into 0.8: 2.55 too much.
- The doors' widths add up to 760 - 3 x 0.5 = 758.5 and swell by 758.5 x 0.00431 x 3 = 9.81, into 0.5.
- The back has a play of 0.1, and is wider than a metre: it swells by more than a centimetre.
- Books of 25 lb on a foot (California structural safety tests), 365 N/m over 760, are 277 N. A shelf of 310 x 9 has
  I = 310 x 9^3 / 12 = 18 833 mm^4 and sags 5 x 277 x 760^3 / (384 x 11 900 x 18 833) = 7.1 at once, 10.6 in the long
  run; 760 / 192 = 4.0 is wanted.
- 1:3.5 lies outside 1:4 to 1:9; a slot of 10.2 is 7 % wider than the bit of 9.53; and it can only tip: 1300 high, 320
  deep, two drawers of tools at the top.
"""

from __future__ import annotations

import pytest

from planner.domain.plan import Finding
from planner.domain.words import Level
from tests.golden.hand import sample

NAME = "first_try.toml"
WRONG = {"slope", "slot-unlike-bit", "drawer-binds", "door-binds", "panel-binds", "sag", "tips"}
WELL_MEANT = {"pin-boards", "stopped-cut", "two-person-lift", "heavy-drawer"}
"""Notes that tell how it is made and carried, and no faults."""


def found(code: str) -> Finding:
    (finding,) = (each for each in sample(NAME).findings if each.code == code)
    return finding


def test_all_seven_are_found_and_nothing_else() -> None:
    grave = [each.code for each in sample(NAME).findings if each.level is not Level.NOTE]
    assert sorted(grave) == sorted(WRONG)
    assert {each.code for each in sample(NAME).findings if each.level is Level.NOTE} <= WELL_MEANT


def test_what_binds_stops_the_work() -> None:
    stops = {each.code for each in sample(NAME).findings if each.level is Level.STOP}
    assert stops == {"drawer-binds", "door-binds", "panel-binds"}


@pytest.mark.parametrize(
    ("code", "marks", "figures"),
    [
        ("drawer-binds", ("D1", "D2"), ("0.8 mm above", "2.6 mm too high")),
        ("door-binds", ("F-1.4-door1", "F-1.4-door2"), ("9.8 mm", "0.5 mm")),
        ("panel-binds", ("F-back", "F-bottom", "F-top"), ("0.1 mm of play",)),
        ("sag", ("D1-shelf", "D2-shelf", "F-1.3-shelf"), ("7.1 mm", "10.6 mm", "4.0 mm")),
        ("slope", ("bench",), ("1:3.5",)),
        ("slot-unlike-bit", ("bench",), ("10.2 mm", "9.5 mm")),
        ("tips", ("F",), ("would tip forward",)),
    ],
)
def test_each_names_its_boards_and_figures(code: str, marks: tuple[str, ...], figures: tuple[str, ...]) -> None:
    finding = found(code)
    assert finding.marks == marks
    assert all(figure in finding.text for figure in figures)
    assert finding.remedy


@pytest.mark.parametrize("code", ["drawer-binds", "door-binds", "panel-binds", "sag", "tips"])
def test_figures_from_books_name_the_book(code: str) -> None:
    assert found(code).source
