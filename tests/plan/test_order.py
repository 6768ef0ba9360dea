"""The order of operations against all orders there are."""

from __future__ import annotations

from itertools import groupby, permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.domain.operation import Machine, Operation, Setting
from planner.errors import PlanError
from planner.plan.order import in_order, key_of


def operation(number: int, setting: int, after: list[int]) -> Operation:
    return Operation(
        mark=f"o{number}",
        task="cut",
        machine=Machine.BANDSAW,
        setting=Setting(words=f"s{setting}"),
        subject=f"o{number}",
        after=tuple(f"o{a}" for a in after),
    )


@st.composite
def graphs(draw: st.DrawFn) -> list[Operation]:
    count = draw(st.integers(1, 7))
    return [
        operation(n, draw(st.integers(0, 3)), sorted(draw(st.sets(st.integers(0, n - 1), max_size=2))) if n else [])
        for n in range(count)
    ]


@given(graphs())
def test_runs_keep_what_must_come_before_and_are_as_few_as_all_orders_allow(graph: list[Operation]) -> None:
    runs = in_order(graph, lambda o: o.mark)
    flat = [operation for run in runs for operation in run.operations]
    assert sorted(o.mark for o in flat) == sorted(o.mark for o in graph)
    place = {o.mark: i for i, o in enumerate(flat)}
    assert all(place[before] < place[o.mark] for o in flat for before in o.after)

    def allowed(order: tuple[Operation, ...]) -> bool:
        seen: set[str] = set()
        for o in order:
            if not seen.issuperset(o.after):
                return False
            seen.add(o.mark)
        return True

    fewest = min(sum(1 for _ in groupby(order, key_of)) for order in permutations(graph) if allowed(order))
    assert len(runs) == fewest


def test_operations_that_wait_for_each_other_are_refused() -> None:
    with pytest.raises(PlanError, match="wait for something that never comes"):
        in_order([operation(0, 0, [1]), operation(1, 1, [0])], lambda o: o.mark)


def test_an_operation_that_waits_for_a_stranger_is_refused() -> None:
    with pytest.raises(PlanError, match="never comes: o9"):
        in_order([operation(0, 0, [9])], lambda o: o.mark)
