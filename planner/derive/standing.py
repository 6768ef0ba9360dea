"""How a carcase stands on its floor: its front supports, its weights behind them, and what opens before them.

It stands on its legs, its plinth, or the boards of its own that lie lowest. A drawer is drawn out as far as full
slides let it; on wood it counts as drawn out by two thirds of its length, as the standards do where no stop is (read
for F2057-19 and ISO 7171). A door is opened square to the front, its weight half its width before the hinge.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from planner.derive.doors import doors_of
from planner.derive.drawer_room import drawer_rooms
from planner.derive.weights import filled, in_door
from planner.domain.carcase import Carcase, Plinth, Stand
from planner.domain.drawer import Drawer
from planner.domain.marks import space_mark
from planner.domain.plan import BoardSize, OpeningSize
from planner.domain.solid import BACK, RIGHT, UP, Solid
from planner.domain.space import Division
from planner.domain.weights import Part, Weight, Weights
from planner.domain.words import Role, RunnerKind, Side
from planner.lengths import Nm, Span, metres
from planner.wood.loads import spread
from planner.wood.tipping import Opens, Standing
from planner.wood.tipping_tests import FILL, drawer_volume, enclosed_volume
from planner.wood.weight import NOTHING, Body

DRAWN_OUT = Fraction(2, 3)
"""Share of a drawer's length that it comes out where nothing stops it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OnFloor:
    """A carcase on its floor.

    Attributes:
        standing: its weights, with places behind its front supports and over the floor.
        height_nm: from the floor to its highest point.
        kg: weight, empty.
        volume: of its drawers and of what is behind its doors, m³, by the rule of the published standard.
    """

    standing: Standing
    height_nm: Nm
    kg: float
    volume: float


def on_floor(
    carcase: Carcase, boards: Mapping[str, BoardSize], openings: Sequence[OpeningSize], weights: Weights
) -> OnFloor | None:
    """A carcase with drawers or doors on its floor; None for one with neither, or of unknown weight."""
    mark = carcase.ring.mark
    whole, rest = weights.find(mark, Part.PIECE), weights.find(mark, Part.REST)
    if whole is None or rest is None:
        return None
    own = [opening for opening in openings if opening.carcase == mark]
    maker = _Maker(carcase, boards, own, weights, _supports(carcase, boards))
    opens = (*maker.drawers(), *maker.doors())
    if not opens:
        return None
    in_piece = [board.place.up[1] for board in boards.values() if board.piece == mark]
    height = Nm(max(in_piece) - maker.feet.up[0])
    return OnFloor(
        standing=Standing(
            case=maker.body(rest),
            opens=opens,
            spacing=metres(maker.feet.size(BACK)),
            height=metres(height),
            most_open=carcase.use.open_at_once,
        ),
        height_nm=height,
        kg=whole.kg,
        volume=maker.volume(),
    )


def _supports(carcase: Carcase, boards: Mapping[str, BoardSize]) -> Solid:
    """The block that the supports stand in, from the front ones to the rear ones."""
    if isinstance(carcase.base, Plinth):
        places = [boards[board.mark].place for board in carcase.base.ring.boards]
    elif isinstance(carcase.base, Stand):
        places = [board.place for board in boards.values() if board.box == carcase.ring.mark and board.role is Role.LEG]
    else:
        places = [boards[board.mark].place for board in carcase.ring.boards]
    return Solid(
        right=_over(place.right for place in places),
        back=_over(place.back for place in places),
        up=_over(place.up for place in places),
    )


def _over(spans: Iterator[Span]) -> Span:
    all_of_them = list(spans)
    return min(low for low, _ in all_of_them), max(high for _, high in all_of_them)


