"""The hall chest on its stand, worked out on paper. Inches; joints stand 1/64 proud.

32 x 22 x 16 of 3/4, back 1/2: inside 30 1/2 x 20 1/2, and 15 1/2 deep. Two web frames of 3/4 leave 19 of the height;
less 4 1/2 and 6 1/4 that is 8 1/4 for the lowest drawer. Above, a partition of 3/4: (30 1/2 - 3/4) / 2 = 14 7/8 each.
"""

from __future__ import annotations

import pytest

from planner.domain.words import FeatureKind, Held, JointKind, Surface
from tests.golden.hand import cut, cuts, inch, openings, sample, settings, sizes

NAME = "chest_on_stand.toml"


def test_openings() -> None:
    assert openings(NAME) == {
        "D1": inch("14 7/8", "4 1/2", "15 1/2"),
        "D2": inch("14 7/8", "4 1/2", "15 1/2"),
        "D3": inch("30 1/2", "6 1/4", "15 1/2"),
        "D4": inch("30 1/2", "8 1/4", "15 1/2"),
    }


def test_case_and_top() -> None:
    """Top: 32 + 2 x 3/4 by 16 + 3/4. Partition: 4 1/2 and 1/8 in each housing."""
    found = sizes(NAME)
    assert len(found) == 4 + 7 + 1 + (2 + 3 + 2) + (2 + 2 + 1) + 4 * 5 + 8 + 1
    assert found["C-top"] == found["C-bottom"] == inch("32 1/32", "16", "3/4")
    assert found["C-left"] == found["C-right"] == inch("22 1/32", "16", "3/4")
    assert found["C-topboard"] == inch("33 1/2", "16 3/4", "3/4")
    assert found["C-1.1-partition1"] == inch("4 3/4", "15 1/2", "3/4")


def test_web_frames_and_dust_panels() -> None:
    """Housings a third of 3/4, 1/4: rails 30 1/2 + 1/2, and a runner at the side is 2 + 1/4 wide.

    Runners: 15 1/2 - 2 x 2 between the rails, and a tenon of 3/8 at each end. Where two drawers meet a third runner
    lies under the partition, 2 for each of them and 3/4: two panels of (30 1/2 - 2 x 2 - 4 3/4) / 2 = 10 7/8, and
    2 x 3/8 - 1/32 in the grooves; below, one of 26 1/2 and the same. From front to back 11 1/2 and the same.
    """
    found = sizes(NAME)
    for owner in ("C-1.1", "D3"):
        assert found[f"{owner}-rail"] == found[f"{owner}-backrail"] == inch("31", "2", "3/4")
        assert found[f"{owner}-runner1"] == inch("12 1/4", "2 1/4", "3/4")
    assert found["C-1.1-runner2"] == inch("12 1/4", "4 3/4", "3/4")
    assert found["C-1.1-runner3"] == found["D3-runner2"] == inch("12 1/4", "2 1/4", "3/4")
    assert sorted(found["C-1.1-dust1"]) == sorted(inch("11 19/32", "12 7/32", "1/4"))
    assert found["C-1.1-dust1"] == found["C-1.1-dust2"]
    assert sorted(found["D3-dust"]) == sorted(inch("27 7/32", "12 7/32", "1/4"))


def test_panelled_back() -> None:
    """In rabbets of 3/8: 30 1/2 + 3/4 - 1/32 by 20 1/2 + 3/4 - 1/32.

    Rails between stiles of 2, tenons of 3/4: 31 7/32 - 4 + 1 1/2. The muntin's tenons only fill the panels'
    groove: 21 7/32 - 4 + 2 x 1/4. Panels: (27 7/32 - 2) / 2 = 12 39/64 wide and 17 7/32 high, each and 2 x 1/4 - 1/32.
    """
    found = sizes(NAME)
    assert found["C-back-stile1"] == found["C-back-stile2"] == inch("21 7/32", "2", "1/2")
    assert found["C-back-crossrail1"] == found["C-back-crossrail2"] == inch("28 23/32", "2", "1/2")
    assert found["C-back-muntin1"] == inch("17 23/32", "2", "1/2")
    for number in (1, 2):
        assert found[f"C-back-panel{number}"] == inch("17 11/16", "13 5/64", "1/4")


def test_stand() -> None:
    """1/4 out at the front and at each side: 32 1/2 by 16 1/4 over the legs of 1 5/8, tenons half a leg: 13/16.

    Aprons: 32 1/2 - 3 1/4 + 1 5/8 and 16 1/4 - 3 1/4 + 1 5/8.
    """
    found = sizes(NAME)
    for number in (1, 2, 3, 4):
        assert found[f"C-leg{number}"] == inch("16", "1 5/8", "1 5/8")
    assert found["C-apron-front"] == found["C-apron-back"] == inch("30 7/8", "3", "3/4")
    assert found["C-apron-left"] == found["C-apron-right"] == inch("14 5/8", "3", "3/4")


def test_aprons_lie_level() -> None:
    """The apron's face is 1/8 behind the legs', its middle 1/8 + 3/8; the tenon is as far from both faces, 13/16 long.

    All eight mortises are at one height, within the apron's 3 from the top of the leg. Two in one leg don't meet: each
    ends 13/16 from the face where the other is at most 5/8 in.
    """
    middle, deep, width, leg = inch("1/2", "13/16", "3", "1 5/8")
    found = [c for c in sample(NAME).features if c.kind is FeatureKind.MORTISE and c.board.startswith("C-leg")]
    assert len(found) == 8
    assert len({mortise.x for mortise in found}) == 1
    assert 0 < found[0].x[0] < found[0].x[1] < width
    for mortise in found:
        shallow, other = (mortise.u, mortise.y) if mortise.face is Surface.INSIDE else (mortise.y, mortise.u)
        assert sum(shallow) == 2 * middle
        assert other == (leg - deep, leg)
        assert shallow[1] < leg - deep


