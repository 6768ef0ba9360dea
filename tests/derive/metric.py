"""A metric workshop with one sled, and boxes and carcases built by hand, for tests of single rules."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from decimal import Decimal

from planner.derive.parts import Item, LetIn
from planner.domain.box import Box
from planner.domain.carcase import Carcase
from planner.domain.material import Material
from planner.domain.plan import BoardSize, Feature
from planner.domain.project import Project
from planner.domain.ring import Ring, Stuff, make_ring
from planner.domain.sled import MICRO, Sled
from planner.domain.solid import Solid, solid
from planner.domain.space import Space
from planner.domain.spacing import Spacing
from planner.domain.words import MaterialKind, PinPair, RingKind, SizesOver
from planner.lengths import Grid, Nm, Unit, read_length
from tests.oracle.assembly_space import Block, less_all, meet
from tests.oracle.wood import block_of, boards_of, overlaps, wood


def mm(length: float) -> Nm:
    """Millimetres; less than nothing too."""
    size = read_length(Decimal(str(abs(length))), Unit.MM, zero=True)
    return size if length >= 0 else Nm(-size)


def block(right: tuple[float, float], back: tuple[float, float], up: tuple[float, float]) -> Solid:
    """A block in millimetres."""
    one, two, three = ((mm(low), mm(high)) for low, high in (right, back, up))
    return solid(one, two, three)


def oak(thickness: float) -> Stuff:
    """Solid wood."""
    return Stuff(material="oak", thickness_nm=mm(thickness))


def ply(thickness: float) -> Stuff:
    """A sheet."""
    return Stuff(material="ply", thickness_nm=mm(thickness))


SPACING = Spacing(half_pin_nm=mm(6), pin_nm=mm(6), tails=None, tail_nm=mm(25), greatest_tail_nm=mm(45))
SLED = Sled(
    name="main",
    run_micro=8 * MICRO,
    bit_nm=mm(8),
    greatest_bit_height_nm=mm(40),
    greatest_width_nm=mm(600),
    greatest_upright_nm=mm(1200),
)


def project(*, boxes: tuple[Box, ...] = (), carcases: tuple[Carcase, ...] = ()) -> Project:
    """A metric project around what it holds."""
    return Project(
        name="by hand",
        unit=Unit.MM,
        grid=Grid.MM_TENTH,
        proud_nm=mm(0.4),
        height_tolerance_nm=mm(0.1),
        materials=(Material(name="oak"), Material(name="ply", kind=MaterialKind.SHEET)),
        sleds=(SLED,),
        boxes=boxes,
        carcases=carcases,
    )


def upright_ring(mark: str, thickness: float, spacing: Spacing = SPACING) -> Ring:
    """A ring of front, right, back, left, the pins on the two sides."""
    return make_ring(mark, RingKind.UPRIGHT, (oak(thickness),) * 4, PinPair.SECOND_AND_FOURTH, spacing, "main")


CARCASE = Carcase(
    title="cabinet",
    ring=make_ring("C", RingKind.CARCASE, (oak(20),) * 4, PinPair.FIRST_AND_THIRD, SPACING, "main"),
    width_nm=mm(800),
    height_nm=mm(600),
    depth_nm=mm(400),
    sizes_over=SizesOver.OUTSIDE,
    inside=Space(),
)
"""800 wide, 600 high, 400 deep, of 20 mm stuff, empty."""

CHEST = Box(
    title="chest",
    batch="K",
    ring=upright_ring("K", 18),
    length_nm=mm(900),
    width_nm=mm(450),
    height_nm=mm(400),
    sizes_over=SizesOver.OUTSIDE,
    bottom=None,
)
"""900 long, 450 from front to back, 400 high, of 18 mm stuff, without a bottom."""


def with_spacing(box: Box, spacing: Spacing) -> Box:
    """The same box with its pins spaced otherwise."""
    return replace(box, ring=replace(box.ring, spacing=spacing))


def placed(items: Iterable[Item]) -> dict[str, Solid]:
    """Where each board is."""
    return {mark: board.place for mark, board in boards_of(items).items()}


def cut_in(features: Iterable[Feature], board: str, takes: str = "") -> Feature:
    """The only cut of a board that takes this one."""
    (found,) = (each for each in features if (each.board, each.takes) == (board, takes))
    return found


def clashes(items: Sequence[Item]) -> list[tuple[str, str]]:
    """Boards that fill the same space once cut; the corners of a ring, which two boards share, do not count."""
    boards = boards_of(items)

    def share_a_corner(one: BoardSize, other: BoardSize) -> bool:
        ring = {role for kind in RingKind for role in kind.roles}
        return one.box == other.box and {one.role, other.role} <= ring

    return [(a, b) for a, b in overlaps(wood(items)) if not share_a_corner(boards[a], boards[b])]


def empty_seats(items: Sequence[Item]) -> Iterator[tuple[LetIn, list[Block]]]:
    """Cuts that their guest does not fill, and what stays empty of them."""
    boards, solids = boards_of(items), wood(items)
    for each in items:
        if isinstance(each, LetIn):
            seat = meet(block_of(each.room), block_of(boards[each.host].place))
            left = less_all([seat] if seat else [], solids[each.guest])
            if left or seat is None:
                yield each, left
