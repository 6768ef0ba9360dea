"""What changed from one plan to another, for somebody with the old one in hand."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import fields

from planner.domain.changes import Changes, SettingChange, Shift, StockChange
from planner.domain.plan import BoardSize, Finding, SledTally
from planner.domain.said import NOT_SAID, SaidOtherwise, SaidPlace
from planner.domain.words import MaterialKind
from planner.lengths import ROUNDED, Grid, Nm, Unit, show_length, write_length
from planner.present.table import Cell, Column, Group, Kind, Table, setting
from planner.present.views.cut_list import KIND_WORDS, MEASURES
from planner.present.views.joints import slope_words
from planner.present.views.sled_savings import hours
from planner.wood.measure import amount_over

Row = tuple[Cell, ...]

_EMPTY = {"{}": "as usual", "": "nothing"}
"""What is shown for a table of which all is as usual, and for a title without a word."""

NOTHING = "No board, joint, setting or check changes."
_BEFORE, _AFTER = Column(heading="Before"), Column(heading="After", strong=True)


def changes(found: Changes) -> tuple[Table, ...]:
    """A table for each kind of thing that changed; none at all when nothing did."""
    tables = (_boards(found), _stock(found), _sled(found), _checks(found))
    return tuple(table for table in tables if table.groups)


def said_otherwise(said: Iterable[SaidOtherwise], grid: Grid) -> Table:
    """What the maker says otherwise."""
    return Table(
        title="What is said",
        grid=grid,
        columns=(Column(heading="Place"), _BEFORE, _AFTER),
        groups=(
            Group(rows=tuple((each.place, _shown(each.before), _shown(each.after)) for each in said)),
        ),
    )  # fmt: skip


def places(name: str, listed: Iterable[SaidPlace]) -> Table:
    """Where a project can be changed."""
    return Table(
        title=f"{name}: what can be changed",
        grid=Grid.MM_TENTH,
        columns=(Column(heading="Place", strong=True), Column(heading="Now"), Column(heading="Meaning")),
        groups=(Group(rows=tuple((each.place, _shown(each.said), each.meaning) for each in listed)),),
    )


def _shown(said: str | None) -> str:
    return NOT_SAID if said is None else _EMPTY.get(said, said)


# --- boards and joints --------------------------------------------------------------------------------------


def _boards(found: Changes) -> Table:
    grid = found.project.after.grid
    boards = found.boards
    groups = (
        (f"Changed: {len(boards.changed)}", _alike(_board_rows(boards.changed, grid))),
        (f"New: {len(boards.new)}", _alike(_whole(boards.new, grid, new=True))),
        (f"Gone: {len(boards.gone)}", _alike(_whole(boards.gone, grid, new=False))),
        ("Joints and cuts", tuple(_anew(found))),
    )
    return Table(
        title="Boards",
        grid=grid,
        columns=(Column(heading="Marks", kind=Kind.MARKS), Column(heading="What"), _BEFORE, _AFTER),
        groups=tuple(Group(heading=heading, rows=rows) for heading, rows in groups if rows),
    )


def _anew(found: Changes) -> Iterator[Row]:
    """What was laid out already and isn't right any more; the four joints of a ring are named at once."""
    if found.joints_anew:
        marks = set(found.joints_anew)
        rings = [tuple(corner.mark for corner in ring.corners) for ring in found.project.after.rings()]
        whole = {ring[0]: f"{ring[0]} to {ring[-1]}" for ring in rings if marks.issuperset(ring)}
        named_at_once = {mark for ring in rings if ring[0] in whole for mark in ring[1:]}
        shown = tuple(whole.get(mark, mark) for mark in found.joints_anew if mark not in named_at_once)
        yield shown, "joint: lay out anew", "", ""
    if found.cuts_anew:
        yield found.cuts_anew, "other cuts, such as grooves: not as before", "", ""


def _alike(rows: Iterable[tuple[str, Row]]) -> tuple[Row, ...]:
    """Rows that say the same of several marks, once."""
    marks: dict[Row, list[str]] = {}
    for mark, row in rows:
        marks.setdefault(row, []).append(mark)
    return tuple((tuple(of), *row) for row, of in marks.items())


def _board_rows(shifts: Iterable[Shift[BoardSize]], grid: Grid) -> Iterator[tuple[str, Row]]:
    for shift in shifts:
        before, after = shift.before, shift.after
        sizes = (
            ("length", before.length_nm, after.length_nm),
            ("width", before.width_nm, after.width_nm),
            ("thickness", before.thickness_nm, after.thickness_nm),
        )
        yield from ((after.mark, (what, *told_apart(one, other, grid))) for what, one, other in sizes if one != other)
        words = (
            ("material", before.material, after.material),
            ("role", before.role, after.role),
            ("box", before.box, after.box),
        )
        yield from ((after.mark, (what, str(one), str(other))) for what, one, other in words if one != other)


def _whole(boards: Iterable[BoardSize], grid: Grid, *, new: bool) -> Iterator[tuple[str, Row]]:
    for board in boards:
        sizes = " × ".join(show_length(nm, grid) for nm in (board.length_nm, board.width_nm, board.thickness_nm))
        text = f"{sizes} {grid.unit}, {board.material}"
        yield board.mark, (str(board.role), *(("", text) if new else (text, "")))


