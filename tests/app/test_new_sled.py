"""A sled to be built for a project or for boards: whose joints, what is refused, and the table for the project file."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.app.new_sled import NewSled, for_boards, for_project
from planner.app.sled_slip import A_BOARD, GREATEST_NAME, MEASURES, SledSlip, typed
from planner.derive.sled_to_build import boards_of
from planner.domain.project import Project
from planner.domain.ring import with_half_blind_front
from planner.domain.sled import MICRO
from planner.domain.words import Side
from planner.errors import InputError, PlanError, Problem
from planner.intake.project_file import read_project
from planner.lengths import Grid, Nm, Unit, read_length
from planner.pipeline import plan
from tests.app.texts import BOX, CHEST, SAMPLES
from tests.derive.sled_wishes import METRIC, millimetres
from tests.pieces import inches
from tests.present.pieces import drawer

INCHES = SledSlip(
    bit="1/2",
    cutting="1-1/2",
    reach="2",
    mitre_width="3/4",
    mitre_depth="3/8",
    mitre_from_bit="5-3/8",
    mitre_side="right",
    table="16",
    floor="1/2",
    fence="3/4",
)
MM = SledSlip(
    bit="9.96",
    cutting="38",
    reach="45",
    mitre_width="19.05",
    mitre_depth="9.5",
    mitre_from_bit="140",
    mitre_side="left",
    table="400",
    floor="12",
    fence="18",
)
BOARDS = replace(MM, bit="12", slope="1:8", units="mm", boards=("230 x 20 x 600, mate 20",))
"""The sled worked out by hand in the docstring of ``derive.sled_to_build``."""

MUST_BE_GIVEN = (
    "bit", "cutting", "reach", "mitre_width", "mitre_depth", "mitre_from_bit", "mitre_side", "table", "floor", "fence",
)  # fmt: skip
TWO = BOX.replace("[[box]]", '[sled.wide]\nslope = "1:6"\nbit = 8\ngreatest_bit_height = 30\ngreatest_width = 400\n'
                  "greatest_upright = 600\n\n[[box]]").replace('units = "mm"', 'units = "mm"\nsled = "bench"') + """
