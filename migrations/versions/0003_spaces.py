"""Carcases divided into spaces to any depth, and all that can stand in, before, below and above them; lids and tills.

Columns become the first level of spaces and openings the second. All that an older store could not say gets the value
that was meant: sizes over the outside, plain housings, bottoms shut in all round, fronts within the opening.

Append only: once released, a script is never edited. It must mean the same in five years, so it never imports the
program.
"""

from collections.abc import Callable

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None

CHANGES_ROWS_OF = ("carcase_column", "opening", "partitions", "back_panel")

NM = sa.BigInteger().with_variant(sa.Integer(), "sqlite")


def upgrade() -> None:
    rebuild_what_stays()
    make_spaces()
    move_drawers()
    move_what_has_a_new_name()
    make_the_rest()
    for gone in ("opening", "carcase_column", "partitions", "back_panel"):
        op.drop_table(gone)


def rebuild_what_stays() -> None:
    """Tables whose words or columns became more.

    As in sqlite.org/lang_altertable.html, section 7: make the new one, fill it, drop the old one, rename.
    """
    create(
        "project",
        *integers("id", "version"),
        *texts("name", "unit", "grid"),
        *lengths("proud_nm", "height_tolerance_nm"),
        *integers("sled_change_s", "height_change_s", "fence_swap_s", "handling_s", "turning_s", "pass_s"),
        *texts("drawers_cut"),
        key("id"),
        unique("name", "name"),
        check("name", "name <> ''"),
        check("unit", "unit IN ('in', 'mm')"),
        check("grid", "grid IN ('1/16 in', '1/32 in', '1/64 in', '0.1 mm')"),
        check("drawers_cut", "drawers_cut IN ('at once', 'to measure')"),
        *nothing_or_more("proud_nm", "height_tolerance_nm"),
        *nothing_or_more("sled_change_s", "height_change_s", "fence_swap_s", "handling_s", "turning_s", "pass_s"),
        *more_than_nothing("version"),
        draft=True,
    )
    create(
        "box",
        *integers("project_id", "id", "position"),
        *texts("mark", "kind"),
        *integers("sled_id"),
        key("id"),
        leads_to("project", "project", {"project_id": "id"}),
        leads_to("sled", "sled", {"sled_id": "id"}, cascade=False),
        unique("id", "project_id", "id"),
        unique("kind", "project_id", "id", "kind"),
        unique("mark", "project_id", "mark"),
        unique("position", "project_id", "position"),
        check("mark", "mark <> ''"),
        check("kind", "kind IN ('plain box', 'carcase', 'plinth', 'drawer')"),
        *more_than_nothing("position"),
        draft=True,
    )
    create(
        "corner_joint",
        *integers("project_id", "id", "box_id"),
        *texts("mark"),
        *integers("board_at_b_id", "board_at_a_id"),
        *texts("pins_on", "kind"),
        *lengths("lap_nm", null=True),
        key("id"),
        leads_to("board_at_b", "board", {"box_id": "box_id", "board_at_b_id": "id"}),
        leads_to("board_at_a", "board", {"box_id": "box_id", "board_at_a_id": "id"}),
        unique("id", "project_id", "box_id", "id"),
        unique("board_at_b", "board_at_b_id"),
        unique("board_at_a", "board_at_a_id"),
        unique("mark", "project_id", "mark"),
        check("two_boards", "board_at_b_id <> board_at_a_id"),
        check("mark", "mark <> ''"),
        check("pins_on", "pins_on IN ('A', 'B')"),
        check("kind", "kind IN ('through dovetail', 'half-blind dovetail', 'rabbet')"),
        *more_than_nothing("lap_nm"),
        check("lap_said", "(kind IN ('half-blind dovetail', 'rabbet')) = (lap_nm IS NOT NULL)"),
        draft=True,
    )
    create(
        "carcase",
        *integers("project_id", "box_id"),
        *texts("kind", "title"),
        *lengths("width_nm", "height_nm", "depth_nm"),
        *texts("sizes_over"),
        key("box_id"),
        leads_to("box", "box", {"box_id": "id", "kind": "kind"}),
        unique("box", "project_id", "box_id"),
        check("kind", "kind IN ('carcase')"),
        check("sizes_over", "sizes_over IN ('outside', 'inside')"),
        *more_than_nothing("width_nm", "height_nm", "depth_nm"),
        draft=True,
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
        key("box_id", "role"),
        leads_to("box", "box", {"box_id": "id", "kind": "kind"}),
        of_material(),
        unique("role", "project_id", "box_id", "role"),
        check("kind", "kind IN ('plain box', 'drawer')"),
        check("role", "role IN ('bottom panel', 'top panel')"),
        check("top_of_box", "role = 'bottom panel' OR kind = 'plain box'"),
        check("goes", "goes IN ('all round', 'slid in')"),
        *more_than_nothing("thickness_nm", "groove_depth_nm"),
        *nothing_or_more("up_nm", "play_nm"),
        draft=True,
    )
    create(
        "applied_front",
        *integers("project_id", "box_id"),
        *texts("kind"),
        *integers("material_id"),
        *lengths("thickness_nm", "gap_nm"),
        *texts("stands"),
        *lengths("overlay_nm"),
        key("box_id"),
        leads_to("box", "box", {"box_id": "id", "kind": "kind"}),
        of_material(),
        check("kind", "kind IN ('drawer')"),
        check("stands", "stands IN ('inset', 'overlay')"),
        *more_than_nothing("thickness_nm"),
        *nothing_or_more("gap_nm", "overlay_nm"),
        draft=True,
    )
    replace(
        "project",
        *("id", "version", "name", "unit", "grid", "proud_nm", "height_tolerance_nm"),
        *("sled_change_s", "height_change_s", "fence_swap_s", "handling_s", "turning_s", "pass_s"),
        drawers_cut="at once",
    )
    replace("box", "project_id", "id", "position", "mark", "kind", "sled_id")
    replace(
        "corner_joint",
        *("project_id", "id", "box_id", "mark", "board_at_b_id", "board_at_a_id", "pins_on", "kind", "lap_nm"),
    )
    replace(
        "carcase",
        *("project_id", "box_id", "kind", "title", "width_nm", "height_nm", "depth_nm"),
        sizes_over="outside",
    )
    replace(
        "bottom_panel",
        *("project_id", "box_id", "kind", "material_id", "thickness_nm", "groove_depth_nm", "up_nm", "play_nm"),
        role="bottom panel",
        goes="all round",
    )
    replace(
        "applied_front",
        *("project_id", "box_id", "kind", "material_id", "thickness_nm", "gap_nm"),
        stands="inset",
        overlay_nm=0,
    )


