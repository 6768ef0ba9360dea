"""Wood that moves, loads, stops and hardware: what a project can say since.

Append only: once released, a script is never edited. It must mean the same in five years, so it never imports the
program.
"""

from collections.abc import Callable

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None

NM = sa.BigInteger().with_variant(sa.Integer(), "sqlite")


def upgrade() -> None:
    add_stops_pins_and_rails()
    answer_for_findings()
    say_how_carcases_are_used()
    name_timbers_and_air()
    keep_rough_wood()


def answer_for_findings() -> None:
    create(
        "acknowledged",
        *integers("project_id", "position"),
        *texts("code", "marks", "level", "why"),
        key("project_id", "position"),
        leads_to("project", "project", {"project_id": "id"}),
        unique("finding", "project_id", "code", "marks"),
        check("code", "code <> ''"),
        check("why", "why <> ''"),
        *more_than_nothing("position"),
        check("level", "level IN ('stop', 'caution', 'note')"),
    )


def say_how_carcases_are_used() -> None:
    """A carcase of which no row tells stands free on carpet and bears no load."""
    create(
        "carcase_use",
        *integers("project_id", "carcase_id"),
        *texts("fixed_to", "floor"),
        *integers("open_at_once", "sag", null=True),
        key("carcase_id"),
        leads_to("carcase", "carcase", {"carcase_id": "box_id"}),
        unique("carcase", "project_id", "carcase_id"),
        check("fixed_to", "fixed_to IN ('nothing', 'wall')"),
        check("floor", "floor IN ('carpet', 'hard')"),
        *more_than_nothing("open_at_once", "sag"),
    )
    create(
        "carried_load",
        *integers("project_id", "carcase_id"),
        *texts("borne_by", "kind"),
        *integers("thousandths", null=True),
        *texts("unit", null=True),
        key("carcase_id", "borne_by"),
        leads_to("carcase_use", "carcase_use", {"carcase_id": "carcase_id"}),
        check("borne_by", "borne_by IN ('shelves', 'drawers', 'top')"),
        check("kind", "kind IN ('books', 'clothes', 'tools', 'cabinet class', 'own')"),
        check("unit", "unit IN ('lb/ft', 'lb/ft2', 'lb/ft3', 'kg/m', 'kg/m2', 'kg/m3')"),
        *more_than_nothing("thousandths"),
        *said_if("kind = 'own'", "thousandths", "unit"),
    )


def name_timbers_and_air() -> None:
    """Older materials name no species; nothing is known of their air."""
    create(
        "material",
        *integers("project_id", "id", "position"),
        *texts("name", "kind", "hardness"),
        *texts("species", "sawn", null=True),
        key("id"),
        leads_to("project", "project", {"project_id": "id"}),
        unique("id", "project_id", "id"),
        unique("name", "project_id", "name"),
        unique("position", "project_id", "position"),
        check("name", "name <> ''"),
        *more_than_nothing("position"),
        check("kind", "kind IN ('solid', 'sheet')"),
        check("hardness", "hardness IN ('soft', 'hard')"),
        check("species", "species <> ''"),
        check("sawn", "sawn IN ('flat', 'quarter', 'rift')"),
        draft=True,
    )
    replace("material", "project_id", "id", "position", "name", "kind", "hardness")
    create(
        "timber",
        *integers("project_id", "position"),
        *texts("name", "kind", "hardness"),
        *figures("tangential", "radial", "intersection_pct"),
        *figures("shrinkage_tangential_pct", "shrinkage_radial_pct", null=True),
        *figures("specific_gravity", "stiffness_gpa", "strength_mpa"),
        *texts("source", "how_movement", "how_shrinkage", "how_strength"),
        key("project_id", "position"),
        leads_to("project", "project", {"project_id": "id"}),
        unique("name", "project_id", "name"),
        check("name", "name <> ''"),
        check("source", "source <> ''"),
        *more_than_nothing("position", "tangential", "radial", "intersection_pct"),
        *more_than_nothing("shrinkage_tangential_pct", "shrinkage_radial_pct"),
        *more_than_nothing("specific_gravity", "stiffness_gpa", "strength_mpa"),
        check("kind", "kind IN ('solid', 'sheet')"),
        check("hardness", "hardness IN ('soft', 'hard')"),
    )
    create(
        "climate",
        *integers("project_id"),
        *texts("state_of"),
        *integers("moisture_hundredths", "humidity_hundredths", "temperature_milli_c", null=True),
        key("project_id", "state_of"),
        leads_to("project", "project", {"project_id": "id"}),
        check("state_of", "state_of IN ('dry', 'damp', 'shop')"),
        *nothing_or_more("moisture_hundredths", "humidity_hundredths"),
        check("air_whole", "(humidity_hundredths IS NULL) = (temperature_milli_c IS NULL)"),
        check("said", "moisture_hundredths IS NOT NULL OR humidity_hundredths IS NOT NULL"),
    )


