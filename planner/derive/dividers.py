"""What divides a carcase: partitions, fixed shelves and rails, each let into what stands beside it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from planner.derive.frame import FLAT, PARTING
from planner.derive.parts import Item, LetIn, Maker, Shape
from planner.derive.spaces import DividerPlace, divider_stuff
from planner.derive.web_frames import frame, runners_of
from planner.domain.carcase import Carcase, Dividers, Rails
from planner.domain.marks import board_mark
from planner.domain.project import Project
from planner.domain.ring import Stuff
from planner.domain.solid import BACK, DOWN, FRONT, LEFT, RIGHT, UP, Direction, Lie, Solid, opposite
from planner.domain.words import DividerJoint, DividerKind, FeatureKind, Held, Role
from planner.errors import PlanError, Problem
from planner.lengths import Nm

_Host = tuple[str, FeatureKind, Held]
"""A board that a divider is let into, what the cut is called there, and how the divider is held."""


def dividers(
    project: Project, carcase: Carcase, places: Sequence[DividerPlace], stuffs: Mapping[str, Stuff]
) -> Iterator[Item]:
    """All dividers of a carcase, and what each is let into.

    Args:
        project: the maker's word.
        carcase: what is divided.
        places: where its dividers are.
        stuffs: what the boards of its ring are made of, by mark.

    Raises:
        PlanError: a partition stands on something that is not there for its whole depth.
    """
    bounds = {place.mark: place for place in places}
    maker = Maker(carcase.ring.mark, carcase.ring.mark)
    wrong = [problem for place in places for problem in (*_standing(place, bounds), *_too_deep(place, carcase))]
    if wrong:
        raise PlanError(wrong)
    standing = {place.mark: _partitions_at(place, places) for place in places if place.kind is DividerKind.FRAME}
    runners = {
        mark: runners_of(bounds[mark], carcase.frames, found) for mark, found in standing.items() if carcase.frames
    }
    for place in places:
        match place.kind:
            case DividerKind.PARTITION if carcase.partitions:
                ends = (place.around.above, place.around.below)
                hosts = [board for end in ends for board in _boards_at(end, place, bounds, runners)]
                thick = _thicknesses(carcase, ends, stuffs, bounds)
                way = (PARTING, Role.PARTITION, (UP, DOWN))
                board = _FullDepth(maker, place, carcase.partitions, way, project.proud_nm)
                yield from board.let_into(hosts, thick)
            case DividerKind.SHELF if carcase.shelves:
                ends = (place.around.left, place.around.right)
                thick = _thicknesses(carcase, ends, stuffs, bounds)
                way = (FLAT, Role.SHELF, (LEFT, RIGHT))
                board = _FullDepth(maker, place, carcase.shelves, way, project.proud_nm)
                yield from board.let_into([(end, FeatureKind.HOUSING, Held.GLUED) for end in ends if end], thick)
            case DividerKind.RAIL if carcase.rails:
                yield from _rail(maker, place, carcase.rails)
            case DividerKind.FRAME if carcase.frames:
                yield from frame(maker, place, carcase.frames, standing[place.mark])


def _standing(place: DividerPlace, bounds: Mapping[str, DividerPlace]) -> Iterator[Problem]:
    """A partition needs something below and above it for its whole depth."""
    if place.kind is not DividerKind.PARTITION:
        return
    for bound, where in ((place.around.below, "stands on"), (place.around.above, "hangs from")):
        if bound is None or (bound in bounds and bounds[bound].kind is DividerKind.RAIL):
            what = "nothing" if bound is None else f"the rail {bound}, which is only in front"
            yield Problem(
                where=place.mark,
                what=f"the partition {where} {what}.",
                remedy='Part these tiers by a shelf or a frame: divided_by = "shelf" or "frame".',
            )


def _too_deep(place: DividerPlace, carcase: Carcase) -> Iterator[Problem]:
    """Rails must leave something of the depth: one in front, of a frame one behind too."""
    wide = {
        DividerKind.RAIL: carcase.rails.width_nm if carcase.rails else 0,
        DividerKind.FRAME: 2 * carcase.frames.rail_nm if carcase.frames else 0,
    }.get(place.kind, 0)
    if wide >= place.place.size(BACK):
        yield Problem(
            where=place.mark,
            what="is wider than the space is deep, or leaves nothing behind it.",
            remedy="Take narrower rails, a deeper carcase, or part these tiers by shelves.",
        )


def _partitions_at(frame: DividerPlace, places: Sequence[DividerPlace]) -> tuple[tuple[int, int], ...]:
    """From where to where partitions stand on a frame or hang from it, from the left."""
    standing = [each for each in places if frame.mark in {each.around.above, each.around.below}]
    return tuple(sorted({each.place.right for each in standing if each.kind is DividerKind.PARTITION}))


def _boards_at(
    bound: str | None,
    partition: DividerPlace,
    bounds: Mapping[str, DividerPlace],
    runners: Mapping[str, Mapping[str, tuple[int, int]]],
) -> list[_Host]:
    """What a partition's end may be let into: of a frame its rails, and the runner in its line."""
    if bound is None:
        return []
    if bound not in runners:
        return [(bound, FeatureKind.HOUSING, Held.GLUED)]
    left, right = partition.place.right
    runner = next(mark for mark, (low, high) in runners[bound].items() if low <= left and right <= high)
    return [
        (bound, FeatureKind.HOUSING, Held.GLUED),
        (board_mark(bounds[bound].owner, Role.BACK_RAIL), FeatureKind.HOUSING, Held.FREE),
        (runner, FeatureKind.GROOVE, Held.FREE),
    ]


