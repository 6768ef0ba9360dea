"""What makes a sled impossible or doubtful, and the words that go with one."""

from __future__ import annotations

from dataclasses import replace

import pytest

from planner.derive.sled_to_build import sled_to_build
from planner.domain.sled_to_build import SledWish, UprightBoard
from planner.domain.words import Side
from planner.errors import PlanError
from tests.derive.sled_wishes import METRIC, TOP, Case, millimetres

BUILT = sled_to_build(METRIC, [TOP])


def cutting(length: str) -> SledWish:
    return replace(METRIC, bit=replace(METRIC.bit, cutting_length_nm=millimetres(length)))


def reaching(height: str) -> SledWish:
    return replace(METRIC, bit=replace(METRIC.bit, reach_nm=millimetres(height)))


def thick(diameter: str) -> SledWish:
    return replace(METRIC, bit=replace(METRIC.bit, diameter_nm=millimetres(diameter)))


def mitre(*, from_bit: str = "140", depth: str = "9.5", side: Side = Side.LEFT) -> SledWish:
    slot = replace(METRIC.mitre, from_bit_nm=millimetres(from_bit), depth_nm=millimetres(depth), side=side)
    return replace(METRIC, mitre=slot)


def table(each_way: str) -> SledWish:
    return replace(METRIC, table_each_way_nm=millimetres(each_way))


def high(bit_height: str) -> UprightBoard:
    return replace(TOP, bit_height_nm=millimetres(bit_height))


def long(length: str) -> UprightBoard:
    return replace(TOP, length_nm=millimetres(length))


NARROW = replace(TOP, narrowest_socket_nm=millimetres("14"))

REFUSED: dict[str, tuple[Case, list[str]]] = {
    "the bit cuts too short": (
        (cutting("32.3"), [TOP]),
        ["bench:", "cuts along 32.3 mm", "12.0 mm thick", "K-front wants 20.4 mm", "32.4 mm in all", "most 11.9 mm"],
    ),
    "the bit cuts too short for any floor": ((cutting("20"), [TOP]), ["cuts along 20.0 mm", "no floor is thin enough"]),
    "the bit reaches too low": (
        (reaching("30"), [TOP]),
        ["stands out of the table at most 30.0 mm", "32.4 mm in all", "longer shank", "most 9.6 mm"],
    ),
    # 27 − 19.05/2 − 12/2 = 11.475, under 12.
    "the mitre slot lies under the cutting line": (
        (mitre(from_bit="27"), [TOP]),
        ["under the cutting line", "27.0 mm from the bit's", "leaves ~11.5 mm", "at least 12.0 mm"],
    ),
    "the mitre slot is too shallow": (
        (mitre(depth="5.4"), [TOP]),
        ["5.4 mm deep", "4.9 mm high", "under 5.0 mm"],
    ),
    "the table is too short": (
        (table("158.1"), [TOP]),
        ["reaches 158.1 mm", "108.2 mm from it", "158.2 mm is wanted"],
    ),
    # 14 − 2 · 20/8 = 9 inside; the slot 12 · √(65/64) = 12.093.
    "a socket is too narrow for the bit": (
        (METRIC, [NARROW, NARROW]),
        ["K-front:", "14.0 mm outside", "9.0 mm inside", "bit of 12.0 mm", "slot of ~12.1 mm"],
    ),
    "there is no board": ((METRIC, []), ["bench:", "No board"]),
}


@pytest.mark.parametrize("why", REFUSED)
def test_what_cannot_be_built_is_refused_with_its_figures(why: str) -> None:
    (wish, boards), figures = REFUSED[why]
    with pytest.raises(PlanError) as refused:
        sled_to_build(wish, boards)
    (problem,) = refused.value.problems
    assert problem.remedy
    for figure in figures:
        assert figure in str(problem)


@pytest.mark.parametrize(
    "wish", [cutting("32.4"), reaching("32.4"), mitre(from_bit="27.525"), mitre(depth="5.5"), table("158.2")]
)
def test_what_just_can_be_built_is_not_refused(wish: SledWish) -> None:
    # A socket of 12.1 + 5 = 17.1 takes a slot of 12.093.
    board = replace(TOP, narrowest_socket_nm=millimetres("17.1"))
    assert sled_to_build(wish, [board]).sled.greatest_bit_height_nm == TOP.bit_height_nm


def test_all_reasons_are_named_at_once() -> None:
    wish = replace(
        mitre(from_bit="10", depth="3"),
        bit=replace(METRIC.bit, cutting_length_nm=millimetres("20"), reach_nm=millimetres("20")),
        table_each_way_nm=millimetres("100"),
    )
    with pytest.raises(PlanError) as refused:
        sled_to_build(wish, [NARROW])
    assert len(refused.value.problems) == 6


DOUBTS: dict[str, tuple[SledWish, UprightBoard, list[str]]] = {
    "thin-floor": (replace(METRIC, floor_thickness_nm=millimetres("9")), TOP, ["9.0 mm", "12.0 mm"]),
    "thin-fence": (replace(METRIC, fence_thickness_nm=millimetres("15")), TOP, ["15.0 mm", "18.0 mm"]),
    "thin-bit": (thick("5"), high("8"), ["5.0 mm", "6.0 mm"]),
    # 12 + 20.4 = 32.4 over 4 · 8 = 32.
    "slender-bit": (thick("8"), TOP, ["32.4 mm", "8.0 mm"]),
    # Fences of at most 300 hold 900: 960/300 = 3.2.
    "tall-board": (METRIC, long("960"), ["960.0 mm", "300.0 mm", "3.20 times"]),
    # 20.4 + 50.
    "short-board": (METRIC, long("70.3"), ["70.3 mm", "70.4 mm"]),
}


@pytest.mark.parametrize("code", DOUBTS)
def test_doubts_are_told_with_their_figures(code: str) -> None:
    wish, board, figures = DOUBTS[code]
    (finding,) = sled_to_build(wish, [board]).findings
    assert finding.code == code
    assert all(figure in finding.text for figure in figures)
    assert finding.remedy


def test_doubts_end_where_they_say() -> None:
    for board in (long("900"), long("70.4")):
        assert sled_to_build(METRIC, [board]).findings == ()
    # 12 + 20 = 4 · 8.
    assert sled_to_build(thick("8"), [high("20")]).findings == ()


def test_boards_that_are_hard_to_hold_are_named_together_in_reading_order() -> None:
    tall = [replace(long("1000"), mark=mark) for mark in ("D10-front", "D2-front", "D2-front")]
    (finding,) = sled_to_build(METRIC, [*tall, TOP]).findings
    assert finding.marks == ("D2-front", "D10-front")


def test_the_words_name_the_sides_and_figures() -> None:
    steps = "\n".join(BUILT.how_to_set)
    assert "140.0 mm to the left of where the slot will come, seen from the near end" in steps
    assert "Right fence, by the far end" in steps
    assert "Seen from the near end, its right end comes towards you 37.5 mm over 300.0 mm, 7.13° off square" in steps
    assert "Left fence, by the near end" in steps
    assert "Seen from the far end, its left end comes towards you 37.5 mm over 300.0 mm" in steps
    assert "at the right fence the slot must lie 2.5 mm further left on the inside face" in steps


def test_the_cautions_say_what_to_keep_clear() -> None:
    cautions = "\n".join(BUILT.keep_clear)
    for words in ("manuals", "eye and hearing", "Clamp the board", "150.0 mm", "never trap", "stands still", "guard"):
        assert words in cautions
    # The sled comes out by its stop and half its length: 108.2 + 186.1.
    assert "294.3 mm" in cautions
