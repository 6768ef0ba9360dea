"""The office bookcase, worked out on paper. Millimetres; joints stand 0.4 proud.

900 x 1250 x 300 of 20, back 12: inside 860 x 1210, and 288 deep. Two fixed shelves of 20 leave 1170; less 240 and 180
that is 750 for the loose shelves. Below, an upright of 20: (860 - 20) / 2 = 420 for each drawer.
"""

from __future__ import annotations

import pytest

from planner.domain.words import FeatureKind, Surface
from tests.golden.hand import cut, cuts, mm, openings, sample, settings, sizes

NAME = "bookcase_with_drawers.toml"


def test_openings() -> None:
    assert openings(NAME) == {
        "B-1.1": mm(860, 750, 288),
        "B-1.2": mm(860, 240, 288),
        "D1": mm(420, 180, 288),
        "D2": mm(420, 180, 288),
    }


def test_case_shelves_and_plinth() -> None:
    """Housings a third of 20, 6.6 to a tenth: 860 + 13.2 and 180 + 13.2. Loose: 860 - 3 long, 6 behind the front edge.

    Plinth: 900 - 2 x 25 by 300 - 25, and 0.4 at each end.
    """
    found = sizes(NAME)
    assert len(found) == 4 + 8 + 2 + 1 + 2 + 2 * 5 + 4
    assert found["B-top"] == found["B-bottom"] == mm(900.8, 300, 20)
    assert found["B-left"] == found["B-right"] == mm(1250.8, 300, 20)
    assert found["B-1.1-shelf"] == found["B-1.2-shelf"] == mm(873.2, 288, 20)
    assert found["B-1.3-partition1"] == mm(193.2, 288, 20)
    assert found["B-1.1-loose1"] == found["B-1.1-loose2"] == mm(857, 282, 20)
    assert found["BP-front"] == found["BP-back"] == mm(850.8, 70, 20)
    assert found["BP-left"] == found["BP-right"] == mm(275.8, 70, 20)


def test_boarded_back() -> None:
    """In rabbets of 10: 860 + 20 - 1 wide, 1210 + 20 - 1 high.

    Each lies 10 over the next. Seven boards would be (879 + 6 x 10) / 7 = 134.1 wide, more than 120; eight are
    (879 + 7 x 10) / 8 = 118.625.
    """
    found = sizes(NAME)
    boards = [found[f"B-backboard{number}"] for number in range(1, 9)]
    assert {(length, thickness) for length, _, thickness in boards} == {mm(1229, 12)}
    assert sum(width for _, width, _ in boards) == mm(879 + 7 * 10)[0]
    assert all(abs(width - mm(118.625)[0]) <= mm(0.1)[0] for _, width, _ in boards)


def test_laps_of_the_back() -> None:
    """Half of 12 is taken away over a lap of 10 and a gap of 1.5: at one edge in front, at the other behind.

    The first and the last board have one lap only.
    """
    laps = {
        number: {
            (c.face, c.u[0] == 0)
            for c in sample(NAME).features
            if c.board == f"B-backboard{number}" and c.kind is FeatureKind.RABBET
        }
        for number in range(1, 9)
    }
    assert [len(laps[number]) for number in range(1, 9)] == [1, 2, 2, 2, 2, 2, 2, 1]
    for number in range(2, 8):
        (face, at_reference), (other_face, at_reference_too) = laps[number]
        assert (face is not other_face, at_reference is not at_reference_too) == (True, True)
    for feature in sample(NAME).features:
        if feature.board.startswith("B-backboard"):
            assert (feature.u[1] - feature.u[0], feature.y[1] - feature.y[0]) == mm(11.5, 6)


def test_drawers() -> None:
    """3 narrower and lower, 12 shorter: 417 x 177 x 276.

    The groove is half of the sides' 12 deep. A half-pin of 6 is 6 + 20/8 = 8.5 inside, so it begins 8.5 up; the back
    stands on the bottom, 14.5 up, and ends 6 below the sides: 177 - 20.5. Bottom: 417 - 24 + 12 - 1 wide, and from the
    groove in the front to the outside of the back 276 - 20 + 6.
    """
    found = sizes(NAME)
    for mark in ("D1", "D2"):
        assert found[f"{mark}-front"] == mm(417.8, 177, 20)
        assert found[f"{mark}-left"] == found[f"{mark}-right"] == mm(276.8, 177, 12)
        assert found[f"{mark}-back"] == mm(417.8, 156.5, 12)
        assert found[f"{mark}-bottom"] == mm(404, 262, 6)


def test_pull() -> None:
    """Two holes of 5, 96 apart, in the middle of 417.8 and half way up 177."""
    first, second = cuts(NAME, FeatureKind.HOLE, "D2-front", "")
    assert (first.x, second.x) == (mm(158.4, 163.4), mm(254.4, 259.4))
    assert first.u == second.u == mm(86, 91)


def test_corners_and_sled() -> None:
    """Top and bottom carry the pins, since the long sides can't stand on the sled; the plinth's shorter sides do.

    Heights: drawers' sides 12.4; the case's sides and the plinth's front 20.4.
    """
    case = sample(NAME)
    assert len(case.joints) == 4 + 8 + 4
    pins = {mark: {j.pin_board for j in case.joints if j.box == mark} for mark in ("B", "BP")}
    assert pins == {"B": {"B-top", "B-bottom"}, "BP": {"BP-left", "BP-right"}}
    assert {height for _, height in settings(NAME)} == set(mm(12.4, 20.4))
    assert len(settings(NAME)) == 4
    assert (case.sled.sled_changes, case.sled.height_changes, case.sled.fence_swaps) == (0, 1, 2)


@pytest.mark.parametrize(
    ("shelf", "below_top", "from_bottom"), [("B-1.1-shelf", 770.4, 460.4), ("B-1.2-shelf", 1030.4, 200.4)]
)
def test_fixed_shelves_lie_level_and_stop(shelf: str, below_top: float, from_bottom: float) -> None:
    """0.4 + 20 + 750, and 260 more, from the right side's top end; 1250.8 less that and 20 from the left's lower end.

    12 behind the front edge the housings stop, and the shelf is cut away there 6.6 from both ends.
    """
    for board, start in (("B-right", below_top), ("B-left", from_bottom)):
        housing = cut(NAME, FeatureKind.HOUSING, board, shelf)
        assert (housing.x, housing.u, housing.face) == (mm(start, start + 20), mm(12, 288), Surface.INSIDE)
        assert housing.depth_nm == mm(6.6)[0]
    left, right = cuts(NAME, FeatureKind.NOTCH, shelf, "")
    assert (left.x, right.x) == (mm(0, 6.6), mm(866.6, 873.2))
    assert left.u == right.u == mm(0, 12)


def test_upright_between_the_drawers() -> None:
    """6.6 + 420 from the shelf's end, 0.4 + 20 + 420 from the bottom's; both ends alike, both stopped 12 in front."""
    above = cut(NAME, FeatureKind.HOUSING, "B-1.2-shelf", "B-1.3-partition1")
    below = cut(NAME, FeatureKind.HOUSING, "B-bottom", "B-1.3-partition1")
    assert (above.x, above.u) == (mm(426.6, 446.6), mm(12, 288))
    assert (below.x, below.u) == (mm(440.4, 460.4), mm(12, 288))
