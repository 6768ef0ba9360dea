"""A sled to be built, against a picture of it from above, hand arithmetic, and the checks that its limits must pass."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import replace
from decimal import ROUND_CEILING, Decimal, localcontext
from fractions import Fraction
from math import atan, degrees, hypot
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import box
from shapely.ops import unary_union

from planner.derive.joints import joints
from planner.derive.sled_case import SledCase
from planner.derive.sled_to_build import boards_of, sled_to_build
from planner.domain.plan import BoardSize, Plan
from planner.domain.project import Project
from planner.domain.sled import MICRO, Sled
from planner.domain.sled_to_build import FloorEnd, SledToBuild, SledWish, UprightBoard
from planner.domain.words import End, Side
from planner.errors import PlanError
from planner.lengths import Nm
from planner.pipeline import plan
from tests.derive.sled_wishes import INCHES, METRIC, TOP, Case, boards, cases, grids, millimetres
from tests.oracle.sled_floor import MM, Picture, parallelogram
from tests.oracle.sled_polygons import EndGrain
from tests.pieces import cut_to, inches, six_drawers, small_box

BUILT = sled_to_build(METRIC, [TOP])

# --- any boards, slope, bit, table -------------------------------------------------------------------------


@given(cases())
def test_everything_has_its_place_in_the_picture_from_above(case: Case) -> None:
    wish, upright = case
    assert Picture(sled_to_build(wish, upright), wish).unmet(upright) == set()


def _smaller(built: SledToBuild, part: str, size: str, step: int) -> SledToBuild:
    """The same sled with one size a step smaller, on both fences alike."""
    names = ("right_fence", "left_fence") if part == "fence" else (part,)
    whole = {name: getattr(built, name) for name in names}
    return replace(built, **{n: replace(p, **{size: getattr(p, size) - step}) for n, p in whole.items()})


MAIN_SIZES = [
    ("fence", "reach_nm"),
    ("fence", "height_nm"),
    ("fence", "face_from_middle_nm"),
    ("floor", "middle_to_stop_nm"),
    ("floor", "middle_to_end_nm"),
    ("floor", "left_nm"),
    ("floor", "right_nm"),
    ("guard", "length_nm"),
    ("guard", "width_nm"),
    ("guard", "height_nm"),
]


@pytest.mark.parametrize(("part", "size"), MAIN_SIZES)
@given(case=cases())
def test_no_main_size_could_be_a_step_smaller(part: str, size: str, case: Case) -> None:
    wish, upright = case
    built = sled_to_build(wish, upright)
    assert Picture(_smaller(built, part, size, wish.grid.step_nm), wish).unmet(upright)


@given(cases(), st.data())
def test_a_pass_takes_the_parallelogram_of_its_fence(case: Case, data: st.DataObject) -> None:
    """The disaster check: fences, board and bit placed as the words say, and the cut looked at on the board itself."""
    wish, upright = case
    picture = Picture(sled_to_build(wish, upright), wish)
    board = data.draw(st.sampled_from(upright))
    width, thickness = board.width_nm / MM, board.thickness_nm / MM
    mark = data.draw(st.floats(0, width))
    for fence in picture.built.fences:
        wanted = parallelogram(fence.side, wish.run_micro / MICRO, picture.bit, thickness, mark)
        wanted = wanted.intersection(box(0, 0, width, thickness))
        assert picture.taken(fence, (width, thickness), mark).symmetric_difference(wanted).area < 1e-6


@given(cases(), st.data())
def test_a_board_within_the_limits_stays_on_its_fence_wherever_its_sockets_are(case: Case, data: st.DataObject) -> None:
    """For any pass whose slot stays within the board, as DESIGN §6 asks: no pass enters a pin, half-pins included."""
    wish, upright = case
    built = sled_to_build(wish, upright)
    picture, thickness = Picture(built, wish), built.greatest_thickness_nm / MM
    width = built.sled.greatest_width_nm / MM
    lean_and_slot = thickness / (wish.run_micro / MICRO) + picture.bit * hypot(1, MICRO / wish.run_micro)
    if lean_and_slot > width:
        return
    for fence in built.fences:
        mark = data.draw(st.floats(lean_and_slot, width))
        mark = mark if fence.side is Side.RIGHT else width - mark
        frame = picture.board_before_operator(fence, thickness, mark)
        foot = frame.patch((0, width), (0, thickness))
        reach, stop_block = fence.reach_nm / MM, wish.clamps.beside_nm / MM
        behind = picture.stand(fence).patch((stop_block - reach, reach - stop_block), (-thickness, 0))
        assert behind.buffer(1e-6, join_style="mitre").covers(foot)


# --- whole pieces cut on the sled that was worked out for them ---------------------------------------------


def _rebuilt(project: Project, wish: SledWish) -> tuple[Plan, SledToBuild]:
    """A project planned with a generous sled, its sled worked out, and the project planned again within its limits."""
    generous = Sled(
        name="main",
        run_micro=wish.run_micro,
        bit_nm=wish.bit.diameter_nm,
        greatest_bit_height_nm=inches("50"),
        greatest_width_nm=inches("100"),
        greatest_upright_nm=inches("200"),
    )
    first = plan(replace(project, sleds=(generous,)))
    built = sled_to_build(wish, boards_of(first.joints, {board.mark: board for board in first.boards}))
    return plan(replace(project, sleds=(built.sled,))), built


LONG_TABLE = replace(INCHES, name="main", table_each_way_nm=inches("30"))


@pytest.mark.parametrize("project", [six_drawers(), small_box()], ids=["chest", "box"])
@pytest.mark.parametrize("run_micro", [6 * MICRO, 8_144_346])
def test_a_piece_cut_on_its_own_sled_keeps_its_pins(project: Project, run_micro: int) -> None:
    """Every pass of the sled sheet, swept on the floor; the pins drawn from the reference edge, both ends."""
    wish = replace(LONG_TABLE, run_micro=run_micro)
    piece, built = _rebuilt(project, wish)
    picture = Picture(built, wish)
    fences = {fence.side: fence for fence in built.fences}
    taken: dict[tuple[str, End], list[Any]] = defaultdict(list)
    residue: dict[tuple[str, End], float] = {}
    for setting in piece.sled.settings:
        for cut in setting.cuts:
            board = (cut.width_nm / MM, cut.thickness_nm / MM)
            residue[cut.board, cut.end] = cut.residue_mm2
            taken[cut.board, cut.end] += [
                picture.taken(fences[setting.fence], board, each.mark_nm / MM) for each in cut.passes
            ]
    assert {(joint.pin_board, joint.pin_end) for joint in piece.joints} == taken.keys()
    for joint in piece.joints:
        grain = EndGrain(
            width=joint.width_nm / MM,
            thickness=joint.pin_thickness_nm / MM,
            slope=float(joint.slope),
            bit=picture.bit,
            pins=[(a / MM, b / MM) for a, b in joint.pins],
        )
        pins = unary_union(grain.pin_polygons(joint.pin_end.value))
        gone = unary_union(taken[joint.pin_board, joint.pin_end])
        waste = box(0, 0, grain.width, grain.thickness).difference(pins)
        assert gone.intersection(pins).area == pytest.approx(0, abs=1e-4)
        assert waste.difference(gone).area == pytest.approx(residue[joint.pin_board, joint.pin_end], abs=1e-4)


@given(grids(60, 500), grids(80, 900), grids(12, 40), st.integers(4 * MICRO, 10 * MICRO))
def test_the_limits_let_every_joint_pass_that_the_sled_was_made_for(
    height: Nm, length: Nm, thickness: Nm, run_micro: int
) -> None:
    project = small_box()
    sizes: dict[str, BoardSize] = {
        board.mark: cut_to(board, length, height, thickness) for board in plan(project).boards
    }
    wish = replace(
        INCHES,
        name="main",
        run_micro=run_micro,
        bit=replace(INCHES.bit, cutting_length_nm=inches("3"), reach_nm=inches("3")),
        table_each_way_nm=inches("60"),
    )
    generous = replace(
        project.sleds[0], run_micro=run_micro, greatest_bit_height_nm=inches("9"), greatest_upright_nm=inches("99")
    )
    try:
        laid_out = joints(replace(project, sleds=(generous,)), sizes)
    except PlanError:
        return  # sockets too narrow for the bit, whatever the sled
    built = sled_to_build(wish, boards_of(laid_out, sizes))
    assert joints(replace(project, sleds=(built.sled,)), sizes) == laid_out


# --- by hand -----------------------------------------------------------------------------------------------


def test_a_sled_by_hand_in_millimetres() -> None:
    """The arithmetic stands in the docstring of the module."""
    right, left, floor = BUILT.right_fence, BUILT.left_fence, BUILT.floor
    assert (right.reach_nm, right.height_nm, right.face_from_middle_nm) == tuple(
        map(millimetres, ("280", "200", "73.9"))
    )
    assert replace(left, side=right.side, stands_at=right.stands_at, operator_at=right.operator_at,
                   end_towards=right.end_towards) == right  # fmt: skip
    assert (floor.middle_to_stop_nm, floor.middle_to_end_nm) == (millimetres("108.2"), millimetres("186.1"))
    assert (floor.left_nm, floor.right_nm) == (millimetres("287.8"), millimetres("287.6"))
    assert (floor.length_nm, floor.width_nm) == (millimetres("372.2"), millimetres("575.4"))
    assert (BUILT.guard.length_nm, BUILT.guard.width_nm, BUILT.guard.height_nm) == tuple(
        map(millimetres, ("42.2", "52", "40.4"))
    )
    # Bit 12 + 20.4; table 108.2 + 50.
    # Limits: height 38 − 12 = 26 by the bit, 40.4 − 20 = 20.4 by the guard; width 280 − 50; upright 3 · 200.
    assert BUILT.cutting_length_needed_nm == millimetres("32.4")
    assert BUILT.table_each_way_needed_nm == millimetres("158.2")
    assert BUILT.sled == Sled(
        name="bench",
        run_micro=8 * MICRO,
        bit_nm=millimetres("12"),
        greatest_bit_height_nm=millimetres("20.4"),
        greatest_width_nm=millimetres("230"),
        greatest_upright_nm=millimetres("600"),
    )
    # Mitre slot 9.5 deep less 0.5 of play; as wide as measured, not rounded.
    assert (BUILT.runner.width_nm, BUILT.runner.height_nm) == (millimetres("19.05"), millimetres("9"))
    assert (BUILT.runner.centre_from_slot_nm, BUILT.runner.side) == (millimetres("140"), Side.LEFT)
    assert BUILT.findings == ()


def test_the_bit_starts_clear_of_a_thick_board_and_a_high_fence_leaves_sight() -> None:
    # 1:10, √101 = 10.04988. Start: (40 + 6 + 10)·10.04988/10 = 56.28. Clamp: reach 250·1.004988 = 251.3, sin 0.0995037:
    # 25.005 + (40 + 10)·99/(20·10.04988) = 49.63. Sight: 100/4 + 20·1.004988 = 45.1.
    thick = replace(TOP, thickness_nm=millimetres("40"), width_nm=millimetres("100"), length_nm=millimetres("300"))
    wish = replace(METRIC, run_micro=10 * MICRO, clamps=replace(METRIC.clamps, before_nm=millimetres("10")))
    assert sled_to_build(wish, [thick]).right_fence.face_from_middle_nm == millimetres("56.3")
    # The board of the docstring, 900 long: fences 300 high. Sight: 75 + 10/0.992278 = 85.08, more than 73.80.
    tall = sled_to_build(METRIC, [replace(TOP, length_nm=millimetres("900"))]).right_fence
    assert (tall.height_nm, tall.face_from_middle_nm) == (millimetres("300"), millimetres("85.1"))


def test_one_in_seven_over_twelve_inches() -> None:
    # 12/7 = 1.714286 in, 109.71 sixty-fourths, so 110/64 = 1.71875: a slope of 0.1432292 against
    # 0.1428571. atan: 8.15104° against 8.13010°. Over 3/4 in both sides: 2 · 0.75 · 0.000372 = 0.000558 in.
    angle = sled_to_build(INCHES, [replace(TOP, thickness_nm=inches("3/4"))]).angle
    assert (angle.run_nm, angle.rise_nm) == (inches("12"), inches("1 23/32"))
    assert angle.degrees == pytest.approx(8.13010, abs=1e-5)
    assert angle.error_degrees == pytest.approx(0.02090, abs=2e-5)
    assert angle.pin_error_nm / inches("1") == pytest.approx(0.000558, abs=1e-6)
    assert angle.lean_nm / inches("1") == pytest.approx(0.75 / 7, abs=1e-7)


def test_the_textbook_slope_in_degrees() -> None:
    """Noyes, *Handwork in Wood* (1910) p. 165, draws 5/8 in on 3 in, 1 in 4.8: a flank of 78.23° from the edge."""
    angle = sled_to_build(replace(METRIC, run_micro=4_800_000), [TOP]).angle
    assert 90 - angle.degrees == pytest.approx(78.23, abs=5e-3)
    # 300/4.8 = 62.5 exactly; 20/4.8 = 4.1667.
    assert (angle.rise_nm, angle.error_degrees, angle.pin_error_nm) == (millimetres("62.5"), 0, 0)
    assert angle.lean_nm == 4_166_667


@given(cases())
def test_the_rise_is_the_nearest_and_its_error_is_what_it_says(case: Case) -> None:
    wish, upright = case
    angle, run = sled_to_build(wish, upright).angle, wish.run_micro / MICRO
    step = wish.grid.fine.step_nm
    assert angle.rise_nm % step == 0
    assert abs(angle.rise_nm - angle.run_nm / run) <= step / 2 + 1e-3
    set_to = degrees(atan(angle.rise_nm / angle.run_nm))
    assert angle.error_degrees == pytest.approx(set_to - degrees(atan(1 / run)), abs=1e-9)
    thickest = max(board.thickness_nm for board in upright)
    gain = 2 * thickest * abs(angle.rise_nm / angle.run_nm - 1 / run)
    assert gain - 1e-3 <= angle.pin_error_nm <= gain + 1 + 1e-3


def test_which_end_of_which_fence_comes_to_whom() -> None:
    """As the sketch shows: both fences lean in on the near operator's right; each has its own operator opposite."""
    right, left = BUILT.right_fence, BUILT.left_fence
    assert (right.stands_at, right.operator_at, right.end_towards) == (FloorEnd.FAR, FloorEnd.NEAR, Side.RIGHT)
    assert (left.stands_at, left.operator_at, left.end_towards) == (FloorEnd.NEAR, FloorEnd.FAR, Side.LEFT)
    picture = Picture(BUILT, METRIC)
    far, near = (picture.fence(fence) for fence in BUILT.fences)
    gap_right = far.intersection(box(200, -999, 210, 999)).distance(near.intersection(box(200, -999, 210, 999)))
    gap_left = far.intersection(box(-210, -999, -200, 999)).distance(near.intersection(box(-210, -999, -200, 999)))
    assert gap_right < 2 * 73.9 < gap_left