def make_spaces() -> None:
    """The inside of each carcase: columns between partitions, in each of them tiers between rails."""
    create(
        "space",
        *integers("project_id", "id", "carcase_id"),
        *integers("parent_id", null=True),
        *integers("position"),
        *lengths("size_nm", null=True),
        *integers("share_top", "share_bottom"),
        *texts("holds"),
        *texts("way", "divider", "rule", null=True),
        *lengths("step_nm", null=True),
        *integers("ratio_top", "ratio_bottom", null=True),
        key("id"),
        leads_to("carcase", "carcase", {"carcase_id": "box_id"}),
        leads_to("parent", "space", {"carcase_id": "carcase_id", "parent_id": "id"}),
        unique("id", "project_id", "id"),
        unique("carcase", "project_id", "carcase_id", "id"),
        unique("holds", "project_id", "id", "holds"),
        unique("position", "parent_id", "position"),
        check("parent", "parent_id <> id"),
        check("holds", "holds IN ('division', 'drawer', 'loose shelves', 'nothing')"),
        check("way", "way IN ('columns', 'tiers')"),
        check("divider", "divider IN ('partition', 'rail', 'shelf', 'frame', 'nothing')"),
        check("rule", "rule IN ('equal', 'step', 'ratio', 'listed')"),
        check("ratio_whole", "(ratio_top IS NULL) = (ratio_bottom IS NULL)"),
        *more_than_nothing(
            "position", "size_nm", "share_top", "share_bottom", "step_nm", "ratio_top", "ratio_bottom",
        ),
        *said_if("holds = 'division'", "way", "divider", "rule"),
        *said_if("rule IS 'step'", "step_nm"),
        *said_if("rule IS 'ratio'", "ratio_top"),
    )
    op.create_index(
        "uq_space_root", "space", ["carcase_id"], unique=True, sqlite_where=sa.text("parent_id IS NULL")
    )
    op.execute(
        "INSERT INTO space (project_id, carcase_id, position, share_top, share_bottom, holds, way, divider, rule) "
        "SELECT project_id, box_id, 1, 1, 1, 'division', 'columns', 'partition', CASE WHEN EXISTS "
        "(SELECT 1 FROM carcase_column WHERE carcase_id = carcase.box_id AND width_nm IS NOT NULL) "
        "THEN 'listed' ELSE 'equal' END FROM carcase ORDER BY box_id"
    )
    op.execute(
        "INSERT INTO space (project_id, carcase_id, parent_id, position, size_nm, share_top, share_bottom, "
        "holds, way, divider, rule, step_nm, ratio_top, ratio_bottom) "
        "SELECT a.project_id, a.carcase_id, root.id, a.position, a.width_nm, 1, 1, "
        "'division', 'tiers', 'rail', a.heights, a.step_nm, a.ratio_top, a.ratio_bottom "
        "FROM carcase_column AS a JOIN space AS root ON root.carcase_id = a.carcase_id AND root.parent_id IS NULL "
        "ORDER BY a.carcase_id, a.position"
    )
    op.execute(
        "INSERT INTO space (project_id, carcase_id, parent_id, position, size_nm, share_top, share_bottom, holds) "
        "SELECT o.project_id, tiers.carcase_id, tiers.id, o.position, o.height_nm, 1, 1, 'drawer' "
        f"FROM opening AS o JOIN carcase_column AS a ON a.id = o.column_id {TIERS_OF_COLUMN} "
        "ORDER BY tiers.id, o.position"
    )


