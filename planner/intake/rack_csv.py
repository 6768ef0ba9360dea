"""Read a list of wood, one lot a line, from a file of comma-separated values: all of it, or all that is wrong with it.

The first line names the columns, in any order; commas, semicolons or tabs may part them.
"""

from __future__ import annotations

import csv
import re
from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from io import StringIO
from types import MappingProxyType

from planner.domain.rack import HUNDREDTHS, LOT_MARK, Flaw, Lot, Per, Price, Surfaced, lot_problems
from planner.errors import InputError, Problem
from planner.intake import values
from planner.intake.nearest import advice
from planner.intake.refusal import RefusalError, quote
from planner.lengths import LengthError, Nm, Span, Unit, read_length
from planner.quantities import QuantityError, read_money

COLUMNS = MappingProxyType(
    {
        "mark": "what is written on the board, or the offer's name",
        "material": "timber or sheet, as a project calls it or as its species is listed",
        "length": 'length, or for an offer a range: "6 ft to 12 ft"',
        "width": "width, or a range",
        "thickness": "as it lies there; 4/4 is an inch",
        "count": "how many; empty for an offer without limit",
        "surfaced": "rough or dressed; usually rough",
        "yard": "who offers it; empty for what is on the rack",
        "price": "12.50; empty for wood on the rack that costs nothing",
        "per": "what the price is for: piece, board foot, m3, m2 or ft2",
        "currency": "the word for the money",
        "least": "the least that the yard sells, in what the price is for",
        "counted": "thickness by which it is paid for, where that is another",
        "defects": 'places that no part may touch: "20 to 24 x 0 to 2; ..." along the board, then across it',
        "remark": "anything",
    }
)
"""Each column with what stands in it."""

NEEDED = ("mark", "material", "length", "width", "thickness")
GREATEST_ROWS, GREATEST_CELL, GREATEST_COUNT = 2000, 500, 10_000
_GREATEST_FLAWS = 50

_PER = {
    "piece": Per.PIECE, "each": Per.PIECE, "board foot": Per.BOARD_FOOT, "board feet": Per.BOARD_FOOT,
    "bd ft": Per.BOARD_FOOT, "m3": Per.CUBIC_METRE, "m³": Per.CUBIC_METRE, "m2": Per.SQUARE_METRE,
    "m²": Per.SQUARE_METRE, "ft2": Per.SQUARE_FOOT, "ft²": Per.SQUARE_FOOT, "sq ft": Per.SQUARE_FOOT,
}  # fmt: skip
_QUARTERS = re.compile(r"([0-9]{1,2})/4")
_LEAST = re.compile(r"[0-9]{1,6}(?:\.[0-9]{1,2})?", re.ASCII)


def read_rack(text: str, source: str, unit: Unit | None) -> tuple[Lot, ...]:
    """The lots that a file lists.

    Args:
        text: the whole file.
        source: what to call it in messages.
        unit: unit of bare numbers; None where each length must say its own.

    Raises:
        InputError: with everything that is wrong; each problem says line and column.
    """
    text = text.removeprefix("\N{ZERO WIDTH NO-BREAK SPACE}")
    rows = _rows(text, source)
    lots: list[tuple[str, Lot]] = []
    wrong: list[Problem] = []
    for line, cells in rows:
        lot, problems = _Line(f"{source}, line {line}", cells, unit).lot()
        wrong += problems
        if lot:
            lots.append((f"{source}, line {line}", lot))
    wrong += _doubles(lots)
    if wrong:
        raise InputError(wrong)
    if not lots:
        raise _refused(source, "lists no wood.", "Below the line of headings comes one line for each lot.")
    return tuple(lot for _, lot in lots)


def _refused(where: str, what: str, remedy: str) -> InputError:
    return InputError([Problem(where=where, what=what, remedy=remedy)])


def _doubles(lots: Sequence[tuple[str, Lot]]) -> Iterator[Problem]:
    times = Counter(lot.mark for _, lot in lots)
    for where, lot in lots:
        if times[lot.mark] > 1:
            what = f"{lot.mark!r} stands there {times[lot.mark]} times."
            yield Problem(where=f"{where}, column mark", what=what, remedy="Give each lot a mark of its own.")


# --- lines and columns --------------------------------------------------------------------------------------


