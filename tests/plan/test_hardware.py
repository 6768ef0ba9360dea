"""What is to be bought, counted by hand. Millimetres; the carcase of Hollin Shed is 900 × 800 × 450 of 20."""

from __future__ import annotations

from dataclasses import replace

import pytest

from planner.domain.hardware import Hardware, HardwareKind
from planner.domain.panelled import Slab
from planner.domain.project import Project
from planner.domain.space import Space
from planner.domain.words import DividerKind, Role
from planner.pipeline import plan
from planner.plan.hardware import hinges, in_a_row
from tests.oracle import assembly_pieces as hollin
from tests.oracle.assembly_pieces import box, carcase, columns, drawer, drawers, hinged, holding, mm, project, tiers


def bought(piece: Project) -> dict[tuple[HardwareKind, str], Hardware]:
    return {(each.kind, each.use): each for each in plan(piece).hardware}


@pytest.mark.parametrize(
    ("high", "count"), [(200, 2), (900, 2), (900.1, 3), (1500, 3), (1500.1, 4), (2000, 4), (2000.1, 5)]
)
def test_hinges_by_height(high: float, count: int) -> None:
    """Common practice, no source."""
    assert hinges(mm(high)) == count


@pytest.mark.parametrize(("long", "count"), [(100, 2), (300, 2), (301, 3), (600, 3), (900, 4)])
def test_screws_in_a_row_are_no_further_apart_than_is_usual(long: float, count: int) -> None:
    """300 apart: 600 has one at each end and one in the middle."""
    assert in_a_row(mm(long), Role.SEPARATE_TOP) == count


def test_a_carcase_of_drawers_on_rails_with_top_and_stand() -> None:
    """Top 900 + 2 × 20 = 940: 5 in each of two rows. Stand below 900: 4 in each of two.

    The back is 800 - 40 + 20 - 1 = 779 high and 879 wide: 5 up and 6 across, less the corners counted twice: 18.
    Three drawers have a strip at each side behind each of two rails. A knob with a hole of 5 for each of two handles.
    """
    knobs = replace(hollin.WITH_HANDLES, handles=replace(hollin.WITH_HANDLES.handles, holes=1))  # type: ignore[type-var]
    piece = replace(carcase(holding(tiers(DividerKind.RAIL, *drawers(knobs, 3)))), base=hollin.STAND, top=hollin.TOP)
    found = bought(project(carcases=(piece,)))
    assert {key: each.count for key, each in found.items()} == {
        (HardwareKind.KNOB, "drawer"): 6,
        (HardwareKind.SLOT_SCREW, "separate top"): 10,
        (HardwareKind.SLOT_SCREW, "base"): 8,
        (HardwareKind.SCREW, "back"): 18,
        (HardwareKind.SLOT_SCREW, "runners"): 4,
    }
    knob = found[HardwareKind.KNOB, "drawer"]
    assert (knob.marks, knob.sizes) == (("D101", "D102", "D103"), (("hole", mm(5)),))


def test_drawers_on_slides_with_applied_fronts_and_pulls() -> None:
    """Depth: 450 - 6 - 12, less the front of 20. Four screws for each front; pulls have two holes 96 apart."""
    pattern = replace(
        drawer("X", wide=True), applied_front=hollin.INSET_FRONT.applied_front, handles=hollin.WITH_HANDLES.handles
    )
    inside = holding(tiers(DividerKind.NOTHING, *drawers(pattern, 2)))
    found = bought(project(carcases=(replace(carcase(inside, back=None), runners=hollin.SLIDES),)))
    assert {key: each.count for key, each in found.items()} == {
        (HardwareKind.PULL, "drawer"): 4,
        (HardwareKind.SLIDES, "drawer"): 2,
        (HardwareKind.SCREW, "applied front"): 8,
    }
    assert found[HardwareKind.SLIDES, "drawer"].sizes == (("longest that fits", mm(450 - 12 - 20)),)
    assert found[HardwareKind.PULL, "drawer"].sizes == (("holes apart", mm(96)), ("hole", mm(5)))


def test_doors_shelves_and_boards_behind_them() -> None:
    """Two pairs: inset of frames 20 thick, 756 high; overlay of slabs 19 thick, 776 high. Three shelves on pins.

    The back of boards at most 140 wide that overlap by 8: (878 - 8) / 132 is over 6, so 7 boards, four screws each.
    """
    shelved = holding(hollin.ON_PINS, doors=hollin.PAIR)
    piece = carcase(holding(columns(shelved, holding(doors=hollin.OVERLAY))), back=hollin.BOARDS)
    found = bought(project(carcases=(piece,)))
    assert {key: each.count for key, each in found.items()} == {
        (HardwareKind.HINGE, "inset door"): 4,
        (HardwareKind.HINGE, "overlay door"): 4,
        (HardwareKind.CATCH, "door"): 4,
        (HardwareKind.DOOR_KNOB, "door"): 4,
        (HardwareKind.SHELF_PIN, "loose shelf"): 12,
        (HardwareKind.SLOT_SCREW, "back"): 28,
    }
    assert found[HardwareKind.HINGE, "inset door"].sizes == (("door thickness", mm(20)),)
    assert found[HardwareKind.SHELF_PIN, "loose shelf"].sizes == (("diameter", mm(5)),)
    assert found[HardwareKind.CATCH, "door"].marks == ("C-1-door1", "C-1-door2", "C-2-door1", "C-2-door2")


def test_a_slot_or_none_a_bottom_that_slides_in_has_a_screw() -> None:
    """842 wide: two whole feet, so two slots; without slots said, one screw."""
    for pattern, count in ((hollin.SLOTTED, 2), (hollin.SLID_IN, 1)):
        found = bought(project(carcases=(carcase(Space(holds=hollin.named(pattern, "D101")), back=None),)))
        assert found[HardwareKind.SLOT_SCREW, "drawer bottom"].count == count


@pytest.mark.parametrize("lid", [hinged(Slab(stuff=hollin.beech(20))), hinged(hollin.PANELLED), hollin.SAWN])
def test_a_lid_has_hinges_by_its_length_and_a_stay(lid: object) -> None:
    """800 and 2 × 12 over the sides, or 800 sawn: two hinges."""
    found = bought(project(boxes=(box(lid),)))  # type: ignore[arg-type]
    assert {key: each.count for key, each in found.items()} == {
        (HardwareKind.HINGE, "lid"): 2,
        (HardwareKind.LID_STAY, "lid"): 1,
    }


def test_a_plain_box_needs_nothing() -> None:
    assert plan(project(boxes=(box(),))).hardware == ()
