"""Small projects built by hand, for tests that need no file and no store."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from planner.domain.bottom import BottomPanel
from planner.domain.box import Box
from planner.domain.carcase import BackPanel, Carcase, Rails
from planner.domain.drawer import Drawer
from planner.domain.material import Material
from planner.domain.plan import BoardSize
from planner.domain.project import Project
from planner.domain.ring import Stuff, make_ring
from planner.domain.sled import MICRO, Sled
from planner.domain.space import Division, Space
from planner.domain.spacing import Spacing
from planner.domain.words import DividerKind, HeightRule, MaterialKind, PinPair, RingKind, SizesOver, Way
from planner.lengths import Grid, Nm, Unit, read_length


def inches(text: str) -> Nm:
    """A length in inches, zero allowed."""
    return read_length(text, Unit.INCH, zero=True)


def ash(thickness: str) -> Stuff:
    """Solid wood of a thickness."""
    return Stuff(material="ash", thickness_nm=inches(thickness))


def ply(thickness: str) -> Stuff:
    """A sheet of a thickness."""
    return Stuff(material="ply", thickness_nm=inches(thickness))


SPACING = Spacing(
    half_pin_nm=inches("1/4"),
    pin_nm=inches("1/4"),
    tails=None,
    tail_nm=inches("1"),
    greatest_tail_nm=inches("1 3/4"),
)
BOTTOM = BottomPanel(stuff=ply("1/4"), groove_depth_nm=inches("1/4"), up_nm=None, play_nm=inches("1/32"))
SLED = Sled(
    name="main",
    run_micro=8 * MICRO,
    bit_nm=inches("1/2"),
    greatest_bit_height_nm=inches("1 1/2"),
    greatest_width_nm=inches("24"),
    greatest_upright_nm=inches("48"),
)


def project(*, boxes: tuple[Box, ...] = (), carcases: tuple[Carcase, ...] = ()) -> Project:
    """A project in inches around what it holds."""
    return Project(
        name="by hand",
        unit=Unit.INCH,
        grid=Grid.IN_32,
        proud_nm=inches("1/64"),
        height_tolerance_nm=inches("0.004"),
        materials=(Material(name="ash"), Material(name="ply", kind=MaterialKind.SHEET)),
        sleds=(SLED,),
        boxes=boxes,
        carcases=carcases,
    )


def drawer(mark: str) -> Drawer:
    """A drawer of 3/4 in front and 1/2 in sides and back."""
    thicknesses = (ash("3/4"), ash("1/2"), ash("1/2"), ash("1/2"))
    return Drawer(
        ring=make_ring(mark, RingKind.UPRIGHT, thicknesses, PinPair.FIRST_AND_THIRD, SPACING, "main"),
        side_clearance_nm=inches("1/16"),
        top_clearance_nm=inches("1/8"),
        back_clearance_nm=inches("1/2"),
        bottom=BOTTOM,
    )


def columns(*spaces: Space) -> Space:
    """A space divided into columns by partitions."""
    return _divided(Way.COLUMNS, DividerKind.PARTITION, spaces)


def tiers(*spaces: Space, by: DividerKind = DividerKind.RAIL) -> Space:
    """A space divided into tiers."""
    return _divided(Way.TIERS, by, spaces)


def _divided(way: Way, divider: DividerKind, spaces: tuple[Space, ...]) -> Space:
    rule = HeightRule.EQUAL
    division = Division(way=way, divider=divider, rule=rule, step_nm=None, ratio=None, spaces=spaces)
    return Space(share=Fraction(1), holds=division)


def graduated(step: str, *spaces: Space) -> Space:
    """Tiers between rails, each taller by a step than the one above."""
    division = Division(
        way=Way.TIERS, divider=DividerKind.RAIL, rule=HeightRule.STEP, step_nm=inches(step), ratio=None, spaces=spaces
    )
    return Space(holds=division)


def six_drawers() -> Project:
    """A chest 36 wide, 46 high, 20 deep, six drawers each 1/2 in taller than the one above."""
    seven_eighths = (ash("7/8"),) * 4
    carcase = Carcase(
        title="chest",
        ring=make_ring("C", RingKind.CARCASE, seven_eighths, PinPair.FIRST_AND_THIRD, SPACING, "main"),
        width_nm=inches("36"),
        height_nm=inches("46"),
        depth_nm=inches("20"),
        sizes_over=SizesOver.OUTSIDE,
        inside=columns(graduated("1/2", *(Space(holds=drawer(f"D{n}")) for n in range(1, 7)))),
        rails=Rails(stuff=ash("3/4"), width_nm=inches("3"), housing_depth_nm=inches("1/4")),
        back=BackPanel(stuff=ply("1/4"), rabbet_depth_nm=inches("3/8"), play_nm=inches("1/32")),
    )
    return project(carcases=(carcase,))


def small_box() -> Project:
    """A box 12 × 8 × 5 1/2 inside, of 1/2 in stuff."""
    half_inch = (ash("1/2"),) * 4
    box = Box(
        title="box",
        batch="K",
        ring=make_ring("K", RingKind.UPRIGHT, half_inch, PinPair.SECOND_AND_FOURTH, SPACING, "main"),
        length_nm=inches("12"),
        width_nm=inches("8"),
        height_nm=inches("5 1/2"),
        sizes_over=SizesOver.INSIDE,
        bottom=BOTTOM,
    )
    return project(boxes=(box,))


def with_drawer(made: Project, drawer: Drawer) -> Project:
    """The same project with another drawer in the place of the one of its mark."""
    return replace(made, carcases=tuple(replace(c, inside=_replaced(c.inside, drawer)) for c in made.carcases))


def _replaced(space: Space, drawer: Drawer) -> Space:
    if isinstance(space.holds, Division):
        spaces = tuple(_replaced(each, drawer) for each in space.holds.spaces)
        return replace(space, holds=replace(space.holds, spaces=spaces))
    if isinstance(space.holds, Drawer) and space.holds.ring.mark == drawer.ring.mark:
        return replace(space, holds=drawer)
    return space


def cut_to(board: BoardSize, length: int, width: int, thickness: int) -> BoardSize:
    """The same board at another size, with nothing that stands proud."""
    lie, place = board.lie, board.place
    for direction, size in ((lie.along, length), (lie.across, width), (lie.out, thickness)):
        low, _ = place.along(direction)
        place = place.with_span(direction, (low, low + size))
    return replace(board, place=place, proud_a_nm=Nm(0), proud_b_nm=Nm(0))
