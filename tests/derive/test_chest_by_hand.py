"""Finished sizes worked out by hand, and a ring put together in space."""

from __future__ import annotations

from planner.domain.marks import reading_order
from planner.domain.plan import BoardSize
from planner.pipeline import plan
from tests.pieces import inches, six_drawers, small_box


def sizes(boards: tuple[BoardSize, ...]) -> dict[str, tuple[int, int, int]]:
    return {b.mark: (b.length_nm, b.width_nm, b.thickness_nm) for b in boards}


def test_a_box_measured_inside_grows_by_its_mates_and_what_is_proud() -> None:
    """Inside 12 × 8, all boards 1/2, proud 1/64 at each end.

    Front 12 + 2·1/2 + 2·1/64 = 13 1/32; side 8 + 1 + 1/32 = 9 1/32. Bottom: 12 + 2·1/4 − 1/32 = 12 15/32 by 8 15/32.
    """
    box = sizes(plan(small_box()).boards)
    assert box["K-front"] == (inches("13 1/32"), inches("5 1/2"), inches("1/2"))
    assert box["K-right"] == (inches("9 1/32"), inches("5 1/2"), inches("1/2"))
    assert box["K-bottom"] == (inches("12 15/32"), inches("8 15/32"), inches("1/4"))


def test_a_chest_of_six_drawers_by_hand() -> None:
    """Chest 36 × 46 × 20 of 7/8; rails 3/4; back 1/4 in a rabbet 3/8 deep.

    Inside 34 1/4 wide, 44 1/4 high, 19 3/4 deep. Openings: 44 1/4 − 5·3/4 = 40 1/2; six in steps of 1/2, mean 6 3/4:
    5 1/2, 6, 6 1/2, 7, 7 1/2, 8. Drawer 1: width 34 1/4 − 1/8 = 34 1/8, front 34 1/8 + 1/32 = 34 5/32; height
    5 1/2 − 1/8 = 5 3/8; depth 19 3/4 − 1/2 = 19 1/4, side 19 9/32. Bottom 34 1/8 − 1 + 1/2 − 1/32 = 33 19/32 by
    19 1/4 − 3/4 − 1/2 + 1/2 − 1/32 = 18 15/32. Rail 34 1/4 + 1/2. Back 34 1/4 + 3/4 − 1/32 by 44 1/4 + 3/4 − 1/32.
    """
    chest = sizes(plan(six_drawers()).boards)
    assert len(chest) == 4 + 6 * 5 + 5 + 1
    assert chest["C-top"] == (inches("36 1/32"), inches("20"), inches("7/8"))
    assert chest["C-left"] == (inches("46 1/32"), inches("20"), inches("7/8"))
    assert chest["D1-front"] == (inches("34 5/32"), inches("5 3/8"), inches("3/4"))
    assert chest["D6-back"] == (inches("34 5/32"), inches("7 7/8"), inches("1/2"))
    assert chest["D1-right"] == (inches("19 9/32"), inches("5 3/8"), inches("1/2"))
    assert chest["D1-bottom"] == (inches("33 19/32"), inches("18 15/32"), inches("1/4"))
    assert chest["D5-rail"] == (inches("34 3/4"), inches("3"), inches("3/4"))
    assert chest["C-back"] == (inches("34 31/32"), inches("44 31/32"), inches("1/4"))


def test_openings_and_rails_fill_the_inside_height() -> None:
    clear = plan(six_drawers()).openings
    assert [opening.height_nm for opening in clear] == list(map(inches, ("5 1/2", "6", "6 1/2", "7", "7 1/2", "8")))
    assert sum(o.height_nm for o in clear) + 5 * inches("3/4") == inches("44 1/4")


def test_marks_sort_as_a_person_reads_them() -> None:
    assert sorted(["D10", "D2", "C", "D1-front"], key=reading_order) == ["C", "D1-front", "D2", "D10"]
