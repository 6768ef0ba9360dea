"""The wall cabinet, worked out on paper. Millimetres; joints stand 0.4 proud.

620 x 700 x 220 of 18, back 12: inside 584 x 664, and 208 deep. A fixed shelf of 18 over drawers of 110 leaves 536 for
the cupboard; behind doors of 18 and their gap of 1.5 it is 188.5 deep. Below, an upright of 18 between the drawers:
(584 - 18) / 2 = 283.
"""

from __future__ import annotations

from planner.domain.hardware import HardwareKind
from planner.domain.words import FeatureKind
from tests.golden.hand import cut, cuts, mm, openings, sample, settings, sizes

NAME = "wall_cabinet.toml"


def test_openings() -> None:
    assert openings(NAME) == {"W-1.1": mm(584, 536, 188.5), "D1": mm(283, 110, 208), "D2": mm(283, 110, 208)}


def test_case_shelves_and_back() -> None:
    """Housings a third of 18, 6. Loose shelves: 584 - 3 by 188.5 - 10. Back in rabbets of 9: 584 + 18 - 1."""
    found = sizes(NAME)
    assert len(found) == 4 + 1 + 1 + 1 + 2 + 2 * 5 + 2 * 5 + 1 + 2 + 2 * 2
    assert found["W-top"] == found["W-bottom"] == mm(620.8, 220, 18)
    assert found["W-left"] == found["W-right"] == mm(700.8, 220, 18)
    assert found["W-1.1-shelf"] == mm(596, 208, 18)
    assert found["W-1.2-partition1"] == mm(122, 208, 18)
    assert found["W-1.1-loose1"] == found["W-1.1-loose2"] == mm(581, 178.5, 18)
    assert sorted(found["W-back"]) == sorted(mm(601, 681, 12))


def test_doors() -> None:
    """1.5 at three places across 584: (584 - 4.5) / 2 = 289.75 wide; 536 - 3 high.

    Rails: 289.75 - 2 x 55 + 2 x 30. Panels: 289.75 - 110 + 2 x 8 - 4 wide, 533 - 110 + 16 - 4 long.
    """
    found = sizes(NAME)
    for door in ("W-1.1-door1", "W-1.1-door2"):
        assert found[f"{door}-stile1"] == found[f"{door}-stile2"] == mm(533, 55, 18)
        assert found[f"{door}-crossrail1"] == found[f"{door}-crossrail2"] == mm(239.75, 55, 18)
        assert found[f"{door}-panel1"] == mm(435, 191.75, 6)


def test_doors_stand_in_the_opening() -> None:
    """From the outside: 18 + 1.5 at the left, the right and above; 1.5 between them; below, 18 + 110 + 18 + 1.5.

    Their faces are flush with the front.
    """
    places = {board.mark: board.place for board in sample(NAME).boards}
    edges = sorted(
        edge for door in ("1", "2") for stile in ("1", "2") for edge in places[f"W-1.1-door{door}-stile{stile}"].right
    )
    assert (edges[0], edges[3], edges[4], edges[7]) == mm(19.5, 309.25, 310.75, 600.5)
    for stile in ("1", "2"):
        assert places[f"W-1.1-door2-stile{stile}"].up == mm(147.5, 680.5)
        assert places[f"W-1.1-door2-stile{stile}"].back == mm(0, 18)


def test_drawers() -> None:
    """3 narrower and lower, 12 shorter: 280 x 107 x 196.

    The back stands on the bottom, which slides in 8 up: 107 - 12. Bottom: 280 - 20 + 2 x 5 - 1, from the groove 5 deep
    in the front of 16 to the outside of the back: 196 - 11. Its slot, 5 wide, is below the back of 10.
    """
    found = sizes(NAME)
    for mark in ("D1", "D2"):
        assert found[f"{mark}-front"] == mm(280.8, 107, 16)
        assert found[f"{mark}-back"] == mm(280.8, 95, 10)
        assert found[f"{mark}-left"] == found[f"{mark}-right"] == mm(196.8, 107, 10)
        assert found[f"{mark}-bottom"] == mm(269, 185, 4)
        (slot,) = cuts(NAME, FeatureKind.NOTCH, f"{mark}-bottom", "")
        assert (slot.x, slot.u) == (mm(132, 137), mm(175, 185))
        assert cut(NAME, FeatureKind.GROOVE, f"{mark}-front", f"{mark}-bottom").u == mm(8, 12)  # 6 + 16/8
        (knob,) = cuts(NAME, FeatureKind.HOLE, f"{mark}-front", "")
        assert (knob.x, knob.u) == (mm(137.9, 142.9), mm(51, 56))


