"""Every field of a stored value has its place in the tables, and every column a field."""

from __future__ import annotations

from dataclasses import fields
from fractions import Fraction
from typing import Any

import pytest

from planner.domain.acknowledged import Acknowledged
from planner.domain.bottom import BottomPanel, Slips
from planner.domain.box import Box, HingedLid, SawnLid, Till
from planner.domain.carcase import (
    BackPanel,
    BoardedBack,
    Carcase,
    Dividers,
    Frames,
    HangingRail,
    PanelledBack,
    Plinth,
    Rails,
    Runners,
    SeparateTop,
    Stand,
)
from planner.domain.climate import Climate
from planner.domain.drawer import AppliedFront, Drawer, DrawerStops, Handles
from planner.domain.material import Material
from planner.domain.panelled import Panelled, Slab
from planner.domain.project import Project
from planner.domain.rack import Flaw, Lot
from planner.domain.rates import Rates
from planner.domain.ring import Board, Corner, Ring
from planner.domain.sled import Sled
from planner.domain.space import Division, Doors, DoorStops, LooseShelves, ShelfPins, Space
from planner.domain.spacing import Spacing
from planner.domain.stock import MaterialStock, Stock
from planner.domain.timber import Timber
from planner.domain.use import Load, Use
from planner.domain.words import BottomGoes, MaterialKind, Role, Spread
from planner.lengths import Nm
from planner.store.carcase_tables import (
    BackRow,
    CarcaseRow,
    DividersRow,
    DoorsRow,
    FramesRow,
    LooseShelvesRow,
    MadeRow,
    PlinthRow,
    RailsRow,
    RunnersRow,
    SeparateTopRow,
    SpaceRow,
    StandRow,
)
from planner.store.columns import columns_of, row_from, value_from
from planner.store.history_table import StateRow
from planner.store.part_tables import (
    AppliedFrontRow,
    BottomPanelRow,
    DrawerRow,
    HandlesRow,
    LidRow,
    PlainBoxRow,
    SlipsRow,
    TillRow,
)
from planner.store.stock_tables import FlawRow, LotRow, MaterialStockRow, StockRow
from planner.store.stop_tables import DoorStopsRow, DrawerStopsRow, HangingRailRow, ShelfPinsRow
from planner.store.tables import (
    AcknowledgedRow,
    BoardRow,
    BoxRow,
    CornerJointRow,
    KeptSledRow,
    MaterialRow,
    PinPlaceRow,
    ProjectRow,
    Row,
    SledRow,
    SpacingRow,
)
from planner.store.use_tables import CarriedLoadRow, UseRow
from planner.store.wood_tables import ClimateRow, TimberRow
from tests.pieces import SPACING, ash, inches
from tests.store.examples import GRADUATED, PANELLED, SPARE

OTHER_TABLE: tuple[str, ...] = ()
STUFF: dict[str, tuple[str, ...]] = {"stuff": ("material_id", "thickness_nm")}
RATIO: dict[str, tuple[str, ...]] = {"ratio": ("ratio_top", "ratio_bottom")}
RATES = tuple(field.name for field in fields(Rates))
IN_CARCASE = {"project_id", "carcase_id"}
AT_BOX = {"project_id", "box_id", "kind"}


def stuff(name: str) -> dict[str, tuple[str, ...]]:
    return {name: (f"{name}_material_id", f"{name}_thickness_nm")}


def elsewhere(*names: str) -> dict[str, tuple[str, ...]]:
    return dict.fromkeys(names, OTHER_TABLE)


