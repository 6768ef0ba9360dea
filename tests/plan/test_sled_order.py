"""The order at the sled against all orders there are, and what it takes counted by hand."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Callable, Iterable, Sequence
from dataclasses import asdict, fields, replace
from functools import cache
from itertools import groupby, pairwise, permutations, product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.domain.plan import SledPlan, SledTally
from planner.domain.rates import USUAL_RATES, Rates
from planner.domain.words import End, JointKind
from planner.lengths import Nm
from planner.pipeline import plan
from planner.plan.sled import sled_plan
from planner.plan.sled_order import FIRST_FENCE, Group, Visit, fewest_turnings, in_fewest_changes
from tests.pieces import small_box
from tests.plan.sled_batches import SLEDS, Batch, bare_project, batches, pin_end

# --- settings ----------------------------------------------------------------------------------------------

Weights = tuple[int, int, int]
"""What a change of sled, of height and of fence cost."""

COUNTED: Weights = (1, 1, 1)


def cost(before: Visit, now: Visit, weights: Weights) -> int:
    sled, height, fence = weights
    adjusted = sled if before.sled != now.sled else height if before.height_nm != now.height_nm else 0
    return adjusted + (fence if before.fence is not now.fence else 0)


def cost_of(visits: Iterable[Visit], weights: Weights) -> int:
    return sum(cost(a, b, weights) for a, b in pairwise(visits))


def groups_of(*heights_on_each_sled: int) -> list[Group]:
    return [(sled, Nm(h)) for sled, count in zip(SLEDS, heights_on_each_sled, strict=False) for h in range(count)]


few_groups = st.lists(st.tuples(st.sampled_from(SLEDS), st.integers(1, 4).map(Nm)), min_size=1, max_size=3, unique=True)
fair_weights = st.lists(st.integers(0, 400), min_size=3, max_size=3).map(lambda w: tuple(sorted(w, reverse=True)))


@given(few_groups, fair_weights)
def test_no_order_of_the_settings_changes_less_or_takes_less_time(groups: list[Group], weights: Weights) -> None:
    visits = tuple(in_fewest_changes(groups))
    orders = tuple(permutations(visits))
    for prices in (COUNTED, weights, (1, 0, 0), (1, 1, 0)):
        assert cost_of(visits, prices) == min(cost_of(order, prices) for order in orders)


def least_cost(visits: Sequence[Visit], weights: Weights) -> int:
    """Least cost over all orders, by Held and Karp's recursion (1962): the cheapest way to end at each visit."""

    @cache
    def ending_at(last: int, seen: int) -> int:
        before = seen & ~(1 << last)
        if not before:
            return 0
        rest = (place for place in range(len(visits)) if before >> place & 1)
        return min(ending_at(place, before) + cost(visits[place], visits[last], weights) for place in rest)

    everything = (1 << len(visits)) - 1
    return min(ending_at(last, everything) for last in range(len(visits)))


@pytest.mark.parametrize("heights", [(4,), (5,), (2, 3), (2, 2, 2), (1, 1, 4)])
@pytest.mark.parametrize("weights", [COUNTED, (300, 120, 20)])
def test_more_settings_than_can_be_permuted_are_as_few_changes_apart(
    heights: tuple[int, ...], weights: Weights
) -> None:
    visits = tuple(in_fewest_changes(groups_of(*heights)))
    assert cost_of(visits, weights) == least_cost(visits, weights)


@pytest.mark.slow
@pytest.mark.parametrize("heights", [(7,), (2, 2, 3)])
def test_seven_heights_at_both_fences_too(heights: tuple[int, ...]) -> None:
    visits = tuple(in_fewest_changes(groups_of(*heights)))
    assert len(visits) == 14
    assert cost_of(visits, COUNTED) == least_cost(visits, COUNTED) == 13


@given(st.lists(st.tuples(st.sampled_from(SLEDS), st.integers(1, 9).map(Nm)), min_size=1, max_size=20))
def test_every_setting_is_visited_once_and_begun_at_the_fence_in_use(groups: list[Group]) -> None:
    visits = tuple(in_fewest_changes(groups))
    assert len(visits) == len(set(visits)) == 2 * len(set(groups))
    assert {(visit.sled, visit.height_nm) for visit in visits} == set(groups)
    assert visits[0].fence is FIRST_FENCE
    for place, (before, now) in enumerate(pairwise(visits)):
        same_group = before[:2] == now[:2]
        assert same_group is (place % 2 == 0)
        assert (before.fence is now.fence) is not same_group
    sleds = len({sled for sled, _ in groups})
    assert cost_of(visits, (1, 0, 0)) == sleds - 1
    assert cost_of(visits, (0, 1, 0)) == len(set(groups)) - sleds
    assert cost_of(visits, (0, 0, 1)) == len(set(groups))