def keep_rough_wood() -> None:
    """Projects that say nothing of stock go by what is usual; the rack is empty."""
    create(
        "stock",
        *integers("project_id"),
        *lengths("length_nm", "width_nm"),
        *lengths("thickness_nm", null=True),
        *lengths("sheet_nm", "end_trim_nm", "edge_trim_nm", "rip_kerf_nm", "crosscut_kerf_nm", "joint_nm"),
        *lengths("least_stave_nm"),
        *lengths("greatest_stave_nm", null=True),
        *integers("spares"),
        *lengths("spare_length_nm", "spare_width_nm"),
        *integers("practice", "waste_hundredths", "stages"),
        *texts("first_cut", null=True),
        *lengths("keep_length_nm", "keep_width_nm"),
        *integers("keep_credit_pct"),
        key("project_id"),
        leads_to("project", "project", {"project_id": "id"}),
        *nothing_or_more("length_nm", "width_nm", "thickness_nm", "sheet_nm", "end_trim_nm", "edge_trim_nm"),
        *nothing_or_more("rip_kerf_nm", "crosscut_kerf_nm", "joint_nm", "spares", "waste_hundredths"),
        *more_than_nothing("least_stave_nm", "greatest_stave_nm", "spare_length_nm", "spare_width_nm"),
        *more_than_nothing("keep_length_nm", "keep_width_nm"),
        check("practice", "practice IN (0, 1)"),
        check("stages", "stages IN (2, 3)"),
        check("keep_credit_pct", "keep_credit_pct BETWEEN 0 AND 100"),
        check("first_cut", "first_cut IN ('rip', 'crosscut')"),
    )
    create(
        "material_stock",
        *integers("project_id", "position", "material_id"),
        *texts("sold_as", null=True),
        *lengths("length_nm", "width_nm", "thickness_nm", "end_trim_nm", "edge_trim_nm", null=True),
        *lengths("greatest_stave_nm", null=True),
        *integers("waste_hundredths", "grain", null=True),
        key("project_id", "position"),
        leads_to("stock", "stock", {}),
        of_material(),
        unique("material", "project_id", "material_id"),
        *more_than_nothing("position", "greatest_stave_nm"),
        *nothing_or_more("length_nm", "width_nm", "thickness_nm", "end_trim_nm", "edge_trim_nm", "waste_hundredths"),
        check("grain", "grain IN (0, 1)"),
        check(
            "sold_as", "sold_as IN ('quarters', 'dressed softwood', 'metric hardwood', 'metric softwood')"
        ),
    )
    create(
        "lot",
        *integers("id"),
        *texts("mark"),
        *texts("yard", null=True),
        *texts("material"),
        *lengths("shortest_nm", "longest_nm", "narrowest_nm", "widest_nm", "thickness_nm"),
        *texts("surfaced"),
        *lengths("counted_nm", null=True),
        *integers("count", "cents", null=True),
        *texts("per", "currency", null=True),
        *integers("least_hundredths", null=True),
        *texts("remark"),
        key("id"),
        unique("mark", "mark"),
        check("mark", "mark <> ''"),
        check("yard", "yard <> ''"),
        check("material", "material <> ''"),
        *more_than_nothing("shortest_nm", "narrowest_nm", "thickness_nm", "counted_nm", "least_hundredths"),
        *nothing_or_more("count", "cents"),
        check("surfaced", "surfaced IN ('rough', 'dressed')"),
        check("per", "per IN ('piece', 'board foot', 'm3', 'm2', 'ft2')"),
        check("sizes", "shortest_nm <= longest_nm AND narrowest_nm <= widest_nm"),
        check("price_whole", "(cents IS NULL) = (per IS NULL) AND (cents IS NULL) = (currency IS NULL)"),
        check("offer_priced", "yard IS NULL OR cents IS NOT NULL"),
        check(
            "on_the_rack",
            "yard IS NOT NULL OR (shortest_nm = longest_nm AND narrowest_nm = widest_nm AND count IS NOT NULL "
            "AND least_hundredths IS NULL)",
        ),
    )
    create(
        "flaw",
        *integers("lot_id", "position"),
        *lengths("along_from_nm", "along_to_nm", "across_from_nm", "across_to_nm"),
        key("lot_id", "position"),
        lambda table: sa.ForeignKeyConstraint(["lot_id"], ["lot.id"], name=f"fk_{table}_lot", ondelete="CASCADE"),
        check("along", "0 <= along_from_nm AND along_from_nm < along_to_nm"),
        check("across", "0 <= across_from_nm AND across_from_nm < across_to_nm"),
        *more_than_nothing("position"),
    )