[[box]]
mark = "T"
sled = "wide"
length = 300
width = 260
height = 120
material = "elm"
thickness = 15
"""  # fmt: skip
"""The salt box on sled bench, 1:7, and a larger one on sled wide, 1:6."""


def project(text: str) -> Project:
    return read_project(text, "test")


def chest() -> Project:
    return project(CHEST.read_text(encoding="utf-8"))


def marks(found: NewSled) -> set[str]:
    return {board.mark for board in found.boards}


# --- figures ------------------------------------------------------------------------------------------------


def test_the_limits_for_the_chest_are_those_worked_out_on_paper() -> None:
    """The carcase's top and bottom carry pins: 16 wide, 3/4 thick, 22 and twice 1/64 long, their mates 3/4 thick.

    Fences reach 16 + 2 and are a third of 22 1/32 high, 7 11/32. Bit height: 3/4 + 1/64 = 49/64. The guard is
    49/64 + 3/4 = 1 33/64 high, 1 17/32 on the grid of 1/32, so it takes 1 17/32 − 3/4 = 25/32.
    """
    found = for_project(chest(), INCHES)
    sled = found.built.sled
    assert (sled.name, sled.run_micro, sled.bit_nm) == ("bench", 8 * MICRO, inches("1/2"))
    assert (sled.greatest_width_nm, sled.greatest_upright_nm) == (inches("16"), inches("22 1/32"))
    assert sled.greatest_bit_height_nm == inches("25/32")
    assert found.built.right_fence.height_nm == inches("7 11/32")
    assert len(found.boards) == 28  # 4 corners of the carcase, 6 × 4 of the drawers
    assert found.replaces == ("bench",)


def test_a_board_is_read_as_width_thickness_length_and_its_mate() -> None:
    (board,) = for_boards(BOARDS).boards
    assert (board.mark, board.width_nm, board.thickness_nm, board.length_nm) == (
        "board 1", millimetres("230"), millimetres("20"), millimetres("600"),
    )  # fmt: skip
    assert board.bit_height_nm == millimetres("20.4")  # stands out 0.4 as is usual
    assert board.narrowest_socket_nm is None
    assert for_boards(BOARDS).wish == METRIC


@pytest.mark.parametrize(
    "said",
    ["230x20x600 mate 20", "230 × 20 × 600,mate 20mm", " 23 cm X 2 cm x 600, MATE 20 ", "230x 20 x600,  mate  20"],
)
def test_a_board_may_be_typed_in_any_of_these_ways(said: str) -> None:
    assert for_boards(replace(BOARDS, boards=(said,))) == for_boards(BOARDS)


def test_the_example_that_help_gives_can_be_read() -> None:
    (board,) = for_boards(replace(INCHES, slope="1:8", units="in", boards=(A_BOARD,))).boards
    assert (board.width_nm, board.thickness_nm, board.length_nm) == (inches("5 1/2"), inches("3/4"), inches("30"))
    assert board.bit_height_nm == inches("33/64")  # 1/2 and the usual 1/64


def test_boards_say_how_far_their_joints_stand_out() -> None:
    heights = [for_boards(replace(BOARDS, proud=said)).boards[0].bit_height_nm for said in ("0", "1 mm", "0.3")]
    assert heights == [millimetres("20"), millimetres("21"), millimetres("20.3")]


@pytest.mark.parametrize("said", ["in", "IN", " In "])
def test_the_unit_of_boards_counts_however_it_is_typed(said: str) -> None:
    found = for_boards(replace(INCHES, slope="1:8", units=said, boards=(A_BOARD,)))
    assert (found.boards[0].width_nm, found.wish.grid) == (inches("5 1/2"), Grid.IN_32)


def test_several_boards_are_counted_in_the_order_typed() -> None:
    found = for_boards(replace(BOARDS, boards=("100 x 20 x 600, mate 10", "230 x 12 x 300, mate 20")))
    assert [(board.mark, board.width_nm) for board in found.boards] == [
        ("board 1", millimetres("100")),
        ("board 2", millimetres("230")),
    ]
    assert found.built == for_boards(BOARDS).built  # the widest, thickest and longest are the same


def test_bare_lengths_count_in_the_unit_of_the_project_and_others_in_their_own() -> None:
    metric = replace(INCHES, bit="12.7 mm", cutting="38.1 mm", mitre_side=" Right ")
    assert for_project(chest(), metric) == for_project(chest(), INCHES)


def test_room_for_clamps_is_usual_where_it_is_not_said() -> None:
    # Reach of the fences: 16 wide and the stop block's 2, or 4, or none; none leaves (6 + 4)·√65/8 = 10.08 below 16.
    said = {beside: replace(INCHES, beside=beside) for beside in (None, "4", "0")}
    reach = {beside: for_project(chest(), slip).built.right_fence.reach_nm for beside, slip in said.items()}
    assert reach == {None: inches("18"), "4": inches("20"), "0": inches("16")}
    clamps = for_project(chest(), replace(INCHES, before="3", behind="0")).wish.clamps
    assert (clamps.before_nm, clamps.behind_nm) == (inches("3"), inches("0"))


def test_the_side_of_the_mitre_slot_is_where_the_runner_comes() -> None:
    for side in Side:
        assert for_boards(replace(BOARDS, mitre_side=str(side))).built.runner.side is side


# --- whose joints -------------------------------------------------------------------------------------------


def test_joints_of_more_than_one_slope_want_a_sled_named() -> None:
    (problem,) = refused(lambda: for_project(project(TWO), MM), InputError)
    assert problem.where == "--like"
    assert "bench 1:7, wide 1:6" in problem.what
    assert "--slope" in problem.remedy


def test_a_sled_named_wrongly_is_the_only_thing_that_is_told_then() -> None:
    (problem,) = refused(lambda: for_project(project(TWO), replace(MM, like="bensh")), InputError)
    assert "Did you mean bench?" in problem.remedy


def test_a_sled_named_takes_its_own_joints_and_its_slope() -> None:
    small = for_project(project(TWO), replace(MM, bit="8", like="bench"))
    large = for_project(project(TWO), replace(MM, bit="8", like="wide"))
    assert (small.built.sled.name, small.built.sled.run_micro, small.replaces) == ("bench", 7 * MICRO, ("bench",))
    assert (large.built.sled.name, large.built.sled.run_micro, large.replaces) == ("wide", 6 * MICRO, ("wide",))
    # Pins are on the shorter pair, the sides: as wide as the box is high.
    assert marks(small) == {"S-right", "S-left"}
    assert marks(large) == {"T-right", "T-left"}
    assert {board.width_nm for board in large.boards} == {millimetres("120")}


def test_one_slope_for_all_joints_takes_them_all() -> None:
    found = for_project(project(TWO), replace(MM, bit="8", slope="1:8", name="one for all"))
    assert marks(found) == {"S-right", "S-left", "T-right", "T-left"}
    assert found.replaces == ("bench", "wide")
    both = re.sub(r'sled = "\w+"', 'sled = "one for all"', TWO)
    assert len(plan(project(with_sled(both, found.project_file))).joints) == 8


def test_sleds_of_one_slope_are_replaced_together() -> None:
    found = for_project(project(TWO.replace("1:6", "1:7")), replace(MM, bit="8"))
    assert marks(found) == {"S-right", "S-left", "T-right", "T-left"}
    assert found.built.sled.name == "bench"
    assert "# In place of the table of sled bench.\n# Name it where the sled is wide now.\n" in found.project_file


def test_half_blind_corners_are_hand_work_and_ask_nothing_of_the_sled() -> None:
    """The front of 3/4 is half-blind, so only the back carries pins for the sled; with the front through, both do."""
    through = drawer()
    (box,) = through.boxes
    blind = replace(through, boxes=(replace(box, ring=with_half_blind_front(box.ring, inches("1/4"))),))
    assert marks(for_project(through, INCHES)) == {"D1-front", "D1-back"}
    assert marks(for_project(blind, INCHES)) == {"D1-back"}


def test_limits_of_the_old_sled_do_not_hold_for_the_new_one() -> None:
    """A project that was stored with a sled too small for it: that is when a new one is wanted."""
    wanted = for_project(chest(), INCHES)
    small = replace(chest().sleds[0], greatest_width_nm=inches("1"), greatest_depth_hard_nm=inches("1/8"))
    assert for_project(replace(chest(), sleds=(small,)), INCHES) == wanted


def test_pins_are_laid_out_for_the_new_slope() -> None:
    """As for a project file that says 1:2; its old sled is large enough for the chest."""
    steep = plan(project(CHEST.read_text(encoding="utf-8").replace('slope = "1:8"', 'slope = "1:2"')))
    expected = boards_of(steep.joints, {board.mark: board for board in steep.boards})
    assert for_project(chest(), replace(INCHES, slope="1:2")).boards == expected
    assert for_project(chest(), INCHES).boards != expected


def test_pins_are_laid_out_for_the_new_bit() -> None:
    """A bit of 3/4 cuts a slot of 3/4·√65/8 = 0.7559; through 3/4 the slope takes 2 · 3/32 = 0.1875 of a socket."""
    thick = for_project(chest(), replace(INCHES, bit="3/4"))
    carcase = [board for board in thick.boards if board.mark.startswith("C-")]
    for board in carcase:
        assert board.narrowest_socket_nm is not None
        assert board.narrowest_socket_nm / inches("1") >= 0.7559 + 0.1875
    with pytest.raises(PlanError, match="narrower than the slot of the bit"):
        for_project(project(BOX + "\n[box.pins]\ntails = 4\n"), replace(MM, bit="16"))


# --- the table for the project file -------------------------------------------------------------------------


def with_sled(text: str, table: str) -> str:
    """A project file with another table in place of its first sled's; tables end at an empty line."""
    return re.sub(r"^\[sled\.[^\n]*\n(?:[^\n]+\n)*", lambda _: table, text, count=1, flags=re.MULTILINE)


