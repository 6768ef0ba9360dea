"""The front of a carcase drawn in characters: how it is divided, and what each space holds."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from planner.derive.spaces import DoorPlace, Spaces, outside_of, spaces
from planner.domain.carcase import Carcase
from planner.domain.drawer import Drawer
from planner.domain.plan import OpeningSize
from planner.domain.solid import RIGHT, UP, Direction, Solid
from planner.domain.space import LooseShelves
from planner.lengths import Grid

WIDEST = 60
"""Characters across; a drawing that is higher than wide is drawn narrower."""
TALLEST = 24
"""Lines from top to bottom."""
SQUARE = 2
"""A character is about twice as high as it is wide."""

_UP, _DOWN, _LEFT, _RIGHT = 1, 2, 4, 8
_CORNERS = {
    0: " ", _UP: "│", _DOWN: "│", _UP | _DOWN: "│", _LEFT: "─", _RIGHT: "─", _LEFT | _RIGHT: "─",
    _DOWN | _RIGHT: "┌", _DOWN | _LEFT: "┐", _UP | _RIGHT: "└", _UP | _LEFT: "┘", _UP | _DOWN | _RIGHT: "├",
    _UP | _DOWN | _LEFT: "┤", _DOWN | _LEFT | _RIGHT: "┬", _UP | _LEFT | _RIGHT: "┴",
    _UP | _DOWN | _LEFT | _RIGHT: "┼",
}  # fmt: skip
"""The line to draw where lines meet, by the ways in which they go on."""


def front(carcase: Carcase, grid: Grid) -> tuple[str, ...]:
    """Lines of text that show the front, the top first.

    Raises:
        PlanError: the sizes don't add up.
    """
    return _Drawing(outside_of(carcase)).of(spaces(carcase, grid))


class _Drawing:
    """A carcase's front, scaled to lines and characters."""

    def __init__(self, outside: Solid) -> None:
        self.outside = outside
        wide, high = outside.size(RIGHT), outside.size(UP)
        self.columns = min(WIDEST, max(8, round(TALLEST * SQUARE * wide / high)))
        self.lines = min(TALLEST, max(4, round(self.columns * high / wide / SQUARE)))
        self.ways: dict[tuple[int, int], int] = {}
        self.words: dict[tuple[int, int], str] = {}

    def of(self, found: Spaces) -> tuple[str, ...]:
        """The whole drawing; boards are drawn as lines, each through its middle."""
        middles = {each.mark: each.place for each in found.dividers}
        self._box(0, self.columns, 0, self.lines)
        for opening in found.openings:
            (left, right), (low, high) = opening.place.right, opening.place.up
            sides = [_middle(middles, mark, RIGHT, own) for mark, own in ((opening.left, left), (opening.right, right))]
            levels = [_middle(middles, mark, UP, own) for mark, own in ((opening.above, high), (opening.below, low))]
            columns = self._column(sides[0], 0), self._column(sides[1], self.columns)
            lines = self._line(levels[0], 0), self._line(levels[1], self.lines)
            self._box(*columns, *lines)
            self._write(_words(opening, found.doors), *columns, sum(lines) // 2)
        rows = range(self.lines + 1)
        return tuple("".join(self._at(row, column) for column in range(self.columns + 1)).rstrip() for row in rows)

    def _column(self, place: int | None, outermost: int) -> int:
        return outermost if place is None else round(place * self.columns / self.outside.size(RIGHT))

    def _line(self, place: int | None, outermost: int) -> int:
        whole = self.outside.size(UP)
        return outermost if place is None else round((whole - place) * self.lines / whole)

    def _box(self, left: int, right: int, top: int, bottom: int) -> None:
        for column in range(left, right + 1):
            for line in (top, bottom):
                self._add(line, column, (_LEFT if column > left else 0) | (_RIGHT if column < right else 0))
        for line in range(top, bottom + 1):
            for column in (left, right):
                self._add(line, column, (_UP if line > top else 0) | (_DOWN if line < bottom else 0))

    def _add(self, line: int, column: int, ways: int) -> None:
        self.ways[line, column] = self.ways.get((line, column), 0) | ways

    def _write(self, text: str, left: int, right: int, line: int) -> None:
        room = right - left - 1
        shown = text if len(text) <= room else text[:room]
        start = left + 1 + (room - len(shown)) // 2
        for offset, letter in enumerate(shown):
            self.words[line, start + offset] = letter

    def _at(self, line: int, column: int) -> str:
        if (line, column) in self.words:
            return self.words[line, column]
        return _CORNERS[self.ways.get((line, column), 0)]


def _middle(dividers: Mapping[str, Solid], mark: str | None, way: Direction, own: int) -> int | None:
    """Middle of the divider beside a space; None beside the ring, and the space's own edge where nothing divides."""
    if mark is None:
        return own
    return sum(dividers[mark].along(way)) // 2 if mark in dividers else None


def _words(opening: OpeningSize, doors: Iterable[DoorPlace]) -> str:
    """What an opening holds, and whether a door stands before it."""
    return " ".join(_told(opening, doors))


def _told(opening: OpeningSize, doors: Iterable[DoorPlace]) -> Iterator[str]:
    held = opening.space.holds
    if isinstance(held, Drawer):
        yield held.ring.mark
    if isinstance(held, LooseShelves):
        yield f"{held.count} shelves" if held.count > 1 else "1 shelf"
    whole = {opening.mark, opening.carcase}
    if any(each.mark in whole or opening.mark.startswith(f"{each.mark}.") for each in doors):
        yield "(door)"
