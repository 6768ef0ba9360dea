"""The slip of paper that a maker types a sled to be built from: every measure as written, read all at once."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from enum import StrEnum
from types import MappingProxyType
from typing import TypeVar

from planner.domain.sled_to_build import ClampRoom, MitreSlot, SledWish, StraightBit, UprightBoard
from planner.domain.words import Side
from planner.errors import Problem
from planner.lengths import Grid, LengthError, Nm, Unit, read_length

Read = TypeVar("Read")
Word = TypeVar("Word", bound=StrEnum)

MEASURES = MappingProxyType(
    {
        "slope": "Slope of the fences: 1:8, or degrees off square such as 7 deg.",
        "bit": "Diameter of the straight bit, measured across its cutting edges.",
        "cutting": "Length of the bit's cutting edges, from the tip to where they end.",
        "reach": "Highest the bit's tip can stand above the table, its shank gripped as the router's manual asks.",
        "mitre_width": "Width of the mitre slot in the table.",
        "mitre_depth": "Depth of the mitre slot.",
        "mitre_from_bit": "From the bit's centre to the mitre slot's centre line, square to it: measure from bit to "
        "nearer edge, then add half the bit and half the slot.",
        "mitre_side": "Side of the bit on which the mitre slot lies, left or right, for you at the near end of the "
        "table: where you want to stand for the right fence.",
        "table": "From the bit's centre to the nearer end of the table, along the mitre slot.",
        "floor": "Thickness of the sheet for the floor.",
        "fence": "Thickness of the wood for the two fences.",
        "beside": "Room for a stop block on the fence, beside the widest board.",
        "before": "Room for a clamp and fingers before the board's outside face.",
        "behind": "Room for a clamp behind the fence.",
    }
)
"""Each measure and how it is taken; what to type for it is its name with hyphens."""

A_BOARD = "5 1/2 x 3/4 x 30, mate 1/2"
GREATEST_NAME = 40
"""As long as a name in a project file may be."""

_PARTS = ("width", "thickness", "length", "mate's thickness")
_UNREAD = Nm(0)
"""Stands for a length that couldn't be read; never used, since its problem is told first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SledSlip:
    """What a maker typed for a sled; None where nothing was.

    Attributes:
        boards: pin boards, as ``width x thickness x length, mate thickness``, in place of a project.
        units: unit of bare numbers, with such boards.
        proud: how far their joints stand out.
        like: sled of the project whose joints are meant.
        name: of the new sled.

    The other fields are explained in ``MEASURES``.
    """

    boards: tuple[str, ...] = ()
    units: str | None = None
    proud: str | None = None
    like: str | None = None
    name: str | None = None
    slope: str | None = None
    bit: str | None = None
    cutting: str | None = None
    reach: str | None = None
    mitre_width: str | None = None
    mitre_depth: str | None = None
    mitre_from_bit: str | None = None
    mitre_side: str | None = None
    table: str | None = None
    floor: str | None = None
    fence: str | None = None
    beside: str | None = None
    before: str | None = None
    behind: str | None = None


