"""JSON of a small drawer, worked out on paper.

The drawer of ``pieces.drawer``, in inches; nothing stands proud.

- Boards: front and back 12 × 5 1/2 × 3/4, sides 10 × 5 1/2 × 1/2. Inside it is 11 × 8 1/2; with 1/4 of groove on every
  side the bottom is 11 1/2 × 9.
- Pin end: (5 1/2 − 2 × 1/4 − 4 × 1/8) / 5 = 0.9 for each socket. Pins from the reference edge: 0 – 0.25, 1.15 – 1.275,
  2.175 – 2.3, 3.2 – 3.325, 4.225 – 4.35, 5.25 – 5.5; tails between them.
- Sled: inside, a socket is 0.9 − 2 × 0.75/8 = 0.7125 wide, and the slot is 0.5 × √(1 + 1/64) = 0.50389. So one pass
  from each wall reaches 2 × 0.50389 ≥ 0.9, and nothing stays. The right fence takes the right walls, the left fence the
  left ones. The layout is the same from both edges, so marks from the operator's left are those from the edge.
- The bit stands as high as the sides are thick, 1/2. All four joints share that height: one swap of the fence, no
  change of height. Joint by joint each of the four needs a swap.
- Groove: half-pin 1/4 and lean 3/32 give 11/32 at least, which is on the grid.

The design fixes the keys; where each end stands is its sections 3 and 6.
"""

from __future__ import annotations

import json
from collections import defaultdict
from dataclasses import replace
from itertools import pairwise
from math import sqrt
from typing import Any

import pytest

from planner.domain.plan import Plan
from planner.present import json_out
from tests.lopsided import planned_lopsided_drawer
from tests.oracle.sheet import LAID_BY_END
from tests.oracle.sled_polygons import EndGrain, what_stays
from tests.pieces import cut_to
from tests.present.pieces import planned_chest, planned_drawer, planned_thick_box

IN = 25.4


def mm(*inches: float) -> list[Any]:
    return [pytest.approx(IN * each, abs=1e-9) for each in inches]


def spans(*edges: float) -> list[Any]:
    return [mm(a, b) for a, b in zip(edges[::2], edges[1::2], strict=True)]


PINS = (0, 0.25, 1.15, 1.275, 2.175, 2.3, 3.2, 3.325, 4.225, 4.35, 5.25, 5.5)
LEFT_WALLS, RIGHT_WALLS = PINS[1:-1:2], PINS[2::2]


@pytest.fixture(scope="module")
def plan() -> Plan:
    return planned_drawer()


def test_boards_have_their_finished_sizes(plan: Plan) -> None:
    sizes = {
        board["mark"]: (board["length_mm"], board["width_mm"], board["thickness_mm"])
        for board in json_out.boards_json(plan)
    }
    front, side = tuple(mm(12, 5.5, 0.75)), tuple(mm(10, 5.5, 0.5))
    assert sizes == {
        "D1-front": front,
        "D1-right": side,
        "D1-back": front,
        "D1-left": side,
        "D1-bottom": tuple(mm(11.5, 9, 0.25)),
    }


def test_a_board_has_exactly_the_keys_of_the_design_and_six_labels(plan: Plan) -> None:
    for board in json_out.boards_json(plan):
        assert list(board) == ["mark", "box", "role", "length_mm", "width_mm", "thickness_mm", "material", "labels"]
        assert list(board["labels"]) == ["outside", "inside", "reference_edge", "far_edge", "end_a", "end_b"]
    assert [board["role"] for board in json_out.boards_json(plan)] == ["front", "right", "back", "left", "bottom panel"]
    assert [b["labels"] for b in json_out.labels_json(plan)] == [b["labels"] for b in json_out.boards_json(plan)]


def test_joints_run_round_the_ring_with_pins_on_front_and_back(plan: Plan) -> None:
    ends = [
        (joint["joint"], joint["pin_board"], joint["pin_end"], joint["tail_board"], joint["tail_end"])
        for joint in json_out.joints_json(plan)
    ]
    assert ends == [
        ("D1-J1", "D1-front", "B", "D1-right", "A"),
        ("D1-J2", "D1-back", "A", "D1-right", "B"),
        ("D1-J3", "D1-back", "B", "D1-left", "A"),
        ("D1-J4", "D1-front", "A", "D1-left", "B"),
    ]


def test_every_joint_has_the_pins_worked_out_above(plan: Plan) -> None:
    for joint in json_out.joints_json(plan):
        assert joint["kind"] == "through dovetail"
        assert [joint["width_mm"], joint["pin_thickness_mm"], joint["tail_thickness_mm"]] == mm(5.5, 0.75, 0.5)
        assert [joint["bit_height_mm"], joint["tail_baseline_mm"]] == mm(0.5, 0.75)
        assert joint["slope"] == 8
        assert joint["pins_mm"] == spans(*PINS)
        assert joint["tails_mm"] == spans(*PINS[1:-1])