@pytest.mark.parametrize(
    ("sample", "slip"),
    [
        ("six_drawer_chest.toml", INCHES),
        ("bench_cabinet.toml", MM),
        ("twelve_boxes.toml", replace(MM, bit="5.98")),
    ],
)
def test_each_sample_is_planned_on_the_sled_worked_out_for_it_without_complaint(sample: str, slip: SledSlip) -> None:
    text = (SAMPLES / sample).read_text(encoding="utf-8")
    before = project(text)
    after = project(with_sled(text, for_project(before, slip).project_file))
    assert after != before
    assert replace(after, sleds=before.sleds) == before
    assert plan(after).joints == plan(before).joints
    assert plan(after).findings == plan(before).findings


@given(
    st.text(st.characters(exclude_categories=["C", "Z"]), min_size=1, max_size=GREATEST_NAME),
    st.sampled_from(["1:8", "7 deg", "1:6.25", "9.5°"]),
    st.sampled_from(["8", "7.98", "5/16 in", "0.31 in"]),
)
def test_the_table_reads_back_to_the_sled(name: str, slope: str, bit: str) -> None:
    found = for_project(project(BOX), replace(MM, name=name, slope=slope, bit=bit))
    assert project(with_sled(BOX, found.project_file)).sleds == (found.built.sled,)