@dataclass(slots=True)
class Reading:
    """A slip being read.

    Attributes:
        unit: unit of bare numbers.
        wrong: all that couldn't be read so far.
    """

    slip: SledSlip
    unit: Unit
    wrong: list[Problem] = field(default_factory=list)

    def said(self, name: str) -> str | None:
        """What was typed for an option."""
        text: str | None = getattr(self.slip, name)
        return text

    def refuse(self, where: str, what: str, remedy: str) -> None:
        """Note a problem; where is an option as it is typed."""
        self.wrong.append(Problem(where=where, what=what, remedy=remedy))

    def missing(self, name: str) -> None:
        """Note that a measure must be given."""
        self.refuse(typed(name), "is missing.", MEASURES[name])

    def length(self, name: str, usual: Nm | None = None, *, zero: bool = False) -> Nm:
        """The length typed for an option; the usual one where nothing was."""
        said = self.said(name)
        if said is not None:
            return self._length(typed(name), said, zero=zero)
        if usual is None:
            self.missing(name)
        return usual or _UNREAD

    def _length(self, where: str, said: str, *, zero: bool = False) -> Nm:
        try:
            return read_length(said, self.unit, zero=zero)
        except LengthError as error:
            self.refuse(where, error.what, error.remedy)
            return _UNREAD

    def word(self, name: str, otherwise: Word, how: str) -> Word:
        """One of a few words; ``otherwise`` stands for it where it couldn't be read."""
        said = self.said(name)
        for word in type(otherwise):
            if said is not None and said.strip().lower() == word:
                return word
        self.refuse(typed(name), "is missing." if said is None else f"{_quoted(said)} is not known.", how)
        return otherwise

    def slope(self, usual: int | None) -> int:
        """Run of the slope in millionths; the usual one where none was typed."""
        from planner.intake.slope import read_slope

        said = self.slip.slope
        if said is not None:
            return self._taken("slope", read_slope, said.strip(), 0)
        if usual is None:
            self.missing("slope")
        return usual or 0

    def name(self, usual: str) -> str:
        """Name of the new sled, fit for a project file."""
        from planner.intake.values import name

        said = usual if self.slip.name is None else self.slip.name
        if not 0 < len(said) <= GREATEST_NAME:
            self.refuse("--name", f"{_quoted(said)} is no name.", f"Give it 1 to {GREATEST_NAME} characters.")
        return self._taken("name", name, said, said)

    def _taken(self, name: str, read: Callable[[str], Read], said: str, otherwise: Read) -> Read:
        """What a reader of project files makes of a text; something else where it refuses."""
        from planner.intake.refusal import RefusalError

        try:
            return read(said)
        except RefusalError as error:
            self.refuse(typed(name), error.what, error.remedy)
            return otherwise

    # --- what the measures make together --------------------------------------------------------------------

    def wish(self, *, name: str, run_micro: int, grid: Grid) -> SledWish:
        """The sled wished for."""
        return SledWish(
            name=name,
            run_micro=run_micro,
            bit=StraightBit(
                diameter_nm=self.length("bit"),
                cutting_length_nm=self.length("cutting"),
                reach_nm=self.length("reach"),
            ),
            mitre=MitreSlot(
                width_nm=self.length("mitre_width"),
                depth_nm=self.length("mitre_depth"),
                from_bit_nm=self.length("mitre_from_bit"),
                side=self.word("mitre_side", Side.LEFT, MEASURES["mitre_side"]),
            ),
            table_each_way_nm=self.length("table"),
            floor_thickness_nm=self.length("floor"),
            fence_thickness_nm=self.length("fence"),
            clamps=self._clamps(grid),
            grid=grid,
        )

    def _clamps(self, grid: Grid) -> ClampRoom:
        from planner.derive.sled_practice import usual_clamps

        usual = usual_clamps(grid)
        return ClampRoom(
            beside_nm=self.length("beside", usual.beside_nm, zero=True),
            before_nm=self.length("before", usual.before_nm),
            behind_nm=self.length("behind", usual.behind_nm, zero=True),
        )

    def boards(self) -> list[UprightBoard]:
        """The boards typed, in order, called board 1, board 2 and so on."""
        from planner.intake.usual import usual_length

        proud = self.length("proud", usual_length("proud", self.unit), zero=True)
        return [self._board(number, said, proud) for number, said in enumerate(self.slip.boards, 1)]

    def _board(self, number: int, said: str, proud: Nm) -> UprightBoard:
        where = f"--board, board {number}"
        texts = _board_texts(said)
        if not texts:
            how = f'Write width x thickness x length, and its mate\'s thickness: "{A_BOARD}".'
            self.refuse(where, f"{_quoted(said)} is no board.", how)
        sizes = [self._length(f"{where}, {part}", text) for part, text in zip(_PARTS, texts, strict=False)]
        width, thickness, length, mate = sizes or [_UNREAD] * len(_PARTS)
        return UprightBoard(
            mark=f"board {number}",
            width_nm=width,
            thickness_nm=thickness,
            length_nm=length,
            bit_height_nm=Nm(mate + proud),
        )


def _board_texts(said: str) -> list[str]:
    """Width, thickness, length and mate of a board as typed; nothing where these are not what was typed."""
    sizes, _, mate = said.lower().partition("mate")
    texts = [*re.split("[x×]", sizes.strip().removesuffix(",")), mate]
    return texts if len(texts) == len(_PARTS) and all(map(str.strip, texts)) else []


def typed(name: str) -> str:
    """An option as it is typed."""
    return f"--{name.replace('_', '-')}"


def _quoted(said: str) -> str:
    from planner.intake.refusal import quote

    return quote(said)
