"""A sled to be built: its parts and places, how to build and set it, what to keep clear of, and what to think over.

Every length is shown with its unit, on the finest grid; where that had to be rounded, the decimals stand in brackets.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from planner.domain.marks import reading_order
from planner.domain.sled_to_build import FenceAngle, SledToBuild, SledWish, UprightBoard
from planner.domain.words import Level
from planner.lengths import Grid, Nm, in_unit
from planner.present.table import Column, Group, Kind, Table, setting
from planner.present.views.joints import slope_words
from planner.present.views.notes import findings_table

Row = tuple[str, tuple[str, ...]]
"""What it is, and its figures: short texts, none of which is broken across lines."""

SEEN = (
    "The near end is where you stand for the right fence. Left and right are as seen from there.",
    "Which end of a fence comes towards you is as you see it from where you stand for that fence.",
    "The middle line runs across the floor, square to the slot. The bit stands over it before each pass.",
)
LONG = "long is along the slot"
_LEVEL_WORDS = {
    Level.STOP: "Stop: don't build before this is settled",
    Level.CAUTION: "Cautions",
    Level.NOTE: "Notes",
}


def new_sled(built: SledToBuild, wish: SledWish, boards: Sequence[UprightBoard]) -> tuple[Table, ...]:
    """Parts and places, then building and setting, then what to keep clear, then the findings if there are any.

    Args:
        built: the sled.
        wish: what it was worked out from.
        boards: the pin ends that it takes.
    """
    tables = (
        _parts(built, wish, boards),
        _list_of("Building and setting it", "What to do", built.how_to_set, wish.grid),
        _list_of("Using it: keep clear", "What to heed", built.keep_clear, wish.grid),
        findings_table("To think over first", built.findings, wish.grid, _LEVEL_WORDS),
    )
    return tuple(table for table in tables if any(table.rows))


# --- parts and places ---------------------------------------------------------------------------------------


def _parts(built: SledToBuild, wish: SledWish, boards: Sequence[UprightBoard]) -> Table:
    sheet = _Sheet(built, wish, boards)
    return Table(
        title=f"New sled: {built.sled.name}",
        grid=wish.grid,
        columns=(Column(heading="What", strong=True), Column(heading="Figures", kind=Kind.MARKS)),
        groups=tuple(Group(heading=heading, rows=tuple(rows(sheet))) for heading, rows in _PARTS),
        notes=SEEN,
        cautions=tuple(_read_first(built)),
    )


def _read_first(built: SledToBuild) -> Iterator[str]:
    if built.findings:
        yield f"To think over before you build it: {len(built.findings)}. See the last list."


@dataclass(frozen=True, slots=True)
class _Sheet:
    """What the rows are made from."""

    built: SledToBuild
    wish: SledWish
    boards: Sequence[UprightBoard]

    def show(self, length: Nm) -> str:
        """A length with its unit, exact or with decimals."""
        return f"{setting(length, self.wish.grid)} {self.wish.grid.unit}"

    def size(self, **sizes: Nm) -> tuple[str, ...]:
        """Sizes with the words for them: ``560.0 mm long``, ``200.0 mm high``."""
        return tuple(f"{self.show(length)} {word}" for word, length in sizes.items())

    def greatest(self, of: Callable[[UprightBoard], Nm]) -> tuple[str, ...]:
        """The greatest of a measure, and the first board that has it."""
        most = max(map(of, self.boards))
        return self.show(most), min((board.mark for board in self.boards if of(board) == most), key=reading_order)

    def narrowest_socket(self) -> tuple[str, ...]:
        """The narrowest socket of all boards, on the outside face."""
        sockets = [board.narrowest_socket_nm for board in self.boards if board.narrowest_socket_nm is not None]
        if not sockets:
            return "not laid out", "so not checked against the bit"
        return self.show(min(sockets)), "laid out for this slope and bit"


def _made_for(sheet: _Sheet) -> Iterator[Row]:
    yield "Boards", (str(len({board.mark for board in sheet.boards})),)
    yield "Widest", sheet.greatest(lambda board: board.width_nm)
    yield "Thickest", sheet.greatest(lambda board: board.thickness_nm)
    yield "Longest", sheet.greatest(lambda board: board.length_nm)
    yield "Greatest bit height", sheet.greatest(lambda board: board.bit_height_nm)
    yield "Narrowest socket", sheet.narrowest_socket()


def _floor(sheet: _Sheet) -> Iterator[Row]:
    floor = sheet.built.floor
    yield "Size", (*sheet.size(long=floor.length_nm, wide=floor.width_nm, thick=floor.thickness_nm), LONG)
    yield (
        "From the slot's centre",
        (
            f"{sheet.show(floor.left_nm)} to the left edge",
            f"{sheet.show(floor.right_nm)} to the right edge",
        ),
    )
    yield "Middle line", (f"{sheet.show(floor.middle_to_end_nm)} from each end",)


def _slot(sheet: _Sheet) -> Iterator[Row]:
    stop, bit = sheet.built.floor.middle_to_stop_nm, sheet.wish.bit.diameter_nm
    yield "Width", (sheet.show(bit), "as the bit cuts it")
    yield "Length", (sheet.show(Nm(2 * stop + bit)), "half to each side of the middle line", "closed at both ends")
    yield "Stops, at both ends", (f"{sheet.show(stop)} from the middle line", "to the bit's centre")


def _fences(sheet: _Sheet) -> Iterator[Row]:
    either = sheet.built.right_fence
    yield "Size of each", sheet.size(long=either.length_nm, high=either.height_nm, thick=either.thickness_nm)
    yield (
        "Face of each",
        (
            "looks to the middle line",
            f"{sheet.show(either.face_from_middle_nm)} from it at the slot's centre",
            f"{sheet.show(either.reach_nm)} along it to each end",
        ),
    )
    for fence in sheet.built.fences:
        yield (
            f"{fence.side.capitalize()} fence",
            (
                f"by the {fence.stands_at} end",
                f"you stand at the {fence.operator_at} end",
                f"its {fence.end_towards.upper()} end comes towards you",
            ),
        )


def _angle(sheet: _Sheet) -> Iterator[Row]:
    angle = sheet.built.angle
    yield "Off square", (f"{angle.degrees:.2f}°", f"slope {slope_words(sheet.built.sled.slope)}")
    yield "Rise over run", (f"{sheet.show(angle.rise_nm)} over {sheet.show(angle.run_nm)}",)
    if angle.pin_error_nm:
        yield "By rounding the rise", _rounded(angle, sheet.wish.grid)
    thick = sheet.show(sheet.built.greatest_thickness_nm)
    yield "A test slot leans", (f"{sheet.show(angle.lean_nm)} sideways", f"through a board {thick} thick")


def _rounded(angle: FenceAngle, grid: Grid) -> tuple[str, ...]:
    """What rounding the rise does: a steeper fence makes pins wider on the inside, a flatter one narrower."""
    too, pins = ("steep", "wide") if angle.error_degrees > 0 else ("flat", "narrow")
    return (
        f"{abs(angle.error_degrees):.3f}° too {too}",
        f"pins up to {_small(angle.pin_error_nm, grid)} too {pins} inside",
    )


def _small(length: Nm, grid: Grid) -> str:
    """A length far below the grid, in decimals, rounded up."""
    places = 3 if grid is Grid.MM_TENTH else 4
    steps = ceil(in_unit(length, grid.unit) * 10**places)
    return f"{float(Fraction(steps, 10**places)):.{places}f} {grid.unit}"


def _runner(sheet: _Sheet) -> Iterator[Row]:
    runner = sheet.built.runner
    yield "Size", sheet.size(long=runner.length_nm, wide=runner.width_nm, high=runner.height_nm)
    yield "Centre line", (f"{sheet.show(runner.centre_from_slot_nm)} {runner.side.upper()} of the slot's centre",)


def _guards(sheet: _Sheet) -> Iterator[Row]:
    guard = sheet.built.guard
    yield "Size of each", (*sheet.size(long=guard.length_nm, wide=guard.width_nm, high=guard.height_nm), LONG)
    yield "Place", ("over the slot", "behind each fence", "its end cut to the fence")


def _needs(sheet: _Sheet) -> Iterator[Row]:
    built = sheet.built
    stands = sheet.show(built.cutting_length_needed_nm)
    yield "Bit", (f"{sheet.show(built.sled.bit_nm)} across",)
    yield "The bit's cutting edges", (f"{stands} long, or more",)
    yield "The bit's reach", (f"{stands} out of the table, or more",)
    yield "Table", (f"{sheet.show(built.table_each_way_needed_nm)} each way, or more", "from the bit's centre")
    yield "Hands", (f"{sheet.show(built.hands_clear_nm)} from the slot, or more",)


def _limits(sheet: _Sheet) -> Iterator[Row]:
    sled = sheet.built.sled
    yield "Greatest bit height", (f"{sheet.show(sled.greatest_bit_height_nm)} above the floor",)
    yield "Greatest width", (sheet.show(sled.greatest_width_nm),)
    yield "Greatest upright", (sheet.show(sled.greatest_upright_nm),)
    yield "Made for boards", (f"up to {sheet.show(sheet.built.greatest_thickness_nm)} thick",)


_PARTS: tuple[tuple[str, Callable[[_Sheet], Iterator[Row]]], ...] = (
    ("Made for", _made_for),
    ("Floor", _floor),
    ("Slot", _slot),
    ("Fences, two", _fences),
    ("Angle of the fences", _angle),
    ("Runner, under the floor", _runner),
    ("Guards, two", _guards),
    ("What it needs", _needs),
    ("What it takes once built", _limits),
)


# --- lists --------------------------------------------------------------------------------------------------


def _list_of(title: str, heading: str, texts: Sequence[str], grid: Grid) -> Table:
    return Table(
        title=title,
        grid=grid,
        columns=(Column(heading="No.", kind=Kind.COUNT), Column(heading=heading)),
        groups=(Group(rows=tuple(enumerate(texts, 1))),),
    )