def test_drawers() -> None:
    """1/8 narrower and lower than the opening, 1/2 shorter: 14 3/4, 30 3/8; 4 3/8, 6 1/8, 8 1/8; 15 deep.

    Fronts and backs stand 1/64 proud at both ends. The sides stop 3/16 behind the front's face: 15 - 3/16 + 1/64.
    The half-pin at the lap is 1/4, and 9/16 further in 1/4 + 9/128: to the next 1/32 the groove clears it 11/32 up.
    The back stands on the bottom, 11/32 + 3/8 = 23/32 up. Bottom: 14 3/4 - 1 + 2 x 1/4 - 1/32 wide; it runs from the
    floor of the groove in the front to the outside of the back, where it can grow: 15 - 3/4 + 1/4.
    """
    found = sizes(NAME)
    for mark, front, bottom, height, back in (
        ("D1", "14 25/32", "14 7/32", "4 3/8", "3 21/32"),
        ("D2", "14 25/32", "14 7/32", "4 3/8", "3 21/32"),
        ("D3", "30 13/32", "29 27/32", "6 1/8", "5 13/32"),
        ("D4", "30 13/32", "29 27/32", "8 1/8", "7 13/32"),
    ):
        assert found[f"{mark}-front"] == inch(front, height, "3/4")
        assert found[f"{mark}-left"] == found[f"{mark}-right"] == inch("14 53/64", height, "1/2")
        assert found[f"{mark}-back"] == inch(front, back, "1/2")
        assert found[f"{mark}-bottom"] == inch(bottom, "14 1/2", "3/8")


def test_corners_and_sled() -> None:
    """The fronts' 8 half-blind corners are hand work; the case's 4 and the backs' 8 are cut at the sled.

    Bit heights: the backs' pins are as high as the sides are thick, 1/2 + 1/64; the case's 3/4 + 1/64. One walk round
    at each. One joint after the other: 12 walks round, and one change of height.
    """
    chest = sample(NAME)
    kinds = [joint.kind for joint in chest.joints]
    assert (kinds.count(JointKind.THROUGH_DOVETAIL), kinds.count(JointKind.HALF_BLIND)) == (12, 8)
    assert {s.bit_height_nm for s in chest.sled.settings} == set(inch("33/64", "49/64"))
    assert len(settings(NAME)) == 4
    assert (chest.sled.sled_changes, chest.sled.height_changes, chest.sled.fence_swaps) == (0, 1, 2)
    assert chest.sled.joint_by_joint_changes == 12 + 1
    assert {joint.pin_board for joint in chest.joints if joint.box == "C"} == {"C-left", "C-right"}
    (front,) = [joint for joint in chest.joints if joint.mark == "D3-J1"]
    assert (front.lap_nm, front.tail_baseline_nm) == inch("3/16", "9/16")


@pytest.mark.parametrize(
    ("owner", "below_top", "from_bottom"), [("C-1.1", "5 17/64", "16 1/64"), ("D3", "12 17/64", "9 1/64")]
)
def test_frames_lie_level(owner: str, below_top: str, from_bottom: str) -> None:
    """Inside of the top: 3/4 + 1/64 from the right side's end A; the frames 4 1/2, and 4 1/2 + 3/4 + 6 1/4, below.

    From the left side's end A, at the bottom: 22 1/32 less that and 3/4.
    """
    for board, start in (("C-right", below_top), ("C-left", from_bottom)):
        (low,) = inch(start)
        for part in ("rail", "backrail"):
            housing = cut(NAME, FeatureKind.HOUSING, board, f"{owner}-{part}")
            assert (housing.x, housing.depth_nm) == ((low, low + inch("3/4")[0]), inch("1/4")[0])
            assert housing.face is Surface.INSIDE
    runner = cut(NAME, FeatureKind.HOUSING, "C-left", f"{owner}-runner1")
    assert runner.held is not Held.GLUED  # its grain crosses the side's


def test_the_sides_can_move_past_the_frames() -> None:
    """Cherry 15 1/2 wide moves; a runner between two glued rails does not. One rail, or one end of it, must be free.

    So not all of them may be glued: both rails in their housings, and both tenons of a runner.
    """
    held = {cut(NAME, FeatureKind.HOUSING, "C-left", f"D3-{rail}").held for rail in ("rail", "backrail")}
    ends = {tenon.held for tenon in cuts(NAME, FeatureKind.TENON, "D3-runner1", "")}
    assert held | ends != {Held.GLUED}


def test_knobs() -> None:
    """Two on a long front, at the same height and as far from either end; one in the middle of a short one."""
    one = cut(NAME, FeatureKind.HOLE, "D1-front", "")
    assert one.x == inch("7 19/64", "7 31/64")  # 14 25/32 / 2 -+ 3/32
    assert one.u == inch("2 3/32", "2 9/32")  # 4 3/8 / 2 -+ 3/32
    first, second = cuts(NAME, FeatureKind.HOLE, "D4-front", "")
    assert first.u == second.u == inch("3 31/32", "4 5/32")
    assert first.x[0] == inch("30 13/32")[0] - second.x[1]
