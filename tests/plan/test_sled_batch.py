"""Several projects cut together: which sleds are one, which heights are shared, and whose board it is."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest

from planner.domain.plan import SledPlan
from planner.domain.rates import Rates
from planner.domain.words import End
from planner.lengths import Nm
from planner.pipeline import plan
from planner.plan.sled import sled_plan
from tests.oracle.sheet import cut_all_by_the_sheet
from tests.pieces import SLED, inches, six_drawers, small_box
from tests.plan.sled_batches import bare_project, pin_end

WORN = replace(SLED, bit_nm=Nm(12_620_000))


def settings(sled: SledPlan) -> list[tuple[str, int]]:
    return [(at.sled, at.bit_height_nm) for at in sled.settings]


def test_sleds_of_the_same_name_and_figures_are_one() -> None:
    ends = (pin_end("K-J1", "K-b1", End.A, 1_000),)
    sled = sled_plan([(bare_project("P"), ends), (bare_project("Q"), ends)])
    assert settings(sled) == [("main", 1_000), ("main", 1_000)]
    assert [[cut.project for cut in at.cuts] for at in sled.settings] == [["P", "Q"], ["P", "Q"]]
    assert sled.sled_changes == 0
    assert sled.projects == ("P", "Q")


def test_a_kept_sled_and_a_project_s_own_of_the_same_name_and_figures_are_one() -> None:
    """One setting for each fence, with both projects' boards at it, as when neither sled is kept."""
    ends = (pin_end("K-J1", "K-b1", End.A, 1_000),)
    kept = bare_project("Q", sleds=[replace(SLED, kept=True)])
    sled = sled_plan([(bare_project("P"), ends), (kept, ends)])
    assert [[cut.project for cut in at.cuts] for at in sled.settings] == [["P", "Q"], ["P", "Q"]]
    assert sled.sled_changes == 0


def test_sleds_of_the_same_name_but_other_figures_are_named_apart() -> None:
    """A bit of 12.62 and one of 12.70 on a sled that both projects call main; P and R use the same one."""
    ends = (pin_end("K-J1", "K-b1", End.A, 1_000),)
    sled = sled_plan([(bare_project("P"), ends), (bare_project("Q", sleds=[WORN]), ends), (bare_project("R"), ends)])
    assert [name for name, _ in settings(sled)] == ["main of P and R"] * 2 + ["main of Q"] * 2
    assert [at.bit_nm for at in sled.settings] == [SLED.bit_nm] * 2 + [WORN.bit_nm] * 2
    assert [[cut.project for cut in at.cuts] for at in sled.settings[1:3]] == [["P", "R"], ["Q"]]
    assert sled.sled_changes == 1


def test_a_sled_that_nothing_is_cut_on_leaves_the_name_to_the_other() -> None:
    other = replace(SLED, name="other")
    ends, elsewhere = (pin_end("K-J1", "K-b1", End.A, 1_000),), (pin_end("K-J1", "K-b1", End.A, 1_000, other),)
    sled = sled_plan([(bare_project("P"), ends), (bare_project("Q", sleds=[WORN, other]), elsewhere)])
    assert [name for name, _ in settings(sled)] == ["main", "main", "other", "other"]


@pytest.mark.parametrize(
    ("tolerances", "heights"),
    [((4, 4), [103]), ((4, 2), [100, 103]), ((2, 4), [100, 103]), ((3, 4), [103]), ((0, 9), [100, 103])],
)
def test_heights_are_shared_within_the_smallest_tolerance(tolerances: tuple[int, int], heights: list[int]) -> None:
    """Ends at 100 and 103 are 3 apart: one height, the greater, only if both projects allow 3."""
    first, second = tolerances
    sled = sled_plan(
        [
            (bare_project("P", tolerance=first), (pin_end("K-J1", "K-b1", End.A, 100),)),
            (bare_project("Q", tolerance=second), (pin_end("K-J1", "K-b1", End.A, 103),)),
        ]
    )
    assert sorted({height for _, height in settings(sled)}) == heights


def test_a_strict_project_binds_only_the_sleds_it_uses() -> None:
    other = replace(SLED, name="other")
    sled = sled_plan(
        [
            (
                bare_project("P", tolerance=5),
                (pin_end("K-J1", "K-b1", End.A, 100), pin_end("K-J2", "K-b1", End.B, 103)),
            ),
            (bare_project("Q", sleds=[other], tolerance=0), (pin_end("K-J1", "K-b1", End.A, 100, other),)),
        ]
    )
    assert settings(sled) == [("main", 103)] * 2 + [("other", 100)] * 2


def test_boards_marked_alike_in_two_projects_are_two_boards() -> None:
    """P has end A of K-b1, Q end B of its own K-b1: four handlings, and neither board is ever turned."""
    sled = sled_plan(
        [
            (bare_project("P"), (pin_end("K-J1", "K-b1", End.A, 1_000),)),
            (bare_project("Q"), (pin_end("K-J1", "K-b1", End.B, 1_000),)),
        ]
    )
    assert (sled.tally.handlings, sled.tally.turnings) == (4, 0)
    assert (sled.joint_by_joint.handlings, sled.joint_by_joint.turnings) == (4, 0)
    assert Counter((cut.project, cut.end) for at in sled.settings for cut in at.cuts) == {
        ("P", End.A): 2,
        ("Q", End.B): 2,
    }


def test_boards_come_project_by_project_as_a_person_would_count_them() -> None:
    ends = tuple(pin_end(f"K-J{n}", f"K{n}-front", End.A, 1_000) for n in (10, 2, 1))
    sled = sled_plan([(bare_project("Q"), ends), (bare_project("P"), ends)])
    wanted = [(project, f"K{n}-front") for project in "QP" for n in (1, 2, 10)]
    assert [[(cut.project, cut.board) for cut in at.cuts] for at in sled.settings] == [wanted, wanted]


def test_times_are_by_the_rates_of_the_first() -> None:
    ends = (pin_end("K-J1", "K-b1", End.A, 1_000),)
    slow = replace(bare_project("Q"), rates=Rates(pass_s=1_000))
    quick = bare_project("P")
    # Four passes, one swap, four handlings: 4·10 + 20 + 4·15 = 120 s, or 4·1000 + 20 + 60.
    assert sled_plan([(quick, ends), (slow, ends)]).tally.estimate_s == 120
    assert sled_plan([(slow, ends), (quick, ends)]).tally.estimate_s == 4_080


def test_a_chest_and_a_box_cut_together_by_the_sheet() -> None:
    """The chest has heights 33/64 (drawers) and 57/64 (carcase), the box 33/64: two heights on one sled."""
    chest, box = plan(six_drawers()), plan(replace(small_box(), name="box"))
    sled = sled_plan([(made.project, made.joints) for made in (chest, box)])
    assert cut_all_by_the_sheet(sled, {made.project.name: made.joints for made in (chest, box)}) == 28 + 4
    heights = [inches("33/64")] * 2 + [inches("57/64")] * 2
    assert settings(sled) == [("main", height) for height in heights]
    assert (sled.height_changes, sled.fence_swaps) == (1, 2)
    # Joint by joint: the carcase comes first, then 24 corners of drawers and 4 of the box at one height.
    assert sled.joint_by_joint_changes == 32 + 1
