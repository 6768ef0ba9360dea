"""Projects made by hand in which every table of the store has a row, and helpers to look into a store from outside."""

from __future__ import annotations

import re
import sqlite3
from contextlib import closing
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

from planner.domain.box import Box
from planner.domain.carcase import AppliedFront, Column, Drawer, Opening, Partitions
from planner.domain.material import Material
from planner.domain.project import Project
from planner.domain.rates import Rates
from planner.domain.ring import Ring, make_ring, with_half_blind_front
from planner.domain.words import EdgeName, HeightRule, Spread
from planner.store.engine import reading, writing
from planner.store.projects import load_project, save_project
from planner.store.tables import Row
from tests.pieces import SLED, SPACING, ash, drawer, inches, six_drawers, small_box

GRADUATED = replace(SPACING, tails=5, spread=Spread.MIDDLE, ratio=Fraction(3, 2), alike=True)
LISTED = replace(
    SPACING,
    spread=Spread.LISTED,
    places=((inches("1"), inches("1 1/4")), (inches("2 1/2"), inches("3"))),
    measured_from=EdgeName.FAR,
)


def column(number: int, drawers: int, rule: HeightRule) -> Column:
    """A column of drawers ``D101`` and so on, whose heights follow a rule."""
    listed = inches("4") if rule is HeightRule.LISTED else None
    return Column(
        width_nm=inches("14") if number == 1 else None,
        heights=rule,
        step_nm=inches("1/2") if rule is HeightRule.STEP else None,
        ratio=Fraction(23, 20) if rule is HeightRule.RATIO else None,
        openings=tuple(
            Opening(height_nm=listed if tier == 1 else None, drawer=fronted(drawer(f"D{number}{tier:02d}")))
            for tier in range(1, drawers + 1)
        ),
    )


def fronted(plain: Drawer) -> Drawer:
    """The same drawer; D101 with an applied front, D201 with a half-blind one."""
    if plain.ring.mark == "D101":
        return replace(plain, applied_front=AppliedFront(stuff=ash("5/8"), gap_nm=inches("0")))
    if plain.ring.mark == "D201":
        return replace(plain, ring=with_half_blind_front(plain.ring, inches("1/4")))
    return plain


def with_own_spacing(ring: Ring) -> Ring:
    """The ring graduated, but with listed pins on its first corner."""
    first, *others = ring.corners
    return replace(ring, spacing=GRADUATED, corners=(replace(first, spacing=LISTED), *others))  # type: ignore[arg-type]


def cabinet(name: str = "hall cabinet", *, drawers: int = 2) -> Project:
    """A cabinet with a column for each rule of heights, and a box with a corner of its own kind.

    One material and one sled are not used.
    """
    chest = six_drawers()
    (carcase,), (box,) = chest.carcases, small_box().boxes
    columns = tuple(column(number, drawers, rule) for number, rule in enumerate(HeightRule, start=1))
    partitions = Partitions(stuff=ash("7/8"), housing_depth_nm=inches("1/4"))
    return replace(
        chest,
        name=name,
        materials=(*chest.materials, Material(name="larch")),
        sleds=(*chest.sleds, replace(SLED, name="spare", slot_nm=inches("33/64"), greatest_depth_hard_nm=inches("1"))),
        boxes=(replace(box, ring=with_own_spacing(box.ring)),),
        carcases=(replace(carcase, columns=columns, partitions=partitions),),
        rates=Rates(pass_s=8, turning_s=0),
    )


def batch_of(count: int, name: str = "tea boxes") -> Project:
    """Boxes K1, K2 … that are alike."""
    (first,) = small_box().boxes
    return replace(small_box(), name=name, boxes=tuple(renamed(first, f"K{n}") for n in range(1, count + 1)))


def renamed(box: Box, mark: str) -> Box:
    """The same box under another mark."""
    old = box.ring
    first, second, third, fourth = (board.stuff for board in old.boards)
    ring = make_ring(mark, old.kind, (first, second, third, fourth), old.pin_pair, old.spacing, old.sled)
    return replace(box, ring=ring if old.spacing is SPACING else with_own_spacing(ring))


def save(path: Path, *projects: Project) -> None:
    """Save projects in one transaction."""
    with writing(path) as session:
        for project in projects:
            save_project(session, project)


def load(path: Path, name: str) -> Project:
    """Load a project."""
    with reading(path) as session:
        return load_project(session, name)


def ask(path: Path, sql: str) -> list[tuple[object, ...]]:
    """Rows by plain SQL."""
    with closing(sqlite3.connect(path)) as connection:
        return connection.execute(sql).fetchall()


def dump(path: Path) -> list[str]:
    """Schema and rows as SQL, to compare a store before and after."""
    with closing(sqlite3.connect(path)) as connection:
        return list(connection.iterdump())


def schema_of(path: Path) -> dict[str, list[str]]:
    """The tables and indexes of a store, each with its constraints in order; their order in the schema is no matter."""
    rows = ask(path, "SELECT name, sql FROM sqlite_master WHERE tbl_name <> 'alembic_version'")
    return {str(name): _clauses(str(sql)) for name, sql in rows}


def schema_of_tables() -> dict[str, list[str]]:
    """The same for the tables as the program describes them."""
    from sqlalchemy import create_engine

    engine = create_engine("sqlite://")
    with engine.connect() as connection:
        Row.metadata.create_all(connection)
        rows = connection.exec_driver_sql("SELECT name, sql FROM sqlite_master").fetchall()
    engine.dispose()
    return {str(name): _clauses(str(sql)) for name, sql in rows}


def _clauses(sql: str) -> list[str]:
    plain = re.sub(r"\s+", " ", sql).replace('"', "").strip()
    head, *constraints = re.split(r", (?=CONSTRAINT )|(?=\) STRICT$)", plain)
    return [head, *sorted(map(str.strip, constraints))]


def is_whole(path: Path) -> bool:
    """Whether SQLite finds nothing wrong with the file, and no row refers to nothing."""
    return ask(path, "PRAGMA integrity_check") == [("ok",)] and not ask(path, "PRAGMA foreign_key_check")


def folder_of(path: Path) -> list[str]:
    """Names of the files beside a store, itself included."""
    return sorted(each.name for each in path.parent.iterdir())