def test_corners_and_sled() -> None:
    """It hangs, so top and bottom carry the pins. Heights: drawers' sides 10.4, the case's 18.4."""
    cabinet = sample(NAME)
    assert len(cabinet.joints) == 4 + 8
    assert {j.pin_board for j in cabinet.joints if j.box == "W"} == {"W-top", "W-bottom"}
    assert {height for _, height in settings(NAME)} == set(mm(10.4, 18.4))
    assert len(settings(NAME)) == 4
    assert (cabinet.sled.height_changes, cabinet.sled.fence_swaps) == (1, 2)
    assert cabinet.sled.joint_by_joint_changes == 12 + 1


def test_shelf_and_upright() -> None:
    """From the right side's top end 0.4 + 18 + 536; from the left side's lower end 700.8 less that and 18.

    The upright: 6 + 283 from the shelf's end, 0.4 + 18 + 283 from the bottom's.
    """
    assert cut(NAME, FeatureKind.HOUSING, "W-right", "W-1.1-shelf").x == mm(554.4, 572.4)
    assert cut(NAME, FeatureKind.HOUSING, "W-left", "W-1.1-shelf").x == mm(128.4, 146.4)
    assert cut(NAME, FeatureKind.HOUSING, "W-1.1-shelf", "W-1.2-partition1").x == mm(289, 307)
    assert cut(NAME, FeatureKind.HOUSING, "W-bottom", "W-1.2-partition1").x == mm(301.4, 319.4)


def test_hanging_rail_and_stops() -> None:
    """The rail: 75 below the top at 682, 18 before the back at 208.

    Strips of 12 behind the doors of 18, 20 into the cupboard, which is from 146 to 682 high. Blocks of 6 on the bottom,
    behind fronts of 16; inside, drawer 1 is from 18 + 1.5 + 10 to 301 - 11.5, 260 wide: middles at 94.5 and 224.5.
    """
    places = {board.mark: board.place for board in sample(NAME).boards}
    found = sizes(NAME)
    assert found["W-1.1-hangingrail"] == mm(584, 75, 18)
    assert (places["W-1.1-hangingrail"].back, places["W-1.1-hangingrail"].up) == (mm(190, 208), mm(607, 682))
    for mark, up in (("W-1.1-doorstop1", (662, 682)), ("W-1.1-doorstop2", (146, 166))):
        assert found[mark] == mm(584, 20, 12)
        assert (places[mark].back, places[mark].up) == (mm(18, 30), mm(*up))
    assert found["D1-stop1"] == mm(40, 20, 6)
    assert (places["D1-stop1"].right, places["D1-stop2"].right) == (mm(74.5, 114.5), mm(204.5, 244.5))
    assert (places["D1-stop1"].back, places["D1-stop1"].up) == (mm(16, 36), mm(18, 24))


def test_holes_for_shelf_pins() -> None:
    """Two shelves in 536: (536 - 36) / 3 = 166 2/3, so the first lies at 682 - 184 2/3 = 497 1/3.

    Its hole begins there: 0.4 + 700 - 497 1/3 = 203 1/15 from the right side's top end, the others 32 from it. From the
    front edge 19.5 behind the doors, setback 10 and 37 are 66.5 to the middle, at the back 208 - 37 = 171.
    """
    holes = cuts(NAME, FeatureKind.HOLE, "W-right", "")
    assert len(holes) == len(cuts(NAME, FeatureKind.HOLE, "W-left", "")) == 2 * 2 * 3
    assert {hole.u for hole in holes} == {mm(64, 69), mm(168.5, 173.5)}
    assert {hole.y for hole in holes} == {mm(10, 18)}
    assert {hole.x for hole in holes} >= {
        (begin, begin + 5_000_000) for begin in (171_066_666, 203_066_666, 235_066_666)
    }


def test_hardware() -> None:
    """Doors 533 high: two hinges each. Back 601 x 681: 5 screws across, 5 up, so 2 x (5 + 5) - 4.

    The rail of 584: 400 apart at most, so three.
    """
    bought = {each.kind: each.count for each in sample(NAME).hardware}
    assert bought == {
        HardwareKind.HINGE: 4,
        HardwareKind.CATCH: 2,
        HardwareKind.KNOB: 2,
        HardwareKind.DOOR_KNOB: 2,
        HardwareKind.SHELF_PIN: 8,
        HardwareKind.SLOT_SCREW: 2,
        HardwareKind.SCREW: 16,
        HardwareKind.WALL_SCREW: 3,
    }
