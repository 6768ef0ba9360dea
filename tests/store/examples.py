"""Projects made by hand in which every table of the store has a row, and helpers to look into a store from outside."""

from __future__ import annotations

import re
import sqlite3
from contextlib import closing
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

from planner.domain.acknowledged import Acknowledged
from planner.domain.bottom import Slips
from planner.domain.box import Box, HingedLid, Till
from planner.domain.carcase import (
    Carcase,
    Dividers,
    Frames,
    HangingRail,
    PanelledBack,
    Plinth,
    Runners,
    SeparateTop,
    Stand,
)
from planner.domain.climate import Climate, Room
from planner.domain.drawer import AppliedFront, Drawer, DrawerStops, Handles
from planner.domain.material import Material
from planner.domain.panelled import Panelled, Slab
from planner.domain.project import Project
from planner.domain.rates import Rates
from planner.domain.ring import Ring, make_ring, with_half_blind_front, with_rabbets
from planner.domain.space import Division, Doors, DoorStops, LooseShelves, ShelfPins, Space
from planner.domain.stock import MaterialStock, SawWay, SoldAs, usual_stock
from planner.domain.timber import Timber
from planner.domain.use import FixedTo, Load, LoadKind, LoadUnit, Use
from planner.domain.words import (
    BottomGoes,
    DividerJoint,
    DividerKind,
    EdgeName,
    Hardness,
    HeightRule,
    Level,
    MaterialKind,
    PinPair,
    RingKind,
    RunnerKind,
    Sawn,
    Side,
    SizesOver,
    Spread,
    Stands,
    Way,
)
from planner.lengths import Nm
from planner.store.engine import reading, writing
from planner.store.history import record
from planner.store.projects import load_project, save_project
from planner.store.tables import Row
from tests.pieces import BOTTOM, SLED, SPACING, ash, drawer, inches, ply, six_drawers, small_box, tiers

GRADUATED = replace(SPACING, tails=5, spread=Spread.MIDDLE, ratio=Fraction(3, 2), alike=True)
LISTED = replace(
    SPACING,
    spread=Spread.LISTED,
    places=((inches("1"), inches("1 1/4")), (inches("2 1/2"), inches("3"))),
    measured_from=EdgeName.FAR,
)

BOG_OAK = Timber(
    name="bog oak",
    kind=MaterialKind.SOLID,
    tangential=0.0037,
    radial=0.0018,
    shrinkage_tangential_pct=10.4,
    specific_gravity=0.71,
    stiffness_gpa=10.273,
    strength_mpa=85.0,
    hardness=Hardness.SOFT,
    source="a trial of our own",
)

SPARE = replace(SLED, name="spare", slot_nm=inches("33/64"), greatest_depth_hard_nm=inches("1"), kept=True)


def column(number: int, drawers: int, rule: HeightRule) -> Space:
    """A column of drawers ``D101`` and so on, whose heights follow a rule."""
    listed = inches("4") if rule is HeightRule.LISTED else None
    return Space(
        size_nm=inches("14") if number == 1 else None,
        holds=Division(
            way=Way.TIERS,
            divider=DividerKind.RAIL,
            rule=rule,
            step_nm=inches("1/2") if rule is HeightRule.STEP else None,
            ratio=Fraction(23, 20) if rule is HeightRule.RATIO else None,
            spaces=tuple(
                Space(size_nm=listed if tier == 1 else None, holds=fronted(drawer(f"D{number}{tier:02d}")))
                for tier in range(1, drawers + 1)
            ),
        ),
    )


def side_by_side(*columns: Space) -> Space:
    """Columns that share the width as each says itself."""
    return Space(
        holds=Division(
            way=Way.COLUMNS,
            divider=DividerKind.PARTITION,
            rule=HeightRule.LISTED,
            step_nm=None,
            ratio=None,
            spaces=columns,
        )
    )


def columns_of(carcase: Carcase) -> tuple[Space, ...]:
    """The columns of a carcase."""
    assert isinstance(carcase.inside.holds, Division)
    return carcase.inside.holds.spaces


