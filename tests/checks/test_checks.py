"""Each warning on a piece made to deserve it, with figures worked out by hand, and silence where none is due."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from planner.domain.plan import Finding
from planner.domain.project import Project
from planner.domain.ring import make_ring
from planner.domain.sled import MICRO
from planner.domain.words import Level, PinPair, RingKind
from planner.pipeline import plan
from tests.pieces import SLED, SPACING, ash, inches, six_drawers, small_box


def found(project: Project, code: str) -> list[Finding]:
    return [finding for finding in plan(project).findings if finding.code == code]


def with_slope(run: Fraction) -> Project:
    return replace(small_box(), sleds=(replace(SLED, run_micro=int(run * MICRO)),))


@pytest.mark.parametrize(("run", "said"), [(Fraction(7, 2), "steep"), (Fraction(10), "flat")])
def test_a_slope_outside_the_textbooks_is_a_caution(run: Fraction, said: str) -> None:
    # 1:4.8 (Noyes p. 165), 1:6 and 1:8 (Fairham p. 134) are drawn in textbooks; outside 1:4 to 1:9 look again.
    (finding,) = found(with_slope(run), "slope")
    assert finding.level is Level.CAUTION
    assert said in finding.text


@pytest.mark.parametrize("run", [Fraction(4), Fraction(24, 5), Fraction(6), Fraction(8), Fraction(9)])
def test_textbook_slopes_pass(run: Fraction) -> None:
    assert found(with_slope(run), "slope") == []


@pytest.mark.parametrize(("slot", "warned"), [("33/64", False), ("17/32", True), ("7/16", True), ("1/2", False)])
def test_a_slot_unlike_its_bit_is_a_caution(slot: str, warned: bool) -> None:  # noqa: FBT001
    # A twentieth of 1/2 in is 0.025: 33/64 is 0.0156 off, 17/32 is 0.03125 off.
    project = replace(small_box(), sleds=(replace(SLED, slot_nm=inches(slot)),))
    assert bool(found(project, "slot-unlike-bit")) is warned


@pytest.mark.parametrize(("half_pin", "warned"), [("1/32", True), ("1/16", False), ("1/4", False)])
def test_pins_thinner_than_fine_handwork_are_a_caution(half_pin: str, warned: bool) -> None:  # noqa: FBT001
    # Griffith (1908) sec. 100: the narrow edge of a pin is scarcely over 1/16 in.
    box = small_box()
    (only,) = box.boxes
    thin = replace(only, ring=replace(only.ring, spacing=replace(SPACING, half_pin_nm=inches(half_pin))))
    assert bool(found(replace(box, boxes=(thin,)), "thin-pins")) is warned


def test_stops_are_named_with_their_places() -> None:
    """A box of 1/2 in boards, half-pin 1/4 + lean 1/16: groove from 5/16 to 9/16, in the lowest socket of the sides.

    The sides carry pins, so it runs out of them unseen; on front and back it stops at 1/2 + 1/64 − 1/4 = 17/64.
    """
    findings = {mark for finding in found(small_box(), "stopped-cut") for mark in finding.marks}
    assert findings == {"K-front-A", "K-front-B", "K-back-A", "K-back-B"}
    texts = [finding.text for finding in found(small_box(), "stopped-cut")]
    assert all("stop it 17/64 in from end A and 17/64 in from end B" in text for text in texts)


def test_a_groove_through_a_pin_is_told_where_it_would_not_show() -> None:
    """The box's sides carry pins: half-pin 0–1/4, sockets of 1.5 from 1/4, 2 and 3 3/4; a lean of 1/16 on each wall.

    A groove of 1/4 put 1 5/8 up would meet the pin at 1 3/4. In the lowest socket it may begin up to
    1 3/4 − 1/16 − 1/4 = 1 7/16, in the next from 2 + 1/16; the nearer is 1 7/16.
    """
    box = small_box().boxes[0]
    assert box.bottom is not None
    raised = replace(box, bottom=replace(box.bottom, up_nm=inches("1 5/8")))
    findings = found(replace(small_box(), boxes=(raised,)), "stopped-cut")
    on_side = next(finding for finding in findings if finding.marks[0].startswith("K-right"))
    assert "Or move it: 1 7/16 in from the reference edge" in on_side.remedy
    moved = replace(box, bottom=replace(box.bottom, up_nm=inches("1 7/16")))
    marks = {m for f in found(replace(small_box(), boxes=(moved,)), "stopped-cut") for m in f.marks}
    assert not any(mark.startswith("K-right") for mark in marks)


def test_the_pins_of_a_drawer_lock_against_the_pull() -> None:
    notes = {finding.marks: finding.text for finding in found(six_drawers(), "pin-boards")}
    assert notes == {
        ("C",): "Top and bottom carry the pins: "
        "they are the shorter pair, and a pin board stands upright on the router table.",
        ("D1", "D2", "D3", "D4", "D5", "D6"): "Front and back carry the pins: "
        "tails on the sides lock against the pull.",
    }


def test_a_case_with_pins_on_its_sides_is_warned_of_hanging() -> None:
    chest = six_drawers()
    (carcase,) = chest.carcases
    ring = make_ring("C", RingKind.CARCASE, (ash("7/8"),) * 4, PinPair.SECOND_AND_FOURTH, SPACING, "main")
    turned = replace(chest, carcases=(replace(carcase, ring=ring),))
    on_case, on_drawers = found(turned, "pin-boards")
    assert "hang on a wall" in on_case.remedy
    assert "hang on a wall" not in on_drawers.remedy


def test_the_makers_own_choice_is_called_that() -> None:
    box = small_box().boxes[0]
    ring = make_ring("K", RingKind.UPRIGHT, (ash("1/2"),) * 4, PinPair.FIRST_AND_THIRD, SPACING, "main")
    (note,) = found(replace(small_box(), boxes=(replace(box, ring=ring),)), "pin-boards")
    assert note.text == "Front and back carry the pins: so the maker wants it."


def test_wedges_left_by_the_bit_are_counted() -> None:
    """Boards 1 1/2 thick at 1:4, a bit of 1/4: three tails on 5 1/2 have sockets 1.5 outside and 0.75 inside.

    2 · 0.75 = 1.5, so no wedge; with four, 1.0625 out and 0.3125 in: (1.0625 − 0.625)² · 4/4 = 0.19140625 in² each.
    """
    thick = (ash("1 1/2"),) * 4
    box = small_box().boxes[0]

    def with_tails(count: int) -> Project:
        spacing = replace(SPACING, tails=count)
        ring = make_ring("K", RingKind.UPRIGHT, thick, PinPair.SECOND_AND_FOURTH, spacing, "main")
        sled = replace(SLED, run_micro=4 * MICRO, bit_nm=inches("1/4"), greatest_bit_height_nm=inches("2"))
        return replace(small_box(), boxes=(replace(box, ring=ring),), sleds=(sled,))

    assert found(with_tails(3), "chisel") == []
    (finding,) = found(with_tails(4), "chisel")
    assert f"{4 * 0.19140625 * 25.4**2:.1f} mm²" in finding.text
    assert finding.marks == ("K-left-A", "K-left-B", "K-right-A", "K-right-B")
    assert any(operation.mark == "chisel K-left-A" for operation in plan(with_tails(4)).operations)


def test_a_deep_cut_in_thin_wood_is_a_caution() -> None:
    # A groove 3/8 deep in 1/2 leaves 1/8, a quarter of the thickness.
    box = small_box().boxes[0]
    assert box.bottom is not None
    deep = replace(box, bottom=replace(box.bottom, groove_depth_nm=inches("3/8")))
    findings = found(replace(small_box(), boxes=(deep,)), "thin-behind-cut")
    assert len(findings) == 4
    assert "leaves 1/8 in of 1/2 in" in findings[0].text
    assert found(small_box(), "thin-behind-cut") == []


def test_runners_that_nobody_planned_are_said_out_loud() -> None:
    assert found(six_drawers(), "runners-not-planned")[0].marks == ("C",)
    assert found(small_box(), "runners-not-planned") == []


def test_the_gravest_come_first() -> None:
    levels = [list(Level).index(finding.level) for finding in plan(six_drawers()).findings]
    assert levels == sorted(levels)
