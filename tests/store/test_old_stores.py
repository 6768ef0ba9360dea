"""Stores of every released schema, as that release wrote them, are opened, loaded and saved again."""

from __future__ import annotations

import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from planner.domain.words import HeightRule
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
    assert (summary.name, summary.boxes, summary.carcases, summary.drawers) == ("chest and box", 1, 1, 6)
    project = load(old, summary.name)
    (box,), (carcase,) = project.boxes, project.carcases
    sizes = (box.length_nm, box.width_nm, box.height_nm, carcase.width_nm, carcase.height_nm, carcase.depth_nm)
    assert sizes == tuple(read_length(said, Unit.INCH) for said in ("12", "8", "5 1/2", "36", "46", "20"))
    (column,) = carcase.columns
    assert (column.heights, column.step_nm) == (HeightRule.STEP, read_length("1/2", Unit.INCH))
    assert [opening.drawer.ring.mark for opening in column.openings] == [f"D{n}" for n in range(1, 7)]
    assert len({board.mark for ring in project.rings() for board in ring.boards}) == 8 * 4


def test_an_old_store_takes_its_project_again_and_others(old: Path) -> None:
    project = load(old, "chest and box")
    save(old, project, replace(project, name="another"))
    assert load(old, "chest and box") == project
    assert load(old, "another") == replace(project, name="another")
    assert ask(old, "SELECT name, version FROM project ORDER BY id") == [("chest and box", 2), ("another", 1)]
    assert ask(old, "SELECT version_num FROM alembic_version") == [(HEAD,)]
    assert schema_of(old) == schema_of_tables()
    assert is_whole(old)
    assert old.name in folder_of(old)