def _rows(text: str, source: str) -> list[tuple[int, dict[str, str]]]:
    """Line number and cells by column, of each line that isn't empty."""
    first = text.partition("\n")[0]
    parted_by = max(",;\t", key=first.count)
    reader = csv.reader(StringIO(text, newline=""), delimiter=parted_by, strict=True)
    try:
        headings = [cell.strip().casefold() for cell in next(reader, [])]
        _must_be_columns(headings, f"{source}, line 1")
        rows: list[tuple[int, dict[str, str]]] = []
        before = reader.line_num
        for cells in reader:
            line, before = before + 1, reader.line_num
            if any(cell.strip() for cell in cells):
                rows.append((line, _cells(headings, cells, f"{source}, line {line}")))
            if len(rows) > GREATEST_ROWS:
                raise _refused(source, f"has over {GREATEST_ROWS} lots.", "Read it in parts, if it is the right file.")
    except csv.Error as error:
        where, remedy = f"{source}, line {reader.line_num}", 'Put a text with commas or quotes in quotes: "2"" oak".'
        raise _refused(where, f"can't be parted into cells: {error}.", remedy) from error
    return rows


def _must_be_columns(headings: Sequence[str], where: str) -> None:
    wrong = [
        Problem(where=where, what=f"{quote(each)} is no column.", remedy=advice(each, tuple(COLUMNS)))
        for each in headings
        if each not in COLUMNS
    ]
    for each, times in Counter(headings).items():
        if times > 1 and each in COLUMNS:
            wrong.append(Problem(where=where, what=f"column {each} stands there {times} times.", remedy="Keep one."))
    missing = [each for each in NEEDED if each not in headings]
    if missing:
        remedy = f"The first line names the columns: {', '.join(COLUMNS)}."
        wrong.append(Problem(where=where, what=f"columns are missing: {', '.join(missing)}.", remedy=remedy))
    if wrong:
        raise InputError(wrong)


def _cells(headings: Sequence[str], cells: Sequence[str], where: str) -> dict[str, str]:
    if len(cells) > len(headings) and any(cell.strip() for cell in cells[len(headings) :]):
        what = f"has {len(cells)} cells, but there are {len(headings)} columns."
        raise _refused(where, what, 'Put a text with commas in quotes: "6 ft, scant".')
    return {heading: cell.strip() for heading, cell in zip(headings, cells, strict=False)}


# --- one line -----------------------------------------------------------------------------------------------


