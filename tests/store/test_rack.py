"""The wood in a store."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.domain.rack import Lot, lot_problems
from planner.errors import InputError
from planner.store.engine import reading, writing
from planner.store.rack import lots, put_in, take_out
from tests.drawn_stock import lots as drawn_lots
from tests.store.examples import ask


def kept(path: Path) -> tuple[Lot, ...]:
    with reading(path) as session:
        return lots(session)


@given(st.lists(drawn_lots(), max_size=4, unique_by=lambda lot: lot.mark))
def test_wood_comes_back_as_it_was_put_in(tmp_path_factory: pytest.TempPathFactory, wood: list[Lot]) -> None:
    assert not [problem for lot in wood for problem in lot_problems(lot)]
    path = tmp_path_factory.mktemp("rack") / "planner.db"
    with writing(path) as session:
        put_in(session, wood)
    assert {lot.mark: lot for lot in kept(path)} == {lot.mark: lot for lot in wood}
    with writing(path) as session:
        put_in(session, wood)
        take_out(session, [lot.mark for lot in wood[:1]])
    assert {lot.mark for lot in kept(path)} == {lot.mark for lot in wood[1:]}
    assert ask(path, "SELECT count(*) FROM flaw") == [(sum(len(lot.flaws) for lot in wood[1:]),)]


def test_unknown_marks_are_all_named_and_nothing_is_taken_out(tmp_path: Path) -> None:
    path = tmp_path / "planner.db"
    with writing(path) as session, pytest.raises(InputError) as refused:
        take_out(session, ["R1", "R2"])
    assert [problem.where for problem in refused.value.problems] == ["lot 'R1'", "lot 'R2'"]
    assert "planner rack-in FILE" in refused.value.problems[0].remedy
