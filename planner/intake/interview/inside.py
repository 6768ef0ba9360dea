"""The inside of a case: how it is divided, and what each space holds."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from planner.intake import values
from planner.intake.interview.asking import WHOLE, Asking
from planner.intake.interview.question import Script
from planner.intake.interview.sums import down, either, near
from planner.lengths import Nm

DEEPEST = 3
"""So many columns may stand in each other; more asks for a project file."""
MOST_COLUMNS = 12

DRAWER, SIDE_BY_SIDE, LOOSE, FIXED, NOTHING = "drawer", "side by side", "loose shelves", "fixed shelves", "nothing"
EQUAL, STEP, RATIO, LISTED = "equal", "step", "ratio", "listed"
NO_DOORS, PAIR = "none", "pair"


@dataclass(frozen=True, slots=True, kw_only=True)
class Tier:
    """A space above or below others.

    Attributes:
        holds: a drawer, loose shelves, nothing, or columns.
        height: clear; None takes its share.
        tall: about how high it comes out.
        shelves: how many loose ones.
    """

    holds: str
    height: Nm | None = None
    tall: Nm
    shelves: int = 0
    columns: tuple[Column, ...] = ()
    doors: str = NO_DOORS


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A space beside others.

    Attributes:
        width: clear; None takes its share.
        wide: about how wide it comes out.
        heights: how its tiers share the height.
        is_fixed: whether fixed shelves part them.
    """

    width: Nm | None
    wide: Nm
    tiers: tuple[Tier, ...]
    heights: str = EQUAL
    step: Nm | None = None
    ratio: Fraction | None = None
    is_fixed: bool = False

    def everywhere(self) -> Iterator[Column]:
        """This column and all within it."""
        yield self
        for tier in self.tiers:
            for column in tier.columns:
                yield from column.everywhere()