def add_stops_pins_and_rails() -> None:
    """Stops of drawers and doors, pins of loose shelves, rails to hang a cabinet on; slots in bottoms that slide in."""
    create(
        "drawer_stops",
        *integers("project_id", "box_id"),
        *texts("kind"),
        *integers("material_id"),
        *lengths("thickness_nm", "length_nm", "width_nm"),
        key("box_id"),
        leads_to("box", "box", {"box_id": "id", "kind": "kind"}),
        of_material(),
        check("kind", "kind IN ('drawer')"),
        *more_than_nothing("thickness_nm", "length_nm", "width_nm"),
    )
    create(
        "door_stops",
        *integers("project_id", "space_id", "material_id"),
        *lengths("thickness_nm", "width_nm"),
        key("space_id"),
        leads_to("doors", "doors", {"space_id": "space_id"}),
        of_material(),
        *more_than_nothing("thickness_nm", "width_nm"),
    )
    create(
        "shelf_pins",
        *integers("project_id", "space_id"),
        *texts("kind"),
        *integers("holes"),
        *lengths("hole_nm", "depth_nm", "apart_nm", "front_nm", "back_nm"),
        key("space_id"),
        leads_to("space", "space", {"space_id": "id", "kind": "holds"}),
        check("kind", "kind IN ('loose shelves')"),
        check("holes", "holes > 0 AND holes % 2 = 1"),
        *more_than_nothing("hole_nm", "depth_nm", "apart_nm", "front_nm", "back_nm"),
    )
    create(
        "hanging_rail",
        *integers("project_id", "carcase_id", "material_id"),
        *lengths("thickness_nm", "width_nm"),
        key("carcase_id"),
        leads_to("carcase", "carcase", {"carcase_id": "box_id"}),
        of_material(),
        *more_than_nothing("thickness_nm", "width_nm"),
    )
    create(
        "bottom_panel",
        *integers("project_id", "box_id"),
        *texts("role", "kind"),
        *integers("material_id"),
        *lengths("thickness_nm", "groove_depth_nm"),
        *lengths("up_nm", null=True),
        *lengths("play_nm"),
        *texts("goes"),
        *lengths("screw_slot_nm", null=True),
        key("box_id", "role"),
        leads_to("box", "box", {"box_id": "id", "kind": "kind"}),
        of_material(),
        unique("role", "project_id", "box_id", "role"),
        check("kind", "kind IN ('plain box', 'drawer')"),
        check("role", "role IN ('bottom panel', 'top panel')"),
        check("top_of_box", "role = 'bottom panel' OR kind = 'plain box'"),
        check("goes", "goes IN ('all round', 'slid in')"),
        *more_than_nothing("thickness_nm", "groove_depth_nm", "screw_slot_nm"),
        check("slot_slid_in", "screw_slot_nm IS NULL OR goes = 'slid in'"),
        *nothing_or_more("up_nm", "play_nm"),
        draft=True,
    )
    replace(
        "bottom_panel",
        *("project_id", "box_id", "role", "kind", "material_id", "thickness_nm", "groove_depth_nm", "up_nm"),
        *("play_nm", "goes"),
    )


