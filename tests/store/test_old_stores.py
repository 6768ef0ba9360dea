"""Stores of every released schema, as that release wrote them, are opened, loaded and saved again."""

from __future__ import annotations

import shutil
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from planner.domain.carcase import BackPanel
from planner.domain.drawer import Drawer
from planner.domain.ring import Stuff
from planner.domain.space import Division, Space
from planner.domain.words import (
    BottomGoes,
    DividerJoint,
    DividerKind,
    EdgeName,
    HeightRule,
    SizesOver,
    Spread,
    Stands,
    Way,
)
from planner.intake.project_file import read_project
from planner.lengths import Nm, Unit, read_length
from planner.store.engine import reading
from planner.store.history import file_of, states
from planner.store.migrate import HEAD, released
from planner.store.projects import list_projects
from planner.store.sleds import kept_sleds
from tests.store.examples import ask, folder_of, is_whole, load, save, schema_of, schema_of_tables

RELEASED = sorted((Path(__file__).parent.parent / "stores").glob("*.db"))


@pytest.fixture(params=RELEASED, ids=lambda path: str(path.stem))
def old(request: pytest.FixtureRequest, place: Path) -> Path:
    """A copy of a released store."""
    return Path(shutil.copy(request.param, place))


def test_there_is_a_store_of_every_revision() -> None:
    assert {path.stem for path in RELEASED} == released().known()


def length(said: str) -> Nm:
    return read_length(said, Unit.INCH, zero=True)


def test_an_old_store_holds_what_was_put_into_it(old: Path) -> None:
    with reading(old) as session:
        (summary,) = list_projects(session)
    assert (summary.name, summary.boxes, summary.drawers) == ("hall cabinet", 1, 8)
    project = load(old, summary.name)
    (box,), (carcase, *_) = project.boxes, project.carcases
    sizes = (box.length_nm, box.width_nm, box.height_nm, carcase.width_nm, carcase.height_nm, carcase.depth_nm)
    assert sizes == tuple(map(length, ("12", "8", "5 1/2", "36", "46", "20")))
    assert carcase.sizes_over is SizesOver.OUTSIDE
    assert [drawer.ring.mark for drawer in project.drawers()] == [f"D{n}0{m}" for n in (1, 2, 3, 4) for m in (1, 2)]
    assert len({board.mark for ring in project.rings() for board in ring.boards}) == 4 * len(list(project.rings()))


def test_the_columns_of_an_old_store_are_spaces(old: Path) -> None:
    carcase = load(old, "hall cabinet").carcases[0]
    columns = carcase.inside.holds
    assert isinstance(columns, Division)
    assert (columns.way, columns.divider, columns.rule) == (Way.COLUMNS, DividerKind.PARTITION, HeightRule.LISTED)
    assert (columns.step_nm, columns.ratio) == (None, None)
    spaces = (carcase.inside, *columns.spaces)
    assert [space.size_nm for space in spaces] == [None, length("14"), None, None, None]
    assert {(space.share, space.doors) for space in spaces} == {(Fraction(1), None)}
    tiers = [_division(space) for space in columns.spaces]
    assert [(each.way, each.divider) for each in tiers] == [(Way.TIERS, DividerKind.RAIL)] * 4
    assert [(each.rule, each.step_nm, each.ratio) for each in tiers] == [
        (HeightRule.EQUAL, None, None),
        (HeightRule.STEP, length("1/2"), None),
        (HeightRule.RATIO, None, Fraction(23, 20)),
        (HeightRule.LISTED, None, None),
    ]
    assert [[space.size_nm for space in each.spaces] for each in tiers] == [
        *[[None, None]] * 3,
        [length("4"), None],
    ]
    held = [[space.holds for space in each.spaces] for each in tiers]
    assert all(isinstance(each, Drawer) for column in held for each in column)


def _division(space: Space) -> Division:
    assert isinstance(space.holds, Division)
    return space.holds