@pytest.mark.parametrize("name", ["n" * GREATEST_NAME, "n" * (GREATEST_NAME + 1), "", " n", "n\x07"])
def test_a_name_is_taken_just_where_the_project_file_takes_it(name: str) -> None:
    def in_file() -> str:
        return project(BOX.replace("[sled.bench]", f"[sled.{json.dumps(name)}]")).sleds[0].name

    def on_slip() -> str:
        return for_project(project(BOX), replace(MM, bit="8", name=name)).built.sled.name

    if name == "n" * GREATEST_NAME:
        assert in_file() == on_slip() == name
    else:
        refused(in_file, InputError)
        assert {problem.where for problem in refused(on_slip, InputError)} == {"--name"}


# --- refusals -----------------------------------------------------------------------------------------------


def refused(work: Callable[[], object], error: type[InputError | PlanError]) -> tuple[Problem, ...]:
    with pytest.raises(error) as found:
        work()
    for problem in found.value.problems:
        assert problem.where
        assert problem.what
        assert problem.remedy
    return found.value.problems


def test_all_measures_that_are_missing_are_named_at_once_with_how_to_take_them() -> None:
    problems = refused(lambda: for_project(chest(), SledSlip()), InputError)
    assert [problem.where for problem in problems] == [typed(name) for name in MUST_BE_GIVEN]
    assert [problem.remedy for problem in problems] == [MEASURES[name] for name in MUST_BE_GIVEN]
    boards = refused(lambda: for_boards(SledSlip(boards=(A_BOARD,))), InputError)
    assert {problem.where for problem in boards} == {"--units", "--slope", *map(typed, MUST_BE_GIVEN)}


BAD = {
    "mitre_side": ("up", "'up'"),
    "units": ("ell", "'ell'"),
    "slope": ("1:99", "'1:99' is too flat"),
    "name": ("", "''"),
    "proud": ("-1", "'-1' is negative"),
    "before": ("0", "'0' is no length"),
}
LENGTHS = ("bit", "cutting", "reach", "mitre_width", "mitre_depth", "mitre_from_bit", "table", "floor", "fence",
           "beside", "before", "behind", "proud")  # fmt: skip