@dataclass(frozen=True, slots=True)
class _Maker:
    """Makes what opens, with places from the supports."""

    carcase: Carcase
    boards: Mapping[str, BoardSize]
    openings: Sequence[OpeningSize]
    weights: Weights
    feet: Solid

    def body(self, weight: Weight) -> Body:
        """A weight in its place."""
        right, back, up = weight.centre
        return Body(weight.kg, metres(right), self.back(back), self.up(up))

    def back(self, place: int) -> float:
        """How far a place is behind the front supports."""
        return metres(place - self.feet.back[0])

    def up(self, place: int) -> float:
        """How high a place is over the floor."""
        return metres(place - self.feet.up[0])

    def drawers(self) -> Iterator[Opens]:
        """Every drawer."""
        rooms = drawer_rooms(self.boards, self.openings)
        for opening in self.openings:
            drawer = opening.space.holds
            if not isinstance(drawer, Drawer) or opening.drawer is None:
                continue
            weight = self.weights.find(opening.drawer, Part.DRAWER)
            if weight is None:
                continue
            places = [board.place for board in self.boards.values() if board.box == opening.drawer]
            travel = self._travel(drawer)
            front = min(place.back[0] for place in places)
            yield Opens(
                mark=opening.drawer,
                body=self.body(weight),
                travel=travel,
                edge_back=self.back(front) - travel,
                edge_up=self.up(max(place.up[1] for place in places)),
                fill=self._fill(rooms[opening.drawer]) if opening.drawer in rooms else NOTHING,
            )

    def _travel(self, drawer: Drawer) -> float:
        runners = self.carcase.runners
        sides = (self.boards[drawer.ring.board(role).mark].place for role in (Role.LEFT, Role.RIGHT))
        length = max(place.size(BACK) for place in sides)
        whole = runners is not None and runners.kind is RunnerKind.SLIDES
        return metres(length) * (1.0 if whole else float(DRAWN_OUT))

    def _fill(self, room: Solid) -> Body:
        said = self.carcase.use.drawers
        kg = drawer_volume(*_sizes(room)) * spread(FILL).kg if said is None else filled(said, room)
        (left, right), (front, behind), (low, high) = room.right, room.back, room.up
        middle = Weight(
            mark="",
            part=Part.DRAWER,
            piece=self.carcase.ring.mark,
            kg=kg,
            centre=(Nm((left + right) // 2), Nm((front + behind) // 2), Nm((low + high) // 2)),
            filled_kg=kg,
        )
        return self.body(middle)

    def doors(self) -> Iterator[Opens]:
        """Every leaf of every door, hung as its space says."""
        for mark, hinged in self._hung():
            places = [self.boards[each].place for each in in_door(self.boards, mark, self.carcase.ring.mark)]
            weight = self.weights.find(mark, Part.DOOR)
            if weight is None:
                continue
            right, back, up = (_over(place.along(way) for place in places) for way in (RIGHT, BACK, UP))
            centre = weight.centre[0]
            from_hinge = centre - right[0] if hinged is Side.LEFT else right[1] - centre
            yield Opens(
                mark=mark,
                body=self.body(weight),
                travel=metres(from_hinge),
                edge_back=self.back(back[0] - (right[1] - right[0])),
                edge_up=self.up(up[1]),
                limited=False,
            )

    def _hung(self) -> Iterator[tuple[str, Side]]:
        """On which side each leaf hangs."""
        for doors, leaves in doors_of(self.carcase):
            yield from zip(leaves, [doors.hinged] if len(leaves) == 1 else [Side.LEFT, Side.RIGHT], strict=True)

    def volume(self) -> float:
        """Of drawers and of what is behind doors."""
        drawers = sum(drawer_volume(*_sizes(room)) for room in drawer_rooms(self.boards, self.openings).values())
        shut = set(_behind_doors(self.carcase))
        enclosed = [opening.place for opening in self.openings if opening.mark in shut and not opening.drawer]
        return drawers + sum(enclosed_volume(*_sizes(place)) for place in enclosed)


def _sizes(room: Solid) -> tuple[Nm, Nm, Nm]:
    return room.size(UP), room.size(RIGHT), room.size(BACK)


def _behind_doors(carcase: Carcase) -> Iterator[str]:
    """Marks of the undivided spaces that doors stand before."""
    spaces = dict(carcase.inside.by_path())
    for path, space in spaces.items():
        around = (spaces[path[:depth]] for depth in range(len(path) + 1))
        if not isinstance(space.holds, Division) and any(each.doors for each in around):
            yield space_mark(carcase.ring.mark, path)
