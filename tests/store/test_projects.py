"""Whole projects in and out of a store."""

from __future__ import annotations

import re
import sqlite3
from contextlib import closing
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given, settings

from planner.domain.project import Project
from planner.domain.spacing import Spacing
from planner.domain.words import HeightRule, Spread
from planner.errors import InputError, StoreError
from planner.store.engine import reading, writing
from planner.store.projects import ProjectSummary, forget_project, list_projects, load_project, save_project
from planner.store.sleds import drop, kept_sleds
from planner.store.tables import Row
from tests.pieces import SPACING, ash, six_drawers, small_box
from tests.store.examples import (
    LISTED,
    ask,
    batch_of,
    cabinet,
    columns_of,
    division_of,
    dump,
    is_whole,
    load,
    renamed,
    save,
    side_by_side,
)
from tests.strategies import projects


def ids(path: Path, table: str, name: str = "mark") -> dict[object, object]:
    return dict(ask(path, f"SELECT {name}, id FROM {table}"))  # type: ignore[arg-type]  # noqa: S608


@pytest.mark.parametrize("project", [cabinet(), six_drawers(), small_box(), batch_of(12)], ids=lambda each: each.name)
def test_what_is_saved_is_loaded_unchanged(place: Path, project: Project) -> None:
    save(place, project)
    assert load(place, project.name) == project


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("shared") / "planner.db"


@given(projects())
def test_any_project_is_loaded_as_it_was_saved(shared: Path, project: Project) -> None:
    clear(shared)
    save(shared, project)
    assert load(shared, project.name) == project


@given(projects(), projects())
@settings(max_examples=25)
def test_a_project_saved_over_another_leaves_nothing_of_it(shared: Path, old: Project, new: Project) -> None:
    clear(shared)
    save(shared, old)
    kept = {sled.name: sled for sled in old.sleds if sled.kept}
    new = replace(new, name=old.name, sleds=tuple(kept.get(sled.name, sled) for sled in new.sleds))
    save(shared, new)
    assert load(shared, old.name) == new
    assert is_whole(shared)


def clear(path: Path) -> None:
    """Empty a store, so that no sled of the same name hangs in it already."""
    with writing(path) as session:
        for each in list_projects(session):
            forget_project(session, each.name)
        for name in kept_sleds(session):
            drop(session, name)


def test_a_project_is_loaded_by_one_query_for_each_table(stored: Path) -> None:
    from sqlalchemy import event

    asked: list[str] = []
    with reading(stored) as session:
        event.listen(session.connection(), "before_cursor_execute", lambda *said: asked.append(said[2]))
        load_project(session, cabinet().name)
    tables = sorted(match for sql in asked for match in re.findall(r"FROM (\w+)", sql))
    of_a_project = set(Row.metadata.tables) - {"project_state", "lot", "flaw"}
    assert tables == sorted([*of_a_project, "project"])  # the project's own row is found by name first


def test_the_order_of_everything_survives(place: Path) -> None:
    project = cabinet()
    save(place, project)
    turned = replace(
        project,
        materials=project.materials[::-1],
        sleds=project.sleds[::-1],
        boxes=(*map(renamed, project.boxes * 2, ("Z", "A")), *project.boxes),
        carcases=tuple(replace(each, inside=side_by_side(*columns_of(each)[::-1])) for each in project.carcases[::-1]),
    )
    save(place, turned)
    assert load(place, project.name) == turned


def test_rows_whose_mark_is_unchanged_keep_their_ids(place: Path) -> None:
    save(place, batch_of(3))
    before = {table: ids(place, table) for table in ("box", "board", "corner_joint")}
    k1, k2, k3 = batch_of(3).boxes
    front, right, back, left = k3.ring.boards
    thicker = replace(k3.ring, boards=(replace(front, stuff=ash("3/4")), right, back, left))
    save(place, replace(batch_of(3), boxes=(replace(k3, ring=thicker), k1, renamed(k2, "M"))))
    for table, was in before.items():
        now = ids(place, table)
        kept = {mark for mark in was if not str(mark).startswith("K2")}
        assert {mark: now[mark] for mark in kept} == {mark: was[mark] for mark in kept}
        assert {mark for mark in now if mark not in was} == {m.replace("K2", "M") for m in map(str, was.keys() - kept)}