def test_the_sled_needs_one_swap_where_joint_by_joint_needs_four(plan: Plan) -> None:
    sled = json_out.sled_json(plan)
    assert (sled["height_changes"], sled["fence_swaps"], sled["joint_by_joint_changes"]) == (0, 1, 4)
    assert sled["sled_changes"] == 0
    assert [at["setting"] for at in sled["settings"]] == [1, 2]
    assert [at["fence"] for at in sled["settings"]] == ["right", "left"]
    for at in sled["settings"]:
        assert (at["sled"], at["slope"]) == ("bench", 8)
        assert [at["bit_mm"], at["bit_height_mm"]] == mm(0.5, 0.5)


def test_the_sled_counts_both_ways_of_cutting(plan: Plan) -> None:
    """Two boards at two fences, each cut A, B, B, A; 4 ends of 5 sockets of 2 passes. Seconds: see ``test_views``."""
    sled = json_out.sled_json(plan)
    assert {key: value for key, value in sled.items() if key not in {"settings", "joint_by_joint"}} == {
        "projects": [plan.project.name],
        "changes": 1,
        "sled_changes": 0,
        "height_changes": 0,
        "fence_swaps": 1,
        "handlings": 4,
        "turnings": 4,
        "passes": 40,
        "estimate_s": 520,
        "joint_by_joint_changes": 4,
    }
    assert sled["joint_by_joint"] == {
        "changes": 4,
        "sled_changes": 0,
        "height_changes": 0,
        "fence_swaps": 4,
        "handlings": 7,
        "turnings": 2,
        "passes": 40,
        "estimate_s": 605,
    }
    assert {cut["project"] for at in sled["settings"] for cut in at["cuts"]} == {plan.project.name}


def test_a_lopsided_drawer_cut_by_what_the_json_says_keeps_its_pins() -> None:
    made = planned_lopsided_drawer()
    joints = {(joint["pin_board"], joint["pin_end"]): joint for joint in json_out.joints_json(made)}
    passes: dict[tuple[str, str], list[tuple[str, float]]] = defaultdict(list)
    edges: dict[tuple[str, str], str] = {}
    for at in json_out.sled_json(made)["settings"]:
        for cut in at["cuts"]:
            end = cut["board"], cut["end"]
            edges[end] = cut["reference_edge"]
            passes[end] += [(at["fence"], one["mark_mm"]) for one in cut["passes"]]
    assert passes.keys() == joints.keys()
    for end, joint in joints.items():
        grain = EndGrain(joint["width_mm"], joint["pin_thickness_mm"], joint["slope"], 12.7, joint["pins_mm"])
        assert what_stays(grain, LAID_BY_END[edges[end]], passes[end]) == pytest.approx((0, 0), abs=1e-6)


def test_each_pin_end_is_cut_once_at_each_fence_where_worked_out_above(plan: Plan) -> None:
    marks = {"right": mm(*RIGHT_WALLS), "left": mm(*LEFT_WALLS)}
    for at in json_out.sled_json(plan)["settings"]:
        assert {(cut["board"], cut["end"], cut["joint"]) for cut in at["cuts"]} == {
            ("D1-front", "A", "D1-J4"),
            ("D1-front", "B", "D1-J1"),
            ("D1-back", "A", "D1-J2"),
            ("D1-back", "B", "D1-J3"),
        }
        for cut in at["cuts"]:
            assert cut["reference_edge"] == {"A": "right", "B": "left"}[cut["end"]]
            assert [cut["width_mm"], cut["thickness_mm"]] == mm(5.5, 0.75)
            assert [one["socket"] for one in cut["passes"]] == [1, 2, 3, 4, 5]
            assert [one["mark_mm"] for one in cut["passes"]] == marks[at["fence"]]
            assert cut["residue_mm2"] == 0


def test_a_wedge_stays_where_the_bit_cannot_reach_and_is_told_for_the_whole_end() -> None:
    """Check values of the design: T 40, 1:5, bit 6.35, socket 24 wide, so 8 inside; slot 6.4757 wide; wedge 80 mm².

    Two passes from each wall: the second reaches no further than 8 from its wall, so it lies 8 − 6.4757 beside the
    first. The socket runs from 6 to 30.
    """
    beside = 8 - 6.35 * sqrt(1 + 1 / 25)
    wanted = {"right": [30 - beside, 30], "left": [6, 6 + beside]}
    sled = json_out.sled_json(planned_thick_box())
    assert [at["bit_height_mm"] for at in sled["settings"]] == [40.4, 40.4]
    for at in sled["settings"]:
        for cut in at["cuts"]:
            assert cut["residue_mm2"] == pytest.approx(80, abs=1e-3)
            assert [one["mark_mm"] for one in cut["passes"]] == pytest.approx(wanted[at["fence"]], abs=1e-5)


