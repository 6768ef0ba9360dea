"""Cabinets of any division and boxes of any kind: put together, they close; with thicker wood they close again."""

from __future__ import annotations

from dataclasses import fields, is_dataclass, replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.domain.project import Project
from planner.domain.ring import Stuff
from planner.lengths import Nm
from tests.derive.test_assembly_kinds import KINDS
from tests.oracle.assembly_pieces import MM
from tests.oracle.assembly_plan import derived, faults_of
from tests.oracle.assembly_random import cabinets, chests


@given(cabinets())
def test_any_cabinet_closes(piece: Project) -> None:
    assert faults_of(piece) == []


@given(chests())
def test_any_box_closes(piece: Project) -> None:
    assert faults_of(piece) == []


@given(cabinets() | chests(), st.sampled_from(["beech", "ply"]), st.integers(-MM // 2, MM))
def test_with_one_timber_planed_to_another_thickness_it_closes_again(piece: Project, material: str, by: int) -> None:
    assert faults_of(planed(piece, material, by)) == []


NAMES = ("rails, step", "frames with dust panels", "three columns, stopped", "till", "stand and top")


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("by", [-MM, 396_875, 2 * MM + 1])
def test_every_board_of_the_timber_follows_and_no_other(name: str, by: int) -> None:
    piece = KINDS[name]
    thicker = planed(piece, "beech", by)
    assert faults_of(thicker) == []
    before = {board.mark: board for board in derived(piece).boards}
    after = {board.mark: board for board in derived(thicker).boards}
    assert before.keys() == after.keys()
    for mark, board in after.items():
        grown = board.thickness_nm - before[mark].thickness_nm
        assert grown == (by if board.material == "beech" else 0), mark


def planed(part: Any, material: str, by: int) -> Any:
    """The same with all wood of one material thicker by so much, wherever in it that is."""
    if isinstance(part, Stuff):
        return replace(part, thickness_nm=Nm(part.thickness_nm + by)) if part.material == material else part
    if isinstance(part, tuple):
        return tuple(planed(each, material, by) for each in part)
    if is_dataclass(part) and not isinstance(part, type):
        return replace(part, **{f.name: planed(getattr(part, f.name), material, by) for f in fields(part) if f.init})
    return part