def _thicknesses(
    carcase: Carcase,
    ends: tuple[str | None, str | None],
    stuffs: Mapping[str, Stuff],
    bounds: Mapping[str, DividerPlace],
) -> tuple[Nm, Nm]:
    """Thickness of what stands at each end of a divider, so that a tenon can go through."""

    def thick(mark: str | None) -> Nm:
        if mark and mark in stuffs:
            return stuffs[mark].thickness_nm
        stuff = divider_stuff(carcase, bounds[mark].kind) if mark else None
        return stuff.thickness_nm if stuff else Nm(0)

    return thick(ends[0]), thick(ends[1])


@dataclass(frozen=True, slots=True)
class _FullDepth:
    """A partition or a shelf in the making.

    ``way`` says how it lies, what it is, and the two ways in which its ends look.
    """

    maker: Maker
    place: DividerPlace
    how: Dividers
    way: tuple[Lie, Role, tuple[Direction, Direction]]
    proud_nm: Nm

    def let_into(self, hosts: Sequence[_Host], thick: tuple[Nm, Nm]) -> Iterator[Item]:
        """The board and what it is let into: ``hosts``, as thick at its two ends as told."""
        lie, role, ends = self.way
        through = self.how.joint is DividerJoint.THROUGH_TENONS
        block = self.place.place
        for end, host in zip(ends, thick, strict=True):
            block = block.grown(end, host if through else self.how.housing_depth_nm)
        proud = self.proud_nm if through else 0
        yield self.maker.board(self.place.mark, role, self.how.stuff, lie, block, proud=proud)
        yield from self._tenons(block, hosts) if through else self._housed(block, hosts)

    def _housed(self, block: Solid, hosts: Sequence[_Host]) -> Iterator[Item]:
        """Housings; those that stop short of the front edge leave the board notched there."""
        mark, ends = self.place.mark, self.way[2]
        stop = self.how.stop_nm if self.how.joint is DividerJoint.STOPPED_HOUSING else 0
        room = block.shrunk(stop, FRONT)
        for host, kind, held in hosts:
            yield LetIn(guest=mark, host=host, room=room, kind=kind, held=held)
        if stop:
            front = block.with_span(BACK, (block.back[0], block.back[0] + stop))
            for end in ends:
                notch = front.shrunk(block.size(end) - self.how.housing_depth_nm, opposite(end))
                yield Shape(board=mark, block=notch, kind=FeatureKind.NOTCH)

    def _tenons(self, block: Solid, hosts: Sequence[_Host]) -> Iterator[Item]:
        """As many tenons as wished at each end, as wide as the spaces between them; half spaces at the edges."""
        mark, depth, front = self.place.mark, block.size(BACK), block.back[0]
        for number in range(self.how.tenons):
            low, high = (front + depth * (4 * number + part) // (4 * self.how.tenons) for part in (1, 3))
            for end in self.way[2]:
                reach = sum(end) > 0
                length = abs(block.along(end)[reach] - self.place.place.along(end)[reach])
                tenon = block.with_span(BACK, (low, high)).shrunk(block.size(end) - length, opposite(end))
                yield Shape(board=mark, block=tenon, kind=FeatureKind.TENON)
                for host, _, _ in hosts:
                    yield LetIn(guest=mark, host=host, room=tenon, kind=FeatureKind.MORTISE)


def _rail(maker: Maker, place: DividerPlace, rails: Rails) -> Iterator[Item]:
    front = place.place.back[0]
    block = place.place.with_span(BACK, (front, front + rails.width_nm)).shrunk(-rails.housing_depth_nm, LEFT, RIGHT)
    yield maker.board(place.mark, Role.RAIL, rails.stuff, FLAT, block)
    for host in (place.around.left, place.around.right):
        yield LetIn(guest=place.mark, host=host, room=block, kind=FeatureKind.HOUSING)