def fronted(plain: Drawer) -> Drawer:
    """The same drawer; D101 with an applied front, handles, slips and stops, D201 with a half-blind front."""
    if plain.ring.mark == "D101":
        return replace(
            plain,
            applied_front=AppliedFront(stuff=ash("5/8"), gap_nm=inches("0")),
            bottom=replace(
                BOTTOM,
                goes=BottomGoes.SLID_IN,
                slips=Slips(stuff=ash("3/8"), height_nm=inches("3/4")),
                screw_slot_nm=inches("3/16"),
            ),
            stops=DrawerStops(stuff=ash("1/4"), length_nm=inches("1 1/2"), width_nm=inches("3/4")),
            handles=Handles(count=2, holes=2, apart_nm=inches("3"), hole_nm=inches("3/16")),
            back_lower_nm=inches("1/4"),
        )
    if plain.ring.mark == "D201":
        return replace(plain, ring=with_half_blind_front(plain.ring, inches("1/4")))
    return plain


PANELLED = Panelled(
    stuff=ash("3/4"),
    stile_nm=inches("2"),
    rail_nm=inches("2 1/2"),
    groove_nm=inches("3/8"),
    tenon_nm=inches("1"),
    panel=ply("1/4"),
    play_nm=inches("1/16"),
    wide=2,
)


def dresser() -> Carcase:
    """A carcase without drawers, which has what the one with drawers has not."""
    pins = ShelfPins(
        holes=5,
        hole_nm=inches("1/4"),
        depth_nm=inches("5/16"),
        apart_nm=inches("1"),
        front_nm=inches("1 1/2"),
        back_nm=inches("2"),
    )
    shelves = LooseShelves(count=2, stuff=ash("3/4"), play_nm=inches("1/8"), setback_nm=inches("1/4"), pins=pins)
    doors = Doors(
        leaves=2,
        hinged=Side.LEFT,
        stands=Stands.OVERLAY,
        gap_nm=inches("1/16"),
        overlay_nm=inches("3/8"),
        made=Slab(stuff=ash("3/4")),
    )
    stopped = replace(
        doors,
        stands=Stands.INSET,
        overlay_nm=inches("0"),
        stops=DoorStops(stuff=ash("1/2"), width_nm=inches("3/4")),
    )
    shelved = replace(
        tiers(Space(holds=shelves, doors=doors), Space(doors=stopped), by=DividerKind.SHELF),
        share=Fraction(3, 2),
    )
    ring = make_ring("S", RingKind.CARCASE, (ash("7/8"),) * 4, PinPair.FIRST_AND_THIRD, SPACING, "main")
    return Carcase(
        title="dresser",
        ring=with_rabbets(ring, inches("1/4")),
        width_nm=inches("40"),
        height_nm=inches("60"),
        depth_nm=inches("14"),
        sizes_over=SizesOver.INSIDE,
        inside=side_by_side(shelved, Space(holds=replace(division_of(tiers(Space())), divider=DividerKind.FRAME))),
        partitions=Dividers(
            stuff=ash("7/8"), housing_depth_nm=inches("0"), joint=DividerJoint.THROUGH_TENONS, tenons=3
        ),
        shelves=Dividers(
            stuff=ash("7/8"),
            housing_depth_nm=inches("1/4"),
            joint=DividerJoint.STOPPED_HOUSING,
            stop_nm=inches("1/2"),
        ),
        frames=Frames(
            stuff=ash("7/8"),
            rail_nm=inches("2"),
            runner_nm=inches("2"),
            housing_depth_nm=inches("1/4"),
            groove_nm=inches("3/8"),
            tenon_nm=inches("1/4"),
            dust_panel=ply("1/4"),
            play_nm=inches("1/32"),
        ),
        runners=Runners(kind=RunnerKind.WOOD, stuff=ash("3/4"), width_nm=inches("1"), kickers=True),
        back=PanelledBack(made=PANELLED, rabbet_depth_nm=inches("3/8"), play_nm=inches("1/32")),
        base=Stand(
            leg=ash("2"),
            apron=ash("7/8"),
            height_nm=inches("8"),
            apron_nm=inches("3"),
            tenon_nm=inches("3/4"),
            front_nm=inches("1/2"),
            sides_nm=inches("0"),
            back_nm=inches("0"),
            setback_nm=inches("1/8"),
        ),
        top=SeparateTop(stuff=ash("7/8"), front_nm=inches("1"), sides_nm=inches("3/4"), back_nm=inches("0")),
        hanging_rail=HangingRail(stuff=ash("3/4"), width_nm=inches("3")),
        use=Use(
            fixed_to=FixedTo.WALL,
            open_at_once=2,
            shelves=Load(kind=LoadKind.BOOKS),
            top=Load(kind=LoadKind.OWN, thousandths=12_500, unit=LoadUnit.KG_M2),
        ),
    )