# --- in short ----------------------------------------------------------------------------------------------

Constraint = Callable[[str], sa.Constraint]
"""Makes the constraint of the table with this name."""


def create(table: str, *parts: sa.Column | Constraint, draft: bool = False) -> None:
    """Make a table; a draft has another name until it takes the place of the old table."""
    made = [part if isinstance(part, sa.Column) else part(table) for part in parts]
    op.create_table(f"new_{table}" if draft else table, *made, sqlite_strict=True)


def replace(table: str, *copied: str, **same: str | int) -> None:
    """Fill a draft from the old table, with the same value in each row where the old one has no such column."""
    columns = ", ".join((*copied, *same))
    values = ", ".join((*copied, *(f"'{said}'" if isinstance(said, str) else str(said) for said in same.values())))
    op.execute(f"INSERT INTO new_{table} ({columns}) SELECT {values} FROM {table}")
    op.drop_table(table)
    op.rename_table(f"new_{table}", table)


def integers(*names: str, null: bool = False) -> list[sa.Column]:
    return [sa.Column(name, sa.Integer(), nullable=null) for name in names]


def lengths(*names: str, null: bool = False) -> list[sa.Column]:
    return [sa.Column(name, NM, nullable=null) for name in names]


def texts(*names: str, null: bool = False) -> list[sa.Column]:
    return [sa.Column(name, sa.Text(), nullable=null) for name in names]


def figures(*names: str, null: bool = False) -> list[sa.Column]:
    return [sa.Column(name, sa.REAL(), nullable=null) for name in names]


def key(*columns: str) -> Constraint:
    return lambda table: sa.PrimaryKeyConstraint(*columns, name=f"pk_{table}")


def unique(name: str, *columns: str) -> Constraint:
    return lambda table: sa.UniqueConstraint(*columns, name=f"uq_{table}_{name}")


def check(name: str, condition: str) -> Constraint:
    return lambda table: sa.CheckConstraint(condition, name=f"ck_{table}_{name}")


def more_than_nothing(*columns: str) -> list[Constraint]:
    return [check(column, f"{column} > 0") for column in columns]


def nothing_or_more(*columns: str) -> list[Constraint]:
    return [check(column, f"{column} >= 0") for column in columns]


def said_if(condition: str, *columns: str) -> list[Constraint]:
    return [check(f"{column}_said", f"({condition}) = ({column} IS NOT NULL)") for column in columns]


def leads_to(name: str, other: str, columns: dict[str, str], *, cascade: bool = True) -> Constraint:
    """A foreign key: from each of these columns to the one of the other table, within the same project."""
    columns = columns if other == "project" else {"project_id": "project_id"} | columns
    there = [f"{other}.{column}" for column in columns.values()]
    gone = "CASCADE" if cascade else None
    return lambda table: sa.ForeignKeyConstraint(list(columns), there, name=f"fk_{table}_{name}", ondelete=gone)


def of_material(of: str = "") -> Constraint:
    name = f"{of}_material" if of else "material"
    return leads_to(name, "material", {f"{name}_id": "id"}, cascade=False)


def downgrade() -> None:
    raise NotImplementedError("Put back the backup that was made before the upgrade.")
