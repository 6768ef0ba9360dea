"""How cells of the workbook look: a few named styles, and number formats that show shop fractions."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

from planner.lengths import ROUNDED, Grid, in_unit, on_grid
from planner.present.table import LENGTHS, Column, Kind

if TYPE_CHECKING:
    from openpyxl.styles import NamedStyle
    from openpyxl.workbook import Workbook

FONT = "Calibri"
SIZE = 11

_GREY, _LIGHT_GREY, _YELLOW, _LINE = "FFD9D9D9", "FFEDEDED", "FFFFF2CC", "FFA6A6A6"


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """A style, described."""

    name: str
    size: int = SIZE
    bold: bool = False
    wrap: bool = True
    horizontal: Literal["left", "right", "center"] = "left"
    vertical: Literal["top", "center"] = "top"
    line: Literal["thin", "medium"] | None = None
    shade: str | None = None


TITLE = Look(name="title", size=16, bold=True, wrap=False, vertical="center")
HEADING = Look(name="heading", bold=True, horizontal="center", vertical="center", line="medium", shade=_GREY)
GROUP = Look(name="group", bold=True, shade=_LIGHT_GREY)
NOTE = Look(name="note")
CAUTION = Look(name="caution", bold=True, shade=_YELLOW)

_RIGHT = (*LENGTHS, Kind.COUNT, Kind.AMOUNT)


def _cell(kind: Kind, *, strong: bool) -> Look:
    name = f"strong {kind.value}" if strong else kind.value
    if kind is Kind.TICK:
        return Look(name=name, size=14, horizontal="center", line="thin")
    return Look(name=name, bold=strong, horizontal="right" if kind in _RIGHT else "left", line="thin")


def _sum(kind: Kind) -> Look:
    side: Literal["left", "right"] = "right" if kind in _RIGHT else "left"
    return Look(name=f"sum of {kind.value}", bold=True, wrap=False, horizontal=side, line="medium")


_CELL = {(kind, strong): _cell(kind, strong=strong) for kind in Kind for strong in (False, True)}
SUM = {kind: _sum(kind) for kind in Kind}
_ALL = (TITLE, HEADING, GROUP, NOTE, CAUTION, *_CELL.values(), *SUM.values())


def cell_look(column: Column) -> Look:
    """How the cells of a column look."""
    return _CELL[column.kind, column.strong]


def add_styles(book: Workbook) -> None:
    """Give a workbook all these styles, by their names."""
    for look in _ALL:
        book.add_named_style(_style(look))


def _style(look: Look) -> NamedStyle:
    from openpyxl.styles import Alignment, Border, Font, NamedStyle, PatternFill, Side

    return NamedStyle(
        name=look.name,
        font=Font(name=FONT, size=look.size, bold=look.bold),
        alignment=Alignment(
            horizontal=look.horizontal,
            vertical=look.vertical,
            wrap_text=look.wrap,
            indent=0 if look.horizontal == "center" else 1,
        ),
        border=Border(bottom=Side(style=look.line, color=_LINE)),
        fill=PatternFill("solid", fgColor=look.shade) if look.shade else PatternFill(),
    )


# --- number formats ----------------------------------------------------------------------------------------

_FRACTION = "# ??/??"
"""Every multiple of 1/64 as its reduced fraction, also one that is typed in later."""

_TENTHS = "0.0"


def length_format(length: int, grid: Grid) -> str:
    """Number format of a length: one that is not on the grid is shown to its nearest step, with ``~`` before it.

    That step's own denominator is asked for, so that 1 48/64 reads 1 3/4 as it does elsewhere.
    """
    exact = length % grid.step_nm == 0
    if grid is Grid.MM_TENTH:
        return _TENTHS if exact else f'"{ROUNDED}"{_TENTHS}'
    return _FRACTION if exact else f'"{ROUNDED}"{_nearest(in_unit(on_grid(length, grid), grid.unit))}'


def _nearest(shown: Fraction) -> str:
    """Format that shows a number near to this one as this one."""
    whole, part = divmod(shown, 1)
    if not part:
        return "0"
    below = str(part.denominator)
    return f"{'# ' if whole else ''}{'?' * len(below)}/{below}"


def number_format(column: Column) -> str:
    """Number format of a column's counts or amounts."""
    return f"0.{'0' * column.decimals}" if column.kind is Kind.AMOUNT else "0"
