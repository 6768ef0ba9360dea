"""How an interview begins: what is to be made, how it is measured, and what wood there is."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from planner.domain.sled import Sled
from planner.domain.words import Hardness
from planner.intake.interview.asking import Asking
from planner.intake.interview.kinds import FIRST, KINDS, Start
from planner.intake.interview.question import Script
from planner.intake.interview.sums import either
from planner.intake.sharing import Table
from planner.lengths import Nm, Unit

GREATEST_TITLE = 80
NONE = "none"
PIECE, WOOD, SIZES = "The piece", "Wood", "Sizes"
"""The first parts of an interview; from the sizes on there is something to try."""
_UNITS = {"inches": Unit.INCH, "millimetres": Unit.MM}


@dataclass(frozen=True, slots=True, kw_only=True)
class Shop:
    """What there is before the interview begins.

    Attributes:
        sleds: those that the store keeps.
        projects: names of the projects in the store.
        unit: in which sizes were given the last time.
    """

    sleds: tuple[Sled, ...] = ()
    projects: frozenset[str] = frozenset()
    unit: Unit = Unit.INCH


@dataclass(frozen=True, slots=True, kw_only=True)
class Stock:
    """The wood of a piece.

    Attributes:
        timber: what shows.
        second: what is hidden; the same, if there is no other.
        sheet: sheet goods, if there are any.
        thickness: of the boards of the case or box.
        hardness: of each timber.
    """

    timber: str
    second: str
    sheet: str | None
    thickness: Nm
    hardness: Mapping[str, Hardness]

    @property
    def solid(self) -> tuple[str, ...]:
        """The timbers, each once."""
        return tuple(dict.fromkeys((self.timber, self.second)))

    @property
    def everything(self) -> tuple[str, ...]:
        """All materials."""
        return (*self.solid, *([] if self.sheet is None else [self.sheet]))

    @property
    def is_soft(self) -> bool:
        """Whether the boards that show cut like a soft wood."""
        return self.hardness[self.timber] is Hardness.SOFT

    def tables(self) -> Table:
        """The materials of a project file."""
        soft = {name: {"hardness": "soft"} for name, how in self.hardness.items() if how is Hardness.SOFT}
        sheet = {} if self.sheet is None else {self.sheet: {"kind": "sheet"}}
        return {**{name: soft.get(name, {}) for name in self.solid}, **sheet}


def what_to_make() -> Script[Start]:
    """Ask for the kind of piece."""
    asking = Asking(unit=Unit.MM, start={}, section=PIECE, heard={})
    tells = {word: start.tells for word, start in KINDS.items()}
    return KINDS[(yield from asking.choice_of("kind", tells, FIRST, fresh=True))]


def name_and_unit(start: Start, shop: Shop) -> Script[tuple[str, Unit]]:
    """Ask what it is called and how it is measured."""
    asking = Asking(unit=Unit.MM, start={}, section=PIECE, heard={})
    name = yield from asking.text("name", _free(start.title, shop.projects), GREATEST_TITLE)
    usual = next(word for word, unit in _UNITS.items() if unit is shop.unit)
    return name, _UNITS[(yield from asking.choice("units", usual))]


def wood(asking: Asking) -> Script[Stock]:
    """Ask for timbers, sheet goods and the thickness of the boards."""
    timber = yield from asking.text("timber", "ash", taken=(NONE,))
    hardness = {timber: (yield from _hardness(asking, "first", timber))}
    second = yield from asking.text("second", NONE)
    second = timber if second == NONE else second
    if second not in hardness:
        hardness[second] = yield from _hardness(asking, "second", second)
    sheet = yield from asking.text("sheet", NONE, taken=hardness)
    thickness = yield from asking.about(SIZES).length("thickness", either(asking.unit, "3/4 in", "20 mm"))
    return Stock(
        timber=timber,
        second=second,
        sheet=None if sheet == NONE else sheet,
        thickness=thickness,
        hardness=MappingProxyType(hardness),
    )


def _hardness(asking: Asking, step: str, timber: str) -> Script[Hardness]:
    """How a timber cuts: asked only when its name doesn't say it."""
    words = set(timber.casefold().split())
    for hardness, names in _KNOWN.items():
        if words & names:
            return hardness
    return Hardness((yield from asking.inside(step, timber).choice("hardness", "hard")))


_KNOWN = {
    Hardness.SOFT: frozenset({
        "pine", "fir", "spruce", "larch", "cedar", "cypress", "hemlock", "redwood", "poplar", "basswood", "lime",
        "linden", "aspen", "willow",
    }),
    Hardness.HARD: frozenset({
        "ash", "beech", "birch", "cherry", "chestnut", "elm", "hickory", "hornbeam", "mahogany", "maple", "oak",
        "pear", "plum", "apple", "sapele", "sycamore", "teak", "walnut",
    }),
}  # fmt: skip
"""Timbers of which it is known how they cut. Poplar, lime and the like are hardwoods by name, and cut like soft ones.

Common practice, no source.
"""


def _free(title: str, taken: Iterable[str]) -> str:
    """The title, with a number if a project has that name already."""
    names = set(taken)
    if title not in names:
        return title
    return next(name for number in range(2, len(names) + 3) if (name := f"{title} {number}") not in names)