def division_of(space: Space) -> Division:
    """How a space is divided."""
    assert isinstance(space.holds, Division)
    return space.holds


def plinth_of(mark: str) -> Plinth:
    """A plinth cut away to bracket feet, which stands out in front."""
    ring = make_ring(mark, RingKind.UPRIGHT, (ash("7/8"),) * 4, PinPair.SECOND_AND_FOURTH, SPACING, "main")
    return Plinth(
        ring=ring,
        height_nm=inches("4"),
        front_nm=Nm(-inches("1/2")),
        sides_nm=inches("0"),
        back_nm=inches("1"),
        foot_nm=inches("6"),
        rise_nm=inches("2"),
    )


def with_own_spacing(ring: Ring) -> Ring:
    """The ring graduated, but with listed pins on its first corner."""
    first, *others = ring.corners
    return replace(ring, spacing=GRADUATED, corners=(replace(first, spacing=LISTED), *others))  # type: ignore[arg-type]


def cabinet(name: str = "hall cabinet", *, drawers: int = 2) -> Project:
    """A cabinet with a column for each rule of heights, a dresser, and a box with a corner of its own kind.

    One material and one sled are not used; that sled is the store's.
    """
    chest = six_drawers()
    (carcase,), (box,) = chest.carcases, small_box().boxes
    columns = [column(number, drawers, rule) for number, rule in enumerate(HeightRule, start=1)]
    partitions = Dividers(stuff=ash("7/8"), housing_depth_nm=inches("1/4"))
    over = {"front_nm": inches("1/2"), "sides_nm": inches("1/2"), "back_nm": inches("0")}
    box = replace(
        box,
        ring=with_own_spacing(box.ring),
        lid=HingedLid(made=PANELLED, **over),
        till=Till(
            stuff=ash("3/8"),
            width_nm=inches("3"),
            depth_nm=inches("2"),
            housing_depth_nm=inches("1/8"),
            lid=ash("1/4"),
        ),
    )
    carcase = replace(carcase, inside=side_by_side(*columns), partitions=partitions, base=plinth_of("CP"))
    return replace(
        chest,
        name=name,
        materials=(*chest.materials, Material(name="larch", hardness=Hardness.SOFT, species="bog oak", sawn=Sawn.RIFT)),
        sleds=(*chest.sleds, SPARE),
        boxes=(box,),
        carcases=(carcase, dresser()),
        rates=Rates(pass_s=8, turning_s=0),
        timbers=(BOG_OAK, replace(BOG_OAK, name="Cherry, black", shrinkage_tangential_pct=None)),
        room=Room(
            dry=Climate(humidity_hundredths=3000, temperature_milli_c=21_111),
            damp=Climate(moisture_hundredths=1150),
        ),
        shop=Climate(moisture_hundredths=825, humidity_hundredths=5000, temperature_milli_c=15_000),
        stock=replace(
            usual_stock(chest.unit),
            greatest_stave_nm=inches("5"),
            first_cut=SawWay.RIP,
            waste_hundredths=3050,
            practice=False,
            materials=(
                MaterialStock(material=chest.materials[1].name, sold_as=SoldAs.DRESSED, end_trim_nm=inches("1")),
                MaterialStock(material=chest.materials[0].name, grain=False, waste_hundredths=0),
            ),
        ),
        acknowledged=(
            Acknowledged(code="slope", marks=(), level=Level.NOTE, why="tried on scrap"),
            Acknowledged(code="cross-grain", marks=("C-back", "C-left"), level=Level.CAUTION, why="a narrow one"),
        ),
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


def remember(path: Path, name: str, *reasons: str) -> None:
    """Record states of a project, one for each reason; the texts are not those of real files."""
    with writing(path) as session:
        for number, why in enumerate(reasons, start=1):
            record(session, name, file=f"file {number} of {name}", why=why, at=f"2031-05-0{number}T08:00:00+00:00")


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