# --- turnings ----------------------------------------------------------------------------------------------

Visits = list[frozenset[End]]
seen_ends = st.lists(st.sampled_from([frozenset({End.A}), frozenset({End.B}), frozenset(End)]), min_size=1, max_size=9)


def turnings(orders: Iterable[Sequence[End]]) -> int:
    down = [end for order in orders for end in order]
    return sum(a is not b for a, b in pairwise(down))


def least_turnings(visits: Visits) -> int:
    return min(turnings(way) for way in product(*(tuple(permutations(ends)) for ends in visits)))


@given(seen_ends)
def test_no_order_of_the_ends_turns_a_board_less_often(visits: Visits) -> None:
    orders = fewest_turnings(visits)
    assert [frozenset(order) for order in orders] == visits
    assert turnings(orders) == least_turnings(visits)


def test_the_ends_of_a_board_by_hand() -> None:
    """Both ends at both fences: A, B, then B, A. A board that next needs only A begins with B to have A down."""
    both, only_a = frozenset(End), frozenset({End.A})
    assert fewest_turnings([both, both]) == ((End.A, End.B), (End.B, End.A))
    assert fewest_turnings([both, only_a]) == ((End.B, End.A), (End.A,))
    assert fewest_turnings([]) == ()


# --- whole plans -------------------------------------------------------------------------------------------


def in_shop_order(sled: SledPlan) -> list[tuple[int, str, str, End]]:
    return [(at.number, cut.project, cut.board, cut.end) for at in sled.settings for cut in at.cuts]


@given(batches())
def test_counts_of_a_batch_are_those_of_walking_through_it(batch: Batch) -> None:
    sled = sled_plan(batch)
    steps = list(pairwise(sled.settings))
    assert sled.sled_changes == sum(a.sled != b.sled for a, b in steps)
    assert sled.height_changes == sum(a.sled == b.sled and a.bit_height_nm != b.bit_height_nm for a, b in steps)
    assert sled.fence_swaps == sum(a.fence is not b.fence for a, b in steps)
    assert sled.tally.changes == len(steps) == sled.tally.settings - 1
    # One socket each, two passes: one at each fence.
    assert sled.tally.passes == sled.joint_by_joint.passes == 2 * sum(len(joints) for _, joints in batch)


@given(batches())
def test_a_board_is_taken_up_once_at_each_of_its_settings_and_turned_as_seldom_as_can_be(batch: Batch) -> None:
    sled = sled_plan(batch)
    cuts = in_shop_order(sled)
    runs = [key for key, _ in groupby(cuts, key=lambda cut: cut[:3])]
    assert len(runs) == len(set(runs)) == sled.tally.handlings
    seen: dict[tuple[str, str], Visits] = defaultdict(list)
    for key, run in groupby(cuts, key=lambda cut: cut[:3]):
        seen[key[1:]].append(frozenset(end for *_, end in run))
    assert sled.tally.turnings == sum(least_turnings(visits) for visits in seen.values())


@given(batches())
def test_joint_by_joint_is_never_fewer_settings_and_handlings(batch: Batch) -> None:
    sled = sled_plan(batch)
    single = sled.joint_by_joint
    assert single.fence_swaps == sum(len(joints) for _, joints in batch)
    assert single.settings == single.changes + 1 >= sled.tally.settings
    assert single.handlings >= sled.tally.handlings


@given(batches())
def test_batching_needs_no_more_settings_than_cutting_project_by_project(batch: Batch) -> None:
    together = sled_plan(batch)
    apart = [sled_plan([one]) for one in batch]
    tolerances = {project.height_tolerance_nm for project, _ in batch}
    if len(tolerances) == 1:  # a stricter project may split the heights of another
        assert together.tally.settings <= sum(one.tally.settings for one in apart)
    again = sled_plan(list(reversed(batch)))
    assert again.tally.changes == together.tally.changes
    assert again.tally.handlings == together.tally.handlings
    assert sled_plan(batch) == together


