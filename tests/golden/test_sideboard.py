"""The kitchen sideboard, worked out on paper. Millimetres; joints stand 0.4 proud.

1500 x 780 x 450 of 20, back 9: inside 1460 x 740, and 441 deep. Two partitions of 20 and columns of 420 leave 580.
At the ends a drawer of 152, a rail of 20, and 568 for the cupboard; behind its door of 20 and the gap of 1.5 it is
419.5 deep. Between them three rails leave 680 for four drawers: 170 -+ 6 and 18.
"""

from __future__ import annotations

import pytest

from planner.domain.words import FeatureKind, Surface
from tests.golden.hand import cut, cuts, mm, openings, sample, settings, sizes

NAME = "sideboard.toml"
DRAWERS = {
    "D101": (420, 152),
    "D201": (580, 152),
    "D202": (580, 164),
    "D203": (580, 176),
    "D204": (580, 188),
    "D301": (420, 152),
}


def test_openings() -> None:
    assert openings(NAME) == {
        **{mark: mm(width, height, 441) for mark, (width, height) in DRAWERS.items()},
        "S-1.2": mm(420, 568, 419.5),
        "S-3.2": mm(420, 568, 419.5),
    }


def test_case() -> None:
    """Housings a third of 20, 6.6 to a tenth. Runners: 441 - 60 long behind the rails, 25 + 6.6 wide.

    No kickers: above each drawer is the top, or the runners of the drawer above.
    """
    found = sizes(NAME)
    assert len(found) == 4 + 2 + 1 + (1 + 3 + 1) * 3 + 6 * 6 + 2 * (5 + 1) + 4
    assert found["S-top"] == found["S-bottom"] == mm(1500.8, 450, 20)
    assert found["S-left"] == found["S-right"] == mm(780.8, 450, 20)
    assert found["S-partition1"] == found["S-partition2"] == mm(753.2, 441, 20)
    assert sorted(found["S-back"]) == sorted(mm(1479, 759, 9))  # 1460 + 20 - 1 by 740 + 20 - 1
    assert found["D101-rail"] == found["D301-rail"] == mm(433.2, 60, 20)
    for owner in ("D201", "D202", "D203"):
        assert found[f"{owner}-rail"] == mm(593.2, 60, 20)
    for owner in ("D101", "D201", "D202", "D203", "D301"):
        assert found[f"{owner}-runner1"] == found[f"{owner}-runner2"] == mm(381, 31.6, 20)


def test_base() -> None:
    """1500 - 20 by 450 - 10, and 0.4 at each end; 50 high cut away between feet of 160."""
    found = sizes(NAME)
    assert found["SP-front"] == found["SP-back"] == mm(1480.8, 90, 20)
    assert found["SP-left"] == found["SP-right"] == mm(440.8, 90, 20)
    front = cut(NAME, FeatureKind.NOTCH, "SP-front", "")
    assert (front.x, front.u) == (mm(160.4, 1320.4), mm(0, 50))
    for board in ("SP-left", "SP-right"):
        side = cut(NAME, FeatureKind.NOTCH, board, "")
        assert (side.x, side.u) == (mm(160.4, 280.4), mm(0, 50))


def test_drawers() -> None:
    """Behind a face of 20: 441 - 20 - 12 = 409 deep; 3 narrower and lower.

    A half-pin of 7 is 7 + 15/8 inside: the groove begins 8.9 up, the back stands 14.9 up. Bottom: half of 12 deep in
    the grooves, width - 3 - 24 + 12 - 1; from the groove in the front to the outside of the back 409 - 15 + 6.
    """
    found = sizes(NAME)
    for mark, (width, height) in DRAWERS.items():
        assert found[f"{mark}-front"] == mm(width - 2.2, height - 3, 15)
        assert found[f"{mark}-left"] == found[f"{mark}-right"] == mm(409.8, height - 3, 12)
        assert found[f"{mark}-back"] == mm(width - 2.2, height - 17.9, 12)
        assert found[f"{mark}-bottom"] == mm(width - 16, 400, 6)
        assert found[f"{mark}-face"] == mm(width - 3, height - 3, 20)  # 1.5 all round


def test_pulls_go_through_face_and_front() -> None:
    """96 apart in the middle of each face, half way up; the same in the front, which is 0.4 longer at each end.

    The drawer stands 1.5 lower than its face, so the holes are 1.5 higher in it.
    """
    for board, end, up in (("D204-face", 0, 92.5), ("D204-front", 0.4, 94)):
        first, second = cuts(NAME, FeatureKind.HOLE, board, "")
        assert (first.x, second.x) == (mm(238 + end, 243 + end), mm(334 + end, 339 + end))
        assert first.u == second.u == mm(up - 2.5, up + 2.5)


