"""The nest of boxes, worked out on paper. Millimetres; joints stand 0.4 proud.

420 x 300 x 180 of 10: the next is 2 x 10 + 2 x 3 smaller each way. It stands on a bottom that is 4 thick and 8 up, and
ends 3 below the edge: 8 + 4 + 3 = 15 lower.
"""

from __future__ import annotations

from planner.domain.words import FeatureKind
from tests.golden.hand import cut, mm, sample, settings, sizes

NAME = "nest_of_boxes.toml"
OUTSIDE = {"N1": (420, 300, 180), "N2": (394, 274, 165), "N3": (368, 248, 150), "N4": (342, 222, 135)}


def test_boards() -> None:
    """Grooves half of 10: bottoms are the inside and 2 x 5 - 1."""
    found = sizes(NAME)
    assert len(found) == 4 * 5
    for mark, (length, width, height) in OUTSIDE.items():
        assert found[f"{mark}-front"] == found[f"{mark}-back"] == mm(length + 0.8, height, 10)
        assert found[f"{mark}-left"] == found[f"{mark}-right"] == mm(width + 0.8, height, 10)
        assert found[f"{mark}-bottom"] == mm(length - 11, width - 11, 4)
        assert cut(NAME, FeatureKind.GROOVE, f"{mark}-front", f"{mark}-bottom").u == mm(8, 12)


def test_each_fits_into_the_one_before() -> None:
    """Measured on the boards: once flush, 3 free on every side, and 3 below the edge when it stands on the bottom."""
    found, gap = sizes(NAME), mm(3)[0]
    proud, wood, floor = mm(0.8, 10, 12)
    for outer, inner in (("N1", "N2"), ("N2", "N3"), ("N3", "N4")):
        for board in ("front", "left"):
            inside = found[f"{outer}-{board}"][0] - proud - 2 * wood
            assert inside - (found[f"{inner}-{board}"][0] - proud) == 2 * gap
        assert found[f"{outer}-front"][1] - floor - found[f"{inner}-front"][1] == gap


def test_one_setting_at_each_fence() -> None:
    """All boards are 10 thick: one height, 10.4, and one walk round; joint by joint it would be one for each of 16."""
    nest = sample(NAME)
    assert settings(NAME) == [("bench", mm(10.4)[0])] * 2
    assert {j.pin_board.split("-")[1] for j in nest.joints} == {"left", "right"}
    assert (nest.sled.height_changes, nest.sled.fence_swaps, nest.sled.joint_by_joint_changes) == (0, 1, 16)