ELSEWHERE: dict[type[Any], tuple[type[Row], dict[str, tuple[str, ...]], set[str]]] = {
    Project: (
        ProjectRow,
        elsewhere("materials", "sleds", "boxes", "carcases", "acknowledged", "timbers", "room", "shop", "stock")
        | {"rates": RATES},
        {"id", "version"},
    ),
    Material: (MaterialRow, {}, {"id", "project_id", "position"}),
    Acknowledged: (AcknowledgedRow, {}, {"project_id", "position"}),
    Timber: (TimberRow, {}, {"project_id", "position"}),
    Climate: (ClimateRow, {}, {"project_id", "state_of"}),
    Stock: (
        StockRow,
        {"keep": ("keep_length_nm", "keep_width_nm", "keep_credit_pct")} | elsewhere("materials"),
        {"project_id"},
    ),
    MaterialStock: (MaterialStockRow, {"material": ("material_id",)}, {"project_id", "position"}),
    Lot: (LotRow, {"price": ("cents", "per", "currency")} | elsewhere("flaws"), {"id"}),
    Flaw: (
        FlawRow,
        {"along": ("along_from_nm", "along_to_nm"), "across": ("across_from_nm", "across_to_nm")},
        {"lot_id", "position"},
    ),
    Sled: (SledRow, {"kept": ("kept_sled_id",)}, {"id", "project_id", "position"}),
    Ring: (
        BoxRow,
        elsewhere("boards", "corners", "spacing") | {"sled": ("sled_id",)},
        {"id", "project_id", "position"},
    ),
    Board: (BoardRow, STUFF, {"id", "project_id", "box_id", "position"}),
    Corner: (
        CornerJointRow,
        {"board_at_b": ("board_at_b_id",), "board_at_a": ("board_at_a_id",), "spacing": OTHER_TABLE},
        {"id", "project_id", "box_id"},
    ),
    Spacing: (SpacingRow, RATIO | elsewhere("places"), {"id", "project_id", "box_id", "joint_id"}),
    Box: (PlainBoxRow, {"ring": ("box_id",)} | elsewhere("bottom", "lid", "till"), {"project_id", "kind"}),
    HingedLid: (LidRow, elsewhere("made"), AT_BOX | {"lid_kind", "height_nm", "kerf_nm"}),
    SawnLid: (LidRow, elsewhere("top"), AT_BOX | {"lid_kind", "front_nm", "sides_nm", "back_nm"}),
    Till: (TillRow, STUFF | stuff("lid"), AT_BOX),
    Carcase: (
        CarcaseRow,
        {"ring": ("box_id",)}
        | elsewhere(
            "inside",
            "rails",
            "partitions",
            "shelves",
            "frames",
            "runners",
            "back",
            "base",
            "top",
            "hanging_rail",
            "use",
        ),
        {"project_id", "kind"},
    ),
    Space: (
        SpaceRow,
        {
            "share": ("share_top", "share_bottom"),
            "holds": ("holds", "way", "divider", "rule", "step_nm", *RATIO["ratio"]),
            "doors": OTHER_TABLE,
        },
        IN_CARCASE | {"id", "parent_id", "position"},
    ),
    Division: (
        SpaceRow,
        RATIO | elsewhere("spaces"),
        IN_CARCASE | {"id", "parent_id", "position", "holds", "size_nm", "share_top", "share_bottom"},
    ),
    LooseShelves: (LooseShelvesRow, STUFF | elsewhere("pins"), {"project_id", "space_id", "kind"}),
    ShelfPins: (ShelfPinsRow, {}, {"project_id", "space_id", "kind"}),
    Doors: (DoorsRow, elsewhere("made", "stops"), {"project_id", "space_id"}),
    DoorStops: (DoorStopsRow, STUFF, {"project_id", "space_id"}),
    Drawer: (
        DrawerRow,
        {"ring": ("box_id",)} | elsewhere("bottom", "applied_front", "handles", "stops"),
        {"project_id", "kind", "space_id"},
    ),
    AppliedFront: (AppliedFrontRow, STUFF, AT_BOX),
    Handles: (HandlesRow, {}, AT_BOX),
    DrawerStops: (DrawerStopsRow, STUFF, AT_BOX),
    BottomPanel: (BottomPanelRow, STUFF | elsewhere("slips"), AT_BOX | {"role"}),
    Slips: (SlipsRow, STUFF, {"project_id", "box_id", "role"}),
    Rails: (RailsRow, STUFF, IN_CARCASE),
    Dividers: (DividersRow, STUFF, IN_CARCASE | {"kind"}),
    Frames: (FramesRow, STUFF | stuff("dust_panel"), IN_CARCASE),
    Runners: (RunnersRow, STUFF, IN_CARCASE),
    BackPanel: (BackRow, STUFF, IN_CARCASE | {"kind", "board_nm", "lap_nm", "gap_nm"}),
    BoardedBack: (BackRow, STUFF, IN_CARCASE | {"kind"}),
    PanelledBack: (
        BackRow,
        elsewhere("made"),
        IN_CARCASE | {"kind", "material_id", "thickness_nm", "board_nm", "lap_nm", "gap_nm"},
    ),
    Plinth: (PlinthRow, {"ring": ("box_id",)}, IN_CARCASE | {"kind"}),
    Stand: (StandRow, stuff("leg") | stuff("apron"), IN_CARCASE),
    SeparateTop: (SeparateTopRow, STUFF, IN_CARCASE),
    HangingRail: (HangingRailRow, STUFF, IN_CARCASE),
    Use: (UseRow, elsewhere("shelves", "drawers", "top"), IN_CARCASE),
    Load: (CarriedLoadRow, {}, IN_CARCASE | {"borne_by"}),
    Panelled: (MadeRow, STUFF | stuff("panel"), {"id", "project_id", "space_id", "box_id", "carcase_id", "kind"}),
    Slab: (
        MadeRow,
        STUFF,
        {"id", "project_id", "space_id", "box_id", "carcase_id", "kind", "panel_material_id", "panel_thickness_nm"}
        | {field.name for field in fields(Panelled)} - {"stuff", "panel"},
    ),
}
"""By type: its table, the fields that are not one column of the same name, and the columns that are no field."""


def test_a_kept_sled_has_the_columns_of_a_project_s() -> None:
    own = {"project_id", "position", "kept_sled_id"}
    assert set(KeptSledRow.model_fields) == set(SledRow.model_fields) - own