def test_the_carcase_of_an_old_store_has_its_parts(old: Path) -> None:
    carcase = load(old, "hall cabinet").carcases[0]
    rails, partitions, back = carcase.rails, carcase.partitions, carcase.back
    assert rails is not None
    assert partitions is not None
    assert isinstance(back, BackPanel)
    assert (rails.stuff, rails.width_nm, rails.housing_depth_nm) == (stuff("ash", "3/4"), length("3"), length("1/4"))
    assert (partitions.stuff, partitions.housing_depth_nm) == (stuff("ash", "7/8"), length("1/4"))
    assert (partitions.joint, partitions.stop_nm, partitions.tenons) == (DividerJoint.HOUSING, 0, 0)
    assert (back.stuff, back.rabbet_depth_nm, back.play_nm) == (stuff("ply", "1/4"), length("3/8"), length("1/32"))
    drawer = next(each for each in carcase.drawers() if each.ring.mark == "D102")
    clearances = (drawer.side_clearance_nm, drawer.top_clearance_nm, drawer.back_clearance_nm, drawer.back_lower_nm)
    assert clearances == tuple(map(length, ("1/16", "1/8", "1/2", "0")))
    bottom = drawer.bottom
    assert bottom is not None
    assert (bottom.stuff, bottom.groove_depth_nm, bottom.up_nm) == (stuff("ply", "1/4"), length("1/4"), None)
    assert (bottom.play_nm, bottom.goes, bottom.slips) == (length("1/32"), BottomGoes.ALL_ROUND, None)
    front = next(each.applied_front for each in carcase.drawers() if each.ring.mark == "D101")
    assert front is not None
    assert (front.stuff, front.gap_nm, front.stands, front.overlay_nm) == (stuff("ash", "5/8"), 0, Stands.INSET, 0)


def stuff(material: str, thickness: str) -> Stuff:
    return Stuff(material=material, thickness_nm=length(thickness))


def test_a_store_from_before_there_was_more_holds_no_more(place: Path) -> None:
    """What is new since then is not there, but for what was always meant."""
    plain = [path for path in RELEASED if path.stem < "0003"]
    first, second = (load(Path(shutil.copy(path, place.with_name(path.name))), "hall cabinet") for path in plain)
    assert replace(second, sleds=()) == replace(first, sleds=())
    (box,), (carcase,) = first.boxes, first.carcases
    assert (box.lid, box.till) == (None, None)
    assert (carcase.shelves, carcase.frames, carcase.runners, carcase.base, carcase.top) == (None,) * 5
    assert not any(drawer.handles for drawer in first.drawers())


@pytest.fixture(params=[path for path in RELEASED if path.stem < "0003"], ids=lambda path: str(path.stem))
def old_columns(request: pytest.FixtureRequest, place: Path) -> Path:
    """A copy of a released store in which carcases have columns, not spaces."""
    return Path(shutil.copy(request.param, place))


@pytest.mark.parametrize(
    ("change", "rule"),
    [
        ("UPDATE carcase_column SET width_nm = NULL", HeightRule.EQUAL),
        ("UPDATE carcase_column SET width_nm = position * 25400000 WHERE position > 1", HeightRule.LISTED),
        ("UPDATE carcase_column SET width_nm = NULL WHERE position = 1", HeightRule.EQUAL),
        ("UPDATE carcase_column SET width_nm = 25400000 WHERE position = 4", HeightRule.LISTED),
    ],
)
def test_columns_are_listed_where_any_has_a_width(old_columns: Path, change: str, rule: HeightRule) -> None:
    change_rows(old_columns, change)
    widths = [width for (width,) in ask(old_columns, "SELECT width_nm FROM carcase_column ORDER BY position")]
    columns = _division(load(old_columns, "hall cabinet").carcases[0].inside)
    assert columns.rule is rule
    assert [space.size_nm for space in columns.spaces] == widths


def test_an_upgrade_keeps_the_columns_and_drawers_of_several_projects_apart(old_columns: Path) -> None:
    change_rows(old_columns, *_copied_project(old_columns))
    first, second = load(old_columns, "hall cabinet"), load(old_columns, "copy")
    assert replace(second, name=first.name) == first
    assert len(list(second.drawers())) == 8
    assert is_whole(old_columns)


