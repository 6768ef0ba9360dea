"""What every board, drawer, door and piece weighs, and where it balances.

Wood weighs what it does midway between the driest and the dampest season of its room. Hardware is not weighed.
Drawers count as filled with what the maker puts into them, else as full of clothes.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from planner.derive.board_bodies import board_bodies
from planner.derive.doors import doors_of
from planner.derive.drawer_room import drawer_rooms
from planner.domain.plan import BoardSize, Feature, Joint, OpeningSize
from planner.domain.project import Project
from planner.domain.solid import BACK, RIGHT, UP, Solid
from planner.domain.timber import Timber
from planner.domain.use import Load
from planner.domain.weights import Part, Weight, Weights
from planner.lengths import from_metres, metres
from planner.wood.loads import spread
from planner.wood.moisture import seasons
from planner.wood.tipping_tests import FILL
from planner.wood.weight import Body, timber_density, together


def weights(
    project: Project,
    boards: Mapping[str, BoardSize],
    cuts: tuple[Sequence[Feature], Iterable[Joint]],
    openings: Sequence[OpeningSize],
    timbers: Mapping[str, Timber],
) -> Weights:
    """All weights that can be told.

    Args:
        project: the maker's word.
        boards: by mark.
        cuts: what is cut in single boards, and the corner joints.
        openings: the undivided spaces of the carcases.
        timbers: by the names of the project's materials; those without a timber are left out.
    """
    year = seasons(project)
    damp = (year.dry + year.damp) / 2
    densities = {name: timber_density(timber.specific_gravity, damp) for name, timber in timbers.items()}
    bodies = board_bodies(boards, *cuts, densities)
    if not bodies:
        return Weights(unknown=_unknown(boards, densities))
    weighing = _Weighing(boards, bodies, _fills(project, boards, openings))
    doors = {
        mark: carcase.ring.mark for carcase in project.carcases for _, leaves in doors_of(carcase) for mark in leaves
    }
    pieces = dict.fromkeys(board.piece for board in boards.values())
    found = [
        *(weighing.of(mark, Part.BOARD, [mark]) for mark in bodies),
        *(
            weighing.of(drawer.ring.mark, Part.DRAWER, _in_box(boards, drawer.ring.mark))
            for drawer in project.drawers()
        ),
        *(weighing.of(mark, Part.DOOR, in_door(boards, mark, piece)) for mark, piece in doors.items()),
        *(weighing.of(piece, Part.REST, _rest(project, boards, piece, doors)) for piece in pieces),
        *(weighing.of(piece, Part.PIECE, _in_piece(boards, piece)) for piece in pieces),
    ]
    return Weights(of=tuple(each for each in found if each is not None), unknown=_unknown(boards, densities))


def _unknown(boards: Mapping[str, BoardSize], densities: Mapping[str, float]) -> tuple[str, ...]:
    used = dict.fromkeys(board.material for board in boards.values())
    return tuple(name for name in used if name not in densities)


@dataclass(frozen=True, slots=True)
class _Weighing:
    """Boards, what is known of their bodies, and what fills the drawers."""

    boards: Mapping[str, BoardSize]
    bodies: Mapping[str, Body]
    fills: Mapping[str, float]

    def of(self, mark: str, part: Part, marks: Sequence[str]) -> Weight | None:
        """The weight of some boards as one part; None when that of any of them is not known."""
        if not marks or any(each not in self.bodies for each in marks):
            return None
        body = together(self.bodies[each] for each in marks)
        held = () if part in {Part.BOARD, Part.REST} else dict.fromkeys(self.boards[each].box for each in marks)
        return Weight(
            mark=mark,
            part=part,
            piece=self.boards[marks[0]].piece,
            kg=body.kg,
            centre=(from_metres(body.right), from_metres(body.back), from_metres(body.up)),
            filled_kg=body.kg + sum(self.fills.get(box, 0.0) for box in held),
        )


# --- what belongs together ---------------------------------------------------------------------------------


def in_door(boards: Mapping[str, BoardSize], door: str, piece: str) -> list[str]:
    """Marks of the boards of a door: itself, when it is a slab, or those named after it."""
    return [
        mark for mark, board in boards.items() if board.box == piece and (mark == door or mark.startswith(f"{door}-"))
    ]


def _in_box(boards: Mapping[str, BoardSize], box: str) -> list[str]:
    return [mark for mark, board in boards.items() if board.box == box]


def _in_piece(boards: Mapping[str, BoardSize], piece: str) -> list[str]:
    return [mark for mark, board in boards.items() if board.piece == piece]


def _rest(project: Project, boards: Mapping[str, BoardSize], piece: str, doors: Mapping[str, str]) -> list[str]:
    """Marks of the boards of a piece that neither draw out nor swing."""
    drawers = {drawer.ring.mark for drawer in project.drawers()}
    swinging = {mark for door, of in doors.items() if of == piece for mark in in_door(boards, door, piece)}
    return [
        mark
        for mark, board in boards.items()
        if board.piece == piece and board.box not in drawers and mark not in swinging
    ]


# --- what fills the drawers --------------------------------------------------------------------------------


def _fills(project: Project, boards: Mapping[str, BoardSize], openings: Sequence[OpeningSize]) -> dict[str, float]:
    """Kilograms that each drawer holds when it is filled."""
    said = {carcase.ring.mark: carcase.use.drawers for carcase in project.carcases}
    rooms = drawer_rooms(boards, openings)
    return {
        opening.drawer: filled(said[opening.carcase] or FILL, rooms[opening.drawer])
        for opening in openings
        if opening.drawer in rooms and opening.drawer
    }


def filled(load: Load, room: Solid) -> float:
    """Kilograms of a load in the room of a drawer."""
    width, depth, height = (metres(room.size(way)) for way in (RIGHT, BACK, UP))
    return spread(load, in_a_drawer=True).on(width, depth, height)
