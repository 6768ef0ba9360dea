"""Where boards may be, when each cut only says "within me": bounds on differences of places, solved exactly.

Every cut and joint bounds how far one board may be from another along one axis. Shortest paths through these bounds
give the least and the greatest place of every board; a circle of bounds that leaves less than nothing is a
contradiction, and the boards on it are those that disagree.
"""

from __future__ import annotations

from collections import defaultdict, deque
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

Room = tuple[int | None, int | None]
"""Least and greatest place; None where nothing stops it."""


@dataclass(frozen=True, slots=True)
class Bound:
    """``place[to] − place[start] ≤ most``, because of ``why``."""

    start: str
    to: str
    most: int
    why: str


@dataclass(frozen=True, slots=True)
class Conflict:
    """A circle of bounds that can't all hold, and by how much they miss each other."""

    short_by: int
    bounds: tuple[Bound, ...]

    @property
    def marks(self) -> tuple[str, ...]:
        """The boards on the circle."""
        return tuple(dict.fromkeys(bound.start for bound in self.bounds))

    @property
    def why(self) -> str:
        """The cuts that disagree."""
        return "; ".join(dict.fromkeys(bound.why for bound in self.bounds))


@dataclass(slots=True)
class Puzzle:
    """All bounds along one axis."""

    bounds: list[Bound] = field(default_factory=list)

    def within(self, host: str, guest: str, room: Room, why: str) -> None:
        """The guest is at least ``room[0]`` and at most ``room[1]`` further than its host."""
        low, high = room
        if high is not None:
            self.bounds.append(Bound(host, guest, high, why))
        if low is not None:
            self.bounds.append(Bound(guest, host, -low, why))

    def exactly(self, host: str, guest: str, offset: int, why: str) -> None:
        """The guest is so much further than its host."""
        self.within(host, guest, (offset, offset), why)

    def rooms(self, anchor: str, marks: Iterable[str]) -> dict[str, Room] | Conflict:
        """Least and greatest place of every board when the anchor is at 0."""
        marks = list(marks)
        forth, back = defaultdict[str, list[Bound]](list), defaultdict[str, list[Bound]](list)
        for bound in self.bounds:
            forth[bound.start].append(bound)
            back[bound.to].append(Bound(bound.to, bound.start, bound.most, bound.why))
        greatest = _shortest(anchor, forth, len(marks))
        if isinstance(greatest, Conflict):
            return greatest
        least = _shortest(anchor, back, len(marks))
        if isinstance(least, Conflict):
            return least
        return {mark: (-least[mark] if mark in least else None, greatest.get(mark)) for mark in marks}

    def settled(self, anchor: str, marks: Iterable[str]) -> dict[str, int] | Conflict:
        """One place for each board: in the middle of its room, pushed home where only one side stops it."""
        marks = list(marks)
        tight = Puzzle(list(self.bounds))
        rooms = tight.rooms(anchor, marks)
        if isinstance(rooms, Conflict):
            return rooms
        found: dict[str, int] = {}
        loose = [mark for mark in marks if rooms[mark][0] != rooms[mark][1] or rooms[mark][0] is None]
        while True:
            for mark, room in rooms.items():
                found[mark] = _middle(room)
            if not loose:
                return found
            mark = loose.pop(0)
            tight.exactly(anchor, mark, found[mark], "")
            again = tight.rooms(anchor, marks)
            assert not isinstance(again, Conflict), "a place within a board's room contradicts nothing"
            rooms = again
            loose = [mark for mark in loose if rooms[mark][0] != rooms[mark][1] or rooms[mark][0] is None]


def _middle(room: Room) -> int:
    low, high = room
    if low is not None and high is not None:
        return (low + high) // 2
    return low if low is not None else high if high is not None else 0


def _shortest(anchor: str, bounds: Mapping[str, list[Bound]], count: int) -> dict[str, int] | Conflict:
    """Length of the shortest path from the anchor to each board, or a circle shorter than nothing."""
    far, came, steps = {anchor: 0}, dict[str, Bound](), defaultdict[str, int](int)
    waiting, queued = deque([anchor]), {anchor}
    while waiting:
        here = waiting.popleft()
        queued.discard(here)
        for bound in bounds.get(here, ()):
            reach = far[here] + bound.most
            if bound.to in far and far[bound.to] <= reach:
                continue
            far[bound.to], came[bound.to] = reach, bound
            steps[bound.to] = steps[here] + 1
            circle = _circle(bound.to, came) if steps[bound.to] > count + 1 else None
            if circle:
                return circle
            if bound.to not in queued:
                queued.add(bound.to)
                waiting.append(bound.to)
    return far


def _circle(mark: str, came: Mapping[str, Bound]) -> Conflict | None:
    seen: set[str] = set()
    while mark not in seen:
        if mark not in came:
            return None
        seen.add(mark)
        mark = came[mark].start
    bounds, here = [came[mark]], came[mark].start
    while here != mark:
        bounds.append(came[here])
        here = came[here].start
    return Conflict(-sum(bound.most for bound in bounds), tuple(reversed(bounds)))


def linked(pairs: Iterable[tuple[str, str]], marks: Iterable[str]) -> list[list[str]]:
    """Boards that hang together, group by group, in the order of ``marks``."""
    near = defaultdict[str, set[str]](set)
    for one, other in pairs:
        near[one].add(other)
        near[other].add(one)
    groups: list[list[str]] = []
    order = list(marks)
    left = set(order)
    for mark in order:
        if mark not in left:
            continue
        group, waiting = {mark}, [mark]
        while waiting:
            here = waiting.pop()
            new = (near[here] & left) - group
            group |= new
            waiting += new
        left -= group
        groups.append([each for each in order if each in group])
    return groups