TIERS_OF_COLUMN = (
    "JOIN space AS root ON root.carcase_id = a.carcase_id AND root.parent_id IS NULL "
    "JOIN space AS tiers ON tiers.parent_id = root.id AND tiers.position = a.position"
)
"""The space that a column ``a`` has become."""


def move_drawers() -> None:
    """Each drawer fills the space that its opening has become."""
    create(
        "drawer",
        *integers("project_id", "box_id"),
        *texts("kind"),
        *integers("space_id"),
        *lengths("side_clearance_nm", "top_clearance_nm", "back_clearance_nm", "back_lower_nm"),
        key("box_id"),
        leads_to("box", "box", {"box_id": "id", "kind": "kind"}),
        leads_to("space", "space", {"space_id": "id", "kind": "holds"}),
        unique("space", "space_id"),
        check("kind", "kind IN ('drawer')"),
        *nothing_or_more("side_clearance_nm", "top_clearance_nm", "back_clearance_nm", "back_lower_nm"),
        draft=True,
    )
    op.execute(
        "INSERT INTO new_drawer (project_id, box_id, kind, space_id, side_clearance_nm, top_clearance_nm, "
        "back_clearance_nm, back_lower_nm) "
        "SELECT d.project_id, d.box_id, d.kind, tier.id, d.side_clearance_nm, d.top_clearance_nm, "
        "d.back_clearance_nm, 0 "
        "FROM drawer AS d JOIN opening AS o ON o.id = d.opening_id JOIN carcase_column AS a ON a.id = o.column_id "
        f"{TIERS_OF_COLUMN} JOIN space AS tier ON tier.parent_id = tiers.id AND tier.position = o.position"
    )
    op.drop_table("drawer")
    op.rename_table("new_drawer", "drawer")


def move_what_has_a_new_name() -> None:
    """Partitions are a kind of dividers, back panels a kind of back."""
    create(
        "dividers",
        *integers("project_id", "carcase_id"),
        *texts("kind"),
        *integers("material_id"),
        *lengths("thickness_nm"),
        *texts("joint"),
        *lengths("housing_depth_nm", "stop_nm"),
        *integers("tenons"),
        key("carcase_id", "kind"),
        leads_to("carcase", "carcase", {"carcase_id": "box_id"}),
        of_material(),
        check("kind", "kind IN ('partition', 'shelf')"),
        check("joint", "joint IN ('housing', 'stopped housing', 'through tenons')"),
        *more_than_nothing("thickness_nm"),
        *nothing_or_more("housing_depth_nm", "stop_nm", "tenons"),
    )
    create(
        "back",
        *integers("project_id", "carcase_id"),
        *texts("kind"),
        *lengths("rabbet_depth_nm", "play_nm"),
        *integers("material_id", null=True),
        *lengths("thickness_nm", "board_nm", "lap_nm", "gap_nm", null=True),
        key("carcase_id"),
        leads_to("carcase", "carcase", {"carcase_id": "box_id"}),
        of_material(),
        unique("carcase", "project_id", "carcase_id"),
        check("kind", "kind IN ('panel', 'boards', 'panelled')"),
        *more_than_nothing("rabbet_depth_nm", "thickness_nm", "board_nm", "lap_nm"),
        *nothing_or_more("play_nm", "gap_nm"),
        *said_if("kind <> 'panelled'", "material_id", "thickness_nm"),
        *said_if("kind = 'boards'", "board_nm", "lap_nm", "gap_nm"),
    )
    op.execute(
        "INSERT INTO dividers (project_id, carcase_id, kind, material_id, thickness_nm, joint, housing_depth_nm, "
        "stop_nm, tenons) SELECT project_id, carcase_id, 'partition', material_id, thickness_nm, 'housing', "
        "housing_depth_nm, 0, 0 FROM partitions"
    )
    op.execute(
        "INSERT INTO back (project_id, carcase_id, kind, rabbet_depth_nm, play_nm, material_id, thickness_nm) "
        "SELECT project_id, carcase_id, 'panel', rabbet_depth_nm, play_nm, material_id, thickness_nm FROM back_panel"
    )


