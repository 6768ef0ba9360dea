"""The blanket chest, worked out on paper. Inches; joints stand 1/64 proud.

40 x 19 x 18 of 7/8: inside 38 1/4 x 17 1/4.
"""

from __future__ import annotations

from planner.domain.words import FeatureKind
from tests.golden.hand import cut, inch, sample, settings, sizes

NAME = "blanket_chest.toml"


def test_chest_and_bottom() -> None:
    """Bottom: 38 1/4 + 2 x 3/8 - 1/4 by 17 1/4 + 2 x 3/8 - 1/4."""
    found = sizes(NAME)
    assert len(found) == 4 + 1 + 3 + 7
    assert found["K-front"] == found["K-back"] == inch("40 1/32", "18", "7/8")
    assert found["K-left"] == found["K-right"] == inch("19 1/32", "18", "7/8")
    assert found["K-bottom"] == inch("38 3/4", "17 3/4", "1/2")


def test_till() -> None:
    """Housings a third of 7/8, to a 64th 9/32: 17 1/4 + 9/16.

    The bottom goes from the chest's side to below the till's: 7 + 1/2. The lid lies 1/32 below the chest's edge, so the
    till's side is 5 - 1/2 - 1/32. The lid goes to the outside of the till's side, with 1/32 free before, behind and at
    its left: 17 1/4 - 1/16 by 7 1/2 - 1/32.
    """
    found = sizes(NAME)
    assert found["K-tillside"] == inch("17 13/16", "4 15/32", "1/2")
    assert found["K-tillbottom"] == inch("17 13/16", "7 1/2", "1/2")
    assert found["K-tilllid"] == inch("17 3/16", "7 15/32", "1/2")


def test_till_lies_level_in_front_and_back() -> None:
    """The till's bottom lies 5 below the edge of 18: 12 1/2 to 13. From the left end: 1/64 + 7/8, and 7 1/2 more.

    The front has the left end as its end A, the back as its end B.
    """
    side = inch("57/64", "8 25/64")
    mirrored = inch("31 41/64", "39 9/64")  # 40 1/32 less these
    for board, x in (("K-front", side), ("K-back", mirrored)):
        housing = cut(NAME, FeatureKind.HOUSING, board, "K-tillbottom")
        assert (housing.x, housing.u, housing.depth_nm) == (x, inch("12 1/2", "13"), inch("9/32")[0])
    for board, x in (("K-front", inch("7 57/64", "8 25/64")), ("K-back", inch("31 41/64", "32 9/64"))):
        housing = cut(NAME, FeatureKind.HOUSING, board, "K-tillside")
        assert (housing.x, housing.u) == (x, inch("13", "17 15/32"))


def test_till_lid_swings_on_a_line() -> None:
    """The holes for its pins are at one height and as far from the left in front and back, and as deep."""
    front, back = (cut(NAME, FeatureKind.HOLE, board, "K-tilllid") for board in ("K-front", "K-back"))
    whole = inch("40 1/32")[0]
    assert (front.u, front.depth_nm) == (back.u, back.depth_nm)
    assert front.x == (whole - back.x[1], whole - back.x[0])
    (half_lid,) = inch("1/4")
    assert front.u[0] + front.u[1] == 2 * (inch("17 31/32")[0] - half_lid)  # in the middle of the lid's thickness


def test_framed_lid() -> None:
    """40 + 2 x 3/4 by 19 + 3/4. Long members in front and behind, the rest between them.

    Three rails with tenons of 1 1/2: 19 3/4 - 6 + 3. Panels: (41 1/2 - 3 x 3) / 2 = 16 1/4 by 13 3/4, each and
    3/4 - 1/4; their grain runs with the long members'.
    """
    found = sizes(NAME)
    assert found["K-lid-stile1"] == found["K-lid-stile2"] == inch("41 1/2", "3", "7/8")
    assert found["K-lid-panel1"] == found["K-lid-panel2"] == inch("16 3/4", "14 1/4", "3/8")
    for number in (1, 2, 3):
        assert found[f"K-lid-crossrail{number}"] == inch("16 3/4", "3", "7/8")


def test_rails_of_the_lid() -> None:
    """The middle one is 3 wide at (41 1/2 - 3) / 2 = 19 1/4; within the panels' grooves 19 1/4 + 3/8 to 22 1/4 - 3/8.

    The outer ones end at the groove, 3 - 3/8; at the lid's corner wood is left, and the same at both ends.
    """
    (whole,) = inch("41 1/2")
    for stile in ("K-lid-stile1", "K-lid-stile2"):
        first, middle, last = (
            cut(NAME, FeatureKind.MORTISE, stile, f"K-lid-crossrail{number}").x for number in (1, 2, 3)
        )
        assert middle == inch("19 5/8", "21 7/8")
        assert first[1] == inch("2 5/8")[0]
        assert first[0] >= inch("1/2")[0]
        assert last == (whole - first[1], whole - first[0])


def test_corners_and_sled() -> None:
    """The sides are shorter and carry the pins; the tails are on boards of 7/8, so the bit stands 57/64 high."""
    chest = sample(NAME)
    assert {joint.pin_board for joint in chest.joints} == {"K-left", "K-right"}
    assert settings(NAME) == [("wide", inch("57/64")[0])] * 2
    assert (chest.sled.height_changes, chest.sled.fence_swaps, chest.sled.joint_by_joint_changes) == (0, 1, 4)
