"""What must come before what, checked on the finished order by rules written down apart from the code."""

from __future__ import annotations

from itertools import groupby

from planner.domain.operation import Machine
from planner.pipeline import plan
from planner.plan import tasks
from tests.pieces import inches, six_drawers

CHEST = plan(six_drawers())
PLACE = {mark: n for n, mark in enumerate(mark for work in CHEST.order for mark in work.operations)}


def before(earlier: str, later: str) -> bool:
    return PLACE[earlier] < PLACE[later]


def test_every_operation_is_in_the_order_once_and_after_what_it_needs() -> None:
    assert sorted(PLACE) == sorted(o.mark for o in CHEST.operations)
    assert sum(len(work.operations) for work in CHEST.order) == len(CHEST.operations)
    assert all(before(needed, o.mark) for o in CHEST.operations for needed in o.after)


def test_tails_are_traced_from_finished_pins_of_their_own_joint() -> None:
    for joint in CHEST.joints:
        pin_end = f"{joint.pin_board}-{joint.pin_end}"
        assert before(f"layout {pin_end}", f"pins {pin_end} right fence")
        for fence in ("left", "right"):
            assert before(f"pins {pin_end} {fence} fence", f"trace {joint.mark}")
        for lean in ("left", "right"):
            assert before(f"trace {joint.mark}", f"tails {joint.tail_board}-{joint.tail_end} {lean} lean")


def test_nothing_is_glued_before_its_grooves_are_cut_and_it_was_tried_dry() -> None:
    for cut in CHEST.features:
        box = BOX_OF[cut.board]
        assert before(f"{cut.kind} {cut.board} for {cut.takes}", f"glue {box}")
    for box in ("C", "D1", "D6"):
        assert before(f"dry {box}", f"glue {box}")
        assert before(f"label {box}-bottom", f"glue {box}")


BOX_OF = {board.mark: board.box for board in CHEST.boards}


def test_drawers_are_fitted_once_the_carcase_stands_and_the_back_closes_it() -> None:
    for drawer in ("D1", "D2", "D6"):
        assert before("flush C", f"drawer {drawer}")
        assert before("rails C", f"drawer {drawer}")
        assert before(f"flush {drawer}", f"drawer {drawer}")
        assert before(f"drawer {drawer}", "back C")
    assert PLACE["finish C"] == len(PLACE) - 1


def test_each_setting_is_visited_once() -> None:
    visits = [(work.machine, work.setting, work.task) for work in CHEST.order]
    assert len(set(visits)) == len(visits)


def test_dangerous_machines_carry_their_cautions() -> None:
    for work in CHEST.order:
        if work.machine not in (Machine.BENCH, Machine.GAUGE):
            assert work.cautions, work
    at_sled = next(work for work in CHEST.order if work.machine is Machine.ROUTER_TABLE_SLED)
    text = " ".join(at_sled.cautions)
    for needed in ("Clamp", "stand clear", "never trap", "Lock the bit height", "hearing protection", "manual"):
        assert needed in text


def test_the_order_changes_the_bit_height_no_oftener_than_the_sled_sheet() -> None:
    """Practice joints included: each is made when its height is set for the real boards, not before all of them."""
    at_sled = [work for work in CHEST.order if work.machine is Machine.ROUTER_TABLE_SLED]
    heights = [height for height, _ in groupby(dict(work.setting.lengths)["bit height"] for work in at_sled)]
    assert len(heights) == 1 + CHEST.sled.height_changes == 2
    settings = [setting for setting, _ in groupby(work.setting for work in at_sled)]
    assert len(settings) == len(CHEST.sled.settings)


def test_the_bandsaw_is_set_up_in_the_order_of_the_tails_sheet() -> None:
    at_saw = [work.setting for work in CHEST.order if work.task == tasks.SAW.does]
    assert at_saw == [setting.setting for setting in CHEST.tails]


def test_the_planer_is_set_once_for_each_thickness() -> None:
    # Solid stuff of the chest: 1/2 in sides and backs, 3/4 fronts and rails, 7/8 carcase.
    planed = [dict(work.setting.lengths)["thickness"] for work in CHEST.order if work.machine is Machine.PLANER]
    assert planed == [inches("1/2"), inches("3/4"), inches("7/8")]