def told_apart(before: Nm, after: Nm, grid: Grid) -> tuple[str, str]:
    """Two unlike lengths with their unit: as all sizes are shown, or as exactly as it takes to tell them apart.

    >>> told_apart(Nm(19_050_000), Nm(19_446_875), Grid.IN_16)
    ('3/4 in', '49/64 in')
    >>> told_apart(Nm(20_000_000), Nm(20_010_000), Grid.MM_TENTH)
    ('20 mm', '20.01 mm')
    """
    for step in (grid, grid.fine):
        one, other = (show_length(nm, step, with_unit=True) for nm in (before, after))
        if one.removeprefix(ROUNDED) != other.removeprefix(ROUNDED):
            return one, other
    return write_length(before, Unit.MM), write_length(after, Unit.MM)


# --- stock --------------------------------------------------------------------------------------------------


def _stock(found: Changes) -> Table:
    grid = found.project.after.grid
    return Table(
        title="Stock",
        grid=grid,
        columns=(Column(heading="What"), _BEFORE, _AFTER, Column(heading="Difference")),
        groups=tuple(
            Group(heading=_stuff_words(change, grid), rows=tuple(_stock_rows(change, grid))) for change in found.stock
        ),
        notes=("Finished sizes; waste is not included.",),
    )


def _stuff_words(change: StockChange, grid: Grid) -> str:
    thick = show_length(change.thickness_nm, grid, with_unit=True)
    return f"{change.material}, {thick} thick, {KIND_WORDS[change.kind]}"


def _stock_rows(change: StockChange, grid: Grid) -> Iterator[Row]:
    before, after, unit = change.before, change.after, grid.unit
    if before.boards != after.boards:
        yield "Boards", str(before.boards), str(after.boards), f"{after.boards - before.boards:+d}"
    lengths = [show_length(nm, grid, with_unit=True) for nm in (before.length_nm, after.length_nm)]
    more = after.length_nm - before.length_nm
    if more:
        yield "Length of all", *lengths, f"{'+' if more > 0 else ''}{show_length(more, grid, with_unit=True)}"
    for kind in dict.fromkeys((MaterialKind.SHEET, change.kind)):
        measure = MEASURES[unit, kind]
        amounts = [amount_over(measure.per, wood.area_nm2, change.thickness_nm) for wood in (before, after)]
        texts = [f"{float(amount):.{measure.decimals}f}" for amount in amounts]
        if amounts[0] != amounts[1]:
            yield measure.heading, *texts, f"{float(amounts[1] - amounts[0]):+.{measure.decimals}f}"


# --- sled and work ------------------------------------------------------------------------------------------

_TALLY_WORDS = {
    "settings": "Sled settings",
    "sled_changes": "Changes of sled",
    "height_changes": "Changes of bit height",
    "fence_swaps": "Fence swaps",
    "handlings": "Handlings",
    "turnings": "Turnings end for end",
    "passes": "Passes",
    "estimate_s": "Time at the sled, about",
}


def _sled(found: Changes) -> Table:
    grid = found.project.after.grid
    counted = tuple(_tally_rows(found.tally, found.operations))
    groups = (("Counts", counted), ("Settings", tuple(_setting_row(each, grid) for each in found.settings)))
    return Table(
        title="Sled and operations",
        grid=grid,
        columns=(Column(heading="What"), _BEFORE, _AFTER),
        groups=tuple(Group(heading=heading, rows=rows) for heading, rows in groups if rows),
    )


def _tally_rows(tally: Shift[SledTally], operations: Shift[int]) -> Iterator[Row]:
    for field in fields(SledTally):
        before, after = (getattr(each, field.name) for each in (tally.before, tally.after))
        if before != after:
            is_time = field.name == "estimate_s"
            yield _TALLY_WORDS[field.name], *((hours(each) if is_time else str(each)) for each in (before, after))
    if operations.differs:
        yield "Operations in all", str(operations.before), str(operations.after)


def _setting_row(change: SettingChange, grid: Grid) -> Row:
    what = (
        f"{change.fence.upper()} FENCE, bit height {setting(change.bit_height_nm, grid)} {grid.unit}: sled "
        f"{change.sled}, slope {slope_words(change.slope)}, bit {setting(change.bit_nm, grid)} {grid.unit}"
    )
    if change.before and change.after:
        return what, _ends(change.before), f"{_ends(change.after)}, boards or marks differ"
    return what, _ends(change.before), _ends(change.after)


def _ends(count: int) -> str:
    return "not used" if not count else f"{count} end{'' if count == 1 else 's'}"


# --- checks -------------------------------------------------------------------------------------------------


def _checks(found: Changes) -> Table:
    findings = found.findings
    groups = (
        ("New", tuple((each.marks, f"{each.level.capitalize()}: {each.text}", each.remedy) for each in findings.new)),
        ("Same as before, but with other figures", tuple(_other_figures(shift.after for shift in findings.changed))),
        ("No more", tuple((each.marks, f"{each.level.capitalize()}: {each.text}", "") for each in findings.gone)),
    )
    return Table(
        title="Checks",
        grid=found.project.after.grid,
        columns=(Column(heading="About", kind=Kind.MARKS), Column(heading="What"), Column(heading="What to do")),
        groups=tuple(Group(heading=heading, rows=rows) for heading, rows in groups if rows),
    )


def _other_figures(findings: Iterable[Finding]) -> Iterator[Row]:
    """The first finding of each rule and its remedy in full, with the marks of the others."""
    by_rule: dict[str, list[Finding]] = {}
    for finding in findings:
        by_rule.setdefault(finding.code, []).append(finding)
    for alike in by_rule.values():
        marks = tuple(dict.fromkeys(mark for finding in alike for mark in finding.marks))
        more = f" And {len(alike) - 1} more of this kind: see planner checks." if len(alike) > 1 else ""
        yield marks, f"{alike[0].level.capitalize()}: {alike[0].text}{more}", alike[0].remedy
