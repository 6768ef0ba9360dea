"""Workbooks as the tests look at them."""

from __future__ import annotations

import re
from io import BytesIO
from typing import TYPE_CHECKING, Any
from xml.etree import ElementTree as ET
from zipfile import ZipFile

from planner.present.cell_styles import add_styles
from planner.present.sheet import SheetWriter
from planner.present.table import Table

if TYPE_CHECKING:
    from openpyxl.workbook import Workbook

MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
"""Namespace of sheets: ECMA-376 part 1."""

OURS = re.compile(
    r"SUBTOTAL\(9,([A-Z])\d+:\1\d+\)"
    r"|B\d+\*C\d+\*D\d+(\*MAX\(E\d+,1\)/144|\*E\d+/10\^9|/144|/10\^6)"
)
"""All formulas that a workbook may hold."""


def loaded(book: bytes) -> Workbook:
    from openpyxl import load_workbook

    return load_workbook(BytesIO(book))


def members(book: bytes) -> dict[str, bytes]:
    with ZipFile(BytesIO(book)) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def sheets_xml(book: bytes) -> dict[str, ET.Element]:
    return {
        name: ET.fromstring(content)  # noqa: S314  # our own file
        for name, content in members(book).items()
        if name.startswith("xl/worksheets/sheet")
    }


def formulas(book: bytes) -> list[str]:
    """Every formula of every sheet, as it stands in the XML."""
    return [each.text or "" for sheet in sheets_xml(book).values() for each in sheet.iter(f"{MAIN}f")]


def texts(book: bytes) -> list[str]:
    """Every text of every cell."""
    return [
        cell.value
        for sheet in loaded(book).worksheets
        for row in sheet.iter_rows()
        for cell in row
        if cell.data_type == "s" and isinstance(cell.value, str)
    ]


def rows_by_heading(book: bytes, title: str) -> list[dict[str, Any]]:
    """Rows of one sheet below the headings, by heading; merged lines have only their first cell."""
    rows = loaded(book)[title].iter_rows(min_row=2, values_only=True)
    headings = [str(heading) for heading in next(rows)]
    return [dict(zip(headings, row, strict=True)) for row in rows]


def book_of(*tables: Table) -> bytes:
    """A workbook of any tables."""
    from openpyxl import Workbook

    book = Workbook()
    book.remove(book.worksheets[0])
    add_styles(book)
    for table in tables:
        SheetWriter(book.create_sheet(table.title), table).write(table.title)
    out = BytesIO()
    book.save(out)
    return out.getvalue()
