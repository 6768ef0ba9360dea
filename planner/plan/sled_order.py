"""In which order sled settings are visited and ends are cut: with the fewest changes, handlings and turnings.

**Settings.** Every socket has a wall at its left and one at its right, which lean opposite ways, and each is cut at its
own fence. So H pairs of a sled and a bit height, on S sleds, make 2H settings; none needs one fence only. From one
setting to the next at least one of sled, height and fence changes, so no order has fewer than 2H − 1 changes; sleds
change at least S − 1 times, and the pair of sled and height at least H − 1 times. Going sled by sled and height by
height, each begun at the fence already in use, changes just one thing each time: S − 1 times the sled, H − S times the
height, H times the fence. All three bounds are reached at once. The order takes least time, too, wherever a change of
sled takes no less than a change of height, and that no less than the walk round to the other fence.

**Handlings.** A board is taken up once at each setting it must see, since its ends follow each other there.

**Turnings.** The order of a board's ends at one setting decides which end is down when it is taken up again. All ways
are weighed, the first end being free.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import permutations
from typing import NamedTuple

from planner.domain.marks import reading_order
from planner.domain.sled import Sled
from planner.domain.words import End, Side
from planner.lengths import Nm
from planner.plan.sled_ends import Board, EndToCut

FIRST_FENCE = Side.RIGHT

Group = tuple[Sled, Nm]
"""A sled and the bit height to set on it."""


class Visit(NamedTuple):
    """A setting: a sled, the bit height set on it, and the fence."""

    sled: Sled
    height_nm: Nm
    fence: Side


@dataclass(frozen=True, slots=True)
class Step:
    """One end cut at one setting; ``at_first`` where this is the first of its two fences."""

    visit: Visit
    end: EndToCut
    at_first: bool


def grouped(ends: Sequence[EndToCut]) -> Iterator[Step]:
    """All cuts, setting by setting and board by board, in the order that changes, handles and turns least."""
    at: dict[Group, dict[Board, dict[End, EndToCut]]] = {}
    for end in _by_board(ends):
        at.setdefault((end.sled, end.height_nm), {}).setdefault(end.board, {})[end.joint.pin_end] = end
    visits = tuple(in_fewest_changes((end.sled, end.height_nm) for end in ends))
    boards_there = [at[visit.sled, visit.height_nm] for visit in visits]
    in_turn = {
        end.board: iter(fewest_turnings(there[end.board] for there in boards_there if end.board in there))
        for end in ends
    }
    for place, (visit, there) in enumerate(zip(visits, boards_there, strict=True)):
        for board, its_ends in there.items():
            for end_down in next(in_turn[board]):
                yield Step(visit, its_ends[end_down], at_first=place % 2 == 0)


def _by_board(ends: Sequence[EndToCut]) -> list[EndToCut]:
    """Project by project, boards in the order in which a person would read their marks."""
    projects = {name: place for place, name in enumerate(dict.fromkeys(end.project for end in ends))}
    return sorted(ends, key=lambda end: (projects[end.project], reading_order(end.joint.pin_board)))


def joint_by_joint(ends: Iterable[EndToCut]) -> Iterator[Step]:
    """All cuts with each joint finished before the next: its end at one fence, then at the other.

    Counted kindly: every joint begins at the fence already in use, and heights that may share a setting share it.
    """
    fence = FIRST_FENCE
    for end in ends:
        yield Step(Visit(end.sled, end.height_nm, fence), end, at_first=True)
        fence = fence.other
        yield Step(Visit(end.sled, end.height_nm, fence), end, at_first=False)


def in_fewest_changes(groups: Iterable[Group]) -> Iterator[Visit]:
    """Both fences of every group: sleds in the order given, heights from the lowest, the fence in use first."""
    distinct = dict.fromkeys(groups)
    sleds = {sled: place for place, sled in enumerate(dict.fromkeys(sled for sled, _ in distinct))}
    fence = FIRST_FENCE
    for sled, height in sorted(distinct, key=lambda group: (sleds[group[0]], group[1])):
        yield Visit(sled, height, fence)
        fence = fence.other
        yield Visit(sled, height, fence)


def fewest_turnings(visits: Iterable[Collection[End]]) -> tuple[tuple[End, ...], ...]:
    """Order in which to cut the ends of one board at each of its visits; end A first where that makes no difference.

    For either end that may be down after a visit the best way there is kept, so every order is weighed.
    """
    ways: dict[End | None, tuple[int, tuple[tuple[End, ...], ...]]] = {None: (0, ())}
    for ends in visits:
        ways = {
            order[-1]: min((turned + _turns(down, order), (*before, order)) for down, (turned, before) in ways.items())
            for order in permutations(sorted(ends))
        }
    return min(ways.values())[1]


def _turns(down: End | None, order: Sequence[End]) -> int:
    return len(order) - 1 + (down not in (None, order[0]))
