"""The store's own sleds, and the copies that projects have of them."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from dataclasses import replace
from pathlib import Path

import pytest

from planner.domain.project import Project
from planner.domain.sled import Sled
from planner.errors import InputError, StoreError
from planner.lengths import Nm, Unit
from planner.store.engine import reading, writing
from planner.store.sleds import SledUser, drop, kept_sled, kept_sleds, measure, take_in, users
from tests.pieces import SLED, small_box
from tests.store.examples import SPARE, ask, cabinet, dump, is_whole, load, save

KEPT = replace(SLED, kept=True)
WORN = replace(KEPT, bit_nm=Nm(12_620_000), slot_nm=Nm(12_650_000), run_micro=7_000_000)
COPIES = "SELECT project.name, bit_nm, slot_nm, run_micro FROM sled JOIN project ON project.id = project_id"


def box(name: str, sled: Sled = KEPT) -> Project:
    """A small box in a project of this name, cut on this sled."""
    return replace(small_box(), name=name, sleds=(sled,))


def kept_in(path: Path) -> dict[str, Sled]:
    with reading(path) as session:
        return kept_sleds(session)


def test_a_kept_sled_is_taken_in_with_the_first_project_and_shared_by_the_next(place: Path) -> None:
    save(place, box("pens"))
    save(place, box("tea"), replace(box("salt", SLED), unit=Unit.MM))
    assert kept_in(place) == {"main": KEPT}
    assert ask(place, "SELECT count(*) FROM sled WHERE kept_sled_id = 1") == [(2,)]
    assert [load(place, name).sleds for name in ("pens", "tea", "salt")] == [(KEPT,), (KEPT,), (SLED,)]


def test_the_projects_of_a_sled_are_named_in_order_with_their_units(place: Path) -> None:
    save(place, box("tea"), replace(box("Pens"), unit=Unit.MM), box("salt", SLED), cabinet())
    with reading(place) as session:
        assert users(session, "main") == (
            SledUser(project="Pens", unit=Unit.MM),
            SledUser(project="tea", unit=Unit.INCH),
        )
        assert users(session, "none such") == ()
        assert [sled.name for sled in kept_sleds(session).values()] == ["main", "spare"]


def test_measuring_changes_the_sled_and_every_copy_but_no_other(place: Path) -> None:
    save(place, box("pens"), box("tea"), box("salt", SLED))
    with writing(place) as session:
        before = load_names(place)
        measure(session, WORN)
    assert kept_in(place) == {"main": WORN}
    assert {row[0]: row[1:] for row in ask(place, COPIES)} == {
        "pens": (12_620_000, 12_650_000, 7_000_000),
        "tea": (12_620_000, 12_650_000, 7_000_000),
        "salt": (SLED.bit_nm, None, SLED.run_micro),
    }
    assert load(place, "tea") == replace(before["tea"], sleds=(WORN,))
    assert load(place, "salt") == before["salt"]
    assert dict(ask(place, "SELECT name, version FROM project")) == {"pens": 2, "tea": 2, "salt": 1}  # type: ignore[arg-type]
    assert is_whole(place)


def load_names(path: Path) -> dict[str, Project]:
    return {name: load(path, name) for name in ("pens", "tea", "salt")}


def test_what_was_measured_is_seen_in_the_same_transaction(place: Path) -> None:
    from sqlmodel import select

    from planner.store.projects import load_project
    from planner.store.tables import KeptSledRow, SledRow

    save(place, box("pens"))
    with writing(place) as session:
        held = [*session.exec(select(KeptSledRow)), *session.exec(select(SledRow))]  # by somebody
        assert load_project(session, "pens").sleds == (KEPT,)
        measure(session, WORN)
        assert [row.bit_nm for row in held] == [WORN.bit_nm] * 2
        assert load_project(session, "pens").sleds == (WORN,)
        assert kept_sled(session, "main") == WORN


def test_a_project_whose_copy_is_another_is_refused_and_nothing_is_written(place: Path) -> None:
    save(place, box("pens"))
    before = dump(place)
    with pytest.raises(InputError, match=r"sled 'main': is not like .*: run_micro, bit_nm, slot_nm"):
        save(place, box("tea", WORN))
    assert dump(place) == before


def test_a_project_can_let_go_of_a_kept_sled_and_take_it_again(place: Path) -> None:
    save(place, box("pens"), box("tea"))
    save(place, box("pens", replace(WORN, kept=False)))
    assert (load(place, "pens").sleds, load(place, "tea").sleds) == ((replace(WORN, kept=False),), (KEPT,))
    save(place, box("pens"))
    with reading(place) as session:
        assert [user.project for user in users(session, "main")] == ["pens", "tea"]


def test_a_sled_in_use_is_not_dropped_and_its_projects_are_named(place: Path) -> None:
    save(place, box("pens"), box("tea"))
    before = dump(place)
    with pytest.raises(InputError, match="is in use by 'pens', 'tea'"), writing(place) as session:
        drop(session, "main")
    assert dump(place) == before


def test_a_sled_out_of_use_stays_until_it_is_dropped(place: Path) -> None:
    save(place, box("pens"))
    save(place, box("pens", SLED))
    assert kept_in(place) == {"main": KEPT}
    with writing(place) as session:
        drop(session, "main")
    assert kept_in(place) == {}


def test_a_sled_is_taken_in_without_any_project(place: Path) -> None:
    with writing(place) as session:
        take_in(session, [SPARE, KEPT])
    assert list(kept_in(place)) == ["main", "spare"]


@pytest.mark.parametrize("name", ["mayn", "\ud800", "a\0b", ""])
def test_an_unknown_name_is_refused_with_those_there_are(place: Path, name: str) -> None:
    save(place, box("pens"))
    with pytest.raises(InputError) as caught, reading(place) as session:
        kept_sled(session, name)
    (problem,) = caught.value.problems
    assert repr(name) in problem.where
    assert "In the store: 'main'." in problem.remedy
    assert ("Did you mean 'main'?" in problem.remedy) is (name == "mayn")


def test_in_a_store_that_keeps_none_a_name_is_answered_with_how_to_take_one_in(place: Path) -> None:
    with pytest.raises(InputError, match="planner keep-sled PROJECT SLED"), reading(place) as session:
        kept_sled(session, "main")


@pytest.mark.parametrize(
    ("damage", "what"),
    [
        ("UPDATE sled SET slot_nm = 1", "is not like the sled of this name that the store keeps: slot_nm"),
        ("UPDATE kept_sled SET bit_nm = 1, slot_nm = 2", "keeps: bit_nm, slot_nm"),
        ("DELETE FROM kept_sled", "is not among those that the store keeps"),
    ],
)
def test_a_copy_that_is_not_like_its_sled_is_damage(place: Path, damage: str, what: str) -> None:
    save(place, box("pens"))
    with closing(sqlite3.connect(place)) as connection:
        connection.executescript(f"PRAGMA foreign_keys = OFF; {damage}")
    with pytest.raises(StoreError, match=f"sled 'main': .*{what}"):
        load(place, "pens")
