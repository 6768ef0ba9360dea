"""One table on one sheet of the workbook, laid out to be read on paper at arm's length.

Row 1 is the title, row 2 the headings; both stay in sight and are printed on every page. Below them come notes and
cautions, then the groups, each under its heading, and the sums.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import zip_longest
from typing import TYPE_CHECKING

from planner.lengths import in_unit
from planner.present import cell_styles as styles
from planner.present.cell_styles import Look
from planner.present.cell_texts import BOLD, DIGIT, MARGIN, TICKED, column_widths, lines, paragraphs, texts
from planner.present.layout import BOX
from planner.present.plain import no_formula, visible
from planner.present.table import LENGTHS, Cell, Column, Group, Kind, Table

if TYPE_CHECKING:
    from openpyxl.worksheet.worksheet import Worksheet

HEADING_ROW = 2
LINE_POINTS = 14.5
MARGIN_POINTS = 3.0
TITLE_LINES = 1.5


class SheetWriter:
    """Writes one table downwards; ``row`` is the row written last, ``rooms`` what letters find in each column."""

    def __init__(self, sheet: Worksheet, table: Table) -> None:
        from openpyxl.utils import get_column_letter

        self.sheet, self.table, self.row = sheet, table, 0
        self.widths = column_widths(table)
        shares = (BOLD if column.strong else 1 for column in table.columns)
        self.rooms = [int(width * share) for width, share in zip(self.widths, shares, strict=True)]
        self.letters = [get_column_letter(number) for number in range(1, len(table.columns) + 1)]
        for letter, width in zip(self.letters, self.widths, strict=True):
            sheet.column_dimensions[letter].width = (width + MARGIN) / DIGIT

    def write(self, title: str) -> None:
        """Write everything: title, headings, remarks, groups and sums."""
        table = self.table
        self._title(title)
        self._headings()
        self._remarks(table)
        first = self.row + 1
        for group in table.groups:
            if table.page_per_group and group is not table.groups[0]:
                self._end_page()
            self._group(group)
        if table.has_sums and table.groups:
            self._sums("Total", first, table.sums())

    def _title(self, title: str) -> None:
        self.row += 1
        self._put(0, visible(title), styles.TITLE)
        self._set_height([TITLE_LINES])

    def _headings(self) -> None:
        self.row += 1
        for index, heading in enumerate(self.table.headings()):
            self._put(index, heading, styles.HEADING)
        self._set_height(
            lines(heading, width * BOLD) for heading, width in zip(self.table.headings(), self.widths, strict=True)
        )

    def _remarks(self, of: Table | Group) -> None:
        for note in of.notes:
            self._line(note, styles.NOTE)
        for caution in of.cautions:
            self._line(caution, styles.CAUTION)

    def _group(self, group: Group) -> None:
        if group.heading:
            self._line(group.heading, styles.GROUP)
        self._remarks(group)
        first = self.row + 1
        for row in group.rows:
            self._cells(row)
        self._offer_ticks(first)
        if self.table.has_sums:
            self._sums("Subtotal", first, self.table.sums(group.rows))

    def _end_page(self) -> None:
        from openpyxl.worksheet.pagebreak import Break

        self.sheet.row_breaks.append(Break(id=self.row))

    def _line(self, text: str, look: Look) -> None:
        """A text over all columns; more than one row only if it is very long."""
        width = int((sum(self.widths) + MARGIN * (len(self.widths) - 1)) * BOLD)
        for part in paragraphs(visible(text), width):
            self.row += 1
            self._put(0, part, look)
            self.sheet.merged_cells.add(f"{self.letters[0]}{self.row}:{self.letters[-1]}{self.row}")
            self._set_height([lines(part, width)])

    def _set_height(self, high: Iterable[float]) -> None:
        """Make the row as high as its highest cell; left to itself, not every program finds the height."""
        self.sheet.row_dimensions[self.row].height = max(high) * LINE_POINTS + MARGIN_POINTS

    # --- rows of cells -------------------------------------------------------------------------------------

    def _cells(self, row: Sequence[Cell]) -> None:
        """One row of the table; a text too long for one cell goes on in the rows below."""
        in_cells = [texts(self.table, *each) for each in zip(self.table.columns, row, self.rooms, strict=True)]
        for place, row_texts in enumerate([*zip_longest(*in_cells)] or [(None,) * len(row)]):
            self.row += 1
            for index, text in enumerate(row_texts):
                column = self.table.columns[index]
                if text is None and not place:
                    self._number(index, column, row[index])
                else:
                    self._put(index, text or "", styles.cell_look(column))
            self._set_height(lines(text or "", room) for text, room in zip(row_texts, self.rooms, strict=True))

    def _put(self, index: int, text: str, look: Look) -> None:
        """A text that stays a text, whatever it begins with."""
        cell = self.sheet.cell(self.row, index + 1)
        cell.style = look.name
        if text:
            cell.value = no_formula(text)
            cell.data_type = "s"

    def _number(self, index: int, column: Column, value: Cell) -> None:
        """A length in the project's unit, a count, or an amount with the formula that gives it."""
        cell = self.sheet.cell(self.row, index + 1)
        cell.style = styles.cell_look(column).name
        if value is None or isinstance(value, str | tuple):
            return
        if column.kind in LENGTHS:
            grid = self.table.grid_of(column)
            cell.value = float(in_unit(int(value), grid.unit))
            cell.number_format = styles.length_format(int(value), grid)
            return
        cell.value = f"={self._formula(column)}" if column.formula else float(value)
        cell.number_format = styles.number_format(column)

    def _formula(self, column: Column) -> str:
        places = {
            other.heading: f"{letter}{self.row}" for other, letter in zip(self.table.columns, self.letters, strict=True)
        }
        return column.formula.format_map(places)

    # --- sums and ticks ------------------------------------------------------------------------------------

    def _sums(self, word: str, first: int, sums: Sequence[Cell]) -> None:
        """Sums of the rows from ``first`` on; SUBTOTAL passes over the subtotals among them."""
        last = self.row
        self.row += 1
        columns = self.table.columns
        of_word = next(index for index, column in enumerate(columns) if column.kind is Kind.TEXT)
        for index, (column, letter, total) in enumerate(zip(columns, self.letters, sums, strict=True)):
            self._put(index, word if index == of_word else "", styles.SUM[column.kind])
            if total:
                cell = self.sheet.cell(self.row, index + 1)
                cell.value = f"=SUBTOTAL(9,{letter}{first}:{letter}{last})"
                cell.number_format = styles.number_format(column)
        self._set_height([1])

    def _offer_ticks(self, first: int) -> None:
        """Let the boxes of a group be ticked on a screen."""
        from openpyxl.worksheet.datavalidation import DataValidation

        for column, letter in zip(self.table.columns, self.letters, strict=True):
            if column.kind is Kind.TICK:
                offer = DataValidation(type="list", formula1=f'"{BOX},{TICKED}"', allow_blank=True)
                offer.add(f"{letter}{first}:{letter}{self.row}")
                self.sheet.add_data_validation(offer)
