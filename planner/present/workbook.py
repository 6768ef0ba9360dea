"""The workbook: every sheet that goes to the timber yard and into the shop. The same plan gives the same bytes."""

from __future__ import annotations

import re
from collections.abc import Iterable
from io import BytesIO
from typing import TYPE_CHECKING
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

from planner.domain.plan import Plan
from planner.lengths import Unit
from planner.present.cell_styles import add_styles
from planner.present.plain import visible
from planner.present.sheet import HEADING_ROW, SheetWriter
from planner.present.table import Table
from planner.present.tables import SHEETS

if TYPE_CHECKING:
    from openpyxl.worksheet.worksheet import Worksheet

_ZIP_START = (1980, 1, 1, 0, 0, 0)
_WRITTEN = re.compile(rb"(<dcterms:(created|modified)[^>]*>)[^<]*(</dcterms:\2>)")


def workbook(plan: Plan) -> bytes:
    """The finished workbook of a plan, ready to be written to a file."""
    return workbook_of(plan.project.name, (view(plan) for view in SHEETS))


def workbook_of(title: str, tables: Iterable[Table]) -> bytes:
    """A workbook with a sheet for each table that says something."""
    from openpyxl import Workbook

    book = Workbook()
    book.remove(book.worksheets[0])
    add_styles(book)
    book.properties.creator = "planner"
    name = book.properties.title = visible(title)
    for table in tables:
        if table.groups and (any(table.rows) or any(group.notes for group in table.groups)):
            sheet = book.create_sheet(table.title)
            SheetWriter(sheet, table).write(f"{table.title}: {name}")
            _set_up_page(sheet, table, name)
    out = BytesIO()
    book.save(out)
    return _without_dates(out.getvalue())


def _set_up_page(sheet: Worksheet, table: Table, name: str) -> None:
    """Landscape, as wide as the page, headings on every page, page numbers; Letter for inches, A4 for millimetres."""
    from openpyxl.worksheet.header_footer import HeaderFooterItem
    from openpyxl.worksheet.properties import PageSetupProperties

    sheet.freeze_panes = f"A{HEADING_ROW + 1}"
    sheet.print_title_rows = f"1:{HEADING_ROW}"
    page = sheet.page_setup
    page.orientation = sheet.ORIENTATION_LANDSCAPE
    page.paperSize = int(sheet.PAPERSIZE_LETTER if table.grid.unit is Unit.INCH else sheet.PAPERSIZE_A4)
    page.fitToWidth, page.fitToHeight = 1, 0
    sheet.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
    margins = sheet.page_margins
    margins.left = margins.right = 0.4
    margins.top, margins.bottom, margins.header, margins.footer = 0.5, 0.7, 0.3, 0.3
    footer = HeaderFooterItem()
    footer.left.text = name.replace("&", "&&")
    footer.center.text = table.title
    footer.right.text = "Page &P of &N"
    sheet.HeaderFooter.oddFooter = footer


def _without_dates(saved: bytes) -> bytes:
    """The same file without the time at which it was saved."""
    out = BytesIO()
    with ZipFile(BytesIO(saved)) as old, ZipFile(out, "w", ZIP_DEFLATED) as new:
        for name in old.namelist():
            info = ZipInfo(name, _ZIP_START)
            info.compress_type, info.create_system = ZIP_DEFLATED, 0
            content = old.read(name)
            if name == "docProps/core.xml":
                content = _WRITTEN.sub(rb"\g<1>2000-01-01T00:00:00Z\g<3>", content)
            new.writestr(info, content)
    return out.getvalue()