def test_a_fence_put_up_the_wrong_way_would_be_found_out() -> None:
    """The disaster check can fail: with the fence leaning the other way the pass is not the parallelogram wanted."""
    wrong = replace(BUILT, right_fence=replace(BUILT.right_fence, end_towards=Side.LEFT))
    taken = Picture(wrong, METRIC).taken(wrong.right_fence, (230, 20), 100)
    assert taken.symmetric_difference(parallelogram(Side.RIGHT, 8, 12, 20, 100)).area > 10


def test_turning_a_fence_end_for_end_keeps_its_hand() -> None:
    """A right fence at the other end, its operator walking with it, is still a right fence."""
    moved = replace(BUILT.right_fence, stands_at=FloorEnd.NEAR, operator_at=FloorEnd.FAR)
    taken = Picture(BUILT, METRIC).taken(moved, (230, 20), 100)
    assert taken.symmetric_difference(parallelogram(Side.RIGHT, 8, 12, 20, 100)).area < 1e-6


# --- exactness ---------------------------------------------------------------------------------------------


@given(cases(), st.fractions(-500, 500), st.fractions(-500, 500))
def test_rounding_up_is_exact(case: Case, plain: Fraction, askew: Fraction) -> None:
    """Against a root worked out to 60 digits."""
    asked = SledCase.of(*case)
    plain, askew = plain * MM, askew * MM
    with localcontext() as context:
        context.prec = 60
        n = Decimal(asked.wish.run_micro) / MICRO
        wanted = Decimal(plain.numerator) / plain.denominator
        wanted += Decimal(askew.numerator) / askew.denominator / (n * n + 1).sqrt()
        steps = (wanted / asked.wish.grid.step_nm - Decimal("1e-40")).to_integral_value(ROUND_CEILING)
    assert asked.up(plain, askew) == int(steps) * asked.wish.grid.step_nm


