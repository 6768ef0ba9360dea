"""Stores of every released schema, as that release wrote them, are opened, loaded and saved again."""

from __future__ import annotations

import shutil
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from planner.domain.words import EdgeName, HeightRule, Spread
from planner.lengths import Unit, read_length
from planner.store.engine import reading
from planner.store.migrate import HEAD, released
from planner.store.projects import list_projects
from tests.store.examples import ask, folder_of, is_whole, load, save, schema_of, schema_of_tables

RELEASED = sorted((Path(__file__).parent.parent / "stores").glob("*.db"))


@pytest.fixture(params=RELEASED, ids=lambda path: str(path.stem))
def old(request: pytest.FixtureRequest, place: Path) -> Path:
    """A copy of a released store."""
    return Path(shutil.copy(request.param, place))


def test_there_is_a_store_of_every_revision() -> None:
    assert {path.stem for path in RELEASED} == released().known()


def test_an_old_store_holds_what_was_put_into_it(old: Path) -> None:
    with reading(old) as session:
        (summary,) = list_projects(session)
    assert (summary.name, summary.boxes, summary.carcases, summary.drawers) == ("hall cabinet", 1, 1, 8)
    project = load(old, summary.name)
    (box,), (carcase,) = project.boxes, project.carcases
    sizes = (box.length_nm, box.width_nm, box.height_nm, carcase.width_nm, carcase.height_nm, carcase.depth_nm)
    assert sizes == tuple(read_length(said, Unit.INCH) for said in ("12", "8", "5 1/2", "36", "46", "20"))
    assert [column.heights for column in carcase.columns] == list(HeightRule)
    assert [drawer.ring.mark for drawer in project.drawers()] == [f"D{n}0{m}" for n in (1, 2, 3, 4) for m in (1, 2)]
    assert len({board.mark for ring in project.rings() for board in ring.boards}) == 10 * 4


def test_an_old_store_holds_its_spacings_and_fronts(old: Path) -> None:
    project = load(old, "hall cabinet")
    ring = project.boxes[0].ring
    assert (ring.spacing.spread, ring.spacing.ratio, ring.spacing.tails) == (Spread.MIDDLE, Fraction(3, 2), 5)
    listed, *others = (corner.spacing for corner in ring.corners)
    assert listed is not None
    places = tuple(tuple(read_length(said, Unit.INCH) for said in pin) for pin in (("1", "1 1/4"), ("2 1/2", "3")))
    assert (listed.places, listed.measured_from, others) == (places, EdgeName.FAR, [None, None, None])
    drawers = {drawer.ring.mark: drawer for drawer in project.drawers()}
    assert [mark for mark, drawer in drawers.items() if drawer.applied_front] == ["D101"]
    kinds = {corner.mark: corner.lap_nm for drawer in drawers.values() for corner in drawer.ring.corners}
    quarter = read_length("1/4", Unit.INCH)
    assert {mark: lap for mark, lap in kinds.items() if lap} == {"D201-J1": quarter, "D201-J4": quarter}
    assert (project.rates.pass_s, project.rates.turning_s) == (8, 0)


def test_an_old_store_has_a_row_in_every_table(old: Path) -> None:
    """So that every later migration has something to lose."""
    tables = [table for (table,) in ask(old, "SELECT name FROM sqlite_master WHERE type = 'table'")]
    assert "spacing" in tables
    assert all(ask(old, f"SELECT count(*) FROM {table}") > [(0,)] for table in tables)  # noqa: S608


def test_an_old_store_takes_its_project_again_and_others(old: Path) -> None:
    project = load(old, "hall cabinet")
    save(old, project, replace(project, name="another"))
    assert load(old, "hall cabinet") == project
    assert load(old, "another") == replace(project, name="another")
    assert ask(old, "SELECT name, version FROM project ORDER BY id") == [("hall cabinet", 2), ("another", 1)]
    assert ask(old, "SELECT version_num FROM alembic_version") == [(HEAD,)]
    assert schema_of(old) == schema_of_tables()
    assert is_whole(old)
    assert old.name in folder_of(old)
