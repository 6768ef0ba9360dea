"""What all operations of a build are made from: the facts of the plan, and how its parts come together."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from planner.domain.operation import Chapter
from planner.domain.plan import BoardSize, Feature, Joint, OpeningSize, PracticeJoint, SledPlan
from planner.domain.project import Project
from planner.domain.tail import TailSetting
from planner.domain.words import DrawersCut, Role
from planner.plan.made_up import Part, Tenons, parts, tenoned
from planner.plan.put_in import Filled, filled
from planner.plan.ways_in import Wood, touch


@dataclass(frozen=True, slots=True)
class Facts:
    """What the operations are made from."""

    project: Project
    boards: Mapping[str, BoardSize]
    joints: Sequence[Joint]
    features: Sequence[Feature]
    openings: Sequence[OpeningSize]
    sled: SledPlan
    tails: Sequence[TailSetting]
    practice: Sequence[PracticeJoint]


BACKS = frozenset({Role.BACK_PANEL, Role.BACK_BOARD})
"""What closes a carcase behind, once everything in it is fitted."""


_ON_BEFORE_FITTING = frozenset({Role.RUNNER, Role.HANGING_RAIL})
"""What is let into nothing, and yet stands before anything is fitted."""


@dataclass(frozen=True, slots=True)
class Build:
    """The facts, and how the parts come together.

    Attributes:
        parts: by mark.
        part_of: the part that each board is in, by its mark.
        filled: what goes into each glued-up part, by its mark.
        fills: for each board of a drawer or a door, that drawer's or door's mark.
        tenons: which boards are tenoned into which.
        fixed_on: parts that are let into nothing: no rings, not caught, not put in later.
    """

    facts: Facts
    parts: Mapping[str, Part]
    part_of: Mapping[str, Part]
    filled: Mapping[str, Filled]
    fills: Mapping[str, str]
    tenons: Tenons
    fixed_on: tuple[Part, ...]

    @classmethod
    def of(cls, facts: Facts) -> Build:
        """How the parts of a project come together."""
        wood = Wood.of(facts.boards, facts.features)
        tenons = tuple(dict.fromkeys(tenoned(facts.boards, facts.features)))
        found = {part.mark: part for part in parts(facts.boards, facts.project.rings(), tenons)}
        drawers = {drawer.ring.mark for drawer in facts.project.drawers()}
        doors = {part.mark for part in found.values() if part.role is Role.DOOR}
        inside = filled(found, facts.features, wood)
        fills = {board.mark: board.box for board in facts.boards.values() if board.box in drawers}
        fills |= {board: mark for mark in doors for board in with_caught(found[mark], inside)}
        part_of = {board: part for part in found.values() for board in part.boards}
        let_in = {part.mark for each in inside.values() for part in (*each.caught, *(put.part for put in each.later))}
        fixed_on = tuple(part for part in found.values() if part.role is not None and part.mark not in let_in)
        return cls(facts, found, part_of, inside, fills, tenons, fixed_on)

    def boards(self, marks: Iterable[str]) -> list[BoardSize]:
        """Boards by their marks."""
        return [self.facts.boards[mark] for mark in marks]

    def whole(self, part: Part) -> tuple[str, ...]:
        """Marks of the boards of a part, with what is caught in it."""
        return with_caught(part, self.filled)

    def chapter(self, board: str) -> Chapter:
        """When a board is made."""
        measured = self.facts.project.drawers_cut is DrawersCut.TO_MEASURE and board in self.fills
        return Chapter.MEASURED if measured else Chapter.PLANNED

    def standing(self, ring: str) -> tuple[str, ...]:
        """Marks of all boards that stand in a ring before anything is fitted to it: the back is not there yet."""
        later = [put.part for put in self.filled[ring].later if put.part.role not in BACKS]
        strips = [part for part in self.fixed_on if part.box == ring and part.role in _ON_BEFORE_FITTING]
        return (*self.whole(self.parts[ring]), *(mark for part in (*later, *strips) for mark in self.whole(part)))

    def touching(self, part: Iterable[str], among: Iterable[str]) -> tuple[str, ...]:
        """Marks of boards that touch any board of a part."""
        places = [self.facts.boards[mark].place for mark in part]
        return tuple(mark for mark in among if any(touch(place, self.facts.boards[mark].place) for place in places))


def with_caught(part: Part, inside: Mapping[str, Filled]) -> tuple[str, ...]:
    """Marks of the boards of a part, with what is caught in it, and in that."""
    caught = inside[part.mark].caught if part.mark in inside else ()
    return (*part.boards, *(mark for each in caught for mark in with_caught(each, inside)))