def make_the_rest() -> None:
    """What no older store could say anything of."""
    create(
        "lid",
        *integers("project_id", "box_id"),
        *texts("kind", "lid_kind"),
        *lengths("front_nm", "sides_nm", "back_nm", "height_nm", "kerf_nm", null=True),
        key("box_id"),
        leads_to("box", "box", {"box_id": "id", "kind": "kind"}),
        unique("box", "project_id", "box_id"),
        check("kind", "kind IN ('plain box')"),
        check("lid_kind", "lid_kind IN ('hinged', 'sawn')"),
        *more_than_nothing("height_nm"),
        *nothing_or_more("front_nm", "sides_nm", "back_nm", "kerf_nm"),
        *said_if("lid_kind = 'hinged'", "front_nm", "sides_nm", "back_nm"),
        *said_if("lid_kind = 'sawn'", "height_nm", "kerf_nm"),
    )
    create(
        "till",
        *integers("project_id", "box_id"),
        *texts("kind"),
        *integers("material_id"),
        *lengths("thickness_nm", "width_nm", "depth_nm", "housing_depth_nm"),
        *integers("lid_material_id", null=True),
        *lengths("lid_thickness_nm", null=True),
        key("box_id"),
        leads_to("box", "box", {"box_id": "id", "kind": "kind"}),
        of_material(),
        of_material("lid"),
        check("kind", "kind IN ('plain box')"),
        check("lid_whole", "(lid_material_id IS NULL) = (lid_thickness_nm IS NULL)"),
        *more_than_nothing("thickness_nm", "width_nm", "depth_nm", "housing_depth_nm", "lid_thickness_nm"),
    )
    create(
        "slips",
        *integers("project_id", "box_id"),
        *texts("role"),
        *integers("material_id"),
        *lengths("thickness_nm", "height_nm"),
        key("box_id", "role"),
        leads_to("bottom_panel", "bottom_panel", {"box_id": "box_id", "role": "role"}),
        of_material(),
        *more_than_nothing("thickness_nm", "height_nm"),
    )
    create(
        "handles",
        *integers("project_id", "box_id"),
        *texts("kind"),
        *integers("count", "holes"),
        *lengths("apart_nm", "hole_nm"),
        key("box_id"),
        leads_to("box", "box", {"box_id": "id", "kind": "kind"}),
        check("kind", "kind IN ('drawer')"),
        check("count", "count IN (1, 2)"),
        check("holes", "holes IN (1, 2)"),
        *more_than_nothing("hole_nm"),
        *nothing_or_more("apart_nm"),
    )
    create(
        "loose_shelves",
        *integers("project_id", "space_id"),
        *texts("kind"),
        *integers("count", "material_id"),
        *lengths("thickness_nm", "play_nm", "setback_nm"),
        key("space_id"),
        leads_to("space", "space", {"space_id": "id", "kind": "holds"}),
        of_material(),
        check("kind", "kind IN ('loose shelves')"),
        *more_than_nothing("count", "thickness_nm"),
        *nothing_or_more("play_nm", "setback_nm"),
    )
    create(
        "doors",
        *integers("project_id", "space_id", "leaves"),
        *texts("hinged", "stands"),
        *lengths("gap_nm", "overlay_nm"),
        key("space_id"),
        leads_to("space", "space", {"space_id": "id"}),
        unique("space", "project_id", "space_id"),
        check("leaves", "leaves IN (1, 2)"),
        check("hinged", "hinged IN ('left', 'right')"),
        check("stands", "stands IN ('inset', 'overlay')"),
        *nothing_or_more("gap_nm", "overlay_nm"),
    )
    create(
        "frames",
        *integers("project_id", "carcase_id", "material_id"),
        *lengths("thickness_nm", "rail_nm", "runner_nm", "housing_depth_nm", "groove_nm", "tenon_nm"),
        *integers("dust_panel_material_id", null=True),
        *lengths("dust_panel_thickness_nm", null=True),
        *lengths("play_nm"),
        key("carcase_id"),
        leads_to("carcase", "carcase", {"carcase_id": "box_id"}),
        of_material(),
        of_material("dust_panel"),
        check("dust_panel_whole", "(dust_panel_material_id IS NULL) = (dust_panel_thickness_nm IS NULL)"),
        *more_than_nothing(
            "thickness_nm", "rail_nm", "runner_nm", "housing_depth_nm", "groove_nm", "tenon_nm",
            "dust_panel_thickness_nm",
        ),
        *nothing_or_more("play_nm"),
    )
    create(
        "runners",
        *integers("project_id", "carcase_id"),
        *texts("kind"),
        *integers("material_id", null=True),
        *lengths("thickness_nm", null=True),
        *lengths("width_nm"),
        *integers("kickers"),
        key("carcase_id"),
        leads_to("carcase", "carcase", {"carcase_id": "box_id"}),
        of_material(),
        check("kind", "kind IN ('wood on wood', 'side-hung', 'slides')"),
        check("kickers", "kickers IN (0, 1)"),
        *more_than_nothing("thickness_nm"),
        *nothing_or_more("width_nm"),
        *said_if("kind <> 'slides'", "material_id", "thickness_nm"),
    )
    create(
        "plinth",
        *integers("project_id", "box_id"),
        *texts("kind"),
        *integers("carcase_id"),
        *lengths("height_nm", "front_nm", "sides_nm", "back_nm"),
        *lengths("foot_nm", null=True),
        *lengths("rise_nm"),
        key("box_id"),
        leads_to("box", "box", {"box_id": "id", "kind": "kind"}),
        leads_to("carcase", "carcase", {"carcase_id": "box_id"}),
        unique("carcase", "carcase_id"),
        check("kind", "kind IN ('plinth')"),
        *more_than_nothing("height_nm", "foot_nm"),
        *nothing_or_more("rise_nm"),
    )
    create(
        "stand",
        *integers("project_id", "carcase_id", "leg_material_id"),
        *lengths("leg_thickness_nm"),
        *integers("apron_material_id"),
        *lengths(
            "apron_thickness_nm", "height_nm", "apron_nm", "tenon_nm", "front_nm", "sides_nm", "back_nm",
            "setback_nm",
        ),
        key("carcase_id"),
        leads_to("carcase", "carcase", {"carcase_id": "box_id"}),
        of_material("leg"),
        of_material("apron"),
        *more_than_nothing("leg_thickness_nm", "apron_thickness_nm", "height_nm", "apron_nm", "tenon_nm"),
        *nothing_or_more("setback_nm"),
    )
    create(
        "separate_top",
        *integers("project_id", "carcase_id", "material_id"),
        *lengths("thickness_nm", "front_nm", "sides_nm", "back_nm"),
        key("carcase_id"),
        leads_to("carcase", "carcase", {"carcase_id": "box_id"}),
        of_material(),
        *more_than_nothing("thickness_nm"),
        *nothing_or_more("front_nm", "sides_nm", "back_nm"),
    )
    create(
        "made",
        *integers("project_id", "id"),
        *integers("space_id", "box_id", "carcase_id", null=True),
        *texts("kind"),
        *integers("material_id"),
        *lengths("thickness_nm"),
        *lengths("stile_nm", "rail_nm", "groove_nm", "tenon_nm", null=True),
        *integers("panel_material_id", null=True),
        *lengths("panel_thickness_nm", "play_nm", null=True),
        *integers("wide", "high", null=True),
        key("id"),
        leads_to("doors", "doors", {"space_id": "space_id"}),
        leads_to("lid", "lid", {"box_id": "box_id"}),
        leads_to("back", "back", {"carcase_id": "carcase_id"}),
        of_material(),
        of_material("panel"),
        unique("space", "space_id"),
        unique("box", "box_id"),
        unique("carcase", "carcase_id"),
        check("owner", "(space_id IS NOT NULL) + (box_id IS NOT NULL) + (carcase_id IS NOT NULL) = 1"),
        check("kind", "kind IN ('slab', 'panelled')"),
        check("back", "carcase_id IS NULL OR kind = 'panelled'"),
        *more_than_nothing(
            "thickness_nm", "stile_nm", "rail_nm", "groove_nm", "tenon_nm", "panel_thickness_nm", "wide",
            "high",
        ),
        *nothing_or_more("play_nm"),
        *said_if(
            "kind = 'panelled'", "stile_nm", "rail_nm", "groove_nm", "tenon_nm", "panel_thickness_nm", "wide",
            "high", "panel_material_id", "play_nm",
        ),
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
