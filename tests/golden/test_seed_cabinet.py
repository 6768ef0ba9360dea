"""The seed cabinet with its 24 drawers, worked out on paper. Millimetres; joints stand 0.4 proud.

936 x 633 x 300 of 18, back 6 in its rabbet: inside 900 x 597, and 294 deep. Three partitions of 12 leave 864, so each
of the four columns is 216 wide; five shelves of 9 leave 552, so each of the six openings in it is 92 high.
"""

from __future__ import annotations

from planner.domain.words import FeatureKind, Surface
from tests.golden.hand import cut, mm, openings, sample, settings, sizes

NAME = "seed_cabinet.toml"
MARKS = [f"D{column}0{drawer}" for column in range(1, 5) for drawer in range(1, 7)]


def test_openings_are_all_alike() -> None:
    assert openings(NAME) == dict.fromkeys(MARKS, mm(216, 92, 294))


def test_the_case() -> None:
    """Partitions 6 into top and bottom (a third of 18): 597 + 12. Shelves 3 into what they meet: 216 + 6.

    The back lies in rabbets 9 deep (half of 18), less its play of 1: 900 + 18 - 1 by 597 + 18 - 1.
    """
    found = sizes(NAME)
    assert len(found) == 4 + 3 + 4 * 5 + 1 + 24 * 5
    assert found["C-top"] == found["C-bottom"] == mm(936.8, 300, 18)
    assert found["C-left"] == found["C-right"] == mm(633.8, 300, 18)
    assert sorted(found["C-back"]) == sorted(mm(917, 614, 6))
    partitions = [size for mark, size in found.items() if "partition" in mark]
    assert partitions == [mm(609, 294, 12)] * 3
    shelves = [size for mark, size in found.items() if "shelf" in mark]
    assert shelves == [mm(222, 294, 9)] * 20


def test_drawers() -> None:
    """0.8 at each side, 1.5 above, 12 behind: 214.4 x 90.5 x 282.

    Sides, front and back lie at the corners with 0.4 proud at each end. Bottoms reach 4.5 (half of 9) into grooves and
    have a play of 1: 214.4 - 18 + 9 - 1 by 282 - 14 - 9 + 9 - 1.
    """
    found = sizes(NAME)
    for mark in MARKS:
        assert found[f"{mark}-front"] == mm(215.2, 90.5, 14)
        assert found[f"{mark}-back"] == mm(215.2, 90.5, 9)
        assert found[f"{mark}-left"] == found[f"{mark}-right"] == mm(282.8, 90.5, 9)
        assert found[f"{mark}-bottom"] == mm(204.4, 267, 4)


def test_shelves_leave_half_of_a_partition() -> None:
    """From both sides 3 deep into 12; the rest of 6 is in one line at every height."""
    for shelf in range(1, 6):
        # The first shelf lies below 18 of the top, less 6 of the housing, and 92; each next one 92 + 9 lower.
        low = 6 + 92 + (shelf - 1) * 101
        found = [c for c in sample(NAME).features if c.board == "C-partition1" and c.kind is FeatureKind.HOUSING]
        at = [c for c in found if c.x in {mm(low, low + 9), mm(609 - low - 9, 609 - low)}]
        assert {c.face for c in at} == {Surface.OUTSIDE, Surface.INSIDE}
        assert {c.depth_nm for c in at} == {mm(3)[0]}
        assert all(c.u == mm(0, 294) for c in at)


def test_knobs() -> None:
    """One hole of 4 in the middle of each front: 215.2 / 2 - 2 from its end, 90.5 / 2 - 2 from its edge."""
    for mark in MARKS:
        hole = cut(NAME, FeatureKind.HOLE, f"{mark}-front", "")
        assert (hole.x, hole.u) == (mm(105.6, 109.6), mm(43.25, 47.25))


def test_four_settings_for_two_hundred_ends() -> None:
    """Two tail thicknesses, so bit heights 9.4 and 18.4; at each one walk round to the other fence.

    Joint by joint: each of the 100 joints is cut at both fences, so 100 walks; and once from the case to the drawers.
    """
    cabinet = sample(NAME)
    assert len(cabinet.joints) == 4 + 24 * 4
    assert {height for _, height in settings(NAME)} == set(mm(9.4, 18.4))
    assert (len(settings(NAME)), cabinet.sled.height_changes, cabinet.sled.fence_swaps) == (4, 1, 2)
    assert cabinet.sled.joint_by_joint_changes == 100 + 1
    assert sum(len(setting.cuts) for setting in cabinet.sled.settings) == 2 * 100


def test_drawers_are_alike_in_their_pins() -> None:
    """Boards of one kind can be cut one after the other without a new mark."""
    pins = {joint.pins for joint in sample(NAME).joints if joint.box != "C"}
    assert len(pins) == 1