def test_materials_and_sleds_in_use_keep_their_ids_and_others_go(place: Path) -> None:
    project = cabinet()
    save(place, project)
    before = ids(place, "material", "name") | ids(place, "sled", "name")
    save(place, replace(project, materials=project.materials[1::-1], sleds=project.sleds[:1]))
    after = ids(place, "material", "name") | ids(place, "sled", "name")
    assert after == {name: before[name] for name in ("ash", "ply", "main")}


def test_drawers_can_change_places(place: Path) -> None:
    project = cabinet()
    save(place, project)
    before = ids(place, "board")
    carcase, dresser = project.carcases
    first, *others = columns_of(carcase)
    upside_down = replace(first, holds=replace(division_of(first), spaces=division_of(first).spaces[::-1]))
    inside = side_by_side(upside_down, *others)
    turned = replace(project, carcases=(replace(carcase, inside=inside), dresser))
    save(place, turned)
    assert load(place, project.name) == turned
    assert ids(place, "board") == before


def test_a_box_can_become_a_carcase_of_the_same_mark(place: Path) -> None:
    box, chest = small_box(), six_drawers()
    (carcase,) = chest.carcases
    save(place, replace(box, boxes=(renamed(box.boxes[0], carcase.ring.mark),)))
    save(place, chest)
    assert load(place, chest.name) == chest


def test_a_project_can_be_loaded_and_saved_again_in_one_transaction(stored: Path) -> None:
    with writing(stored) as session:
        project = load_project(session, cabinet().name)
        save_project(session, replace(project, boxes=(), carcases=project.carcases[1:]))
        save_project(session, project)
        assert load_project(session, project.name) == project
    assert load(stored, project.name) == project


def test_the_list_counts_by_kind_and_sorts_by_name(place: Path) -> None:
    save(place, batch_of(3, "tea boxes"), cabinet("Hall cabinet"), small_box())
    save(place, small_box())
    with reading(place) as session:
        assert list_projects(session) == (
            ProjectSummary(name="by hand", version=2, boxes=1, carcases=0, drawers=0),
            ProjectSummary(name="Hall cabinet", version=1, boxes=1, carcases=2, drawers=8),
            ProjectSummary(name="tea boxes", version=1, boxes=3, carcases=0, drawers=0),
        )


def test_a_forgotten_project_leaves_no_row(place: Path) -> None:
    save(place, cabinet())
    with writing(place) as session:
        forget_project(session, cabinet().name)
    tables = [name for (name,) in ask(place, "SELECT name FROM sqlite_master WHERE type = 'table'")]
    counts = {name: ask(place, f"SELECT count(*) FROM {name}") for name in tables}  # noqa: S608
    left = {name: rows for name, rows in counts.items() if rows != [(0,)]}
    assert left == {"alembic_version": [(1,)], "kept_sled": [(1,)]}  # the sled hangs on the wall as before


def test_forgetting_one_project_leaves_the_others(place: Path) -> None:
    save(place, cabinet(), batch_of(2))
    with writing(place) as session:
        forget_project(session, cabinet().name)
    assert load(place, batch_of(2).name) == batch_of(2)


@pytest.mark.parametrize(
    ("asked", "meant"),
    [("hal cabinet", "hall cabinet"), ("HALL CABINET", "hall cabinet"), ("Tea box", "tea boxes"), ("Garderobe", None)],
)
def test_an_unknown_name_is_refused_with_the_nearest_and_all_names(place: Path, asked: str, meant: str | None) -> None:
    save(place, cabinet(), batch_of(2))
    with pytest.raises(InputError) as caught:
        load(place, asked)
    (problem,) = caught.value.problems
    assert repr(asked) in problem.where
    assert ("Did you mean" in problem.remedy) == (meant is not None)
    assert meant is None or f"Did you mean {meant!r}?" in problem.remedy
    assert "'hall cabinet', 'tea boxes'" in problem.remedy


def test_of_many_names_only_some_are_listed(place: Path) -> None:
    save(place, *(batch_of(1, f"box {n:02d}") for n in range(15)))
    with pytest.raises(InputError, match="'box 11' and 3 more"):
        load(place, "?")