@pytest.mark.parametrize(
    ("name", "said", "what"),
    [(name, *bad) for name, bad in BAD.items()] + [(name, "1/2 ell", "'1/2 ell' is not a length") for name in LENGTHS],
)
def test_what_cannot_be_read_is_quoted_with_its_option(name: str, said: str, what: str) -> None:
    changed: dict[str, Any] = {name: said}
    (problem,) = refused(lambda: for_boards(replace(BOARDS, **changed)), InputError)
    assert problem.where == typed(name)
    assert what in problem.what


def test_everything_wrong_with_a_slip_is_told_at_once() -> None:
    wrong: dict[str, Any] = dict.fromkeys(LENGTHS, "x") | {name: said for name, (said, _) in BAD.items()}
    slip = replace(BOARDS, **wrong, like="bench", boards=("230 x 20", "1 x 2 x y, mate z"))
    where = [problem.where for problem in refused(lambda: for_boards(slip, "Landing chest"), InputError)]
    assert sorted(where) == sorted(
        [
            *map(typed, wrong),
            "--like",
            "project 'Landing chest'",
            "--board, board 1",
            "--board, board 2, length",
            "--board, board 2, mate's thickness",
        ]
    )


@pytest.mark.parametrize("said", ["", "230 x 20 x 600", "230 x 20, mate 20", "1 x 2 x 3 x 4, mate 5", " x x , mate 1"])
def test_what_is_no_board_is_refused_with_an_example(said: str) -> None:
    (problem,) = refused(lambda: for_boards(replace(BOARDS, boards=(said,))), InputError)
    assert problem.where == "--board, board 1"
    assert repr(said) in problem.what
    assert A_BOARD in problem.remedy


def test_what_belongs_to_boards_is_refused_beside_a_project() -> None:
    problems = refused(lambda: for_project(chest(), replace(INCHES, units="in", proud="0")), InputError)
    assert [problem.where for problem in problems] == ["--units", "--proud"]


def test_a_sled_that_cuts_no_joint_is_refused_with_the_nearest() -> None:
    (problem,) = refused(lambda: for_project(chest(), replace(INCHES, like="bensh")), InputError)
    assert problem.where == "--like"
    assert "'bensh'" in problem.what
    assert "Did you mean bench?" in problem.remedy


def test_a_sled_that_stays_keeps_its_name() -> None:
    slip = replace(MM, bit="8", like="bench")
    (problem,) = refused(lambda: for_project(project(TWO), replace(slip, name="wide")), InputError)
    assert problem.where == "--name"
    assert "'wide' is another sled" in problem.what
    assert for_project(project(TWO), replace(slip, name="bench")).built.sled.name == "bench"


def test_every_reason_why_no_sled_can_be_built_is_told() -> None:
    slip = replace(INCHES, cutting="1", reach="1", mitre_from_bit="3/4", mitre_depth="1/8", table="2")
    problems = refused(lambda: for_project(chest(), slip), PlanError)
    assert {problem.where for problem in problems} == {"bench"}
    assert len(problems) == 5


def test_the_same_slip_gives_the_same_sled() -> None:
    assert for_project(chest(), INCHES) == for_project(chest(), INCHES)


def test_every_measure_is_a_field_of_the_slip() -> None:
    assert set(MEASURES) <= set(SledSlip.__dataclass_fields__)
    assert set(MUST_BE_GIVEN) < set(MEASURES)


def length(said: str) -> Nm:
    return read_length(said, Unit.MM)


@given(st.integers(60, 300), st.integers(8, 25), st.integers(100, 900), st.integers(8, 20))
def test_any_list_of_boards_gives_limits_that_take_them(width: int, thick: int, long: int, mate: int) -> None:
    sled = for_boards(replace(BOARDS, boards=(f"{width} x {thick} x {long}, mate {mate}",))).built.sled
    assert sled.greatest_width_nm >= length(str(width))
    assert sled.greatest_upright_nm >= length(str(long))
    assert sled.greatest_bit_height_nm >= length(f"{mate}.4")