def test_rounding_up_at_the_very_border() -> None:
    # n = 2.4: √(2.4² + 1) = 2.6 exactly, so 260 000 askew is 100 000, a step of 0.1 mm.
    asked = SledCase.of(replace(METRIC, run_micro=2_400_000), [TOP])
    wanted = {260_000: 1, 260_001: 2, 259_999: 1, 0: 0, -259_999: 0, -260_000: -1, -260_001: -1}
    assert {askew: asked.up(0, askew) // 100_000 for askew in wanted} == wanted


def test_the_same_wish_gives_the_same_sled_in_any_order_of_boards() -> None:
    others = [replace(TOP, mark="K-back", width_nm=millimetres("120")), TOP]
    first, second = sled_to_build(METRIC, others), sled_to_build(METRIC, others[::-1])
    assert first == second


@given(cases(), boards())
def test_more_boards_never_make_a_smaller_sled(case: Case, more: list[UprightBoard]) -> None:
    wish, upright = case
    wish = replace(wish, bit=replace(wish.bit, cutting_length_nm=millimetres("99"), reach_nm=millimetres("99")))
    small, large = sled_to_build(wish, upright), sled_to_build(wish, upright + more)
    for part, size in MAIN_SIZES:
        name = "right_fence" if part == "fence" else part
        assert getattr(getattr(large, name), size) >= getattr(getattr(small, name), size)


def test_boards_of_a_plan_are_its_pin_ends() -> None:
    # The box: pins on left and right, 8 in inside and 1/2 in thick, so 9 in and twice 1/64 proud; height 5 1/2 in.
    box_plan = plan(small_box())
    taken = boards_of(box_plan.joints, {board.mark: board for board in box_plan.boards})
    assert sorted(board.mark for board in taken) == ["K-left", "K-left", "K-right", "K-right"]
    assert {board.length_nm for board in taken} == {inches("9 1/32")}
    assert {board.width_nm for board in taken} == {inches("5 1/2")}
    assert {board.bit_height_nm for board in taken} == {inches("33/64")}
    assert {board.narrowest_socket_nm for board in taken} == {inches("1 1/2")}


def test_a_mitre_slot_beyond_the_fences_widens_the_floor_on_its_own_side() -> None:
    # 400 + 19.05/2 = 409.525, so 409.6; the other side as before.
    for side in Side:
        floor = sled_to_build(
            replace(METRIC, mitre=replace(METRIC.mitre, from_bit_nm=millimetres("400"), side=side)), [TOP]
        ).floor
        wide, as_before = (floor.left_nm, floor.right_nm) if side is Side.LEFT else (floor.right_nm, floor.left_nm)
        assert wide == millimetres("409.6")
        assert as_before == (BUILT.floor.right_nm if side is Side.LEFT else BUILT.floor.left_nm)