@pytest.mark.parametrize("kind", ELSEWHERE, ids=lambda kind: str(kind.__name__))
def test_fields_and_columns_agree(kind: type[Any]) -> None:
    table, otherwise, added = ELSEWHERE[kind]
    names = {field.name for field in fields(kind)}
    assert otherwise.keys() <= names
    columns = {column for name in names for column in otherwise.get(name, (name,))}
    assert columns | added == set(table.model_fields)
    assert not columns & added


def test_every_table_belongs_to_a_type() -> None:
    """A listed pin is a plain pair of places, not a dataclass; a past state is a text."""
    tables: list[type[Row]] = [PinPlaceRow, KeptSledRow, StateRow, *(table for table, _, _ in ELSEWHERE.values())]
    assert {table.__tablename__ for table in tables} == set(Row.metadata.tables)


# --- values to columns and back ----------------------------------------------------------------------------

ASH, PLY = 7, 9
IDS = {"ash": ASH, "ply": PLY}
NAMES = {number: name for name, number in IDS.items()}


def test_each_type_of_field_has_its_columns() -> None:
    assert columns_of(Material(name="elm", kind=MaterialKind.SHEET)) == {
        "name": "elm", "kind": "sheet", "hardness": "hard", "species": None, "sawn": None,
    }  # fmt: skip
    spacing = columns_of(GRADUATED)
    assert (spacing["ratio_top"], spacing["ratio_bottom"], spacing["alike"], spacing["spread"]) == (3, 2, 1, "middle")
    assert type(spacing["alike"]) is int
    assert type(spacing["spread"]) is str
    assert "places" not in spacing
    made = columns_of(PANELLED, IDS.__getitem__)
    assert (made["material_id"], made["thickness_nm"], made["panel_material_id"]) == (ASH, inches("3/4"), PLY)


def test_what_is_not_said_is_null_in_all_its_columns() -> None:
    till = Till(stuff=ash("1"), width_nm=Nm(1), depth_nm=Nm(1), housing_depth_nm=Nm(1), lid=None)
    columns = columns_of(till, IDS.__getitem__)
    assert (columns["lid_material_id"], columns["lid_thickness_nm"]) == (None, None)
    assert value_from(Till, row_from(TillRow, till, IDS.__getitem__), NAMES.__getitem__) == till


def test_a_row_gives_the_value_that_it_was_made_from() -> None:
    row = row_from(MadeRow, PANELLED, IDS.__getitem__, kind="panelled")
    assert value_from(Panelled, row, NAMES.__getitem__) == PANELLED
    assert value_from(Slab, row, NAMES.__getitem__) == Slab(stuff=PANELLED.stuff)
    assert value_from(Spacing, row_from(SpacingRow, GRADUATED), places=()) == GRADUATED
    assert value_from(Sled, row_from(KeptSledRow, SPARE), kept=True) == SPARE
    share = value_from(Space, row_from(SpaceRow, Space(share=Fraction(5, 4)), holds="nothing"), holds=None, doors=None)
    assert share == Space(share=Fraction(5, 4))


def test_words_come_back_as_words_and_numbers_as_truths() -> None:
    spacing = value_from(Spacing, row_from(SpacingRow, SPACING), places=())
    assert (type(spacing.spread), spacing.alike) == (Spread, False)
    bottom = BottomPanel(stuff=ash("1"), groove_depth_nm=Nm(1), up_nm=None, play_nm=Nm(0), goes=BottomGoes.SLID_IN)
    row = row_from(BottomPanelRow, bottom, IDS.__getitem__, role=Role.BOTTOM_PANEL.value)
    assert value_from(BottomPanel, row, NAMES.__getitem__, slips=None).goes is BottomGoes.SLID_IN


def test_a_field_without_a_column_and_a_column_that_is_none_are_bugs() -> None:
    with pytest.raises(TypeError, match="SlipsRow has no column for holes"):
        row_from(SlipsRow, Slips(stuff=ash("1"), height_nm=Nm(1)), IDS.__getitem__, holes=1)
    with pytest.raises(TypeError, match="MaterialRow has no column for material_id, thickness_nm"):
        row_from(MaterialRow, Slab(stuff=ash("1")), IDS.__getitem__)
    with pytest.raises(TypeError, match="nobody says places of a Spacing"):
        value_from(Spacing, row_from(SpacingRow, SPACING))


def test_a_column_that_should_say_something_and_does_not_is_refused() -> None:
    row = row_from(RunnersRow, Slab(stuff=ash("1")), IDS.__getitem__, kind=None, width_nm=Nm(1), kickers=0)
    with pytest.raises(ValueError, match="its kind is not said"):
        value_from(Runners, row, NAMES.__getitem__)
    with pytest.raises(ValueError, match="stone"):
        value_from(Runners, row_from(RunnersRow, Slab(stuff=ash("1")), IDS.__getitem__, kind="stone"), str)
