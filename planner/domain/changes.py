"""What is different between two plans: what a maker must know who has one on paper, or on the wood, already.

Only what differs is listed. Boards, joints and settings are matched by mark and by figures, never by their place in a
list.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Generic, TypeVar

from planner.domain.plan import BoardSize, Finding, SledTally
from planner.domain.project import Project
from planner.domain.words import MaterialKind, Side
from planner.lengths import Nm

T = TypeVar("T")


@dataclass(frozen=True, slots=True, kw_only=True)
class Shift(Generic[T]):
    """One thing, before and after."""

    before: T
    after: T

    @property
    def differs(self) -> bool:
        """Whether it isn't as it was."""
        return self.before != self.after


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared(Generic[T]):
    """Things of one kind in two plans: those that came, those that went, and those that are not as they were."""

    new: tuple[T, ...]
    gone: tuple[T, ...]
    changed: tuple[Shift[T], ...]

    @property
    def any(self) -> bool:
        """Whether there is any difference."""
        return bool(self.new or self.gone or self.changed)


@dataclass(frozen=True, slots=True, kw_only=True)
class Wood:
    """How much wood there is in some boards at their finished sizes: exact, waste not included.

    Attributes:
        boards: how many.
        length_nm: of all of them, end to end.
        area_nm2: of one face of each.
        volume_nm3: of all of them.
    """

    boards: int = 0
    length_nm: int = 0
    area_nm2: int = 0
    volume_nm3: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class StockChange:
    """Another amount of one material in one thickness."""

    material: str
    kind: MaterialKind
    thickness_nm: Nm
    before: Wood
    after: Wood


@dataclass(frozen=True, slots=True, kw_only=True)
class SettingChange:
    """A setting of a sled that came, went, or is used for other board ends than before, or for other marks on them.

    Attributes:
        before: how many board ends were cut so; 0 when the setting is new.
        after: how many are now; 0 when it is gone.
    """

    sled: str
    slope: Fraction
    bit_nm: Nm
    bit_height_nm: Nm
    fence: Side
    before: int
    after: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Changes:
    """Everything that differs between two plans.

    Attributes:
        project: what was planned.
        boards: by mark.
        joints_anew: marks of joints, there before and after, that are to be laid out anew.
        cuts_anew: marks of boards, there before and after, whose grooves, rabbets or housings are not as they were.
        stock: materials and thicknesses of which another amount is needed.
        settings: settings of sleds, in the order of the plan after, then those that are gone.
        tally: what it takes to make all sled cuts.
        operations: how many operations there are.
        findings: of the checks, by rule and marks; a changed one has other figures.
    """

    project: Shift[Project]
    boards: Compared[BoardSize]
    joints_anew: tuple[str, ...]
    cuts_anew: tuple[str, ...]
    stock: tuple[StockChange, ...]
    settings: tuple[SettingChange, ...]
    tally: Shift[SledTally]
    operations: Shift[int]
    findings: Compared[Finding]

    @property
    def any(self) -> bool:
        """Whether anything differs for somebody with the plan in hand; a new title alone doesn't."""
        lists = (self.joints_anew, self.cuts_anew, self.stock, self.settings)
        return any(lists) or self.boards.any or self.findings.any or self.tally.differs or self.operations.differs
