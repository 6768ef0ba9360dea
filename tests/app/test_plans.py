"""The workbook, and everything at once."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from planner.app.plans import prepare, write_workbook
from planner.app.projects import Change, listed, read
from planner.app.store_place import StorePlace
from planner.errors import InputError, PlanError, StoreError
from tests.app.folders import contents, sheets
from tests.app.test_file_names import HOSTILE
from tests.app.texts import BAD, CHEST, IMPOSSIBLE, named


def test_everything_at_once_stores_the_project_and_writes_both_files(store: StorePlace, shop: Path) -> None:
    done = prepare(str(CHEST), shop / "out", store, force=False)
    assert done.kept.change is Change.NEW
    assert [each.name for each in listed(store)] == ["Landing chest"]
    assert done.workbook == shop / "out" / "Landing chest.xlsx"
    assert done.plan_file == shop / "out" / "Landing chest.json"
    assert sorted(contents(shop / "out")) == ["Landing chest.json", "Landing chest.xlsx"]
    assert sheets(done.workbook)
    plan = json.loads(done.plan_file.read_bytes())
    assert {"boards", "joints", "sled"} <= plan.keys()
    assert len(plan["joints"]) == 28  # 4 corners of the carcase, 6 × 4 of the drawers


def test_the_same_project_gives_the_same_bytes(store: StorePlace, shop: Path) -> None:
    prepare(str(CHEST), shop / "a", store, force=False)
    prepare(str(CHEST), shop / "b", store, force=False)
    assert contents(shop / "a") == contents(shop / "b")


def test_nothing_is_overwritten_without_force_and_the_store_is_left_alone(
    store: StorePlace, shop: Path, box: Path
) -> None:
    (shop / "Salt box.json").write_bytes(b"mine")
    with pytest.raises(InputError, match=r"Salt box\.json: is there already"):
        prepare(str(box), shop, store, force=False)
    assert contents(shop) == {"Salt box.json": b"mine"}
    assert not store.path.exists()
    prepare(str(box), shop, store, force=True)
    assert sorted(contents(shop)) == ["Salt box.json", "Salt box.xlsx"]


@pytest.mark.parametrize(("text", "error"), [(BAD, InputError), (IMPOSSIBLE, PlanError)])
def test_a_file_that_cannot_be_planned_leaves_nothing(
    store: StorePlace, shop: Path, text: str, error: type[Exception]
) -> None:
    (shop / "bad.toml").write_text(text, encoding="utf-8")
    with pytest.raises(error):
        prepare(str(shop / "bad.toml"), shop / "out", store, force=True)
    assert sorted(contents(shop)) == ["bad.toml"]
    assert not store.path.parent.exists()


def test_files_are_taken_back_when_the_store_refuses(shop: Path, box: Path) -> None:
    (shop / "Salt box.json").write_bytes(b"mine")
    (shop / "store").mkdir()
    with pytest.raises(StoreError):
        prepare(str(box), shop, StorePlace(shop / "store"), force=True)
    assert contents(shop) == {"Salt box.json": b"mine", "store": None}


@pytest.mark.parametrize("name", [name for name in HOSTILE if name.isprintable() and 0 < len(name.strip()) <= 80])
def test_no_project_name_leads_out_of_the_folder(store: StorePlace, shop: Path, name: str) -> None:
    (shop / "in.toml").write_text(named(name.strip()), encoding="utf-8")
    prepare(str(shop / "in.toml"), shop / "out", store, force=False)
    assert len(contents(shop / "out")) == 2
    assert sorted(path.name for path in shop.iterdir()) == ["in.toml", "out"]


def test_a_workbook_can_be_written_of_a_stored_project(store: StorePlace, shop: Path, box: Path) -> None:
    read(str(box), store)
    plan = write_workbook(shop / "ΣALT.XLSX", "Salt box", store, force=False)
    assert plan.project.name == "Salt box"
    assert sheets(shop / "ΣALT.XLSX")


def test_a_workbook_goes_into_no_other_kind_of_file(store: StorePlace, box: Path) -> None:
    read(str(box), store)
    before = box.read_bytes()
    with pytest.raises(InputError, match=r"ends in \.xlsx"):
        write_workbook(box, "Salt box", store, force=True)
    assert box.read_bytes() == before