@dataclass(slots=True)
class _Line:
    """One line on its way to a lot; what can't be read is gathered."""

    where: str
    cells: Mapping[str, str]
    unit: Unit | None

    def lot(self) -> tuple[Lot | None, list[Problem]]:
        wrong: list[Problem] = []

        def read(column: str, how: Callable[[str], object], otherwise: object = None) -> object:
            said = self.cells.get(column, "")
            if not said and column in NEEDED:
                remedy = f"Here belongs: {COLUMNS[column]}."
                wrong.append(Problem(where=f"{self.where}, column {column}", what="is empty.", remedy=remedy))
                return otherwise
            try:
                return how(_plain(said)) if said else otherwise
            except (RefusalError, QuantityError) as error:
                wrong.append(Problem(where=f"{self.where}, column {column}", what=error.what, remedy=error.remedy))
                return otherwise

        long, wide = read("length", self._range), read("width", self._range)
        cents, per = read("price", read_money), read("per", _per)
        fields = {
            "mark": read("mark", _mark),
            "yard": read("yard", values.name),
            "material": read("material", values.name),
            "thickness_nm": read("thickness", self._thickness),
            "surfaced": read("surfaced", _surfaced, Surfaced.ROUGH),
            "counted_nm": read("counted", self._thickness),
            "count": read("count", _count),
            "least_hundredths": read("least", _least),
            "flaws": read("defects", self._flaws, ()),
            "remark": read("remark", values.name, ""),
        }
        currency = read("currency", values.name, "")
        if bool(self.cells.get("price")) != bool(self.cells.get("per")) and not wrong:
            remedy = f"Say both, or neither. A price is for a {', '.join(Per)}."
            wrong.append(Problem(where=f"{self.where}, column per", what="goes with a price.", remedy=remedy))
        if wrong or not isinstance(long, tuple) or not isinstance(wide, tuple):
            return None, wrong
        price = (
            Price(cents=cents, per=per, currency=str(currency))
            if isinstance(cents, int) and isinstance(per, Per)
            else None
        )
        make: Callable[..., Lot] = Lot
        lot = make(
            **fields, shortest_nm=long[0], longest_nm=long[1], narrowest_nm=wide[0], widest_nm=wide[1], price=price
        )
        return lot, [self._of_lot(each) for each in lot_problems(lot)]

    def _of_lot(self, problem: Problem) -> Problem:
        column = problem.where.rpartition(" ")[2]
        return Problem(where=f"{self.where}, column {column}", what=problem.what, remedy=problem.remedy)

    def _length(self, said: str, *, zero: bool = False) -> Nm:
        if self.unit is None and re.fullmatch(r"[0-9./ -]+", said) and not (zero and said.strip("0.") == ""):
            raise RefusalError(f"{quote(said)} says no unit.", 'Write it like 8 ft, 6 in or 150 mm, or use "--units".')
        try:
            return read_length(said, self.unit or Unit.MM, zero=zero)
        except LengthError as error:
            raise RefusalError(error.what, error.remedy) from error

    def _range(self, said: str) -> Span:
        low, to, high = said.partition(" to ")
        return self._length(low), self._length(high if to else low)

    def _thickness(self, said: str) -> Nm:
        return self._length(f"{said} in" if _QUARTERS.fullmatch(said) else said)

    def _flaws(self, said: str) -> tuple[Flaw, ...]:
        found = tuple(self._flaw(each.strip()) for each in said.split(";") if each.strip())
        if len(found) > _GREATEST_FLAWS:
            raise RefusalError(f"lists {len(found)} places.", "A board with so many has no clear wood.")
        return found

    def _flaw(self, said: str) -> Flaw:
        spans = [each.strip() for each in re.split(r"\s[x×]\s", said)]
        if len(spans) != 2:  # noqa: PLR2004 - along and across
            remedy = 'Write from and to along the board, then across it: "20 in to 24 in x 0 to 2 in".'
            raise RefusalError(f"{quote(said)} is no place on a board.", remedy)
        along, across = (self._span(each) for each in spans)
        return Flaw(along=along, across=across)

    def _span(self, said: str) -> Span:
        low, to, high = said.partition(" to ")
        if not to:
            raise RefusalError(f"{quote(said)} has no end.", 'Write from and to: "20 in to 24 in".')
        start, end = self._length(low.strip(), zero=True), self._length(high.strip())
        if start >= end:
            raise RefusalError(f"{quote(said)} has no width.", "Write the lower place first.")
        return start, end


def _plain(said: str) -> str:
    if len(said) > GREATEST_CELL:
        raise RefusalError(f"{quote(said)} is over {GREATEST_CELL} characters long.", "Say it in fewer.")
    if not said.isprintable():
        raise values.unseen(said)
    return said


def _mark(said: str) -> str:
    if not LOT_MARK.fullmatch(said):
        raise RefusalError(
            f"{quote(said)} is no mark.", "Write a capital letter, then up to 19 capitals, digits or hyphens: R1."
        )
    return said


def _per(said: str) -> Per:
    found = _PER.get(said.casefold())
    if found is None:
        raise RefusalError(f"{quote(said)} is nothing to pay for.", f"Write one of: {', '.join(Per)}.")
    return found


def _surfaced(said: str) -> Surfaced:
    if said.casefold() not in tuple(Surfaced):
        raise RefusalError(f"{quote(said)} isn't known.", f"Write {' or '.join(Surfaced)}.")
    return Surfaced(said.casefold())


def _count(said: str) -> int:
    if not (said.isascii() and said.isdigit() and int(said[:9]) <= GREATEST_COUNT and len(said) < 9):  # noqa: PLR2004
        raise RefusalError(f"{quote(said)} is no count.", f"Write a whole number from 0 to {GREATEST_COUNT}.")
    return int(said)


def _least(said: str) -> int:
    if not _LEAST.fullmatch(said) or float(said) == 0:
        raise RefusalError(f"{quote(said)} is no amount.", "Write a number over 0, with at most two decimals: 20.")
    whole, _, part = said.partition(".")
    return int(whole) * HUNDREDTHS + int(part.ljust(2, "0"))