def _copied_project(store: Path) -> Iterator[str]:
    """Statements that give a store its project once more, under another name and with other ids, last rows first."""
    tables = [name for (name,) in ask(store, "SELECT name FROM sqlite_master WHERE type = 'table'")]
    for table in map(str, tables):
        columns = [str(row[1]) for row in ask(store, f"PRAGMA table_info({table})")]
        if table != "project" and "project_id" not in columns:
            continue
        copied = ", ".join(_copied(table, column) for column in columns)
        yield f"INSERT INTO {table} SELECT {copied} FROM {table} ORDER BY rowid DESC"  # noqa: S608


def _copied(table: str, column: str) -> str:
    if (table, column) == ("project", "name"):
        return "'copy'"
    is_id = column == "id" or column.endswith("_id")
    return f"1000 - {column}" if is_id and column != "kept_sled_id" else column


def change_rows(store: Path, *statements: str) -> None:
    with closing(sqlite3.connect(store)) as connection, connection:
        for statement in statements:
            connection.execute(statement)


def test_an_old_store_holds_its_spacings_and_fronts(old: Path) -> None:
    project = load(old, "hall cabinet")
    ring = project.boxes[0].ring
    assert (ring.spacing.spread, ring.spacing.ratio, ring.spacing.tails) == (Spread.MIDDLE, Fraction(3, 2), 5)
    listed, *others = (corner.spacing for corner in ring.corners)
    assert listed is not None
    places = tuple(tuple(map(length, pin)) for pin in (("1", "1 1/4"), ("2 1/2", "3")))
    assert (listed.places, listed.measured_from, others) == (places, EdgeName.FAR, [None, None, None])
    drawers = {drawer.ring.mark: drawer for drawer in project.drawers()}
    assert [mark for mark, drawer in drawers.items() if drawer.applied_front] == ["D101"]
    kinds = {corner.mark: corner.lap_nm for drawer in drawers.values() for corner in drawer.ring.corners}
    quarter = length("1/4")
    assert {mark: lap for mark, lap in kinds.items() if lap} == {"D201-J1": quarter, "D201-J4": quarter}
    assert (project.rates.pass_s, project.rates.turning_s) == (8, 0)


@pytest.fixture(params=[path for path in RELEASED if path.stem >= "0002"], ids=lambda path: str(path.stem))
def old_with_history(request: pytest.FixtureRequest, place: Path) -> Path:
    """A copy of a released store that has kept sleds and past states."""
    return Path(shutil.copy(request.param, place))


def test_an_older_store_keeps_no_sled_and_no_past_state(place: Path) -> None:
    first = Path(shutil.copy(RELEASED[0], place))
    with reading(first) as session:
        assert kept_sleds(session) == {}
        assert states(session, "hall cabinet") == ()
    assert [sled.kept for sled in load(first, "hall cabinet").sleds] == [False, False]


def test_an_old_store_keeps_the_sled_that_was_put_into_it(old_with_history: Path) -> None:
    with reading(old_with_history) as session:
        (sled,) = kept_sleds(session).values()
    slot, deepest = length("33/64"), length("1")
    assert (sled.name, sled.kept, sled.slot_nm, sled.greatest_depth_hard_nm) == ("spare", True, slot, deepest)
    assert load(old_with_history, "hall cabinet").sled("spare") == sled


def test_the_past_states_of_an_old_store_can_still_be_read(old_with_history: Path) -> None:
    with reading(old_with_history) as session:
        found = states(session, "hall cabinet")
        assert [(state.number, state.at, state.current) for state in found] == [
            (1, "2031-05-01T08:00:00+00:00", False),
            (2, "2031-05-02T08:00:00+00:00", True),
            (3, "2031-05-03T08:00:00+00:00", False),
        ]
        files = [file_of(session, "hall cabinet", state.number) for state in found]
    projects = [read_project(text, "state") for text in files]
    assert [len(list(project.drawers())) for project in projects] == [4, 8, 12]
    assert projects[1] == load(old_with_history, "hall cabinet")


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
