"""Every field of a stored value has its place in the tables, and every column a field."""

from __future__ import annotations

from dataclasses import fields
from typing import Any

import pytest

from planner.domain.box import BottomPanel, Box
from planner.domain.carcase import AppliedFront, BackPanel, Carcase, Column, Drawer, Opening, Partitions, Rails
from planner.domain.material import Material
from planner.domain.project import Project
from planner.domain.rates import Rates
from planner.domain.ring import Board, Corner, Ring
from planner.domain.sled import Sled
from planner.domain.spacing import Spacing
from planner.store.part_tables import (
    AppliedFrontRow,
    BackPanelRow,
    BottomPanelRow,
    CarcaseRow,
    ColumnRow,
    DrawerRow,
    OpeningRow,
    PartitionsRow,
    PlainBoxRow,
    RailsRow,
)
from planner.store.tables import (
    BoardRow,
    BoxRow,
    CornerJointRow,
    MaterialRow,
    PinPlaceRow,
    ProjectRow,
    Row,
    SledRow,
    SpacingRow,
)

OTHER_TABLE: tuple[str, ...] = ()
STUFF = ("material_id", "thickness_nm")
RATIO = ("ratio_top", "ratio_bottom")
RATES = tuple(field.name for field in fields(Rates))

ELSEWHERE: dict[type[Any], tuple[type[Row], dict[str, tuple[str, ...]], set[str]]] = {
    Project: (
        ProjectRow,
        dict.fromkeys(("materials", "sleds", "boxes", "carcases"), OTHER_TABLE) | {"rates": RATES},
        {"id", "version"},
    ),
    Material: (MaterialRow, {}, {"id", "project_id", "position"}),
    Sled: (SledRow, {}, {"id", "project_id", "position"}),
    Ring: (
        BoxRow,
        {"boards": OTHER_TABLE, "corners": OTHER_TABLE, "spacing": OTHER_TABLE, "sled": ("sled_id",)},
        {"id", "project_id", "position"},
    ),
    Board: (BoardRow, {"stuff": STUFF}, {"id", "project_id", "box_id", "position"}),
    Corner: (
        CornerJointRow,
        {"board_at_b": ("board_at_b_id",), "board_at_a": ("board_at_a_id",), "spacing": OTHER_TABLE},
        {"id", "project_id", "box_id"},
    ),
    Spacing: (SpacingRow, {"ratio": RATIO, "places": OTHER_TABLE}, {"id", "project_id", "box_id", "joint_id"}),
    Box: (PlainBoxRow, {"ring": ("box_id",), "bottom": OTHER_TABLE}, {"project_id", "kind"}),
    Carcase: (
        CarcaseRow,
        {"ring": ("box_id",)} | dict.fromkeys(("columns", "rails", "partitions", "back"), OTHER_TABLE),
        {"project_id", "kind"},
    ),
    Column: (
        ColumnRow,
        {"ratio": RATIO, "openings": OTHER_TABLE},
        {"id", "project_id", "carcase_id", "position"},
    ),
    Opening: (OpeningRow, {"drawer": OTHER_TABLE}, {"id", "project_id", "column_id", "position"}),
    Drawer: (
        DrawerRow,
        {"ring": ("box_id",)} | dict.fromkeys(("bottom", "applied_front"), OTHER_TABLE),
        {"project_id", "kind", "opening_id"},
    ),
    AppliedFront: (AppliedFrontRow, {"stuff": STUFF}, {"project_id", "box_id", "kind"}),
    BottomPanel: (BottomPanelRow, {"stuff": STUFF}, {"project_id", "box_id", "kind"}),
    Rails: (RailsRow, {"stuff": STUFF}, {"project_id", "carcase_id"}),
    Partitions: (PartitionsRow, {"stuff": STUFF}, {"project_id", "carcase_id"}),
    BackPanel: (BackPanelRow, {"stuff": STUFF}, {"project_id", "carcase_id"}),
}
"""By type: its table, the fields that are not one column of the same name, and the columns that are no field."""


@pytest.mark.parametrize("kind", ELSEWHERE, ids=lambda kind: str(kind.__name__))
def test_fields_and_columns_agree(kind: type[Any]) -> None:
    table, otherwise, added = ELSEWHERE[kind]
    names = {field.name for field in fields(kind)}
    assert otherwise.keys() <= names
    columns = {column for name in names for column in otherwise.get(name, (name,))}
    assert columns | added == set(table.model_fields)
    assert not columns & added


def test_every_table_belongs_to_a_type() -> None:
    """A listed pin is a plain pair of places, not a dataclass."""
    tables: list[type[Row]] = [PinPlaceRow, *(table for table, _, _ in ELSEWHERE.values())]
    assert {table.__tablename__ for table in tables} == set(Row.metadata.tables)