def test_doors_and_loose_shelves() -> None:
    """420 - 3 by 568 - 3. Shelves: 420 - 3 by 419.5 - 5.

    Tenons half of 60: rails 417 - 120 + 60. Panels in grooves of 10: 417 - 120 + 20 - 4 wide, 565 - 120 + 20 - 4 long.
    """
    found = sizes(NAME)
    for space in ("S-1.2", "S-3.2"):
        assert found[f"{space}-door-stile1"] == found[f"{space}-door-stile2"] == mm(565, 60, 20)
        assert found[f"{space}-door-crossrail1"] == found[f"{space}-door-crossrail2"] == mm(357, 60, 20)
        assert found[f"{space}-door-panel1"] == mm(461, 313, 8)
        assert found[f"{space}-loose1"] == mm(417, 414.5, 20)


def test_corners_and_sleds() -> None:
    """The case's sides carry the pins at the large sled, 20.4 high; drawers and base at the other, 12.4 and 20.4."""
    board = sample(NAME)
    assert len(board.joints) == 4 + 6 * 4 + 4
    pins = {mark: {j.pin_board for j in board.joints if j.box == mark} for mark in ("S", "SP")}
    assert pins == {"S": {"S-left", "S-right"}, "SP": {"SP-left", "SP-right"}}
    assert sorted(settings(NAME)) == sorted(
        [(sled, mm(height)[0]) for sled, height in (("large", 20.4), ("bench", 12.4), ("bench", 20.4)) for _ in "rl"]
    )
    assert (board.sled.sled_changes, board.sled.height_changes, board.sled.fence_swaps) == (1, 1, 3)


def test_door_rails_lie_level() -> None:
    """Each tenon ends at the panel's groove, 60 - 10; a third of the stile's end, or so, is left beyond it."""
    for space in ("S-1.2", "S-3.2"):
        for number in (1, 2):
            left, right = (
                cut(NAME, FeatureKind.MORTISE, f"{space}-door-stile{stile}", f"{space}-door-crossrail{number}")
                for stile in (1, 2)
            )
            assert left.x == right.x
            assert left.depth_nm == right.depth_nm == mm(30)[0]
            near, far = (
                (left.x[0], left.x[1]) if left.x[0] < mm(60)[0] else (mm(565)[0] - left.x[1], mm(565)[0] - left.x[0])
            )
            assert far == mm(50)[0]
            assert mm(15)[0] <= near <= mm(20)[0]


@pytest.mark.parametrize(("column", "outer"), [("1", "D101-rail"), ("2", "D301-rail")])
def test_rails_line_up_across_the_partitions(column: str, outer: str) -> None:
    """152 below the inside of the top, and 6.6 of the partition in the top: at both its faces 158.6, from end A."""
    upright = f"S-partition{column}"
    here, middle = cut(NAME, FeatureKind.HOUSING, upright, outer), cut(NAME, FeatureKind.HOUSING, upright, "D201-rail")
    assert here.x == middle.x == mm(158.6, 178.6)
    assert {here.face, middle.face} == {Surface.INSIDE, Surface.OUTSIDE}
    assert cut(NAME, FeatureKind.HOUSING, upright, "D202-rail").x == mm(342.6, 362.6)
    assert cut(NAME, FeatureKind.HOUSING, upright, "D203-rail").x == mm(538.6, 558.6)


def test_rails_and_runners_lie_level() -> None:
    """In the right side 0.4 + 20 + 152 from end A, its top; in the left 780.8 less that and 20.

    The runners lie in the same line, behind the rails' 60.
    """
    for board, owner, runner, start in (("S-right", "D301", "runner2", 172.4), ("S-left", "D101", "runner1", 588.4)):
        rail = cut(NAME, FeatureKind.HOUSING, board, f"{owner}-rail")
        strip = cut(NAME, FeatureKind.HOUSING, board, f"{owner}-{runner}")
        assert rail.x == strip.x == mm(start, start + 20)
        assert (rail.u, strip.u) == (mm(0, 60), mm(60, 441))
        assert rail.depth_nm == strip.depth_nm == mm(6.6)[0]


def test_partitions_stand_upright() -> None:
    """0.4 + 20 + 420 from the left, and 600 more; the bottom's end A is at the right: there the other is first."""
    for first, second, board in (
        ("S-partition1", "S-partition2", "S-top"),
        ("S-partition2", "S-partition1", "S-bottom"),
    ):
        assert cut(NAME, FeatureKind.HOUSING, board, first).x == mm(440.4, 460.4)
        assert cut(NAME, FeatureKind.HOUSING, board, second).x == mm(1040.4, 1060.4)