@pytest.mark.parametrize("name", ["\ud800", "a\0b", "", "'; DROP TABLE board; --"])
def test_any_text_may_be_asked_for(stored: Path, name: str) -> None:
    with pytest.raises(InputError):
        load(stored, name)


def test_an_unsound_project_is_refused_and_nothing_is_written(stored: Path) -> None:
    before = dump(stored)
    project = cabinet()
    (box,) = project.boxes
    unsound = replace(project, boxes=(box, box, replace(renamed(box, "L"), ring=replace(box.ring, sled="gone"))))
    with pytest.raises(InputError) as caught:
        save(stored, unsound)
    assert {"mark 'K'", "K"} <= {problem.where for problem in caught.value.problems}
    assert dump(stored) == before


def test_a_ring_that_is_no_ring_is_refused(stored: Path) -> None:
    before = dump(stored)
    (box,) = small_box().boxes
    crossed = replace(box, ring=replace(box.ring, corners=box.ring.corners[::-1]))
    turned = replace(renamed(box, "L"), ring=replace(renamed(box, "L").ring, boards=box.ring.boards[::-1]))
    with pytest.raises(InputError) as caught:
        save(stored, replace(small_box(), boxes=(crossed, turned)))
    assert {"K-J1", "K-J4", "L-J1", "K", "L"} <= {problem.where for problem in caught.value.problems} | {"K"}
    assert dump(stored) == before


def test_a_ratio_beyond_all_measure_is_refused(stored: Path) -> None:
    before = dump(stored)
    project = cabinet()
    carcase, _ = project.carcases
    columns = tuple(
        replace(each, holds=replace(division_of(each), ratio=Fraction(10**30 + 1, 10**30)))
        if division_of(each).rule is HeightRule.RATIO
        else each
        for each in columns_of(carcase)
    )
    with pytest.raises(InputError, match="too large"):
        save(stored, replace(project, carcases=(replace(carcase, inside=side_by_side(*columns)),)))
    assert dump(stored) == before


def test_a_space_that_is_divided_into_nothing_is_refused(stored: Path) -> None:
    before = dump(stored)
    chest = six_drawers()
    (carcase,) = chest.carcases
    with pytest.raises(InputError, match=r"^C: a space is divided, but into nothing"):
        save(stored, replace(chest, carcases=(replace(carcase, inside=side_by_side()),)))
    assert dump(stored) == before