def test_a_box_by_hand() -> None:
    """Right and left board carry pins at both ends: four ends of three sockets, each of three passes (test_sled).

    Grouped: right fence, then left: one swap. Two boards at two settings: four handlings; each is cut A, B, then B, A:
    two turnings each. 36 passes. 1·20 + 4·15 + 4·10 + 36·10 = 480 s.

    Joint by joint: J1 right-A, J2 right-B, J3 left-A, J4 left-B at R L, L R, R L, L R: four swaps. At the left fence
    the right board stays for its other end, so it is taken up three times, and so is the left board: six. Each is
    turned once. 4·20 + 6·15 + 2·10 + 36·10 = 550 s.
    """
    sled = plan(small_box()).sled
    grouped = SledTally(
        settings=2, sled_changes=0, height_changes=0, fence_swaps=1, handlings=4, turnings=4, passes=36, estimate_s=480
    )
    single = SledTally(
        settings=5, sled_changes=0, height_changes=0, fence_swaps=4, handlings=6, turnings=2, passes=36, estimate_s=550
    )
    assert (sled.tally, sled.joint_by_joint) == (grouped, single)


def test_two_sleds_and_two_heights_by_hand() -> None:
    """Boards 1 and 2 on the main sled at heights 1 and 2, board 3 on the steep one; one end each, in the order 1 3 2.

    Grouped: main 1 R L, main 2 L R, steep R L: one height, one sled, three fences. Joint by joint main 1 R L, steep L
    R, main 2 R L: two sleds, no height by itself, three fences. Six handlings and no turning either way.
    """
    main, steep, _ = SLEDS
    ends = (
        pin_end("K-J1", "K-b1", End.A, 1_000, main),
        pin_end("K-J2", "K-b3", End.B, 1_000, steep),
        pin_end("K-J3", "K-b2", End.A, 2_000, main),
    )
    sled = sled_plan([(bare_project("P", sleds=SLEDS), ends)])
    assert [(at.sled, at.bit_height_nm, at.fence.value) for at in sled.settings] == [
        ("main", 1_000, "right"),
        ("main", 1_000, "left"),
        ("main", 2_000, "left"),
        ("main", 2_000, "right"),
        ("steep", 1_000, "right"),
        ("steep", 1_000, "left"),
    ]
    both = (sled.tally, sled.joint_by_joint)
    assert [(t.sled_changes, t.height_changes, t.fence_swaps) for t in both] == [(1, 1, 3), (2, 0, 3)]
    assert [(t.settings, t.handlings, t.turnings) for t in both] == [(6, 6, 0), (6, 6, 0)]
    assert sled.joint_by_joint_changes == 5


# --- time --------------------------------------------------------------------------------------------------

COUNT_OF: dict[str, Callable[[SledTally], int]] = {
    "sled_change_s": lambda t: t.sled_changes,
    "height_change_s": lambda t: t.height_changes,
    "fence_swap_s": lambda t: t.fence_swaps,
    "handling_s": lambda t: t.handlings,
    "turning_s": lambda t: t.turnings,
    "pass_s": lambda t: t.passes,
}


def test_every_rate_has_its_count() -> None:
    assert COUNT_OF.keys() == {field.name for field in fields(Rates)}


@pytest.mark.parametrize("rate", COUNT_OF)
@given(batches())
def test_each_rate_is_charged_for_what_it_names(rate: str, batch: Batch) -> None:
    nothing = Rates(**dict.fromkeys(asdict(USUAL_RATES), 0))
    (first, joints), *others = batch
    sled = sled_plan([(replace(first, rates=replace(nothing, **{rate: 7})), joints), *others])
    for tally in (sled.tally, sled.joint_by_joint):
        assert tally.estimate_s == 7 * COUNT_OF[rate](tally)


# --- nothing for the sled ----------------------------------------------------------------------------------


def test_half_blind_joints_are_not_cut_on_the_sled() -> None:
    through = pin_end("K-J1", "K-b1", End.A, 1_000)
    blind = replace(pin_end("K-J2", "K-b1", End.B, 9_000), kind=JointKind.HALF_BLIND, lap_nm=Nm(1_000))
    sled = sled_plan([(bare_project("P"), (through, blind))])
    assert Counter(cut.joint for at in sled.settings for cut in at.cuts) == {"K-J1": 2}
    assert sled == sled_plan([(bare_project("P"), (through,))])


def test_without_through_dovetails_there_is_nothing_to_do() -> None:
    sled = sled_plan([(bare_project("P"), ())])
    assert sled.settings == ()
    assert sled.projects == ("P",)
    assert set(asdict(sled.tally).values()) == set(asdict(sled.joint_by_joint).values()) == {0}
    assert sled.tally.changes == 0
