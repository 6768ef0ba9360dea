"""Small pieces to present, made by hand and small enough to be worked out on paper."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from planner.domain.bottom import BottomPanel
from planner.domain.box import Box
from planner.domain.material import Material
from planner.domain.plan import Plan
from planner.domain.project import Project
from planner.domain.ring import Stuff, make_ring
from planner.domain.sled import MICRO, Sled
from planner.domain.space import Space
from planner.domain.spacing import Spacing
from planner.domain.words import MaterialKind, PinPair, RingKind, SizesOver
from planner.lengths import Grid, Nm, Unit, read_length
from planner.pipeline import plan
from tests import pieces
from tests.pieces import inches


def millimetres(said: str) -> Nm:
    return read_length(said, Unit.MM, zero=True)


def drawer(
    *, mark: str = "D1", name: str = "Desk", title: str = "Desk drawer", timber: str = "cherry", sled: str = "bench"
) -> Project:
    """A drawer 12 × 10 × 5 1/2 in, nothing proud, pins as in the check values of the design.

    Front and back of 3/4 in carry the pins, the sides are of 1/2 in: W 5 1/2, T 3/4, slope 1:8, bit 1/2, half-pin 1/4,
    pin 1/8, 5 tails. A bottom of 1/4 in plywood lies in grooves 1/4 in deep.
    """
    spacing = Spacing(
        half_pin_nm=inches("1/4"), pin_nm=inches("1/8"), tails=5, tail_nm=inches("1"), greatest_tail_nm=inches("2")
    )
    front, side = (Stuff(material=timber, thickness_nm=inches(thick)) for thick in ("3/4", "1/2"))
    box = Box(
        title=title,
        batch=mark,
        ring=make_ring(mark, RingKind.UPRIGHT, (front, side, front, side), PinPair.FIRST_AND_THIRD, spacing, sled),
        length_nm=inches("12"),
        width_nm=inches("10"),
        height_nm=inches("5 1/2"),
        sizes_over=SizesOver.OUTSIDE,
        bottom=BottomPanel(
            stuff=Stuff(material=f"{timber} plywood", thickness_nm=inches("1/4")),
            groove_depth_nm=inches("1/4"),
            up_nm=None,
            play_nm=inches("0"),
        ),
    )
    return Project(
        name=name,
        unit=Unit.INCH,
        grid=Grid.IN_32,
        proud_nm=inches("0"),
        height_tolerance_nm=inches("0.004"),
        materials=(Material(name=timber), Material(name=f"{timber} plywood", kind=MaterialKind.SHEET)),
        sleds=(
            Sled(
                name=sled,
                run_micro=8 * MICRO,
                bit_nm=inches("1/2"),
                greatest_bit_height_nm=inches("1 3/4"),
                greatest_width_nm=inches("24"),
                greatest_upright_nm=inches("48"),
            ),
        ),
        boxes=(box,),
        carcases=(),
    )


def thick_box() -> Project:
    """A metric box 300 × 200 × 36 mm of 40 mm stuff: one tail of 24 mm, slope 1:5, bit 6.35 mm; 0.4 mm proud."""
    spacing = Spacing(
        half_pin_nm=millimetres("6"),
        pin_nm=millimetres("6"),
        tails=1,
        tail_nm=millimetres("24"),
        greatest_tail_nm=millimetres("45"),
    )
    stuff = (Stuff(material="oak", thickness_nm=millimetres("40")),) * 4
    box = Box(
        title="",
        batch="K",
        ring=make_ring("K", RingKind.UPRIGHT, stuff, PinPair.SECOND_AND_FOURTH, spacing, "steep"),
        length_nm=millimetres("300"),
        width_nm=millimetres("200"),
        height_nm=millimetres("36"),
        sizes_over=SizesOver.OUTSIDE,
        bottom=None,
    )
    return Project(
        name="Thick box",
        unit=Unit.MM,
        grid=Grid.MM_TENTH,
        proud_nm=millimetres("0.4"),
        height_tolerance_nm=millimetres("0.1"),
        materials=(Material(name="oak"),),
        sleds=(
            Sled(
                name="steep",
                run_micro=5 * MICRO,
                bit_nm=millimetres("6.35"),
                greatest_bit_height_nm=millimetres("45"),
                greatest_width_nm=millimetres("600"),
                greatest_upright_nm=millimetres("900"),
            ),
        ),
        boxes=(box,),
        carcases=(),
    )


def chest(drawers: int) -> Project:
    """The chest of ``tests.pieces``, with as many equal drawers as wanted and 7 1/2 in of height for each."""
    whole = pieces.six_drawers()
    carcase = whole.carcases[0]
    inside = pieces.columns(pieces.tiers(*(Space(holds=pieces.drawer(f"D{n}")) for n in range(1, drawers + 1))))
    return replace(whole, carcases=(replace(carcase, height_nm=Nm(drawers * inches("7 1/2")), inside=inside),))


@cache
def planned_chest() -> Plan:
    return plan(pieces.six_drawers())


@cache
def planned_drawer() -> Plan:
    return plan(drawer())


@cache
def planned_thick_box() -> Plan:
    return plan(thick_box())