@dataclass(frozen=True, slots=True, kw_only=True)
class Inside:
    """The whole inside of a case."""

    columns: tuple[Column, ...]
    doors: str

    def all_columns(self) -> Iterator[Column]:
        """All columns, outer before inner."""
        for column in self.columns:
            yield from column.everywhere()

    def tiers(self) -> Iterator[Tier]:
        """All tiers."""
        for column in self.all_columns():
            yield from column.tiers

    def drawers(self) -> Iterator[tuple[Nm, Nm]]:
        """About how wide and high the space of each drawer is."""
        for column in self.all_columns():
            yield from ((column.wide, tier.tall) for tier in column.tiers if tier.holds == DRAWER)

    def leaves(self, whole: tuple[Nm, Nm]) -> Iterator[tuple[Nm, Nm]]:
        """About how wide and high each door is, in a case of this clear width and height."""
        spaces = [(column.wide, tier.tall, tier.doors) for column in self.all_columns() for tier in column.tiers]
        for wide, tall, doors in ((*whole, self.doors), *spaces):
            if doors != NO_DOORS:
                yield Nm(wide // 2 if doors == PAIR else wide), tall

    @property
    def has_drawers(self) -> bool:
        """Whether there is a drawer."""
        return any(True for _ in self.drawers())

    @property
    def has_partitions(self) -> bool:
        """Whether columns stand side by side."""
        return len(self.columns) > 1 or any(len(tier.columns) > 1 for tier in self.tiers())

    @property
    def has_columns_in_tiers(self) -> bool:
        """Whether a tier is divided into columns."""
        return any(tier.columns for tier in self.tiers())


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """What is to be divided: about how wide and high it is, and how thick a divider is.

    Attributes:
        may_have_doors: whether a door may be asked for before a part of it.
        level: how many columns it stands in.
    """

    wide: Nm
    high: Nm
    divider: Nm
    may_have_doors: bool = True
    level: int = 0


def inside(asking: Asking, room: Room) -> Script[Inside]:
    """Ask how a case is divided, from the whole to the parts."""
    count, widths = yield from _columns(asking, room)
    doors = yield from asking.choice("whole_doors", NO_DOORS)
    within = replace(room, may_have_doors=doors == NO_DOORS)
    columns = yield from _each_column(asking, within, count, widths)
    return Inside(columns=columns, doors=doors)


# --- columns ------------------------------------------------------------------------------------------------


def _columns(asking: Asking, room: Room, usual: int = 1) -> Script[tuple[int, tuple[Nm | None, ...]]]:
    """How many columns, and the width of each that has one of its own."""
    count = yield from asking.count("columns", usual, MOST_COLUMNS)
    if count == 1 or (yield from asking.yes("equal_widths", usual=True)):
        return count, (None,) * count
    each = down(_shared(room.wide, room.divider, count), asking.unit)
    widths = yield from asking.lengths("widths", (*(each,) * (count - 1), None))
    return count, widths


def _each_column(asking: Asking, room: Room, count: int, widths: tuple[Nm | None, ...]) -> Script[tuple[Column, ...]]:
    columns: list[Column] = []
    clear = room.wide - (count - 1) * room.divider
    for number, (width, wide) in enumerate(zip(widths, _about(clear, widths), strict=True), start=1):
        named = f"column {number}" if asking.place == WHOLE else f"column {number} of {asking.place}"
        place = asking.place if count == 1 else named
        own = replace(room, wide=wide, level=room.level + 1)
        columns.append((yield from _column(asking.inside(f"c{number}", place), own, width)))
    return tuple(columns)


def _column(asking: Asking, room: Room, width: Nm | None) -> Script[Column]:
    holds = yield from asking.choice("holds", "drawers")
    if holds == "several":
        return (yield from _several(asking, room, width))
    if holds == "drawers":
        usual = max(1, round(Fraction(room.high, either(asking.unit, "6 1/2 in", "165 mm"))))
        most = values.GREATEST_DRAWERS
        count = yield from asking.count("drawers", min(usual, most), most)
        tier = Tier(holds=DRAWER, tall=room.high)
    elif holds == FIXED:
        count = 1 + (yield from asking.count("shelves", 2, values.GREATEST_SHELVES - 1))
        tier = Tier(holds=NOTHING, tall=room.high)
    else:
        return (yield from _one_space(asking, room, width, holds))
    tiers, heights = yield from _heights(asking, room, [tier] * count)
    return replace(heights, width=width, wide=room.wide, tiers=tiers, is_fixed=holds == FIXED)


def _one_space(asking: Asking, room: Room, width: Nm | None, holds: str) -> Script[Column]:
    """A column that is not divided."""
    shelves = 0
    if holds == LOOSE:
        shelves = yield from asking.count("shelves", 2, values.GREATEST_SHELVES)
    doors = yield from _doors(asking, room)
    tier = Tier(holds=holds, tall=room.high, shelves=shelves, doors=doors)
    return Column(width=width, wide=room.wide, tiers=(tier,))


def _doors(asking: Asking, room: Room) -> Script[str]:
    if not room.may_have_doors:
        return NO_DOORS
    return (yield from asking.choice("doors", NO_DOORS))


# --- tiers --------------------------------------------------------------------------------------------------


def _several(asking: Asking, room: Room, width: Nm | None) -> Script[Column]:
    """A column of different things above each other: first their heights, then each."""
    count = yield from asking.count("tiers", 2, values.GREATEST_TIERS, least=2)
    empty, heights = yield from _heights(asking, room, [Tier(holds=NOTHING, tall=room.high)] * count)
    tiers: list[Tier] = []
    for number, tier in enumerate(empty, start=1):
        named = f"tier {number}" if asking.place == WHOLE else f"tier {number} of {asking.place}"
        own = replace(room, high=tier.tall)
        tiers.append((yield from _tier(asking.inside(f"t{number}", named), own, tier)))
    return replace(heights, width=width, wide=room.wide, tiers=tuple(tiers))


def _tier(asking: Asking, room: Room, empty: Tier) -> Script[Tier]:
    words = [DRAWER, *([SIDE_BY_SIDE] if room.level < DEEPEST else []), LOOSE, NOTHING]
    holds = yield from asking.choice("tier_holds", DRAWER, words)
    if holds == DRAWER:
        return replace(empty, holds=holds)
    if holds == SIDE_BY_SIDE:
        count, widths = yield from _columns(asking, room, usual=2)
        columns = yield from _each_column(asking, room, count, widths)
        return replace(empty, holds=holds, columns=columns)
    shelves = 0
    if holds == LOOSE:
        shelves = yield from asking.count("shelves", 1, values.GREATEST_SHELVES)
    doors = yield from _doors(asking, room)
    return replace(empty, holds=holds, shelves=shelves, doors=doors)


def _heights(asking: Asking, room: Room, tiers: list[Tier]) -> Script[tuple[tuple[Tier, ...], Column]]:
    """The tiers with their heights, and a column that says how they share what is there."""
    column = Column(width=None, wide=room.wide, tiers=())
    count = len(tiers)
    if count == 1:
        return tuple(tiers), column
    each = _shared(room.high, room.divider, count)
    rule = yield from asking.choice("heights", EQUAL)
    if rule == LISTED:
        heights = yield from asking.lengths("list", (*(down(each, asking.unit),) * (count - 1), None))
        clear = room.high - (count - 1) * room.divider
        told = zip(tiers, heights, _about(clear, heights), strict=True)
        return tuple(replace(tier, height=height, tall=tall) for tier, height, tall in told), column
    shares = [each] * count
    if rule == STEP:
        step = yield from asking.length("step", near(each / (2 * count), asking.unit, "coarse"))
        column = replace(column, heights=STEP, step=step)
        shares = [each + step * (number - Fraction(count - 1, 2)) for number in range(count)]
    elif rule == RATIO:
        ratio = yield from asking.ratio("ratio", Fraction(115, 100))
        column = replace(column, heights=RATIO, ratio=ratio)
        whole = sum(ratio**number for number in range(count))
        shares = [each * count * ratio**number / whole for number in range(count)]
    return tuple(replace(tier, tall=Nm(max(1, int(share)))) for tier, share in zip(tiers, shares, strict=True)), column


def _shared(whole: Nm, divider: Nm, count: int) -> Fraction:
    """What each gets of equal parts; never less than nothing."""
    return max(Fraction(whole - (count - 1) * divider, count), Fraction(1))


def _about(clear: int, sizes: tuple[Nm | None, ...]) -> list[Nm]:
    """About how large each part comes out, of those that have a size and those that share the rest."""
    left = clear - sum(size for size in sizes if size is not None)
    rest = Nm(max(1, left // max(1, sizes.count(None))))
    return [rest if size is None else size for size in sizes]