def test_the_cut_list_counts_board_feet_and_square_feet(plan: Plan) -> None:
    """A board foot is 144 cubic inches, under 1 in counts as 1 in: Noyes, Handwork in Wood (1910), p. 48."""
    found = {tuple(size["marks"]): size for size in json_out.cut_list_json(plan)}
    front, side, bottom = (found[marks] for marks in (
        ("D1-back", "D1-front"), ("D1-left", "D1-right"), ("D1-bottom",)
    ))  # fmt: skip
    assert (front["quantity"], front["measure"]) == (2, "board feet")
    assert front["amount"] == pytest.approx(2 * 12 * 5.5 / 144)
    assert side["amount"] == pytest.approx(2 * 10 * 5.5 / 144)
    assert (bottom["quantity"], bottom["measure"], bottom["kind"]) == (1, "square feet", "sheet")
    assert bottom["amount"] == pytest.approx(11.5 * 9 / 144)


def test_published_board_measure_examples_come_out(plan: Plan) -> None:
    """Noyes (1910) pp. 109–110: 14 ft × 11 in = 12 ft 10 in; 5 ft × 9 in = 3 ft 9 in; 23 ft × 13 in = 24 ft 11 in.

    His feet and inches are feet and twelfths of one inch stock.
    """
    for feet, width, board_feet in ((14, 11, 12 + 10 / 12), (5, 9, 3 + 9 / 12), (23, 13, 24 + 11 / 12)):
        board = cut_to(plan.boards[0], feet * 12 * 25_400_000, width * 25_400_000, 25_400_000)
        assert json_out.cut_list_json(replace(plan, boards=(board,)))[0]["amount"] == pytest.approx(board_feet)


def test_a_metric_cut_list_counts_cubic_metres() -> None:
    """Two boards 300.8 × 36 × 40 and two 200.8 × 36 × 40 mm."""
    sizes = json_out.cut_list_json(planned_thick_box())
    assert [(size["quantity"], size["length_mm"]) for size in sizes] == [(2, 300.8), (2, 200.8)]
    assert [size["amount"] for size in sizes] == pytest.approx([2 * 0.3008 * 0.036 * 0.04, 2 * 0.2008 * 0.036 * 0.04])
    assert {size["measure"] for size in sizes} == {"cubic metres"}


def test_grooves_run_out_on_the_pin_boards_and_stop_on_the_tail_boards(plan: Plan) -> None:
    """On a side the groove would run out through a tail: it stops 3/4 − 1/4 from each end."""
    cuts = {cut["board"]: cut for cut in json_out.cuts_json(plan)}
    for cut in cuts.values():
        assert (cut["kind"], cut["face"], cut["takes"]) == ("groove", "inside", "D1-bottom")
        assert cut["from_reference_edge_mm"] == mm(11 / 32, 19 / 32)
        assert [cut["depth_mm"]] == mm(0.25)
    assert cuts["D1-front"]["from_end_a_mm"] == cuts["D1-back"]["from_end_a_mm"] == mm(0, 12)
    assert cuts["D1-left"]["from_end_a_mm"] == cuts["D1-right"]["from_end_a_mm"] == mm(0.5, 9.5)


def test_the_order_counts_on_and_nothing_comes_before_what_it_needs() -> None:
    order = json_out.order_json(planned_chest())
    assert [work["number"] for work in order] == list(range(1, len(order) + 1))
    done: set[str] = set()
    for work in order:
        for operation in work["operations"]:
            assert set(operation["after"]) <= done
            done.add(operation["mark"])
    assert len(done) == len(planned_chest().operations)


def test_a_setting_names_its_lengths_in_snake_case(plan: Plan) -> None:
    order = json_out.order_json(plan)
    at_the_sled = [work for work in order if work["machine"] == "router table, sled"]
    assert [work["lengths_mm"] for work in at_the_sled] == [
        {"bit_height": 12.7}
    ] * 3  # the practice joint, then two fences
    assert all(work["cautions"] for work in at_the_sled)
    for work in order:
        assert all(name == name.lower() and " " not in name for name in work["lengths_mm"])


def test_checks_are_told_with_their_remedy_the_gravest_first() -> None:
    levels = [check["level"] for check in json_out.checks_json(planned_chest())]
    rank = {"stop": 0, "caution": 1, "note": 2}
    assert all(rank[a] <= rank[b] for a, b in pairwise(levels))
    assert all(check["remedy"] and check["text"] for check in json_out.checks_json(planned_chest()))


def test_openings_name_their_drawers() -> None:
    openings = json_out.openings_json(planned_chest())
    assert [opening["drawer"] for opening in openings] == ["D1", "D2", "D3", "D4", "D5", "D6"]
    assert [opening["opening"] for opening in openings] == [f"C-1.{tier}" for tier in range(1, 7)]
    assert {opening["carcase"] for opening in openings} == {"C"}


def test_the_whole_plan_is_plain_json_and_holds_every_list(plan: Plan) -> None:
    whole = json_out.plan_json(plan)
    assert json.loads(json.dumps(whole, allow_nan=False)) == whole
    assert whole["project"]["units"] == "in"
    for part in ("cut_list", "boards", "sawn", "openings", "joints", "sled", "cuts", "order", "checks"):
        assert whole[part] == getattr(json_out, f"{part}_json")(plan)
