"""The tool chest, worked out on paper. Inches; joints stand 1/64 proud.

24 x 26 x 13 of 3/4, back 1/4: inside 22 1/2 x 24 1/2, and 12 3/4 deep. Nothing lies between the drawers, so seven
openings share 24 1/2, each 1.12 times as high as the one above.
"""

from __future__ import annotations

from fractions import Fraction

from planner.domain.words import FeatureKind, Surface
from tests.golden.hand import cut, cuts, inch, openings, sample, settings, sizes

NAME = "tool_chest.toml"
MARKS = [f"D{number}" for number in range(1, 8)]
HEIGHTS = ("2 7/16", "2 23/32", "3 1/32", "3 13/32", "3 13/16", "4 9/32", "4 13/16")
"""24 1/2 / (1 + 1.12 + ... + 1.12^6 = 10.0890) = 2.4284, 2.7198, 3.0462, 3.4117, 3.8211, 4.2796 to the next 1/32; the
lowest takes what is left."""


def test_openings() -> None:
    assert openings(NAME) == {
        mark: inch("22 1/2", height, "12 3/4") for mark, height in zip(MARKS, HEIGHTS, strict=True)
    }
    assert sum(inch(*HEIGHTS)) == inch("24 1/2")[0]


def test_boards() -> None:
    """Drawers 1/8 narrower and lower, 1/2 shorter: 22 3/8 x 12 1/4.

    Bottom: 22 3/8 - 1 + 1/2 - 1/32 by 12 1/4 - 5/8 - 1/2 + 1/2 - 1/32. Strips: from behind the drawer's front to the
    end of its sides, 12 1/4 - 5/8.
    """
    found = sizes(NAME)
    assert len(found) == 4 + 1 + 7 * (5 + 2)
    assert found["T-top"] == found["T-bottom"] == inch("24 1/32", "13", "3/4")
    assert found["T-left"] == found["T-right"] == inch("26 1/32", "13", "3/4")
    assert sorted(found["T-back"]) == sorted(inch("23 7/32", "25 7/32", "1/4"))
    for mark, opening in zip(MARKS, HEIGHTS, strict=True):
        height = inch(opening)[0] - inch("1/8")[0]
        assert found[f"{mark}-front"] == (inch("22 13/32")[0], height, inch("5/8")[0])
        assert found[f"{mark}-back"] == (inch("22 13/32")[0], height, inch("1/2")[0])
        assert found[f"{mark}-left"] == found[f"{mark}-right"] == (inch("12 9/32")[0], height, inch("1/2")[0])
        assert found[f"{mark}-bottom"] == inch("21 27/32", "11 19/32", "1/4")
        assert found[f"{mark}-runner-left"] == found[f"{mark}-runner-right"] == inch("11 5/8", "5/8", "1/4")


def test_strips_and_their_grooves() -> None:
    """The drawer hangs by the grooves' upper edges, 1/16 (half of the 1/8 above it) clear of its opening's floor.

    A strip of 1/4 bridges 1/16 of air and goes 3/16 in; 1/16 is free before it too, so the groove is 1/4 deep. It
    begins behind the front, 1/64 + 5/8 from the side's front end, runs out behind, and lies as high in both sides.
    """
    places = {board.mark: board.place for board in sample(NAME).boards}
    floors = {opening.drawer: opening.place.up[0] for opening in sample(NAME).openings}
    for mark in MARKS:
        right = cut(NAME, FeatureKind.GROOVE, f"{mark}-right", f"{mark}-runner-right")
        left = cut(NAME, FeatureKind.GROOVE, f"{mark}-left", f"{mark}-runner-left")
        for groove in (right, left):
            assert (groove.face, groove.depth_nm) == (Surface.OUTSIDE, inch("1/4")[0])
            assert groove.u[1] == places[f"{mark}-runner-left"].up[1] - floors[mark] - inch("1/16")[0]
            assert groove.u[1] - groove.u[0] == inch("21/32")[0]  # the strip of 5/8 and 1/32 to slide
        assert right.u == left.u
        assert right.x == inch("41/64", "12 9/32")
        assert left.x == (0, inch("12 9/32")[0] - inch("41/64")[0])
        assert places[f"{mark}-runner-left"].up == places[f"{mark}-runner-right"].up


def test_the_lowest_drawer_clears_the_bottom() -> None:
    """A drawer that hangs needs air below it, or it drags; the ones above have the clearance over the next one."""
    places = {board.mark: board.place for board in sample(NAME).boards}
    assert places["D7-front"].up[0] > places["T-bottom"].up[1]


def test_groove_clears_the_bottom() -> None:
    """The half-pin of 3/16 is 3/16 + 5/64 inside: to the next 1/32 the bottom's groove begins 9/32 up."""
    for mark in MARKS:
        bottom = cut(NAME, FeatureKind.GROOVE, f"{mark}-right", f"{mark}-bottom")
        assert bottom.u == inch("9/32", "17/32")
        assert bottom.u[1] < cut(NAME, FeatureKind.GROOVE, f"{mark}-right", f"{mark}-runner-right").u[0]


def test_corners_and_sled() -> None:
    """Top and bottom are shorter and carry the pins. Heights: drawers' sides 33/64, the case's 49/64."""
    chest = sample(NAME)
    assert len(chest.joints) == 4 + 7 * 4
    assert {j.pin_board for j in chest.joints if j.box == "T"} == {"T-top", "T-bottom"}
    assert {height for _, height in settings(NAME)} == set(inch("33/64", "49/64"))
    assert (len(settings(NAME)), chest.sled.height_changes, chest.sled.fence_swaps) == (4, 1, 2)
    assert chest.sled.joint_by_joint_changes == 32 + 1


def test_knobs() -> None:
    """Two of 3/16 on each front, half way up, as far from one end as from the other."""
    for mark, opening in zip(MARKS, HEIGHTS, strict=True):
        first, second = cuts(NAME, FeatureKind.HOLE, f"{mark}-front", "")
        assert first.u == second.u
        assert abs(Fraction(sum(first.u)) - (inch(opening)[0] - inch("1/8")[0])) <= 1
        assert first.x[0] == inch("22 13/32")[0] - second.x[1]
        assert first.x[1] - first.x[0] == inch("3/16")[0]