DAMAGE = [
    ("DELETE FROM board WHERE mark = 'D101-left'", "box 'D101'"),
    ("DELETE FROM corner_joint WHERE mark = 'D101-J2'", "board 'D101-right'"),
    ("DELETE FROM drawer WHERE space_id = 6", "space 1 (row 6)"),
    ("DELETE FROM plain_box", "box 'K'"),
    ("DELETE FROM carcase WHERE box_id = 2", "carcase 'C'"),
    ("DELETE FROM space WHERE id = 7", "box 'D102'"),
    ("DELETE FROM space WHERE id = 3", "box 'D201'"),
    ("DELETE FROM space WHERE id = 1", "carcase 'C'"),
    ("DELETE FROM space WHERE parent_id = 15", "space 1 (row 15)"),
    ("UPDATE space SET parent_id = 17 WHERE id = 16", "space row 16"),
    ("UPDATE space SET parent_id = 19 WHERE id = 16", "space row 16"),
    ("UPDATE space SET holds = 'nothing' WHERE id = 6", "box 'D101'"),
    ("UPDATE space SET holds = 'nothing' WHERE id = 17", "loose_shelves row 17"),
    ("UPDATE space SET holds = 'a cat' WHERE id = 17", "project 'hall cabinet'"),
    ("UPDATE space SET way = NULL WHERE id = 1", "project 'hall cabinet'"),
    ("UPDATE space SET share_bottom = 0 WHERE id = 1", "project 'hall cabinet'"),
    ("DELETE FROM loose_shelves", "space 1 (row 17)"),
    ("DELETE FROM doors", "made row"),
    ("DELETE FROM made WHERE space_id IS NOT NULL", "doors of space 1 (row 17)"),
    ("DELETE FROM made WHERE box_id IS NOT NULL", "lid of 'K'"),
    ("DELETE FROM made WHERE carcase_id IS NOT NULL", "back of 'S'"),
    ("UPDATE lid SET lid_kind = 'sawn', height_nm = 1, kerf_nm = 1", "lid of 'K'"),
    ("UPDATE back SET kind = 'panel'", "project 'hall cabinet'"),
    ("UPDATE back SET kind = 'panel' WHERE carcase_id = 2; DELETE FROM lid", "made row"),
    ("DELETE FROM bottom_panel WHERE box_id = 5", "slips row 5, bottom panel"),
    ("DELETE FROM plinth", "box 'CP'"),
    ("DELETE FROM box WHERE mark = 'CP'", "plinth of 'C'"),
    ("UPDATE stand SET carcase_id = 2", "stand row 2"),
    ("UPDATE stand SET leg_material_id = 99", "carcase 'S'"),
    ("UPDATE till SET lid_material_id = 99", "till of 'K'"),
    ("DELETE FROM rails", "C"),
    ("DELETE FROM dividers WHERE kind = 'partition'", "C"),
    ("DELETE FROM dividers WHERE kind = 'shelf'", "S"),
    ("DELETE FROM material WHERE name = 'ash'", "board 'K-front'"),
    ("DELETE FROM sled WHERE name = 'main'", "box 'K'"),
    ("DELETE FROM box WHERE mark = 'D101'", "drawer in space 1 (row 6)"),
    ("DELETE FROM box WHERE kind = 'plain box' OR kind = 'carcase'", "box 'D101'"),
    ("UPDATE board SET role = 'top' WHERE mark = 'K-front'", "K"),
    ("UPDATE corner_joint SET board_at_a_id = 999 WHERE mark = 'K-J1'", "K-J1"),
    ("UPDATE box SET kind = 'carcase' WHERE mark = 'K'", "carcase 'K'"),
    ("UPDATE project SET unit = 'ell'", "project 'hall cabinet'"),
    ("DELETE FROM spacing WHERE joint_id IS NULL AND box_id = 1", "box 'K'"),
    ("DELETE FROM pin_place", "K-J1"),
    ("UPDATE pin_place SET from_nm = 1 WHERE position = 2", "K-J1"),
    ("UPDATE spacing SET measured_from = 'top' WHERE box_id = 1", "project 'hall cabinet'"),
    ("UPDATE corner_joint SET board_at_a_id = 999 WHERE mark = 'D201-J4'", "D201-J4"),
    ("UPDATE corner_joint SET lap_nm = 1000000000 WHERE mark = 'D201-J4'", "D201-J4"),
]


@pytest.mark.parametrize(
    ("spacing", "what"),
    [
        (replace(SPACING, spread=Spread.LISTED), "need their places"),
        (replace(LISTED, spread=Spread.EVEN), "need their places"),
        (replace(LISTED, places=LISTED.places[::-1]), "not in order"),
        (replace(LISTED, places=((LISTED.places[0][0], LISTED.places[1][0]), LISTED.places[1])), "not in order"),
    ],
    ids=["listed without places", "even with places", "backwards", "pins that touch"],
)
def test_listed_pins_that_are_no_list_of_pins_are_refused(stored: Path, spacing: Spacing, what: str) -> None:
    before = dump(stored)
    (box,) = small_box().boxes
    with pytest.raises(InputError, match=f"^K: .*{what}"):
        save(stored, replace(small_box(), boxes=(replace(box, ring=replace(box.ring, spacing=spacing)),)))
    assert dump(stored) == before


@pytest.mark.parametrize(("damage", "named"), DAMAGE)
def test_a_store_with_a_gap_is_refused_and_the_rows_are_named(stored: Path, damage: str, named: str) -> None:
    with closing(sqlite3.connect(stored)) as connection:
        connection.executescript(f"PRAGMA foreign_keys = OFF; PRAGMA ignore_check_constraints = ON; {damage}")
    with pytest.raises(StoreError) as caught:
        load(stored, cabinet().name)
    assert any(named in problem.where for problem in caught.value.problems), caught.value
