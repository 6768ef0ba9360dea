"""What is made up from several boards before it goes anywhere: rings, frames, stands.

Corner joints and tenons make boards one: they are glued up together. Everything else is a part of a single board.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from planner.domain.plan import BoardSize, Feature
from planner.domain.ring import Ring
from planner.domain.solid import Solid
from planner.domain.words import FeatureKind, Role
from planner.plan.ways_in import meet, place_in_piece


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A board, or boards that are made up before they go anywhere.

    Attributes:
        mark: of the ring, of the board, or of the frame: ``D1``, ``D1-rail``, ``D1-frame``, ``C-2-door``.
        box: mark of the box, carcase or drawer that it belongs to; of a ring its own.
        role: what it is; None of a ring.
        boards: marks of its boards, in the order of the project.
    """

    mark: str
    box: str
    role: Role | None
    boards: tuple[str, ...]

    @property
    def glued_up(self) -> bool:
        """Whether it is glued up from several boards."""
        return len(self.boards) > 1


Tenons = Sequence[tuple[str, str]]
"""Marks of boards with tenons, each with that of a board that a tenon of it goes into."""


def parts(boards: Mapping[str, BoardSize], rings: Iterable[Ring], tenons: Tenons) -> tuple[Part, ...]:
    """All parts, in the order of the project; each board is in one of them."""
    in_ring = {board.mark: ring.mark for ring in rings for board in ring.boards}
    groups = _Groups(boards)
    corners: dict[str, str] = {}
    for mark, ring in in_ring.items():
        groups.join(corners.setdefault(ring, mark), mark)
    for one, other in tenons:
        groups.join(one, other)
    return tuple(_part(boards, marks, in_ring) for marks in groups.all())


def tenoned(boards: Mapping[str, BoardSize], features: Sequence[Feature]) -> Iterator[tuple[str, str]]:
    """Boards with tenons, each with what they go into: a board of the same box that is cut where the tenon is."""
    hollows: dict[str, list[tuple[str, Solid]]] = {}
    for each in features:
        if each.kind in {FeatureKind.GROOVE, FeatureKind.MORTISE}:
            board = boards[each.board]
            hollows.setdefault(board.box, []).append((board.mark, place_in_piece(board, each)))
    for each in features:
        if each.kind is FeatureKind.TENON:
            block = place_in_piece(boards[each.board], each)
            in_box = hollows.get(boards[each.board].box, ())
            yield from ((each.board, host) for host, hollow in in_box if host != each.board and meet(block, hollow))


class _Groups:
    """Boards that are one."""

    def __init__(self, boards: Iterable[str]) -> None:
        self.of = {mark: [mark] for mark in boards}

    def join(self, one: str, other: str) -> None:
        here, there = self.of[one], self.of[other]
        if here is not there:
            here += there
            self.of.update(dict.fromkeys(there, here))

    def all(self) -> Iterator[tuple[str, ...]]:
        place = {mark: number for number, mark in enumerate(self.of)}
        seen: set[str] = set()
        for marks in self.of.values():
            if marks[0] not in seen:
                seen.update(marks)
                yield tuple(sorted(marks, key=place.__getitem__))


_WHOLES = {"door": Role.DOOR, "lid": Role.LID, "back": Role.BACK_PANEL}
"""What is made of stiles, rails and panels, by the last word of its mark."""

_NAMELESS = {Role.LEG: ("stand", Role.LEG), Role.RUNNER: ("frame", Role.RAIL)}
"""What has no mark of its own, by a board that only it has: its last word, and what it is."""


def _part(boards: Mapping[str, BoardSize], marks: tuple[str, ...], in_ring: Mapping[str, str]) -> Part:
    first = boards[marks[0]]
    ring = next((in_ring[mark] for mark in marks if mark in in_ring), None)
    if ring:
        return Part(mark=ring, box=ring, role=None, boards=marks)
    if len(marks) == 1:
        return Part(mark=first.mark, box=first.box, role=first.role, boards=marks)
    owner = first.mark.rpartition("-")[0]
    for role in (boards[mark].role for mark in marks):
        if role in _NAMELESS:
            word, whole = _NAMELESS[role]
            return Part(mark=f"{owner}-{word}", box=first.box, role=whole, boards=marks)
    made_as = _WHOLES.get(owner.rpartition("-")[2].rstrip("0123456789"))
    return Part(mark=owner if made_as else first.mark, box=first.box, role=made_as or first.role, boards=marks)
