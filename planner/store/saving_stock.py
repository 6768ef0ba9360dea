"""What a project says of stock as rows."""

from __future__ import annotations

from collections.abc import Iterator

from planner.domain.project import Project
from planner.store.columns import columns_of, row_from
from planner.store.ids import Ids
from planner.store.stock_tables import MaterialStockRow, StockRow
from planner.store.tables import PartRow


def stock_rows(project: Project, ids: Ids) -> Iterator[PartRow]:
    """The rows of what is said; none where nothing is."""
    stock = project.stock
    if stock is None:
        return
    keep = {f"keep_{column}": held for column, held in columns_of(stock.keep).items()}
    yield row_from(StockRow, stock, project_id=ids.project, **keep)
    for position, each in enumerate(stock.materials, start=1):
        material = ids.material(each.material)
        yield row_from(MaterialStockRow, each, project_id=ids.project, position=position, material_id=material)
