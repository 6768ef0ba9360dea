"""What is caught in what at its glue-up, and what is put in later, which way and in which order.

All of it follows from the places of the boards and from the cuts that take them:

- what is let into others goes in once these stand, if a way in is left for it;
- if none is left, it is caught: put in at the glue-up itself, along with whatever holds it;
- what would stand in a part's way goes in after it;
- parts that stand in each other's way are caught, all of them.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from graphlib import CycleError, TopologicalSorter

from planner.domain.plan import Feature
from planner.domain.solid import Direction
from planner.domain.words import Role
from planner.plan.made_up import Part
from planner.plan.ways_in import Wood


@dataclass(frozen=True, slots=True)
class PutIn:
    """A part that is put in once the body that it goes into stands.

    Attributes:
        hosts: marks of the parts that hold it.
        after: marks of parts that are put in later too, but must be in before this one.
        way: the direction in which it could be drawn out again; None of what is only fixed on.
    """

    part: Part
    hosts: tuple[str, ...]
    after: tuple[str, ...]
    way: Direction | None


@dataclass(frozen=True, slots=True)
class Filled:
    """What goes into one glued-up part.

    Attributes:
        caught: put in at its glue-up.
        later: put in when it stands, in an order in which all of it can be.
    """

    caught: tuple[Part, ...]
    later: tuple[PutIn, ...]


def let_into(parts: Mapping[str, Part], features: Iterable[Feature]) -> dict[str, tuple[str, ...]]:
    """For each part that is let into others, these, by mark; a drawer on its runners is not let into them."""
    part_of = {mark: part for part in parts.values() for mark in part.boards}
    found: dict[str, dict[str, None]] = {}
    for each in features:
        guest, host = part_of.get(each.takes), part_of[each.board]
        if guest and guest is not host and guest.box == host.box:
            found.setdefault(guest.mark, {})[host.mark] = None
    return {guest: tuple(hosts) for guest, hosts in found.items()}


def filled(parts: Mapping[str, Part], features: Iterable[Feature], wood: Wood) -> dict[str, Filled]:
    """What goes into each glued-up part, by its mark."""
    hosts = let_into(parts, features)
    inside: dict[str, list[Part]] = {part.mark: [] for part in parts.values() if part.glued_up}
    for part in parts.values():
        body = _body(part, parts, hosts)
        if body is not None:
            inside[body].append(part)
    return {body: _Body(parts, hosts, wood, parts[body], each).filled() for body, each in inside.items()}


def _body(part: Part, parts: Mapping[str, Part], hosts: Mapping[str, tuple[str, ...]]) -> str | None:
    """The glued-up part that something goes into: the frame that alone holds it, else the ring of its box.

    None of rings, and of what is fixed on: what is let into nothing and doesn't hold anything along with others. The
    boards of a back lap each other, so all of them go in together, those in the middle too.
    """
    if part.role is None:
        return None
    own = hosts.get(part.mark, ())
    if len(own) == 1 and parts[own[0]].glued_up:
        return own[0]
    shares = any(part.mark in each and len(each) > 1 for each in hosts.values())
    return part.box if own or shares or part.role is Role.BACK_BOARD else None


@dataclass(frozen=True, slots=True)
class _Body:
    """A glued-up part, and what goes into it at one time or another."""

    parts: Mapping[str, Part]
    hosts: Mapping[str, tuple[str, ...]]
    wood: Wood
    body: Part
    inside: Sequence[Part]

    def filled(self) -> Filled:
        """What is caught, and what is put in later."""
        caught: dict[str, Part] = {}
        while True:
            stuck, later = self._later(caught)
            if not stuck:
                return Filled(tuple(part for part in self.inside if part.mark in caught), later)
            holding = [mark for part in stuck for mark in (part.mark, *self._all_hosts(part))]
            caught |= {mark: self.parts[mark] for mark in holding if mark != self.body.mark}

    def _later(self, caught: Mapping[str, Part]) -> tuple[list[Part], tuple[PutIn, ...]]:
        """What is put in later if only so much is caught; or else, first, what can't be."""
        free = [part for part in self.inside if part.mark not in caught]
        holding = {part.mark: self._all_hosts(part) for part in free}
        ways = {part.mark: self._way(part, holding[part.mark], caught) for part in free}
        stuck = [part for part in free if holding[part.mark] and ways[part.mark] is None]
        if stuck:
            return stuck, ()
        after = self._after(free, holding, ways)
        try:
            order = tuple(TopologicalSorter(after).static_order())
        except CycleError as circle:
            return [self.parts[mark] for mark in circle.args[1]], ()
        return [], tuple(PutIn(self.parts[mark], self.hosts.get(mark, ()), after[mark], ways[mark]) for mark in order)

    def _all_hosts(self, part: Part) -> tuple[str, ...]:
        """All that holds a part, and what holds that."""
        found: dict[str, None] = {}
        waiting = [part.mark]
        while waiting:
            for mark in self.hosts.get(waiting.pop(), ()):
                if mark not in found:
                    found[mark] = None
                    waiting.append(mark)
        return tuple(found)

    def _way(self, part: Part, holding: Iterable[str], caught: Mapping[str, Part]) -> Direction | None:
        """The way that a maker would take, once the body stands with what is caught and what holds the part."""
        standing = {self.body.mark: self.body, **caught, **{mark: self.parts[mark] for mark in holding}}
        boards = [mark for each in standing.values() for mark in each.boards]
        return next(iter(self.wood.ways_out(part.boards, boards)), None)

    def _after(
        self, free: Sequence[Part], holding: Mapping[str, tuple[str, ...]], ways: Mapping[str, Direction | None]
    ) -> dict[str, tuple[str, ...]]:
        """For each part, which others must be in before."""
        after = {part.mark: dict.fromkeys(host for host in holding[part.mark] if host in ways) for part in free}
        for part in free:
            way = ways[part.mark]
            if way is None:
                continue
            for other in free:
                if other is not part and self.wood.in_the_way(part.boards, other.boards, way):
                    after[other.mark][part.mark] = None
        return {mark: tuple(each) for mark, each in after.items()}
