"""The letter box, worked out on paper. Inches; joints stand 1/64 proud.

A closed box 13 x 10 x 6 of 1/2, inside 12 x 9, with a panel below and one above; then the lid, 1 3/4, is sawn off with
an eighth lost: 6 - 1 3/4 - 1/8 = 4 1/8 stays.
"""

from __future__ import annotations

from planner.domain.words import FeatureKind
from tests.golden.hand import cut, inch, sample, settings, sizes

NAME = "letter_box.toml"


def test_closed_box() -> None:
    """Grooves half of 1/2: panels 12 + 1/2 - 1/32 by 9 + 1/2 - 1/32."""
    found = sizes(NAME)
    assert len(found) == 4 + 2
    assert found["L-front"] == found["L-back"] == inch("13 1/32", "6", "1/2")
    assert found["L-left"] == found["L-right"] == inch("10 1/32", "6", "1/2")
    assert found["L-bottom"] == found["L-toppanel"] == inch("12 15/32", "9 15/32", "1/4")


def test_grooves_and_saw_line() -> None:
    """The half-pin of 3/16 is 3/16 + 1/16 inside: both grooves begin 1/4 from their edge. The saw goes above 4 1/8."""
    for board in ("L-front", "L-right", "L-back", "L-left"):
        assert cut(NAME, FeatureKind.GROOVE, board, "L-bottom").u == inch("1/4", "1/2")
        assert cut(NAME, FeatureKind.GROOVE, board, "L-toppanel").u == inch("5 1/2", "5 3/4")
        assert cut(NAME, FeatureKind.SAW_LINE, board, "").u == inch("4 1/8", "4 1/4")


def test_parts_once_sawn() -> None:
    parts = {p.mark: (p.length_nm, p.width_nm, p.thickness_nm) for p in sample(NAME).sawn}
    assert parts == {
        "L-front": inch("13", "4 1/8", "1/2"),
        "L-back": inch("13", "4 1/8", "1/2"),
        "L-left": inch("10", "4 1/8", "1/2"),
        "L-right": inch("10", "4 1/8", "1/2"),
        "L-lid-front": inch("13", "1 3/4", "1/2"),
        "L-lid-back": inch("13", "1 3/4", "1/2"),
        "L-lid-left": inch("10", "1 3/4", "1/2"),
        "L-lid-right": inch("10", "1 3/4", "1/2"),
    }


def test_the_saw_goes_through_a_pin() -> None:
    """Each part is left a half-pin of 3/16 at the cut: the pin there goes from 4 1/8 - 3/16 to 4 1/4 + 3/16."""
    box = sample(NAME)
    assert len(box.joints) == 4
    for joint in box.joints:
        assert inch("3 15/16", "4 7/16") in joint.pins
    assert settings(NAME) == [("fine", inch("33/64")[0])] * 2
    assert (box.sled.fence_swaps, box.sled.joint_by_joint_changes) == (1, 4)
