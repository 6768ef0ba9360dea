"""The whole piece, put together: every board in its place, and what lies in what.

A box or carcase begins with the space that it fills; what stands in it follows from what is left clear, and so on
inwards. Cuts come later (``cuts``), from what two boards both fill.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from planner.derive.backs import back
from planner.derive.bases import base, base_block
from planner.derive.bottoms import bottoms
from planner.derive.dividers import dividers
from planner.derive.door_stops import door_stops
from planner.derive.doors import doors
from planner.derive.drawer_stops import drawer_stops
from planner.derive.drawers import drawer_block, drawers
from planner.derive.fronts import must_pass
from planner.derive.hanging_rails import hanging_rails
from planner.derive.lids import lid
from planner.derive.parts import Item, LetIn, Maker, Shape
from planner.derive.ring_boards import ring_boards
from planner.derive.runners import runners
from planner.derive.shelf_pins import shelf_pins
from planner.derive.shelves import loose_shelves
from planner.derive.spaces import Spaces, inside_of, outside_of, spaces
from planner.derive.tills import till
from planner.derive.tops import separate_top
from planner.domain.box import Box
from planner.domain.carcase import Carcase, Plinth
from planner.domain.drawer import Drawer
from planner.domain.plan import BoardSize, OpeningSize
from planner.domain.project import Project
from planner.domain.ring import Ring
from planner.domain.solid import BACK, DOWN, FRONT, LEFT, RIGHT, UP, Solid, solid
from planner.domain.space import LooseShelves
from planner.domain.words import RingKind, Role, RunnerKind, SizesOver
from planner.errors import PlanError, Problem
from planner.lengths import Grid, show_length


@dataclass(frozen=True, slots=True)
class Assembly:
    """Every board in its place, and what follows from how they are put together.

    Attributes:
        boards: by mark, box by box, carcase by carcase.
        let_in: which boards lie in which.
        shapes: cuts for a board's own sake.
        openings: the undivided spaces of the carcases.
    """

    boards: dict[str, BoardSize]
    let_in: tuple[LetIn, ...]
    shapes: tuple[Shape, ...]
    openings: tuple[OpeningSize, ...]


def assembly(project: Project) -> Assembly:
    """Put a project together.

    Raises:
        PlanError: sizes that don't add up, something without room; all that can be told together are named.
    """
    openings: list[OpeningSize] = []
    items: list[Item] = []
    wrong: list[Problem] = []
    for box in project.boxes:
        items += _refusing(_box(project, box), wrong)
    for carcase in project.carcases:
        try:
            openings += spaces(carcase, project.grid).openings
        except PlanError as error:
            wrong += error.problems
        else:
            items += _refusing(_carcase(project, carcase), wrong)
    wrong += _doubles(items)
    if wrong:
        raise PlanError(wrong)
    return Assembly(
        boards={item.mark: item for item in items if isinstance(item, BoardSize)},
        let_in=tuple(item for item in items if isinstance(item, LetIn)),
        shapes=tuple(item for item in items if isinstance(item, Shape)),
        openings=tuple(openings),
    )


def _refusing(items: Iterable[Item], wrong: list[Problem]) -> list[Item]:
    try:
        return list(items)
    except PlanError as error:
        wrong += error.problems
        return []


def _doubles(items: Iterable[Item]) -> Iterator[Problem]:
    """Boards that would bear the same mark; no rule of construction should let that happen."""
    times = Counter(item.mark for item in items if isinstance(item, BoardSize))
    for mark, count in times.items():
        if count > 1:
            yield Problem(
                where=mark,
                what=f"would be the mark of {count} boards.",
                remedy="Give drawers and boxes other marks; if that doesn't help, please report it.",
            )


def box_block(box: Box) -> Solid:
    """What the ring of a box fills."""
    first, second, third, fourth = (board.stuff.thickness_nm for board in box.ring.boards)
    within = box.sizes_over is SizesOver.INSIDE
    length = box.length_nm + (second + fourth if within else 0)
    width = box.width_nm + (first + third if within else 0)
    return solid((0, length), (0, width), (0, box.height_nm))


def _box(project: Project, box: Box) -> Iterator[Item]:
    maker, block = Maker(box.ring.mark, box.ring.mark), box_block(box)
    must_have_inside(box.ring, block, project.grid)
    yield from ring_boards(maker, box.ring, block, project.proud_nm)
    if box.bottom:
        yield from bottoms(project, maker, box.ring, box.bottom, block)
    yield from till(project, maker, box, block)
    yield from lid(project, maker, box, block)


def _carcase(project: Project, carcase: Carcase) -> Iterator[Item]:
    found = spaces(carcase, project.grid)
    built = list(_built(project, carcase, found))
    yield from built
    yield from _finished(project, carcase, found, built)


def _built(project: Project, carcase: Carcase, found: Spaces) -> Iterator[Item]:
    """A carcase with all that divides, fills, closes and carries it."""
    ring = carcase.ring
    maker, outside, inside = Maker(ring.mark, ring.mark), outside_of(carcase), inside_of(carcase)
    yield from ring_boards(maker, ring, outside, project.proud_nm)
    yield from back(maker, carcase, outside, inside, project.grid)
    stuffs = {board.mark: board.stuff for board in ring.boards}
    yield from dividers(project, carcase, found.dividers, stuffs)
    yield from runners(carcase, found.openings, found.dividers)
    for opening in found.openings:
        held = opening.space.holds
        if isinstance(held, Drawer):
            hung = _hung(carcase)
            must_have_inside(held.ring, drawer_block(held, opening, hung=hung), project.grid)
            yield from drawers(project, held, opening, hung=hung)
        elif isinstance(held, LooseShelves):
            yield from loose_shelves(opening, held)
    yield from doors(maker, found.doors, project.grid)
    if isinstance(carcase.base, Plinth):
        must_have_inside(carcase.base.ring, base_block(carcase.base, outside), project.grid)
    yield from base(project, maker, carcase, outside)
    yield from separate_top(maker, carcase, outside)


def _finished(project: Project, carcase: Carcase, found: Spaces, built: Sequence[Item]) -> Iterator[Item]:
    """The small parts, which lie where what is built leaves room."""
    maker, grid = Maker(carcase.ring.mark, carcase.ring.mark), project.grid
    boards = {item.mark: item for item in built if isinstance(item, BoardSize)}
    must_pass(maker, found.doors, boards.values(), grid)
    yield from hanging_rails(carcase, found.openings, boards.values(), grid)
    yield from drawer_stops(project, found.openings, boards, hung=_hung(carcase))
    yield from door_stops(maker, found.doors, list(boards.values()), grid)
    yield from shelf_pins(found.openings, built, grid)


def _hung(carcase: Carcase) -> bool:
    """Whether drawers hang on strips or slides at their sides."""
    return carcase.runners is not None and carcase.runners.kind is not RunnerKind.WOOD


def must_have_inside(ring: Ring, block: Solid, grid: Grid) -> None:
    """Refuse a ring that its own boards fill.

    Raises:
        PlanError: naming it and its outside sizes.
    """
    ways = {Role.FRONT: FRONT, Role.BACK: BACK, Role.LEFT: LEFT, Role.RIGHT: RIGHT, Role.TOP: UP, Role.BOTTOM: DOWN}
    inside = block
    for board in ring.boards:
        inside = inside.shrunk(board.stuff.thickness_nm, ways[board.role])
    if min(inside.size(RIGHT), inside.size(BACK), inside.size(UP)) > 0:
        return
    first, second, width = (RIGHT, BACK, UP) if ring.kind is RingKind.UPRIGHT else (RIGHT, UP, BACK)
    outside = " × ".join(show_length(block.size(way), grid) for way in (first, second, width))
    raise PlanError([
        Problem(
            where=ring.mark,
            what=f"has no inside: it would be {outside} {grid.unit} over its outside.",
            remedy="Give it larger sizes, thinner boards or smaller clearances.",
        )
    ])  # fmt: skip
