"""The tables of what a project says of rough wood, and of the wood on the rack and at the yard, which is no project's.

What a project says is written anew with each save.
"""

from __future__ import annotations

from sqlalchemy import CheckConstraint, ForeignKeyConstraint, Text, UniqueConstraint  # noqa: TID253 - like tables
from sqlmodel import Field  # noqa: TID253

from planner.domain.rack import Per, Surfaced
from planner.domain.stock import SawWay, SoldAs
from planner.lengths import Nm
from planner.store.rules import more_than_nothing, not_empty, nothing_or_more, of_material, of_project, of_row, one_of
from planner.store.tables import NM, STRICT, PartRow, Row


class StockRow(PartRow, table=True):
    """How the boards of a project are cut out of rough wood; none where nothing is said."""

    __tablename__ = "stock"
    __table_args__ = (
        of_project(),
        *nothing_or_more("length_nm", "width_nm", "thickness_nm", "sheet_nm", "end_trim_nm", "edge_trim_nm"),
        *nothing_or_more("rip_kerf_nm", "crosscut_kerf_nm", "joint_nm", "spares", "waste_hundredths"),
        *more_than_nothing("least_stave_nm", "greatest_stave_nm", "spare_length_nm", "spare_width_nm"),
        *more_than_nothing("keep_length_nm", "keep_width_nm"),
        CheckConstraint("practice IN (0, 1)", name="practice"),
        CheckConstraint("stages IN (2, 3)", name="stages"),
        CheckConstraint("keep_credit_pct BETWEEN 0 AND 100", name="keep_credit_pct"),
        one_of("first_cut", *SawWay),
        STRICT,
    )

    project_id: int = Field(primary_key=True)
    length_nm: Nm = Field(sa_type=NM)
    width_nm: Nm = Field(sa_type=NM)
    thickness_nm: Nm | None = Field(sa_type=NM)
    sheet_nm: Nm = Field(sa_type=NM)
    end_trim_nm: Nm = Field(sa_type=NM)
    edge_trim_nm: Nm = Field(sa_type=NM)
    rip_kerf_nm: Nm = Field(sa_type=NM)
    crosscut_kerf_nm: Nm = Field(sa_type=NM)
    joint_nm: Nm = Field(sa_type=NM)
    least_stave_nm: Nm = Field(sa_type=NM)
    greatest_stave_nm: Nm | None = Field(sa_type=NM)
    spares: int
    spare_length_nm: Nm = Field(sa_type=NM)
    spare_width_nm: Nm = Field(sa_type=NM)
    practice: int
    waste_hundredths: int
    stages: int
    first_cut: str | None = Field(sa_type=Text)
    keep_length_nm: Nm = Field(sa_type=NM)
    keep_width_nm: Nm = Field(sa_type=NM)
    keep_credit_pct: int


class MaterialStockRow(PartRow, table=True):
    """What is different about one material of a project."""

    __tablename__ = "material_stock"
    __table_args__ = (
        of_row("stock"),
        of_material(),
        UniqueConstraint("project_id", "material_id", name="material"),
        *more_than_nothing("position", "greatest_stave_nm"),
        *nothing_or_more("length_nm", "width_nm", "thickness_nm", "end_trim_nm", "edge_trim_nm", "waste_hundredths"),
        CheckConstraint("grain IN (0, 1)", name="grain"),
        one_of("sold_as", *SoldAs),
        STRICT,
    )

    project_id: int = Field(primary_key=True)
    position: int = Field(primary_key=True)
    material_id: int
    sold_as: str | None = Field(sa_type=Text)
    length_nm: Nm | None = Field(sa_type=NM)
    width_nm: Nm | None = Field(sa_type=NM)
    thickness_nm: Nm | None = Field(sa_type=NM)
    end_trim_nm: Nm | None = Field(sa_type=NM)
    edge_trim_nm: Nm | None = Field(sa_type=NM)
    greatest_stave_nm: Nm | None = Field(sa_type=NM)
    waste_hundredths: int | None
    grain: int | None


class LotRow(Row, table=True):
    """Boards or sheets that are alike, on the rack or on offer; the store's own, not a project's."""

    __tablename__ = "lot"
    __table_args__ = (
        UniqueConstraint("mark", name="mark"),
        *not_empty("mark", "yard", "material"),
        *more_than_nothing("shortest_nm", "narrowest_nm", "thickness_nm", "counted_nm", "least_hundredths"),
        *nothing_or_more("count", "cents"),
        one_of("surfaced", *Surfaced),
        one_of("per", *Per),
        CheckConstraint("shortest_nm <= longest_nm AND narrowest_nm <= widest_nm", name="sizes"),
        CheckConstraint("(cents IS NULL) = (per IS NULL) AND (cents IS NULL) = (currency IS NULL)", name="price_whole"),
        CheckConstraint("yard IS NULL OR cents IS NOT NULL", name="offer_priced"),
        CheckConstraint(
            "yard IS NOT NULL OR (shortest_nm = longest_nm AND narrowest_nm = widest_nm AND count IS NOT NULL "
            "AND least_hundredths IS NULL)",
            name="on_the_rack",
        ),
        STRICT,
    )

    id: int = Field(default=None, primary_key=True)
    mark: str = Field(sa_type=Text)
    yard: str | None = Field(sa_type=Text)
    material: str = Field(sa_type=Text)
    shortest_nm: Nm = Field(sa_type=NM)
    longest_nm: Nm = Field(sa_type=NM)
    narrowest_nm: Nm = Field(sa_type=NM)
    widest_nm: Nm = Field(sa_type=NM)
    thickness_nm: Nm = Field(sa_type=NM)
    surfaced: str = Field(sa_type=Text)
    counted_nm: Nm | None = Field(sa_type=NM)
    count: int | None
    cents: int | None
    per: str | None = Field(sa_type=Text)
    currency: str | None = Field(sa_type=Text)
    least_hundredths: int | None
    remark: str = Field(sa_type=Text)


class FlawRow(Row, table=True):
    """A place on the boards of a lot that no part may touch."""

    __tablename__ = "flaw"
    __table_args__ = (
        ForeignKeyConstraint(["lot_id"], ["lot.id"], name="lot", ondelete="CASCADE"),
        CheckConstraint("0 <= along_from_nm AND along_from_nm < along_to_nm", name="along"),
        CheckConstraint("0 <= across_from_nm AND across_from_nm < across_to_nm", name="across"),
        *more_than_nothing("position"),
        STRICT,
    )

    lot_id: int = Field(primary_key=True)
    position: int = Field(primary_key=True)
    along_from_nm: Nm = Field(sa_type=NM)
    along_to_nm: Nm = Field(sa_type=NM)
    across_from_nm: Nm = Field(sa_type=NM)
    across_to_nm: Nm = Field(sa_type=NM)
